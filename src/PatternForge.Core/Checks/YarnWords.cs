using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>How messages speak of a yarn.</summary>
internal static class YarnWords
{
    /// <summary>The yarn by its name, else its label, else as "the yarn".</summary>
    public static string Of(Yarn yarn) => yarn.Name is { } name ? $"`{name}`" : yarn.Label is { } label ? $"yarn {label}" : "the yarn";
}
