using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>An abbreviation that the pattern explains as another stitch than the trade means by it.</summary>
internal sealed class MeaningNotTheTrades : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF504", "meaning-not-the-trades", Area.Abbreviations, Severity.Warning,
        "The pattern's own list explains an abbreviation as another stitch than the trade means by it.",
        "Makers know the usual abbreviations by heart and do not look them up. One that means something else here will be worked as it is worked everywhere. Write the abbreviation that the trade has for the stitch, or give yours a name of its own under `stitches`.")
    {
        Bad = """
            ---
            title: Other meaning
            craft: knitting
            abbreviations:
              - k = knit
              - ssk = knit 2 together
                ^^^^^^^^^^^^^^^^^^^^^
              - st = stitch
              - CO = cast on
            ---
            ## Piece

            CO 12 sts.

            Row 1: K5, ssk, k5.
            """,
        Good = """
            ---
            title: The trade's meaning
            craft: knitting
            abbreviations:
              - k = knit
              - k2tog = knit 2 together
              - st = stitch
              - CO = cast on
            ---
            ## Piece

            CO 12 sts.

            Row 1: K5, k2tog, k5.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var explained in AbbreviationMeanings.Of(context.Facts))
        {
            if (explained is { IsInOtherTerms: false, Meant: { } meant } && IsOther(explained.Named, meant))
            {
                context.Bag.Add(new Finding(Rule, context.Source, explained.Entry.Origin, $"`{explained.Entry.Name}` is explained as \"{explained.Entry.Meaning}\", but to the trade it is {OperationTable.SpokenIn(explained.Named, context.Facts.TermsInForce ?? Dialect.Us)}")
                {
                    Help = OperationTable.NameIn(meant, context.Facts.TermsInForce ?? Dialect.Us) is { } usual ? $"the trade's abbreviation for that is `{usual}`" : null,
                });
            }
        }
    }

    // Stitches that take, make and lean alike are two ways to the same thing.
    private static bool IsOther(Operation named, Operation meant) =>
        named.Id != meant.Id && !IsOpen(named) && (IsKnitForPurl(named, meant) || IsKnitForPurl(meant, named) || named.Takes != meant.Takes || named.Makes != meant.Makes || named.PassesOver != meant.PassesOver || named.Height != meant.Height || (named.Lean != meant.Lean && named.Lean != Lean.None && meant.Lean != Lean.None));

    // Published lists explain these in more than one way themselves.
    private static bool IsOpen(Operation named) => TwoMeanings.Find(named.Id, named.Craft != Craft.Knitting) is not null;

    private static bool IsKnitForPurl(Operation one, Operation other) =>
        one is { Craft: Craft.Knitting, Takes: 1, Makes: 1, Family: Family.Basic, Gives: StitchKind.Knit } && other is { Takes: 1, Makes: 1, Family: Family.Basic, Gives: StitchKind.Purl };
}
