using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The live stitches of crochet: the row below, and chains made for the next row.</summary>
internal sealed class CrochetWork : ILiveWork
{
    private readonly TurningChainBook _book;
    private readonly Dialect _terms;
    private readonly Craft _craft;
    private RowBelow _below = RowBelow.Empty;
    private int _chains;
    private int _freeSide;
    private bool _mayBeChains;
    private bool _isFinished;
    private (int Height, bool InTheRound, bool Counts)? _open;
    private FirstOfTwo? _first;

    public CrochetWork(TurningChainBook book, Dialect terms, Craft craft)
    {
        _craft = craft;
        _book = book;
        _terms = terms;
    }

    /// <inheritdoc/>
    public int Count => _below.Count;

    /// <inheritdoc/>
    public RowBelow? Below => _below;

    /// <inheritdoc/>
    public FirstOfTwo? FirstSide => _first is { Left: not null, Ended: not null } ? _first : null;

    /// <inheritdoc/>
    public ILiveWork Copy() => new CrochetWork(_book, _terms, _craft) { _below = _below, _chains = _chains, _freeSide = _freeSide, _mayBeChains = _mayBeChains, _isFinished = _isFinished, _open = _open, _first = _first };

    /// <inheritdoc/>
    public void Begin()
    {
        (_below, _chains, _freeSide, _mayBeChains, _isFinished, _open, _first) = (RowBelow.Empty, 0, 0, false, false, null, null);
    }

    /// <inheritdoc/>
    public bool BeginsPiece(ImmutableArray<Step> steps) => CrochetSteps.BeginPiece(steps) && (_isFinished || (!_below.IsRing && (_below.Tops.IsEmpty || CrochetSteps.HasRing(steps))));

    /// <inheritdoc/>
    public void Set(int count)
    {
        _below = new RowBelow([.. Enumerable.Repeat(Top.Unknown, count)], [], _terms) { IsCountOnly = true };
        (_chains, _mayBeChains, _isFinished, _open) = (0, false, false, null);
    }

    /// <summary>Sets the row below.</summary>
    public void Put(RowBelow below) => _below = below;

    /// <inheritdoc/>
    public void EndAs(FirstOfTwo side) => (_below, _chains, _mayBeChains, _open) = (side.Ended!, 0, false, null);

    /// <inheritdoc/>
    public void Start(StartStep start, int count, SizeState state)
    {
        if (state.IsKnown && Count == count && HasParts(_below, start.Parts, state.Size))
        {
            return;
        }

        if (!start.Parts.IsEmpty && CrochetStart.Rework(start, state, _book, _terms, _craft) is { } again)
        {
            Set(count);
            (_below, _chains) = (again._below, again._chains);
            return;
        }

        Set(count);
        _mayBeChains = state.History.Count == 0 && start.Parts.IsEmpty;
        if (!start.Parts.IsEmpty)
        {
            _below = CrochetStart.Mixed(start.Parts, state.Size, _terms);
        }
    }

    /// <summary>True when a row has the spaces and stitches that a starting line names.</summary>
    public static bool HasParts(RowBelow row, ImmutableArray<StartPart> parts, int size) => parts.All(p =>
        p.Space is { } length ? row.Kinds.GetValueOrDefault(RowBelow.SpaceName(length)) == (p.Count[size] ?? 0) : p.Stitch is null || row.Kinds.GetValueOrDefault(CrochetNames.Of(p.Stitch, row.Terms)) == (p.Count[size] ?? 0));

    /// <inheritdoc/>
    public void TakeUpHeld()
    {
    }

    /// <inheritdoc/>
    public void Change(int change)
    {
        var tops = _below.Tops;
        if (change >= 0)
        {
            _below = new RowBelow([.. tops, .. Enumerable.Repeat(Top.Unknown with { Stitch = tops.LastOrDefault(t => t.Counts).Stitch }, change)], [], _terms) { IsCountOnly = _below.IsCountOnly };
            return;
        }

        var kept = tops.ToList();
        for (var i = kept.Count - 1; i >= 0 && change < 0; i--)
        {
            if (kept[i].Counts || kept[i].Kind == TopKind.Chain)
            {
                kept.RemoveAt(i);
                change++;
            }
        }

        _below = new RowBelow([.. kept], [], _terms) { IsCountOnly = _below.IsCountOnly };
    }

    /// <inheritdoc/>
    public void Settle()
    {
    }

    /// <inheritdoc/>
    public void ForgetPlaces()
    {
    }

    /// <inheritdoc/>
    public void WorkRow(RowTask row, Trial trial)
    {
        if (row.Steps.Any(s => s is FreeSideStep))
        {
            // How many chains of a foundation are worked again is known only where one was worked; else only what the rows state.
            _below = new RowBelow([.. Enumerable.Repeat(Top.FoundationChain, _freeSide)], [], _terms);
            if (_freeSide == 0)
            {
                trial.Lose(new Problem(ProblemKind.Unknown, row.Origin));
                return;
            }
        }

        var below = Meant(row.Steps);

        // The round is known by its label, its join, or the ring that it goes into.
        var inTheRound = trial.State.InTheRound || CrochetSteps.Closes(row.Steps) || below.IsRing;
        _mayBeChains = false;
        var run = new CrochetRun(trial, row, below, inTheRound, _craft == Craft.Tunisian);
        var worker = new CrochetWorker(run, _book, _terms);
        var isKnown = worker.Work(_chains);
        _isFinished = row.Steps.Any(s => s is FastenOffStep);
        _open = worker.Open is { } open ? (open.Height, inTheRound, open.Counts) : null;
        trial.State.IsKnown &= isKnown;
        trial.State.Tally?.Worked(below.Count, run, run.Tops.ToRow(_terms, run.ClosedWithStitch));
        Keep(run, turned: row.Steps.Any(s => s is TurnStep));
        _first = FirstOfTwo.After(_first, row.Steps, run, Count, _terms);
        End();
        if (run.Tops.Notes is { } notes)
        {
            trial.State.Drawn!.Add(new CrochetRow(row.Origin, below, notes, run.Foundation, run.MadeRing, run.Tops.HasStitches, inTheRound, _below.IsTurned));
        }

        if (!inTheRound)
        {
            trial.State.TurnSide();
        }
    }

    /// <summary>What the row is worked into: a number of stitches that must be chains, a ring, or the row before.</summary>
    private RowBelow Meant(ImmutableArray<Step> steps)
    {
        if (_first is { Left: { } left, Ended: not null } && _isFinished && FirstOfTwo.Skips(steps))
        {
            return left;
        }

        if (_mayBeChains && CrochetSteps.HasFromHook(steps))
        {
            return new RowBelow([.. _below.Tops.Select(_ => Top.FoundationChain)], [], _terms);
        }

        if (_below is { IsRing: true, Tops.IsEmpty: false } && CrochetSteps.GoesIntoEachChain(steps))
        {
            return new RowBelow(_below.Tops, [], _terms); // a closed chain worked into chain by chain
        }

        return _below.Tops.IsEmpty && !_below.IsRing && ((CrochetSteps.HasRing(steps) && !CrochetSteps.MakesRing(steps)) || CrochetSteps.IsRingRound(steps)) ? new RowBelow([], [], _terms) { IsRing = true } : _below;
    }

    private void Keep(CrochetRun run, bool turned)
    {
        if (run.BoundOff)
        {
            (_below, _chains, _isFinished) = (RowBelow.Empty, 0, true);
            return;
        }

        var chains = run.Tops.Chains;
        if (run.Closed && !run.ChainsAfterClosing)
        {
            chains = 0;
        }

        var made = run.Tops.ToRow(_terms, run.ClosedWithStitch);
        if (!run.Tops.HasStitches && run.Foundation > 0)
        {
            // "Ch 31." or "Ch 4, join to form a ring."
            made = new RowBelow([.. Enumerable.Repeat(Top.FoundationChain, run.Foundation)], [], _terms) { IsRing = run.MadeRing };
            chains = 0;
        }
        else if (!run.Tops.HasStitches && run.MadeRing)
        {
            made = new RowBelow([], [], _terms) { IsRing = true };
        }
        else if (!run.Tops.HasStitches && !run.WorkedStitches && made.Tops.All(t => !t.Counts && t.Kind != TopKind.Space))
        {
            // Nothing was worked: chains for the next row ("Ch 3, turn."), a slip stitch on the way.
            _chains = Math.Max(chains, run.Tops.TurningChain ?? 0);
            return;
        }

        _chains = chains;
        _freeSide = run.Below.IsFoundation && run.Tops.HasStitches && !run.MayLeave ? run.Below.Length - Math.Max(0, run.Below.FirstWorked) + (run.Tops.TurningChain is null ? 0 : 1) : _freeSide;
        _below = (run.InTheRound && !turned) || made.IsFoundation || made.IsRing || _craft == Craft.Tunisian ? made : made.Turned();
    }

    /// <inheritdoc/>
    public void Confirm()
    {
        if (_open is { } open)
        {
            _book.Show(open.Height, open.InTheRound, open.Counts);
        }
    }

    /// <inheritdoc/>
    public bool HasOpenQuestion => _open is not null;

    /// <inheritdoc/>
    public void Between(Step step, Trial trial)
    {
        if (step is JoinStep join)
        {
            trial.State.InTheRound = join.IntoRound;
        }
        else if (step is BindOffStep or FastenOffStep)
        {
            _below = step is BindOffStep && _craft == Craft.Tunisian ? RowBelow.Empty : _below;
            _isFinished = true;
            End();
        }
    }

    private void End() => _first = _isFinished && _first is { Ended: null } side ? side with { Ended = _below } : _first;

    /// <inheritdoc/>
    public int? ChangeOf(ImmutableArray<Step> steps, Trial trial) => null;
}
