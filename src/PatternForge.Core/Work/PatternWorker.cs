using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works every line of a pattern in every size, in order, and says what does not add up.</summary>
public sealed class PatternWorker
{
    private const int MostNumbers = 10_000;

    private readonly SizeSet _sizes;
    private readonly FindingBag _bag;
    private readonly CompileOptions _options;
    private readonly SizeState[] _states;
    private readonly int[] _everySize;
    private readonly bool _isKnitting;
    private readonly RowMessages _messages;
    private readonly RowOrder _order;
    private int _section = -1;
    private readonly RowReadings _readings;
    private readonly CloseLook? _closeLook;
    private List<WorkedStretch>?[] _trace = [];
    private readonly decimal? _rowsPerCm;
    private readonly PieceBook _pieces = new();
    private int _sidesFrom = -1;
    private (BoundLine Line, int?[] Before)? _last;
    private (SizeState.Snapshot Work, WorkedRow[] History)[] _aside = [];

    private PatternWorker(PatternFacts facts, FindingBag bag, CompileOptions options, PatternBook patterns, CloseLook? closeLook)
    {
        _closeLook = closeLook;
        _sizes = facts.Sizes;
        _bag = bag;
        _options = options;
        _everySize = [.. Enumerable.Range(0, _sizes.Count)];
        _isKnitting = facts.Craft == Stitches.Craft.Knitting;
        var book = new TurningChainBook(TurningChainNotes.Of(facts));
        _states = [.. _everySize.Select(i => new SizeState(i, _isKnitting ? new NeedleWork() : new CrochetWork(book, facts.TermsInForce ?? Stitches.Dialect.Us, facts.Craft)) { Patterns = patterns, Pieces = _pieces, Log = closeLook is null && !YarnMention.Labels(facts).IsEmpty ? [] : null })];
        _rowsPerCm = facts.Gauges.FirstOrDefault(g => g.RowsPerCm is not null)?.RowsPerCm;
        _readings = new RowReadings(_states, options, _isKnitting);
        _order = new RowOrder(bag);
        _messages = new RowMessages(_sizes, bag, _order);
    }

    /// <summary>The lines, worked.</summary>
    public static ImmutableArray<WorkedLine> Work(ImmutableArray<BoundLine> lines, PatternFacts facts, FindingBag bag, CompileOptions options, CancellationToken cancel)
    {
        lines = MistypedNumbers.Mend(lines, bag);
        var patterns = PatternBook.Of(lines);
        var (worker, first) = (new PatternWorker(facts, bag, options, patterns, null), bag.Count);
        var worked = ImmutableArray.CreateBuilder<WorkedLine>(lines.Length);
        foreach (var line in lines)
        {
            cancel.ThrowIfCancellationRequested();
            worked.Add(worker.Line(line));
        }

        worker._messages.Flush();
        if (CloseLook.At(lines, bag, first) is { } closeLook)
        {
            var again = new PatternWorker(facts, new FindingBag(bag.Source), options, patterns, closeLook);
            foreach (var line in lines[..(closeLook.LastLine + 1)])
            {
                cancel.ThrowIfCancellationRequested();
                again.Line(line);
            }

            closeLook.Explain(bag, facts.Sizes);
        }

        return worked.ToImmutable();
    }

    private WorkedLine Line(BoundLine line)
    {
        foreach (var state in _states)
        {
            state.ForgetOldRows(_options.MaxRows);
        }

        if (line.Section != _section)
        {
            _section = line.Section;
            BeginSection(line);
        }

        _readings.KeepsNotes = _options.Trace || _closeLook?.Begins(line) == true;
        _trace = _readings.KeepsNotes ? new List<WorkedStretch>?[_sizes.Count] : [];
        int[] logged = [.. _states.Select(s => s.Log?.Count ?? 0)];
        var before = new int?[_sizes.Count];
        var after = new int?[_sizes.Count];
        var seen = new bool[_sizes.Count];
        var rowsOf = new RowsOfLine(_states);
        var (unread, trusted) = (false, false);
        var readings = new List<Reading>();
        var numbers = new List<int>();
        ImmutableArray<int?> stated = [];
        ImmutableArray<int?> statedFirst = [];
        foreach (var row in line.Rows)
        {
            var active = Active(row);
            if (row.StartsPart)
            {
                BeginPart(active);
            }

            RunRules(row, active);
            foreach (var size in active)
            {
                if (!seen[size])
                {
                    before[size] = _states[size].IsKnown ? _states[size].Count : null;
                    seen[size] = true;
                }
            }

            numbers.AddRange(row.Numbers.AsSpan()[..Math.Min(row.Numbers.Length, MostNumbers - numbers.Count)]);
            if (active.Length > 0)
            {
                _order.Check(row, _states[active[0]]);
            }

            trusted |= Row(row, active, readings);
            unread |= row.HasUnread;
            foreach (var size in active)
            {
                after[size] = _states[size].IsKnown ? _states[size].Count : null;
            }

            if (row.Claims.Any(c => c is { Kind: ClaimKind.Total, IsTrusted: true }))
            {
                var opening = row.Claims.LastOrDefault(c => c is { Kind: ClaimKind.Total, IsTrusted: true, Of: null }) ?? row.Claims.First(c => c is { Kind: ClaimKind.Total, IsTrusted: true });
                statedFirst = [.. _everySize.Select(s => active.Contains(s) ? opening.Values[s] : null)];
                stated = [.. _everySize.Select(s => active.Contains(s) ? row.StatedIn(s) : null)];
            }

            Recover(row, active, before, after);
            Sides(row, line, active);
            Numbering(row, active);
        }

        var mirrored = Mirrors.Of(line, _pieces, _sidesFrom, _bag.Source);
        _pieces.Add(new PieceLine(line, [.. before], [.. after]));
        var status = unread ? (line.Rows.Any(HasClaim) ? LineStatus.Trusted : LineStatus.Unread) : trusted ? LineStatus.Trusted : LineStatus.Checked;
        return new WorkedLine
        {
            Index = line.Index,
            Origin = line.Origin,
            Piece = line.Piece,
            Label = line.Label,
            Text = line.Text.Contains("{count}", StringComparison.Ordinal) ? line.Text.Replace("{count}", $"({CountWords.InTradeForm(after, RowKinds.All(_states))})", StringComparison.Ordinal) : line.Text,
            Status = status,
            Numbers = [.. numbers],
            Rows = rowsOf.Of(line, status, before),
            InTheRound = rowsOf.InTheRound,
            Before = [.. before],
            After = [.. after],
            Kinds = _isKnitting ? [] : RowKinds.Several(_states, after),
            Kind = _isKnitting ? null : RowKinds.Only(_states, after),
            Stated = stated,
            StatedFirst = statedFirst,
            Reading = ReadingWords.Of(readings),
            Operations = line.Operations,
            Together = Together(line, before),
            Mirrored = mirrored,
            Sections = Sections(after),
            Log = _states[0].Log is null ? [] : [.. _states.Select((s, i) => s.Log!.Skip(logged[i]).ToImmutableArray())],
            Trace = [.. _trace.Select(stretches => stretches?.ToImmutableArray() ?? [])],
        };
    }

    /// <summary>The sections between markers; empty where no size has any.</summary>
    private ImmutableArray<ImmutableArray<MarkedSection>> Sections(int?[] after)
    {
        ImmutableArray<MarkedSection>[]? sections = null;
        for (var size = 0; size < after.Length; size++)
        {
            if (after[size] is not null && _states[size] is { IsKnown: true } state && state.Live.Sections is { IsEmpty: false } there)
            {
                (sections ??= [.. after.Select(_ => ImmutableArray<MarkedSection>.Empty)])[size] = there;
            }
        }

        return sections is null ? [] : [.. sections];
    }

    /// <summary>Shapings of the line, and of the one before where it says so, that go on at the same time.</summary>
    private ShapingTable? Together(BoundLine line, int?[] before)
    {
        var (last, counts) = _last is { } there && there.Line.Section == line.Section ? there : (null, null);
        _last = (line, before);
        return ShapingTables.Of(line, last, ShapingTables.GoesOn(line) ? [.. counts ?? before] : [.. before], _rowsPerCm);
    }

    /// <summary>Remembers where the first of two sides begins: the other stitches have just been left on a holder.</summary>
    private void Sides(BoundRow row, BoundLine line, int[] active)
    {
        foreach (var size in active)
        {
            if (_isKnitting && row.Steps.Any(s => s is HoldStep) && _states[size] is { IsKnown: true, InTheRound: false, Count: > 0, FirstSide: null } state && row.Steps.Any(s => s is TurnStep))
            {
                (state.FirstSide, _sidesFrom) = (state.Count, line.Index);
            }
        }
    }

    private int[] Active(BoundRow row) => row.IsForNoSize ? [] : row.Sizes.IsEmpty ? _everySize : [.. row.Sizes];

    /// <summary>Those of the sizes of which something holds; the same array where it holds of all.</summary>
    private int[] Where(int[] sizes, Func<SizeState, bool> holds)
    {
        var holding = 0;
        foreach (var size in sizes)
        {
            holding += holds(_states[size]) ? 1 : 0;
        }

        return holding == sizes.Length ? sizes : [.. sizes.Where(size => holds(_states[size]))];
    }

    private static bool HasClaim(BoundRow row) => row.Claims.Any(c => c.IsTrusted);

    private void BeginSection(BoundLine line)
    {
        var first = line.Rows.Select(r => StepCounts.First(r.Steps)).FirstOrDefault(s => s is not null);
        BeginPattern(line, first);
        foreach (var state in _states)
        {
            state.BeginSection();
            state.FirstSide = null;
            if (line.Pattern is not null)
            {
                continue;
            }

            if (first is CastOnStep or AsPieceStep || (line.Rows.Length > 0 && (first is ChainStep or RingStep) && CrochetSteps.BeginPiece(line.Rows[0].Steps)))
            {
                state.Begin();
                state.InTheRound = false;
            }
            else if (state.IsKnown && first is not null && StepCounts.IsWork(first))
            {
                state.Live.TakeUpHeld();
            }
        }

        _messages.BeginSection();
    }

    /// <summary>The rows of a stitch pattern are worked by themselves, over a few repeats; the piece around it goes on where it was.</summary>
    private void BeginPattern(BoundLine line, Step? first)
    {
        for (var i = 0; i < _states.Length && _aside.Length > 0; i++)
        {
            _states[i].History.Clear();
            _states[i].History.AddRange(_aside[i].History);
            _states[i].Restore(_aside[i].Work);
        }

        _aside = [];
        if (line.Pattern is not { } pattern || first is CastOnStep or StartStep)
        {
            return;
        }

        _aside = [.. _states.Select(s => (s.Save(), s.History.ToArray()))];
        var count = Math.Min(pattern.Least + pattern.Chains, _options.MaxStitches);
        var start = new StartStep(line.Origin, new Amount(PerSize.Shared<int?>(count), line.Origin));
        foreach (var state in _states)
        {
            state.Begin();
            state.History.Clear();
            state.InTheRound = false;
            state.Live.Start(start, count, state);
        }
    }

    /// <summary>"Toe:" or "Gusset:" inside a section: row numbers may begin again.</summary>
    private void BeginPart(int[] active)
    {
        foreach (var size in active)
        {
            _states[size].LastNumber = null;
        }
    }

    /// <summary>Rows that were given once for all ("Row 2 and all WS rows") are worked where their turn comes.</summary>
    private void RunRules(BoundRow row, int[] active)
    {
        if (row.Numbers.IsEmpty)
        {
            return;
        }

        foreach (var size in active)
        {
            var state = _states[size];
            if (state.LastNumber is not { } last || row.Numbers[0] <= last + 1 || row.Numbers[0] - last > _options.MaxRows)
            {
                continue;
            }

            for (var number = last + 1; number < row.Numbers[0] && state.IsKnown; number++)
            {
                if (!state.TryRow(number, out var rule))
                {
                    break;
                }

                var once = rule with { Numbers = [number], IsRange = false };
                LineWorker.Work(once, state, Choices.First, new Budget(_options));
                state.LastNumber = number;
            }
        }
    }

    /// <summary>Works one row in its sizes under the reading that fits; true when it had to be taken on trust.</summary>
    private bool Row(BoundRow row, int[] active, List<Reading> readings)
    {
        Register(row, active);
        var opening = StepCounts.First(row.Steps) switch
        {
            StartStep start => start.Stitches,
            CastOnStep cast => cast.Stitches,
            PickUpStep pick => pick.Stitches,
            _ => null,
        };
        if (opening is not null)
        {
            foreach (var state in active.Select(size => _states[size]).Where(s => !s.IsKnown || s.Count == 0))
            {
                state.IsLeftOut = opening[state.Size] is null && !row.HasUnread;
                state.IsKnown &= !state.IsLeftOut;
            }
        }

        active = Where(active, s => !s.IsLeftOut);
        var setsStart = opening is not null || StepCounts.First(row.Steps) is AsPieceStep || (active.Length > 0 && _states[active[0]].Live.BeginsPiece(row.Steps));
        if (active.Length == 0)
        {
            return false;
        }

        var known = Where(active, s => s.IsKnown);
        if (known.Length < active.Length && !setsStart)
        {
            foreach (var size in Where(active, s => !s.IsKnown))
            {
                Join(row, _states[size]);
                LineWorker.Keep(row, _states[size], new Budget(_options));
            }

            // Sizes that are known are still worked.
            if (known.Length > 0)
            {
                Row(row, known, readings);
            }

            return true;
        }

        if (row.HasUnread)
        {
            foreach (var size in active)
            {
                Join(row, _states[size]);
                _states[size].Live.ForgetPlaces();
                _states[size].IsKnown = false;
                LineWorker.Keep(row, _states[size], new Budget(_options));
            }

            return true;
        }

        foreach (var size in active)
        {
            if (!_states[size].IsKnown || _states[size].Live.BeginsPiece(row.Steps))
            {
                _states[size].Begin();
            }
        }

        foreach (var state in active.Select(size => _states[size]).Where(s => s.IsKnown && s.Count == 0 && StepCounts.NeedStitches(row.Steps, 0)))
        {
            state.Live.TakeUpHeld(); // the second side: what was left on a holder is worked now
        }

        var isForLater = row.SpeaksForOthers && !StepCounts.Keeps(row.Steps);
        SizeState.Snapshot[] saved = isForLater ? [.. active.Select(size => _states[size].Save())] : [];
        var outcomes = _closeLook?.Looks == true ? _closeLook.Work(row, active, _readings, _states, _bag.Source) : _readings.Work(row, active);
        for (var i = 0; _readings.KeepsNotes && i < active.Length; i++)
        {
            (_trace[active[i]] ??= []).AddRange(outcomes[i].Notes?.Stretches ?? []);
        }

        if (isForLater)
        {
            // It was worked to see whether it fits; it changes the count only where its turn comes.
            for (var i = 0; i < active.Length; i++)
            {
                _states[active[i]].Restore(saved[i]);
            }
        }

        var trusted = false;
        for (var i = 0; i < active.Length; i++)
        {
            var (state, outcome) = (_states[active[i]], outcomes[i]);
            if (!state.IsKnown && outcome.IsWrong)
            {
                state.Failed.Add(row);
            }

            foreach (var reading in outcome.Readings)
            {
                if (!readings.Contains(reading))
                {
                    readings.Add(reading);
                }
            }

            trusted |= outcome.Problems.Count > 0 && !outcome.IsWrong;
        }

        _messages.Report(row, active, outcomes, _states);
        return trusted;
    }

    private static void Join(BoundRow row, SizeState state)
    {
        if (row.IsRound == true || row.Steps.Any(s => s is JoinStep { IntoRound: true }))
        {
            state.InTheRound = true;
        }
    }

    private void Register(BoundRow row, int[] active)
    {
        foreach (var size in active)
        {
            var state = _states[size];
            if (row.IsRound is { } ring)
            {
                state.InTheRound = ring;
            }

            foreach (var number in row.Numbers)
            {
                state.Numbered[number] = row;
            }

            if (row.Name is { } name)
            {
                state.Named[name] = row;
            }

            state.Others = row.SpeaksForOthers ? row : state.Others;
        }
    }

    private void Numbering(BoundRow row, int[] active)
    {
        foreach (var size in active)
        {
            var state = _states[size];
            if (row.Numbers.IsEmpty)
            {
                state.NumbersAreLoose |= row.Steps.Any(s => s is RowsStep) || row.IsLabelled;
            }
            else
            {
                state.LastNumber = row.IsRange ? row.Numbers[^1] : row.Numbers[0];
            }
        }
    }

    /// <summary>After a row that could not be followed, its stated count is carried on; else what the designer most likely meant.</summary>
    private void Recover(BoundRow row, int[] active, int?[] before, int?[] after)
    {
        foreach (var size in active)
        {
            var state = _states[size];
            if (!state.IsKnown && before[size] is { } same && !row.HasUnread && !HasClaim(row) && StepCounts.Keeps(row.Steps))
            {
                // A row that keeps the count when it is right: the next one goes on from there.
                state.SetCount(same);
            }

            if (!state.IsKnown && row.StatedIn(size) is { } count && count <= _options.MaxStitches)
            {
                state.SetCount(count);
                if (!state.Failed.Contains(row))
                {
                    after[size] = count;
                }
            }
        }
    }
}
