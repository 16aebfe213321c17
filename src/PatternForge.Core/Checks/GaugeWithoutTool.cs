using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the needle or hook of a gauge.</summary>
internal sealed class GaugeWithoutTool : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF605", "gauge-without-tool", Area.Gauge, Severity.Warning,
        "A gauge does not say with which needle or hook it was got.",
        "The size of the tool is where a maker begins to swatch. Where the header lists exactly one tool, that one is taken.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette, blocked
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var gauge in context.Facts.Gauges)
        {
            if (gauge.Tool is null && context.Facts.Tools.Length != 1 && !context.IsExcused("gauge", "gauge.tool", "gauge-tool", "tools", "needles", "hook"))
            {
                context.Bag.Add(Rule, gauge.Origin, "the gauge does not say with which needle or hook", "add the tool: `... on 4 mm`, or the key `tool`");
            }
        }
    }
}
