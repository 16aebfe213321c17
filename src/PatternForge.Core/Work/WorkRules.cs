using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Work;

/// <summary>What can come out wrong when the rows are worked.</summary>
public static class WorkRules
{
    /// <summary>PF210.</summary>
    public static Rule NumberSkipped { get; } = new(
        "PF210", "row-number-skipped", Area.Notation, Severity.Warning,
        "Row numbers jump over one or more rows.",
        "A maker who counts rows stops where a number is missing and asks whether something was lost.")
    {
        Bad = """
            Row 1: Knit.

            Row 3: Knit.
            ^^^^^
            """,
        Good = """
            Row 1: Knit.

            Row 2: Knit.
            """,
    };

    /// <summary>PF211.</summary>
    public static Rule NumberRepeated { get; } = new(
        "PF211", "row-number-repeated", Area.Notation, Severity.Warning,
        "The same row number is given twice.",
        "Two rows of one number in one part leave open which is meant. A part that begins again at row 1 is fine.")
    {
        Bad = """
            Rows 1-4: Knit.

            Row 4: Purl.
            ^^^^^
            """,
        Good = """
            Rows 1-4: Knit.

            Row 5: Purl.
            """,
    };

    /// <summary>PF212.</summary>
    public static Rule UnknownReference { get; } = new(
        "PF212", "reference-not-found", Area.Notation, Severity.Error,
        "A row refers to a row that the pattern does not have.",
        "A maker who is sent to a row that is not there is lost. Give the row, or correct the number or name.")
    {
        Bad = """
            Row 1: Knit.

            Row 2: Rep Row 12.
                       ^^^^^^
            """,
        Good = """
            Row 1: Knit.

            Row 2: Rep Row 1.
            """,
    };

    /// <summary>PF213.</summary>
    public static Rule LabelRowsDiffer { get; } = new(
        "PF213", "label-rows-differ", Area.Notation, Severity.Warning,
        "The label covers another number of rows than the words make.",
        "\"Rows 5-10\" are six rows. When the text makes eight, either the label or the number of times is wrong.")
    {
        Bad = """
            Rows 1-4: Knit.

            Rows 5-10: Work Rows 1-4 twice.
            ^^^^^^^^^
            """,
        Good = """
            Rows 1-4: Knit.

            Rows 5-12: Work Rows 1-4 twice.
            """,
    };

    /// <summary>PF214.</summary>
    public static Rule BareBracket { get; } = new(
        "PF214", "bracket-without-number", Area.Notation, Severity.Error,
        "A bracket does not say how often it is worked, and once leaves stitches over.",
        "Put the number of times behind the bracket, or \"to end\".")
    {
        Bad = """
            Row 1: K3, [k2tog, yo], k3.
                       ^^^^^^^^^^^
            """,
        Good = "Row 1: K3, [k2tog, yo] 3 times, k3.",
    };

    /// <summary>PF217.</summary>
    public static Rule SideOutOfTurn { get; } = new(
        "PF217", "side-out-of-turn", Area.Notation, Severity.Warning,
        "A row is labelled with the side that is not next.",
        "In flat work right and wrong side take turns. Two right-side rows one after the other mean that a row is missing, or that the side is mixed up.")
    {
        Bad = """
            Row 1 (RS): Knit.

            Row 2 (RS): Purl.
            ^^^^^^^^^^
            """,
        Good = """
            Row 1 (RS): Knit.

            Row 2 (WS): Purl.
            """,
    };

    /// <summary>PF301.</summary>
    public static Rule StatedCountDiffers { get; } = new(
        "PF301", "stated-count-differs", Area.Counts, Severity.Error,
        "The stated stitch count differs from what the row makes.",
        "The count at a row's end is the maker's safety net. Either the count or the row is wrong; when the counts after it agree with the stated one, it is the row.")
    {
        Bad = """
            Row 1: K1, k2tog, k to end. (12 sts)
                                         ^^^^^^
            """,
        Good = "Row 1: K1, k2tog, k to end. (11 sts)",
    };

    /// <summary>PF302.</summary>
    public static Rule RepeatDoesNotFit { get; } = new(
        "PF302", "repeat-does-not-fit", Area.Counts, Severity.Error,
        "A repeat does not come out even over the stitches there are.",
        "The stitches between the edges must divide by the stitches of the repeat in every size. Change the stitches cast on, the edges, or the repeat.")
    {
        Bad = """
            Row 1: K1, *k2, p2; rep from * to last st, k1.
                       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: K2, *k2, p2; rep from * to last 2 sts, k2.",
    };

    /// <summary>PF303.</summary>
    public static Rule TooFewStitches { get; } = new(
        "PF303", "too-few-stitches", Area.Counts, Severity.Error,
        "A row asks for more stitches than there are.",
        "The stitches that the row uses add up to more than are on the needle.")
    {
        Bad = """
            Row 1: K8, p6.
            ^^^^^^^^^^^^^
            """,
        Good = "Row 1: K8, p4.",
    };

    /// <summary>PF304.</summary>
    public static Rule StitchesLeft { get; } = new(
        "PF304", "stitches-left-unworked", Area.Counts, Severity.Error,
        "A row ends before the stitches do.",
        "The stitches that the row uses add up to fewer than are on the needle, and nothing says to turn or to leave them.")
    {
        Bad = """
            Row 1: K7, p4.
            ^^^^^^^^^^^^^
            """,
        Good = "Row 1: K8, p4.",
    };

    /// <summary>PF305.</summary>
    public static Rule StatedChangeDiffers { get; } = new(
        "PF305", "stated-change-differs", Area.Counts, Severity.Error,
        "The stated number of stitches increased or decreased differs from what the row does.",
        "\"2 sts dec'd\" says how the count changes, not what it is. Either the number or the row is wrong.")
    {
        Bad = """
            Row 1: K1, k2tog, k to end. 2 sts dec'd.
                                        ^^^^^^^^^^^
            """,
        Good = "Row 1: K1, k2tog, k to end. 1 st dec'd.",
    };

    /// <summary>PF306.</summary>
    public static Rule RepeatImplied { get; } = new(
        "PF306", "repeat-not-said", Area.Counts, Severity.Warning,
        "The row only comes out if it is repeated to the end, which it does not say.",
        "A new maker works the words once and wonders about the rest. Write \"*...; rep from * to end\".")
    {
        Bad = """
            Row 1: K2, p1.
            ^^^^^^^^^^^^^
            """,
        Good = "Row 1: *K2, p1; rep from * to end.",
    };

    /// <summary>PF307.</summary>
    public static Rule RestNotSaid { get; } = new(
        "PF307", "rest-of-row-not-said", Area.Counts, Severity.Warning,
        "Stitches are left at the row's end; the stated count only comes out if they are worked plain.",
        "Say what happens to them: \"k to end\".")
    {
        Bad = """
            Row 1: (K2tog, k1) twice. (10 sts)
            ^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: (K2tog, k1) twice, k to end. (10 sts)",
    };

    /// <summary>PF308.</summary>
    public static Rule TimesTwoWays { get; } = new(
        "PF308", "times-or-times-more", Area.Counts, Severity.Note,
        "\"rep from * n times\" can mean n more times or n in all.",
        "Books and leaflets mean n more, many others n in all. Write \"n more times\" or \"n times in all\". What fits the stitches was taken.")
    {
        Bad = """
            Row 1: *K2, p1; rep from * 3 times.
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: *K2, p1; rep from * 3 more times.",
    };

    /// <summary>PF309.</summary>
    public static Rule NoMarker { get; } = new(
        "PF309", "marker-not-there", Area.Counts, Severity.Error,
        "A row goes to a marker that is not there.",
        "No marker stands between here and the end of the row. Place it in an earlier row, or correct the number of times.")
    {
        Bad = """
            Row 1: K to 2 sts before marker, k2tog, k to end.
                   ^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: K6, pm, k6.

            Row 2: P to 2 sts before marker, p2tog, sm, p to end.
            """,
    };

    /// <summary>PF310.</summary>
    public static Rule RepeatTakesNothing { get; } = new(
        "PF310", "repeat-takes-nothing", Area.Counts, Severity.Error,
        "A repeat that uses no stitches would never reach the end.",
        "Yarn overs and made stitches use none of the stitches there are. Put a stitch into the repeat, or say how often it is worked.")
    {
        Bad = """
            Row 1: *Yo; rep from * to end.
                   ^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: *Yo, k2tog; rep from * to end.",
    };

    /// <summary>PF311.</summary>
    public static Rule TooLarge { get; } = new(
        "PF311", "too-much-for-one-line", Area.Counts, Severity.Error,
        "A line stands for more stitches, rows or steps than any piece has.",
        "Counts are worked up to 100,000 stitches and 10,000 rows a line. A larger number is a slip of the keys.")
    {
        Bad = """
            Row 1: K6, [yo] 1000000000000 times, k6.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: K6, [yo] 3 times, k6.",
    };

    /// <summary>PF312.</summary>
    public static Rule NamedCountDiffers { get; } = new(
        "PF312", "named-count-differs", Area.Counts, Severity.Error,
        "The words name another number of stitches than there are.",
        "\"Bind off the remaining 20 sts\" must name the stitches that remain.")
    {
        Bad = """
            Row 1: Knit.

            Bind off rem 20 sts.
            ^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: Knit.

            Bind off rem 12 sts.
            """,
    };

    /// <summary>PF313.</summary>
    public static Rule TargetMissed { get; } = new(
        "PF313", "target-missed", Area.Counts, Severity.Error,
        "Shaping or a repeat of rows can never end at the count named.",
        "Each time changes the count by the same number; the target must be a whole number of times away.")
    {
        Bad = """
            Row 1: K1, m1, k to last st, m1, k1.

            Row 2: Purl.

            Rep Rows 1 and 2 until there are 31 sts.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: K1, m1, k to last st, m1, k1.

            Row 2: Purl.

            Rep Rows 1 and 2 until there are 32 sts.
            """,
    };

    /// <summary>PF314.</summary>
    public static Rule NeedlesDoNotAddUp { get; } = new(
        "PF314", "needles-do-not-add-up", Area.Counts, Severity.Error,
        "The stitches stated for each needle do not add up to those there are.",
        "The parts must sum to the whole.")
    {
        Bad = """
            Needle 1: 4 sts; Needle 2: 4 sts; Needle 3: 5 sts.
                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Needle 1: 4 sts; Needle 2: 4 sts; Needle 3: 4 sts.",
    };

    /// <summary>PF315.</summary>
    public static Rule ShapedAway { get; } = new(
        "PF315", "more-decreased-than-there", Area.Counts, Severity.Error,
        "More stitches are to go than there are.",
        "The decreases and bind-offs add up to more than the stitches on the needle.")
    {
        Bad = """
            BO 4 sts at beg of next 4 rows.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "BO 4 sts at beg of next 2 rows.",
    };

    /// <summary>PF317.</summary>
    public static Rule StitchPatternDoesNotFit { get; } = new(
        "PF317", "stitch-pattern-does-not-fit", Area.Counts, Severity.Error,
        "A stitch pattern is worked over a number of stitches that is no multiple of it.",
        "The heading of the stitch pattern states its multiple, and the stitches that it is worked over here leave a part of a repeat over. Change the edge stitches, or the stitches cast on; the message names the nearest numbers that fit.")
    {
        Bad = """
            ---
            title: Harbour hat
            ---
            ## Shell lace (multiple of 6 + 1)

            Row 1: K1, *yo, k2tog, k1, ssk, yo, k1; rep from * to end.

            Row 2: Purl.

            ## Scarf

            Cast on 44 sts.

            Work Rows 1 and 2 of Shell lace 10 times.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Harbour hat
            ---
            ## Shell lace (multiple of 6 + 1)

            Row 1: K1, *yo, k2tog, k1, ssk, yo, k1; rep from * to end.

            Row 2: Purl.

            ## Scarf

            Cast on 43 sts.

            Work Rows 1 and 2 of Shell lace 10 times.
            """,
    };

    /// <summary>PF316.</summary>
    public static Rule NoSuchPlace { get; } = new(
        "PF316", "no-such-place", Area.Counts, Severity.Error,
        "A crochet row goes into a chain or space that is not there.",
        "The row below has no such chain space, or no chain is there to be counted from the hook. Check the row below and the length of the chain named.")
    {
        Bad = """
            ---
            title: A strip
            craft: crochet
            terms: us
            ---
            ## Strip

            Ch 11.

            Row 1: Sc in 2nd ch from hook and in each ch across. (10 sc)

            Row 2: Ch 1, turn, sc in first sc, sc in next ch-2 sp, sc in last sc.
                                                  ^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: A strip
            craft: crochet
            terms: us
            ---
            ## Strip

            Ch 11.

            Row 1: Sc in 2nd ch from hook and in each ch across. (10 sc)

            Row 2: Ch 1, turn, sc in each sc across. (10 sc)
            """,
    };

    /// <summary>PF318.</summary>
    public static Rule OtherMarker { get; } = new(
        "PF318", "next-marker-taken", Area.Counts, Severity.Note,
        "A row goes to a marker by a name that no marker ahead has.",
        "The next marker was taken, whatever its name, because most patterns name their markers loosely. Where a marker has been left out, or is called otherwise where it is placed, this is the wrong one, and the shaping moves.")
    {
        Bad = """
            Row 1: K4, pm, k4, place marker B, k4.

            Row 2: P to marker A, sm, p to end.
                   ^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: K4, place marker B, k4, place marker A, k4.

            Row 2: P to marker A, sm, p to end.
            """,
    };

    /// <summary>PF319.</summary>
    public static Rule SecondSideDiffers { get; } = new(
        "PF319", "second-side-differs", Area.Counts, Severity.Warning,
        "A second side is to match the first, but begins with another number of stitches.",
        "Where both sides of a neck are worked alike, each begins with as many stitches; a difference is mostly a slip in the stitches bound off between them.")
    {
        Bad = """
            Row 1: K5, turn, leaving rem sts on a holder.

            Row 2: Purl.

            BO.

            Rejoin yarn to rem sts, BO 3 sts, k to end.

            Complete to match first side.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: K5, turn, leaving rem sts on a holder.

            Row 2: Purl.

            BO.

            Rejoin yarn to rem sts, BO 2 sts, k to end.

            Complete to match first side.
            """,
    };

    /// <summary>PF321.</summary>
    public static Rule SectionsDiffer { get; } = new(
        "PF321", "sections-differ", Area.Counts, Severity.Warning,
        "The count told by sections is not what lies between the markers.",
        "The whole may be right while a front is a stitch short and the back has it. The sections stated are compared with the stitches between the markers; which section is called what does not matter.")
    {
        Bad = """
            Row 1: K4, pm, k4, pm, k4.

            Row 2: Purl. (3 sts each front, 6 back)
                          ^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: K4, pm, k4, pm, k4.

            Row 2: Purl. (4 sts each front, 4 back)
            """,
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } =
    [
        NumberSkipped, NumberRepeated, UnknownReference, LabelRowsDiffer, BareBracket, SideOutOfTurn, StatedCountDiffers, RepeatDoesNotFit, TooFewStitches, StitchesLeft, StatedChangeDiffers, RepeatImplied, RestNotSaid,
        TimesTwoWays, NoMarker, RepeatTakesNothing, TooLarge, NamedCountDiffers, TargetMissed, NeedlesDoNotAddUp, ShapedAway, NoSuchPlace, StitchPatternDoesNotFit, OtherMarker, SecondSideDiffers, SectionsDiffer, ProseCounts.Rule,
    ];
}
