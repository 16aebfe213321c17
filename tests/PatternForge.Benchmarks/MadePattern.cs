using System.Globalization;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Benchmarks;

/// <summary>Patterns made for measuring: a tube in three sizes, ribbing, lace, increases and decreases, every row with its counts. Invented, sound, and as long as asked for.</summary>
public static class MadePattern
{
    /// <summary>The length of an ordinary pattern, in lines.</summary>
    public const int UsualLines = 120;

    private const string Header = """
        ---
        title: Measured Cowl {0}
        designer: The bench
        version: 1.0
        date: 2025-01-15
        craft: knitting
        terms: us
        level: intermediate
        level-reason: lace in the round and counting between markers
        summary: A cowl of many rounds, made to be measured.
        sizes:
          names: S (M, L)
          fits:
            neck: 36 (39, 42) cm
          finished:
            circumference: 44 (48, 52) cm
          ease: 8 to 10 cm
        gauge: 20 sts and 28 rnds = 10 cm in stockinette on 4.5 mm, blocked
        yarn:
          - name: any smooth worsted wool
            fibre: 100% wool
            weight: worsted
            put-up: 100 g = 200 m
            needs: 220 (240, 260) m
        tools: 4.5 mm circular needle, 60 cm long
        notions: one stitch marker
        contact: hello@example.com
        omit: [photos, videos, about, construction, blocking, finishing, care, styling, terms-of-use, sample]
        ---

        ## Edge

        CO 88 (96, 104) sts. Place marker and join to work in the round.

        Rnd 1: *K2, p2; rep from * around. 88 (96, 104) sts.

        Rep Rnd 1 until piece measures 4 cm.

        """;

    private const string Count = " 88 (96, 104) sts.";

    // Rounds on a multiple of eight stitches that give back what they take; an increase is taken back by the round after it.
    private static readonly string[] Rounds =
    [
        "Knit." + Count,
        "*K2, yo, k2tog, k4; rep from * around." + Count,
        "*P1, k7; rep from * to end." + Count,
        "K1, *yo, ssk, k6; rep from * to last 7 sts, yo, ssk, k5." + Count,
        "*(K1, p1) 4 times; rep from * around." + Count,
        "*K8, m1; rep from * around. 99 (108, 117) sts.\n\nNext rnd: *C4F, k3, k2tog; rep from * around." + Count,
        "[K2, yo, sl 1, k2tog, psso, yo, k3] to end." + Count,
    ];

    /// <summary>A pattern of about so many lines; the same number always gives the same text.</summary>
    public static string Of(int number, int lines = UsualLines)
    {
        var text = new StringBuilder(Header.Replace("{0}", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
        var written = Header.Count(c => c == '\n');
        for (var section = 1; written < lines - 2; section++)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## Part {section}\n");
            written += 2;
            for (var round = 1; round <= 40 && written < lines - 2; round++)
            {
                var words = Rounds[(round + number) % Rounds.Length];
                text.Append(CultureInfo.InvariantCulture, $"\nRnd {round}: {words}\n");
                written += 2 + words.Count(c => c == '\n');
            }
        }

        return text.Append("\nBO all sts.\n").ToString();
    }

    /// <summary>The same as a source, proved sound: what is measured is the usual way through and not a file of errors.</summary>
    /// <exception cref="InvalidOperationException">The pattern has an error or a line that is not checked.</exception>
    public static SourceText Source(int number, int lines = UsualLines) => Sound(new SourceText("measured.pattern.md", Of(number, lines)));

    /// <summary>The source, proved sound.</summary>
    /// <exception cref="InvalidOperationException">The pattern has an error or a line that is not checked.</exception>
    internal static SourceText Sound(SourceText source)
    {
        var compilation = Compiler.Compile(source);
        var faults = compilation.Findings.Where(f => f.Severity > Severity.Note).Select(f => $"{f.Rule.Code} line {source.Lines.PositionOf(f.Span.Start).Line}: {f.Message}").ToArray();
        return faults.Length == 0 && compilation.Coverage.Checked == compilation.Coverage.Instructions
            ? source
            : throw new InvalidOperationException($"The pattern made for measuring is not sound ({compilation.Coverage}): {string.Join("; ", faults.Take(5))}");
    }
}
