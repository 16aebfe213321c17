using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>
/// One pass of a repeat of plain stitches: what it takes, and what it makes, as runs. Nothing in it depends on places or readings, so that many passes
/// over stitches without marks can be worked at once, to the same stitches as one after the other.
/// </summary>
internal sealed class PlainPass
{
    private const int MostSteps = 64;
    private const int MostStitches = 1_000;

    private readonly List<Run> _makes = [];
    private int _made;
    private int _steps;
    private int _rise;

    private PlainPass()
    {
    }

    /// <summary>Stitches that a pass takes; at least one.</summary>
    public int Takes { get; private set; }

    /// <summary>A pass of these steps; null where something in them is not that plain.</summary>
    public static PlainPass? Of(ImmutableArray<Step> body, int size)
    {
        foreach (var step in body)
        {
            if (step is not (OperationStep or GroupStep or RemarkStep))
            {
                return null;
            }
        }

        var pass = new PlainPass();
        return pass.Steps(body, size) && pass.Takes > 0 ? pass : null;
    }

    /// <summary>Works up to so many passes; gives how many it was, 0 where the next pass has to be worked by its steps.</summary>
    public int Work(RowRun run, int most)
    {
        var needles = run.Needles;
        if (most <= 0 || run.BoundOff || run.Guessed || run.Missing > 0 || !run.State.IsKnown)
        {
            return 0;
        }

        // What there is room for first: it is cheaper to know than where the next mark is.
        var growth = Math.Max(0, _made - Takes);
        var room = run.Budget.MostStitches - needles.Count - _rise;
        var passes = Math.Min(most, run.Budget.Passes(_steps));
        passes = room < 0 ? 0 : growth == 0 ? passes : Math.Min(passes, room / growth);
        if (passes <= 0)
        {
            return 0;
        }

        passes = Math.Min(passes, needles.PlainAhead((int)Math.Min((long)passes * Takes, int.MaxValue)) / Takes);
        if (passes == 0)
        {
            return 0;
        }

        run.Budget.Spend(passes * _steps);

        run.Used += passes * Takes;
        run.Turned = false;
        needles.Take(passes * Takes);
        for (var pass = 0; pass < passes; pass++)
        {
            foreach (var made in _makes)
            {
                needles.Put(made.Kind, made.Count);
            }
        }

        return passes;
    }

    private bool Steps(ImmutableArray<Step> steps, int size)
    {
        foreach (var step in steps)
        {
            _rise = Math.Max(_rise, _made - Takes);
            if (++_steps > MostSteps || Takes > MostStitches || _made > MostStitches)
            {
                return false;
            }

            switch (step)
            {
                case RemarkStep:
                    break;
                case OperationStep operation when Times(operation.Times, size) is { } times && Make(operation.Operation, times):
                    break;
                case GroupStep group when Times(group.Times, size) is { } times:
                    for (var i = 0; i < times; i++)
                    {
                        if (!Steps(group.Body, size))
                        {
                            return false;
                        }
                    }

                    break;
                default:
                    return false;
            }
        }

        return true;
    }

    private static int? Times(Amount? amount, int size) => amount is null ? 1 : (amount[size] ?? 0) is >= 0 and <= MostStitches and var times ? times : null;

    private bool Make(Operation operation, int times)
    {
        var (takes, makes, passedOver) = (operation.Takes * times, operation.Makes * times, operation.PassesOver * times);
        Takes += takes;
        _made += makes - passedOver;
        if (makes > 0)
        {
            if (_makes.Count > 0 && _makes[^1].Kind == operation.Gives)
            {
                _makes[^1] = _makes[^1] with { Count = _makes[^1].Count + makes };
            }
            else
            {
                _makes.Add(new Run(operation.Gives, makes));
            }
        }

        while (passedOver > 0 && _makes.Count > 0)
        {
            var part = Math.Min(_makes[^1].Count, passedOver);
            passedOver -= part;
            if (part == _makes[^1].Count)
            {
                _makes.RemoveAt(_makes.Count - 1);
            }
            else
            {
                _makes[^1] = _makes[^1] with { Count = _makes[^1].Count - part };
            }
        }

        return passedOver == 0; // else it passes over stitches that were there before
    }
}
