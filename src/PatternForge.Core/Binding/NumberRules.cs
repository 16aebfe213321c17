using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with the formulas of the header and with the size tables that they ask.</summary>
public static class NumberRules
{
    /// <summary>A formula that cannot be read.</summary>
    public static Rule NotUnderstood { get; } = new(
        "PF180", "formula-not-understood", Area.Source, Severity.Error,
        "A formula cannot be read.",
        "A value that begins with an equals sign is a formula: numbers with or without a unit, names of other numbers and measurements, + - * / and brackets, and the functions that the guide lists. A minus has blanks around it, because `upper-arm` is one name.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(50 cm) multiple 4)
                                          ^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(50 cm), multiple 4)
            ---
            """,
    };

    /// <summary>A name that nothing has.</summary>
    public static Rule NameNotFound { get; } = new(
        "PF181", "name-in-formula-not-found", Area.Source, Severity.Error,
        "A formula calls something that the header does not have.",
        "A name in a formula is that of another number, of a finished measurement or of one of the body (`finished.bust` and `fits.bust` where both have it), of the gauge (`gauge.stitches`, `gauge.rows`), of a size table (`body.bust`), or `size`, the number of the size from 1.")
    {
        Bad = """
            ---
            title: Harbour hat
            numbers:
              brim: 88
              crown: = brims / 2
                       ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            numbers:
              brim: 88
              crown: = brim / 2
            ---
            """,
    };

    /// <summary>Numbers that need each other.</summary>
    public static Rule Circle { get; } = new(
        "PF182", "numbers-in-a-circle", Area.Source, Severity.Error,
        "A number is worked out from itself, by way of others.",
        "Each number is worked out when another asks for it. Where the way leads back to where it began there is no number to begin with.")
    {
        Bad = """
            ---
            title: Harbour hat
            numbers:
              brim: = crown * 2
                      ^^^^^
              crown: = brim / 2
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            numbers:
              brim: 88
              crown: = brim / 2
            ---
            """,
    };

    /// <summary>Units that do not go together.</summary>
    public static Rule UnitsDiffer { get; } = new(
        "PF183", "units-do-not-add", Area.Source, Severity.Error,
        "A formula adds, compares or rounds things that do not measure the same.",
        "Centimetres cannot be added to stitches, nor a bare number to centimetres: the slip is mostly a measurement that should have gone through the gauge. Centimetres and inches go together, and a bare number may stand beside stitches and rows.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(50 cm) + 2 cm)
                               ^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(50 cm + 2 cm))
            ---
            """,
    };

    /// <summary>A formula that has no answer.</summary>
    public static Rule NoAnswer { get; } = new(
        "PF184", "formula-without-answer", Area.Source, Severity.Error,
        "A formula can be read and has no answer.",
        "Nothing can be divided by nought, nothing less than nought has a square root, and what asks the gauge needs one.")
    {
        Bad = """
            ---
            title: Harbour hat
            numbers:
              cast-on: = round(sts(50 cm))
                               ^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(50 cm))
            ---
            """,
    };

    /// <summary>Stitches or rows that are not whole.</summary>
    public static Rule NotWhole { get; } = new(
        "PF185", "number-not-whole", Area.Source, Severity.Warning,
        "A number of stitches or rows is not whole.",
        "Nobody can cast on 97.6 stitches. A formula says how it is rounded: to the nearest, up or down, to an odd or even number, or to the multiple that the stitch pattern needs.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: 21 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = sts(51 cm)
                       ^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 21 sts and 28 rows = 10 cm in stockinette
            numbers:
              cast-on: = round(sts(51 cm), even)
            ---
            """,
    };

    /// <summary>A formula that comes to the wrong kind of thing.</summary>
    public static Rule WrongMeasure { get; } = new(
        "PF186", "formula-of-wrong-measure", Area.Source, Severity.Error,
        "A formula comes to something else than its key wants.",
        "A measurement is a length, yarn a length or a mass, a named number anything that can be counted or measured. Stitches per centimetre are none of these.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished: {brim: = 88 sts}
                               ^^^^^^^^
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished: {brim: = width(88 sts)}
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            ---
            """,
    };

    /// <summary>A size table that does not exist, or cannot be read.</summary>
    public static Rule TableNotFound { get; } = new(
        "PF187", "size-table-not-found", Area.Source, Severity.Error,
        "The size table that the header names is not there, or cannot be read.",
        "`from` under `sizes` names whose bodies the sizes are made for: babies, children, women or men of the published tables, or a file of your own beside the pattern, with `sizes` and a line for each measurement in the form of the header.")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              from: womens
                    ^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              from: women
            ---
            """,
    };

    /// <summary>A size that the table does not have.</summary>
    public static Rule SizeNotInTable { get; } = new(
        "PF188", "size-not-in-table", Area.Source, Severity.Error,
        "The size table has no size of that name.",
        "The sizes are found in the table by their names. Where the pattern calls them otherwise, say behind the table's name which of its sizes they are: `from: women S (M, L)`.")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes:
              names: 1 (2, 3)
              from: women
                    ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes:
              names: 1 (2, 3)
              from: women S (M, L)
            ---
            """,
    };

    /// <summary>All of them.</summary>
    public static IEnumerable<Rule> All { get; } = [NotUnderstood, NameNotFound, Circle, UnitsDiffer, NoAnswer, NotWhole, WrongMeasure, TableNotFound, SizeNotInTable];
}
