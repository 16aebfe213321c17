using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds a sample that took more yarn than the pattern says its size needs.</summary>
internal sealed class NeedsLessThanSample : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF714", "needs-less-than-sample", Area.Yarn, Severity.Warning,
        "The sample took more yarn than its size is said to need.",
        "The amounts of a pattern are those of the sample, reckoned for each size, and a little more. If they are less than the sample itself weighs, a maker of that size runs out of yarn. The put-up turns metres, grams and balls into each other.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: one size
            yarn: {name: Quayside Wool, put-up: 100 g = 200 m, needs: 100 m}
            sample: {used: 80 g}
                    ^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: one size
            yarn: {name: Quayside Wool, put-up: 100 g = 200 m, needs: 180 m}
            sample: {used: 80 g}
            ---
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.Sample is not { Used: { } used } sample || facts.Yarns.IsEmpty || facts.Yarns.Any(y => Grist.IsDoubtful(y) && y.Needs?.Values.All(n => n is null || n.Unit.Dimension == used.Unit.Dimension) == false))
        {
            return;
        }

        var size = sample.Size is { } name ? facts.Sizes.IndexOf(name) : facts.Sizes.Count == 1 ? 0 : -1;
        size = size < 0 && facts.Sizes.Count == 1 ? 0 : size;
        if (size < 0)
        {
            return;
        }

        var (needed, took, unit) = used.Unit.Dimension switch
        {
            Dimension.Mass => (Sum(facts, y => Amounts.Grams(y, size)), used.InBase, "g"),
            Dimension.YarnLength => (Sum(facts, y => Amounts.Metres(y, size)), used.InBase, "m"),
            _ => (null, 0m, ""),
        };

        // Scales and rounding: a twentieth, and two grams or metres always.
        if (needed is { } enough && took > (enough * 1.05m) + 2)
        {
            var where = facts.Sizes.Count > 1 ? $" in size {facts.Sizes.Names[size]}" : "";
            context.Bag.Add(new Finding(Rule, context.Source, sample.Origin, string.Create(CultureInfo.InvariantCulture, $"the sample took {took:0} {unit}{where}, but the yarn needed is {enough:0} {unit}"))
            {
                Sizes = facts.Sizes.Count > 1 ? [size] : [],
                Labels = [new Label(facts.Yarns[0].NeedsOrigin ?? facts.Yarns[0].Origin, "the yarn needed")],
                Help = "check the weight of the sample, the amounts, and the put-up",
            });
        }
    }

    private static decimal? Sum(PatternFacts facts, Func<Yarn, decimal?> of)
    {
        decimal? sum = 0;
        foreach (var yarn in facts.Yarns)
        {
            sum += of(yarn);
        }

        return sum;
    }
}
