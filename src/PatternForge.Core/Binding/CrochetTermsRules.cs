using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with the terms of a crochet pattern: the same names mean different stitches to American and to British makers.</summary>
public static class CrochetTermsRules
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<Rule> All => [WordOfOtherTerms, TermsMissing, TermsOnlyShown, BothTerms, CountsOfOtherTerms];

    /// <summary>PF402.</summary>
    public static Rule WordOfOtherTerms { get; } = new(
        "PF402", "word-of-the-other-terms", Area.Terms, Severity.Error,
        "A crochet row uses a stitch name that the declared terms do not have.",
        "American and British crochet call the same stitch by different names: the American sc is the British dc, the American hdc the British htr. A name that only the other side of the water has makes a maker doubt every other stitch of the row. Write the name that the declared terms have, or declare the other terms.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Ch 16.

            Row 1: Sc in 2nd ch from hook and in each ch across. (15 sc)

            Row 2: Ch 1, turn, sc in next 5 sts, htr in next 5 sts, sc in next 5 sts.
                                                 ^^^
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Ch 16.

            Row 1: Sc in 2nd ch from hook and in each ch across. (15 sc)

            Row 2: Ch 1, turn, sc in next 5 sts, hdc in next 5 sts, sc in next 5 sts.
            """,
    };

    /// <summary>PF403.</summary>
    public static Rule TermsMissing { get; } = new(
        "PF403", "crochet-without-terms", Area.Terms, Severity.Error,
        "A crochet pattern does not say whether its terms are American or British, and its rows do not show it.",
        "dc, tr and dtr are different stitches in American and in British terms, so a maker who guesses wrong makes the whole piece too tall or too short. Write `terms: us` or `terms: uk` in the header.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            ---

            ## Coaster

            Rnd 1: 12 dc in ring, join.
                      ^^
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Rnd 1: 12 dc in ring, join.
            """,
    };

    /// <summary>PF404.</summary>
    public static Rule TermsOnlyShown { get; } = new(
        "PF404", "terms-only-shown", Area.Terms, Severity.Warning,
        "A crochet pattern does not declare its terms; a stitch name shows which they are.",
        "A name such as sc exists in American terms alone, and htr in British ones, so the rows can be read. A maker should not have to find that out. Write `terms: us` or `terms: uk` in the header.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
                     ^^
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
    };

    /// <summary>PF405.</summary>
    public static Rule BothTerms { get; } = new(
        "PF405", "both-terms-used", Area.Terms, Severity.Error,
        "A crochet pattern that declares no terms uses names that only American and names that only British terms have.",
        "Nobody can tell what a dc is where sc and htr stand side by side. Choose one, declare it in the header, and write all stitches in it.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)

            Rnd 2: 2 htr in each st around. (12 htr)
                     ^^^
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)

            Rnd 2: 2 hdc in each st around. (12 hdc)
            """,
    };

    /// <summary>PF406.</summary>
    public static Rule CountsOfOtherTerms { get; } = new(
        "PF406", "counts-of-the-other-terms", Area.Terms, Severity.Error,
        "The rows of a crochet pattern come out in the other terms, and not in those that it declares.",
        "dc, tr and dtr are stitches of other heights in American and in British terms, and the chains that take their place at the beginning of a row are counted by those heights. Where every row comes out in one reading and not in the other, that is a proof of whose terms they are. Declare those terms; or, if the declaration is right, correct the rows.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: uk
                   ^^
            ---

            ## Coaster

            Ch 14.

            Row 1: Dc in 4th ch from hook and in each ch across. (12 dc)

            Row 2: Ch 3, turn, sk first st, dc in each st across. (12 dc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            ---

            ## Coaster

            Ch 14.

            Row 1: Dc in 4th ch from hook and in each ch across. (12 dc)

            Row 2: Ch 3, turn, sk first st, dc in each st across. (12 dc)
            """,
    };
}
