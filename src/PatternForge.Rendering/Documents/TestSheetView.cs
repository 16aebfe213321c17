using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>The sheet of a test maker for one size: what the pattern says, and what is asked.</summary>
public sealed record TestSheetView
{
    /// <summary>The pattern's title.</summary>
    public required string Title { get; init; }

    /// <summary>Who designed it; null when not said.</summary>
    public string? Designer { get; init; }

    /// <summary>Its version as written; empty when not said.</summary>
    public required string Version { get; init; }

    /// <summary>Version and date in one line; null when neither is said.</summary>
    public string? Edition { get; init; }

    /// <summary>The size's name; empty where there is one without a name.</summary>
    public required string Size { get; init; }

    /// <summary>The name of the file that the answers are saved in.</summary>
    public required string File { get; init; }

    /// <summary>The project level in a word; null when not said.</summary>
    public string? Level { get; init; }

    /// <summary>Where the answers go; null when not said.</summary>
    public LinkView? Contact { get; init; }

    /// <summary>Needles and hooks.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    /// <summary>The gauges that are asked for, stitches and rows each.</summary>
    public ImmutableArray<AskView> Gauges { get; init; } = [];

    /// <summary>The yarns that are asked for.</summary>
    public ImmutableArray<AskView> Yarns { get; init; } = [];

    /// <summary>The finished measurements that are asked for.</summary>
    public ImmutableArray<AskView> Measures { get; init; } = [];

    /// <summary>The headings of the sections to comment on.</summary>
    public ImmutableArray<string> Sections { get; init; } = [];

    /// <summary>The questions.</summary>
    public ImmutableArray<QuestionView> Questions { get; init; } = [];

    /// <summary>The script of the form, as it stands between its tags.</summary>
    public required string Script { get; init; }

    /// <summary>The SHA-256 of the script in Base64, for the page's own security policy.</summary>
    public required string ScriptHash { get; init; }
}

/// <summary>A number that a test maker is asked for.</summary>
public sealed record AskView
{
    /// <summary>What it goes by in the answers.</summary>
    public required string Key { get; init; }

    /// <summary>The part of it, "stitches" or "rows"; null where it is one number.</summary>
    public string? Field { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string Name { get; init; }

    /// <summary>What the pattern says; an en dash where it says nothing.</summary>
    public required string Told { get; init; }

    /// <summary>The unit that the answer is in; empty for a count.</summary>
    public required string Unit { get; init; }
}

/// <summary>A question to answer in words.</summary>
public sealed record QuestionView
{
    /// <summary>What it goes by in the answers.</summary>
    public required string Key { get; init; }

    /// <summary>The question.</summary>
    public required string Text { get; init; }

    /// <summary>A word on how to answer; null for none.</summary>
    public string? Hint { get; init; }
}
