using System.Collections.Immutable;
using PatternForge.Core.Plans;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Yarns;

/// <summary>What kind of fabric a pattern is for the most part, and the factor that the trade gives it beside stockinette.</summary>
internal static class FabricShare
{
    // From which share of its lines a pattern counts as such a fabric: a crossing comes about every eighth row, lace in every second.
    private const decimal Cables = 0.1m;
    private const decimal Lace = 0.25m;
    private const decimal Stranded = 0.25m;

    /// <summary>The factor; that of stockinette where nothing else is plain.</summary>
    /// <param name="craft">The craft.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="stranded">The share of the stitches that stand in rows of several colours.</param>
    public static FabricFactor Of(Craft craft, ImmutableArray<WorkedLine> lines, decimal stranded)
    {
        var rows = lines.Where(l => !l.Numbers.IsEmpty || !l.Operations.IsEmpty).ToArray();
        decimal Share(Func<WorkedLine, bool> holds) => rows.Length == 0 ? 0 : (decimal)rows.Count(holds) / rows.Length;

        var name = craft != Craft.Knitting ? "crochet"
            : stranded >= Stranded ? "stranded"
            : Share(l => l.Operations.Any(o => o.Family == Family.Cable)) >= Cables ? "cables"
            : Share(l => l.Operations.Any(o => o.Family == Family.YarnOver) && l.Operations.Any(o => o.Family == Family.Decrease)) >= Lace ? "lace"
            : "stockinette";
        return YarnAmount.Factors.First(f => f.Name == name);
    }
}
