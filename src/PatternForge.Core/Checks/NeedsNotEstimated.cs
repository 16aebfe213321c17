using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds amounts that are to be worked out, and cannot be.</summary>
internal sealed class NeedsNotEstimated : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF722", "needs-not-estimated", Area.Yarn, Severity.Warning,
        "The amount of a yarn is to be worked out, and there is not enough to work it out from.",
        "`needs: estimated` asks for what the stitches of each size take. That needs rows that can be counted in every size and something to go by: what the sample took, a swatch that was weighed, or at least a gauge of stitches and rows. Without them the page has no amount.")
    {
        Bad = """
            ---
            title: Harbour scarf
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
              needs: estimated
                     ^^^^^^^^^
            ---
            ## Scarf

            Cast on 40 sts.

            Rows 1-100: Knit.
            """,
        Good = """
            ---
            title: Harbour scarf
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
              needs: estimated
            sample: {used: 50 g}
            ---
            ## Scarf

            Cast on 40 sts.

            Rows 1-100: Knit.
            """,
    };

    public override void Run(CheckContext context)
    {
        var yarns = context.Facts.Yarns;
        for (var i = 0; i < yarns.Length; i++)
        {
            if (yarns[i] is { NeedsAreEstimated: true, EstimatedBy: null } && !context.IsExcused("sizes", "sample", "sample.used", "swatch", "swatch.size", "swatch.weighs", "gauge") && context.Yarn.Value.Yarns is { IsEmpty: false } estimates)
            {
                context.Bag.Add(Rule, yarns[i].NeedsOrigin ?? yarns[i].Origin, $"how much is needed of {YarnWords.Of(yarns[i])} cannot be worked out: {estimates[i].Reason}",
                    "say what the sample took (`sample: {size: M, used: 180 g}`) or what a swatch weighed (`swatch: {size: 15 x 15 cm, weighs: 12 g}`), or write the amounts");
            }
        }
    }
}
