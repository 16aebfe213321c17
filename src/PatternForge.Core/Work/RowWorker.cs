using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// Carries out the stitches of one row in one size on its needles. Goes on after a mistake as well as it can: what was missing is counted, so that
/// the message can say how many stitches the row needs.
/// </summary>
internal sealed class RowWorker
{
    private readonly SizeState _state;
    private readonly Choices _choices;
    private readonly Budget _budget;
    private readonly List<Problem> _problems;
    private readonly List<Reading> _readings;
    private int _missing;
    private int _used;
    private int _cableNeedle;
    private bool _boundOff;
    private bool _turned;
    private bool _slid;
    private bool _mayLeave;
    private bool _hasExtent;
    private bool _endsWithGroup;
    private bool _quiet;
    private bool _pickedUp;
    private bool _guessed;
    private Problem? _misfit;

    public RowWorker(SizeState state, Choices choices, Budget budget, List<Problem> problems, List<Reading> readings)
    {
        _state = state;
        _choices = choices;
        _budget = budget;
        _problems = problems;
        _readings = readings;
    }

    private Needles Needles => _state.Needles;

    /// <summary>Works the steps of one row to its end. <paramref name="stated"/> is the count that the row states for this size, if any.</summary>
    public void Work(ImmutableArray<Step> steps, TextSpan row, int? stated, bool hasBareGroup)
    {
        var before = _state.Save();
        var start = Needles.Count;
        NeedleEnds(steps);
        Steps(steps);
        if (_guessed && (_missing > 0 || _misfit is not null))
        {
            _problems.Add(new Problem(ProblemKind.Unknown, row));
            _state.IsKnown = false;
        }
        else if (_guessed)
        {
            Plain(Needles.LeftCount);
        }
        else if (_missing > 0 && _misfit is null)
        {
            Report(new Problem(ProblemKind.TooFew, row, _used + _missing, start));
            _state.IsKnown = false;
        }
        else if (_misfit is not null)
        {
            Report(_misfit);
            _state.IsKnown = false;
        }
        else if (Needles.LeftCount > 0 && !_mayLeave && !_turned)
        {
            LeftOver(steps, row, stated, start, before, hasBareGroup);
        }

        End();
    }

    /// <summary>Carries out steps that are no row: held stitches coming back, say.</summary>
    public void WorkLoose(ImmutableArray<Step> steps) => Steps(steps);

    /// <summary>True when every stitch of the steps takes one and makes one, or as many as it takes.</summary>
    public static bool KeepsCount(ImmutableArray<Step> steps) => steps.All(step => step switch
    {
        OperationStep operation => operation.Operation.Change == 0,
        RunStep run => run.Operation.Change == 0,
        GroupStep group => KeepsCount(group.Body),
        RepeatStep repeat => KeepsCount(repeat.Body) && KeepsCount(repeat.Ending),
        IncreaseStep or InOneStitchStep or CastOnStep or BindOffStep or HoldStep or ReturnStep or PickUpStep or SpreadStep or RowsStep or UnreadStep => false,
        _ => true,
    });

    private void Report(Problem problem)
    {
        if (!_quiet)
        {
            _problems.Add(problem);
        }
    }

    /// <summary>The row is done: flat work is turned, a round begins again.</summary>
    private void End()
    {
        if (_slid)
        {
            Needles.Restart();
        }
        else if (_turned)
        {
            // already turned
        }
        else if (_state.InTheRound)
        {
            Needles.Restart();
        }
        else
        {
            Needles.Turn();
        }

        _state.NextSide = _state.InTheRound || _slid || _turned ? _state.NextSide : Other(_state.NextSide);
    }

    public static FabricSide? Other(FabricSide? side) => side switch
    {
        FabricSide.Right => FabricSide.Wrong,
        FabricSide.Wrong => FabricSide.Right,
        _ => null,
    };

    /// <summary>Where the row speaks of needles and their ends are not known, the usual division is set up: the count does not depend on it.</summary>
    private void NeedleEnds(ImmutableArray<Step> steps)
    {
        var needles = steps.Count(s => s is NeedleStep);
        var ends = CountNeedleTargets(steps, 0);
        var wanted = Math.Max(needles, ends);
        if (wanted == 0 || Needles.Has(PlaceMark.NeedleEnd) || Needles.LeftCount < wanted * 2 || wanted > 8)
        {
            return;
        }

        var total = Needles.LeftCount;
        if (wanted == 3)
        {
            Needles.PlaceAhead(PlaceMark.NeedleEnd, total / 4);
            Needles.PlaceAhead(PlaceMark.NeedleEnd, (total / 4) + (total / 2));
            return;
        }

        for (var i = 1; i < wanted; i++)
        {
            Needles.PlaceAhead(PlaceMark.NeedleEnd, total * i / wanted);
        }
    }

    private static int CountNeedleTargets(ImmutableArray<Step> steps, int depth)
    {
        var count = 0;
        foreach (var step in steps)
        {
            count += step switch
            {
                RunStep { To.Extent: Extent.Needle } => 1,
                GroupStep group when depth < 4 => CountNeedleTargets(group.Body, depth + 1) * Math.Clamp(group.Times?[0] ?? 1, 1, 8),
                _ => 0,
            };
        }

        return Math.Min(count, 8);
    }

    private void Steps(ImmutableArray<Step> steps)
    {
        for (var i = 0; i < steps.Length; i++)
        {
            if (!_budget.Spend())
            {
                Report(new Problem(ProblemKind.TooLarge, steps[i].Origin, 2));
                _state.IsKnown = false;
                return;
            }

            if (Needles.Count > _budget.MostStitches)
            {
                Report(new Problem(ProblemKind.TooLarge, steps[i].Origin, 0));
                _state.IsKnown = false;
                _budget.Stop();
                return;
            }

            var ended = _endsWithGroup;
            One(steps, i);
            _endsWithGroup = steps[i] is GroupStep or MarkerStep or RepeatStep { To: null } || (ended && steps[i] is RemarkStep or SentenceStep);
        }
    }

    private void One(ImmutableArray<Step> steps, int at)
    {
        var step = steps[at];
        switch (step)
        {
            case OperationStep operation:
                Operation(operation);
                break;
            case IncreaseStep increase:
                Increase(increase);
                break;
            case RunStep run:
                Run(run);
                break;
            case GroupStep group:
                Group(group);
                break;
            case RepeatStep repeat:
                Repeat(repeat);
                break;
            case InOneStitchStep one:
                InOne(one);
                break;
            case MarkerStep marker:
                Marker(marker);
                break;
            case TurnStep:
                if (Needles.LeftCount > 0 || Needles.RightCount > 0)
                {
                    _turned = true;
                    _mayLeave = true;
                    if (Needles.LeftCount == 0 && at == LastWork(steps))
                    {
                        _turned = false; // "turn" at the end of a whole row
                    }
                    else
                    {
                        Needles.Turn();
                        _state.NextSide = Other(_state.NextSide);
                    }
                }

                break;
            case SlideStep:
                _slid = true;
                break;
            case CastOnStep cast:
                CastOn(cast);
                break;
            case BindOffStep bindOff:
                BindOff(bindOff);
                break;
            case HoldStep hold:
                Hold(hold);
                break;
            case ReturnStep back:
                Return(back);
                break;
            case PickUpStep pick:
                Needles.Put(StitchKind.CastOn, pick.Stitches[_state.Size] ?? 0);
                _turned = false;
                _pickedUp = true;
                break;
            case CableNeedleStep cable:
                CableNeedle(cable);
                break;
            case SpreadStep spread:
                Spread(spread);
                break;
            case JoinStep join:
                _state.InTheRound = join.IntoRound;
                break;
            case SentenceStep when Needles.LeftCount == 0 && Needles.RightCount > 0 && NeedsStitches(steps, at + 1):
                End();
                _turned = false;
                _mayLeave = false;
                break;
            case NeedleStep:
                Needles.SlipMark(PlaceMark.NeedleEnd, keep: true);
                break;
        }

        if (step is not (RemarkStep or SentenceStep or BindOffStep or MarkerStep))
        {
            _boundOff &= step is OperationStep && false;
        }

        if (step is OperationStep or RunStep or GroupStep or RepeatStep)
        {
            _turned &= false;
        }
    }

    private static int LastWork(ImmutableArray<Step> steps)
    {
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            if (steps[i] is not (RemarkStep or SentenceStep))
            {
                return i;
            }
        }

        return -1;
    }

    private static bool NeedsStitches(ImmutableArray<Step> steps, int from)
    {
        for (var i = from; i < steps.Length; i++)
        {
            switch (steps[i])
            {
                case OperationStep or RunStep or GroupStep or RepeatStep or BindOffStep { Stitches: not null } or HoldStep { FromRight: false }:
                    return true;
                case TurnStep or PickUpStep:
                    return false;
            }
        }

        return false;
    }

    private int Take(int count)
    {
        _used += count;
        var taken = Needles.Take(count);
        while (taken < count && _state.InTheRound && (_mayLeave || _pickedUp) && Needles.RightCount > 0)
        {
            Needles.BringRound(count - taken);
            taken += Needles.Take(count - taken);
        }

        if (taken < count)
        {
            _used -= count - taken;
            _missing += count - taken;
        }

        return taken;
    }

    private void Apply(Operation operation, int times)
    {
        if (times <= 0)
        {
            return;
        }

        if ((long)operation.Takes * times > int.MaxValue / 2 || (long)operation.Makes * times > int.MaxValue / 2 || times > _budget.MostStitches * 4)
        {
            _missing += operation.Takes > 0 ? (int)Math.Min((long)operation.Takes * times - Needles.LeftCount, 1_000_000_000) : 0;
            if (operation.Takes == 0)
            {
                Needles.Put(operation.Gives, _budget.MostStitches + 1);
            }

            return;
        }

        for (var left = times; left > 0;)
        {
            // Up to the next mark at once, so that marks keep their places among the stitches.
            var run = operation.Takes == 0 ? left : Math.Clamp(Needles.DistanceToMark() / operation.Takes, 1, left);
            if (operation.Takes > 0)
            {
                Take(operation.Takes * run);
            }

            Needles.Put(operation.Gives, operation.Makes * run);
            left -= run;
            if (Needles.LeftCount == 0 && left > 0 && operation.Takes > 0)
            {
                Take(operation.Takes * left);
                Needles.Put(operation.Gives, operation.Makes * left);
                break;
            }
        }

        if (operation.PassesOver > 0)
        {
            Needles.Drop(operation.PassesOver * times);
        }
    }

    private void Operation(OperationStep step)
    {
        var times = step.Times is null ? 1 : step.Times[_state.Size] ?? 0;
        if (_boundOff && step.Times is not null && times > 0 && step.Operation is { Takes: 1, Makes: 1 } && _choices.Take(step.Origin, ReadingKind.AfterBindOff) == 0)
        {
            // The stitch that binding off left on the right needle is the first of these.
            times--;
        }

        _boundOff = false;
        Apply(step.Operation, times);
    }

    private void Increase(IncreaseStep step)
    {
        _boundOff = false;
        var between = _choices.Take(step.Origin, ReadingKind.IncreaseBetween) == 1;
        if (between)
        {
            _readings.Add(new Reading(ReadingKind.IncreaseBetween, step.Origin));
        }

        Apply(between ? step.Between : step.Into, step.Times is null ? 1 : step.Times[_state.Size] ?? 0);
    }

    private void Run(RunStep step)
    {
        _boundOff = false;
        _hasExtent |= step.To.Extent is Extent.End or Extent.LastStitches;
        if (Distance(step.To, step.Origin) is not { } distance)
        {
            return;
        }

        var takes = step.Operation.Takes;
        if (takes == 0)
        {
            Report(new Problem(ProblemKind.Endless, step.Origin));
            _state.IsKnown = false;
            return;
        }

        if (distance < 0)
        {
            _missing -= distance;
            return;
        }

        if (distance % takes != 0 && step.To.Extent != Extent.End)
        {
            _misfit ??= new Problem(ProblemKind.Misfit, step.Origin, takes, distance, distance / takes, distance % takes);
        }
        else if (distance % takes != 0)
        {
            _remainder = new Problem(ProblemKind.Misfit, step.Origin, takes, distance, distance / takes, distance % takes);
        }

        Apply(step.Operation, distance / takes);
    }

    private Problem? _remainder;

    /// <summary>Stitches from here to a place; negative where the place has been passed; null, with a problem, where there is no such place.</summary>
    private int? Distance(Target target, TextSpan origin)
    {
        var before = target.Stitches is null ? 0 : target.Stitches[_state.Size] ?? 0;
        switch (target.Extent)
        {
            case Extent.End:
                return Needles.LeftCount;
            case Extent.LastStitches:
                return Needles.LeftCount - before;
            case Extent.OnRightNeedle:
                return before - Needles.RightCount;
            case Extent.LastMarker:
                if (Needles.DistanceToLast(PlaceMark.Marker) is { } last)
                {
                    return last - before;
                }

                break;
            case Extent.Marker:
                if (Needles.DistanceTo(PlaceMark.Marker, before, target.MarkerName) is { } marker
                    || (target.MarkerName is not null && Needles.DistanceTo(PlaceMark.Marker, before, null) is { } unnamed && (marker = unnamed) >= 0))
                {
                    return marker - before;
                }

                if (_state is { InTheRound: true, KnowsPlaces: true } && Needles.LeftCount >= before && (Needles.LeftCount > 0 || before == 0))
                {
                    return Needles.LeftCount - before; // the start of the round counts as a marker
                }

                break;
            case Extent.Gap:
                if (Needles.DistanceTo(PlaceMark.Gap, before, null) is { } gap)
                {
                    return gap - before;
                }

                _state.KnowsPlaces = false;
                break;
            case Extent.Needle:
                return (Needles.DistanceTo(PlaceMark.NeedleEnd, before, null) ?? Needles.LeftCount) - before;
        }

        if (_state.KnowsPlaces)
        {
            Report(new Problem(ProblemKind.NoMarker, origin, before));
            _mayLeave = true;
            _state.IsKnown = false;
            return null;
        }

        // Where the marker is does not matter to the count as long as the rest of the row is worked to its end.
        _guessed = true;
        return 0;
    }

    private void Group(GroupStep group)
    {
        var times = group.Times is null ? 1 : group.Times[_state.Size] ?? 0;
        for (var i = 0; i < times; i++)
        {
            var made = Needles.Count;
            Steps(group.Body);
            if (_budget.IsSpent || (_missing > _budget.MostStitches && made == Needles.Count))
            {
                return;
            }

            if (_missing > 0 && Needles.LeftCount == 0 && times - i > 1000)
            {
                // Nothing is left and more is asked: the rest needs so many stitches for each time.
                _missing = (int)Math.Min(1_000_000_000, _missing + ((long)(times - i - 1) * Math.Max(1, Takes(group.Body))));
                return;
            }
        }
    }

    private int Takes(ImmutableArray<Step> body)
    {
        var probe = Probe(body);
        return probe?.Takes ?? 1;
    }

    private void Repeat(RepeatStep repeat)
    {
        if (repeat.Times is not null)
        {
            var times = repeat.Times[_state.Size] ?? 0;
            var more = repeat.IsMore;
            if (repeat.IsTwoWays)
            {
                more = _choices.Take(repeat.Origin, ReadingKind.InAll) == 0;
                _readings.Add(new Reading(more ? ReadingKind.More : ReadingKind.InAll, repeat.Origin));
            }

            Group(new GroupStep(repeat.Origin, repeat.Body, new Amount(PerSize.Shared<int?>(more ? (int)Math.Min((long)times + 1, int.MaxValue) : times), repeat.Origin)));
            Steps(repeat.Ending);
            return;
        }

        _hasExtent = true;
        if (repeat.Ending.IsEmpty)
        {
            RepeatTo(repeat, 0);
        }
        else
        {
            WithEnding(repeat);
        }
    }

    /// <summary>Repeats a body until exactly a tail is left; reports when it does not fit.</summary>
    private void RepeatTo(RepeatStep repeat, int tail)
    {
        if (Distance(repeat.To!, repeat.Origin) is not { } distance)
        {
            return;
        }

        var stop = Needles.LeftCount - distance + tail;
        var available = Needles.LeftCount - stop;
        if (available < 0)
        {
            _missing -= available;
            return;
        }

        var times = 0;
        var size = 0;
        while (Needles.LeftCount > stop)
        {
            var left = Needles.LeftCount;
            var saved = _state.Save();
            var (missing, used) = (_missing, _used);
            Steps(repeat.Body);
            if (_budget.IsSpent || !_state.IsKnown)
            {
                return;
            }

            if (_missing > missing || Needles.LeftCount < stop)
            {
                var needs = left - Needles.LeftCount + _missing - missing;
                (_missing, _used) = (missing, used);
                _state.Restore(saved);
                _misfit ??= new Problem(ProblemKind.Misfit, repeat.Origin, size > 0 ? size : needs, available, times, left - stop);
                Needles.Take(left - stop);
                Needles.Put(StitchKind.InPattern, left - stop);
                return;
            }

            if (Needles.LeftCount == left)
            {
                Report(new Problem(ProblemKind.Endless, repeat.Origin));
                _state.IsKnown = false;
                return;
            }

            size = left - Needles.LeftCount;
            times++;
        }
    }

    /// <summary>"..., ending X": whole repeats and X as a tail; else X in place of the end of the last repeat; whichever fits.</summary>
    private void WithEnding(RepeatStep repeat)
    {
        if (Probe(repeat.Body) is not { Takes: > 0 } body || Probe(repeat.Ending) is not { } ending)
        {
            _state.IsKnown = false;
            _problems.Add(new Problem(ProblemKind.Unknown, repeat.Origin));
            _mayLeave = true;
            return;
        }

        var available = Needles.LeftCount;
        if (!repeat.EndsLastRepeat && available >= ending.Takes && (available - ending.Takes) % body.Takes == 0)
        {
            RepeatTo(repeat, ending.Takes);
            Steps(repeat.Ending);
            return;
        }

        for (var keep = repeat.Body.Length - 1; keep >= 1; keep--)
        {
            var prefix = repeat.Body[..keep];
            if (Probe(prefix) is not { } head)
            {
                break;
            }

            var last = head.Takes + ending.Takes;
            if (available >= last && (available - last) % body.Takes == 0)
            {
                _readings.Add(new Reading(ReadingKind.CutRepeat, repeat.Origin));
                RepeatTo(repeat, last);
                Steps(prefix);
                Steps(repeat.Ending);
                return;
            }
        }

        var rest = Math.Max(0, available - ending.Takes);
        _misfit ??= new Problem(ProblemKind.Misfit, repeat.Origin, body.Takes, rest, rest / body.Takes, rest % body.Takes);
    }

    /// <summary>The change that steps make on a long plain needle; null where that depends on places.</summary>
    public int? ChangeOf(ImmutableArray<Step> steps) => Probe(steps) is { } probed ? probed.Makes - probed.Takes : null;

    private sealed record Probed(int Takes, int Makes);

    /// <summary>What steps take and make on a long plain needle; null where that depends on places.</summary>
    private Probed? Probe(ImmutableArray<Step> steps)
    {
        const int Plenty = 20_000;
        var state = new SizeState(_state.Size) { IsKnown = true, InTheRound = _state.InTheRound };
        state.Needles.PutLeft(StitchKind.InPattern, Plenty);
        var problems = new List<Problem>();
        var worker = new RowWorker(state, _choices, _budget, problems, []);
        worker.Steps(steps);
        return problems.Count == 0 && worker._missing == 0 && !worker._hasExtent && worker._misfit is null ? new Probed(Plenty - state.Needles.LeftCount, state.Needles.RightCount) : null;
    }

    private void InOne(InOneStitchStep step)
    {
        var times = Math.Min(step.Times is null ? 1 : step.Times[_state.Size] ?? 0, _budget.MostStitches);
        if (Probe(step.Body) is not { } made)
        {
            _state.IsKnown = false;
            return;
        }

        Take(times);
        Needles.Put(StitchKind.Increase, (int)Math.Min((long)made.Makes * times, _budget.MostStitches + 1));
    }

    private void Marker(MarkerStep step)
    {
        switch (step.Action)
        {
            case MarkerAction.Place:
                Needles.Place(PlaceMark.Marker, step.Name);
                break;
            case MarkerAction.Slip:
                Needles.SlipMark(PlaceMark.Marker, keep: true);
                break;
            default:
                Needles.SlipMark(PlaceMark.Marker, keep: false);
                break;
        }
    }

    private void CastOn(CastOnStep step)
    {
        var count = step.Stitches[_state.Size] ?? 0;
        if (step.AtEnd || Needles.RightCount > 0 || _used > 0)
        {
            Needles.Put(StitchKind.CastOn, count);
        }
        else
        {
            Needles.PutLeft(StitchKind.CastOn, count);
        }
    }

    private void BindOff(BindOffStep step)
    {
        _boundOff = false;
        if (step.Stitches is null)
        {
            if (step.Claimed?[_state.Size] is { } named && named != Needles.Count)
            {
                Report(new Problem(ProblemKind.NamedCount, step.Origin, named, Needles.Count));
            }

            Needles.Clear();
            return;
        }

        var count = step.Stitches[_state.Size] ?? 0;
        if (count == 0)
        {
            return;
        }

        var inTheMiddle = Needles.RightCount > 0;
        Take(count);
        if (inTheMiddle && Needles.LeftCount > 0)
        {
            Needles.Place(PlaceMark.Gap);
        }

        if (Needles.LeftCount > 0)
        {
            Needles.Take(1);
            _used++;
            Needles.Put(StitchKind.Knit, 1);
            _boundOff = true;
        }
    }

    private void Hold(HoldStep step)
    {
        var count = step.Stitches?[_state.Size];
        if (step.Stitches is not null && count is null)
        {
            return;
        }

        if (step.FromRight)
        {
            var held = Math.Min(count ?? Needles.RightCount, _budget.MostStitches);
            var dropped = Needles.Drop(held);
            if (dropped < held)
            {
                _missing += held - dropped;
            }

            _state.Held.Add(dropped);
        }
        else
        {
            var wanted = count ?? Needles.LeftCount;
            var left = Needles.LeftCount;
            _used += Math.Min(wanted, left);
            if (wanted > left)
            {
                _missing += wanted - left;
            }

            Needles.Take(Math.Min(wanted, left));
            _state.Held.Add(Math.Min(wanted, left));
        }

        _boundOff = false;
    }

    private void Return(ReturnStep step)
    {
        if (_state.Held.Count == 0)
        {
            if (step.Stitches?[_state.Size] is { } said)
            {
                Needles.PutLeft(StitchKind.InPattern, Math.Min(said, _budget.MostStitches));
            }
            else
            {
                _state.IsKnown = false;
            }

            return;
        }

        var held = _state.Held[0];
        if (step.Stitches?[_state.Size] is { } wanted && _state.Held.IndexOf(wanted) is var at and >= 0)
        {
            held = wanted;
            _state.Held.RemoveAt(at);
        }
        else
        {
            _state.Held.RemoveAt(0);
        }

        Needles.PutLeft(StitchKind.InPattern, held);
    }

    private void CableNeedle(CableNeedleStep step)
    {
        var count = Math.Min(step.Stitches?[_state.Size] ?? 0, _budget.MostStitches);
        if (step.WorkedAs is null)
        {
            Take(count);
            _cableNeedle += count;
            return;
        }

        var there = Math.Min(count, _cableNeedle);
        _cableNeedle -= there;
        _missing += count - there;
        Needles.Put(StitchKind.Cable, count);
    }

    private void Spread(SpreadStep step)
    {
        var change = step.Change[_state.Size] ?? 0;
        if (change >= 0)
        {
            Needles.Put(StitchKind.Increase, Math.Min(change, _budget.MostStitches + 1));
            return;
        }

        var lost = Needles.Drop(-change);
        lost += Needles.Take(-change - lost);
        if (lost < -change)
        {
            _missing += -change - lost;
        }
    }

    /// <summary>Stitches are left and nobody said to leave them: the readings of NOTATION 2 in their order, else a mistake.</summary>
    private void LeftOver(ImmutableArray<Step> steps, TextSpan row, int? stated, int start, SizeState.Snapshot before, bool hasBareGroup)
    {
        var left = Needles.LeftCount;
        if (_remainder is not null && stated == Needles.Count)
        {
            _readings.Add(new Reading(ReadingKind.OnePlain, row));
            Plain(left);
            return;
        }

        if (_remainder is not null)
        {
            Report(_remainder);
            _state.IsKnown = false;
            return;
        }

        if (!_hasExtent && Implied(steps, stated, before))
        {
            _readings.Add(new Reading(ReadingKind.Implied, row));
            return;
        }

        if (stated == Needles.Count && _endsWithGroup)
        {
            _readings.Add(new Reading(ReadingKind.RestPlain, row));
            Plain(left);
            return;
        }

        if (_used == 0 && Needles.RightCount == Needles.Count - left && !steps.Any(s => s is OperationStep or RunStep or GroupStep or RepeatStep or BindOffStep or HoldStep or InOneStitchStep or IncreaseStep))
        {
            return; // nothing was worked: markers, joins, stitches cast on
        }

        Report(new Problem(ProblemKind.LeftOver, row, _used, _used + left, hasBareGroup ? 1 : 0));
        _state.IsKnown = false;
    }

    private void Plain(int count)
    {
        Needles.Take(count);
        Needles.Put(StitchKind.Knit, count);
    }

    /// <summary>"K8, k2tog" over 80: the row again and again, if that comes out exactly.</summary>
    private bool Implied(ImmutableArray<Step> steps, int? stated, SizeState.Snapshot before)
    {
        if (steps.Any(s => s is HoldStep or BindOffStep or CastOnStep or PickUpStep or MarkerStep { Action: MarkerAction.Place } or TurnStep or SpreadStep or RunStep or NeedleStep))
        {
            return false;
        }

        var after = _state.Save();
        var missing = _missing;
        while (Needles.LeftCount > 0)
        {
            var left = Needles.LeftCount;
            _quiet = true;
            Steps(steps);
            _quiet = false;
            if (_missing > missing || Needles.LeftCount >= left || _budget.IsSpent)
            {
                _missing = missing;
                _state.Restore(after);
                return false;
            }
        }

        if (stated is { } claim && claim != Needles.Count)
        {
            _state.Restore(after);
            return false;
        }

        _ = before;
        return true;
    }
}
