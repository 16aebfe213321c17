using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses how much of a yarn is needed.</summary>
internal sealed class YarnWithoutAmount : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF705", "yarn-without-amount", Area.Yarn, Severity.Warning,
        "A yarn does not say how much of it is needed.",
        "A maker buys the yarn before the first stitch, and the same dye lot is seldom there a second time. Say the amount for each size, in metres, grams or balls.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                put-up: 100 g = 200 m
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                put-up: 100 g = 200 m
                needs: 180 m
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            if (yarn is { Needs: null, NeedsAreEstimated: false } && !context.IsExcused("yarn", "yarn.needs", "needs"))
            {
                context.Bag.Add(Rule, yarn.Origin, $"{YarnWords.Of(yarn)} does not say how much is needed", "add the amount: `needs: 350 (400, 450) m`");
            }
        }
    }
}
