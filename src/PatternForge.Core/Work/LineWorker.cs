using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>What one row came to in one size.</summary>
internal sealed class RowOutcome
{
    public List<Problem> Problems { get; } = [];

    public List<Reading> Readings { get; } = [];

    public int? Before { get; set; }

    public int? After { get; set; }

    /// <summary>Rows that the label names and rows that the words make, where they differ.</summary>
    public (int Label, int Made)? LabelRows { get; set; }
}

/// <summary>Works one row of a line in one size: its stitches row by row, and the steps that stand for whole rows.</summary>
internal sealed class LineWorker
{
    private const int MostDepth = 8;

    private readonly SizeState _state;
    private readonly Choices _choices;
    private readonly Budget _budget;
    private readonly RowOutcome _outcome;
    private int _rows;

    private LineWorker(SizeState state, Choices choices, Budget budget, RowOutcome outcome)
    {
        _state = state;
        _choices = choices;
        _budget = budget;
        _outcome = outcome;
    }

    /// <summary>Works the row as often as its label says. The state is left as the work leaves it.</summary>
    public static RowOutcome Work(BoundRow row, SizeState state, Choices choices, Budget budget)
    {
        var outcome = new RowOutcome { Before = state.IsKnown ? state.Count : null };
        var worker = new LineWorker(state, choices, budget, outcome);
        var times = row.Count is not null ? row.Count[state.Size] ?? 0 : row.IsRange ? row.Numbers.Length : 1;
        if (times > budget.MostRows)
        {
            outcome.Problems.Add(new Problem(ProblemKind.TooLarge, row.Origin, 1));
            state.IsKnown = false;
            return outcome;
        }

        var covers = row.Steps is [RepeatRowsStep or EvenRowsStep] && row.IsRange;
        var start = state.History.Count;
        for (var i = 0; i < (covers ? 1 : times); i++)
        {
            if (covers && row.Steps[0] is RepeatRowsStep { Until: RowsUntil.Open } open)
            {
                // "Rows 7-10: Rep Rows 1-4": the label says how many.
                worker.OpenRepeat(row, open, times);
                break;
            }

            worker.Once(row, row.Steps, outcome.Before, 0);
            if (outcome.Problems.Count > 0 && !state.IsKnown)
            {
                break;
            }
        }

        if (covers && row.Steps[0] is RepeatRowsStep { Until: RowsUntil.Times } && outcome.Problems.Count == 0 && row.LabelOrigin.Length > 0 && state.History.Count - start != times)
        {
            outcome.LabelRows = (times, state.History.Count - start);
        }

        outcome.After = state.IsKnown ? state.Count : null;
        return outcome;
    }

    private void OpenRepeat(BoundRow row, RepeatRowsStep step, int rows)
    {
        if (Rows(step) is not { Count: > 0 } cycle)
        {
            return;
        }

        for (var i = 0; i < rows && _state.IsKnown && _outcome.Problems.Count == 0; i++)
        {
            Again(cycle[i % cycle.Count], step, i + 1, 1);
        }

        _ = row;
    }

    /// <summary>Keeps a row that cannot be worked yet for later lines that refer to it.</summary>
    public static void Keep(BoundRow row, SizeState state, Budget budget)
    {
        var times = row.Count is not null ? row.Count[state.Size] ?? 0 : row.IsRange ? row.Numbers.Length : 1;
        var worker = new LineWorker(state, Choices.First, budget, new RowOutcome());
        for (var i = 0; i < Math.Min(times, budget.MostRows) && state.History.Count < budget.MostRows; i++)
        {
            worker.KeepOnce(row);
        }
    }

    private void KeepOnce(BoundRow row)
    {
        var segment = ImmutableArray.CreateBuilder<Step>();
        foreach (var step in row.Steps)
        {
            switch (step)
            {
                case EvenRowsStep even:
                    for (var i = 0; i < Math.Min(even.Rows?[_state.Size] ?? 0, _budget.MostRows); i++)
                    {
                        Remember(new WorkedRow(row, []));
                    }

                    break;
                case RowsStep:
                    break;
                default:
                    segment.Add(step);
                    break;
            }
        }

        if (IsRow(segment.ToImmutable()) || row.HasUnread)
        {
            Remember(new WorkedRow(row, segment.ToImmutable()));
        }
    }

    /// <summary>Works a row's steps once, cut into physical rows and steps for whole rows.</summary>
    private void Once(BoundRow row, ImmutableArray<Step> steps, int? before, int depth)
    {
        var segment = ImmutableArray.CreateBuilder<Step>();
        foreach (var step in steps)
        {
            if (step is not RowsStep rows)
            {
                segment.Add(step);
                continue;
            }

            Segment(row, segment, stated: null);
            RowsOf(row, rows, depth);
            if (!_state.IsKnown)
            {
                return;
            }
        }

        Segment(row, segment, Expected(row, before));
    }

    /// <summary>The count that a row states, as a total; null where it states none for this size.</summary>
    private int? Expected(BoundRow row, int? before)
    {
        var total = row.Claims.LastOrDefault(c => c is { IsTrusted: true, Kind: ClaimKind.Total })?.Values[_state.Size];
        var change = row.Claims.LastOrDefault(c => c is { IsTrusted: true, Kind: ClaimKind.Change })?.Values[_state.Size];
        return total ?? (change is { } by && before is { } from ? from + by : null);
    }

    private void Segment(BoundRow row, ImmutableArray<Step>.Builder segment, int? stated)
    {
        if (segment.Count == 0)
        {
            return;
        }

        var steps = segment.ToImmutable();
        segment.Clear();
        if (steps.All(s => s is NeedleCountStep))
        {
            NeedleSum(steps);
            return;
        }

        if (!IsRow(steps))
        {
            Bystanders(steps);
            return;
        }

        new RowWorker(_state, _choices, _budget, _outcome.Problems, _outcome.Readings).Work(steps, row.Origin, stated, row.HasBareGroup);
        Remember(new WorkedRow(row, steps));
    }

    private void NeedleSum(ImmutableArray<Step> steps)
    {
        var sum = steps.OfType<NeedleCountStep>().Sum(s => s.Stitches[_state.Size] ?? 0);
        if (_state.IsKnown && sum != _state.Count)
        {
            _outcome.Problems.Add(new Problem(ProblemKind.NeedleSum, steps[0].Origin.Cover(steps[^1].Origin), sum, _state.Count));
        }
    }

    /// <summary>True when the steps work a row; markers, joins, remarks, and stitches cast on to begin are none.</summary>
    private static bool IsRow(ImmutableArray<Step> steps) => steps.Any(s => s is not (RemarkStep or SentenceStep or MarkerStep or JoinStep or SlideStep or NeedleStep or NeedleCountStep or UnreadStep or CastOnStep or SpreadStep or ReturnStep or TurnStep))
        && !(steps.All(s => s is RemarkStep or SentenceStep or MarkerStep or JoinStep or SlideStep or CastOnStep or BindOffStep { Stitches: null, To: null } or ReturnStep or NeedleStep));

    /// <summary>Steps between rows: stitches cast on or bound off, a ring joined, markers placed.</summary>
    private void Bystanders(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            switch (step)
            {
                case CastOnStep cast:
                    _state.Needles.PutLeft(StitchKind.CastOn, Math.Min(cast.Stitches[_state.Size] ?? 0, _budget.MostStitches + 1));
                    if (_state.Count > _budget.MostStitches)
                    {
                        _outcome.Problems.Add(new Problem(ProblemKind.TooLarge, cast.Origin, 0));
                        _state.IsKnown = false;
                        return;
                    }

                    break;
                case BindOffStep bindOff:
                    if (bindOff.Claimed?[_state.Size] is { } named && named != _state.Count)
                    {
                        _outcome.Problems.Add(new Problem(ProblemKind.NamedCount, bindOff.Origin, named, _state.Count));
                    }

                    _state.Needles.Clear();
                    break;
                case SpreadStep spread:
                    Change(spread.Change[_state.Size] ?? 0, spread.Origin);
                    break;
                case MarkerStep { Action: MarkerAction.Place } marker:
                    _state.Needles.Place(PlaceMark.Marker, marker.Name);
                    break;
                case JoinStep join:
                    _state.InTheRound = join.IntoRound;
                    break;
                case ReturnStep:
                    new RowWorker(_state, _choices, _budget, _outcome.Problems, _outcome.Readings).WorkLoose([step]);
                    break;
                case TurnStep:
                    _state.Needles.Turn();
                    break;
            }
        }
    }

    private void Remember(WorkedRow row)
    {
        _state.History.Add(row);
        _rows++;
    }

    private void Change(int change, TextSpan origin)
    {
        if (change >= 0)
        {
            _state.Needles.PutLeft(StitchKind.Increase, Math.Min(change, _budget.MostStitches));
        }
        else if (-change > _state.Count)
        {
            _outcome.Problems.Add(new Problem(ProblemKind.Exhausted, origin, -change, _state.Count));
            _state.IsKnown = false;
        }
        else
        {
            var lost = _state.Needles.Take(-change);
            _state.Needles.Drop(-change - lost);
        }
    }

    private void RowsOf(BoundRow row, RowsStep step, int depth)
    {
        switch (step)
        {
            case EvenRowsStep even:
                Even(row, even);
                break;
            case ShapingStep shaping:
                Shaping(row, shaping);
                break;
            case StartStep start:
                Start(start);
                break;
            case RepeatRowsStep repeat:
                Repeat(repeat, depth);
                break;
        }
    }

    private void Even(BoundRow row, EvenRowsStep even)
    {
        if (even.Rows is null)
        {
            _state.NextSide = null;
            Settle();
            return;
        }

        var rows = even.Rows[_state.Size] ?? 0;
        if (!Room(rows, even.Origin))
        {
            return;
        }

        Settle();
        for (var i = 0; i < rows; i++)
        {
            Remember(new WorkedRow(row, []));
        }

        if (rows % 2 == 1)
        {
            FlipSide();
        }
    }

    /// <summary>Plain rows over everything: whatever was left by a short row is taken up again.</summary>
    private void Settle()
    {
        if (_state.Needles.RightCount > 0)
        {
            _state.Needles.Restart();
        }
    }

    private void FlipSide() => _state.NextSide = _state.InTheRound ? _state.NextSide : RowWorker.Other(_state.NextSide);

    private bool Room(long rows, TextSpan origin)
    {
        if (_rows + rows <= _budget.MostRows)
        {
            return true;
        }

        _outcome.Problems.Add(new Problem(ProblemKind.TooLarge, origin, 1));
        _state.IsKnown = false;
        return false;
    }

    private void Shaping(BoundRow row, ShapingStep shaping)
    {
        Settle();
        foreach (var stretch in shaping.Stretches)
        {
            var change = stretch.Change[_state.Size] ?? 0;
            int rows;
            if (stretch.ToCount is not null)
            {
                if (stretch.ToCount[_state.Size] is not { } target)
                {
                    continue;
                }

                if (change == 0 || (target - _state.Count) % change != 0 || (target - _state.Count) / change < 0)
                {
                    _outcome.Problems.Add(new Problem(ProblemKind.TargetMissed, shaping.Origin, target, _state.Count, change));
                    _state.IsKnown = false;
                    return;
                }

                rows = (target - _state.Count) / change;
            }
            else
            {
                rows = stretch.Rows?[_state.Size] ?? 0;
            }

            if (!Room(rows, shaping.Origin))
            {
                return;
            }

            var total = (long)change * rows;
            if (total < -_state.Count || total > _budget.MostStitches)
            {
                _outcome.Problems.Add(new Problem(total < 0 ? ProblemKind.Exhausted : ProblemKind.TooLarge, shaping.Origin, total < 0 ? (int)Math.Max(total, int.MinValue + 1) * -1 : 0, _state.Count));
                _state.IsKnown = false;
                return;
            }

            Change((int)total, shaping.Origin);
            var once = new WorkedRow(row, [new ShapingStep(shaping.Origin, [stretch with { Rows = new Amount(PerSize.Shared<int?>(1), shaping.Origin), ToCount = null }])]);
            for (var i = 0; i < rows; i++)
            {
                Remember(once);
            }
        }

        _state.NextSide = null;
    }

    private void Start(StartStep start)
    {
        if (start.Stitches[_state.Size] is not { } count)
        {
            return;
        }

        if (count > _budget.MostStitches)
        {
            _outcome.Problems.Add(new Problem(ProblemKind.TooLarge, start.Origin, 0));
            _state.IsKnown = false;
            return;
        }

        // The same count in hand keeps what is known of it: gaps, markers, which stitch is what.
        if (!(_state.IsKnown && _state.Count == count && start.Markers.IsEmpty && start.Needles.IsEmpty))
        {
            _state.Needles = new Needles();
            _state.Needles.PutLeft(StitchKind.InPattern, count);
            _state.KnowsPlaces = !start.Markers.IsEmpty || _state.History.Count == 0;
        }

        _state.IsKnown = true;
        _state.Drift = 0;
        _state.StartsLate = _state.History.Count > 0;
        foreach (var marker in start.Markers)
        {
            if (marker[_state.Size] is { } at and >= 0 && at <= count)
            {
                _state.Needles.PlaceAhead(PlaceMark.Marker, at);
            }
        }

        var ahead = 0;
        foreach (var needle in start.Needles.Length > 0 ? start.Needles[..^1] : [])
        {
            ahead += needle[_state.Size] ?? 0;
            _state.Needles.PlaceAhead(PlaceMark.NeedleEnd, Math.Min(ahead, count));
        }

        if (start.InTheRound is { } ring)
        {
            _state.InTheRound = ring;
        }
    }

    /// <summary>The rows that a reference means; null, with a problem, when one of them has not been given.</summary>
    private List<WorkedRow>? Rows(RepeatRowsStep step)
    {
        var rows = new List<WorkedRow>();
        if (step.Last is not null)
        {
            var last = step.Last[_state.Size] ?? 0;
            if (last > _state.History.Count)
            {
                if (!_state.StartsLate || _state.History.Count == 0)
                {
                    Missing(step, null);
                    return null;
                }

                // Rows before the starting line may be left out; what they would do is taken to be plain.
                last = _state.History.Count;
            }

            rows.AddRange(_state.History.GetRange(_state.History.Count - last, last));
            return rows;
        }

        if (step.Name is { } name)
        {
            if (!_state.Named.TryGetValue(name, out var named))
            {
                Missing(step, null);
                return null;
            }

            rows.Add(new WorkedRow(named, named.Steps));
            return rows;
        }

        foreach (var number in step.Numbers)
        {
            if (!_state.TryRow(number, out var row))
            {
                Missing(step, number);
                return null;
            }

            rows.Add(new WorkedRow(row, row.Steps));
        }

        return rows;
    }

    private void Missing(RepeatRowsStep step, int? number)
    {
        _outcome.Problems.Add(new Problem(ProblemKind.NoSuchRow, step.Reference, number ?? 0));
        _state.IsKnown = false;
    }

    private void Repeat(RepeatRowsStep step, int depth)
    {
        if (step.Value is not null && step.Value[_state.Size] is null)
        {
            return;
        }

        if (Rows(step) is not { } cycle || depth > MostDepth)
        {
            return;
        }

        if (cycle.Count == 0 || !_state.IsKnown)
        {
            return;
        }

        var start = _state.Count;
        if (step.Grows)
        {
            Grow(step, cycle);
            return;
        }

        switch (step.Until)
        {
            case RowsUntil.Times:
                var times = step.Value![_state.Size] ?? 0;
                if (!Room((long)times * cycle.Count, step.Origin))
                {
                    return;
                }

                for (var i = 1; i <= times; i++)
                {
                    if (!Cycle(cycle, step, i, depth))
                    {
                        return;
                    }
                }

                break;
            case RowsUntil.Count:
                var target = step.Value![_state.Size] ?? 0;
                for (var i = 1; _state.Count != target; i++)
                {
                    var now = _state.Count;
                    if (!Room(cycle.Count, step.Origin) || !Cycle(cycle, step, i, depth))
                    {
                        return;
                    }

                    var change = _state.Count - now;
                    if (change == 0 || (change > 0 ? _state.Count > target : _state.Count < target))
                    {
                        _outcome.Problems.Add(new Problem(ProblemKind.TargetMissed, step.Origin, target, start, change));
                        _state.IsKnown = false;
                        return;
                    }
                }

                break;
            default:
                // To a length, or open: once shows whether the count stays; if it does not, the result depends on the length.
                var side = _state.NextSide;
                if (!Cycle(cycle, step, 1, depth))
                {
                    return;
                }

                if (_state.Count != start && step.Until == RowsUntil.Length)
                {
                    _state.IsKnown = false;
                    _outcome.Problems.Add(new Problem(ProblemKind.Unknown, step.Origin));
                }

                _state.NextSide = step.Until == RowsUntil.Open && cycle.Count % 2 == 0 ? side : null;
                break;
        }

        if (step.WithPlainRows)
        {
            _state.NextSide = null;
        }
    }

    /// <summary>Rows whose numbers grow: what they change each time is all that can be known, and all that counts.</summary>
    private void Grow(RepeatRowsStep step, List<WorkedRow> cycle)
    {
        var worker = new RowWorker(_state, _choices, _budget, _outcome.Problems, _outcome.Readings);
        var change = 0;
        foreach (var row in cycle)
        {
            if (row.Steps.Any(s => s is RowsStep) || (worker.ChangeOf(row.Steps) ?? (RowWorker.KeepsCount(row.Steps) ? 0 : null)) is not { } by)
            {
                _outcome.Problems.Add(new Problem(ProblemKind.Unknown, step.Origin));
                _state.IsKnown = false;
                return;
            }

            change += by;
        }

        var total = (long)change * (step.Value?[_state.Size] ?? 0);
        if (step.Until != RowsUntil.Times || total < -_state.Count || total > _budget.MostStitches)
        {
            _outcome.Problems.Add(new Problem(step.Until == RowsUntil.Times ? ProblemKind.TooLarge : ProblemKind.Unknown, step.Origin));
            _state.IsKnown = false;
            return;
        }

        Settle();
        Change((int)total, step.Origin);
        _state.KnowsPlaces = false;
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
        if (!_budget.Spend() || depth > MostDepth)
        {
            _outcome.Problems.Add(new Problem(ProblemKind.TooLarge, step.Origin, 2));
            _state.IsKnown = false;
            return false;
        }

        if (worked.Steps.IsEmpty)
        {
            Settle();
            Remember(worked);
            FlipSide();
            return true;
        }

        var steps = step.Ending.IsEmpty ? worked.Steps : WithEnding(worked.Steps, step.Ending);
        if (_state.Failed.Contains(worked.Row))
        {
            Remember(worked); // its mistake has been told; what it does is not known
            return true;
        }

        var inner = new RowOutcome();
        var nested = new LineWorker(_state, _choices, _budget, inner) { _rows = _rows };
        var before = _state.History.Count;
        nested.Once(worked.Row, steps, _state.Count, depth);
        _rows += Math.Max(0, _state.History.Count - before);
        _outcome.Readings.AddRange(inner.Readings.Where(r => r.Kind is not (ReadingKind.Implied or ReadingKind.More or ReadingKind.InAll)));
        if (inner.Problems.Count > 0)
        {
            var first = inner.Problems[0];
            _outcome.Problems.Add(first with { Span = step.Origin, Text = first.Text, Pass = pass, Inner = worked.Row });
            return false;
        }

        return _state.IsKnown;
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
