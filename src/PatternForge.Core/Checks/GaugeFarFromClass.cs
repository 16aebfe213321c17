using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Finds gauges that no yarn of the named class gives.</summary>
internal sealed class GaugeFarFromClass : PatternCheck
{
    /// <summary>How far outside the published range a gauge is no longer a loose or a firm hand but another yarn.</summary>
    internal const decimal Far = 0.3m;

    public override Rule Rule { get; } = new(
        "PF625", "gauge-far-from-class", Area.Gauge, Severity.Warning,
        "The gauge is far from what the yarn's weight class gives.",
        "For each class of yarn weight the stitches of stockinette, and of single crochet, over four inches are published. Loose and firm fabrics lie beside the range, and printings differ (class 6 as 6 to 11 or 7 to 11 stitches): both are accepted. A gauge a third away from every printing is mostly a slip in the gauge or in the class. Yarn held double is left alone where the pattern says so.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn: {name: Quayside Wool, weight: super bulky}
            gauge: 22 sts and 30 rows = 10 cm in stockinette on 4 mm, blocked
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
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
            // Lace is worked as open as its maker likes: only too many stitches would be strange, and there is no such number.
            if (plain.Stitches is { } stitches && plain.Range.Class > 0 && !plain.Published.Holds(stitches, Far))
            {
                context.Bag.Add(Rule, plain.Gauge.Origin, Message(plain, stitches), Help(stitches, plain.IsHook));
            }
        }
    }

    /// <summary>What was found, in words.</summary>
    internal static string Message(ClassGauge plain, decimal stitches)
    {
        var source = plain.IsHook ? Reference.Sources.YarnWeights : Reference.Sources.YarnWeightsQuoted;
        var weight = YarnWeight.All[plain.Range.Class];
        return string.Create(CultureInfo.InvariantCulture, $"{stitches:0.#} stitches to 4 in are not those of class {weight.Class}, {weight.Name}: {plain.Published} ({source})");
    }

    private static string Help(decimal stitches, bool isHook)
    {
        var fitting = YarnWeightRanges.All.Where(r => (isHook ? r.CrochetStitches : r.KnitStitches).Holds(stitches)).Select(r => $"{r.Class} {YarnWeight.All[r.Class].Name}").ToArray();
        return fitting.Length == 0 ? "check the gauge" : $"check the gauge; such a fabric is usual in {string.Join(" or ", fitting)}; if the yarn is held double, say so";
    }
}
