using System.Collections.Immutable;

namespace PatternForge.Core.Work;

/// <summary>The kinds of stitches and spaces that a line of crochet leaves, in every size.</summary>
internal static class RowKinds
{
    private static readonly ImmutableSortedDictionary<string, int> None = ImmutableSortedDictionary<string, int>.Empty;

    /// <summary>All of them, one table a size.</summary>
    public static ImmutableSortedDictionary<string, int>[] All(SizeState[] states) => [.. states.Select(s => s.Live.Below?.Kinds ?? None)];

    /// <summary>Counts by kind where there are several, or spaces; empty where there is nothing but one kind of stitch.</summary>
    public static ImmutableArray<ImmutableSortedDictionary<string, int>> Several(SizeState[] states, int?[] after)
    {
        var kinds = states.Select(s => after[s.Size] is null ? None : s.Live.Below?.Kinds ?? None).ToImmutableArray();
        return kinds.Any(k => k.Count > 1 || k.Keys.Any(name => name.EndsWith(" sp", StringComparison.Ordinal))) ? kinds : [];
    }

    /// <summary>The one kind of stitch there is ("ch" for a foundation); null where there are several, or none is known.</summary>
    public static string? Only(SizeState[] states, int?[] after)
    {
        var rows = states.Where(s => after[s.Size] is not null).Select(s => s.Live.Below).OfType<RowBelow>().ToArray();
        if (rows.Length == 0)
        {
            return null;
        }

        return rows.All(r => r.IsFoundation) ? "ch" : rows.All(r => r.Kinds.Count == 1) && rows.Select(r => r.Kinds.First().Key).Distinct(StringComparer.Ordinal).ToArray() is [var only] ? only : null;
    }
}
