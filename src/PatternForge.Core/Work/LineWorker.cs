using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>Works one row of a line in one size: its stitches row by row, and the steps that stand for whole rows.</summary>
internal sealed class LineWorker
{
    private int _rows;

    private LineWorker(Trial trial, int rows)
    {
        Trial = trial;
        _rows = rows;
    }

    public Trial Trial { get; }

    private SizeState State => Trial.State;

    /// <summary>Works the row as often as its label says. The state is left as the work leaves it.</summary>
    /// <param name="row">The row.</param>
    /// <param name="state">The work of the size.</param>
    /// <param name="choices">The readings to take.</param>
    /// <param name="budget">What it may cost.</param>
    /// <param name="notes">Where to write down what each clause does; null for nowhere.</param>
    public static RowOutcome Work(BoundRow row, SizeState state, Choices choices, Budget budget, ClauseNotes? notes = null)
    {
        var outcome = new RowOutcome { Before = state.IsKnown ? state.Count : null, Notes = notes };
        var worker = new LineWorker(new Trial(state, choices, budget, outcome) { Notes = notes }, 0);
        worker.Work(row);
        outcome.After = state.IsKnown ? state.Count : null;
        outcome.Made = state.Live.Below;
        return outcome;
    }

    private void Work(BoundRow row)
    {
        var times = Times(row, State);
        if (times > Trial.Budget.MostRows)
        {
            Trial.Lose(new Problem(ProblemKind.TooLarge, row.Origin, 1));
            return;
        }

        var said = row.IsRange ? OnlyStep(row) : null;
        if (said is RepeatRowsStep { Until: RowsUntil.Open } open)
        {
            // "Rows 7-10: Rep Rows 1-4": the label says how many.
            new RepeatedRows(this).Through(open, times);
            return;
        }

        var covers = said is RepeatRowsStep or EvenRowsStep;
        var start = State.History.Count;
        for (var i = 0; i < (covers ? 1 : times); i++)
        {
            Once(row, row.Steps, Trial.Outcome.Before, 0);
            if (Trial.Outcome.Problems.Count > 0 && !State.IsKnown)
            {
                return;
            }
        }

        var made = State.History.Count - start;
        if (covers && said is RepeatRowsStep { Until: RowsUntil.Times } && Trial.Outcome.Problems.Count == 0 && row.LabelOrigin.Length > 0 && made != times)
        {
            Trial.Outcome.LabelRows = (times, made);
        }
    }

    /// <summary>The one step of a row beside remarks; null where there is none, or more.</summary>
    private static Step? OnlyStep(BoundRow row) =>
        StepCounts.First(row.Steps) is { } first && row.Steps.Count(s => s is not (RemarkStep or SentenceStep)) == 1 ? first : null;

    private static int Times(BoundRow row, SizeState state) => row.Count is not null ? row.Count[state.Size] ?? 0 : row.IsRange ? row.Numbers.Length : 1;

    /// <summary>Keeps a row that cannot be worked yet for later lines that refer to it.</summary>
    public static void Keep(BoundRow row, SizeState state, Budget budget)
    {
        var worker = new LineWorker(new Trial(state, Choices.First, budget, new RowOutcome()), 0);
        var times = Math.Min(Times(row, state), budget.MostRows);
        var before = state.History.Count;
        for (var i = 0; i < times && state.History.Count < budget.MostRows; i++)
        {
            worker.KeepOnce(row);
        }

        // One row turns flat work; of more, or of words for whole rows, it is not sure.
        if (state.History.Count != before + 1 || row.Steps.Any(s => s is RowsStep or TurnStep or SlideStep))
        {
            state.NextSide = null;
        }
        else if (!state.InTheRound)
        {
            state.TurnSide();
        }
    }

    private void KeepOnce(BoundRow row)
    {
        foreach (var even in row.Steps.OfType<EvenRowsStep>())
        {
            for (var i = 0; i < Math.Min(Trial.In(even.Rows) ?? 0, Trial.Budget.MostRows); i++)
            {
                Remember(new WorkedRow(row, []));
            }
        }

        ImmutableArray<Step> steps = [.. row.Steps.Where(s => s is not RowsStep)];
        if (StepCounts.MakeRow(steps) || row.HasUnread)
        {
            Remember(new WorkedRow(row, steps));
        }
    }

    /// <summary>Works a row's steps once, cut into physical rows and steps for whole rows.</summary>
    private void Once(BoundRow row, ImmutableArray<Step> steps, int? before, int depth)
    {
        var from = 0;
        for (var i = 0; i < steps.Length; i++)
        {
            if (steps[i] is not RowsStep rows)
            {
                continue;
            }

            var part = steps[from..i];
            var mark = Mark();
            Segment(row, part, stated: null);
            Note(part, mark);
            from = i + 1;
            mark = Mark();
            RowsOf(row, rows, depth);
            Note([rows], mark);
            if (!State.IsKnown)
            {
                return;
            }
        }

        var rest = from == 0 ? steps : steps[from..];
        var last = Mark();
        Segment(row, rest, Expected(row, before));
        Note(rest, last);
    }

    /// <summary>Where the work stands, for <see cref="Note"/>.</summary>
    private (int? Count, int Rows) Mark() => Trial.Notes is null ? default : (State.IsKnown ? State.Count : null, State.History.Count);

    /// <summary>Writes down what came of a part of the row, where that was asked for.</summary>
    private void Note(ImmutableArray<Step> part, (int? Count, int Rows) mark)
    {
        if (Trial.Notes is { } notes && !part.All(s => s is RemarkStep or SentenceStep))
        {
            notes.End(part[0].Origin.Cover(part[^1].Origin), mark.Count, State.IsKnown ? State.Count : null, State.History.Count - mark.Rows);
        }
    }

    /// <summary>Works an earlier row once more; what it meets is told apart.</summary>
    public RowOutcome OnceMore(WorkedRow worked, ImmutableArray<Step> steps, int depth)
    {
        var outcome = new RowOutcome();
        var nested = new LineWorker(Trial with { Outcome = outcome, Notes = null, Stitches = null }, _rows);
        nested.Once(worked.Row, steps, State.Count, depth);
        _rows = nested._rows;
        return outcome;
    }

    /// <summary>The count that a row states, as a total; null where it states none for this size.</summary>
    private int? Expected(BoundRow row, int? before)
    {
        return row.StatedIn(State.Size) ?? before + Last(row, ClaimKind.Change);
    }

    private int? Last(BoundRow row, ClaimKind kind)
    {
        for (var i = row.Claims.Length - 1; i >= 0; i--)
        {
            if (row.Claims[i].IsTrusted && row.Claims[i].Kind == kind)
            {
                return row.Claims[i].Values[State.Size];
            }
        }

        return null;
    }

    private void Segment(BoundRow row, ImmutableArray<Step> steps, int? stated)
    {
        if (steps.IsEmpty)
        {
            return;
        }

        if (steps[0] is NeedleCountStep && steps.All(s => s is NeedleCountStep))
        {
            NeedleSum(steps);
        }
        else if (StepCounts.MakeRow(steps))
        {
            State.Live.WorkRow(new RowTask(steps, row.Origin, stated, row.BareGroup), Trial);
            Remember(new WorkedRow(row, steps));
        }
        else
        {
            foreach (var step in steps)
            {
                var before = State.Count;
                Between(step);
                State.Tally?.Edge(row, step is CastOnStep or BindOffStep ? Math.Abs(State.Count - before) : 0);
            }
        }
    }

    private void Between(Step step)
    {
        if (step is SpreadStep spread)
        {
            new ShapedRows(this).Change(Trial.In(spread.Change) ?? 0, spread.Origin);
        }
        else
        {
            State.Live.Between(step, Trial);
        }
    }

    private void NeedleSum(ImmutableArray<Step> steps)
    {
        var sum = steps.OfType<NeedleCountStep>().Sum(s => (long)(Trial.In(s.Stitches) ?? 0));
        if (State.IsKnown && sum != State.Count)
        {
            Trial.Outcome.Problems.Add(new Problem(ProblemKind.NeedleSum, steps[0].Origin.Cover(steps[^1].Origin), (int)Math.Min(sum, int.MaxValue), State.Count));
        }
    }

    /// <summary>Notes that a physical row has been worked.</summary>
    public void Remember(WorkedRow row)
    {
        State.History.Add(row);
        State.Tally?.End(row.Row, State.Live);
        if (State.Log is { Count: < LoggedRow.Most } log)
        {
            log.Add(new LoggedRow(row.Row, State.IsKnown ? State.Count : null));
        }

        _rows++;
    }

    /// <summary>False, with a problem, when so many rows more are too many for one line.</summary>
    public bool HasRoom(long rows, TextSpan origin)
    {
        if (_rows + rows <= Trial.Budget.MostRows)
        {
            return true;
        }

        Trial.Lose(new Problem(ProblemKind.TooLarge, origin, 1));
        return false;
    }

    private void RowsOf(BoundRow row, RowsStep step, int depth)
    {
        switch (step)
        {
            case EvenRowsStep even:
                new ShapedRows(this).Even(row, even);
                break;
            case ShapingStep shaping:
                new ShapedRows(this).Shape(row, shaping);
                break;
            case AsPieceStep piece:
                AsPiece(piece);
                break;
            case MatchSideStep side:
                MatchSide(side);
                break;
            case ReachStep reach:
                new ShapedRows(this).Reach(reach);
                break;
            case StartStep start:
                Start(start);
                break;
            case RepeatRowsStep repeat:
                new RepeatedRows(this).Repeat(repeat, depth);
                break;
        }
    }

    /// <summary>The rows of another piece: the count that they left there.</summary>
    private void AsPiece(AsPieceStep piece)
    {
        if (State.Pieces.After(piece, State.Size) is not { } count)
        {
            Trial.Lose(new Problem(ProblemKind.Unknown, piece.Origin));
            return;
        }

        State.SetCount(count);
        State.NextSide = null;
    }

    /// <summary>The rows of the side worked first: this one must begin with as many stitches, and ends as that did: bound off, in crochet with the stitches that it was fastened off at.</summary>
    private void MatchSide(MatchSideStep side)
    {
        var crocheted = State.Live.FirstSide;
        if ((crocheted?.Begun ?? State.FirstSide) is not { } begun)
        {
            Trial.Lose(new Problem(ProblemKind.Unknown, side.Origin));
            return;
        }

        if (State.Count != begun)
        {
            Trial.Outcome.Problems.Add(new Problem(ProblemKind.SideDiffers, side.Origin, State.Count, begun));
        }

        if (crocheted is not null)
        {
            State.Live.EndAs(crocheted);
        }
        else
        {
            State.SetCount(0);
        }

        State.NextSide = null;
    }

    private void Start(StartStep start)
    {
        if (Trial.In(start.Stitches) is not { } count)
        {
            return;
        }

        if (count > Trial.Budget.MostStitches)
        {
            Trial.Lose(new Problem(ProblemKind.TooLarge, start.Origin, 0));
            return;
        }

        State.Live.Start(start, count, State);
        State.IsKnown = true;
        State.Agrees();
        State.StartsLate = State.History.Count > 0;
        State.InTheRound = start.InTheRound ?? State.InTheRound;
    }
}
