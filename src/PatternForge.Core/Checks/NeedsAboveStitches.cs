using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Notes sizes that are said to need far more yarn than their stitches take.</summary>
internal sealed class NeedsAboveStitches : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF721", "needs-above-stitches", Area.Yarn, Severity.Note,
        "A size is said to need far more yarn than its stitches take, by what the sample took.",
        "A margin is welcome, and yarn is bought by the ball. Far more than that is mostly an amount of another size or of an earlier draft, and the maker pays for balls that are left over. How much more is allowed is `yarn-over` in the project file.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes: Short (Long)
            yarn:
              name: Quayside Wool
              put-up: 50 g = 100 m
              needs: 110 (480) m
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
              put-up: 50 g = 100 m
              needs: 110 (230) m
            sample: {size: Short, used: 50 g}
            ---
            ## Scarf

            Cast on 40 sts.

            Row 1: Knit.

            Rep Row 1 99 (199) times more.
            """,
        Sources = [Reference.Sources.Remembered],
    };

    public override void Run(CheckContext context) => NeedsBesideStitches.Check(context, Rule, below: false);
}
