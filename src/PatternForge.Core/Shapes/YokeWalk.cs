using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>
/// A body and its yoke, worked from the neck down: drawn as the front that is seen when it lies flat, with the sleeves left out. The yoke's part of the front is
/// what its markers say (raglan), else its share of the stitches where the sleeves part. Where it is worked in rows and open in front, its back is drawn, which
/// only markers can tell.
/// </summary>
internal sealed class YokeWalk
{
    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly int _divide;
    private readonly int _size;
    private readonly Gauge _gauge;
    private readonly LineHeights _heights;

    private readonly YokeShares _shares;
    private readonly bool _isOpen;
    private decimal _share;

    public YokeWalk(ShapedPiece piece, int divide, int size, int sizes, Gauge gauge, bool isOpen = false)
    {
        (_lines, _divide, _size, _gauge, _isOpen) = (piece.Lines, divide, size, gauge, isOpen);
        _shares = new YokeShares(size);
        _heights = new LineHeights(gauge, size, sizes);
    }

    /// <summary>Why it came to no end, as the end of a sentence.</summary>
    public string? Reason { get; private set; }

    /// <summary>The number, from below, of the level at the underarms.</summary>
    public int Underarm { get; private set; }

    /// <summary>Around the neck, in centimetres.</summary>
    public decimal NeckCm { get; private set; }

    /// <summary>The line where the stitches of two sleeves go to holders; -1 for none.</summary>
    public static int DivisionOf(ImmutableArray<ShapedLine> lines) => Enumerable.Range(1, lines.Length - 1).FirstOrDefault(i => lines[i].Holds == 2 && i < lines.Length - 1, -1);

    /// <summary>The outline; null, with a reason, where something about it is not known.</summary>
    public SizeOutline? Go()
    {
        var division = _lines[_divide].Worked;
        int?[] held = [.. _lines[_divide].Deep().OfType<HoldStep>().Select(h => h.Stitches?[_size]).Distinct()];
        if (division is not { Status: LineStatus.Checked } || division.Before[_size] is not (> 0 and var before) || division.After[_size] is not (> 0 and var after) || held is not [> 0 and var sleeve] || before <= 2 * sleeve || after < before - (2 * sleeve))
        {
            Reason = $"it is not plain how many stitches front and back have at {_lines[_divide].Words}";
            return null;
        }

        FindSleeves(sleeve);
        if (_isOpen && !_shares.HasFronts)
        {
            Reason = "its markers do not tell the back from the fronts";
            return null;
        }

        var front = _isOpen ? BackAt(_divide - 1) ?? 0 : (before - (2 * sleeve)) / 2m;
        _share = front / before;
        if (_lines[0].Worked.After[_size] is not (> 0 and var neck))
        {
            Reason = "it is not known how many stitches it begins with";
            return null;
        }

        NeckCm = _gauge.Across(neck) ?? 0;
        var (height, levels) = (0m, new List<(ShapedLine Line, decimal Height, int Count, decimal? Front)> { (_lines[0], 0, neck, Front(_lines[0])) });
        for (var i = 1; i <= _divide; i++)
        {
            if (Next(i, height, 0, null) is not { } next)
            {
                return null;
            }

            height = next;
            if (_lines[i].IsForOthers(_size))
            {
                levels.Add(levels[^1]); // as many places in every size
                continue;
            }

            levels.Add(i == _divide ? (_lines[i], height, before, front) : (_lines[i], height, _lines[i].Worked.After[_size]!.Value, Front(_lines[i])));
        }

        var outline = ImmutableArray.CreateBuilder<OutlineLevel>();
        for (var i = levels.Count - 1; i >= 0; i--)
        {
            // Above the first markers: as below them.
            var (line, at, count, own) = levels[i];
            own ??= i + 1 < levels.Count && levels[i + 1].Front is { } next ? _isOpen && levels[i + 1].Count >= count ? next : next * count / levels[i + 1].Count : count * _share;
            levels[i] = (line, at, count, own);
        }

        outline.AddRange(levels.Select(l => Level(l.Line, l.Height, l.Front!.Value)));
        var under = height;
        // Below the underarms the back has half of the stitches that were cast on there.
        var below = _isOpen ? (front + ((after - (before - (2 * sleeve))) / 2m)) / after : 0.5m;
        outline.Add(Level(_lines[_divide], under, after * below) with { IsEdge = true });
        var underarm = outline.Count - 1;
        for (var i = _divide + 1; i < _lines.Length; i++)
        {
            var worked = _lines[i].Worked;
            if (worked.Before[_size] is 0 && worked.After[_size] is 0)
            {
                continue;
            }

            if (Next(i, height, under, under) is not { } next)
            {
                return null;
            }

            if (worked.After[_size] is 0 && _lines[(i + 1)..].Any(l => l.Worked.After[_size] is > 0))
            {
                Reason = $"the stitches end at {_lines[i].Words} and go on below it";
                return null;
            }

            height = next;
            if (_lines[i].IsForOthers(_size))
            {
                outline.Add(outline[^1]);
                continue;
            }

            outline.Add(Level(_lines[i], height, (worked.After[_size] is > 0 and var count ? count : worked.Before[_size] ?? 0) * below));
        }

        Underarm = outline.Count - 1 - underarm;
        return new SizeOutline(outline.ToImmutable(), []).UpsideDown();
    }

    /// <summary>What a maker wants to know of it.</summary>
    /// <param name="sizes">The outline in every size.</param>
    /// <param name="neckCm">Around the neck, one a size.</param>
    /// <param name="underarm">The level at the underarms.</param>
    /// <param name="isOpen">True where it is open in front, so that its back is drawn.</param>
    public static ImmutableArray<OutlineMeasure> Measures(ImmutableArray<SizeOutline> sizes, ImmutableArray<decimal> neckCm, int underarm, bool isOpen = false)
    {
        var top = sizes[0].Levels.Length - 1;
        var measures = ImmutableArray.CreateBuilder<OutlineMeasure>();
        decimal Wide(SizeOutline size, int at) => size.Levels[at].WidthCm;
        var isPlain = sizes.All(s => s.Levels.Take(underarm + 1).All(l => Math.Abs(l.WidthCm - s.Levels[0].WidthCm) < 0.3m));
        if (isOpen)
        {
            measures.Add(new OutlineMeasure("back, lower edge", OutlineDirection.Across, 0, 0, [.. sizes.Select(s => Wide(s, 0))]));
            if (!isPlain)
            {
                measures.Add(new OutlineMeasure("back, below the underarms", OutlineDirection.Across, underarm, underarm, [.. sizes.Select(s => Wide(s, underarm))]) { IsUnder = true });
            }

            measures.Add(new OutlineMeasure("back, between the sleeves", OutlineDirection.Across, underarm + 1, underarm + 1, [.. sizes.Select(s => Wide(s, underarm + 1))]));
            measures.Add(new OutlineMeasure("back of the neck", OutlineDirection.Across, top, top, [.. sizes.Select(s => Wide(s, top))]));
            measures.Add(Along("up to the underarms", 0, underarm));
            measures.Add(Along("yoke", underarm, top));
            measures.Add(Along("whole length", 0, top));
            return measures.ToImmutable();
        }

        measures.Add(new OutlineMeasure(isPlain ? "around the body" : "around the lower edge", OutlineDirection.Across, 0, 0, [.. sizes.Select(s => 2 * Wide(s, 0))]));
        if (!isPlain)
        {
            measures.Add(new OutlineMeasure("around, below the underarms", OutlineDirection.Across, underarm, underarm, [.. sizes.Select(s => 2 * Wide(s, underarm))]) { IsUnder = true });
        }

        measures.Add(new OutlineMeasure("front, between the sleeves", OutlineDirection.Across, underarm + 1, underarm + 1, [.. sizes.Select(s => Wide(s, underarm + 1))]));
        measures.Add(new OutlineMeasure("around the neck", OutlineDirection.Across, top, top, neckCm));
        measures.Add(Along("up to the underarms", 0, underarm));
        measures.Add(Along("yoke", underarm, top));
        measures.Add(Along("whole length", 0, top));
        return measures.ToImmutable();

        OutlineMeasure Along(string name, int from, int to) => new(name, OutlineDirection.Along, from, to, [.. sizes.Select(s => s.Levels[to].HeightCm - s.Levels[from].HeightCm)]);
    }

    /// <summary>The height, from the neck down, after a line; null with a reason where it is not known.</summary>
    private decimal? Next(int i, decimal height, decimal section, decimal? underarm)
    {
        var (line, worked) = (_lines[i], _lines[i].Worked);
        if (line.IsForOthers(_size))
        {
            return height;
        }

        if (worked.Status != LineStatus.Checked || worked.Before[_size] is null || worked.After[_size] is null || (i < _divide && worked.After[_size] is 0))
        {
            Reason = $"{line.Words} is not understood";
            return null;
        }

        if (line.Deep().Any(s => s is TurnStep))
        {
            Reason = $"{line.Words} turns within the row";
            return null;
        }

        if (_heights.After(line, height, section, underarm) is not { } next || next < height - 1)
        {
            Reason = $"it is not known how many rows there are at {line.Words}";
            return null;
        }

        return Math.Max(next, height);
    }

    /// <summary>The stitches of the back at the last line before a place whose markers tell them.</summary>
    private decimal? BackAt(int line)
    {
        for (var i = line; i >= 0; i--)
        {
            if (!_lines[i].IsForOthers(_size) && _shares.Back(_lines[i]) is { } back)
            {
                return back;
            }
        }

        return null;
    }

    private void FindSleeves(int sleeve)
    {
        for (var i = _divide - 1; i >= 0 && !_shares.Find(_lines[i], sleeve); i--)
        {
        }
    }

    private decimal? Front(ShapedLine line) => _isOpen ? _shares.Back(line) : _shares.HasSleeves ? _shares.Half(line) : line.Worked.After[_size] * _share;

    private OutlineLevel Level(ShapedLine line, decimal height, decimal stitches)
    {
        var half = (_gauge.Across(stitches) ?? 0) / 2;
        return new OutlineLevel(line.Worked.Index, height, -half, half, (int)Math.Round(stitches));
    }
}
