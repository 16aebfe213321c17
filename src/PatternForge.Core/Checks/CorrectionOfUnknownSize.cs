using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds corrections for sizes that the pattern does not have.</summary>
internal sealed class CorrectionOfUnknownSize : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF511", "correction-of-unknown-size", Area.Abbreviations, Severity.Warning,
        "A correction names a size that the pattern does not have.",
        "A maker looks through the corrections for the own size. One whose size is spelt otherwise than in the pattern is passed over.")
    {
        Bad = """
            ---
            title: Harbour hat
            version: 1.1
            sizes: S (M, L)
            corrections:
              - {version: 1.1, sizes: [M, XL], text: Decrease 6 stitches in Rnd 14}
                                          ^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            version: 1.1
            sizes: S (M, L)
            corrections:
              - {version: 1.1, sizes: [M, L], text: Decrease 6 stitches in Rnd 14}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var sizes = context.Facts.Sizes;
        if (sizes.Count < 2 || context.IsExcused("corrections", "sizes"))
        {
            return;
        }

        foreach (var size in context.Facts.Corrections.SelectMany(c => c.Sizes))
        {
            if (sizes.IndexOf(size.Value) < 0)
            {
                var near = Suggest.Nearest(size.Value, sizes.Names, 1);
                context.Bag.Add(Rule, size.Origin, $"the pattern has no size `{size.Value}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"the sizes are {string.Join(", ", sizes.Names.Select(n => $"`{n}`"))}");
            }
        }
    }
}
