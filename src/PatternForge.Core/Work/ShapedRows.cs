using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>Rows that are told only by how many there are and what they change: worked even, or shaped.</summary>
internal sealed class ShapedRows
{
    private readonly LineWorker _line;

    public ShapedRows(LineWorker line) => _line = line;

    private Trial Trial => _line.Trial;

    private SizeState State => _line.Trial.State;

    /// <summary>So many rows in which the count stays.</summary>
    public void Even(BoundRow row, EvenRowsStep even)
    {
        var rows = even.Rows is null ? 0 : Trial.In(even.Rows) ?? 0;
        if (!_line.HasRoom(rows, even.Origin))
        {
            return;
        }

        if (Trial.In(even.Named) is { } named && named != State.Count)
        {
            Trial.Outcome.Problems.Add(new Problem(ProblemKind.NamedCount, even.Origin, named, State.Count));
        }

        State.Live.Settle();
        for (var i = 0; i < rows; i++)
        {
            _line.Remember(new WorkedRow(row, []));
        }

        if (even.Rows is null)
        {
            State.NextSide = null;
        }
        else if (rows % 2 == 1 && !State.InTheRound)
        {
            State.TurnSide();
        }
    }

    /// <summary>Stretches of shaping rows, one after the other.</summary>
    public void Shape(BoundRow row, ShapingStep shaping)
    {
        State.Live.Settle();
        foreach (var stretch in shaping.Stretches)
        {
            var change = Trial.In(stretch.Change) ?? 0;
            var rows = Trial.In(stretch.Rows) ?? 0;
            if (stretch.ToCount is not null)
            {
                if (Trial.In(stretch.ToCount) is not { } target)
                {
                    continue;
                }

                if (change == 0 || (target - State.Count) % change != 0 || (target - State.Count) / change < 0)
                {
                    Trial.Lose(new Problem(ProblemKind.TargetMissed, shaping.Origin, target, State.Count, change));
                    return;
                }

                rows = (target - State.Count) / change;
            }

            if (!_line.HasRoom(rows, shaping.Origin) || !Change((long)change * rows, shaping.Origin))
            {
                return;
            }

            var once = new WorkedRow(row, [new ShapingStep(shaping.Origin, [stretch with { Rows = new Amount(PerSize.Shared<int?>(1), shaping.Origin), ToCount = null }])]);
            for (var i = 0; i < rows; i++)
            {
                _line.Remember(once);
            }
        }

        State.NextSide = null;
    }

    /// <summary>The shaping in force goes on to a count, which must lie the way it goes.</summary>
    public void Reach(ReachStep reach)
    {
        if (Trial.In(reach.Stitches) is not { } target)
        {
            return;
        }

        if (reach.IsDecrease ? target > State.Count : target < State.Count)
        {
            Trial.Lose(new Problem(ProblemKind.TargetMissed, reach.Origin, target, State.Count, reach.IsDecrease ? -1 : 1));
            return;
        }

        State.Live.Settle();
        Change(target - State.Count, reach.Origin);
        State.Live.ForgetPlaces();
        State.NextSide = null;
    }

    /// <summary>So many stitches more or fewer, wherever they are; false, with a problem, when there are not so many.</summary>
    public bool Change(long change, TextSpan origin)
    {
        if (change < -State.Count)
        {
            Trial.Lose(new Problem(ProblemKind.Exhausted, origin, (int)Math.Min(-change, int.MaxValue), State.Count));
            return false;
        }

        if (change > Trial.Budget.MostStitches)
        {
            Trial.Lose(new Problem(ProblemKind.TooLarge, origin, 0));
            return false;
        }

        State.Live.Change((int)change);
        return true;
    }
}
