using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>An abbreviation that published lists explain in two ways, used and not explained.</summary>
internal sealed class AbbreviationOfTwoMeanings : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF507", "meaning-left-open", Area.Abbreviations, Severity.Note,
        "The pattern uses an abbreviation that published lists explain in two ways, and does not say which it means.",
        "M1 is a lifted bar to one list and any increase to another; k1b is worked into the back of the stitch here and into the row below there. The table that is made for the page gives the usual meaning. Where it matters to the fabric, say yours: in `abbreviations`, under `stitches`, or in a note.")
    {
        Bad = """
            ---
            title: Harbour hat
            craft: knitting
            terms: us
            tools: 4 mm needles
            ---

            ## Hat

            CO 12 sts.

            Row 1: K6, M1, k6. (13 sts)
                       ^^
            """,
        Good = """
            ---
            title: Harbour hat
            craft: knitting
            terms: us
            tools: 4 mm needles
            notes: For M1, lift the bar between the stitches and knit it through the back loop.
            ---

            ## Hat

            CO 12 sts.

            Row 1: K6, M1, k6. (13 sts)
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (!Explanations.AreExpected(context) || context.IsExcused("abbreviations"))
        {
            return;
        }

        foreach (var use in context.Abbreviations.Where(u => !u.IsSpecial))
        {
            if (TwoMeanings.Find(use.Key, context.Facts.Craft != Craft.Knitting) is not { } two || !string.Equals(use.Name, two.Key, StringComparison.OrdinalIgnoreCase) || (two.IsSettledInUk && context.Facts.Terms?.Value == Dialect.Uk)
                || (context.Facts.Abbreviations ?? []).Any(a => a.Meaning is { Length: > 0 } && AbbreviationUse.KeyOf(a.Name) == two.Key)
                || Explanations.Has(context, [two.Key]))
            {
                continue;
            }

            context.Bag.Add(Rule, use.Origin, $"`{use.Name}` means {string.Join(" to some and ", two.Meanings[..2])} to others, and the pattern does not say which: {two.Effect}", $"say it in `abbreviations` or in a note; the page's table says \"{use.Meaning}\"");
        }
    }
}
