namespace PatternForge.Core.Findings;

/// <summary>Finds the known names that a misspelt one most likely means.</summary>
public static class Suggest
{
    /// <summary>Up to <paramref name="most"/> names within a third of the word's length (at least one letter) of the said word, nearest first.</summary>
    public static IReadOnlyList<string> Nearest(string said, IEnumerable<string> known, int most = 3)
    {
        if (said.Length > 40)
        {
            return [];
        }

        var limit = Math.Max(1, said.Length / 3);
        return [.. known
            .Distinct(StringComparer.Ordinal)
            .Select(name => (name, distance: Distance(said, name, limit)))
            .Where(pair => pair.distance <= limit)
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.name, StringComparer.Ordinal)
            .Take(most).Select(pair => pair.name)];
    }

    /// <summary>Letters to add, drop, change or swap, ignoring case; anything over <paramref name="limit"/> may come back as limit + 1.</summary>
    public static int Distance(string a, string b, int limit = int.MaxValue - 1)
    {
        if (Math.Abs(a.Length - b.Length) > limit)
        {
            return limit + 1;
        }

        var rows = new int[3][];
        for (var i = 0; i < 3; i++)
        {
            rows[i] = new int[b.Length + 1];
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0][j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            var (now, before, twoBefore) = (rows[i % 3], rows[(i - 1) % 3], rows[(i + 1) % 3]);
            now[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]);
                now[j] = Math.Min(Math.Min(now[j - 1], before[j]) + 1, before[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 2]) && char.ToLowerInvariant(a[i - 2]) == char.ToLowerInvariant(b[j - 1]))
                {
                    now[j] = Math.Min(now[j], twoBefore[j - 2] + 1);
                }
            }
        }

        return rows[a.Length % 3][b.Length];
    }
}
