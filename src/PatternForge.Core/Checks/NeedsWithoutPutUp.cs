using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds an amount of yarn without the put-up that it is counted in.</summary>
internal sealed class NeedsWithoutPutUp : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF703", "needs-without-put-up", Area.Yarn, Severity.Warning,
        "A yarn says how much is needed, but not what a ball of it weighs and how long it is.",
        "Three balls of 50 g are half of three balls of 100 g, and without metres per gram nobody can tell which other yarns will do.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                needs: 2 balls
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                put-up: 100 g = 200 m
                needs: 2 balls
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            if (yarn is { Needs: not null, PutUpMass: null, PutUpLength: null } && !context.IsExcused("yarn", "yarn.put-up", "put-up"))
            {
                context.Bag.Add(Rule, yarn.Origin, $"{YarnWords.Of(yarn)} has an amount, but no put-up", "add what a ball weighs and how long it is: `put-up: 100 g = 200 m`");
            }
        }
    }
}
