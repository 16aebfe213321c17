using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>Gussets and toes of socks, and thumbs of mittens.</summary>
internal static class FootRows
{
    /// <summary>The gusset of a sock.</summary>
    public static PlanLines Gusset(PlanNumbers p)
    {
        var (from, to, every) = (p.Count("from"), p.Count("to"), p.Count("every", 2));
        var row = p.Choice("begin", "sole", "heel") == "sole" ? "k1, ssk, k to 3 sts before m, k2tog, k1, sm, k to end" : "k to 3 sts before m, k2tog, k1, sm, k to m, sm, k1, ssk, k to end";
        return to >= from || (from - to) % 2 != 0 || every is < 1 or > 100
            ? PlanLines.No(FormattableString.Invariant($"a gusset does not go from {from} to {to} sts by two in every {every} rounds"), "fewer stitches at its end than at its beginning, by an even number")
            : PlanLines.Of(ShapingSchedule.Plan(new(from, to, every * ((from - to) / 2)) { On = ShapedRows.Any, InRound = true }), s => s.Lines(new ShapingWork(ShapingPlace.BothEnds) { Written = row }));
    }

    /// <summary>A wedge toe.</summary>
    public static PlanLines Toe(PlanNumbers p)
    {
        var (from, leave) = (p.Count("from"), p.Count("leave", 0));
        var marked = p.Choice("marker", "there", "to place") == "there";
        var toe = Sock.Toe(from, leave > 0 ? leave : GaugeMath.Fit(from * 0.3m, 4) ?? 0);
        var lines = PlanLines.Of(toe, s => s.Lines(new ShapingWork(ShapingPlace.BothEnds) { Written = Sock.ToeRound() }));

        // The marker is placed in the first of the rounds, which is plain.
        return marked || lines.Lines.IsEmpty ? lines
            : lines with { Lines = [FormattableString.Invariant($"Next Rnd: K{from / 2}, pm, k to end. ({PlanWords.Sts(from)})"), .. lines.Lines.Where(l => l != "Work 1 rnd even.")] };
    }

    /// <summary>The gusset of a thumb.</summary>
    public static PlanLines Thumb(PlanNumbers p)
    {
        var (around, before, from, to, rounds, castOn) = (p.Count("around"), p.Count("before"), p.Count("from", 1), p.Count("to"), p.Rows("over"), p.Count("cast-on", 1));
        var place = p.Choice("marker", "there", "to place") == "to place";
        if (!PlanLimits.IsCount(around) || before < 0 || from < 1 || before + from > around || castOn is < 0 or > 1000)
        {
            return PlanLines.No(FormattableString.Invariant($"a thumb of {from} sts behind the first {before} does not lie in a hand of {around} sts"));
        }

        var gusset = Mitten.Gusset(from, to, rounds - (place ? 1 : 0));
        if (gusset.Plan is not { } thumb || to <= from)
        {
            return PlanLines.No(gusset.Reason ?? FormattableString.Invariant($"a thumb does not grow from {from} to {to} sts"), gusset.Help);
        }

        // The round has the stitches of the whole hand.
        var hand = thumb with { Ask = thumb.Ask with { From = around, To = around + to - from } };
        var after = around - from + castOn;
        var more = castOn == 0 ? "" : $"CO {PlanWords.Sts(castOn)}, ";
        ImmutableArray<string> open = place ? [FormattableString.Invariant($"Next Rnd: K{before}, pm, k{from}, pm, k to end. ({PlanWords.Sts(around)})")] : [];
        return new(
            [
                .. open, .. hand.Lines(new ShapingWork(ShapingPlace.BothEnds) { Written = Mitten.GussetRound() }),
                $"Next Rnd: K to m, remove m, place next {PlanWords.Sts(to)} on a holder for the thumb, remove m, {more}k to end. ({PlanWords.Sts(after)})",
            ],
            null,
            null);
    }
}
