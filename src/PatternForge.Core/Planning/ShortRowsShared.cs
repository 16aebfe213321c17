using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>
/// Short rows that leave more and more stitches, told by how far each turn is from the one before: sizes with more pairs of rows repeat the last two more often, and
/// all of them read the same rows. Steps that differ by a stitch need a second pair that is repeated.
/// </summary>
internal static class ShortRowsShared
{
    /// <summary>The lines of one size, with the forms that other sizes can share.</summary>
    public static PlanLines Of(Planned<ShortRowPlan> planned)
    {
        var lines = PlanLines.Of(planned, s => s.Lines());
        return planned.Plan is { } plan ? lines with { Shared = Form(plan.Left, inTwo: false) with { Shared = Form(plan.Left, inTwo: true) } } : lines;
    }

    /// <summary>One pair of rows, a second that is repeated, and where there are two such a third; without lines where the steps do not come to that.</summary>
    private static PlanLines Form(ImmutableArray<int> left, bool inTwo)
    {
        int[] steps = [.. left.Select((l, i) => i == 0 ? l : l - left[i - 1])];
        var none = new PlanLines([], null, null);
        if (steps.Length < (inTwo ? 3 : 2) || Array.Exists(steps, s => s < 1))
        {
            return none;
        }

        // Those alike behind the first; where all of them are, the first of them stand for both.
        var alike = steps[1..].TakeWhile(s => s == steps[1]).Count();
        var first = inTwo && alike == steps.Length - 1 ? 1 : alike;
        if (steps[(1 + first)..].Distinct().Count() != (inTwo ? 1 : 0))
        {
            return none;
        }

        var (lines, idle) = (new List<string>(), new List<int>());
        Pair($"last {PlanWords.Sts(steps[0])}".Replace("last 1 st", "last st", StringComparison.Ordinal), 1);
        Pair($"{PlanWords.Sts(steps[1])} before wrapped st", first);
        if (inTwo)
        {
            Pair($"{PlanWords.Sts(steps[^1])} before wrapped st", steps.Length - 1 - first);
        }

        lines.Add("Next Row (RS): Knit.");
        return new PlanLines([.. lines], null, null) { Ranks = [.. lines.Select((_, i) => i)], Idle = [.. idle] };

        void Pair(string to, int times)
        {
            lines.Add($"Short Row (RS): K to {to}, w&t.");
            lines.Add($"Short Row (WS): P to {to}, w&t.");
            if (lines.Count > 2)
            {
                if (times == 1)
                {
                    idle.Add(lines.Count);
                }

                lines.Add(FormattableString.Invariant($"Rep last 2 rows {times - 1} times more."));
            }
        }
    }
}
