using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Holds the metres per gram of a yarn against its weight class.</summary>
internal static class Grist
{
    /// <summary>How far outside the usual lengths a put-up is no longer a matter of fibre and spinning.</summary>
    internal const decimal Far = 0.45m;

    private static readonly string[] Airy = ["mohair", "angora", "alpaca", "brushed", "suri", "kid", "blown", "chainette", "tube", "cashmere", "down", "qiviut", "yak", "tweed", "roving"];
    private static readonly string[] Dense = ["cotton", "linen", "hemp", "silk", "bamboo", "viscose", "rayon", "metal", "bead", "sequin", "chenille", "raffia", "paper", "wire", "elastane", "lyocell", "modal", "tencel", "jute"];

    /// <summary>The yarns whose put-up lies outside the usual lengths of their class; far ones, or only those beside the range.</summary>
    public static void Check(CheckContext context, Rule rule, bool far)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            if (yarn is not { WeightClass: >= 0 and <= 7 and var weightClass, MetresPerGram: { } grist })
            {
                continue;
            }

            var range = YarnWeightRanges.All[weightClass].MetresPer100Grams;
            var per100 = grist * 100;
            if (range.Holds(per100) || far != IsFar(yarn, range, per100) || (!far && IsExplained(yarn, range, per100)))
            {
                continue;
            }

            var weight = YarnWeight.All[weightClass];
            string[] fitting = [.. YarnWeightRanges.All.Where(r => r.MetresPer100Grams.Holds(per100)).Select(r => $"{r.Class} {YarnWeight.All[r.Class].Name}")];
            context.Bag.Add(rule, yarn.Origin,
                string.Create(CultureInfo.InvariantCulture, $"{YarnWords.Of(yarn)} is {per100:0} m to 100 g, where class {weight.Class}, {weight.Name}, usually has {range} ({Sources.YarnLengths})"),
                fitting.Length > 0 ? $"such a length is usual in {string.Join(" or ", fitting)}: check the put-up and the weight" : "check the mass and the length of the put-up");
        }
    }

    /// <summary>True when a yarn's put-up is so far from its class that it is a slip, and nothing may be reckoned from it.</summary>
    public static bool IsDoubtful(Yarn yarn) => yarn is { WeightClass: >= 0 and <= 7 and var weightClass, MetresPerGram: { } grist }
        && YarnWeightRanges.All[weightClass].MetresPer100Grams is var range && !range.Holds(grist * 100) && IsFar(yarn, range, grist * 100);

    // Airy fibres and dense ones may be twice as far out before anything is wrong.
    private static bool IsFar(Yarn yarn, FigureSpan range, decimal per100) => !range.Holds(per100, Far) && !(IsExplained(yarn, range, per100) && per100 < 4 * (range.Most ?? per100) && per100 > 0.3m * (range.Least ?? 0));

    private static bool IsExplained(Yarn yarn, FigureSpan range, decimal per100) =>
        per100 > range.Most ? Says(yarn, Airy) : Says(yarn, Dense);

    private static bool Says(Yarn yarn, string[] words) => Array.Exists(words, w => yarn.Fibre?.Contains(w, StringComparison.OrdinalIgnoreCase) == true || yarn.Name?.Contains(w, StringComparison.OrdinalIgnoreCase) == true);
}

/// <summary>Finds put-ups that no yarn of the class has.</summary>
internal sealed class GristFarFromClass : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF712", "grist-far-from-class", Area.Yarn, Severity.Warning,
        "The put-up is far from what yarns of the weight class have.",
        "How many metres a yarn has to the gram goes with its weight class. Fibres differ: mohair and brushed yarns run much longer, cotton and linen shorter, and that is allowed for. A put-up half as long again as the longest of its class, or half as long as the shortest, is mostly a slip: yards for metres of another ball, a digit lost, or the weight of another yarn.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                fibre: 100% wool
                weight: worsted
                put-up: 100 g = 20 m
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                fibre: 100% wool
                weight: worsted
                put-up: 100 g = 200 m
            ---
            """,
        Sources = [Reference.Sources.YarnLengths, Reference.Sources.YarnWeightsOlder],
    };

    public override void Run(CheckContext context) => Grist.Check(context, Rule, far: true);
}

/// <summary>Notes put-ups beside the usual lengths of the class.</summary>
internal sealed class GristUnusual : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF711", "grist-unusual", Area.Yarn, Severity.Note,
        "The put-up lies beside the usual lengths of the weight class.",
        "Charts of dyers and shops give the metres to 100 grams of each class, and they differ; the span takes all of them in. A yarn beside it is unusually light or heavy for its class: a maker who looks for another should go by the metres per gram and not by the class.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                fibre: 100% wool
                weight: worsted
                put-up: 100 g = 280 m
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                fibre: 100% wool
                weight: DK
                put-up: 100 g = 280 m
            ---
            """,
        Sources = [Reference.Sources.YarnLengths, Reference.Sources.YarnWeightsOlder],
    };

    public override void Run(CheckContext context) => Grist.Check(context, Rule, far: false);
}
