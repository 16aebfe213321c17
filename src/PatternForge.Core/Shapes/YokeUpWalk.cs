using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>
/// A body and its yoke, worked in the round from the hem up, the sleeves joined to it in one round: drawn as the front that is seen when it lies flat, with the
/// sleeves left out.
/// </summary>
internal sealed class YokeUpWalk
{
    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly int _join;
    private readonly int _sleeve;
    private readonly int _size;
    private readonly Gauge _gauge;
    private readonly LineHeights _heights;
    private readonly YokeShares _shares;

    public YokeUpWalk(ShapedPiece piece, int size, int sizes, Gauge gauge)
    {
        (_lines, _join, _sleeve, _size, _gauge) = (piece.Lines, piece.Join, piece.Sleeve[size], size, gauge);
        _heights = new LineHeights(gauge, size, sizes);
        _shares = new YokeShares(size);
    }

    /// <summary>Why it came to no end, as the end of a sentence.</summary>
    public string? Reason { get; private set; }

    /// <summary>The level at the underarms.</summary>
    public int Underarm { get; private set; }

    /// <summary>Around the neck, in centimetres.</summary>
    public decimal NeckCm { get; private set; }

    /// <summary>True for a round that is worked across several pieces, and has more stitches than the sleeve that was worked last.</summary>
    public static bool Joins(ShapedLine line, ShapedLine last) =>
        line.Deep().Count(s => s is AcrossPieceStep) >= 2 && line.Worked.Status == LineStatus.Checked
        && Enumerable.Range(0, line.Worked.After.Length).All(s => line.Worked.After[s] is not { } after || after > 2 * (last.Worked.After[s] ?? 0));

    /// <summary>The body that the sleeves are joined to: the piece whose stitches and those of two sleeves are there afterwards, in every size; null for none.</summary>
    public static ShapedPiece? BodyOf(IEnumerable<ShapedPiece> pieces, ShapedLine join, WorkedLine sleeve)
    {
        var after = join.Worked.After;
        if (!Enumerable.Range(0, after.Length).All(s => after[s] is > 0 && sleeve.After[s] is > 0))
        {
            return null;
        }

        var body = pieces.LastOrDefault(p => p.Join == 0 && p.Lines[^1].Worked is var last && Enumerable.Range(0, after.Length).All(s => last.After[s] + (2 * sleeve.After[s]) == after[s]));
        return body is null ? null : body with { Join = body.Lines.Length, Sleeve = [.. sleeve.After.Select(s => s!.Value)] };
    }

    /// <summary>The outline; null, with a reason, where something about it is not known.</summary>
    public SizeOutline? Go()
    {
        if (_lines[0].Worked.After[_size] is not (> 0 and var start) || !_shares.Find(_lines[_join], _sleeve) && _lines[_join].Worked.After[_size] is null)
        {
            Reason = "it is not known how many stitches it begins with";
            return null;
        }

        var levels = ImmutableArray.CreateBuilder<OutlineLevel>();
        var height = 0m;
        levels.Add(Level(_lines[0], 0, start / 2m));

        // Stitches of the underarms wait on holders, or are bound off, in the last row before the sleeves join.
        var under = Enumerable.Range(1, _join - 1).LastOrDefault(i => !_lines[i].IsForOthers(_size) && _lines[i].Worked is var w && w.Before[_size] is > 0 && w.After[_size] is > 0, -1);
        for (var i = 1; i < _join; i++)
        {
            if (Next(i, height, 0) is not { } next)
            {
                return null;
            }

            height = next;
            if (_lines[i].IsForOthers(_size))
            {
                levels.Add(levels[^1]); // as many places in every size
            }
            else if (_lines[i].Worked.After[_size] is > 0 and var count)
            {
                levels.Add(Level(_lines[i], height, (i == under ? Math.Max(count, _lines[i].Worked.Before[_size] ?? 0) : count) / 2m));
            }
        }

        Underarm = levels.Count - 1;
        var front = (_lines[_join].Worked.After[_size]!.Value - (2 * _sleeve)) / 2m;
        var share = front / _lines[_join].Worked.After[_size]!.Value;
        levels.Add(Level(_lines[_join], height, front) with { IsEdge = true });
        var neck = _lines[_join].Worked.After[_size]!.Value;
        for (var i = _join; i < _lines.Length; i++)
        {
            var worked = _lines[i].Worked;
            if ((worked.Before[_size] is 0 && worked.After[_size] is 0) || (i > _join && worked.After[_size] is 0))
            {
                continue; // bound off, ends woven in
            }

            if (Next(i, height, levels[Underarm].HeightCm) is not { } next)
            {
                return null;
            }

            height = next;
            if (_lines[i].IsForOthers(_size))
            {
                levels.Add(levels[^1]);
                continue;
            }

            neck = worked.After[_size]!.Value;
            share = _shares.Half(_lines[i]) is { } half ? half / neck : share;
            levels.Add(Level(_lines[i], height, neck * share));
        }

        NeckCm = _gauge.Across(neck) ?? 0;
        return new SizeOutline(levels.ToImmutable(), []);
    }

    /// <summary>The height after a line; null with a reason where it is not known.</summary>
    private decimal? Next(int i, decimal height, decimal section)
    {
        var (line, worked) = (_lines[i], _lines[i].Worked);
        if (line.IsForOthers(_size) || (worked.Before[_size] is 0 && worked.After[_size] is 0))
        {
            return height;
        }

        if (worked.Status != LineStatus.Checked || worked.Before[_size] is null || worked.After[_size] is null || !worked.Kinds.IsEmpty)
        {
            Reason = $"{line.Words} is not understood";
            return null;
        }

        if (line.Deep().Any(s => s is TurnStep))
        {
            Reason = $"{line.Words} turns within the row";
            return null;
        }

        if (_heights.After(line, height, section, section) is not { } next || next < height - 1)
        {
            Reason = $"it is not known how many rows there are at {line.Words}";
            return null;
        }

        return Math.Max(next, height);
    }

    private OutlineLevel Level(ShapedLine line, decimal height, decimal stitches)
    {
        var half = (_gauge.Across(stitches) ?? 0) / 2;
        return new OutlineLevel(line.Worked.Index, height, -half, half, (int)Math.Round(stitches));
    }
}
