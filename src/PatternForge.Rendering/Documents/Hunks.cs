namespace PatternForge.Rendering.Documents;

/// <summary>A stretch of one list in whose place another list has something else; either may be empty.</summary>
/// <param name="Start">Where it begins in the first list.</param>
/// <param name="End">Where it ends there.</param>
/// <param name="OtherStart">Where it begins in the second list.</param>
/// <param name="OtherEnd">Where it ends there.</param>
internal readonly record struct Hunk(int Start, int End, int OtherStart, int OtherEnd);

/// <summary>Finds the least number of things that differ between two lists (Myers, "An O(ND) difference algorithm and its variations", 1986), as stretches.</summary>
internal static class Hunks
{
    private const int MostDifferences = 1_500;

    /// <summary>The stretches in order; null where more differs than is worth looking at.</summary>
    public static List<Hunk>? Between(ReadOnlySpan<string> one, ReadOnlySpan<string> other, int at = 0, int otherAt = 0)
    {
        var (head, tail) = (0, 0);
        while (head < one.Length && head < other.Length && one[head] == other[head])
        {
            head++;
        }

        while (tail < one.Length - head && tail < other.Length - head && one[^(tail + 1)] == other[^(tail + 1)])
        {
            tail++;
        }

        var a = one[head..^tail];
        var b = other[head..^tail];
        if (a.IsEmpty && b.IsEmpty)
        {
            return [];
        }

        return a.IsEmpty || b.IsEmpty ? [new(at + head, at + head + a.Length, otherAt + head, otherAt + head + b.Length)] : Walk(a, b, at + head, otherAt + head);
    }

    private static List<Hunk>? Walk(ReadOnlySpan<string> a, ReadOnlySpan<string> b, int at, int otherAt)
    {
        var most = Math.Min(a.Length + b.Length, MostDifferences);
        var furthest = new int[(2 * most) + 3];
        var trace = new List<int[]>();
        var middle = most + 1;
        for (var d = 0; d <= most; d++)
        {
            trace.Add(furthest[(middle - d)..(middle + d + 1)]);
            for (var k = -d; k <= d; k += 2)
            {
                var x = k == -d || (k != d && furthest[middle + k - 1] < furthest[middle + k + 1]) ? furthest[middle + k + 1] : furthest[middle + k - 1] + 1;
                var y = x - k;
                while (x < a.Length && y < b.Length && a[x] == b[y])
                {
                    (x, y) = (x + 1, y + 1);
                }

                furthest[middle + k] = x;
                if (x >= a.Length && y >= b.Length)
                {
                    return Back(trace, a.Length, b.Length, at, otherAt);
                }
            }
        }

        return null;
    }

    private static List<Hunk> Back(List<int[]> trace, int x, int y, int at, int otherAt)
    {
        var hunks = new List<Hunk>();
        for (var d = trace.Count - 1; d > 0; d--)
        {
            var (k, before) = (x - y, trace[d]);
            int Furthest(int diagonal) => before[diagonal + d];
            var down = k == -d || (k != d && Furthest(k - 1) < Furthest(k + 1));
            var from = down ? k + 1 : k - 1;
            var (fromX, fromY) = (Furthest(from), Furthest(from) - from);
            var (toX, toY) = down ? (fromX, fromY + 1) : (fromX + 1, fromY);
            var single = new Hunk(at + fromX, at + toX, otherAt + fromY, otherAt + toY);
            if (hunks.Count > 0 && hunks[^1] is var next && next.Start == single.End && next.OtherStart == single.OtherEnd)
            {
                hunks[^1] = next with { Start = single.Start, OtherStart = single.OtherStart };
            }
            else
            {
                hunks.Add(single);
            }

            (x, y) = (fromX, fromY);
        }

        hunks.Reverse();
        return hunks;
    }
}
