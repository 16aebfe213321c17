using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;

namespace PatternForge.Exam;

/// <summary>A finding as the exam sees it.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its rule's name.</param>
/// <param name="Area">What it is about.</param>
/// <param name="Severity">Its weight.</param>
/// <param name="Sizes">Indices of the sizes concerned; empty means all.</param>
/// <param name="Message">Its sentence.</param>
public sealed record SeenFinding(string Code, string Name, Area Area, Severity Severity, ImmutableArray<int> Sizes, string Message);

/// <summary>What the compiler made of one row.</summary>
/// <param name="Status">checked, trusted or unread.</param>
/// <param name="After">Stitches after it, one a size.</param>
/// <param name="Kinds">Stitches and spaces by kind, one table a size; empty where there is nothing but stitches.</param>
/// <param name="Findings">The findings that stand on the row.</param>
public sealed record SeenRow(LineStatus Status, ImmutableArray<int?> After, ImmutableArray<ImmutableSortedDictionary<string, int>> Kinds, ImmutableArray<SeenFinding> Findings)
{
    /// <summary>True when the row was understood and worked.</summary>
    public bool IsChecked => Status == LineStatus.Checked;

    /// <summary>True when an error stands on it.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>True when a warning stands on it.</summary>
    public bool HasWarnings => Findings.Any(f => f.Severity == Severity.Warning);
}

/// <summary>What the compiler made of a pattern: its rows in order, and what it found outside them.</summary>
public sealed record SeenPattern(ImmutableArray<SeenRow> Rows, ImmutableArray<SeenFinding> Elsewhere);
