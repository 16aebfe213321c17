using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>How a list of values by size is written.</summary>
internal enum SizeListForm
{
    /// <summary>In the trade's form: <c>80 (88, 96)</c>, <c>60/66/72</c>; or in brackets and commas on one line.</summary>
    Trade,

    /// <summary>A list of the header, one value a line.</summary>
    Lines,

    /// <summary>A map of the header from sizes to values, on one line.</summary>
    Map,

    /// <summary>A map of the header from sizes to values, one a line.</summary>
    MapLines,
}

/// <summary>What the values of a list are.</summary>
internal enum SizeListKind
{
    /// <summary>Numbers of the header.</summary>
    Header,

    /// <summary>Numbers of the body: rows, prose, plans.</summary>
    Body,

    /// <summary>The names of the sizes.</summary>
    Names,

    /// <summary>The names of the sizes in a size table.</summary>
    TableNames,
}

/// <summary>One value of a list.</summary>
/// <param name="Size">The size that it is for, from 0.</param>
/// <param name="Span">Its number (or its name, or the dash of a size without one), without a unit.</param>
/// <param name="Whole">The same with a unit of its own.</param>
/// <param name="Number">The number; null for a size that has none, and for names.</param>
/// <param name="UpTo">The upper end of a range; null for a single value.</param>
internal sealed record SizeListValue(int Size, TextSpan Span, TextSpan Whole, decimal? Number, decimal? UpTo)
{
    /// <summary>The size's name before the value, in a map.</summary>
    public TextSpan? Key { get; init; }
}

/// <summary>A list that stands in the source with one value a size, or one for each size that its row is for.</summary>
/// <param name="Kind">What its values are.</param>
/// <param name="Form">How it is written.</param>
/// <param name="Span">Where it stands, a unit behind it left out.</param>
/// <param name="Values">Its values in their order.</param>
/// <param name="Path">The key that it is the value of ("finished.bust"); empty in the body.</param>
/// <param name="Measure">The unit that stands with it, as written; empty for bare numbers.</param>
internal sealed record SizeList(SizeListKind Kind, SizeListForm Form, TextSpan Span, ImmutableArray<SizeListValue> Values, string Path, string Measure);

/// <summary>A place that names sizes.</summary>
/// <param name="Span">The names with their words ("Sizes S and M only").</param>
/// <param name="Row">The row that is for those sizes alone; empty where the words restrict nothing.</param>
/// <param name="Names">The names as written.</param>
/// <param name="Sizes">The sizes meant, from 0.</param>
/// <param name="Path">The key that it is the value of; empty in the body.</param>
internal sealed record NamedSizes(TextSpan Span, TextSpan Row, ImmutableArray<string> Names, ImmutableArray<int> Sizes, string Path)
{
    /// <summary>The entry of the header that speaks of that size; empty in the body.</summary>
    public TextSpan Entry { get; init; }
}
