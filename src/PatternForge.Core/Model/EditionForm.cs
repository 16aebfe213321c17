using PatternForge.Core.Stitches;

namespace PatternForge.Core.Model;

/// <summary>Which edition of a pattern a text is, and what its page has to say otherwise than the pattern's own page.</summary>
/// <param name="Name">The edition's name, "uk".</param>
/// <param name="Readers">Whose names of tools its page gives; null where both stand.</param>
/// <param name="IsInFull">True where the page's own words are to be written without abbreviations.</param>
public sealed record EditionForm(string Name, Dialect? Readers, bool IsInFull)
{
    /// <summary>The units that its page tells figures in; null where both stand side by side.</summary>
    public UnitSystem? Units { get; init; }
}
