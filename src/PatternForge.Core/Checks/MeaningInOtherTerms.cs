using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>A crochet abbreviation that is explained with the words of the other terms.</summary>
internal sealed class MeaningInOtherTerms : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF505", "meaning-in-other-terms", Area.Abbreviations, Severity.Error,
        "The pattern's own list explains a crochet abbreviation with the words of the other terms.",
        "A list that says dc is a treble makes an American maker work a stitch that is a step too tall, and one that says dc is a single crochet leaves a British maker without any word that they know. Explain each abbreviation in the terms that the header declares.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            abbreviations:
              - dc = treble
                ^^^^^^^^^^^
            ---

            ## Coaster

            Rnd 1: 12 dc in ring.
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            abbreviations:
              - dc = double crochet
            ---

            ## Coaster

            Rnd 1: 12 dc in ring.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.Facts.TermsInForce is not { } terms)
        {
            return;
        }

        foreach (var explained in AbbreviationMeanings.Of(context.Facts).Where(e => e.IsInOtherTerms))
        {
            var (here, there) = terms == Dialect.Us ? ("American", "British") : ("British", "American");
            context.Bag.Add(new Finding(Rule, context.Source, explained.Entry.Origin, $"`{explained.Entry.Name}` is explained in {there} words as \"{explained.Entry.Meaning}\", and this pattern is in {here} terms")
            {
                Help = $"in {here} terms it is \"{OperationTable.SpokenIn(explained.Named, terms)}\"",
            });
        }
    }
}
