using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>
/// A sock whose heel is two halves of short rows, from the cuff down or from the toe up; its toe is worked in rounds that get fewer or more stitches, or is made of
/// short rows too. Goes through it in one size.
/// </summary>
internal sealed class ShortRowSockWalk
{
    // A toe begins or ends with no more than so much of the foot, and stitches that come and go along a foot leave it as wide as it is, within a tenth (common practice).
    private const decimal MostTip = 0.7m;
    private const decimal SameFoot = 0.9m;

    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly ImmutableArray<LineTally> _tallies;
    private readonly int _size;
    private readonly Gauge _gauge;
    private readonly SockStretches _stretches;
    private string? _reason;

    public ShortRowSockWalk(ShapedPiece piece, ImmutableArray<LineTally> tallies, int size, int sizes, Gauge gauge)
    {
        (_lines, _tallies, _size, _gauge) = (piece.Lines, tallies, size, gauge);
        _stretches = new SockStretches(piece.Lines, size, sizes, gauge);
    }

    /// <summary>Why it came to no end, as the end of a sentence.</summary>
    public string? Reason => _reason ?? _stretches.Reason;

    /// <summary>True where a heel of short rows stands between the rounds of a tube, in every size.</summary>
    public static bool Fits(ImmutableArray<ShapedLine> lines, ImmutableArray<LineTally> tallies, int sizes) =>
        lines.Any(l => l.Has<TurnStep>()) && Enumerable.Range(0, sizes).All(s => ShortRowCup.In(lines, tallies, s, Around(lines, s)) is { Length: 1 or 2 } cups && IsOrdered(lines, cups));

    /// <summary>The outline; null, with a reason, where something about it is not known.</summary>
    public SizeOutline? Go()
    {
        var cups = ShortRowCup.In(_lines, _tallies, _size, Around(_lines, _size))!.Value;
        var isToeFirst = cups[0].From == 1;
        var (heel, toe) = cups.Length == 1 ? (cups[0], null) : isToeFirst ? (cups[1], cups[0]) : (cups[0], cups[1]);
        var isUp = isToeFirst || (toe is null && Tip(_lines[0]) <= MostTip * Around(_lines, _size));
        if (!isUp && toe is null && Tip(_lines.LastOrDefault(l => l.Worked.After[_size] is > 0)) > MostTip * Around(_lines, _size))
        {
            _reason = "it is not plain at which end its toe is";
            return null;
        }

        var places = isUp ? Up(heel, toe) : Down(heel, toe);
        if (places is not var (leg, foot))
        {
            return null;
        }

        // The foot is its longest even stretch; where the stitches of a toe begin to change, it ends.
        var even = Enumerable.Range(1, foot.Count - 1).Where(i => foot[i].Stitches == foot[i - 1].Stitches).ToArray();
        var around = even.Length == 0 ? 0 : foot[even.MaxBy(i => foot[i].Cm - foot[i - 1].Cm)].Stitches;
        var toeFrom = toe is null ? foot.FindLastIndex(p => p.Stitches == around) : foot.Count - 2;
        if (toeFrom < 1 || toeFrom == foot.Count - 1 || foot[..toeFrom].Exists(p => p.Stitches < SameFoot * around || SameFoot * p.Stitches > around))
        {
            _reason = "it is not plain where its toe begins";
            return null;
        }

        decimal Half(decimal stitches) => (_gauge.Across(stitches) ?? 0) / 2;
        var shape = new SockShape
        {
            LegPlaces = [.. leg.Select(p => new SockPlace(p.Cm, Half(p.Stitches)))],
            FlapCm = 0,
            FlapHalfCm = Half(heel.Stitches),
            CupCm = Along(isUp ? heel.RowsOut : heel.RowsIn),
            TurnCm = foot[0].Cm,
            GussetEndCm = foot[0].Cm,
            MiddleHalfCm = Half(heel.Middle),
            FootPlaces = [.. foot.Select(p => new SockPlace(p.Cm, Half(p.Stitches)))],
            ToeFrom = toeFrom,
        };
        return new SizeOutline([.. _stretches.Levels], []) { Sock = shape };
    }

    /// <summary>From the cuff down: the leg from its upper edge, the foot from the back of the heel.</summary>
    private (List<(decimal Cm, int Stitches)> Leg, List<(decimal Cm, int Stitches)> Foot)? Down(ShortRowCup heel, ShortRowCup? toe)
    {
        var leg = _stretches.Of(1, heel.From, 0, _lines[0].Worked.After[_size] ?? 0, isRound: true);
        var foot = leg is null ? null : _stretches.Of(heel.To, toe?.From ?? _lines.Length, Along(heel.RowsOut), leg[^1].Stitches, isRound: true);
        if (leg is null || foot is null)
        {
            return null;
        }

        if (toe is not null)
        {
            foot.Add((foot[^1].Cm + Along(toe.RowsIn), 2 * toe.Middle));
        }

        return (leg, foot);
    }

    /// <summary>From the toe up: told as if it were worked from the cuff down.</summary>
    private (List<(decimal Cm, int Stitches)> Leg, List<(decimal Cm, int Stitches)> Foot)? Up(ShortRowCup heel, ShortRowCup? toe)
    {
        var tip = toe is null ? 0 : Along(toe.RowsIn);
        var foot = _stretches.Of(toe?.To ?? 1, heel.From, tip, toe is null ? _lines[0].Worked.After[_size] ?? 0 : 2 * toe.Stitches, isRound: true);
        var leg = foot is null ? null : _stretches.Of(heel.To, _lines.Length, 0, foot[^1].Stitches, isRound: true);
        if (leg is null || foot is null)
        {
            return null;
        }

        if (toe is not null)
        {
            foot.Insert(0, (0, 2 * toe.Middle));
        }

        var (whole, high) = (foot[^1].Cm + Along(heel.RowsIn), leg[^1].Cm);
        return ([.. leg.Select(p => (high - p.Cm, p.Stitches)).Reverse()], [.. foot.Select(p => (whole - p.Cm, p.Stitches)).Reverse()]);
    }

    private decimal Along(int rows) => _gauge.Along(rows) ?? 0;

    private int Tip(ShapedLine? line) => line?.Worked.After[_size] ?? 0;

    /// <summary>One heel between rounds, and a toe of short rows at one end at the most.</summary>
    private static bool IsOrdered(ImmutableArray<ShapedLine> lines, ImmutableArray<ShortRowCup> cups)
    {
        var isLastToe = cups.Length == 2 && lines[cups[1].To..].All(l => l.Worked.After.All(a => a is null or 0));
        return cups.Length == 1 ? cups[0].From > 1 && lines[cups[0].To..].Any(l => l.Worked.After.Any(a => a is > 0)) : cups[0].From == 1 ^ isLastToe;
    }

    private static int Around(ImmutableArray<ShapedLine> lines, int size) => lines.Max(l => l.Worked.After[size] ?? 0);
}
