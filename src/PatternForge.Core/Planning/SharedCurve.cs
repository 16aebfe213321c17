using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>
/// A curve in steps that all sizes can share: bind-offs from the largest to the smallest, then single decreases at longer and longer intervals, and for a sleeve cap back again. A step that a
/// size does not have is worked 0 times in it. The steps are those of the curve put in order, where this moves no point of the edge by more than a stitch.
/// </summary>
internal static class SharedCurve
{
    private const int MostSteps = 400;
    private const int Largest = 60;
    private const int Longest = 60;

    /// <summary>Both edges alike.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">Stitches before.</param>
    /// <param name="andBack">True where the curve is steep in its middle and flat at both ends.</param>
    public static PlanLines? BothEdges(CurvePlan curve, int from, bool andBack = false) => Of(
        curve, from, 2, andBack,
        (stitches, times, left) => FormattableString.Invariant($"BO {PlanWords.Sts(stitches)} at beg of next {2 * times} rows. ({PlanWords.Sts(left)})"),
        (interval, times, left) => $"Dec 1 st at each end of {PlanWords.Every(interval, inRound: false)} {PlanWords.Times(times)}. ({PlanWords.Sts(left)})");

    /// <summary>One edge.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">Stitches before.</param>
    /// <param name="edge">The edge's name: "neck edge".</param>
    /// <param name="more">Plain rows more at the end.</param>
    public static PlanLines? OneEdge(CurvePlan curve, int from, string edge, int more = 0) => Of(
        curve, from, 1, andBack: false,
        (stitches, times, left) => $"BO {PlanWords.Sts(stitches)} at {edge} of every other row {PlanWords.Times(times)}. ({PlanWords.Sts(left)})",
        (interval, times, left) => $"Dec 1 st at {edge} of {PlanWords.Every(interval, inRound: false)} {PlanWords.Times(times)}. ({PlanWords.Sts(left)})",
        more);

    private static PlanLines? Of(CurvePlan curve, int from, int edges, bool andBack, Func<int, int, int, string> bindOff, Func<int, int, int, string> decrease, int more = 0)
    {
        var steps = Steps(curve);
        if (steps.Count > MostSteps || steps.Exists(s => s.Stitches > 1 ? s.Interval > 2 || s.Stitches > Largest : s.Interval > Longest || s.Interval % 2 > 0))
        {
            return null;
        }

        var turn = andBack ? steps.FindLastIndex(s => Pace(s) == steps.Max(Pace)) + 1 : steps.Count;
        (int Interval, int Stitches)[] falling = [.. steps[..turn].OrderBy(Pace)];
        (int Interval, int Stitches)[] rising = [.. steps[turn..].OrderByDescending(Pace)];
        if (!IsNear([.. curve.Steps.Select(s => (s.Row, s.Stitches))], [.. falling, .. rising]))
        {
            return null;
        }

        var lines = new Lines(from, edges, bindOff, decrease);

        // The first bind-off is the one that every size has, of its own number.
        var first = falling is [{ Stitches: > 1 } opening, ..] ? opening.Stitches : 0;
        if (first > 0)
        {
            lines.Add(-1000, (2, first), 1);
            falling = falling[1..];
        }

        for (var stitches = Largest; stitches > 1; stitches--)
        {
            lines.Add(-stitches, (2, stitches), falling.Count(s => s.Stitches == stitches));
        }

        for (var interval = 2; interval <= Longest; interval += 2)
        {
            lines.Add(interval, (interval, 1), falling.Count(s => s == (interval, 1)));
        }

        for (var interval = Longest; andBack && interval >= 2; interval -= 2)
        {
            lines.Add(1000 - interval, (interval, 1), rising.Count(s => s == (interval, 1)));
        }

        for (var stitches = 2; andBack && stitches <= Largest; stitches++)
        {
            lines.Add(1000 + stitches, (2, stitches), rising.Count(s => s.Stitches == stitches));
        }

        return lines.With(curve.RowsAfter + more);
    }

    private static List<(int Interval, int Stitches)> Steps(CurvePlan curve)
    {
        var (steps, before) = (new List<(int, int)>(), -1);
        foreach (var step in curve.Steps)
        {
            // Several stitches behind plain rows: one of them two rows earlier.
            var (interval, stitches) = (step.Row - before, step.Stitches);
            before = step.Row;
            if (stitches > 1 && interval > 2)
            {
                steps.Add((interval - 2, 1));
                (interval, stitches) = (2, stitches - 1);
            }

            steps.Add((interval, stitches));
        }

        return steps;
    }

    // The slower the edge goes in, the greater.
    private static int Pace((int Interval, int Stitches) step) => step.Stitches > 1 ? -step.Stitches : step.Interval;

    private static bool IsNear((int Row, int Stitches)[] curve, (int Interval, int Stitches)[] ordered)
    {
        var rows = ordered.Sum(s => s.Interval);
        var (own, other) = (new int[rows + 1], new int[rows + 1]);
        foreach (var (row, stitches) in curve)
        {
            own[Math.Min(rows, row + 1)] += stitches;
        }

        var at = 0;
        foreach (var (interval, stitches) in ordered)
        {
            other[at += interval] += stitches;
        }

        var apart = 0;
        for (var row = 0; row <= rows; row++)
        {
            apart += own[row] - other[row];
            if (Math.Abs(apart) > 1)
            {
                return false;
            }
        }

        return true;
    }

    private sealed class Lines(int from, int edges, Func<int, int, int, string> bindOff, Func<int, int, int, string> decrease)
    {
        private readonly List<(string Line, int Rank, bool IsIdle)> _lines = [];
        private int _left = from;

        public void Add(int rank, (int Interval, int Stitches) step, int times)
        {
            _left -= edges * step.Stitches * times;
            _lines.Add((step.Stitches > 1 ? bindOff(step.Stitches, times, _left) : decrease(step.Interval, times, _left), rank, times == 0));
        }

        public PlanLines With(int rowsAfter)
        {
            _lines.Add(($"Work {PlanWords.Counted(rowsAfter, "row")} even.", 5000, rowsAfter == 0));
            return new([.. _lines.Select(l => l.Line)], null, null) { Ranks = [.. _lines.Select(l => l.Rank)], Idle = [.. _lines.Index().Where(l => l.Item.IsIdle).Select(l => l.Index)] };
        }
    }
}
