using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>One decrease round of a yoke and the plain rounds before it.</summary>
/// <param name="RoundsBefore">Plain rounds before it.</param>
/// <param name="Round">The decrease round.</param>
public sealed record YokeStep(int RoundsBefore, SpreadPlan Round);

/// <summary>A circular yoke: a few decrease rounds with many decreases each.</summary>
/// <param name="From">Stitches when body and sleeves are joined.</param>
/// <param name="To">Stitches at the neck.</param>
/// <param name="Steps">The decrease rounds.</param>
/// <param name="RoundsAfter">Plain rounds behind the last.</param>
public sealed record RoundYokePlan(int From, int To, ImmutableArray<YokeStep> Steps, int RoundsAfter)
{
    /// <summary>The yoke as lines of a pattern.</summary>
    public ImmutableArray<string> Lines()
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var (i, step) in Steps.Index())
        {
            if (step.RoundsBefore > 0)
            {
                lines.Add($"Work {PlanWords.Counted(step.RoundsBefore, "rnd")} even.");
            }

            lines.Add(step.Round.Line(string.Create(CultureInfo.InvariantCulture, $"Dec Rnd {i + 1}")));
        }

        if (RoundsAfter > 0)
        {
            lines.Add($"Work {PlanWords.Counted(RoundsAfter, "rnd")} even.");
        }

        return lines.ToImmutable();
    }
}

/// <summary>The parts of a sweater by per cent of its body, K = chest times gauge.</summary>
/// <param name="K">Stitches of the body.</param>
/// <param name="LowerEdge">A ribbed lower edge, nine tenths.</param>
/// <param name="Wrist">A fifth; some take a quarter.</param>
/// <param name="UpperArm">A third.</param>
/// <param name="Underarm">Eight per cent.</param>
/// <param name="Neck">Four tenths.</param>
public readonly record struct BodyPercents(decimal K, decimal LowerEdge, decimal Wrist, decimal UpperArm, decimal Underarm, decimal Neck)
{
    /// <summary>Stitches when body and sleeves are joined, an underarm on a holder at each of the four edges.</summary>
    public decimal Joined => K + (2 * UpperArm) - (4 * Underarm);
}

/// <summary>Circular yokes.</summary>
public static class RoundYoke
{
    /// <summary>The parts by per cent; the upper arm 33 to 35, the wrist 20 to 25 (common practice).</summary>
    /// <remarks>Worked example: a chest of 42 in at 5 an inch: K = 210, lower edge 189, wrist 42, upper arm 73.5 at 35 per cent. Joined, 100 and twice 33 less four times 8 are 134 per cent.</remarks>
    public static BodyPercents Percents(decimal k, decimal wrist = 20, decimal upperArm = 33) => new(k, k * 0.9m, k * wrist / 100, k * upperArm / 100, k * 0.08m, k * 0.4m);

    /// <summary>How deep a yoke is from underarm to neck: a quarter of the girth of the body. A rule of thumb from memory, for a first drawing.</summary>
    /// <remarks>Worked example: a body of 100 cm: 25 cm.</remarks>
    public static decimal? Depth(decimal bodyGirth) => PlanLimits.IsMeasure(bodyGirth) ? bodyGirth / 4 : null;

    /// <summary>What is left when every so many stitches lose one: (k2, k2tog) is 4 and leaves three quarters.</summary>
    /// <remarks>Worked example: 133 per cent times 3/4, 2/3 and 3/5 are 39.9 per cent, the neck (common practice; the third factor from memory).</remarks>
    public static decimal After(decimal start, params ReadOnlySpan<(int Stitches, int Lost)> rounds)
    {
        foreach (var (stitches, lost) in rounds)
        {
            start = start * (stitches - lost) / stitches;
        }

        return start;
    }

    /// <summary>Decrease rounds evenly up the yoke, as a cone narrows: each takes the same number of stitches, one more or less.</summary>
    /// <param name="from">Stitches when joined.</param>
    /// <param name="to">Stitches at the neck.</param>
    /// <param name="rounds">Rounds of the yoke.</param>
    /// <param name="decreaseRounds">How many of them decrease.</param>
    public static Planned<RoundYokePlan> Plan(int from, int to, int rounds, int decreaseRounds)
    {
        if (!PlanLimits.IsCount(from) || !PlanLimits.IsCount(to) || to >= from || to < 1 || decreaseRounds is < 1 or > 1000 || rounds < decreaseRounds || rounds > PlanLimits.MostRows)
        {
            return Planned.No<RoundYokePlan>(string.Create(CultureInfo.InvariantCulture, $"from {from} to {to} sts in {decreaseRounds} decrease rounds of {rounds} is no yoke"));
        }

        var steps = ImmutableArray.CreateBuilder<YokeStep>(decreaseRounds);
        var (losses, before) = (EvenShare.Parts(from - to, decreaseRounds, ShareOrder.LongerTogether), EvenShare.Parts(rounds, decreaseRounds, ShareOrder.LongerTogether));
        var count = from;
        for (var i = 0; i < decreaseRounds; i++)
        {
            if (losses[i] > 0)
            {
                var round = Spread.Plan(count, losses[i], Shaper.K2tog, SpreadEnds.Round);
                if (!round.IsPlanned)
                {
                    return Planned.No<RoundYokePlan>(string.Create(CultureInfo.InvariantCulture, $"decrease round {i + 1}: {round.Reason}"), "more decrease rounds");
                }

                steps.Add(new(before[i] - 1, round.Plan));
                count = round.Plan.Result;
            }
        }

        return Planned.Of(new RoundYokePlan(from, to, steps.ToImmutable(), 0));
    }
}
