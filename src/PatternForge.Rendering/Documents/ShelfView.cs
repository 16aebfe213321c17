using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>A page with all patterns of a studio.</summary>
public sealed record ShelfView
{
    /// <summary>Whose they are, "Designs by Ilsa Merrowby"; "Designs" where they are of several people, or of nobody named.</summary>
    public required string Title { get; init; }

    /// <summary>The one designer of all of them; null where there is none or more.</summary>
    public string? Designer { get; init; }

    /// <summary>The designs, by title.</summary>
    public required ImmutableArray<DesignView> Designs { get; init; }
}

/// <summary>One design of the shelf in a few words.</summary>
public sealed record DesignView
{
    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>Who designed it; null when not said, and on the shelf of one designer.</summary>
    public string? Designer { get; init; }

    /// <summary>The kind of pattern in words: "Knitting pattern".</summary>
    public required string Kind { get; init; }

    /// <summary>Its files below the shelf without their extension; no matter of templates.</summary>
    internal string? Stem { get; init; }

    /// <summary>The address of its page from here; null where no page was made.</summary>
    public string? Address { get; init; }

    /// <summary>The project level in a word; null when not said.</summary>
    public string? Level { get; init; }

    /// <summary>Its sizes in trade form, "S (M, L)"; null when there is one without a name.</summary>
    public string? Sizes { get; init; }

    /// <summary>The weights of its yarns in words; null when not said.</summary>
    public string? Yarn { get; init; }

    /// <summary>Version and date in one line; null when neither is said.</summary>
    public string? Edition { get; init; }

    /// <summary>True when it was released as a draft.</summary>
    public bool Draft { get; init; }

    /// <summary>Its first photo; null when it has none that can be shown.</summary>
    public PhotoView? Photo { get; init; }
}
