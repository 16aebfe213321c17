using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Cli.Reporting;

/// <summary>The counts of a pattern, ready to be told in any form.</summary>
/// <param name="Path">The file as the user knows it.</param>
/// <param name="Sizes">The sizes shown, by name.</param>
/// <param name="Pieces">The rows under each heading.</param>
internal sealed record CountsTable(string Path, ImmutableArray<string> Sizes, ImmutableArray<CountedPiece> Pieces)
{
    /// <summary>How the stitches of each part are shared out among the yarns; empty where that is not known, or where one row is told alone.</summary>
    public ImmutableArray<SharesShape> Shares { get; init; } = [];
}

/// <summary>The rows under one heading.</summary>
internal sealed record CountedPiece(string Name, ImmutableArray<CountedRow> Rows);

/// <summary>One instruction line; numbers are one a size, null where the size skips it or nothing is known. Stated is empty when it states nothing.</summary>
internal sealed record CountedRow(
    string Label,
    int Line,
    string Text,
    string Status,
    ImmutableArray<int> Worked,
    ImmutableArray<int?> Before,
    ImmutableArray<int?> After,
    ImmutableArray<ImmutableSortedDictionary<string, int>> Kinds,
    ImmutableArray<int?> Stated,
    string? Reading)
{
    /// <summary>The stitches between markers, one list a size; empty for none.</summary>
    public ImmutableArray<IReadOnlyList<SectionShape>> Sections { get; init; } = [];

    /// <summary>The rows that "reversing shaping" stands for; empty for none.</summary>
    public ImmutableArray<MirroredShape> Mirrored { get; init; } = [];

    /// <summary>Shapings that go on at the same time, row by row; null for none.</summary>
    public TogetherShape? Together { get; init; }

    /// <summary>How the counts come about, one list a size; empty where nobody asked.</summary>
    public ImmutableArray<IReadOnlyList<StretchShape>> Trace { get; init; } = [];

    /// <summary>"80 (88, 96)": one number where all are the same, a dash for a size without one; empty when there is nothing to tell.</summary>
    public static string InTradeForm(ImmutableArray<int?> numbers)
    {
        if (numbers.IsEmpty || numbers.All(n => n is null))
        {
            return "";
        }

        var words = numbers.Select(n => n?.ToString(CultureInfo.InvariantCulture) ?? "–").ToArray();
        return words.Distinct(StringComparer.Ordinal).Count() == 1 ? words[0] : $"{words[0]} ({string.Join(", ", words[1..])})";
    }
}
