using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with the words of a row, before it is worked.</summary>
public static class RowRules
{
    /// <summary>PF201.</summary>
    public static Rule UnknownStitch { get; } = new(
        "PF201", "unknown-stitch", Area.Notation, Severity.Error,
        "A row names a stitch that nobody knows.",
        "The abbreviation is neither in the trade's lists nor in the pattern's own. Correct the spelling, or define it under `stitches` in the header.")
    {
        Bad = """
            Row 1: K5, mkb, k6.
                       ^^^
            """,
        Good = "Row 1: K5, k2tog, k5.",
    };

    /// <summary>PF208.</summary>
    public static Rule NotRead { get; } = new(
        "PF208", "not-read", Area.Notation, Severity.Note,
        "A line that looks like an instruction was not understood, and so not checked.",
        "Nothing is wrong with a line only because a program cannot read it: a maker may. But its counts have not been checked, and later rows are checked only from the next stated count on.")
    {
        Bad = """
            Row 1: Twizzle the next 3 sts as you please.
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: Knit.",
    };

    /// <summary>PF209.</summary>
    public static Rule OtherCraft { get; } = new(
        "PF209", "stitch-of-another-craft", Area.Notation, Severity.Error,
        "A row uses a stitch of another craft.",
        "A crochet stitch cannot be worked in a knitting row, nor a knit stitch in a crochet row. If the piece has both, give each craft its own section and say so, or define the stitch under `stitches`.")
    {
        Bad = """
            Row 1: K7, hdc in next st, k4.
                       ^^^
            """,
        Good = "Row 1: K12.",
    };

    /// <summary>PF215.</summary>
    public static Rule UnknownSize { get; } = new(
        "PF215", "size-not-found", Area.Notation, Severity.Error,
        "A row is for a size that the header does not have.",
        "Sizes are named in the header under `sizes`; rows must call them by the same names.")
    {
        Bad = """
            ---
            title: Two sizes
            craft: knitting
            sizes:
              names: S (M)
            ---
            ## Piece

            CO 12 (14) sts.

            Size XL only: Knit 2 rows.
            ^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Two sizes
            craft: knitting
            sizes:
              names: S (M)
            ---
            ## Piece

            CO 12 (14) sts.

            Size M only: Knit 2 rows.
            """,
    };

    /// <summary>PF216.</summary>
    public static Rule UnknownNumber { get; } = new(
        "PF216", "number-not-found", Area.Notation, Severity.Error,
        "A name in braces is not among the header's numbers.",
        "`{name}` stands for the number of that name under `numbers` in the header; `{count}` at a row's end stands for the count that the row makes.")
    {
        Bad = """
            Row 1: K{edge}, k to end.
                    ^^^^^^
            """,
        Good = "Row 1: K2, k to end. {count}",
    };

    /// <summary>PF218.</summary>
    public static Rule ChartNotFound { get; } = new(
        "PF218", "chart-not-found", Area.Notation, Severity.Error,
        "A row refers to a chart that the pattern does not have.",
        "The chart must be one of the header's `charts`, called by the same name.")
    {
        Bad = """
            ---
            title: Two charts
            craft: knitting
            charts: {Chart A: 6, Chart B: 6}
            ---
            ## Piece

            CO 12 sts.

            Cont to follow Chart C.
                           ^^^^^^^
            """,
        Good = """
            ---
            title: Two charts
            craft: knitting
            charts: {Chart A: 6, Chart B: 6}
            ---
            ## Piece

            CO 12 sts.

            Cont to follow Chart B.
            """,
    };

    /// <summary>PF219.</summary>
    public static Rule PlaceNotFound { get; } = new(
        "PF219", "place-not-found", Area.Notation, Severity.Error,
        "A line sends the maker to a place that is not marked.",
        "\"Work as for Back to **\" needs the two stars at the place in the Back where the pieces part.")
    {
        Bad = """
            Row 1: Knit.

            Work as for Back to **.
            ^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: Knit.

            Rep Row 1 twice more.
            """,
    };

    /// <summary>PF620.</summary>
    public static Rule WrongNumberOfValues { get; } = new(
        "PF620", "list-of-wrong-length", Area.Gauge, Severity.Error,
        "A size list has another number of values than there are sizes.",
        "A list gives one value for each size in the header's order, or one value for all. Write a dash for a size that skips the step.")
    {
        Bad = """
            ---
            title: Three sizes
            craft: knitting
            sizes:
              names: S (M, L)
            ---
            ## Piece

            CO 12 (14) sts.
               ^^^^^^^
            """,
        Good = """
            ---
            title: Three sizes
            craft: knitting
            sizes:
              names: S (M, L)
            ---
            ## Piece

            CO 12 (14, 16) sts.
            """,
    };

    /// <summary>PF621.</summary>
    public static Rule ValuesOutOfRun { get; } = new(
        "PF621", "values-out-of-run", Area.Gauge, Severity.Warning,
        "The values of a size list do not run in one direction.",
        "From size to size, totals rise (or fall) together. A value that turns back is usually a slip of the keys. Repeat counts and remainders need not run and are not looked at.")
    {
        Bad = """
            ---
            title: Four sizes
            craft: knitting
            sizes:
              names: S (M, L, XL)
            ---
            ## Piece

            CO 88 (96, 140, 112) sts.
               ^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Four sizes
            craft: knitting
            sizes:
              names: S (M, L, XL)
            ---
            ## Piece

            CO 88 (96, 104, 112) sts.
            """,
    };

    /// <summary>PF320.</summary>
    public static Rule StitchDoesOtherwise { get; } = new(
        "PF320", "stitch-does-otherwise", Area.Counts, Severity.Warning,
        "A special stitch takes or makes other stitches than the header says.",
        "The \"how\" of a stitch, read as a row is read, uses or makes another number of stitches than its `takes` and `makes`. One of the two misleads: makers follow the first, and the counts of the rows the second. Leave `takes` and `makes` out where the \"how\" says it all.")
    {
        Bad = """
            ---
            title: Harbour hat
            stitches:
              - name: twist
                      ^^^^^
                how: sl 1 to cn, hold in front, k1, k1 from cn
                takes: 2
                makes: 3
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            stitches:
              - name: twist
                how: sl 1 to cn, hold in front, k1, k1 from cn
            ---
            """,
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } =
        [UnknownStitch, NotRead, OtherCraft, UnknownSize, UnknownNumber, ChartNotFound, PlaceNotFound, WrongNumberOfValues, ValuesOutOfRun, StitchDoesOtherwise];
}
