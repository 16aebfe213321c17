using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds sizes that are said to need less yarn than their stitches take.</summary>
internal sealed class NeedsBelowStitches : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF720", "needs-below-stitches", Area.Yarn, Severity.Warning,
        "A size is said to need less yarn than its stitches take, by what the sample took.",
        "The sample tells what a stitch of this pattern takes. Every other size takes as much more or less as it has stitches, each weighed by its kind: a size that is said to need clearly less leaves its maker without yarn. How much less is allowed is `yarn-short` in the project file.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes: Short (Long)
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
              needs: 110 (150) m
                     ^^^^^^^^^^^
            sample: {size: Short, used: 50 g}
            ---
            ## Scarf

            Cast on 40 sts.

            Row 1: Knit.

            Rep Row 1 99 (199) times more.
            """,
        Good = """
            ---
            title: Harbour scarf
            sizes: Short (Long)
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
              needs: 110 (220) m
            sample: {size: Short, used: 50 g}
            ---
            ## Scarf

            Cast on 40 sts.

            Row 1: Knit.

            Rep Row 1 99 (199) times more.
            """,
        Sources = [Reference.Sources.Remembered],
    };

    public override void Run(CheckContext context) => NeedsBesideStitches.Check(context, Rule, below: true);
}
