using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>The rows of a round heel as makers like to read them: the two that make the gaps, the two that close them stitch by stitch, and how often these are worked.</summary>
internal static class HeelRows
{
    /// <summary>The lines of one size.</summary>
    public static PlanLines Of(HeelPlan heel)
    {
        // Each pair of rows takes two stitches at each side; of an odd number the last is taken without one behind it.
        var (pairs, odd) = (heel.LeftFirst.First / 2, heel.LeftFirst.First % 2 > 0);
        var (lines, ranks) = (ImmutableArray.CreateBuilder<string>(7), ImmutableArray.CreateBuilder<int>(7));
        for (var row = 0; row < 2; row++)
        {
            Add(1, FormattableString.Invariant($"Row {row + 1} ({(row == 0 ? "WS" : "RS")}): {PlanWords.Sentence(heel.Rows[row]).Replace("k2tog", "ssk", StringComparison.Ordinal)} ({PlanWords.Sts(heel.Counts[row])})"));
        }

        if (pairs > 0)
        {
            Add(2, "Row 3 (WS): Sl 1, p to 1 st before gap, p2tog, p1, turn.");
            Add(2, "Row 4 (RS): Sl 1, k to 1 st before gap, ssk, k1, turn.");
        }

        if (pairs > 1)
        {
            Add(3, $"Rep Rows 3 and 4 {PlanWords.Times(pairs - 1)} more. ({PlanWords.Sts(heel.Counts[1 + (2 * pairs)])})");
        }

        if (odd)
        {
            Add(4, "Next row (WS): Sl 1, p to 1 st before gap, p2tog, turn.");
            Add(4, $"Next row (RS): Sl 1, k to 1 st before gap, ssk, turn. ({PlanWords.Sts(heel.End)})");
        }

        return new(lines.ToImmutable(), null, null) { Ranks = ranks.ToImmutable() };

        void Add(int rank, string line)
        {
            lines.Add(line);
            ranks.Add(rank);
        }
    }
}
