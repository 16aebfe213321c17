using System.Collections.Immutable;

namespace PatternForge.Core.Plans;

/// <summary>Which of two sizes that differ by one comes first where a number does not divide.</summary>
public enum ShareOrder
{
    /// <summary>Mixed as evenly as can be, a shorter part first: 90 in 4 is 22, 23, 22, 23.</summary>
    ShorterFirst,

    /// <summary>Mixed as evenly as can be, a longer part first: 51 in 4 is 13, 13, 13, 12.</summary>
    LongerFirst,

    /// <summary>Mixed so that both ends look alike.</summary>
    Centred,

    /// <summary>All shorter parts, then all longer ones: the fewest words.</summary>
    ShorterTogether,

    /// <summary>All longer parts, then all shorter ones.</summary>
    LongerTogether,
}

/// <summary>A number shared out evenly: the parts differ by one at most.</summary>
/// <remarks>Worked example: markers that part 90 sts in 4 stand after 22, 23, 22 and 23 (common practice).</remarks>
public static class EvenShare
{
    /// <summary>The parts in their order; none where there is nothing to share among.</summary>
    public static ImmutableArray<int> Parts(int total, int parts, ShareOrder order = ShareOrder.ShorterFirst)
    {
        if (parts < 1 || total < 0 || parts > PlanLimits.MostStitches)
        {
            return [];
        }

        var (size, longer) = (total / parts, total % parts);
        var shares = ImmutableArray.CreateBuilder<int>(parts);
        long before = 0;
        for (var i = 1; i <= parts; i++)
        {
            if (order is ShareOrder.ShorterTogether or ShareOrder.LongerTogether)
            {
                shares.Add(order == ShareOrder.LongerTogether ? size + (i <= longer ? 1 : 0) : size + (i > parts - longer ? 1 : 0));
                continue;
            }

            var reached = (long)i * total;
            var until = order switch
            {
                ShareOrder.ShorterFirst => reached / parts,
                ShareOrder.LongerFirst => (reached + parts - 1) / parts,
                _ => ((2 * reached) + parts - 1) / (2L * parts),
            };
            shares.Add((int)(until - before));
            before = until;
        }

        return shares.MoveToImmutable();
    }
}
