using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Misses the reason of a level.</summary>
internal sealed class LevelWithoutReason : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF802", "level-without-reason", Area.Completeness, Severity.Warning,
        "The level is given without its reason.",
        "A maker who has never cabled but shapes without fear cannot use \"intermediate\". The reason says which techniques the project needs.")
    {
        Bad = """
            ---
            title: Harbour hat
            level: intermediate
                   ^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            level: intermediate
            level-reason: cables on every fourth round
            ---
            """,
        Sources = [Sources.ProjectLevels],
    };

    public override void Run(CheckContext context)
    {
        if (context.Facts is { Level: { } level, LevelReason: null } && !context.IsExcused("level-reason"))
        {
            context.Bag.Add(Rule, level.Origin, "the level is given without its reason", "add `level-reason` with the techniques that the project needs");
        }
    }
}
