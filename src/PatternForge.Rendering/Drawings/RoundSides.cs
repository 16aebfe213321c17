namespace PatternForge.Rendering.Drawings;

/// <summary>Lays a round out on a polygon, side by side.</summary>
internal sealed class RoundSides
{
    private readonly RoundRow _round;
    private readonly double[] _separators;
    private readonly double _grid;

    public RoundSides(RoundRow round)
    {
        _round = round;
        _separators = [.. round.All.Corners[round.Index].Select(Separator)];
        var corners = _separators.Length;
        var first = corners % 2 == 1 || corners == 6 ? Math.PI / 2 : Math.PI / corners;
        _grid = round.IsMirrored ? -first : first;
    }

    private int Corners => _separators.Length;

    private double Part => 2 * Math.PI / Corners;

    public void Lay()
    {
        var under = Under();
        if (_round.All.WasCircle && under is { } angle)
        {
            var turn = _grid + (Math.Round((angle - _grid) / Part) * Part) - angle;
            _round.All.Turn(_round.IsMirrored ? -turn : turn);
            under = angle + turn;
        }

        var first = under is { } at ? _grid + (Math.Round((at - _grid) / Part) * Part) : _grid;
        var heads = _round.Heads;
        var full = RoundContour.FullReach(Corners);
        var below = new RoundContour(1, Corners, _grid, full);

        // The middle of the sides sets how far out the round stands, its corners how far they reach.
        var natural = heads.Select(h => (Level: LevelOf(h, below), Height: DiagramMeasures.HeightOf(h.Mark.Stitch))).ToArray();
        var radius = natural.Max(n => n.Level + n.Height);
        var corner = heads.Where((_, i) => _separators.Any(s => Math.Abs(s - i) <= 1 || Math.Abs(s - i + heads.Count) <= 1)).Max(h => _round.FloorOf(h) + (DiagramMeasures.HeightOf(h.Mark.Stitch) * full));
        for (var tries = 0; tries < RoundRow.MostTries; tries++)
        {
            var reach = Math.Clamp(Math.Max(corner, radius) / radius, Math.Min(1.12, full), full);
            _round.Contour = new RoundContour(radius, Corners, _grid, reach);
            if (LaySides(first))
            {
                return;
            }

            radius += 3;
            corner += 3 * full;
        }
    }

    private double LevelOf(DiagramHead head, RoundContour below)
    {
        var heads = _round.Heads;
        var spots = _round.Below(head.IsBeside && heads.Count > 1 ? heads[heads.IndexOf(head) == 0 ? 1 : 0] : head);
        return spots.Count == 0 ? _round.FloorOf(head)
            : _round.All.WasCircle ? spots.Max(s => Math.Min(s.Length, below.LevelOf(s) * 1.12))
            : spots.Max(below.LevelOf);
    }

    /// <summary>The angle of the place that the first corner is worked into; null for none.</summary>
    private double? Under()
    {
        var heads = _round.Heads;
        var at = ((int)Math.Ceiling(_separators[0]) + heads.Count) % heads.Count;
        return _round.Below(heads[at]) is [var spot] ? spot.Angle : null;
    }

    /// <summary>Where a corner is among the heads: on one, or between two.</summary>
    private double Separator(double corner)
    {
        var heads = _round.Heads;
        var on = heads.FindIndex(h => h.Mark.Stitch.Top == corner);
        var after = heads.FindIndex(h => h.Mark.Stitch.Top > corner);
        return on >= 0 ? on : after < 0 ? heads.Count - 0.5 : after - 0.5;
    }

    /// <summary>True for a head that goes into the same place as those round a corner.</summary>
    private bool IsIn(DiagramHead head, double separator)
    {
        var heads = _round.Heads;
        var n = heads.Count;
        var (before, after) = (heads[((int)Math.Floor(separator) + n) % n], heads[((int)Math.Ceiling(separator) + n) % n]);
        return head.Base >= 0 && head.Base == before.Base && head.Base == after.Base;
    }

    private bool LaySides(double first)
    {
        var (heads, gaps) = (_round.Heads, _round.Gaps());
        var n = heads.Count;
        var wanted = _round.Wanted();
        var length = _round.Contour.Length;
        for (var j = 0; j < Corners; j++)
        {
            var (from, to) = (_separators[j], j + 1 < Corners ? _separators[j + 1] : _separators[0] + n);
            var (start, end) = (_round.Contour.LengthTo(first + (j * Part)), _round.Contour.LengthTo(first + ((j + 1) * Part)));
            var side = Enumerable.Range(0, 2 * n).Where(i => i > from && i < to).ToArray();
            if (from == Math.Floor(from))
            {
                _round.At[(int)from % n] = start;
            }

            if (side.Length == 0)
            {
                continue;
            }

            double Half(double separator, int next) => separator == Math.Floor(separator) ? gaps[next % n] : gaps[next % n] / 2;
            var low = start + Half(from, side[0]);
            var high = end - Half(to, side[^1] + 1);
            var own = side.Select((i, k) => k == 0 ? 0 : gaps[i % n]).ToArray();
            if (own.Sum() > high - low + 0.01)
            {
                return false;
            }

            var even = side.All(i => _round.Below(heads[i % n]).Count == 0);
            var middle = (start + end) / 2;
            var sum = own.Sum();
            var run = 0.0;
            var want = side.Select((i, k) =>
            {
                run += own[k];
                return even ? middle + ((run - (sum / 2)) * Math.Min(1.25, (high - low) / Math.Max(1, sum)))
                    : IsIn(heads[i % n], from) ? start + Math.Max(heads[i % n].Fan, 0)
                    : IsIn(heads[i % n], to) ? end + Math.Min(heads[i % n].Fan, 0)
                    : wanted[i % n] + (Math.Round((middle - wanted[i % n]) / length) * length);
            }).ToArray();
            var at = DiagramMeasures.Spread(want, own, low, high);
            for (var k = 0; k < side.Length; k++)
            {
                _round.At[side[k] % n] = at[k];
            }
        }

        return true;
    }
}
