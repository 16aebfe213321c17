using System.Collections.Immutable;

namespace PatternForge.Core.Corrections;

/// <summary>Lays two lists beside each other by their longest common subsequence, at a bounded cost.</summary>
internal static class Alignment
{
    // Beyond it only what stands first and last alike is matched, and single items that occur once in both lists.
    private const int MostCells = 4_000_000;

    /// <summary>Pairs of places that are alike, in order, within two stretches.</summary>
    /// <param name="old">What the items of the old list are compared by; null for those that match nothing.</param>
    /// <param name="now">The same of the new list.</param>
    public static List<(int Old, int New)> Pairs(IReadOnlyList<string?> old, IReadOnlyList<string?> now)
    {
        var pairs = new List<(int, int)>();
        var head = 0;
        while (head < old.Count && head < now.Count && Same(old[head], now[head]))
        {
            pairs.Add((head, head));
            head++;
        }

        var tail = 0;
        while (tail < old.Count - head && tail < now.Count - head && Same(old[^(tail + 1)], now[^(tail + 1)]))
        {
            tail++;
        }

        var (rows, columns) = (old.Count - head - tail, now.Count - head - tail);
        if (rows > 0 && columns > 0)
        {
            pairs.AddRange((long)rows * columns <= MostCells ? Common(old, now, head, rows, columns) : Once(old, now, head, rows, columns));
        }

        for (var i = tail; i > 0; i--)
        {
            pairs.Add((old.Count - i, now.Count - i));
        }

        return pairs;
    }

    /// <summary>The stretches between pairs, each as places of both lists.</summary>
    public static IEnumerable<(Range Old, Range New)> Gaps(IEnumerable<(int Old, int New)> pairs, int old, int now)
    {
        var (a, b) = (0, 0);
        foreach (var (i, j) in pairs.Append((old, now)))
        {
            if (i > a || j > b)
            {
                yield return (a..i, b..j);
            }

            (a, b) = (i + 1, j + 1);
        }
    }

    private static bool Same(string? a, string? b) => a is not null && a == b;

    private static List<(int, int)> Common(IReadOnlyList<string?> old, IReadOnlyList<string?> now, int head, int rows, int columns)
    {
        var longest = new int[rows + 1, columns + 1];
        for (var i = rows - 1; i >= 0; i--)
        {
            for (var j = columns - 1; j >= 0; j--)
            {
                longest[i, j] = Same(old[head + i], now[head + j]) ? longest[i + 1, j + 1] + 1 : Math.Max(longest[i + 1, j], longest[i, j + 1]);
            }
        }

        var pairs = new List<(int, int)>();
        for (var (i, j) = (0, 0); i < rows && j < columns;)
        {
            if (Same(old[head + i], now[head + j]) && longest[i, j] == longest[i + 1, j + 1] + 1)
            {
                pairs.Add((head + i++, head + j++));
            }
            else if (longest[i + 1, j] >= longest[i, j + 1])
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        return pairs;
    }

    private static List<(int, int)> Once(IReadOnlyList<string?> old, IReadOnlyList<string?> now, int head, int rows, int columns)
    {
        var places = Enumerable.Range(head, columns).Where(j => now[j] is not null).GroupBy(j => now[j]!, StringComparer.Ordinal).Where(g => g.Count() == 1).ToImmutableDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var pairs = new List<(int, int)>();
        var least = head;
        foreach (var i in Enumerable.Range(head, rows))
        {
            if (old[i] is { } key && places.TryGetValue(key, out var j) && j >= least)
            {
                pairs.Add((i, j));
                least = j + 1;
            }
        }

        return pairs;
    }
}
