using PatternForge.Core.Stitches;

namespace PatternForge.Core.Model;

/// <summary>What a page shows of rows that stand both in words and in a chart.</summary>
public enum PageContent
{
    /// <summary>Both.</summary>
    All,

    /// <summary>The words.</summary>
    Words,

    /// <summary>The chart.</summary>
    Charts,
}

/// <summary>Which edition of a pattern a text is, and what its page has to say otherwise than the pattern's own page.</summary>
/// <param name="Name">The edition's name, "uk".</param>
/// <param name="Readers">Whose names of tools its page gives; null where both stand.</param>
/// <param name="IsInFull">True where the page's own words are to be written without abbreviations.</param>
public sealed record EditionForm(string Name, Dialect? Readers, bool IsInFull)
{
    /// <summary>The units that its page tells figures in; null where both stand side by side.</summary>
    public UnitSystem? Units { get; init; }

    /// <summary>True where the table of abbreviations gives the names of both terms.</summary>
    public bool HasBothTerms { get; init; }

    /// <summary>The size that stands out, from 0; null where none does.</summary>
    public int? MarkedSize { get; init; }

    /// <summary>What it shows of rows that stand in words and in a chart.</summary>
    public PageContent Content { get; init; }

    /// <summary>True for large print.</summary>
    public bool IsLargePrint { get; init; }

    /// <summary>True for a page that spares ink.</summary>
    public bool IsLowInk { get; init; }

    /// <summary>True for a page that is made to be read out: drawings and tables in words, signs by their names.</summary>
    public bool IsReadOut { get; init; }

    /// <summary>True for a pattern that is worked in mirror image.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>One form that has what both have.</summary>
    public EditionForm With(EditionForm other) => new(Name, other.Readers ?? Readers, IsInFull || other.IsInFull)
    {
        Units = other.Units ?? Units,
        HasBothTerms = HasBothTerms || other.HasBothTerms,
        MarkedSize = other.MarkedSize ?? MarkedSize,
        Content = other.Content == PageContent.All ? Content : other.Content,
        IsLargePrint = IsLargePrint || other.IsLargePrint,
        IsLowInk = IsLowInk || other.IsLowInk,
        IsReadOut = IsReadOut || other.IsReadOut,
        IsMirrored = IsMirrored || other.IsMirrored,
    };
}
