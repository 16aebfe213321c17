using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Editions;

/// <summary>What can be found when an edition of a pattern is made.</summary>
public static class EditionRules
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<Rule> All => [Unknown, NotPossible, TermsTold, LineLeft, ToolLeft, UnitLeft, NotTogether, ChartWithoutWords, NothingCharted, SideLeft];

    /// <summary>PF407.</summary>
    public static Rule Unknown { get; } = new(
        "PF407", "unknown-edition", Area.Terms, Severity.Warning,
        "`release` names an edition that does not exist.",
        "`release` lists the editions that `build` makes beside the pattern as it is written: `us` and `uk` for the terms, `spelled-out` for words in place of abbreviations, `sizes` for one of each size, `size-m` for that of the size M, `metric`, `inches` and `both-units` for the units; several in one have a plus between their names.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [us, british]
                          ^^^^^^^
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [us, uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
    };

    /// <summary>PF408.</summary>
    public static Rule NotPossible { get; } = new(
        "PF408", "edition-not-the-same", Area.Terms, Severity.Error,
        "An edition cannot be made, or a row of it does not come to the same as in the pattern as it is written.",
        "An edition says the same pattern in other words. It is compiled like any other source, and every row must come to the same counts in every size. Where a word of the pattern stands in the way, such as a stitch of its own under a name that the other terms give to another stitch, call it otherwise.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            stitches:
              htr: (sc, ch 1, sc) in next st
              ^^^
            release: [uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)

            Rnd 2: Htr around.
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            stitches:
              v-st: (sc, ch 1, sc) in next st
            release: [uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)

            Rnd 2: V-st in each st around.
            """,
    };

    /// <summary>PF409.</summary>
    public static Rule TermsTold { get; } = new(
        "PF409", "terms-told-in-words", Area.Terms, Severity.Warning,
        "A sentence speaks of American or British terms itself, and stands unchanged in an edition in the other terms.",
        "\"This pattern uses US terms\" is wrong on the page of the British edition, and a list that explains one side's names by the other's cannot be turned round word by word. The page says its terms by itself, from `terms` in the header; take the sentence out.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [uk]
            ---

            ## Notes

            This pattern is written in US terms.
                                       ^^

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
    };

    /// <summary>PF410.</summary>
    public static Rule LineLeft { get; } = new(
        "PF410", "line-left-abbreviated", Area.Terms, Severity.Note,
        "In the edition without abbreviations, a line stands as it was written.",
        "Written out, this line would not be read as the same stitches, so it keeps its abbreviations, and the table of that edition explains them. Write the line itself in words where the edition is to have none.")
    {
        Bad = """
            ---
            title: Rib band
            release: [spelled-out]
            ---

            ## Band

            CO 12 sts.

            Work k1, p1 rib for 5 cm.
            ^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Rib band
            release: [spelled-out]
            ---

            ## Band

            CO 12 sts.

            Row 1: K2, p2tog, k8.
            """,
    };

    /// <summary>PF413.</summary>
    public static Rule ToolLeft { get; } = new(
        "PF413", "tool-size-left", Area.Terms, Severity.Note,
        "In an edition for American or British readers, the size of a needle or hook stands as it was written.",
        "An edition leads with the millimetres and gives the reader's own number behind them, where the published charts have one. A number alone that the charts give to several diameters, and a run of numbers for several sizes, cannot be said in the other side's numbers. Give the millimetres; the page adds the names.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            tools: hooks US H-8 (9, 10)
                         ^^^^^^
            release: [uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            tools: hooks of 5 (5.5, 6) mm
            release: [uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Sources = [Reference.Sources.ToolCharts],
    };

    /// <summary>PF414.</summary>
    public static Rule UnitLeft { get; } = new(
        "PF414", "unit-left", Area.Terms, Severity.Note,
        "In an edition in other units, a unit stands as it was written.",
        "\"Half an inch\" and \"5 sts per inch\" have no number in digits that could be told in centimetres. Write the length in digits where the edition is to have it in its own units.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [metric]
            ---

            ## Notes

            Leave half an inch between the rounds.
                          ^^^^

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [metric]
            ---

            ## Notes

            Leave ½ in between the rounds.

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
    };

    /// <summary>PF415.</summary>
    public static Rule NotTogether { get; } = new(
        "PF415", "editions-not-together", Area.Terms, Severity.Warning,
        "A combined edition names two that settle the same.",
        "`uk+size-m+large-print` makes one edition of three. Two kinds of terms or of units, two sizes, or words alone and charts alone cannot stand on one page. Make two editions of them.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [us+uk]
                      ^^^^^
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            release: [us, uk]
            ---

            ## Coaster

            Rnd 1: 6 sc in magic ring. (6 sc)
            """,
    };

    /// <summary>PF416.</summary>
    public static Rule ChartWithoutWords { get; } = new(
        "PF416", "chart-without-words", Area.Terms, Severity.Note,
        "In the edition without charts, a chart stays because no words give its rows.",
        "Who cannot read charts needs the same rows in words. Write them beside the chart: both are held against each other.")
    {
        Bad = """
            ---
            title: Ladder
            release: [words-only]
            ---

            ## Ladder

            CO 3 sts.

            ```chart
            ^^^^^^^^
            key: . = k, - = p, x = yo
                . - .     3
            2   . - .
                . - .     1
            ```
            """,
        Good = """
            ---
            title: Ladder
            release: [words-only]
            ---

            ## Ladder

            CO 3 sts.

            Row 1: K1, p1, k1.
            """,
    };

    /// <summary>PF417.</summary>
    public static Rule NothingCharted { get; } = new(
        "PF417", "nothing-charted", Area.Terms, Severity.Note,
        "The edition of charts alone has no chart.",
        "In this edition rows that a chart shows are left to the chart. The pattern has no chart or diagram that shows rows, so that the edition is the pattern as it is written.")
    {
        Bad = """
            ---
            ^^^
            title: Rib band
            release: [charts-only]
            ---

            ## Band

            CO 12 sts.

            Row 1: K2, p2tog, k8.
            """,
        Good = """
            ---
            title: Rib band
            release: [large-print]
            ---

            ## Band

            CO 12 sts.

            Row 1: K2, p2tog, k8.
            """,
    };

    /// <summary>PF418.</summary>
    public static Rule SideLeft { get; } = new(
        "PF418", "side-left", Area.Terms, Severity.Note,
        "In the left-handed edition, a word that may be a side stands as it was written.",
        "Who works in mirror image makes the left where the pattern has the right, so that this edition exchanges the words for sides. \"Left\" may also be what remains, and \"right\" what is correct: where it is not sure, the word stays.")
    {
        Bad = """
            ---
            title: Rib band
            release: [left-handed]
            ---

            ## Notes

            Fold it right.
                    ^^^^^

            ## Band

            CO 12 sts.

            Row 1: K2, p2tog, k8.
            """,
        Good = """
            ---
            title: Rib band
            release: [left-handed]
            ---

            ## Notes

            Fold it to the right.

            ## Band

            CO 12 sts.

            Row 1: K2, p2tog, k8.
            """,
    };
}
