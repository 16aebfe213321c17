using System.Globalization;
using System.Text;
using PatternForge.Core.Text;

namespace PatternForge.Benchmarks;

/// <summary>A garment made for measuring: rows to and fro in nine sizes, one line a row, nearly every row with its counts in all sizes. Invented, sound, and of as many rows as asked for.</summary>
public static class MadeGarment
{
    /// <summary>The most that a designer puts into one file, with all sizes of a graded garment.</summary>
    public const int ManyRows = 2_000;

    private const string Header = """
        ---
        title: Measured Pullover
        designer: The bench
        version: 1.0
        date: 2025-01-15
        craft: knitting
        terms: us
        level: intermediate
        level-reason: lace, crossings and shaping in the same rows
        summary: A pullover of many rows, made to be measured.
        sizes:
          names: 1 (2, 3, 4, 5, 6, 7, 8, 9)
          fits:
            chest: 76 (84, 92, 100, 108, 116, 124, 132, 140) cm
          finished:
            chest: 84 (92, 100, 108, 116, 124, 132, 140, 148) cm
          ease: 8 cm
        gauge: 20 sts and 28 rows = 10 cm in stockinette on 4.5 mm, blocked
        yarn:
          - name: any smooth worsted wool
            fibre: 100% wool
            weight: worsted
            put-up: 100 g = 200 m
            needs: 900 (980, 1060, 1150, 1240, 1330, 1420, 1510, 1600) m
        tools: [4.5 mm circular needle, cable needle]
        contact: hello@example.com
        omit: [photos, videos, about, construction, blocking, finishing, care, styling, terms-of-use, sample]
        ---

        ## Back

        CO 98 (106, 114, 122, 130, 138, 146, 154, 162) sts.

        """;

    private const string Count = " 98 (106, 114, 122, 130, 138, 146, 154, 162) sts.";

    // Rows on a multiple of eight stitches and two that give back what they take; a decrease is taken back by the row after it.
    private static readonly string[] Rows =
    [
        "K1, ssk, k to last 3 sts, k2tog, k1. 96 (104, 112, 120, 128, 136, 144, 152, 160) sts.",
        "P1, m1, p to last st, m1, p1." + Count,
        "K1, *yo, k2tog, k6; rep from * to last st, k1." + Count,
        "K4 (5, 6, 7, 8, 9, 10, 11, 12), p to last 4 (5, 6, 7, 8, 9, 10, 11, 12) sts, k to end.",
        "K5 (6, 7, 8, 9, 10, 11, 12, 13), [yo, ssk] 3 (4, 4, 5, 5, 6, 6, 7, 7) times, k to end." + Count,
        "P1, *(p1, k1) twice, p4; rep from * to last st, p1.",
        "K1, *C4F, k2, p2; rep from * to last st, k1." + Count,
        "Purl.",
        "*K1, p1; rep from * to end." + Count,
        "K3, *p2, k2; rep from * to last 3 sts, p3.",
    ];

    /// <summary>A garment of so many rows, forty to a section; the same number always gives the same text.</summary>
    public static string Of(int rows)
    {
        var text = new StringBuilder(Header);
        for (var row = 0; row < rows; row++)
        {
            if (row > 0 && row % 40 == 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"\n## Part {(row / 40) + 1}\n");
            }

            text.Append(CultureInfo.InvariantCulture, $"\nRow {(row % 40) + 1}: {Rows[row % Rows.Length]}\n");
        }

        return text.Append("\nBO all sts.\n").ToString();
    }

    /// <summary>The same as a source, proved sound.</summary>
    /// <exception cref="InvalidOperationException">The pattern has an error or a line that is not checked.</exception>
    public static SourceText Source(int rows) => MadePattern.Sound(new SourceText("garment.pattern.md", Of(rows)));
}
