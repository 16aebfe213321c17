using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>A crown in wedges.</summary>
/// <param name="Stitches">Stitches before it.</param>
/// <param name="Wedges">Wedges.</param>
/// <param name="Prepare">A round that brings the count to a multiple of the wedges; null where it is one.</param>
/// <param name="Rounds">The decrease rounds.</param>
/// <param name="PlainBetween">Plain rounds between two of them.</param>
public sealed record CrownPlan(int Stitches, int Wedges, SpreadPlan? Prepare, ImmutableArray<SpreadPlan> Rounds, int PlainBetween)
{
    /// <summary>Stitches after each decrease round.</summary>
    public ImmutableArray<int> Counts => [.. Rounds.Select(r => r.Result)];

    /// <summary>All rounds of the crown.</summary>
    public int TotalRounds => (Prepare is null ? 0 : 1) + Rounds.Length + (Math.Max(0, Rounds.Length - 1) * PlainBetween);

    /// <summary>The crown as lines of a pattern.</summary>
    public ImmutableArray<string> Lines()
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var number = 1;
        foreach (var round in Prepare is null ? Rounds : Rounds.Insert(0, Prepare))
        {
            lines.Add(round.Line(string.Create(CultureInfo.InvariantCulture, $"Rnd {number++}")));
            for (var i = 0; i < PlainBetween && round != Rounds[^1] && round != Prepare; i++)
            {
                lines.Add(string.Create(CultureInfo.InvariantCulture, $"Rnd {number++}: Knit. ({PlanWords.Sts(round.Result)})"));
            }
        }

        return lines.ToImmutable();
    }
}

/// <summary>Crowns of hats.</summary>
public static class HatCrown
{
    /// <summary>A crown in wedges, each of which loses a stitch in a decrease round: (k9, k2tog) 8 times, (k8, k2tog) 8 times, and so on.</summary>
    /// <remarks>Worked example: 88 sts in 8 wedges: 80, 72, 64 down to 8 (common practice). 115 sts in 11 wedges: first 5 decreases, one every 23 sts.</remarks>
    /// <param name="stitches">Stitches before the crown.</param>
    /// <param name="wedges">Wedges.</param>
    /// <param name="plainBetween">Plain rounds between two decrease rounds.</param>
    /// <param name="leave">Stitches left at the top; by default one a wedge.</param>
    public static Planned<CrownPlan> Wedges(int stitches, int wedges, int plainBetween = 1, int? leave = null)
    {
        if (!PlanLimits.IsCount(stitches) || wedges is < 1 or > PlanLimits.MostTimes || stitches < 2 * wedges || plainBetween is < 0 or > 100)
        {
            return Planned.No<CrownPlan>(string.Create(CultureInfo.InvariantCulture, $"{stitches} sts make no crown of {wedges} wedges"), "each wedge begins with at least 2 sts");
        }

        var over = stitches % wedges;
        var prepare = over == 0 ? null : Spread.Plan(stitches, over, Shaper.K2tog, SpreadEnds.Round).Plan;
        var rounds = ImmutableArray.CreateBuilder<SpreadPlan>();
        var count = stitches - over;
        var last = Math.Max(wedges, leave ?? wedges);
        while (count - wedges >= last && Spread.Plan(count, wedges, Shaper.K2tog, SpreadEnds.Round) is { IsPlanned: true } round)
        {
            rounds.Add(round.Plan);
            count = round.Plan.Result;
        }

        return rounds.Count == 0
            ? Planned.No<CrownPlan>(string.Create(CultureInfo.InvariantCulture, $"{stitches} sts in {wedges} wedges leave no decrease round above {last} sts"))
            : Planned.Of(new CrownPlan(stitches, wedges, prepare, rounds.ToImmutable(), plainBetween));
    }

    /// <summary>Counts after each of so many decrease rounds from one count to another, as even as can be, the larger steps first.</summary>
    /// <remarks>Worked example: from 118 to 20 in 5 rounds: 98, 78, 58, 39, 20 (common practice).</remarks>
    public static ImmutableArray<int> Counts(int from, int to, int rounds)
    {
        var counts = ImmutableArray.CreateBuilder<int>();
        foreach (var loss in to > from ? [] : EvenShare.Parts(from - to, rounds, ShareOrder.LongerTogether))
        {
            counts.Add(from -= loss);
        }

        return counts.ToImmutable();
    }

    /// <summary>The counts below and above that are a multiple of the wedges, with a stitch that each loses.</summary>
    public static (int Below, int Above) Fits(int stitches, int wedges) => wedges < 1 ? (stitches, stitches) : (stitches / wedges * wedges, (stitches + wedges - 1) / wedges * wedges);

    /// <summary>The diameter of a flat crown for a head: its girth over pi.</summary>
    /// <remarks>Worked example: a head of 22 in: 7.0 in (common practice).</remarks>
    public static decimal Diameter(decimal girth) => girth / PlanLimits.Pi;

    /// <summary>A flat crown: girth and radius of so many stitches, and the rounds it takes at so many decreases a round on average.</summary>
    /// <remarks>Worked example: 100 sts at 22 in 10 cm: 45.45 cm round, 7.23 cm to the middle, 25 rounds at 4 a round (common practice).</remarks>
    public static (decimal Girth, decimal Radius, int Rounds)? Flat(int stitches, decimal gauge, decimal over, decimal perRound) =>
        GaugeMath.Measure(stitches, gauge, over) is { } girth && perRound is > 0 and <= PlanLimits.MostStitches ? (girth, girth / (2 * PlanLimits.Pi), (int)decimal.Ceiling(stitches / perRound)) : null;
}
