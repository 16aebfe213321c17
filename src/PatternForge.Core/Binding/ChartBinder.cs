using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>
/// Binds a chart that the source holds: its squares become the steps of rows, worked like any others. A square shows the fabric's right side, so that
/// <c>k</c> in a wrong-side row is purled.
/// </summary>
internal sealed class ChartBinder
{
    private readonly SourceText _source;
    private readonly StitchBook _book;
    private readonly FindingBag _bag;
    private readonly ChartGrid _grid;
    private readonly StitchPattern? _pattern;
    private readonly string[] _labels;
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);

    private ChartBinder(ChartGrid grid, SourceText source, StitchBook book, StitchPattern? pattern, PatternFacts facts, FindingBag bag)
    {
        (_grid, _source, _book, _pattern, _bag) = (grid, source, book, pattern, bag);
        _labels = [.. facts.Yarns.Select(y => y.Label).OfType<string>()];
    }

    /// <summary>A chart and its rows from the first to the last; null where something in it is wrong, which has been told.</summary>
    public static (Chart Chart, ImmutableArray<BoundRow> Rows)? Bind(ChartGrid grid, int section, SourceText source, StitchBook book, StitchPattern? pattern, PatternFacts facts, FindingBag bag) =>
        new ChartBinder(grid, source, book, pattern, facts, bag).Bind(section);

    private (Chart Chart, ImmutableArray<BoundRow> Rows)? Bind(int section)
    {
        // Rounds have their numbers on the right, even ones too.
        var isRound = _grid.Lines.Any(l => l is { IsLeft: false, Number: { } n } && n % 2 == 0);
        var read = new List<(ChartLine Line, int Number, FabricSide Side, ImmutableArray<ChartCell> Cells, int Columns, (int From, int To)? Repeat)>();
        for (var i = _grid.Lines.Length - 1; i >= 0; i--)
        {
            var line = _grid.Lines[i];
            var number = line.Number ?? _grid.Lines.Length - i;
            var side = isRound || (line.Number is null ? number % 2 == 1 : !line.IsLeft) ? FabricSide.Right : FabricSide.Wrong;
            if (Squares(line, side) is var (cells, columns, repeat))
            {
                read.Add((line, number, side, cells, columns, repeat));
            }
        }

        // What most rows have is taken for right; the wider where it is even.
        if (read.Count < _grid.Lines.Length || Shared([.. read.Select(r => (r.Line, r.Number, r.Cells, r.Columns, r.Repeat))]) is not var (wide, repeated))
        {
            return null;
        }

        ImmutableArray<ChartRow> rows = [.. read.Select(r => new ChartRow(r.Number, r.Side, r.Cells, SpanOf(r.Line)) { RepeatShift = r.Repeat is { } own && repeated is { } all ? own.From - all.From : 0 })];

        // A chart as wide as the multiple is the repeat itself.
        repeated ??= _pattern is { Multiple: > 0 } pattern && pattern.Multiple == rows[0].Cells.Sum(c => c.Operation?.Takes ?? 0) ? (0, wide) : null;
        var chart = new Chart
        {
            Name = _pattern?.Name ?? "",
            Section = section,
            IsRound = isRound,
            Rows = rows,
            Columns = wide,
            Repeat = repeated is var (from, to) ? new ChartRepeat(from, to - from, null) : null,
        };
        return (chart, [.. chart.Rows.Select(r => Row(r, chart))]);
    }

    /// <summary>The columns and the repeat that the rows share; null where they do not, which has been told.</summary>
    private (int Columns, (int From, int To)? Repeat)? Shared((ChartLine Line, int Number, ImmutableArray<ChartCell> Cells, int Columns, (int From, int To)? Repeat)[] rows)
    {
        var isEven = true;
        var right = rows.GroupBy(r => (r.Columns, r.Repeat)).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key.Columns).First().Key;
        foreach (var (line, number, cells, columns, repeat) in rows)
        {
            isEven &= columns == right.Columns && (repeat == right.Repeat || StepsAside(cells, repeat, right.Repeat));
            if (columns != right.Columns)
            {
                _bag.Add(ChartRules.UnevenRows, SpanOf(line), $"row {number} of the chart has {columns} squares, where other rows have {right.Columns}", "write one square for each column, `_` where there is no stitch");
            }
            else if (repeat != right.Repeat && !StepsAside(cells, repeat, right.Repeat))
            {
                _bag.Add(ChartRules.UnevenRows, SpanOf(line), $"the repeat of row {number} does not stand over that of the other rows", "put `[` and `]` between the same columns in every row; they step aside only where a stitch would reach over the edge of the repeat");
            }
        }

        return isEven ? right : null;
    }

    /// <summary>True for a repeat of the same width that stands aside because a stitch of its row reaches over an edge of the others'.</summary>
    private static bool StepsAside(ImmutableArray<ChartCell> cells, (int From, int To)? own, (int From, int To)? others) =>
        own is { } o && others is { } t && o.To - o.From == t.To - t.From && Math.Abs(o.From - t.From) < t.To - t.From
        && cells.Any(c => (c.Column < t.From && c.Column + c.Span > t.From) || (c.Column < t.To && c.Column + c.Span > t.To));

    private static TextSpan SpanOf(ChartLine line) => line.Squares[0].Cover(line.Squares[^1]);

    /// <summary>The squares of a line as cells from right to left; null where one is not known.</summary>
    private (ImmutableArray<ChartCell> Cells, int Columns, (int From, int To)? Repeat)? Squares(ChartLine line, FabricSide side)
    {
        var cells = ImmutableArray.CreateBuilder<ChartCell>();
        var column = 0;
        var isKnown = true;
        int? from = null, to = null;
        for (var i = line.Squares.Length - 1; i >= 0; i--)
        {
            from = line.RepeatTo == i + 1 ? column : from;
            var name = _source.ToString(line.Squares[i]);
            var (operation, colour) = name == ChartGrid.NoStitch ? (null, null) : Find(name, line.Squares[i]);
            isKnown &= operation is not null || name == ChartGrid.NoStitch;
            var span = Math.Max(1, operation?.Makes ?? 1);
            cells.Add(new ChartCell(operation is null ? null : StitchLook.For(operation, side), column, span) { Colour = colour });
            column += span;
            to = line.RepeatFrom == i ? column : to;
        }

        return isKnown ? (cells.ToImmutable(), column, from is { } f && to is { } t ? (f, t) : null) : null;
    }

    /// <summary>The stitch of a square and its yarn: "k2tog", "k CC", or the letters of a yarn alone for a knit stitch in it.</summary>
    private (Operation? Operation, string? Colour) Find(string name, TextSpan span)
    {
        foreach (var (word, meaning) in _grid.Key)
        {
            if (string.Equals(word, name, StringComparison.Ordinal))
            {
                (name, span) = (_source.ToString(meaning), meaning);
                break;
            }
        }

        if (_labels.Contains(name, StringComparer.Ordinal))
        {
            return (_book.Find("k"), name);
        }

        var last = name.LastIndexOf(' ');
        var colour = last > 0 && _labels.Contains(name[(last + 1)..], StringComparer.Ordinal) ? name[(last + 1)..] : null;
        var stitch = colour is null ? name : name[..last].EndsWith(" in", StringComparison.Ordinal) ? name[..(last - 3)] : name[..last];
        return (_book.Find(stitch) ?? KnitSlips.Find(stitch)) is { } operation and not { Takes: 0, Makes: 0 } ? (operation, colour) : (Unknown(stitch, span), colour);
    }

    private Operation? Unknown(string name, TextSpan span)
    {
        if (!_told.Add(name))
        {
            return null; // each name once, however many squares it stands in
        }

        var near = Suggest.Nearest(name, _book.Names, 1);
        _bag.Add(ChartRules.UnknownSquare, span, $"nobody knows a stitch called `{name}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"give it a meaning in the chart's key: `key: {name} = k2tog`");
        return null;
    }

    private static BoundRow Row(ChartRow row, Chart chart)
    {
        var yarns = row.Cells.Where(c => c.Operation is not null).Select(c => c.Colour).Distinct(StringComparer.Ordinal).ToArray();
        return new BoundRow
        {
            Origin = row.Origin,
            Numbers = [row.Number],
            Side = chart.IsRound ? null : row.Side,
            IsLabelled = true,
            IsRound = chart.IsRound ? true : null,
            Yarns = yarns.Length <= 1 ? new RowYarns(yarns.FirstOrDefault(), [], null, true) : new RowYarns(null, [.. yarns.OfType<string>()], row.InWorkingOrder()[^1].Colour, true),
            Steps = Steps(row, chart.Repeat),
        };
    }

    private static ImmutableArray<Step> Steps(ChartRow row, ChartRepeat? repeat)
    {
        var (cells, origin) = (row.InWorkingOrder(), row.Origin);
        if (ChartRow.IsPlain(cells))
        {
            return [new RunStep(origin, cells[0].Operation!, new Target(Extent.End)) { Colour = cells[0].Colour }];
        }

        ImmutableArray<Step> Each(ChartCell[] of) => [.. of.Select(c => (Step)new OperationStep(origin, c.Operation!, null) { Colour = c.Colour })];
        if (repeat?.Part(row) is not var (first, body, last) || body.Length == 0)
        {
            return Each(cells);
        }

        var rest = last.Sum(c => c.Operation!.Takes);
        var to = rest == 0 ? new Target(Extent.End) : new Target(Extent.LastStitches, new Amount(PerSize.Shared<int?>(rest), origin));
        return [.. Each(first), new RepeatStep(origin, Each(body)) { To = to }, .. Each(last)];
    }
}
