using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Shapes;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Yarns;

/// <summary>The stitches of one size by yarn.</summary>
/// <param name="Stitches">Stitches worked with each yarn.</param>
/// <param name="Weighted">The same by the yarn that each stitch takes.</param>
internal sealed record SizeYarn(decimal[] Stitches, decimal[] Weighted)
{
    /// <summary>All stitches, each once, also where several yarns are held together.</summary>
    public decimal All { get; set; }
}

/// <summary>Adds up the stitches of a whole pattern, by size and by yarn.</summary>
internal sealed class WorkedYarn
{
    private readonly Pattern _pattern;
    private readonly ImmutableArray<BoundLine> _bound;
    private readonly ImmutableArray<WorkedLine> _worked;
    private readonly ImmutableArray<PieceOutline> _outlines;
    private readonly ImmutableArray<LineTally> _tallies;
    private readonly Func<BoundRow, BoundRow, YarnsOfRow> _hands;
    private readonly FabricWorker _fabric;
    private readonly Dictionary<(BoundRow Row, int Before, int Size), decimal[]> _shares = [];
    private readonly int _yarns;
    private readonly PieceTimes _times;

    // Rows so far of each piece of the size that is added up.
    private readonly Dictionary<string, decimal> _rows = new(StringComparer.Ordinal);

    private WorkedYarn(Pattern pattern, ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked, ImmutableArray<PieceOutline> outlines, SourceText source, CompileOptions options)
    {
        (_pattern, _bound, _worked, _outlines) = (pattern, bound, worked, outlines);
        _yarns = pattern.Facts.Yarns.Length;
        _tallies = PatternWorker.Tally(bound, pattern.Facts, new FindingBag(source), options);
        _hands = YarnsInHand.Of(pattern.Facts, bound, source);
        _times = PieceTimes.Of(pattern);
        _fabric = new FabricWorker(options, PatternBook.Of(bound));
    }

    /// <summary>What each size takes; empty, with a reason, where some row cannot be counted.</summary>
    public ImmutableArray<SizeYarn> Sizes { get; private set; } = [];

    /// <summary>Why there are none, as a sentence without its full stop.</summary>
    public string? Reason { get; private set; }

    /// <summary>False where some row does not say which yarn it is worked with.</summary>
    public bool AreApart { get; private set; } = true;

    /// <summary>False where it is not said how often some piece is made.</summary>
    public bool IsSure => _times.IsSure;

    /// <summary>Stitches in rows of several colours.</summary>
    public decimal Stranded { get; private set; }

    /// <summary>Adds up a pattern.</summary>
    public static WorkedYarn Of(Pattern pattern, ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked, ImmutableArray<PieceOutline> outlines, SourceText source, CompileOptions options)
    {
        var sum = new WorkedYarn(pattern, bound, worked, outlines, source, options);
        var sizes = ImmutableArray.CreateBuilder<SizeYarn>();
        for (var size = 0; size < pattern.Facts.Sizes.Count && sum.Reason is null; size++)
        {
            sizes.Add(sum.Size(size));
        }

        sum.Reason ??= sizes.All(s => s.Stitches.All(n => n == 0)) ? "the pattern has no rows that can be counted" : null;
        sum.Sizes = sum.Reason is null ? sizes.ToImmutable() : [];
        return sum;
    }

    private SizeYarn Size(int size)
    {
        _rows.Clear();
        var lines = new SizeYarn[_bound.Length];
        var all = new SizeYarn(new decimal[_yarns], new decimal[_yarns]);
        for (var i = 0; i < _bound.Length && i < _worked.Length && Reason is null; i++)
        {
            lines[i] = Line(i, size);
            foreach (var again in _tallies[i].Again.Where(a => a < i))
            {
                Add(lines[i], lines[again], 1);
            }

            Add(all, lines[i], _times[_bound[i].Section - 1, size]);
        }

        return all;
    }

    private SizeYarn Line(int index, int size)
    {
        var (line, worked) = (_bound[index], _worked[index]);
        var sum = new SizeYarn(new decimal[_yarns], new decimal[_yarns]);
        if (line.Pattern is not null || line.Rows.IsEmpty)
        {
            return sum;
        }

        var (before, after) = (worked.Before[size], worked.After[size]);
        var skips = before is null && after is null && worked.Status == LineStatus.Checked;
        if (before is 0 && after is 0 && (worked.Status != LineStatus.Checked || _tallies[index].Sizes[size].Length == 0))
        {
            return sum; // ends woven in, a word to the maker
        }

        if (!worked.Rows.IsEmpty && worked.Rows[size] is { } rows)
        {
            CountRows(worked, rows);
            Tally(sum, index, size);
        }
        else if (worked.Status == LineStatus.Checked && worked.Rows.IsEmpty)
        {
            Open(sum, index, size);
        }
        else if (worked.Status != LineStatus.Checked && before is { } from && after is { } to && !worked.Numbers.IsEmpty)
        {
            var stitches = (from + to) / 2m * worked.Numbers.Length;
            CountRows(worked, worked.Numbers.Length);
            Spread(sum, line.Rows[^1], line.Rows[^1], size, from, stitches, stitches * PlainWeight());
        }
        else if (!skips || _worked.All(w => w.Before[size] is null))
        {
            Reason ??= $"{Words(worked)} {(worked.Status == LineStatus.Checked ? "has no count that is known" : "is not understood")}{InSize(size)}";
        }

        return sum;
    }

    /// <summary>A line whose rows come from a length, or from another piece, or are none at all.</summary>
    private void Open(SizeYarn sum, int index, int size)
    {
        var line = _bound[index];
        RowsStep[] open = [.. line.Rows.SelectMany(r => r.Steps).OfType<RowsStep>().Where(s => s is not StartStep)];
        var isAsRow = open.Length > 0 && open.All(s => s is RepeatRowsStep { Until: RowsUntil.Open }) && _worked[index].Numbers.Length == _tallies[index].Sizes[size].Length;
        if (!_tallies[index].Again.IsEmpty || open.Length == 0 || isAsRow)
        {
            CountRows(_worked[index], isAsRow ? _worked[index].Numbers.Length : 0);
            Tally(sum, index, size);
            return;
        }

        var found = false;
        foreach (var outline in _outlines.Where(o => o is { IsDrawn: true, View: OutlineView.Flat or OutlineView.Tube, Gauge.RowsPerCm: > 0 }))
        {
            foreach (var levels in outline.Sizes[size].Arms.Prepend(outline.Sizes[size].Levels))
            {
                for (var i = 1; i < levels.Length; i++)
                {
                    if (levels[i].Line == _worked[index].Index)
                    {
                        found = true;
                        var rows = (levels[i].HeightCm - levels[i - 1].HeightCm) * outline.Gauge!.RowsPerCm!.Value;
                        CountRows(_worked[index], rows);
                        var stitches = rows * (levels[i].Stitches + levels[i - 1].Stitches) / 2;
                        Spread(sum, line.Rows[^1], line.Rows[^1], size, levels[i - 1].Stitches, stitches, stitches * PlainWeight(_worked[index]));
                    }
                }
            }
        }

        if (!found && !ByLength(sum, index, size))
        {
            var undrawn = _outlines.FirstOrDefault(o => o.Reason is not null && o.Headings.Contains(_worked[index].Piece, StringComparer.Ordinal))?.Reason;
            Reason ??= $"{Words(_worked[index])} does not say how many rows it is{(undrawn is null ? "" : $", and the piece cannot be measured: {undrawn}")}";
        }
    }

    /// <summary>"Rep Rows 2-5 until piece measures 40 cm", where the outline of the piece is not known: as many rows as are left of the length at the gauge, each like the mean of those repeated.</summary>
    private bool ByLength(SizeYarn sum, int index, int size)
    {
        var (line, worked) = (_bound[index], _worked[index]);
        var gauges = _pattern.Facts.Gauges.Where(g => g.RowsPerCm is > 0).Select(g => g.RowsPerCm!.Value).Distinct().ToArray();
        if (gauges is not [var perCm] || LengthWords.Read(line.Text) is not { From: LengthFrom.Edge or LengthFrom.Here } length || length.In(size, _pattern.Facts.Sizes.Count) is not { } cm || line.Rows.SelectMany(r => r.Steps).Any(s => s is ShapingStep))
        {
            return false;
        }

        var rows = (cm * perCm) - (length.From == LengthFrom.Edge ? _rows.GetValueOrDefault(worked.Piece) : 0);
        var mean = _tallies[index].Sizes[size];
        if (rows <= 0 || worked.After[size] is not (> 0 and var count))
        {
            return false;
        }

        CountRows(worked, rows);
        if (mean.Length == 0)
        {
            Spread(sum, line.Rows[^1], line.Rows[^1], size, count, rows * count, rows * count * PlainWeight(worked));
        }

        foreach (var row in mean)
        {
            Spread(sum, row.Row, line.Rows[^1], size, row.Before, row.Stitches * rows / mean.Length, row.Weight * rows / mean.Length);
        }

        return true;
    }

    private void CountRows(WorkedLine line, decimal rows) => _rows[line.Piece] = _rows.GetValueOrDefault(line.Piece) + rows;

    private void Tally(SizeYarn sum, int index, int size)
    {
        foreach (var row in _tallies[index].Sizes[size])
        {
            Spread(sum, row.Row, _bound[index].Rows[^1], size, row.Before, row.Stitches, row.Weight);
        }
    }

    /// <summary>Gives the stitches of a row to its yarns.</summary>
    private void Spread(SizeYarn sum, BoundRow row, BoundRow caller, int size, int before, decimal stitches, decimal weight)
    {
        var hands = _hands(row, caller);
        AreApart &= hands.IsKnown;
        sum.All += stitches;
        var shares = hands.HasColours ? ByColour(row, before, size) : null;
        foreach (var yarn in hands.Yarns)
        {
            var share = shares is not null ? shares[yarn] : hands.IsTogether ? 1 : 1m / hands.Yarns.Length;
            sum.Stitches[yarn] += stitches * share;
            sum.Weighted[yarn] += weight * share;
        }

        Stranded += hands.HasColours ? stitches : 0;
    }

    /// <summary>The share of each yarn in a row of several colours, stitch by stitch; by its steps alone where it cannot be worked by itself.</summary>
    private decimal[] ByColour(BoundRow row, int before, int size)
    {
        if (_shares.TryGetValue((row, before, size), out var known))
        {
            return known;
        }

        var shares = new decimal[_yarns];
        string[] colours = _fabric.One(row, before, size) is { Row.Colours: { IsDefaultOrEmpty: false } worked }
            ? [.. worked.OfType<string>()]
            : [.. YarnsInHand.Colours(row.Steps)];
        foreach (var colour in colours)
        {
            var at = _pattern.Facts.Yarns.ToList().FindIndex(y => string.Equals(y.Label, colour, StringComparison.Ordinal));
            if (at >= 0)
            {
                shares[at] += 1m / colours.Length;
            }
        }

        if (_shares.Count < 100_000)
        {
            _shares[(row, before, size)] = shares;
        }

        return shares;
    }

    /// <summary>What a stitch takes where only the number of stitches is known: the tallest of the line's own.</summary>
    private static decimal PlainWeight(WorkedLine? line = null) =>
        line?.Operations.Where(o => o.Craft == Stitches.Craft.Crochet && o.Makes > 0).Select(Stitches.StitchYarn.Of).DefaultIfEmpty(1).Max() ?? 1;

    private string InSize(int size) => _pattern.Facts.Sizes.Count > 1 ? $" in size {_pattern.Facts.Sizes.Names[size]}" : "";

    private static void Add(SizeYarn to, SizeYarn what, int times)
    {
        to.All += what.All * times;
        for (var i = 0; i < to.Stitches.Length; i++)
        {
            to.Stitches[i] += what.Stitches[i] * times;
            to.Weighted[i] += what.Weighted[i] * times;
        }
    }

    private static string Words(WorkedLine line)
    {
        var text = line.Label.Length > 0 ? line.Label : line.Text;
        return $"`{(text.Length > 40 ? text[..39].TrimEnd() + "…" : text)}`";
    }
}
