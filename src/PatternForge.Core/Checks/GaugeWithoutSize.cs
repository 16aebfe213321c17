using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Misses over which width and height a gauge is counted.</summary>
internal sealed class GaugeWithoutSize : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF606", "gauge-without-size", Area.Gauge, Severity.Warning,
        "A gauge does not say over how much fabric it is counted.",
        "20 stitches over 10 cm and 20 stitches over 4 in differ by little, over 5 cm by half. Without the size the gauge serves neither the maker nor the lengths in the rows.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows in stockinette on 4 mm, blocked
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
            if (gauge.Width is null && gauge.Height is null && !context.IsExcused("gauge", "gauge.over", "gauge-size"))
            {
                context.Bag.Add(Rule, gauge.Origin, "the gauge does not say over how many centimetres or inches it is counted", "add the size of the swatch: `= 10 cm`, or the key `over`");
            }
        }
    }
}
