using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>Plans for edges: curves, shoulders, the top of a sleeve, buttonholes, stitches picked up.</summary>
internal static class EdgeRows
{
    /// <summary>An edge, or both, along a curve.</summary>
    public static PlanLines Curved(PlanNumbers p)
    {
        var (from, lose, rows) = (p.Count("from"), p.Count("lose"), p.Rows("over", inRound: false));
        var shape = p.Choice("shape", "armhole", "slope", "cap");
        var planned = shape switch
        {
            "slope" => Curve.Slope(lose, rows),
            "cap" => Curve.Bell(lose, rows),
            _ => Curve.Quarter(lose, rows),
        };
        var at = p.Choice("at", "ends", "neck edge", "armhole edge");
        return planned.Plan is not { } curve ? PlanLines.No(planned.Reason!, planned.Help)
            : at == "ends" ? new(curve.BothEdges(from), null, null) { Shared = SharedCurve.BothEdges(curve, from, shape == "cap") }
            : new(curve.OneEdge(from, at), null, null) { Shared = shape == "cap" ? null : SharedCurve.OneEdge(curve, from, at) };
    }

    /// <summary>The top of a set-in sleeve.</summary>
    public static PlanLines Cap(PlanNumbers p)
    {
        var planned = Sleeve.Cap(p.Count("from"), p.Count("bind-off"), p.Count("top"), p.Rows("over", inRound: false));
        if (planned.Plan is not { } cap)
        {
            return PlanLines.No(planned.Reason!, planned.Help);
        }

        var lines = cap.Lines();
        return new(lines, null, null) { Shared = SharedCurve.BothEdges(cap.Side, cap.Stitches - (2 * cap.FirstBindOff), andBack: true)?.Within([lines[0]], [lines[^1]]) };
    }

    /// <summary>Both shoulders at once.</summary>
    public static PlanLines Shoulders(PlanNumbers p)
    {
        var (from, shoulder, rows) = (p.Count("from"), p.Count("shoulder"), p.Rows("over", inRound: false));
        if (p.Choice("by", "binding off", "short rows") == "short rows")
        {
            return ShortRowsShared.Of(ShortRows.Shoulders(from, shoulder, rows));
        }

        var pairs = rows / 2;
        if (!PlanLimits.IsCount(from) || shoulder < 1 || 2L * shoulder > from || pairs < 1 || pairs > shoulder)
        {
            return PlanLines.No(FormattableString.Invariant($"shoulders of {shoulder} sts at each end of {from} cannot be bound off over {rows} rows"), "each pair of rows binds off at least one stitch of each shoulder");
        }

        // Larger steps first; where all are equal there is but one line.
        var (step, larger) = (shoulder / pairs, shoulder % pairs);
        var (left, lines) = (from, new List<string>());
        foreach (var (stitches, times) in larger == 0 ? [(step, pairs), (step, 0)] : new[] { (step + 1, larger), (step, pairs - larger) })
        {
            left -= 2 * stitches * times;
            lines.Add(FormattableString.Invariant($"BO {PlanWords.Sts(stitches)} at beg of next {2 * times} rows. ({PlanWords.Sts(left)})"));
        }

        ImmutableArray<int> idle = larger == 0 ? [1] : [];
        return new(larger == 0 ? [lines[0]] : [.. lines], null, null) { Shared = new([.. lines], null, null) { Ranks = [0, 1], Idle = idle } };
    }

    /// <summary>Buttonholes along a band.</summary>
    public static PlanLines Buttonholes(PlanNumbers p)
    {
        var stitch = p.Word("stitch", "");
        var planned = Plans.Buttonholes.Plan(p.Count("from"), p.Count("holes"), p.Count("size", 2), p.Count("edge", 3));
        if (planned.Plan is not { } holes)
        {
            return PlanLines.No(planned.Reason!, planned.Help);
        }

        var shared = stitch.Length > 0 ? holes.Crocheted(stitch, inTwo: true) : holes.Lines(inTwo: true);
        return new(stitch.Length > 0 ? holes.Crocheted(stitch) : holes.Lines(), null, null) { Shared = new(shared, null, null) { Ranks = [.. shared.Select((_, i) => i)] } };
    }

    /// <summary>Stitches picked up along an edge.</summary>
    public static PlanLines PickedUp(PlanNumbers p)
    {
        var (along, boundOff, to) = (p.Rows("along", usual: 0), p.Count("bound-off", 0), p.Count("to", 0));
        var (multiple, plus) = (p.Count("multiple", 1), p.Count("plus", 0));
        var inRound = p.Choice("in", "row", "round") == "round";
        var stitch = p.Word("stitch", "");
        var edge = p.Word("edge", inRound ? "neck" : "edge");
        var ratio = 1m;
        if (along > 0 && (to == 0 || p.HasGauge))
        {
            var (stitches, rows) = p.Gauge();
            ratio = stitches / rows;
        }

        if (along < 0 || boundOff < 0 || along + boundOff == 0)
        {
            return PlanLines.No("there is nothing to pick up along", "say `along` (rows, or a length) or `bound-off` (stitches)");
        }

        var count = to > 0 ? to : GaugeMath.Fit((along * ratio) + boundOff, multiple, plus) ?? 0;
        if (along == 0 && count != boundOff)
        {
            return PlanLines.No(FormattableString.Invariant($"{count} sts do not come of {boundOff} that are picked up one for one"), "leave out `to` and `multiple`, or say the rows that are picked up along");
        }

        if (along == 0)
        {
            return new([PickUp.Line(count, null, boundOff, edge, inRound, stitch)], null, null);
        }

        var picked = PickUp.Along(along, count - boundOff);
        if (!picked.IsPlanned)
        {
            return PlanLines.No(picked.Reason, picked.Help);
        }

        // The gauge's own ratio is told where the multiple moves it by little.
        var own = (decimal)(count - boundOff) / along;
        return new([PickUp.Line(count, PickUp.Simple(to == 0 && Math.Abs(own - ratio) <= 0.03m * ratio ? ratio : own), boundOff, edge, inRound, stitch)], null, null);
    }
}
