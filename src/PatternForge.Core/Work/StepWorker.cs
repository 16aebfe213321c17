using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Carries out the steps of a row one after the other.</summary>
internal sealed class StepWorker
{
    private readonly RowRun _run;
    private readonly Repeats _repeats;

    public StepWorker(RowRun run)
    {
        _run = run;
        _repeats = new Repeats(run, this);
    }

    public void Work(ImmutableArray<Step> steps)
    {
        _run.Trial.Notes?.Enter(steps);
        Each(steps);
        _run.Trial.Notes?.Leave();
    }

    private void Each(ImmutableArray<Step> steps)
    {
        for (var i = 0; i < steps.Length; i++)
        {
            if (!_run.Budget.Spend())
            {
                _run.TooLarge ??= new Problem(ProblemKind.TooLarge, steps[i].Origin, 2);
                return;
            }

            if (_run.Needles.Count > _run.Budget.MostStitches)
            {
                _run.TooLarge ??= new Problem(ProblemKind.TooLarge, steps[i].Origin, 0);
                _run.Budget.Stop();
                return;
            }

            if (_run.Trial.Stitches is { } stitches)
            {
                stitches.Colour = steps[i].Colour ?? stitches.Colour;
                stitches.YarnInFront = steps[i].YarnInFront;
            }

            var ended = _run.EndsWithGroup;
            if (_run.Trial.Notes is { } notes)
            {
                notes.Begin(steps[i], _run.Needles.LeftCount, _run.Needles.RightCount);
                One(steps, i);
                notes.Finish(_run.Needles.LeftCount, _run.Needles.RightCount);
            }
            else
            {
                One(steps, i);
            }

            _run.BoundOff &= steps[i] is RemarkStep or SentenceStep or BindOffStep or MarkerStep;
            _run.Turned &= !StepCounts.IsWork(steps[i]);
            _run.EndsWithGroup = steps[i] is GroupStep or MarkerStep or RepeatStep { To: null } || (ended && steps[i] is RemarkStep or SentenceStep);
        }
    }

    private void One(ImmutableArray<Step> steps, int at)
    {
        switch (steps[at])
        {
            case OperationStep operation:
                Operation(operation);
                break;
            case IncreaseStep increase:
                Increase(increase);
                break;
            case RunStep run:
                if (!RepeatsAll(steps, at, run))
                {
                    Run(run);
                }

                break;
            case GroupStep group:
                _repeats.Group(group);
                break;
            case RepeatStep repeat:
                _repeats.Repeat(repeat);
                break;
            case InOneStitchStep one:
                InOne(one);
                break;
            case PatternRowStep pattern:
                PatternRows.Work(_run, pattern);
                break;
            case TurnStep:
                Turn(steps, at);
                break;
            case SlideStep:
                _run.Slid = true;
                break;
            case JoinStep join:
                _run.State.InTheRound = join.IntoRound;
                break;
            case SentenceStep when _run.Needles is { LeftCount: 0, RightCount: > 0 } && StepCounts.NeedStitches(steps, at + 1):
                RowEnd.Turn(_run);
                _run.Trial.Stitches?.Spoil();
                _run.Turned = false;
                _run.MayLeave = false;
                break;
            default:
                if (steps[at] is SpreadStep or PickUpStep or AcrossPieceStep or HoldStep or ReturnStep or UncountedStep)
                {
                    _run.Trial.Stitches?.Spoil();
                }

                Edges.Work(_run, steps[at]);
                break;
        }
    }

    private void Operation(OperationStep step)
    {
        var times = step.Times is null ? 1 : _run.In(step.Times) ?? 0;
        if (_run.BoundOff && step.Times is not null && times > 0 && step.Operation is { Takes: 1, Makes: 1 } && _run.Trial.Choices.Take(step.Origin, ReadingKind.AfterBindOff) == 0)
        {
            // The stitch that binding off left on the right needle is the first of these.
            times--;
        }

        _run.Apply(step.Operation, times);
    }

    private void Increase(IncreaseStep step)
    {
        var between = _run.Trial.Choices.Take(step.Origin, ReadingKind.IncreaseBetween) == 1;
        if (between)
        {
            _run.Read(ReadingKind.IncreaseBetween, step);
        }

        _run.Apply(between ? step.Between : step.Into, step.Times is null ? 1 : _run.In(step.Times) ?? 0);
    }

    private void Run(RunStep step)
    {
        _run.HasExtent |= step.To.Extent is Extent.End or Extent.LastStitches;
        if (Places.Distance(_run, step.To, step.Origin) is not { } distance)
        {
            return;
        }

        var takes = step.Operation.Takes;
        if (takes == 0)
        {
            _run.Lose(new Problem(ProblemKind.Endless, step.Origin));
            return;
        }

        if (distance < 0)
        {
            _run.Missing -= distance;
            return;
        }

        if (distance % takes != 0)
        {
            var over = new Problem(ProblemKind.Misfit, step.Origin, takes, distance, distance / takes, distance % takes);
            if (step.To.Extent == Extent.End)
            {
                _run.Remainder = over;
            }
            else
            {
                _run.Misfit ??= over;
            }
        }

        _run.Apply(step.Operation, distance / takes);
    }

    /// <summary>"K8, k2tog around": only the k2tog to the end, or all of it again and again; by what fits, else by how much stands before it.</summary>
    private bool RepeatsAll(ImmutableArray<Step> steps, int at, RunStep run)
    {
        var from = at;
        while (from > 0 && steps[from - 1] is OperationStep or GroupStep or IncreaseStep)
        {
            from--;
        }

        var isAll = from == 0 || steps[from - 1] is SentenceStep;
        if (from == at || !isAll || run.To.Extent != Extent.End || run.Operation is { Takes: 1, Makes: 1 } || run.Operation.Takes == 0 || at != StepCounts.LastWork(steps))
        {
            return false;
        }

        var body = steps[from..at].Add(new OperationStep(run.Origin, run.Operation, null));
        var usual = _run.Used > 2 ? 0 : 1;
        if (_run.Trial.Choices.Take(run.Origin, ReadingKind.WholeRepeated) != usual)
        {
            return false;
        }

        _run.Read(ReadingKind.WholeRepeated, run);
        _run.Apply(run.Operation, 1);
        _repeats.Repeat(new RepeatStep(run.Origin, body) { To = run.To });
        return true;
    }

    /// <summary>Several stitches worked into one.</summary>
    private void InOne(InOneStitchStep step)
    {
        var times = Math.Min(step.Times is null ? 1 : _run.In(step.Times) ?? 0, _run.Budget.MostStitches);
        if (Probed.Of(step.Body, _run.Trial) is not { } made)
        {
            _run.State.IsKnown = false;
            return;
        }

        _run.Trial.Stitches?.IntoOne(step, made, times);
        _run.Take(times);
        _run.Needles.Put(StitchKind.Increase, (int)Math.Min((long)made.Makes * times, _run.Budget.MostStitches + 1));
    }

    // "Turn" at the end of a whole row is what the end of a row does anyway.
    private void Turn(ImmutableArray<Step> steps, int at)
    {
        if (_run.Needles.Count == 0)
        {
            return;
        }

        _run.MayLeave = true;
        _run.Turned = _run.Needles.LeftCount > 0 || at != StepCounts.LastWork(steps);
        if (_run.Turned)
        {
            _run.Trial.Stitches?.Spoil();
            _run.Needles.Turn();
            _run.State.TurnSide();
        }
    }
}
