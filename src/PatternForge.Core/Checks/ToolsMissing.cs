using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses needles or a hook.</summary>
internal sealed class ToolsMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF803", "tools-missing", Area.Completeness, Severity.Warning,
        "The header names no needles and no hook.",
        "A maker gathers the tools before casting on, and does not want to learn of a second needle in the middle of the crown.")
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
            tools: [4 mm circular needle]
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (context.HeaderPlace is { } place && facts.Tools.IsEmpty && facts.Gauges.All(g => g.Tool is null) && !context.IsExcused("tools", "needles", "hook", "gauge"))
        {
            context.Bag.Add(Rule, place, "the header names no needles and no hook", "add `tools` with the needles or hooks that the pattern uses");
        }
    }
}
