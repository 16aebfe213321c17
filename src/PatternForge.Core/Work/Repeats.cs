using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works brackets and starred repeats inside a row: so many times, up to a place, with an ending of their own.</summary>
internal sealed class Repeats
{
    private readonly RowRun _run;
    private readonly StepWorker _steps;

    public Repeats(RowRun run, StepWorker steps)
    {
        _run = run;
        _steps = steps;
    }

    public void Group(GroupStep group) => Times(group.Body, group.Times is null ? 1 : _run.In(group.Times) ?? 0);

    public void Repeat(RepeatStep repeat)
    {
        if (repeat.Times is not null)
        {
            var more = repeat.IsMore;
            if (repeat.IsTwoWays)
            {
                more = _run.Trial.Choices.Take(repeat.Origin, ReadingKind.InAll) == 0;
                _run.Read(more ? ReadingKind.More : ReadingKind.InAll, repeat);
            }

            var times = _run.In(repeat.Times) ?? 0;
            _run.Trial.Stitches?.Repeats();
            Times(repeat.Body, more && times < int.MaxValue ? times + 1 : times);
            _steps.Work(repeat.Ending);
            return;
        }

        _run.HasExtent = true;
        _run.Trial.Stitches?.Repeats();
        if (repeat.To is { Extent: Extent.OtherNeedle })
        {
            UntilOtherNeedleIsEmpty(repeat);
            return;
        }

        if (repeat.Ending.IsEmpty)
        {
            RepeatTo(repeat, 0);
        }
        else
        {
            WithEnding(repeat);
        }
    }

    private void Times(ImmutableArray<Step> body, int times)
    {
        var plain = Together(body);
        for (var i = 0; i < times; i++)
        {
            if (plain is not null && plain.Work(_run, times - i) is > 0 and var passes)
            {
                i += passes - 1;
                continue;
            }

            var made = _run.Needles.Count;
            _steps.Work(body);
            if (_run.Budget.IsSpent || (_run.Missing > _run.Budget.MostStitches && made == _run.Needles.Count))
            {
                return;
            }

            if (_run.Missing > 0 && _run.Needles.LeftCount == 0 && times - i > 1000)
            {
                // Nothing is left and more is asked: the rest needs so many stitches for each time.
                var each = Probed.Of(body, _run.Trial)?.Takes ?? 1;
                _run.Missing = (int)Math.Min(1_000_000_000, _run.Missing + ((long)(times - i - 1) * Math.Max(1, each)));
                return;
            }
        }
    }

    /// <summary>A pass of plain stitches, to work many at once; null where it is not that plain, or where each is written down.</summary>
    private PlainPass? Together(ImmutableArray<Step> body) => _run.Trial is { Notes: null, Stitches: null } ? PlainPass.Of(body, _run.State.Size) : null;

    /// <summary>Back and forth over a group of stitches until those of the other needle are all joined to it.</summary>
    private void UntilOtherNeedleIsEmpty(RepeatStep repeat)
    {
        for (var waiting = _run.Needles.RightCount; waiting > 0;)
        {
            var missing = _run.Missing;
            _steps.Work(repeat.Body);
            if (_run.Budget.IsSpent || !_run.State.IsKnown || _run.Missing > missing)
            {
                return;
            }

            if (_run.Needles.LeftCount == 0)
            {
                return; // the last of them has been joined; the turn is that of the row's end
            }

            if (_run.Needles.RightCount >= waiting)
            {
                _run.Lose(new Problem(ProblemKind.Endless, repeat.Origin));
                return;
            }

            waiting = _run.Needles.RightCount;
        }
    }

    /// <summary>Repeats a body until exactly a tail is left; reports when it does not fit.</summary>
    private void RepeatTo(RepeatStep repeat, int tail)
    {
        if (Places.Distance(_run, repeat.To!, repeat.Origin) is not { } distance)
        {
            return;
        }

        var needles = _run.Needles;
        var plain = Together(repeat.Body);
        var stop = needles.LeftCount - distance + tail;
        var available = needles.LeftCount - stop;
        if (available < 0)
        {
            _run.Missing -= available;
            return;
        }

        var times = 0;
        var size = 0;
        while (needles.LeftCount > stop)
        {
            var left = needles.LeftCount;
            if (plain is not null && plain.Work(_run, (left - stop) / plain.Takes) is > 0 and var passes)
            {
                (times, size) = (times + passes, plain.Takes);
                continue;
            }

            var before = RepeatPoint.Of(_run);
            _steps.Work(repeat.Body);
            if (_run.Budget.IsSpent || !_run.State.IsKnown)
            {
                needles.TakeOutLifeline();
                return;
            }

            if (_run.Guessed)
            {
                // How often it is worked depends on markers whose places are not known.
                needles.TakeOutLifeline();
                _run.Trial.Lose(new Problem(ProblemKind.Unknown, repeat.Origin));
                return;
            }

            if (_run.Missing > before.Missing || needles.LeftCount < stop)
            {
                var needs = left - needles.LeftCount + _run.Missing - before.Missing;
                before.RipBack(_run);
                needles.TakeOutLifeline();
                _run.Trial.Notes?.RipBack(left - stop);
                _run.Misfit ??= new Problem(ProblemKind.Misfit, repeat.Origin, size > 0 ? size : needs, available, times, left - stop);
                _run.Plain(left - stop);
                return;
            }

            needles.TakeOutLifeline();
            if (needles.LeftCount == left)
            {
                _run.Lose(new Problem(ProblemKind.Endless, repeat.Origin));
                return;
            }

            size = left - needles.LeftCount;
            times++;
        }
    }

    /// <summary>"..., ending X": whole repeats and X as a tail; else X in place of the end of the last repeat; whichever fits.</summary>
    private void WithEnding(RepeatStep repeat)
    {
        if (Probe(repeat.Body) is not { Takes: > 0 } body || Probe(repeat.Ending) is not { } ending)
        {
            _run.Trial.Lose(new Problem(ProblemKind.Unknown, repeat.Origin));
            _run.MayLeave = true;
            return;
        }

        var available = Places.Distance(_run, repeat.To!, repeat.Origin) ?? 0;
        if (!repeat.EndsLastRepeat && available >= ending.Takes && (available - ending.Takes) % body.Takes == 0)
        {
            RepeatTo(repeat, ending.Takes);
            _steps.Work(repeat.Ending);
            return;
        }

        // The ending stands for about as many steps as it has itself; to leave out more than that is no reading.
        var least = Math.Max(1, repeat.Body.Length - repeat.Ending.Length - 1);
        for (var keep = repeat.Body.Length - 1; keep >= least; keep--)
        {
            var prefix = repeat.Body[..keep];
            if (Probe(prefix) is not { } head)
            {
                break;
            }

            var last = head.Takes + ending.Takes;
            if (available >= last && (available - last) % body.Takes == 0)
            {
                _run.Read(ReadingKind.CutRepeat, repeat);
                RepeatTo(repeat, last);
                _steps.Work(prefix);
                _steps.Work(repeat.Ending);
                return;
            }
        }

        var rest = Math.Max(0, available - ending.Takes);
        _run.Misfit ??= new Problem(ProblemKind.Misfit, repeat.Origin, body.Takes, rest, rest / body.Takes, rest % body.Takes);
    }

    private Probed? Probe(ImmutableArray<Step> steps) => Probed.Of(steps, _run.Trial);
}
