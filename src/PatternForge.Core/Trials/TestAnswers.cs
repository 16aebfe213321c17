using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Trials;

/// <summary>A gauge that a test maker got; null = not said.</summary>
public sealed record GaugeGot(string Key, decimal? Stitches, decimal? Rows);

/// <summary>What a test maker said under a key.</summary>
public sealed record SaidOf(string Key, string Text);

/// <summary>What one test maker sent back. What could not be read is as if it were not there, and has a finding.</summary>
public sealed record TestAnswers
{
    /// <summary>The file.</summary>
    public required SourceText Source { get; init; }

    /// <summary>What is wrong with it.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>The size, by its number from 0; null where it is not known: then the answers cannot be held against anything.</summary>
    public int? Size { get; init; }

    /// <summary>The version that was tested; null when not said.</summary>
    public string? Version { get; init; }

    /// <summary>What the maker wants to be called; null when not said.</summary>
    public string? Name { get; init; }

    /// <summary>The gauges.</summary>
    public ImmutableArray<GaugeGot> Gauges { get; init; } = [];

    /// <summary>Grams used, by yarn.</summary>
    public ImmutableArray<(string Key, decimal Grams)> Yarns { get; init; } = [];

    /// <summary>Measurements of the finished piece, in centimetres.</summary>
    public ImmutableArray<(string Key, decimal Cm)> Measures { get; init; } = [];

    /// <summary>Hours; null when not said.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Comments, by section.</summary>
    public ImmutableArray<SaidOf> Comments { get; init; } = [];

    /// <summary>Mistakes that were found: the row as the maker names it (empty where none is named), and what is wrong.</summary>
    public ImmutableArray<SaidOf> Errors { get; init; } = [];

    /// <summary>Answers to the other questions, by their keys.</summary>
    public ImmutableArray<SaidOf> Questions { get; init; } = [];

    /// <summary>True where an error stands: the answers are of another pattern, or of no size.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);
}
