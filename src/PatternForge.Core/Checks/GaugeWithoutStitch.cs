using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses the stitch in which a gauge is measured.</summary>
internal sealed class GaugeWithoutStitch : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF604", "gauge-without-stitch", Area.Gauge, Severity.Warning,
        "A gauge does not say in which stitch it is measured.",
        "Ribbing draws in and lace spreads out: the same maker gets different counts in each. The swatch must be worked in the stitch that was measured.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm on 4 mm, blocked
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
            if (gauge.Stitch is null && !context.IsExcused("gauge", "gauge.stitch", "gauge-stitch"))
            {
                context.Bag.Add(Rule, gauge.Origin, "the gauge does not say in which stitch it is measured", "add the stitch: `... in stockinette`, or the key `stitch`");
            }
        }
    }
}
