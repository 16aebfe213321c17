using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Works the rows of one section of crochet by themselves, in every size, and keeps each of their stitches.</summary>
internal sealed class DiagramWorker
{
    private readonly CompileOptions _options;
    private readonly SizeState[] _states;
    private readonly RowReadings _readings;
    private readonly bool[] _isSound;

    /// <summary>Prepares for one section.</summary>
    /// <param name="facts">The header.</param>
    /// <param name="patterns">The stitch patterns of the file.</param>
    /// <param name="options">Limits.</param>
    public DiagramWorker(PatternFacts facts, PatternBook patterns, CompileOptions options)
    {
        _options = options;
        var book = new TurningChainBook(TurningChainNotes.Of(facts));
        _states = [.. Enumerable.Range(0, facts.Sizes.Count).Select(i => new SizeState(i, new CrochetWork(book, facts.TermsInForce ?? Dialect.Us, facts.Craft)) { Patterns = patterns, Drawn = [] })];
        _readings = new RowReadings(_states, options, isKnitting: false);
        _isSound = [.. _states.Select(_ => true)];
    }

    /// <summary>The rows of each size in the order of work; null for a size in which they do not come out as they did in the pattern.</summary>
    /// <param name="lines">The lines of the section.</param>
    /// <param name="worked">All lines of the file, worked.</param>
    /// <param name="most">Lines behind this many rows are not worked.</param>
    public ImmutableArray<CrochetRow>?[] Work(List<BoundLine> lines, ImmutableArray<WorkedLine> worked, int most)
    {
        Begin(lines[0], worked[lines[0].Index]);
        foreach (var line in lines)
        {
            if (_states.All(s => s.Drawn!.Count > most))
            {
                break;
            }

            foreach (var row in line.Rows.Where(r => !r.IsForNoSize))
            {
                Row(row, row.Sizes.IsEmpty ? [.. _states.Select(s => s.Size)] : [.. row.Sizes]);
            }

            for (var size = 0; size < _states.Length; size++)
            {
                _isSound[size] &= worked[line.Index].After[size] is not { } after || (_states[size].IsKnown && _states[size].Count == after);
            }
        }

        return [.. _states.Select(s => _isSound[s.Size] ? s.Drawn!.ToImmutableArray() : (ImmutableArray<CrochetRow>?)null)];
    }

    /// <summary>A piece begins with nothing, a stitch pattern with a few repeats, other rows with the stitches that there are.</summary>
    private void Begin(BoundLine first, WorkedLine worked)
    {
        foreach (var state in _states)
        {
            state.Begin();
            if (first.Pattern is { } pattern && StepCounts.First(first.Rows[0].Steps) is not (CastOnStep or StartStep))
            {
                var count = Math.Min(pattern.Least + pattern.Chains, _options.MaxStitches);
                state.Live.Start(new StartStep(first.Origin, new Amount(PerSize.Shared<int?>(count), first.Origin)), count, state);
            }
            else if (!CrochetSteps.BeginPiece(first.Rows[0].Steps) && worked.Before[state.Size] is > 0 and var before)
            {
                state.SetCount(before);
            }
        }
    }

    private void Row(BoundRow row, int[] active)
    {
        active = [.. active.Where(size => _isSound[size])];
        if (row.HasUnread || active.Length == 0)
        {
            Lose(active);
            return;
        }

        foreach (var state in active.Select(size => _states[size]))
        {
            state.InTheRound = row.IsRound ?? state.InTheRound;
            Rules(row, state);
            foreach (var number in row.Numbers)
            {
                state.Numbered[number] = row;
            }

            if (row.Name is { } name)
            {
                state.Named[name] = row;
            }

            state.Others = row.SpeaksForOthers ? row : state.Others;
            if (state.Live.BeginsPiece(row.Steps))
            {
                state.Begin();
            }
        }

        if (row.SpeaksForOthers && !StepCounts.Keeps(row.Steps))
        {
            return; // worked where its turn comes
        }

        var outcomes = _readings.Work(row, active);
        for (var i = 0; i < active.Length; i++)
        {
            var state = _states[active[i]];
            _isSound[active[i]] &= state.IsKnown && outcomes[i].Problems.Count == 0 && state.Drawn!.All(r => r.Notes.IsWhole);
            state.LastNumber = row.Numbers.IsEmpty ? state.LastNumber : row.IsRange ? row.Numbers[^1] : row.Numbers[0];
        }
    }

    /// <summary>Rows that were given once for all ("Row 2 and all WS rows") are worked where their turn comes.</summary>
    private void Rules(BoundRow row, SizeState state)
    {
        if (row.Numbers.IsEmpty || state.LastNumber is not { } last || row.Numbers[0] - last > _options.MaxRows)
        {
            return;
        }

        for (var number = last + 1; number < row.Numbers[0] && state.IsKnown && state.TryRow(number, out var rule); number++)
        {
            LineWorker.Work(rule with { Numbers = [number], IsRange = false }, state, Choices.First, new Budget(_options));
            state.LastNumber = number;
        }
    }

    private void Lose(int[] sizes)
    {
        foreach (var size in sizes)
        {
            _isSound[size] = false;
        }
    }
}
