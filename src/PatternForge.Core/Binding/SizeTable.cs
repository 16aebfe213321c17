using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Body measurements of the pattern's sizes, taken from published tables or from a designer's own.</summary>
/// <param name="Values">By the measurement's plain name ("upper-arm"), one value a size.</param>
internal sealed record SizeTable(ImmutableDictionary<string, PerSize<Quantity?>> Values)
{
    /// <summary>The names of its measurements, in order.</summary>
    public IEnumerable<string> Measures => Values.Keys.Order(StringComparer.Ordinal);

    /// <summary>One measurement by its plain name; null where the table has none such.</summary>
    public PerSize<Quantity?>? Find(string measure) => Values.GetValueOrDefault(measure);
}
