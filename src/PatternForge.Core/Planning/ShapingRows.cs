using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>Shaping over rows, in knitting and in crochet.</summary>
internal static class ShapingRows
{
    /// <summary>The rows in one size.</summary>
    public static PlanLines Of(PlanNumbers p)
    {
        var inRound = p.Choice("in", "rows", "rounds") == "rounds";
        var stitch = p.Word("stitch", "");
        var at = p.Choice("at", "ends", "end", "markers", "corners");
        var place = at switch { "end" => ShapingPlace.OneEnd, "markers" => ShapingPlace.Markers, "corners" => ShapingPlace.Corners, _ => ShapingPlace.BothEnds };
        var markers = p.Count("markers", 4);
        var each = p.Count("each", place switch { ShapingPlace.OneEnd => 1, ShapingPlace.Markers or ShapingPlace.Corners => 2 * markers, _ => 2 });
        var (from, to) = (p.Count("from"), p.Count("to"));
        if (at == "corners" && stitch.Length == 0)
        {
            return PlanLines.No("corners are those of crochet, and the plan names no stitch", "add `stitch: dc`, or shape `at: markers`");
        }

        // Both sides of crochet are shaped; knitting is on its right side.
        var every = stitch.Length > 0 ? p.Choice("on", "any row", "RS rows", "every row") : p.Choice("on", "RS rows", "every row", "any row");
        var ask = new ShapingAsk(from, to, p.Rows("over", inRound))
        {
            PerTime = each,
            InRound = inRound,
            On = every == "RS rows" && !inRound ? ShapedRows.EveryOther : ShapedRows.Any,
            BeginsNow = p.Choice("begin", "later", "now") == "now",
            PlainAtEnd = p.Count("plain", 0),
        };
        if (ShapingWork.For(place, each, markers, stitch.Length > 0 ? stitch : null) is not { } work)
        {
            return PlanLines.No(FormattableString.Invariant($"{each} sts a time cannot be shared out evenly over the places that are shaped"), "give `each` a multiple of the places");
        }

        work = work with { Edge = p.Count("edge", 1), InRound = inRound };

        // The fewest stitches that a shaping row is worked over.
        var least = Math.Min(from, to + each);
        return work.Row(to - from, least) is null && from != to
            ? PlanLines.No(work.IsCounted ? FormattableString.Invariant($"{each} sts a time at {markers} places have no room in {least} sts") : FormattableString.Invariant($"{each} sts a time have no usual form at these places"), "fewer stitches a time")
            : PlanLines.Of(ShapingSchedule.Plan(ask), s => s.Lines(work));
    }
}
