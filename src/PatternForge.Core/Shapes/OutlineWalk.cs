using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>Goes up a piece in one size, line by line, and notes where its edges are.</summary>
internal sealed class OutlineWalk
{
    // A length told in words and one told by rows may overlap a little: gauge and rounding (common practice), in centimetres and as a share.
    private const decimal Slack = 1;
    private const decimal SlackShare = 0.03m;

    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly int _size;
    private readonly LineHeights _heights;
    private readonly Gauge _gauge;
    private readonly bool _isRound;
    private readonly EdgeBook _edges = new();

    // Stitches from the middle of the lower edge, and centimetres above it.
    private decimal _left;
    private decimal _right;
    private decimal _height;
    private decimal? _armhole;
    private decimal _section;
    private int _most;
    private FabricSide? _side;
    private int _parts = 1;

    public OutlineWalk(ShapedPiece piece, int size, int sizes, Gauge gauge, bool isRound)
    {
        (_lines, _size, _gauge, _isRound) = (piece.Lines, size, gauge, isRound);
        _heights = new LineHeights(gauge, size, sizes);
        _armhole = piece.IsFromHeld ? 0 : null;
    }

    /// <summary>Why it came to no end, as the end of a sentence.</summary>
    public string? Reason { get; private set; }

    /// <summary>The outline; null, with a reason, where something about it is not known.</summary>
    public SizeOutline? Go()
    {
        var start = _lines[0].Worked.After[_size];
        var first = 1;
        if (BeginsInFirstRow)
        {
            // A foundation chain has stitches for turning, and a sleeve more than those that waited: the first row tells the width.
            start = _lines[1].Worked.After[_size];
        }

        if (start is not (> 0 and var count))
        {
            Reason = "it is not known how many stitches it begins with";
            return null;
        }

        var share = _isRound ? 4m : 2m; // a tube lies flat: half of it in front
        (_left, _right, _most) = (-count / share, count / share, count);
        var hold = Enumerable.Range(1, _lines.Length - 1).FirstOrDefault(i => _lines[i].Holds > 0, -1);
        var back = hold < 0 ? -1 : Enumerable.Range(hold, _lines.Length - hold).FirstOrDefault(i => _lines[i].First is ReturnStep, -1);
        if (_isRound && hold >= 0 && _lines[hold].Worked is var parted && parted.After[_size] * 2 > parted.Before[_size])
        {
            (hold, back) = (-1, -1); // a thumb is left on a thread, and the tube goes on
        }

        if (!_isRound && hold < 0 && SecondSide.In(_lines) is > 0 and var second)
        {
            (hold, back) = (SecondSide.LeavesIn(_lines, second), second);
        }

        var both = _isRound || back >= 0 ? -1 : Enumerable.Range(1, _lines.Length - 1).FirstOrDefault(i => BothSides.PartsIn(_lines, i), -1);
        if (both >= 0)
        {
            return Together(both);
        }

        if (hold >= 0 && (back < 0 || _isRound))
        {
            Reason = $"stitches are left on a holder at {_lines[hold].Words} and the rest of the piece is not worked on its own";
            return null;
        }

        var levels = ImmutableArray.CreateBuilder<OutlineLevel>();
        levels.Add(Level(_lines[0], count));
        if (!Up(first, hold < 0 ? _lines.Length : hold, levels, hold >= 0, null))
        {
            return null;
        }

        return hold < 0 ? new SizeOutline(levels.ToImmutable(), []) : Arms(levels, hold, back);
    }

    /// <summary>Both sides of the neck worked at the same time, each with its own yarn: every count is that of the two together.</summary>
    private SizeOutline? Together(int at)
    {
        var line = _lines[at];
        var levels = ImmutableArray.CreateBuilder<OutlineLevel>();
        levels.Add(Level(_lines[0], _lines[0].Worked.After[_size] ?? 0));
        if (!Up(1, at, levels, false, null) || _heights.After(line, _height, _section, _armhole) is not { } height)
        {
            Reason ??= $"it is not known how many rows there are at {line.Words}";
            return null;
        }

        if (line.Worked is not { Status: LineStatus.Checked } worked || worked.After[_size] is not (> 0 and var count) || count % 2 != 0 || BothSides.FirstOf(line, _size) != count / 2 || count / 2 * 2 > _right - _left)
        {
            Reason = $"it is not plain how many stitches each side has at {line.Words}";
            return null;
        }

        var (one, middle) = (count / 2, (_left + _right) / 2);
        var arm = ImmutableArray.CreateBuilder<OutlineLevel>();
        (_right, _most, _parts) = (_left + one, one, 2);
        arm.Add(Level(line, one));
        _height = height;
        arm.Add(Level(line, one));
        _side = NextSide(line);
        if (!Up(at + 1, _lines.Length, arm, false, true))
        {
            return null;
        }

        return new SizeOutline(levels.ToImmutable(), [arm.ToImmutable(), [.. arm.Select(l => l.Mirrored(_gauge.Across(middle) ?? 0))]]);
    }

    private bool BeginsInFirstRow => _lines.Length > 1 && (_lines[0].First is ChainStep || (_lines[0].First is ReturnStep && _lines[1].Has<PickUpStep>()));

    private SizeOutline? Arms(ImmutableArray<OutlineLevel>.Builder levels, int hold, int back)
    {
        var (left, right, height, armhole) = (_left, _right, _height, _armhole);
        if (_lines[hold].Worked.After[_size] is not (> 0 and var one) || _lines[back].Worked.After[_size] is not (> 0 and var other) || one + other > right - left)
        {
            Reason = $"it is not known how many stitches each side has at {_lines[hold].Words}";
            return null;
        }

        var row = _lines[hold].Bound.Rows[^1];
        var steps = row.Steps;
        var isStart = steps.IndexOf(steps.First(s => s is HoldStep or LeaveStep)) > 0;
        var side = row.Side ?? _side;
        if (side is null && one != other)
        {
            Reason = $"it is not said on which side {_lines[hold].Words} is worked";
            return null;
        }

        // A row on the wrong side begins at the left edge as the right side shows it.
        var firstIsLeft = side is null || (side == FabricSide.Wrong) == isStart;
        var arms = new ImmutableArray<OutlineLevel>[2];
        foreach (var (isFirst, from, to, count) in new[] { (true, hold, back, one), (false, back, _lines.Length, other) })
        {
            var isLeft = isFirst == firstIsLeft;
            (_left, _right) = isLeft ? (left, left + count) : (right - count, right);
            (_height, _armhole, _section, _most) = (height, armhole, height, count);
            var part = ImmutableArray.CreateBuilder<OutlineLevel>();
            part.Add(Level(_lines[from], count));
            _side = isFirst ? side : Facing(_lines[from].Bound.Text);
            if (isFirst && _heights.After(_lines[from], _height, _section, _armhole) is { } tall)
            {
                _height = tall;
                _side = Other(side);
                part.Add(Level(_lines[from], count));
            }
            else if (isFirst)
            {
                return null;
            }

            if (!isFirst && _lines[(from + 1)..to].Any(l => l.First is MatchSideStep))
            {
                var middle = _gauge.Across((left + right) / 2) ?? 0;
                arms[isLeft ? 0 : 1] = [.. arms[isLeft ? 1 : 0].Select(l => l.Mirrored(middle))];
                break;
            }

            if (!isFirst && _lines[from].First is StartStep && SecondSide.Mirrored(_lines, hold, back, _size, arms[isLeft ? 1 : 0], _gauge.Across((left + right) / 2) ?? 0) is { } turned)
            {
                arms[isLeft ? 0 : 1] = turned;
                break;
            }

            if (!Up(from + 1, to, part, false, isLeft))
            {
                return null;
            }

            arms[isLeft ? 0 : 1] = part.ToImmutable();
        }

        return new SizeOutline(levels.ToImmutable(), [.. arms]);
    }

    /// <summary>Goes up some lines.</summary>
    /// <param name="from">The first line.</param>
    /// <param name="to">The line behind the last.</param>
    /// <param name="levels">Takes the places.</param>
    /// <param name="mayPart">True where the piece parts behind them, so that stitches may be bound off in the middle.</param>
    /// <param name="isLeft">True for the left of two parts, false for the right; null for the piece itself.</param>
    private bool Up(int from, int to, ImmutableArray<OutlineLevel>.Builder levels, bool mayPart, bool? isLeft)
    {
        for (var i = from; i < to; i++)
        {
            var line = _lines[i];
            var worked = line.Worked;
            if (worked.Before[_size] is 0 && worked.After[_size] is 0)
            {
                continue; // ends woven in, a word to the maker
            }

            if (line.IsForOthers(_size))
            {
                levels.Add(levels[^1]); // as many places in every size
                continue;
            }

            if (_parts > 1 && (worked.Before[_size] % _parts != 0 || worked.After[_size] % _parts != 0))
            {
                Reason = $"the two sides are not the same at {line.Words}";
                return false;
            }

            if (worked.Status != LineStatus.Checked || worked.Before[_size] is not { } before || worked.After[_size] is not { } after)
            {
                Reason = $"{line.Words} is not understood";
                return false;
            }

            if (!worked.Kinds.IsEmpty)
            {
                Reason = $"{line.Words} has spaces among its stitches, and its count alone is no width";
                return false;
            }

            if (i > 1 && _lines[i - 1].Worked.Piece != worked.Piece && isLeft is null)
            {
                _section = _height;
            }

            (before, after) = (before / _parts, after / _parts);
            before = i == 1 && BeginsInFirstRow ? after : before;
            if (ShortRows(line))
            {
                return Shoulders(i, to, levels, isLeft);
            }

            if (before > 0 && after == 0 && i < to - 1 && _lines[(i + 1)..to].Any(l => l.Worked.After[_size] is > 0))
            {
                Reason = $"the stitches end at {line.Words} and go on below it";
                return false;
            }

            var top = _heights.After(line, _height, _section, _armhole);
            if (top is not { } height || height < _height - Math.Max(Slack, _height * SlackShare))
            {
                Reason ??= $"it is not known how many rows there are at {line.Words}";
                return false;
            }

            height = Math.Max(height, _height);
            if (after == 0)
            {
                _height = height;
                levels.Add(Level(line, before) with { IsEdge = true });
                continue;
            }

            if (!Shift(line, before, after, mayPart && i >= to - 2, isLeft, i, levels, height))
            {
                return false;
            }

            _side = NextSide(line);
        }

        return true;
    }

    /// <summary>Short rows up to the end of a piece that is worked flat: its shoulders slope.</summary>
    private bool Shoulders(int from, int to, ImmutableArray<OutlineLevel>.Builder levels, bool? isLeft)
    {
        if (_isRound || isLeft is not null || ShortRowShoulders.Of(_lines[from..to], _size, _side, ShortRows) is not { } slope || _gauge.Along(slope.RowsAcross) is not { } across)
        {
            Reason = $"{_lines[from].Words} turns within the row";
            return false;
        }

        var (left, right, count) = (_left, _right, slope.Stitches);
        _height += across;
        levels.Add(Level(_lines[from], count));
        foreach (var turn in slope.Turns)
        {
            (_left, _right) = (left + turn.Left, right - turn.Right);
            _height += _gauge.Along(turn.Rows) ?? 0;
            levels.Add(Level(_lines[turn.Line + from], count - turn.Left - turn.Right) with { IsEdge = slope.Neck is not null });
        }

        if (slope.Neck is { } neck && neck < _right - _left)
        {
            var middle = (_left + _right) / 2;
            (_left, _right) = (middle - (neck / 2m), middle + (neck / 2m));
            levels.Add(Level(_lines[to - 1], neck) with { IsEdge = true });
        }

        return true;
    }

    private bool Shift(ShapedLine line, int before, int after, bool mayPart, bool? isLeft, int i, ImmutableArray<OutlineLevel>.Builder levels, decimal height)
    {
        var (left, right) = (0m, 0m);
        if (_isRound)
        {
            left = right = (after - before) / 4m; // half of it is in front, and half of that on either side
        }
        else if (_parts > 1)
        {
            if (BothSides.Moves(line, after - before) is not var (outer, inner))
            {
                Reason = $"it is not plain at which edge {line.Words} is shaped";
                return false;
            }

            (left, right) = (outer, inner);
        }
        else if (_edges.Of(line, _size, before, after, _side, isLeft) is not { } moves)
        {
            Reason = $"it is not plain at which edge {line.Words} is shaped";
            return false;
        }
        else if (moves.IsParted && mayPart)
        {
            (left, right) = (0, 0); // the neck opens here; the two sides are told by the rows behind it
        }
        else if (moves.IsParted)
        {
            Reason = $"stitches are bound off in the middle at {line.Words}";
            return false;
        }
        else
        {
            (left, right) = (moves.Left, moves.Right);
        }

        var count = mayPart && left == 0 && right == 0 ? before : after;
        var isStep = !_isRound && line.BindsOff && left == right && left < 0 && Lone(i);
        _armhole ??= !_isRound && after < before && before >= _most && isLeft is null ? _height : null;
        _most = Math.Max(_most, after);
        (_left, _right) = (_left - left, _right + right);
        if (_right <= _left)
        {
            (_left, _right) = ((_left + _right) / 2, (_left + _right) / 2);
        }

        if (isStep)
        {
            levels.Add(Level(line, count) with { IsEdge = true });
        }

        _height = height;
        levels.Add(Level(line, count) with { IsEdge = line.BindsOff });
        return true;
    }

    /// <summary>True for one binding off by itself, which makes a step; several that follow one another make a slope.</summary>
    private bool Lone(int i) => !(i > 0 && _lines[i - 1].BindsOff) && !(i + 1 < _lines.Length && _lines[i + 1].BindsOff) && _lines[i].Bound.Rows.SelectMany(r => r.Steps).OfType<ShapingStep>().All(s => s.Stretches is [{ Rows: { } rows }] && rows[_size] <= 2);

    private OutlineLevel Level(ShapedLine line, int count) => new(line.Worked.Index, _height, _gauge.Across(_left) ?? 0, _gauge.Across(_right) ?? 0, count);

    private static bool ShortRows(ShapedLine line) => line.Bound.Rows.Any(r => r.Steps.Any(s => s is TurnStep { Wraps: true })
        || (line.Worked.Operations.All(o => o.Craft == Stitches.Craft.Knitting) && r.Steps.Any(s => s is TurnStep) && !r.Steps.Any(s => s is HoldStep)));

    private FabricSide? NextSide(ShapedLine line)
    {
        if (Ending(line.Worked.Text) is { } last)
        {
            return Other(last);
        }

        var row = line.Bound.Rows[^1];
        var stated = line.Bound.Rows.Length == 1 && row.Count is null && !row.IsRange ? row.Side : null;
        return stated is not null ? Other(stated) : !line.Worked.Rows.IsEmpty && line.Worked.Rows[_size] is { } rows ? rows % 2 == 0 ? _side : Other(_side) : null;
    }

    private static FabricSide? Ending(string text) =>
        text.IndexOf("ending", StringComparison.OrdinalIgnoreCase) is not (>= 0 and var at) ? null
        : text.IndexOf("WS", at, StringComparison.Ordinal) >= 0 || text.IndexOf("wrong", at, StringComparison.OrdinalIgnoreCase) >= 0 ? FabricSide.Wrong
        : text.IndexOf("RS", at, StringComparison.Ordinal) >= 0 || text.IndexOf("right-side", at, StringComparison.OrdinalIgnoreCase) >= 0 ? FabricSide.Right : null;

    private static FabricSide? Facing(string text) =>
        text.Contains("WS facing", StringComparison.Ordinal) || text.Contains("wrong side facing", StringComparison.OrdinalIgnoreCase) ? FabricSide.Wrong
        : text.Contains("RS facing", StringComparison.Ordinal) || text.Contains("right side facing", StringComparison.OrdinalIgnoreCase) ? FabricSide.Right : null;

    private static FabricSide? Other(FabricSide? side) => side switch { FabricSide.Right => FabricSide.Wrong, FabricSide.Wrong => FabricSide.Right, _ => null };
}
