using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>What the worked rows of a piece measure by the gauge, in one size.</summary>
/// <param name="LeastCm">The least that it can be, in centimetres: with the most stitches taken off for seams.</param>
/// <param name="MostCm">The most that it can be.</param>
/// <param name="Count">The stitches or rows that were reckoned with.</param>
/// <param name="Line">The line that they stand on.</param>
internal sealed record Reckoned(decimal LeastCm, decimal MostCm, int Count, WorkedLine Line);

/// <summary>Reckons widths and lengths of pieces from their worked lines.</summary>
internal static class PieceWidth
{
    // Where nothing is said of seams, an edge may lose a stitch or none (common practice).
    private const decimal UsualSeam = 1;

    /// <summary>The lines under a heading, which may have more in brackets: "Front flipper (make 2)".</summary>
    public static ImmutableArray<WorkedLine> LinesOf(CheckContext context, string piece) =>
        [.. context.Lines.Where(l => string.Equals(Plain(l.Piece), Plain(piece), StringComparison.OrdinalIgnoreCase))];

    /// <summary>The headings that have rows under them, each once.</summary>
    public static IEnumerable<string> Pieces(CheckContext context) => context.Lines.Select(l => l.Piece).Where(p => p.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase);

    /// <summary>A heading without what stands in brackets.</summary>
    public static string Plain(string heading) => heading.IndexOf('(', StringComparison.Ordinal) is > 0 and var open ? heading[..open].Trim() : heading.Trim();

    /// <summary>The line with the most stitches in a size; null where a line between leaves the count open.</summary>
    public static (int Count, WorkedLine Line)? Widest(IEnumerable<WorkedLine> lines, int size)
    {
        (int, WorkedLine)? widest = null;
        foreach (var line in lines)
        {
            if (line.Status == LineStatus.Unread || !line.Kinds.IsEmpty)
            {
                return null;
            }

            if (line.After[size] is { } count && (widest is not { } before || count > before.Item1))
            {
                widest = (count, line);
            }
        }

        return widest;
    }

    /// <summary>What so many stitches measure across, seams off; null where the gauge does not say.</summary>
    public static Reckoned? Across(PatternFacts facts, Gauge gauge, int stitches, WorkedLine line)
    {
        var (least, most) = line.InTheRound == true ? (0m, 0m) : facts.Seam is { } seam ? (2 * seam, 2 * seam) : (0m, 2 * UsualSeam);
        return gauge.Across(Math.Max(0, stitches - most)) is { } from && gauge.Across(Math.Max(0, stitches - least)) is { } to ? new Reckoned(from, to, stitches, line) : null;
    }

    /// <summary>How long the rows of some lines are together; null where a line leaves its rows open, or the gauge does not say.</summary>
    public static Reckoned? Along(Gauge gauge, ImmutableArray<WorkedLine> lines, int size)
    {
        if (lines.IsEmpty)
        {
            return null;
        }

        var rows = 0;
        foreach (var line in lines)
        {
            if (line.Status != LineStatus.Checked || line.Rows.IsEmpty || line.Rows[size] is not { } some)
            {
                return null;
            }

            rows += some;
        }

        // A row more or less at the cast-on or at the end is no matter.
        return gauge.Along(Math.Max(0, rows - 2)) is { } from && gauge.Along(rows + 1) is { } to ? new Reckoned(from, to, rows, lines[^1]) : null;
    }

    /// <summary>
    /// The gauge that holds for some lines: the only one, else the one whose name or stitch their section speaks of; null where that is not sure.
    /// </summary>
    public static Gauge? GaugeOf(CheckContext context, string? named, string heading)
    {
        var gauges = context.Facts.Gauges;
        if (named is not null)
        {
            return Called(gauges, named);
        }

        if (gauges.Length == 1)
        {
            return gauges[0];
        }

        var text = heading + " " + string.Join(' ', context.Pattern.Sections.Where(s => string.Equals(s.Heading, heading, StringComparison.Ordinal)).SelectMany(s => s.Blocks).OfType<ProseBlock>().Select(b => b.Markdown))
            + " " + string.Join(' ', context.Lines.Where(l => l.Piece == heading).Select(l => l.Text));
        Gauge[] spoken = [.. gauges.Where(g => Speaks(text, g.Name) || Speaks(text, g.Stitch))];
        return spoken.Length == 1 ? spoken[0] : null;
    }

    /// <summary>The gauge of a name, or measured in a stitch of that name; null where there is none.</summary>
    public static Gauge? Called(ImmutableArray<Gauge> gauges, string name) =>
        gauges.FirstOrDefault(g => string.Equals(g.Name, name, StringComparison.OrdinalIgnoreCase)) ?? gauges.FirstOrDefault(g => string.Equals(g.Stitch, name, StringComparison.OrdinalIgnoreCase));

    private static bool Speaks(string text, string? words) => words is { Length: > 2 } && text.Contains(words, StringComparison.OrdinalIgnoreCase);
}
