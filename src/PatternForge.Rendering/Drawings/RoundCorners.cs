using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Finds the corners of a motif's rounds: where a group with chains in its middle goes into one place ("3 dc, ch 2, 3 dc in corner sp"), or three stitches in one
/// among single ones. A corner is the number of a top; a half is between two of them.
/// </summary>
internal static class RoundCorners
{
    private const int Fewest = 3;
    private const int Most = 8;

    /// <summary>The corners of each round in the order of work; empty for a circle.</summary>
    public static double[][] Of(CrochetDiagram diagram)
    {
        var rows = diagram.Rows;
        var corners = rows.Select(Own).ToArray();
        for (var r = rows.Length - 1; r > 0; r--)
        {
            if (corners[r].Length > 0 && corners[r - 1].Length == 0 && Under(rows[r], corners[r]) is { } under && AreCorners(rows[r - 1], under))
            {
                corners[r - 1] = under;
            }
        }

        for (var r = 1; r < rows.Length; r++)
        {
            if (corners[r].Length == 0 && corners[r - 1].Length > 0 && Over(rows[r], corners[r - 1]) is { } over)
            {
                corners[r] = over;
            }

            if (corners[r].Length > 0 && corners[r - 1].Length > 0 && corners[r].Length != corners[r - 1].Length)
            {
                corners[r] = [];
            }
        }

        return corners;
    }

    private static DiagramStitch[] TopsOf(DiagramRow row) => [.. row.Stitches.Where(s => s.Top >= 0 && s is not { Mark: DiagramMark.TurningChain, Counts: false } && !IsClosing(s))];

    private static bool IsClosing(DiagramStitch stitch) => stitch is { Mark: DiagramMark.Stitch, Bases: [{ Kind: DiagramPlace.OwnFirst }] };

    private static int BaseOf(DiagramStitch stitch) => stitch.Mark != DiagramMark.Chains && stitch.Bases is [{ Kind: DiagramPlace.Below } only] ? only.Top : -1;

    private static double[] Own(DiagramRow row)
    {
        var tops = TopsOf(row);
        var n = tops.Length;
        var spaces = Enumerable.Range(0, n).Where(i => tops[i].Mark == DiagramMark.Chains && BaseOf(tops[(i + n - 1) % n]) is >= 0 and var before && before == BaseOf(tops[(i + 1) % n])).ToArray();
        if (spaces.Length > 0)
        {
            var longest = spaces.Max(i => tops[i].Chains);
            var found = spaces.Length <= Most ? spaces : [.. spaces.Where(i => tops[i].Chains == longest)];
            return found.Length is >= Fewest and <= Most && AreEven(found, n) ? [.. found.Select(i => (double)tops[i].Top)] : [];
        }

        // Three in one among single stitches.
        var threes = Enumerable.Range(0, n).Where(i => BaseOf(tops[i]) is >= 0 and var at && BaseOf(tops[(i + n - 1) % n]) == at && BaseOf(tops[(i + 1) % n]) == at).ToArray();
        var singles = n - (3 * threes.Length);
        return threes.Length is >= Fewest and <= Most && singles > 0 && threes.Select(i => BaseOf(tops[i])).Distinct().Count() == threes.Length && AreEven(threes, n) ? [.. threes.Select(i => (double)tops[i].Top)] : [];
    }

    /// <summary>The places in the row below that corners are worked into; null where one has none.</summary>
    private static double[]? Under(DiagramRow row, double[] corners)
    {
        var tops = TopsOf(row);
        var under = new List<double>();
        foreach (var corner in corners)
        {
            var at = Array.FindIndex(tops, t => t.Top >= corner);
            var stitch = at < 0 ? null : tops[at].Mark == DiagramMark.Chains ? tops[(at + 1) % tops.Length] : tops[at];
            if (stitch is null || BaseOf(stitch) is not (>= 0 and var place))
            {
                return null;
            }

            under.Add(place);
        }

        return under.Distinct().Count() == corners.Length ? [.. under.Order()] : null;
    }

    /// <summary>True when the spaces at these places stand out among the round's spaces, and stand evenly.</summary>
    private static bool AreCorners(DiagramRow row, double[] places)
    {
        var tops = TopsOf(row);
        var there = tops.Where(t => places.Contains(t.Top)).ToArray();
        if (there.Length != places.Length || there.Any(t => t.Mark != DiagramMark.Chains) || tops.Any(t => t.Mark == DiagramMark.Chains && !places.Contains(t.Top) && t.Chains >= there.Min(c => c.Chains)))
        {
            return false;
        }

        return AreEven([.. places.Select(p => (int)p)], row.Tops);
    }

    /// <summary>True when the sides between corners are about the same: else it is no polygon with equal sides.</summary>
    private static bool AreEven(int[] corners, int around)
    {
        var sides = corners.Select((c, i) => (corners[(i + 1) % corners.Length] - c + around) % around).ToArray();
        return sides.Max() - sides.Min() <= Math.Max(2, around / corners.Length / 4);
    }

    /// <summary>The corners over those of the round below: the middle of what is worked into each; null where one has nothing.</summary>
    private static double[]? Over(DiagramRow row, double[] corners)
    {
        var tops = TopsOf(row);
        var over = new List<double>();
        foreach (var corner in corners)
        {
            var first = Array.FindIndex(tops, t => BaseOf(t) == corner);
            if (first < 0)
            {
                return null;
            }

            while (BaseOf(tops[(first + tops.Length - 1) % tops.Length]) == corner && first > -tops.Length)
            {
                first = (first + tops.Length - 1) % tops.Length;
            }

            var count = 1;
            while (count < tops.Length && BaseOf(tops[(first + count) % tops.Length]) == corner)
            {
                count++;
            }

            over.Add(count % 2 == 1 ? tops[(first + (count / 2)) % tops.Length].Top : tops[(first + (count / 2)) % tops.Length].Top - 0.5);
        }

        return [.. over.Order()];
    }
}
