using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Drafts;

/// <summary>
/// What is told of the repairs of a draft. Told is where something was guessed, because then the designer must look; mere typography (curly quotes,
/// blanks of every width, soft hyphens, other asterisks, fractions, ligatures) is read in silence, as any editor reads it.
/// </summary>
public static class DraftRules
{
    /// <summary>PF150.</summary>
    public static Rule MisreadSigns { get; } = new(
        "PF150", "signs-misread", Area.Source, Severity.Note,
        "Signs of the file were once read in the wrong encoding, and are read as what they were.",
        "A dash, a quote or a fraction that has become two or three odd signs was saved as UTF-8 and opened as something else. Which sign it was can be told from what is left, so it is read so and printed so. It is told because the source still holds the odd signs, and because what an odd sign meant should be seen once by the person who wrote it.")
    {
        Bad = """
            Row 1: K12 â€“ 12 sts.
                       ^^^
            """,
        Good = "Row 1: K12 – 12 sts.",
    };

    /// <summary>PF151.</summary>
    public static Rule RowsInTable { get; } = new(
        "PF151", "rows-in-table", Area.Source, Severity.Note,
        "Rows that stand in a table are read as rows.",
        "A table whose lines begin with the number of a row and go on with words to work is read as rows: the last column as the stitch count, if it holds one. Which column is what was guessed from the head and from what stands in it, so look whether each row prints as it should. Tables of other things are left alone.")
    {
        Bad = """
            | Row | Work | Sts |
            |---|---|---|
            | 1 | Knit | 12 |
              ^^^^^^^^^^^^^
            | 2 | K2tog, k to end | 11 |
            """,
        Good = """
            Row 1: Knit. (12 sts)

            Row 2: K2tog, k to end. (11 sts)
            """,
    };

    /// <summary>PF152.</summary>
    public static Rule RowsSetOff { get; } = new(
        "PF152", "rows-set-off", Area.Source, Severity.Note,
        "Rows that stand in a quotation or a fenced block are read as rows.",
        "A line behind `>` is a quotation and a block between three backticks is printed as it stands; neither is worked. Where what stands there is rows, they are read as rows. It is told because it is a guess: an example of a row in a note would be worked too. Give a block a name (three backticks and `chart`, say) to have it printed and not worked.")
    {
        Bad = """
            > Row 1: Knit.
            ^^^^^^^^^^^^^^
            > Row 2: K2tog, k to end. (11 sts)
            """,
        Good = """
            Row 1: Knit.

            Row 2: K2tog, k to end. (11 sts)
            """,
    };

    /// <summary>PF153.</summary>
    public static Rule NumbersGuessed { get; } = new(
        "PF153", "row-numbers-guessed", Area.Source, Severity.Note,
        "Row numbers that automatic numbering lost or doubled are guessed.",
        "Automatic numbering does not travel well: every item becomes 1, the full stop goes, the number is lost altogether, or it stands before a number that the row already has. The numbers are guessed from the order of the rows. It is told because \"rep Row 3\" then speaks of a number that was guessed.")
    {
        Bad = """
            1. Knit.
            1. K2tog, k to end. (11 sts)
            ^
            """,
        Good = """
            1. Knit.
            2. K2tog, k to end. (11 sts)
            """,
    };

    /// <summary>PF154.</summary>
    public static Rule StarGuessed { get; } = new(
        "PF154", "star-guessed", Area.Source, Severity.Note,
        "The star of a repeat has become another sign, or was lost, and is guessed.",
        "Word processors and web pages turn the star of a repeat into a bullet, a dash or the beginning of italics. Where \"rep from\" names such a sign, or names none although one star stands before it, the star is read. It is told because where a repeat begins decides the count. An asterisk of another make (∗, ＊, ⁎) is no guess and not told.")
    {
        Bad = """
            Row 1: • K2, p2; rep from • to end.
                   ^
            """,
        Good = "Row 1: *K2, p2; rep from * to end.",
    };

    /// <summary>PF155.</summary>
    public static Rule WebTags { get; } = new(
        "PF155", "tags-left-out", Area.Source, Severity.Note,
        "Tags of a web page that stand in a row are left out.",
        "A text copied from a web page may hold its tags: `<b>`, `<br>`, `<em>`. In a row they are left out; `<br>` ends the row, and the italics around a repeat are taken for the stars that they were made of. It is told because what a tag stood for is a guess.")
    {
        Bad = """
            Row 1: <b>K12</b>.
                   ^^^
            """,
        Good = "Row 1: K12.",
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } = [MisreadSigns, RowsInTable, RowsSetOff, NumbersGuessed, StarGuessed, WebTags];

    /// <summary>The message, the help line, and the title of the repair of one kind.</summary>
    /// <param name="rule">The kind.</param>
    /// <param name="count">How many places of the file.</param>
    /// <param name="first">What stands at the first one.</param>
    internal static (string Message, string Help, string Title) Words(Rule rule, int count, string first)
    {
        return rule.Code switch
        {
            "PF150" => (count == 1 ? $"`{first}` is what is left of a sign that was once read in the wrong encoding; it is read as that sign" : $"{count} signs, the first one here, were once read in the wrong encoding; they are read as what they were",
                "type the sign anew, and save the file as UTF-8", "Put back the signs"),
            "PF151" => (count == 1 ? "a line of this table is read as a row" : $"{count} lines of tables, the first one here, are read as rows",
                "write each as a line of its own: `Row 1: ... (24 sts)`", "Write the lines of the tables as rows"),
            "PF152" => (count == 1 ? "this quotation or block holds rows; they are read as rows" : $"{count} quotations or blocks, the first one here, hold rows; they are read as rows",
                "take out the `>` or the lines of backticks; give a block a name to have it printed as it stands", "Take the rows out of quotations and blocks"),
            "PF153" => (count == 1 ? "the number of this row was guessed from the order of the rows" : $"the numbers of {count} rows, the first one here, were guessed from the order of the rows",
                "type the numbers: `Row 1:`, `Row 2:`", "Write the row numbers out"),
            "PF154" => (count == 1 ? "a star was guessed here for a repeat" : $"{count} stars of repeats, the first one here, were guessed",
                "write `*` where the repeat begins, and \"rep from *\"", "Write the stars"),
            _ => (count == 1 ? $"`{first}` is a tag of a web page and was left out" : $"{count} tags of a web page, the first one here, were left out",
                "take the tags out, and look for stars that italics have swallowed", "Take the tags out"),
        };
    }
}
