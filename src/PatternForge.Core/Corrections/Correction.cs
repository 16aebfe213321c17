using System.Collections.Immutable;

namespace PatternForge.Core.Corrections;

/// <summary>What a difference between two versions is about.</summary>
public enum CorrectionSubject
{
    /// <summary>A row or another line of the instructions.</summary>
    Row,

    /// <summary>A whole section, or the order of the sections.</summary>
    Section,

    /// <summary>A chart.</summary>
    Chart,

    /// <summary>The sizes.</summary>
    Sizes,

    /// <summary>A measurement of the body or of the finished piece, or the ease.</summary>
    Measurement,

    /// <summary>The gauge.</summary>
    Gauge,

    /// <summary>A yarn or its amount.</summary>
    Yarn,

    /// <summary>Needles, hooks and other things needed.</summary>
    Tools,

    /// <summary>A stitch that the pattern defines, or an abbreviation.</summary>
    Stitches,

    /// <summary>The care of the finished piece.</summary>
    Care,

    /// <summary>Notes in force for every row.</summary>
    Notes,

    /// <summary>Anything else that is written.</summary>
    Words,
}

/// <summary>Whom a difference concerns, the most urgent first.</summary>
public enum CorrectionWeight
{
    /// <summary>Everybody who is making the piece and is at that place already, or will come to it.</summary>
    AtWork,

    /// <summary>Only those who have not begun.</summary>
    NotBegun,

    /// <summary>Nobody's stitches: the words alone are other ones.</summary>
    Wording,
}

/// <summary>One difference in meaning between two versions of a pattern.</summary>
public sealed record Correction
{
    /// <summary>What it is about.</summary>
    public required CorrectionSubject Subject { get; init; }

    /// <summary>Whom it concerns.</summary>
    public required CorrectionWeight Weight { get; init; }

    /// <summary>The heading of the section; empty for the header and for what stands before the first heading.</summary>
    public string Section { get; init; } = "";

    /// <summary>The label of the row, as makers call it ("Row 14"), or what of the header it is ("Gauge"); empty for a line without a label.</summary>
    public string Label { get; init; } = "";

    /// <summary>The names of the sizes concerned; empty for all.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>What changed, in a sentence without a full stop.</summary>
    public required string Text { get; init; }

    /// <summary>How it was written; null where it was not there, or where the sentence says it.</summary>
    public string? Was { get; init; }

    /// <summary>How it is written now; null where it is gone, or where the sentence says it.</summary>
    public string? Now { get; init; }

    /// <summary>Why it matters, in a sentence without a full stop; null where that is plain.</summary>
    public string? Why { get; init; }

    /// <summary>The line of the old file, from 1; null where it is not there.</summary>
    public int? OldLine { get; init; }

    /// <summary>The line of the new file, from 1; null where it is gone.</summary>
    public int? NewLine { get; init; }

    /// <summary>"Body, Row 14, size L": where a maker finds it.</summary>
    public string Place
    {
        get
        {
            var parts = new List<string>(3);
            if (Section.Length > 0)
            {
                parts.Add(Section);
            }

            if (Label.Length > 0)
            {
                parts.Add(Label);
            }

            if (!Sizes.IsEmpty)
            {
                parts.Add(Sizes.Length == 1 ? $"size {Sizes[0]}" : $"sizes {string.Join(", ", Sizes[..^1])} and {Sizes[^1]}");
            }

            return string.Join(", ", parts);
        }
    }

    /// <summary>"Body, Row 14, size L: decrease 6 stitches, not 4; 96 stitches (was 98)".</summary>
    public string Sentence => Place is { Length: > 0 } place ? $"{place}: {Text}" : Text;
}

/// <summary>A line of one of the versions that was not understood, and is therefore compared by its words alone.</summary>
/// <param name="IsNew">True for the new version.</param>
/// <param name="Line">Its line in that file, from 1.</param>
/// <param name="Words">What stands there.</param>
public sealed record UnreadPlace(bool IsNew, int Line, string Words);

/// <summary>Two versions of a pattern, held against each other by what they mean.</summary>
public sealed record Comparison
{
    /// <summary>The title of the new version; null when it has none.</summary>
    public string? Title { get; init; }

    /// <summary>The version that the old file says it is; null when it says none.</summary>
    public string? OldVersion { get; init; }

    /// <summary>The version that the new file says it is; null when it says none.</summary>
    public string? NewVersion { get; init; }

    /// <summary>The date of the new file; null when it says none.</summary>
    public string? NewDate { get; init; }

    /// <summary>The sizes of the new version, then those that are gone.</summary>
    public required ImmutableArray<string> Sizes { get; init; }

    /// <summary>What changed: first the header, then the body in its order.</summary>
    public required ImmutableArray<Correction> Corrections { get; init; }

    /// <summary>What was not understood in either version.</summary>
    public required ImmutableArray<UnreadPlace> Unread { get; init; }

    /// <summary>What concerns a size: what is for all, and what names it.</summary>
    public Comparison InSize(string size) => this with
    {
        Corrections = [.. Corrections.Where(c => c.Sizes.IsEmpty || c.Sizes.Any(s => string.Equals(s, size, StringComparison.OrdinalIgnoreCase)))],
    };
}
