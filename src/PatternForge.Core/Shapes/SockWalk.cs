using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>
/// A sock from the cuff down: leg in rounds, a heel flap on half of its stitches, the turn in short rows, stitches picked up along the flap, gussets that take them
/// away again, foot and toe in rounds. Goes through it in one size.
/// </summary>
internal sealed class SockWalk
{
    // A heel has about half of the stitches (common practice); another share is another thing that is left on a holder.
    private const decimal LeastShare = 0.35m;
    private const decimal MostShare = 0.65m;

    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly int _size;
    private readonly Gauge _gauge;
    private readonly int _flap;
    private readonly int _gusset;
    private readonly SockStretches _stretches;
    private string? _reason;

    public SockWalk(ShapedPiece piece, (int Flap, int Gusset) parts, int size, int sizes, Gauge gauge)
    {
        (_lines, (_flap, _gusset), _size, _gauge) = (piece.Lines, parts, size, gauge);
        _stretches = new SockStretches(piece.Lines, size, sizes, gauge);
    }

    /// <summary>Why it came to no end, as the end of a sentence.</summary>
    public string? Reason => _reason ?? _stretches.Reason;

    /// <summary>The lines where the flap and the gusset begin; null where this is no sock of that kind.</summary>
    public static (int Flap, int Gusset)? PartsOf(ImmutableArray<ShapedLine> lines)
    {
        var flap = Enumerable.Range(1, lines.Length - 1).FirstOrDefault(i => lines[i].Holds == 1, -1);
        var gusset = flap < 2 ? -1 : Enumerable.Range(flap + 1, lines.Length - flap - 1).FirstOrDefault(i => lines[i].Has<PickUpStep>(), -1);
        if (gusset < flap + 3 || !lines[1..flap].All(l => l.Worked.InTheRound == true || SockStretches.IsSilent(l)) || !lines[(gusset + 1)..].All(l => l.Worked.InTheRound == true || SockStretches.IsSilent(l)))
        {
            return null;
        }

        var line = lines[flap].Worked;
        var isHalf = Enumerable.Range(0, line.After.Length).All(s => line.Before[s] is not > 0 || line.After[s] is not { } after || (after >= LeastShare * line.Before[s] && after <= MostShare * line.Before[s]));
        return isHalf && lines[(flap + 1)..gusset].Any(l => l.Has<TurnStep>()) && lines[(flap + 1)..gusset].All(l => l.Worked.InTheRound != true) ? (flap, gusset) : null;
    }

    /// <summary>The outline; null, with a reason, where something about it is not known.</summary>
    public SizeOutline? Go()
    {
        if (_lines[0].Worked.After[_size] is not (> 0 and var start))
        {
            _reason = "it is not known how many stitches it begins with";
            return null;
        }

        var turn = Enumerable.Range(_flap + 1, _gusset - _flap - 1).First(i => _lines[i].Has<TurnStep>());
        var leg = _stretches.Of(1, _flap, 0, start, isRound: true);
        var flap = leg is null ? null : _stretches.Of(_flap, turn, 0, 0, isRound: false);
        var heel = flap is null ? null : _stretches.Of(turn, _gusset, 0, flap[^1].Stitches, isRound: false);
        var foot = heel is null ? null : _stretches.Of(_gusset, _lines.Length, heel[^1].Cm, 0, isRound: true);
        if (leg is null || flap is null || heel is null || foot is null)
        {
            return null;
        }

        // The gusset ends where the stitches do not get fewer for a while, and the toe begins where they do again.
        var most = foot.FindLastIndex(p => p.Stitches == foot.Max(f => f.Stitches));
        var even = Enumerable.Range(most + 1, foot.Count - most - 1).Where(i => foot[i].Stitches == foot[i - 1].Stitches).ToArray();
        var tip = foot[^1].Stitches;
        if (even.Length == 0 || tip >= foot[most].Stitches || leg[^1].Stitches <= 0 || flap[^1].Cm <= 0 || heel[^1].Cm <= 0)
        {
            _reason = "it is not plain where its gusset ends and its toe begins";
            return null;
        }

        var longest = even.MaxBy(i => foot[i].Cm - foot[i - 1].Cm);
        decimal Half(int stitches) => (_gauge.Across(stitches) ?? 0) / 2;
        var shape = new SockShape
        {
            LegPlaces = [.. leg.Select(p => new SockPlace(p.Cm, Half(p.Stitches)))],
            FlapCm = flap[^1].Cm,
            FlapHalfCm = Half(flap[^1].Stitches),
            CupCm = Half(heel[^1].Stitches),
            TurnCm = heel[^1].Cm,
            GussetEndCm = foot[longest - 1].Cm,
            FootPlaces = [.. foot.Skip(longest - 1).Select(p => new SockPlace(p.Cm, Half(p.Stitches)))],
            ToeFrom = 1,
        };
        return new SizeOutline([.. _stretches.Levels], []) { Sock = shape };
    }

    /// <summary>What a maker wants to know of it.</summary>
    /// <param name="sizes">The sock in every size.</param>
    public static ImmutableArray<OutlineMeasure> Measures(ImmutableArray<SizeOutline> sizes)
    {
        var isFlap = sizes.All(s => s.Sock!.MiddleHalfCm is null);
        OutlineMeasure Measure(string name, OutlineDirection direction, Func<SockShape, decimal> cm) => new(name, direction, 0, 0, [.. sizes.Select(s => cm(s.Sock!))]);
        return
        [
            Measure(SockShape.AroundLeg, OutlineDirection.Across, s => 2 * s.LegPlaces[0].HalfCm),
            Measure(SockShape.AroundFoot, OutlineDirection.Across, s => 2 * s.FootPlaces[0].HalfCm),
            Measure(isFlap ? SockShape.Leg : SockShape.LegToHeel, OutlineDirection.Along, s => s.LegCm),
            isFlap ? Measure(SockShape.Flap, OutlineDirection.Along, s => s.FlapCm) : Measure(SockShape.BackOfHeel, OutlineDirection.Along, s => s.CupCm),
            Measure(SockShape.Foot, OutlineDirection.Along, s => s.ToeFromCm),
            Measure(SockShape.Toe, OutlineDirection.Along, s => s.FootCm - s.ToeFromCm),
            Measure(SockShape.WholeFoot, OutlineDirection.Along, s => s.FootCm),
        ];
    }
}
