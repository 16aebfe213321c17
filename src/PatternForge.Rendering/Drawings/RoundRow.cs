using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>One round while it is laid out. Lengths go in the order of work; a round worked the other way is laid out in a mirror.</summary>
internal sealed class RoundRow
{
    /// <summary>How often a round is made larger before it is left as it is.</summary>
    public const int MostTries = 400;

    private const double Clear = 8;
    private const double Outside = 19;

    public RoundLayout All { get; }
    private readonly DiagramRow _row;
    public int Index { get; }
    private readonly DiagramRowMarks _marks;
    public List<DiagramHead> Heads { get; }
    public double[] At { get; }
    private readonly double[] _out;
    public bool IsMirrored { get; }
    private readonly int _chainsAfter;
    public RoundContour Contour { get; set; } = new(1, 0, 0, 1);

    public RoundRow(RoundLayout all, DiagramRow row, int number)
    {
        (All, _row, Index, IsMirrored) = (all, row, number, !row.IsFront);
        _marks = new DiagramRowMarks(row, number);
        _marks.Fan(isRound: true);
        Heads = [.. _marks.Heads.Where(h => !h.Closes)];
        At = new double[Heads.Count];
        _out = new double[Heads.Count];
        _chainsAfter = _marks.ChainsAfter + _marks.Heads.Where(h => h.Closes).Sum(h => h.ChainsBefore + (int)DiagramMeasures.ChainsOf(h.Mark.Stitch.Stitch));
    }

    /// <summary>From the last stitch to the first: room for the number where the round is not a plain one.</summary>
    private double WrapGap => Heads[0].IsBeside ? DiagramMeasures.Pitch * (IsOutermost && !IsTall ? 0.9 : 1.5) : Math.Max(DiagramMeasures.Gap(_chainsAfter), _marks.Spaces.Count > 0 || All.Corners[Index].Length > 0 ? DiagramMeasures.Pitch * 1.35 : 0);

    private bool IsTall => Heads.Find(h => !h.IsBeside) is { } first && DiagramMeasures.HeightOf(first.Mark.Stitch) > 24;

    /// <summary>True for the last round of a motif with corners, which it may begin in: there is little room between its last stitch and its first.</summary>
    private bool IsOutermost => Index == All.Corners.Length - 1 && All.Corners[Index].Length > 0;

    public void Make()
    {
        if (Heads.Count == 0)
        {
            return;
        }

        if (All.Corners[Index].Length > 0)
        {
            new RoundSides(this).Lay();
            All.WasCircle = false;
        }
        else
        {
            Circle();
        }

        Put();
    }

    private Spot Mirror(Spot spot) => IsMirrored ? spot with { Y = -spot.Y } : spot;

    private Spot Point(double length, double farther) => Mirror(Contour.At(Contour.AngleAt(length), farther));

    /// <summary>The places in the round below, seen in the order of work.</summary>
    public List<Spot> Below(DiagramHead head) => [.. head.Mark.Stitch.Bases.Select(Place).OfType<Spot>().Select(Mirror)];

    private Spot? Place(DiagramBase place) => place.Top < 0 ? null
        : place.Kind == DiagramPlace.Below && place.Top < All.Tops.Length ? All.Tops[place.Top]
        : place.Kind == DiagramPlace.FreeSide && place.Top < All.Free.Length ? All.Free[place.Top] : null;

    /// <summary>How far from the centre a stitch stands on the round below.</summary>
    public double FloorOf(DiagramHead head)
    {
        var below = Below(head.IsBeside && Below(head).Count == 0 ? Heads[Math.Min(1, Heads.Count - 1)] : head);
        return below.Count == 0 ? All.FirstFloor : below.Max(All.LevelOf);
    }

    private double NaturalOf(DiagramHead head) => FloorOf(head) + DiagramMeasures.HeightOf(head.Mark.Stitch);

    public double[] Gaps() => [.. Heads.Select((h, i) => i == 0 ? WrapGap : h.GapBefore)];

    private void Circle()
    {
        var natural = Heads.Select(NaturalOf).ToArray();
        var gaps = Gaps();
        var need = gaps.Sum() * 1.02;
        var radius = natural.Average();
        var farther = Math.Max(0, ((need - (4 * All.Half)) / (2 * Math.PI)) - radius);
        for (var tries = 0; ; tries++)
        {
            Contour = new RoundContour(radius + farther, 0, 0, 1, All.Half);
            if ((All.Half == 0 && Evenly(gaps)) || OverPlaces(gaps) || tries > MostTries)
            {
                break;
            }

            farther += 3;
        }

        for (var i = 0; i < Heads.Count; i++)
        {
            _out[i] = natural[i] - radius;
        }
    }

    /// <summary>Plain rounds, and rounds in the ring: evenly, turned so that the stitches lean as little as can be. False where they would lean too much.</summary>
    private bool Evenly(double[] gaps)
    {
        var inRing = Heads.All(h => Below(h).Count == 0);
        if (!inRing && _marks.Spaces.Count > 0)
        {
            return false;
        }

        var scale = Contour.Length / gaps.Sum();
        var at = 0.0;
        for (var i = 0; i < Heads.Count; i++)
        {
            at += i == 0 ? 0 : gaps[i] * scale;
            At[i] = at;
        }

        if (inRing)
        {
            Shift(Contour.LengthTo(Math.PI / 2));
            return true;
        }

        var leans = new List<double>();
        foreach (var (head, i) in Heads.Select((h, i) => (h, i)))
        {
            if (Below(head) is { Count: > 0 } below)
            {
                var lean = Contour.LengthTo(Mean(below)) - At[i];
                lean -= leans.Count == 0 ? 0 : Math.Round((lean - leans[^1]) / Contour.Length) * Contour.Length;
                leans.Add(lean);
            }
        }

        var turn = leans.Average();
        if (leans.Max(l => Math.Abs(l - turn)) > DiagramMeasures.Pitch * 2.6)
        {
            return false;
        }

        Shift(turn);
        return true;
    }

    private void Shift(double by)
    {
        for (var i = 0; i < At.Length; i++)
        {
            At[i] += by;
        }
    }

    /// <summary>Each over its place; false where they do not fit.</summary>
    private bool OverPlaces(double[] gaps)
    {
        var wanted = Wanted();
        var at = DiagramMeasures.Spread(wanted, gaps);
        at.CopyTo(At, 0);
        return at[^1] + gaps[0] <= at[0] + Contour.Length + 0.01;
    }

    /// <summary>Where each head would stand if there were room, in the order of work; places beyond the round's end go on counting.</summary>
    public double[] Wanted()
    {
        var wanted = new double[Heads.Count];
        double? last = null;
        for (var i = 0; i < wanted.Length; i++)
        {
            if (Heads[i].IsBeside || Below(Heads[i]) is not { Count: > 0 } below)
            {
                wanted[i] = double.NaN;
                continue;
            }

            var place = Contour.LengthTo(Contour.Over(Middle(below)));
            place += last is { } before ? Math.Ceiling((before - place - (Contour.Length / 2)) / Contour.Length) * Contour.Length : 0;
            last = place;
            wanted[i] = place + Heads[i].Fan;
        }

        for (var i = wanted.Length - 2; i >= 0; i--)
        {
            wanted[i] = double.IsNaN(wanted[i]) ? wanted[i + 1] - Heads[i + 1].GapBefore : wanted[i];
        }

        for (var i = 0; i < wanted.Length; i++)
        {
            wanted[i] = double.IsNaN(wanted[i]) ? i == 0 ? 0 : wanted[i - 1] + Heads[i].GapBefore : wanted[i];
        }

        return wanted;
    }

    private static double Mean(List<Spot> spots) => Middle(spots).Angle;

    private static Spot Middle(List<Spot> spots) => new(spots.Average(s => s.X), spots.Average(s => s.Y));

    /// <summary>Puts everything in its place.</summary>
    private void Put()
    {
        var tops = new Spot[_row.Tops];
        for (var i = 0; i < Heads.Count; i++)
        {
            var mark = Heads[i].Mark;
            mark.Head = Point(At[i], _out[i]);
            var below = Heads[i].IsBeside ? [] : Below(Heads[i]).Select(Mirror).ToList();
            mark.Feet.AddRange(below.Count > 0 ? below : [All.Under(mark.Head, FloorOf(Heads[i]))]);
            if (mark.Stitch.Mark is DiagramMark.TurningChain or DiagramMark.SkippedChains)
            {
                DiagramMeasures.Upright(mark);
            }

            if (mark.Stitch.Top >= 0)
            {
                tops[mark.Stitch.Top] = mark.Head;
            }
        }

        foreach (var head in _marks.Heads.Where(h => h.Closes))
        {
            head.Mark.Feet.Add(Heads[0].Mark.Head);
            head.Mark.Head = Point(At[0] + Contour.Length - (DiagramMeasures.HeightOf(head.Mark.Stitch) * 0.75), _out[0] + 8);
            tops[head.Mark.Stitch.Top] = head.Mark.Head;
        }

        foreach (var (mark, before, after) in _marks.Spaces)
        {
            if (before is not null)
            {
                Arc(mark, before, after < _marks.Heads.Count ? _marks.Heads[after] : null, tops);
            }
        }

        OnTop();
        Number();
        All.Layout.Marks.AddRange(_marks.All);
        All.Tops = tops;
        All.Ridge = [.. tops];
    }

    private void Arc(PlacedMark mark, DiagramHead before, DiagramHead? after, Spot[] tops)
    {
        var a = Heads.IndexOf(before);
        if (a < 0)
        {
            return;
        }

        var closes = after is { Closes: true };
        var b = after is null || closes ? 0 : Heads.IndexOf(after);
        var (from, to) = (At[a], At[b]);
        to += Math.Ceiling((from - to + 0.01) / Contour.Length) * Contour.Length;
        to -= closes ? DiagramMeasures.HeightOf(after!.Mark.Stitch) * 0.75 : 0;
        var (outFrom, outTo) = (_out[a], closes ? _out[0] + 8 : _out[b]);
        var step = Math.Min(6, (to - from) * 0.28);
        (from, to) = (from + step, to - (closes ? 0 : step));
        var rise = DiagramLayout.Rise(mark.Stitch.Chains, Point(from, outFrom).DistanceTo(Point(to, outTo)));
        foreach (var point in All.Ridge.Select(Mirror))
        {
            var length = Contour.LengthTo(Contour.AngleOf(point));
            length += Math.Ceiling((from - length) / Contour.Length) * Contour.Length;
            var t = (length - from) / (to - from);
            if (t is > 0.12 and < 0.88)
            {
                rise = Math.Max(rise, (Contour.Beyond(point) + Clear - (outFrom + ((outTo - outFrom) * t))) / (4 * t * (1 - t)));
            }
        }

        Spot Path(double t) => Point(from + ((to - from) * t), outFrom + ((outTo - outFrom) * t) + (4 * rise * t * (1 - t)));
        DiagramLayout.Along(mark, Path);
        mark.Feet.Add(Path(0));
        mark.Head = Path(0.5);
        tops[mark.Stitch.Top] = mark.Head + Spot.At(All.OutwardAt(mark.Head), 3.5);
    }

    private void OnTop()
    {
        foreach (var (mark, before) in _marks.OnTop)
        {
            switch (mark.Stitch.Mark)
            {
                case DiagramMark.Picot:
                    var on = (before ?? Heads[0]).Mark.Head;
                    DiagramLayout.Picot(mark, on, All.OutwardAt(on));
                    break;
                case DiagramMark.Join:
                    var first = Heads.Find(h => !h.IsBeside) is { } counted ? Heads.IndexOf(counted) : 0;
                    mark.Head = Point(At[first] - (first == 0 ? 7.5 : 5.5), _out[first]);
                    mark.Feet.Add(mark.Head);
                    break;
                default:
                    var place = mark.Stitch.Bases is [{ Kind: DiagramPlace.Below } below] && below.Top < All.Tops.Length ? All.Tops[below.Top] : Spot.At(Heads[0].Mark.Head.Angle, All.FirstFloor);
                    mark.Feet.Add(place);
                    mark.Head = mark.Stitch.Mark == DiagramMark.NewYarn ? place.Turned((IsMirrored ? 1 : -1) * 9 / place.Length) : place + Spot.At(All.OutwardAt(place), 2.5);
                    break;
            }
        }
    }

    /// <summary>The round's number stands between its last stitch and its first.</summary>
    private void Number()
    {
        if (_row.Number is { } number && Heads.Exists(h => !h.IsBeside))
        {
            if (IsOutermost && !IsTall)
            {
                // Nothing stands outside it.
                var beyond = (Heads[0].Mark.Head + Heads[^1].Mark.Head) * 0.5;
                All.Layout.Numbers.Add(new RowNumber(beyond + Spot.At(All.OutwardAt(beyond), Outside), number.ToString(CultureInfo.InvariantCulture), Index));
                return;
            }

            // Between tall stems higher up, where there is more room; under chains between the stems, or in their loop where the stitches are short.
            var isTall = IsTall;
            var share = _chainsAfter > 0 ? isTall ? 0.45 : 1.2 : isTall ? 0.8 : 0.5;
            Spot Half(int i) => All.Under(Heads[i].Mark.Head, (share * All.LevelOf(Heads[i].Mark.Head)) + ((1 - share) * All.LevelOf(Heads[i].Mark.Feet[0])));
            var at = (Half(0) + Half(Heads.Count - 1)) * 0.5;
            All.Layout.Numbers.Add(new RowNumber(at, number.ToString(CultureInfo.InvariantCulture), Index));
        }
    }
}
