using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works earlier rows again: "Rep Rows 1-4 twice more", "rep last 2 rows until 20 sts rem", "as Row 3".</summary>
internal sealed class RepeatedRows
{
    private const int MostDepth = 8;

    private readonly LineWorker _line;

    public RepeatedRows(LineWorker line) => _line = line;

    private Trial Trial => _line.Trial;

    private SizeState State => _line.Trial.State;

    /// <summary>Goes through the rows meant until so many have been worked: the label of the line says how many.</summary>
    public void Through(RepeatRowsStep step, int rows)
    {
        if (RowsMeant(step) is not { Count: > 0 } cycle)
        {
            return;
        }

        for (var i = 0; i < rows && State.IsKnown && Trial.Outcome.Problems.Count == 0; i++)
        {
            Again(cycle[i % cycle.Count], step, i + 1, 1);
        }
    }

    public void Repeat(RepeatRowsStep step, int depth)
    {
        if (depth > MostDepth || (step.Value is not null && Trial.In(step.Value) is null) || !FitsPattern(step) || RowsMeant(step) is not { Count: > 0 } cycle || !State.IsKnown)
        {
            return;
        }

        if (step.Grows)
        {
            Grow(step, cycle);
            return;
        }

        switch (step.Until)
        {
            case RowsUntil.Times:
                SoManyTimes(step, cycle, depth);
                break;
            case RowsUntil.Rows:
                SoManyRows(step, cycle, depth);
                break;
            case RowsUntil.Count:
                UntilCount(step, cycle, depth);
                break;
            default:
                AsLongAsSaid(step, cycle, depth);
                break;
        }

        if (step.WithPlainRows)
        {
            State.NextSide = null;
        }
    }

    private void SoManyTimes(RepeatRowsStep step, List<WorkedRow> cycle, int depth)
    {
        var times = Trial.In(step.Value) ?? 0;
        if (_line.HasRoom((long)times * cycle.Count, step.Origin))
        {
            for (var i = 1; i <= times && Cycle(cycle, step, i, depth); i++)
            {
            }
        }
    }

    private void SoManyRows(RepeatRowsStep step, List<WorkedRow> cycle, int depth)
    {
        var rows = Trial.In(step.Value) ?? 0;
        for (var i = 0; i < rows && _line.HasRoom(1, step.Origin) && Again(cycle[i % cycle.Count], step, (i / cycle.Count) + 1, depth + 1); i++)
        {
        }
    }

    /// <summary>False, with a problem, when the stitches there are are not those that the words name, or no multiple of the stitch pattern.</summary>
    private bool FitsPattern(RepeatRowsStep step)
    {
        if (step.Pattern is not { } pattern)
        {
            return true;
        }

        if (Trial.In(step.Named) is { } named && named != State.Count)
        {
            Trial.Outcome.Problems.Add(new Problem(ProblemKind.NamedCount, step.Origin, named, State.Count));
        }
        else if (!pattern.Fits(State.Count) && State.Live.Below is null)
        {
            // The rows would not come out; what the next lines start from is the same count.
            Trial.Outcome.Problems.Add(new Problem(ProblemKind.PatternMisfit, step.Origin, State.Count) { Pattern = pattern });
        }
        else
        {
            return true;
        }

        State.Live.Settle();
        State.NextSide = null;
        return false;
    }

    private void UntilCount(RepeatRowsStep step, List<WorkedRow> cycle, int depth)
    {
        var start = State.Count;
        var target = Trial.In(step.Value) ?? 0;
        for (var i = 1; State.Count != target; i++)
        {
            var now = State.Count;
            if (!_line.HasRoom(cycle.Count, step.Origin) || !Cycle(cycle, step, i, depth))
            {
                return;
            }

            var change = State.Count - now;
            if (change == 0 || (change > 0 ? State.Count > target : State.Count < target))
            {
                Trial.Lose(new Problem(ProblemKind.TargetMissed, step.Origin, target, start, change));
                return;
            }
        }
    }

    /// <summary>To a length, or open: once shows whether the count stays; if it does not, the result depends on the length.</summary>
    private void AsLongAsSaid(RepeatRowsStep step, List<WorkedRow> cycle, int depth)
    {
        var (side, start) = (State.NextSide, State.Count);
        if (!Cycle(cycle, step, 1, depth))
        {
            return;
        }

        if (State.Count != start && step.Until == RowsUntil.Length)
        {
            Trial.Lose(new Problem(ProblemKind.Unknown, step.Origin));
        }

        State.NextSide = step.Until == RowsUntil.Open && cycle.Count % 2 == 0 ? side : null;
    }

    /// <summary>Rows whose numbers grow: what they change each time is all that can be known, and all that counts.</summary>
    private void Grow(RepeatRowsStep step, List<WorkedRow> cycle)
    {
        var change = 0L;
        foreach (var row in cycle)
        {
            if (row.Steps.Any(s => s is RowsStep) || (State.Live.ChangeOf(row.Steps, Trial) ?? (StepCounts.Keeps(row.Steps) ? 0 : null)) is not { } by)
            {
                Trial.Lose(new Problem(ProblemKind.Unknown, step.Origin));
                return;
            }

            change += by;
        }

        var total = change * (Trial.In(step.Value) ?? 0);
        if (step.Until != RowsUntil.Times || total < -State.Count || total > Trial.Budget.MostStitches)
        {
            Trial.Lose(new Problem(step.Until == RowsUntil.Times ? ProblemKind.TooLarge : ProblemKind.Unknown, step.Origin));
            return;
        }

        State.Live.Settle();
        State.Live.Change((int)total);
        State.Live.ForgetPlaces();
    }

    /// <summary>The rows that a reference means; null, with a problem, when one of them has not been given.</summary>
    private List<WorkedRow>? RowsMeant(RepeatRowsStep step)
    {
        if (step.Last is not null)
        {
            return LastRows(step);
        }

        if (step.Pattern is { } pattern)
        {
            return State.Patterns.Rows(pattern, step.Numbers, out var missing) ?? Missing(step, missing);
        }

        if (step.Name is { } name)
        {
            return State.Named.TryGetValue(name, out var named) ? [new WorkedRow(named, OwnSteps(named))] : Missing(step, null);
        }

        var rows = new List<WorkedRow>();
        foreach (var number in step.Numbers)
        {
            if (!State.TryRow(number, out var row))
            {
                return Missing(step, number);
            }

            rows.Add(new WorkedRow(row, OwnSteps(row)));
        }

        return rows;
    }

    // "Row 1: *K2, p2; rep from * to end. Rep Row 1 for 2 in": the row is what stands before the words for whole rows.
    public static ImmutableArray<Step> OwnSteps(BoundRow row)
    {
        ImmutableArray<Step> own = [.. row.Steps.TakeWhile(s => s is not RowsStep)];
        return StepCounts.MakeRow(own) ? own : row.Steps;
    }

    private List<WorkedRow>? LastRows(RepeatRowsStep step)
    {
        var last = Trial.In(step.Last) ?? 0;
        if (last > State.History.Count)
        {
            if (!State.StartsLate || State.History.Count == 0)
            {
                return Missing(step, null);
            }

            // Rows before the starting line may be left out; what they would do is taken to be plain.
            last = State.History.Count;
        }

        return State.History.GetRange(State.History.Count - last, last);
    }

    private List<WorkedRow>? Missing(RepeatRowsStep step, int? number)
    {
        Trial.Lose(new Problem(ProblemKind.NoSuchRow, step.Reference, number ?? 0));
        return null;
    }

    private bool Cycle(List<WorkedRow> cycle, RepeatRowsStep step, int pass, int depth)
    {
        for (var i = 0; i < cycle.Count; i++)
        {
            if (!Again(cycle[i], i == cycle.Count - 1 ? step : step with { Ending = [] }, pass, depth + 1))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Works an earlier row again; its mistakes are told at the line that repeats it.</summary>
    private bool Again(WorkedRow worked, RepeatRowsStep step, int pass, int depth)
    {
        if (!Trial.Budget.Spend() || depth > MostDepth)
        {
            Trial.Lose(new Problem(ProblemKind.TooLarge, step.Origin, 2));
            return false;
        }

        if (worked.Steps.IsEmpty)
        {
            State.Live.Settle();
            _line.Remember(worked);
            if (!State.InTheRound)
            {
                State.TurnSide();
            }

            return true;
        }

        if (worked.Row.HasUnread)
        {
            Trial.Lose(new Problem(ProblemKind.Unknown, step.Origin)); // what was not understood is not understood the second time
            return false;
        }

        if (State.Failed.Contains(worked.Row))
        {
            _line.Remember(worked); // its mistake has been told; what it does is not known
            return true;
        }

        var again = _line.OnceMore(worked, step.Ending.IsEmpty ? worked.Steps : WithEnding(worked.Steps, step.Ending), depth);
        Trial.Outcome.Readings.AddRange(again.Readings.Where(r => r.Kind is not (ReadingKind.Implied or ReadingKind.More or ReadingKind.InAll)));
        if (again.Problems.Count > 0)
        {
            Trial.Outcome.Problems.Add(again.Problems[0] with { Span = step.Origin, Pass = pass, Inner = worked.Row });
            return false;
        }

        return State.IsKnown;
    }

    private static ImmutableArray<Step> WithEnding(ImmutableArray<Step> steps, ImmutableArray<Step> ending)
    {
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            if (steps[i] is RepeatStep { Times: null, Ending.IsEmpty: true } repeat)
            {
                return [.. steps[..i], repeat with { Ending = ending, To = new Target(Extent.End) }];
            }
        }

        return steps;
    }
}
