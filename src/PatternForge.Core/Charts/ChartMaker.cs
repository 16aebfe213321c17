using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Makes the knitting charts of a pattern from the stitches of its rows: of every stitch pattern, and where a block <c>chart</c> asks for one.</summary>
public sealed class ChartMaker
{
    /// <summary>The most rows that a chart has.</summary>
    public const int MostRows = 200;

    // Enough repeats to tell them from the edges, and one more to see how wide one of them is.
    private const int Repeats = 5;

    // Of a pattern whose repeats reach into one another so many are shown.
    private const int FewRepeats = 2;

    private readonly Pattern _pattern;
    private readonly ImmutableArray<WorkedLine> _worked;
    private readonly FabricWorker _fabrics;
    private readonly Dictionary<int, (NumberedRows Rows, List<BoundLine> Lines)> _sections = [];

    private readonly ImmutableArray<ChartSource> _sources;

    private ChartMaker(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<ChartSource> sources, ImmutableArray<WorkedLine> worked, CompileOptions options)
    {
        _sources = sources;
        _pattern = pattern;
        _worked = worked;
        _fabrics = new FabricWorker(options, PatternBook.Of(lines));
        foreach (var line in lines)
        {
            if (!_sections.TryGetValue(line.Section, out var section))
            {
                _sections[line.Section] = section = (new NumberedRows(), []);
            }

            section.Rows.Add(line);
            section.Lines.Add(line);
        }
    }

    /// <summary>Reports what the stitches of rows and charts show, and answers with what draws the charts, in the order of the source, when they are first wanted.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="sources">Charts that the source holds, which are compared with the words of the same rows.</param>
    /// <param name="worked">The same lines, worked.</param>
    /// <param name="options">Limits.</param>
    /// <param name="bag">Where differences and long strands are reported.</param>
    public static Lazy<ImmutableArray<Chart>> Of(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<ChartSource> sources, ImmutableArray<WorkedLine> worked, CompileOptions options, FindingBag bag)
    {
        var areDrawn = lines.Any(l => l.Pattern is not null) || pattern.Sections.Any(s => s.Blocks.Any(IsRequest));
        var haveColours = pattern.Facts.Yarns.Count(y => y.Label is not null) > 1;
        if (pattern.Facts.Craft != Craft.Knitting || !(areDrawn || haveColours))
        {
            return new([]);
        }

        var maker = new ChartMaker(pattern, lines, sources, worked, options);
        if (haveColours)
        {
            FloatCheck.Report(lines, worked, maker._fabrics, pattern.Facts.Sizes, options.Tolerances.LongestFloat, bag);
        }

        foreach (var source in sources)
        {
            maker.Compare(source, bag);
        }

        return areDrawn ? new(maker.All) : new([]);
    }

    private static bool IsRequest(Block block) => block is FencedBlock { Info: FencedBlock.Chart };

    private ImmutableArray<Chart> All()
    {
        var charts = ImmutableArray.CreateBuilder<Chart>();
        var drawn = new HashSet<int>();
        foreach (var (section, number) in _pattern.Sections.Select((s, i) => (s, i + 1)))
        {
            foreach (var block in section.Blocks.Where(IsRequest).Cast<FencedBlock>())
            {
                if (RequestOf(block) is { } request && Asked(request, number) is { IsEmpty: false } asked)
                {
                    charts.AddRange(asked.Select(c => c with { Section = number, Block = block.Origin }));
                    drawn.Add(SectionOf(request, number));
                }
            }
        }

        foreach (var (number, (rows, lines)) in _sections)
        {
            if (lines[0].Pattern is { } pattern && !drawn.Contains(number) && !_pattern.Facts.Omit.Contains("charts", StringComparer.OrdinalIgnoreCase) && OfPattern(pattern, rows, rows.IsEmpty ? 0 : rows.First, rows.IsEmpty ? 0 : rows.Last) is { } chart)
            {
                charts.Add(chart);
            }
        }

        return [.. charts.OrderBy(c => c.Section)];
    }

    /// <summary>What a block asks for; a chart that is a source itself asks for its own rows.</summary>
    private ChartRequest? RequestOf(FencedBlock block) =>
        _sources.FirstOrDefault(s => s.Block == block.Origin) is { } source ? new ChartRequest(null, source.Rows[0].Numbers[0], source.Rows[^1].Numbers[0]) : ChartRequest.Read(block.Text);

    /// <summary>Works a chart and the words of its rows over the same stitches, and compares them.</summary>
    private void Compare(ChartSource source, FindingBag bag)
    {
        if (source.StandsAlone || !_sections.TryGetValue(source.Section, out var section))
        {
            return;
        }

        var drawn = new NumberedRows();
        foreach (var row in source.Rows)
        {
            drawn.Add(row);
        }

        foreach (var row in source.Rows)
        {
            var number = row.Numbers[0];
            var line = section.Lines.FirstOrDefault(l => l.Rows.Any(r => r.Numbers.Contains(number)));
            var isRound = row.IsRound == true;
            if (line is null || (line.Pattern is { } pattern ? [pattern.Least] : _worked[line.Index].Before.OfType<int>().ToArray()) is not [var stitches, ..])
            {
                continue;
            }

            var chart = _fabrics.Work(drawn, number, number, stitches, 0, isRound);
            if (chart is not null && _fabrics.Work(section.Rows, number, number, stitches, 0, isRound) is { } words)
            {
                ChartComparison.Report(source, chart, words, bag);
            }
            else if (chart is null && line.Pattern is null && _worked[line.Index].Status == LineStatus.Checked)
            {
                ChartComparison.DoesNotFit(row, stitches, bag);
            }
        }
    }

    private int SectionOf(ChartRequest request, int here)
    {
        if (request.Of is not { } name)
        {
            return here;
        }

        var pattern = _sections.Values.Select(s => s.Lines[0].Pattern).FirstOrDefault(p => p is not null && string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase));
        return pattern?.Section ?? _pattern.Sections.Select((s, i) => (s.Heading, Number: i + 1)).FirstOrDefault(s => string.Equals(s.Heading, name, StringComparison.OrdinalIgnoreCase)).Number;
    }

    private ImmutableArray<Chart> Asked(ChartRequest request, int here)
    {
        if (!_sections.TryGetValue(SectionOf(request, here), out var section) || section.Rows.IsEmpty)
        {
            return [];
        }

        var (first, last) = (request.First ?? section.Rows.First, request.Last ?? section.Rows.Last);
        return section.Lines[0].Pattern is { } pattern
            ? OfPattern(pattern, section.Rows, first, last) is { } chart ? [chart] : []
            : OfRows(section.Rows, section.Lines, first, last);
    }

    /// <summary>A stitch pattern: its edges and one repeat.</summary>
    private Chart? OfPattern(StitchPattern pattern, NumberedRows rows, int first, int last)
    {
        if (last - first >= MostRows || Drawn(Repeats) is not { } drawn)
        {
            return null;
        }

        int? period = pattern.Multiple > 0 && Drawn(Repeats + 1) is { } more ? more.Columns - drawn.Columns : null;
        var folded = period is { } columns ? ChartRepeats.Fold(drawn.Rows, drawn.Columns, drawn.Fabric, columns) : (drawn.Rows, drawn.Columns, null);
        if (folded.Repeat is null && pattern.Multiple > 0)
        {
            folded = Drawn(FewRepeats) is { } few ? (few.Rows, few.Columns, null) : folded; // no line runs between its stitches from row to row
        }

        return new Chart
        {
            Name = pattern.Name,
            Section = pattern.Section,
            IsRound = drawn.Fabric.IsRound,
            Rows = folded.Rows,
            Columns = folded.Columns,
            Repeat = folded.Repeat is { } repeat ? new ChartRepeat(repeat.From, repeat.Columns, null) : null,
        };

        (ImmutableArray<ChartRow> Rows, int Columns, Fabric Fabric)? Drawn(int times) =>
            _fabrics.Work(rows, first, last, (pattern.Multiple * times) + pattern.Plus, 0, isRound: false) is { } fabric && ChartLayout.Of(fabric, isShaped: pattern.Multiple == 0) is { } laid ? (laid.Rows, laid.Columns, fabric) : null;
    }

    /// <summary>Rows of a piece over the stitches that it has there; sizes whose charts are the same but for how often the repeat is worked share one.</summary>
    private ImmutableArray<Chart> OfRows(NumberedRows rows, List<BoundLine> lines, int first, int last)
    {
        var index = lines.FirstOrDefault(l => l.Rows.Any(r => r.Numbers.Contains(first)))?.Index;
        if (index is null || last - first >= MostRows)
        {
            return [];
        }

        var line = _worked[index.Value];
        var isRound = lines[0].Rows.Concat(lines.SelectMany(l => l.Rows)).Any(r => r.IsRound == true);
        var charts = new List<(Chart Chart, int Size, int? Times)>();
        for (var size = 0; size < line.Before.Length; size++)
        {
            if (line.Before[size] is not { } stitches || _fabrics.Work(rows, first, last, stitches, size, isRound) is not { } fabric || ChartLayout.Of(fabric, isShaped: fabric.Rows.All(r => r.RepeatAt is null)) is not { } laid)
            {
                continue;
            }

            var repeats = fabric.Rows.Any(r => r.RepeatAt is not null);
            var folded = repeats ? ChartRepeats.Fold(laid.Rows, laid.Columns, fabric, null) : (laid.Rows, laid.Columns, null);
            charts.Add((new Chart
            {
                Name = "",
                Section = line.Index,
                IsRound = fabric.IsRound,
                Rows = folded.Rows,
                Columns = folded.Columns,
                Repeat = folded.Repeat is { } repeat ? new ChartRepeat(repeat.From, repeat.Columns, null) : null,
            }, size, folded.Repeat?.Times));
        }

        var names = $"{_pattern.Sections[lines[0].Section - 1].Heading}, {(isRound ? "rounds" : "rows")} {first} to {last}";
        var groups = charts.GroupBy(c => SameKey(c.Chart), StringComparer.Ordinal).ToArray();
        return [.. groups.Select(group =>
        {
            var sizes = group.Select(g => g.Size).ToImmutableArray();
            var chart = group.First().Chart;
            var times = new int?[line.Before.Length];
            foreach (var (_, size, count) in group)
            {
                times[size] = count;
            }

            return chart with
            {
                Name = names,
                Sizes = groups.Length == 1 ? [] : sizes,
                Repeat = chart.Repeat is { } repeat ? repeat with { Times = PerSize.Each(times.ToImmutableArray()) } : null,
            };
        })];
    }

    /// <summary>Two charts with the same words are the same drawing.</summary>
    private static string SameKey(Chart chart) =>
        $"{chart.Columns} {chart.Repeat?.From} {chart.Repeat?.Columns} " + string.Join('/', chart.Rows.Select(r => string.Join(' ', r.Cells.Select(c => $"{c.Operation?.Id}{c.Column}{c.Colour}"))));
}
