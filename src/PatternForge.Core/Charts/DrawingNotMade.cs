using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Finds blocks that ask for a chart or for stripes and get none, and says why.</summary>
public sealed class DrawingNotMade
{
    /// <summary>PF242.</summary>
    public static Rule Rule { get; } = new(
        "PF242", "drawing-not-made", Area.Notation, Severity.Warning,
        "A block asks for a chart or for stripes that cannot be drawn.",
        "A drawing follows from the rows. It is left out where they are not there, where a row does what squares or symbols cannot show, or where it is not known how many stitches or which yarn a row has. The page then has nothing at this place.")
    {
        Bad = """
            ## Ladder (multiple of 2)

            Row 1 (RS): *K2tog, yo; rep from * to end.

            Row 2: Purl.

            ```chart
            ^^^^^^^^
            rows: 3-6
            ```
            """,
        Good = """
            ## Ladder (multiple of 2)

            Row 1 (RS): *K2tog, yo; rep from * to end.

            Row 2: Purl.

            ```chart
            rows: 1-2
            ```
            """,
    };

    private readonly Pattern _pattern;
    private readonly ImmutableArray<BoundLine> _lines;
    private readonly ImmutableArray<WorkedLine> _worked;
    private readonly CompileOptions _options;
    private readonly FindingBag _bag;

    private DrawingNotMade(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, CompileOptions options, FindingBag bag) =>
        (_pattern, _lines, _worked, _options, _bag) = (pattern, lines, worked, options, bag);

    /// <summary>Reports each block that asks in vain. What spoils the rows themselves has been told at the rows.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="worked">The same lines, worked.</param>
    /// <param name="charts">Draws up its charts.</param>
    /// <param name="diagrams">Draws up its diagrams.</param>
    /// <param name="stripes">Finds its stripes.</param>
    /// <param name="options">Limits.</param>
    /// <param name="bag">What was found, and where to report.</param>
    internal static void Report(
        Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, Lazy<ImmutableArray<Chart>> charts, Lazy<ImmutableArray<CrochetDiagram>> diagrams, Lazy<ImmutableArray<StripeSequence>> stripes, CompileOptions options, FindingBag bag)
    {
        var reasons = new DrawingNotMade(pattern, lines, worked, options, bag);
        foreach (var (section, number) in pattern.Sections.Select((s, i) => (s, i + 1)))
        {
            foreach (var block in section.Blocks.OfType<FencedBlock>())
            {
                if (block.Info is not (FencedBlock.Chart or FencedBlock.Stripes) || ChartRequest.Read(block.Text) is not { } request)
                {
                    continue;
                }

                var isMade = block.Info == FencedBlock.Stripes ? stripes.Value.Any(s => s.Block == block.Origin)
                    : pattern.Facts.Craft == Craft.Knitting ? charts.Value.Any(c => c.Block == block.Origin) : diagrams.Value.Any(d => d.Block == block.Origin);
                if (!isMade && reasons.Of(block.Info, request, number) is { } reason)
                {
                    var end = bag.Source.Text.IndexOf('\n', block.Origin.Start);
                    bag.Add(Rule, new TextSpan(block.Origin.Start, end < 0 ? block.Origin.Length : Math.Min(block.Origin.Length, end - block.Origin.Start)), reason.Why, reason.Help);
                }
            }
        }
    }

    /// <summary>Why a block gets no drawing, and what can be done; null where that has been told already.</summary>
    private (string Why, string? Help)? Of(string what, ChartRequest request, int here)
    {
        var number = SectionOf(request, here);
        if (number == 0)
        {
            var headings = _pattern.Sections.Where(s => s.HasInstructions && s.Heading.Length > 0).Select(s => s.Heading).ToArray();
            return ($"there is no section `{request.Of}` to draw", Suggest.Nearest(request.Of!, headings, 1) is [var near, ..] ? $"did you mean `{near}`?" : null);
        }

        BoundLine[] lines = [.. _lines.Where(l => l.Section == number)];
        var heading = _pattern.Sections[number - 1].Heading is { Length: > 0 } said ? $"`{said}`" : "this section";
        if (lines.Length == 0)
        {
            return ($"{heading} has no rows to draw", request.Of is null ? "say whose rows are meant: `of: Body`" : null);
        }

        if (lines.Any(l => l.Rows.Any(r => r.HasUnread)) || HasErrors(lines))
        {
            return null;
        }

        return what == FencedBlock.Stripes ? Stripes(heading, request)
            : _pattern.Facts.Craft switch
            {
                Craft.Knitting => Knitting(request, lines, heading),
                Craft.Crochet or Craft.Tunisian => ($"{heading} cannot be drawn: a row of it goes where a diagram cannot show it, or its rows do not build on each other", "ask for the rows that can be drawn: `rows: 1-4`"),
                _ => ($"{heading} cannot be drawn: there are no charts of this craft", null),
            };
    }

    private (string Why, string? Help)? Stripes(string heading, ChartRequest request) =>
        request.First is not null ? ("stripes are drawn of whole sections", "leave out the line `rows`")
        : YarnMention.Labels(_pattern.Facts).IsEmpty ? ("there are no two yarns with letters whose stripes could be drawn", "give each yarn of the header a `label`: A, B, MC")
        : ($"{heading} cannot be drawn in stripes: its rows are not worked in at least two yarns that are known for each of them", "name the yarn where it changes: `Row 5: With B, knit.`");

    private (string Why, string? Help)? Knitting(ChartRequest request, BoundLine[] lines, string heading)
    {
        var rows = new NumberedRows();
        foreach (var line in lines)
        {
            rows.Add(line);
        }

        if (rows.IsEmpty)
        {
            return ($"{heading} has no rows with numbers to draw", null);
        }

        var (first, last) = (request.First ?? rows.First, request.Last ?? rows.Last);
        for (var number = first; number <= last && number < first + ChartMaker.MostRows; number++)
        {
            if (rows.Row(number) is null)
            {
                return (string.Create(CultureInfo.InvariantCulture, $"there is no row {number} in {heading} to draw"), string.Create(CultureInfo.InvariantCulture, $"its rows are {rows.First} to {rows.Last}"));
            }
        }

        if (last - first >= ChartMaker.MostRows)
        {
            return (string.Create(CultureInfo.InvariantCulture, $"{heading} has more than {ChartMaker.MostRows} rows, too many for one chart"), "ask for some of them: `rows: 1-40`");
        }

        var index = lines.First(l => l.Rows.Any(r => r.Numbers.Contains(first)) || l == lines[^1]).Index;
        if ((lines[0].Pattern is { } pattern ? pattern.Least : _worked[index].Before.FirstOrDefault(b => b is not null)) is not { } stitches)
        {
            return (string.Create(CultureInfo.InvariantCulture, $"{heading} cannot be drawn: it is not known how many stitches there are before row {first}"), "say so before it: `CO 40 sts.`");
        }

        var fabrics = new FabricWorker(_options, PatternBook.Of(_lines));
        for (var number = first; number <= last; number++)
        {
            if (fabrics.Work(rows, first, number, stitches, 0, isRound: false) is null)
            {
                return (string.Create(CultureInfo.InvariantCulture, $"{heading} cannot be drawn: row {number} is not a matter of stitches side by side"), "ask for the rows that can be drawn: `rows: 1-4`");
            }
        }

        return ($"{heading} has too many columns for a chart", null);
    }

    private int SectionOf(ChartRequest request, int here) => request.Of is not { } name ? here
        : _pattern.Sections.Select((s, i) => (s.Heading, Number: i + 1)).FirstOrDefault(s => string.Equals(s.Heading, name, StringComparison.OrdinalIgnoreCase)).Number is > 0 and var named ? named
        : _lines.FirstOrDefault(l => string.Equals(l.Pattern?.Name, name, StringComparison.OrdinalIgnoreCase))?.Section ?? 0;

    private bool HasErrors(BoundLine[] lines)
    {
        var (from, to) = (lines[0].Origin.Start, lines[^1].Origin.End);
        return _bag.ToSorted().Any(f => f.Severity == Severity.Error && f.Span.Start >= from && f.Span.Start <= to);
    }
}
