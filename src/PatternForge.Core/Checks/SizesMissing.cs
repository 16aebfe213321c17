using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the sizes.</summary>
internal sealed class SizesMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF608", "sizes-missing", Area.Gauge, Severity.Warning,
        "The header names no sizes.",
        "The sizes decide how many numbers each list in the rows must have. A pattern of one size says so, so that nobody looks for the others.")
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
            sizes: one size
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.HeaderPlace is { } place && context.Facts.SizesOrigin is null && !context.IsExcused("sizes"))
        {
            context.Bag.Add(Rule, place, "the header names no sizes", "add `sizes: S (M, L)`, or `sizes: one size`");
        }
    }
}
