using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses whether a gauge is that of blocked fabric.</summary>
internal sealed class GaugeWithoutState : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF607", "gauge-without-state", Area.Gauge, Severity.Warning,
        "A gauge does not say whether the swatch was blocked.",
        "Many yarns grow in their first wash. A maker who measures before blocking what was measured after it works the wrong size.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
            if (gauge.Blocked is null && !context.IsExcused("gauge", "gauge.state", "gauge-state"))
            {
                context.Bag.Add(Rule, gauge.Origin, "the gauge does not say whether the swatch was blocked", "add `, blocked` or `, unblocked`, or the key `state`");
            }
        }
    }
}
