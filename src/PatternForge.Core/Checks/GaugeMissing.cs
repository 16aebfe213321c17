using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the gauge.</summary>
internal sealed class GaugeMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF603", "gauge-missing", Area.Gauge, Severity.Warning,
        "The header gives no gauge.",
        "Without a gauge nobody can tell whether the piece will come out in its size, or how much yarn it takes. Where the size does not matter, say so: `gauge: not important`.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            sizes: one size
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: one size
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.HeaderPlace is { } place && context.Facts.Gauges.IsEmpty && context.Facts.GaugeRemark is null && !context.IsExcused("gauge"))
        {
            context.Bag.Add(Rule, place, "the header gives no gauge", "add a line such as `gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked`");
        }
    }
}
