using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>A round neck with both its sides.</summary>
internal static class NeckRows
{
    /// <summary>The rows in one size.</summary>
    public static PlanLines Of(PlanNumbers p)
    {
        var (from, neck, rows, said) = (p.Count("from"), p.Count("neck"), p.Rows("over", inRound: false), p.Count("centre", 0));
        var stitch = p.Word("stitch", "");
        var hold = p.Choice("end", "bind off", "hold") == "hold";
        if (!PlanLimits.IsCount(from) || neck < 1 || neck >= from || (from - neck) % 2 != 0)
        {
            return PlanLines.No(FormattableString.Invariant($"a neck of {neck} sts does not leave two equal shoulders of {from} sts"), FormattableString.Invariant($"a neck of {neck + 1} sts does"));
        }

        if (said > 0 && (said > neck || (neck - said) % 2 != 0))
        {
            return PlanLines.No(FormattableString.Invariant($"a middle of {said} sts does not leave the same at both sides of a neck of {neck}"));
        }

        return stitch.Length > 0 ? Crocheted(from, neck, rows, said, stitch) : Knitted(from, neck, rows, said, hold);
    }

    // The neck row and the row behind it are rows of the neck as well.
    private static PlanLines Knitted(int from, int neck, int rows, int said, bool hold)
    {
        var planned = said > 0 ? Neckline.WithCentre(neck, said, rows - 2) : Neckline.Round(neck, rows - 2);
        if (planned.Plan is not { } plan)
        {
            return PlanLines.No(planned.Reason!, planned.Help);
        }

        var (side, shoulder) = ((from - plan.Centre) / 2, (from - neck) / 2);
        var end = hold ? $"Place rem {PlanWords.Sts(shoulder)} on a holder." : "BO all sts.";
        ImmutableArray<string> open =
        [
            FormattableString.Invariant($"Neck Row (RS): K{side}, BO next {PlanWords.Sts(plan.Centre)}, k to end. ({PlanWords.Sts(side)} each side)"),
            $"Place the first {PlanWords.Sts(side)} on a holder for the second side.",
            "Work 1 row even.",
        ];
        ImmutableArray<string> again = [FormattableString.Invariant($"Return the {side} held {(side == 1 ? "st" : "sts")} to the needle and join yarn at the neck edge with WS facing.")];
        return Side(0).Within(open, [end]).Then(Side(1).Within(again, [end]));

        // The first side has worked one row before its first step, the second side works one behind its last.
        PlanLines Side(int more) => new(plan.Side.OneEdge(side, more: more), null, null) { Shared = SharedCurve.OneEdge(plan.Side, side, "neck edge", more) };
    }

    private static PlanLines Crocheted(int from, int neck, int rows, int said, string stitch)
    {
        var centre = said > 0 ? said : Math.Max(neck % 2, GaugeMath.SameParity(neck * 0.4m, neck));
        var times = (neck - centre) / 2;
        if (times > rows - 1)
        {
            return PlanLines.No(
                FormattableString.Invariant($"a neck of {neck} sts with {centre} in its middle loses {times} sts at each side, a stitch a row, and has {rows} rows"),
                FormattableString.Invariant($"a `centre` of {neck - (2 * Math.Max(0, rows - 1))} sts or more, or more rows"));
        }

        var (side, shoulder) = ((from - centre) / 2, (from - neck) / 2);
        var even = rows - 1 - times;
        ImmutableArray<string> shaped =
        [
            $"Dec 1 st at neck edge of every row {PlanWords.Times(times)}. ({PlanWords.Sts(shoulder)})",
            $"Work {PlanWords.Counted(even, "row")} even.",
            "Fasten off.",
        ];
        var turn = CrochetWords.Turn(stitch);
        ImmutableArray<string> lines =
        [
            $"Neck Row: {PlanWords.Capital(turn)}, {stitch} in first {PlanWords.Sts(side)}, leave rem sts unworked. ({PlanWords.Sts(side)})",
            .. shaped,
            $"The middle {PlanWords.Sts(centre)} are the lowest part of the neck. Join the yarn behind them, with the same side facing as for the Neck Row.",
            $"Begin with {PlanWords.Sts(side)}.",
            $"Second Neck Row: {PlanWords.Capital(CrochetWords.Begin(stitch))}, {stitch} in each st across. ({PlanWords.Sts(side)})",
            .. shaped,
        ];
        return new(even == 0 ? [.. lines.Where(l => !l.StartsWith("Work 0", StringComparison.Ordinal))] : lines, null, null)
        {
            Shared = new(lines, null, null) { Ranks = [.. Enumerable.Range(0, lines.Length)], Idle = even == 0 ? [2, 8] : [] },
        };
    }
}
