using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Spreads increases, decreases and holes over a row: the gaps between them differ by one stitch at most.</summary>
/// <remarks>
/// The stitches that increases and decreases use are taken off first, the rest is shared out: M1 uses none, kfb one, k2tog two. Flat work has a gap, or half a gap, at each
/// end; a round ends with its last increase. Worked example: 51 sts, 4 increases, half a gap at each end: <c>k6, M1, (k13, M1) 3 times, k6</c> (common practice).
/// </remarks>
public static class Spread
{
    /// <summary>So many increases or decreases over a row.</summary>
    /// <param name="stitches">Stitches before the row.</param>
    /// <param name="times">How many increases or decreases.</param>
    /// <param name="shaper">What is worked.</param>
    /// <param name="ends">What is left plain at the ends.</param>
    /// <param name="edge">Edge stitches at each end that take no part.</param>
    /// <param name="together">True to have gaps of one size stand together: fewer words, less even.</param>
    public static Planned<SpreadPlan> Plan(int stitches, int times, Shaper shaper, SpreadEnds ends, int edge = 0, bool together = false)
    {
        if (!PlanLimits.IsCount(stitches) || edge is < 0 or > PlanLimits.MostStitches || times is < 1 or > PlanLimits.MostTimes)
        {
            return Planned.No<SpreadPlan>(string.Create(CultureInfo.InvariantCulture, $"{times} times over {stitches} sts with {edge} edge sts cannot be spread: at least 1 and at most {PlanLimits.MostTimes} times, over at most {PlanLimits.MostStitches} sts"));
        }

        var inner = stitches - (2 * edge);
        var plain = inner - ((long)times * shaper.Uses);
        if (plain < 0)
        {
            var most = Math.Max(0, inner) / Math.Max(1, shaper.Uses);
            return Planned.No<SpreadPlan>(
                string.Create(CultureInfo.InvariantCulture, $"{times} times `{shaper.Text}` takes {(long)times * shaper.Uses} sts; there are {Math.Max(0, inner)}"),
                string.Create(CultureInfo.InvariantCulture, $"at most {most} fit into one row; spread the rest over further rows"));
        }

        var gaps = Gaps((int)plain, times, ends, together);
        if (shaper.Uses == 0 && gaps.Skip(1).Take(times - 1).Append(gaps[0] + edge).Append(ends == SpreadEnds.Round ? 1 : gaps[^1] + edge).Any(g => g < 1))
        {
            return Planned.No<SpreadPlan>(
                string.Create(CultureInfo.InvariantCulture, $"{times} times `{shaper.Text}` over {inner} sts leaves no stitch between two of them, or none at an edge"),
                "an increase that uses a stitch, such as kfb, fits closer; or spread them over more rows");
        }

        return Planned.Of(new SpreadPlan(stitches, shaper, [gaps[0] + edge, .. gaps[1..^1], gaps[^1] + edge], edge));
    }

    /// <summary>From one count to another in one row, with M1 or kfb, k2tog, or the crochet stitch's own increase and decrease.</summary>
    /// <param name="from">Stitches before.</param>
    /// <param name="to">Stitches after; not the same.</param>
    /// <param name="ends">What is left plain at the ends.</param>
    /// <param name="edge">Edge stitches at each end.</param>
    /// <param name="crochet">The crochet stitch; null for knitting.</param>
    /// <param name="together">True to have gaps of one size stand together: fewer words, less even.</param>
    public static Planned<SpreadPlan> FromTo(int from, int to, SpreadEnds ends, int edge = 0, string? crochet = null, bool together = false)
    {
        if (from == to || !PlanLimits.IsCount(from) || !PlanLimits.IsCount(to))
        {
            return Planned.No<SpreadPlan>(string.Create(CultureInfo.InvariantCulture, $"from {from} to {to} sts there is nothing to spread"));
        }

        if (to < from)
        {
            return Plan(from, from - to, crochet is null ? Shaper.K2tog : Shaper.CrochetDecrease(crochet), ends, edge, together);
        }

        if (crochet is not null)
        {
            return Plan(from, to - from, Shaper.CrochetIncrease(crochet), ends, edge, together);
        }

        var lifted = Plan(from, to - from, Shaper.M1, ends, edge, together);
        return lifted.IsPlanned ? lifted : Plan(from, to - from, Shaper.Kfb, ends, edge, together);
    }

    /// <summary>Plain stitches before each of so many, and behind the last.</summary>
    private static ImmutableArray<int> Gaps(int plain, int times, SpreadEnds ends, bool together) => ends switch
    {
        SpreadEnds.Round => EvenShare.Parts(plain, times, together ? ShareOrder.ShorterTogether : ShareOrder.LongerFirst).Add(0),
        SpreadEnds.Whole => EvenShare.Parts(plain, times + 1, together ? ShareOrder.LongerTogether : ShareOrder.Centred),
        _ => Halved(plain, times, together),
    };

    // Increase i stands after i - 1/2 gaps, to the nearest stitch.
    private static ImmutableArray<int> Halved(int plain, int times, bool together)
    {
        var gaps = ImmutableArray.CreateBuilder<int>(times + 1);
        long before = 0;
        for (var i = 1; i <= times; i++)
        {
            var until = ((((2L * i) - 1) * plain) + times - 1) / (2L * times);
            gaps.Add((int)(until - before));
            before = until;
        }

        gaps.Add((int)(plain - before));
        return together && times > 2 ? [gaps[0], .. gaps.Skip(1).Take(times - 1).OrderDescending(), gaps[^1]] : gaps.MoveToImmutable();
    }
}
