using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Holds the rows of the pieces against the finished lengths.</summary>
internal sealed class LengthDiffers : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF619", "length-differs", Area.Gauge, Severity.Warning,
        "The rows of a piece do not make the finished length at the gauge.",
        "Rows divided by the row gauge are the length. It is looked at where the pattern states every row by number, and `measured` says which piece has the length (`length: rows of Body`), or the pattern is one even piece such as a scarf. Pieces worked to a length in words are left alone. Five in a hundred are allowed, and a centimetre always.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes: one size
            finished: {width: 20 cm, length: 100 cm}
                                             ^^^^^^
            gauge: 20 sts and 40 rows = 10 cm in garter stitch on 4 mm, blocked
            ---

            ## Scarf

            CO 40 sts.

            Rows 1-4: Knit.

            Rep Rows 1-4 49 more times.

            BO all sts.
            """,
        Good = """
            ---
            title: Harbour scarf
            sizes: one size
            finished: {width: 20 cm, length: 50 cm}
            gauge: 20 sts and 40 rows = 10 cm in garter stitch on 4 mm, blocked
            ---

            ## Scarf

            CO 40 sts.

            Rows 1-4: Knit.

            Rep Rows 1-4 49 more times.

            BO all sts.
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context) => PieceDiffers.Check(context, Rule, byRows: true);
}
