using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>Plans that follow what was measured on a piece, from point to point, and the half ball of a crown.</summary>
internal static class OutlineRows
{
    /// <summary>An edge, or both, along its measured points.</summary>
    public static PlanLines Edge(PlanNumbers p)
    {
        var from = p.Count("from");
        var at = p.Choice("at", "ends", "neck edge", "armhole edge");
        var (stitches, rows) = p.Gauge();
        var legs = new List<Leg>();
        var (row, gone) = (0, 0);
        foreach (var (up, inward) in p.Points("up", "in"))
        {
            // An edge is shaped once in two rows: what is in already where it begins is bound off in the first two.
            var (toRow, toGone) = (2 * Whole(up * rows / 20), Whole(inward * stitches / 10));
            toRow = toRow == 0 && toGone > 0 ? 2 : toRow;
            if (toRow < row || toGone < gone || (toRow == row && row > 0))
            {
                return PlanLines.No(FormattableString.Invariant($"{PlanWords.Figure(inward)} cm in at {PlanWords.Figure(up)} cm is no point above and within the one before"), "give the points from the bottom up; an edge never goes out again");
            }

            legs.Add(new(toRow - row, gone - toGone));
            (row, gone) = (toRow, toGone);
        }

        return Along(legs, from, at);
    }

    /// <summary>A piece along its measured widths or girths.</summary>
    public static PlanLines Piece(PlanNumbers p)
    {
        var points = p.Points("up", "width");
        if (p.Choice("in", "rows", "rounds") == "rounds")
        {
            return InRounds(p, [.. points.Select(w => new WidthPoint(w.First, w.Second))]);
        }

        var (stitches, rows) = p.Gauge();
        var from = p.Count("from", Whole(points.IsEmpty ? 0 : points[0].Second * stitches / 10));
        var legs = new List<Leg>();
        for (var i = 1; i < points.Length; i++)
        {
            int Row(int at) => 2 * Whole((points[at].First - points[0].First) * rows / 20);
            int AtEnd(int at) => Whole((points[at].Second - points[0].Second) * stitches / 20);
            if (Row(i) <= Row(i - 1))
            {
                return PlanLines.No(FormattableString.Invariant($"point {i + 1} of the outline does not go up"), "give the points from the bottom up, two rows apart at least");
            }

            legs.Add(new(Row(i) - Row(i - 1), AtEnd(i) - AtEnd(i - 1)));
        }

        return Along(legs, from, "ends");
    }

    /// <summary>A half ball in rounds.</summary>
    public static PlanLines Dome(PlanNumbers p) => InRounds(p, Outline.Dome(p.Length("girth"), p.Length("depth")));

    private static PlanLines InRounds(PlanNumbers p, ImmutableArray<WidthPoint> points)
    {
        var (stitches, rows) = p.Gauge();
        var planned = Outline.Plan(points, stitches, rows, 10, p.Count("each", 8), ShapedRows.Any, inRound: true, p.Count("from", 0) is > 0 and var from ? from : null);
        return planned.Plan is not { } plan ? PlanLines.No(planned.Reason!, planned.Help)
            : plan.Rounds() is { } lines ? new(lines, null, null)
            : PlanLines.No("the outline grows so fast somewhere that its increases do not fit into one round", "fewer stitches a time with `each`, or more points where it turns");
    }

    // Each leg is straight: as even a schedule as there is, or, where it is flatter than a stitch in two rows, bound off or cast on in steps.
    private static PlanLines Along(List<Leg> legs, int from, string at)
    {
        var ends = at == "ends" ? 2 : 1;
        var (lines, ranks) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<int>());
        var count = from;
        foreach (var (rank, leg) in legs.Index())
        {
            var after = count + (ends * leg.AtEnd);
            if (count < 0 || after < 1 || Math.Max(count, after) > PlanLimits.MostStitches || leg.Rows > PlanLimits.MostRows)
            {
                return PlanLines.No(FormattableString.Invariant($"the outline comes to {after} sts from {count} over {leg.Rows} rows"), "an outline that leaves stitches to work with, or another gauge");
            }

            foreach (var line in Lines(leg, count, after, at))
            {
                lines.Add(line);
                ranks.Add(rank);
            }

            count = after;
        }

        return new(lines.ToImmutable(), null, null) { Ranks = ranks.ToImmutable() };
    }

    private static ImmutableArray<string> Lines(Leg leg, int count, int after, string at)
    {
        var stitches = Math.Abs(leg.AtEnd);
        if (2 * stitches <= leg.Rows)
        {
            var plan = ShapingSchedule.Plan(new(count, after, leg.Rows) { PerTime = at == "ends" ? 2 : 1 }).Plan!;
            var even = leg.AtEnd == 0 ? leg.Rows : plan.RowsAfter;
            string[] shaped = leg.AtEnd == 0 ? [] : [$"{plan.Sentence(at == "ends" ? ShapingPlace.BothEnds : ShapingPlace.OneEnd, at)}. ({PlanWords.Sts(after)})"];
            return [.. shaped, .. even > 0 ? new[] { $"Work {PlanWords.Counted(even, "row")} even." } : []];
        }

        var steps = Curve.Slope(stitches, leg.Rows).Plan!;
        if (leg.AtEnd < 0)
        {
            return at == "ends" ? steps.BothEdges(count) : steps.OneEdge(count, at);
        }

        var lines = ImmutableArray.CreateBuilder<string>(steps.Steps.Length);
        foreach (var step in steps.Steps)
        {
            count += 2 * step.Stitches;
            lines.Add($"CO {PlanWords.Sts(step.Stitches)} at end of next 2 rows. ({PlanWords.Sts(count)})");
        }

        return lines.ToImmutable();
    }

    private static int Whole(decimal value) => (int)decimal.Round(Math.Clamp(value, -PlanLimits.MostStitches, PlanLimits.MostStitches), MidpointRounding.AwayFromZero);

    /// <summary>From one measured point to the next: its rows, and the stitches that each end gains or, below zero, loses.</summary>
    private readonly record struct Leg(int Rows, int AtEnd);
}
