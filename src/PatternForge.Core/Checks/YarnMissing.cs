using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the yarn.</summary>
internal sealed class YarnMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF702", "yarn-missing", Area.Yarn, Severity.Warning,
        "The header names no yarn.",
        "The yarn is the first thing that a maker must get. Name it, with its weight class, its fibre, its put-up and how much each size needs.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
              needs: 180 m
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.HeaderPlace is { } place && context.Facts.Yarns.IsEmpty && !context.IsExcused("yarn"))
        {
            context.Bag.Add(Rule, place, "the header names no yarn", "add `yarn` with its `name`, `weight`, `fibre`, `put-up` and what each size `needs`");
        }
    }
}
