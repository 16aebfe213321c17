using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds amounts of the sample or the swatch that name no yarn of the pattern.</summary>
internal sealed class SampleYarnNotListed : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF723", "sample-yarn-not-listed", Area.Yarn, Severity.Warning,
        "What the sample or the swatch took is told of a yarn that the pattern does not have.",
        "Amounts told yarn by yarn go by the letters of the yarns, or by their names. One that fits none is not counted.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - {name: Quayside Wool, label: MC, put-up: 100 g = 200 m, needs: 80 m}
              - {name: Quayside Glow, label: CC, put-up: 100 g = 200 m, needs: 40 m}
            sample: {used: {MC: 35 g, C: 15 g}}
                                      ^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - {name: Quayside Wool, label: MC, put-up: 100 g = 200 m, needs: 80 m}
              - {name: Quayside Glow, label: CC, put-up: 100 g = 200 m, needs: 40 m}
            sample: {used: {MC: 35 g, CC: 15 g}}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        foreach (var used in (facts.Sample?.UsedBy ?? []).Concat(facts.Swatch?.WeighsBy ?? []))
        {
            if (!facts.Yarns.IsEmpty && !context.IsExcused("yarn") && !facts.Yarns.Any(y => IsCalled(y, used.Label)))
            {
                var labels = facts.Yarns.Select(y => y.Label ?? y.Name).OfType<string>().Select(l => $"`{l}`").ToArray();
                context.Bag.Add(Rule, used.Origin, $"`{used.Label}` is no yarn of this pattern", labels.Length == 0 ? "give the yarns letters: `label: A`" : $"the yarns are {string.Join(", ", labels)}");
            }
        }
    }

    private static bool IsCalled(Yarn yarn, string label) =>
        string.Equals(yarn.Label, label, StringComparison.OrdinalIgnoreCase) || string.Equals(yarn.Name, label, StringComparison.OrdinalIgnoreCase);
}
