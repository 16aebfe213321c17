using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the title.</summary>
internal sealed class TitleMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF801", "title-missing", Area.Completeness, Severity.Warning,
        "The header has no title.",
        "The title names the pattern on every page, in every list and in every question that a maker sends.")
    {
        Bad = """
            ---
            ^^^
            sizes: one size
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: one size
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.HeaderPlace is { } place && context.Facts.Title is null && !context.IsExcused("title"))
        {
            context.Bag.Add(Rule, place, "the header has no title", "add a line such as `title: Harbour hat`");
        }
    }
}
