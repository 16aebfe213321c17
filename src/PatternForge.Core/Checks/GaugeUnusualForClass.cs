using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Notes gauges and tools that lie beside what is published for the yarn's class.</summary>
internal sealed class GaugeUnusualForClass : PatternCheck
{
    // Two stitches more or less, or a size of tool, are a hand's difference (common practice).
    private const decimal Hand = 0.12m;
    private const decimal Tool = 0.35m;

    public override Rule Rule { get; } = new(
        "PF626", "gauge-unusual-for-class", Area.Gauge, Severity.Note,
        "The gauge or its tool lies beside the range of the yarn's weight class.",
        "A looser or a firmer fabric than usual may be just what is wanted; then a maker who looks for another yarn should hear it. The published ranges of stitches, needles and hooks for each class differ a little from printing to printing: all of them are accepted, and a stitch or a tool size beside them.")
    {
        Bad = """
            ---
            title: Harbour shawl
            yarn: {name: Quayside Wool, weight: DK}
            gauge: 16 sts and 24 rows = 10 cm in stockinette on 6.5 mm, blocked
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour shawl
            yarn: {name: Quayside Wool, weight: DK}
            gauge: 22 sts and 30 rows = 10 cm in stockinette on 4 mm, blocked
            ---
            """,
        Sources = [Reference.Sources.YarnWeights, Reference.Sources.YarnWeightsQuoted, Reference.Sources.YarnWeightsOlder],
    };

    public override void Run(CheckContext context)
    {
        foreach (var plain in ClassGauges.Of(context))
        {
            if (plain.Range.Class == 0 || (plain.Stitches is { } far && !plain.Published.Holds(far, GaugeFarFromClass.Far)))
            {
                continue;
            }

            if (plain.Stitches is { } stitches && !plain.Published.Holds(stitches, Hand))
            {
                context.Bag.Add(Rule, plain.Gauge.Origin, GaugeFarFromClass.Message(plain, stitches), "if the fabric is meant to be so, say it in the notes: makers choose another yarn by it");
            }
            else if (plain.Gauge.Tool is { } tool && ToolText.Read(tool) is [{ Mm: { } mm }] && !plain.Tools.Holds(mm, Tool))
            {
                var weight = YarnWeight.All[plain.Range.Class];
                var source = plain.IsHook ? Reference.Sources.YarnWeights : Reference.Sources.YarnWeightsQuoted;
                context.Bag.Add(Rule, plain.Gauge.Origin, string.Create(CultureInfo.InvariantCulture, $"{mm:0.##} mm is far from the tools of class {weight.Class}, {weight.Name}: {plain.Tools} mm ({source})"), "check the tool; if it is meant, say why in the notes");
            }
        }
    }
}
