using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Carries out the steps of one crochet row in one size on the row below (NOTATION 3).</summary>
internal sealed class CrochetWorker
{
    private readonly CrochetRun _run;
    private readonly TurningChains _turningChains;
    private readonly CrochetGroups _groups;
    private readonly CrochetPlaces _places;
    private readonly CrochetMoves _moves;
    private readonly CrochetRepeats _repeats;

    public CrochetWorker(CrochetRun run, TurningChainBook book, Dialect terms)
    {
        _run = run;
        _turningChains = new TurningChains(run, book, terms);
        _groups = new CrochetGroups(run, _turningChains) { Sequence = Steps };
        _places = new CrochetPlaces(run, _turningChains, _groups);
        _moves = new CrochetMoves(run, _places);
        _repeats = new CrochetRepeats(run, _groups, Steps);
    }

    /// <summary>What the row left open about its turning chain, and how it was worked; null for nothing.</summary>
    public (int Height, bool Counts)? Open => _turningChains.Open;

    /// <summary>Works the row; false when nothing is known of the work after it.</summary>
    /// <param name="chains">Chains made at the end of the row before ("ch 3, turn").</param>
    public bool Work(int chains)
    {
        var row = _run.Row;
        if (chains > 0 && row.Steps.FirstOrDefault(s => s is not (RemarkStep or TurnStep or SentenceStep or JoinStep)) is not ChainStep)
        {
            Chain(new ChainStep(row.Origin, new Amount(PerSize.Shared<int?>(chains), row.Origin)));
        }

        var total = _run.Below.StitchesLeft;
        if (_run.IsTunisian && total > 0 && !_run.Below.IsFoundation && TurningChains.First(row.Steps) is { } first)
        {
            _run.Below.First(new Thing(ThingKind.Stitch), 1);
            _run.Tops.Make(CrochetNames.Plain(first.Operation), 1, 0); // the loop on the hook
        }

        Steps(row.Steps);
        Spread();
        return CrochetEnd.Finish(_run, Math.Max(total, _run.Below.IsFoundation ? _run.Below.Length : 0), Steps);
    }

    private void Steps(ImmutableArray<Step> steps)
    {
        _run.Depth++;
        _run.Trial.Notes?.Enter(steps);
        foreach (var step in steps)
        {
            if (!_run.Go())
            {
                break;
            }

            if (_run.Trial.Notes is { } notes)
            {
                notes.Begin(step, _run.Below.StitchesLeft, _run.Tops.Stitches);
                One(step);
                notes.Finish(_run.Below.StitchesLeft, _run.Tops.Stitches);
            }
            else
            {
                One(step);
            }
        }

        _run.Trial.Notes?.Leave();
        _run.Depth--;
    }

    private void One(Step step)
    {
        if (_run.JoinedAt && step is CrochetStep or ShellStep or RepeatStep or GroupStep)
        {
            if (!_run.Tops.BeganWithStitch && step is not (CrochetStep { Place.Kind: PlaceKind.Same } or ShellStep { Place.Kind: PlaceKind.Same }))
            {
                _run.Below.StepBack(); // the first stitch goes where the yarn was joined
            }

            _run.JoinedAt = false;
        }

        WorkOne(step);
        _run.Skipped = step is SkipStep || (_run.Skipped && step is ChainStep or RemarkStep);
    }

    private void WorkOne(Step step)
    {
        if (_run.Tops.Notes is { } notes)
        {
            notes.Loop = step is CrochetStep { Loop: var loop } ? loop : StitchLoop.Both;
        }

        switch (step)
        {
            case ChainStep chain:
                Chain(chain);
                break;
            case CrochetStep { Operation.Id: "sl st" } slip:
                _moves.Slip(slip);
                break;
            case CrochetStep stitch:
                _places.Work(stitch);
                break;
            case OperationStep plain:
                _places.Work(new CrochetStep(plain.Origin, plain.Operation, plain.Times, null)); // "work in pattern across 90 sts"
                break;
            case RunStep run:
                _places.At(new Place(run.To.Extent == Extent.LastStitches ? PlaceKind.EachToLast : PlaceKind.Each, new Thing(ThingKind.Stitch), run.Origin) { Count = run.To.Stitches, Until = new Thing(ThingKind.Stitch) }, _run.LastStitch, 1, 1);
                break;
            case PatternRowStep pattern:
                Pattern(pattern);
                break;
            case NamedIncreaseStep named:
                Named(named);
                break;
            case ShellStep shell:
                _groups.Work(shell);
                break;
            case MeshStep meshes:
                new CrochetMeshes(_run).Work(meshes);
                break;
            case SkipStep skip:
                _moves.Skip(skip);
                break;
            case BeginAtStep { Place.Kind: PlaceKind.ChainFromHook } begin:
                _places.GoToChain(begin.Place, TurningChains.First(_run.Row.Steps)?.Operation ?? _run.LastStitch);
                break;
            case BeginAtStep begin:
                _moves.Begin(begin.Place);
                if (begin.IsJoin)
                {
                    _run.Tops.Notes?.At(NoteKind.NewYarn);
                }

                _run.JoinedAt = begin.IsJoin;
                break;
            case CloseStep close:
                _moves.Close(close);
                break;
            case RingStep:
                _run.MadeRing = true;
                _run.Tops.Notes?.Chains(NoteKind.Ring, _run.Tops.Chains);
                if (_run.Tops.TakeChains() > 0 || _run.Below.IsEmpty)
                {
                    _run.Below.IsRing = true;
                }

                break;
            case GroupStep group:
                _repeats.Times(group.Body, _run.In(group.Times));
                break;
            case RepeatStep repeat:
                _repeats.Repeat(repeat);
                break;
            case SpreadStep spread:
                _run.Spread += spread.Change[_run.Trial.State.Size] ?? 0;
                _run.HasSpread = true;
                break;
            case BindOffStep { Stitches: { } off } when _run.IsTunisian:
                _moves.Begin(new Place(PlaceKind.Next, new Thing(ThingKind.Stitch), off.Origin) { Count = off });
                break;
            case LeaveStep:
                _run.MayLeave = true;
                break;
            case OtherSideStep:
                _moves.OtherSide();
                break;
        }
    }

    private void Chain(ChainStep chain)
    {
        if (_run.Depth <= 1 && _turningChains.IsDue)
        {
            _turningChains.Make(chain);
            return;
        }

        var count = _run.In(chain.Chains);
        if (!_run.Tops.HasStitches && _run.Below.IsEmpty && !_run.Below.IsRing)
        {
            _run.Foundation = Math.Min(count, _run.Trial.Budget.MostStitches);
        }

        if (_run.Closed)
        {
            _run.ChainsAfterClosing = true;
        }

        _run.Tops.Chain(count);
    }

    /// <summary>A stitch pattern over part of the row: a stitch in each of them, where it fits.</summary>
    private void Pattern(PatternRowStep step)
    {
        _run.Tops.Notes?.Spoil();
        var over = step.Over is not null ? _run.In(step.Over)
            : step.To is { Extent: Extent.LastStitches } last ? Math.Max(0, _run.Below.StitchesLeft - _run.In(last.Stitches))
            : step.To is not null ? _run.Below.StitchesLeft
            : step.Pattern.Plus;
        if (!step.Pattern.Fits(over) && over > 0)
        {
            _run.Report(new Problem(ProblemKind.PatternMisfit, step.Origin, over) { Pattern = step.Pattern });
        }

        _places.Work(new CrochetStep(step.Origin, _run.LastStitch, new Amount(PerSize.Shared<int?>(over), step.Origin), null));
    }

    private void Named(NamedIncreaseStep step)
    {
        var one = _run.Trial.Choices.Take(step.Origin, ReadingKind.NamedIncrease) == 0;
        if (!one)
        {
            _places.Work(new CrochetStep(step.Origin, step.Stitch, step.Number, null));
        }

        _run.LastStitch = step.Stitch;
        _places.Work(new CrochetStep(step.Origin, step.Change, one ? step.Number ?? step.Times : step.Times, null));
    }

    /// <summary>"Dec 1 st at each end": where the row names no stitches besides, each is worked.</summary>
    private void Spread()
    {
        if (!_run.HasSpread)
        {
            return;
        }

        _run.Tops.Notes?.Spoil();
        var below = _run.Below;
        if (_run.Tops.Stitches <= (_run.Tops.HasOnlyTurningChain ? 1 : 0) && below.StitchesLeft > 0)
        {
            var stitch = below.Row.Tops.FirstOrDefault(t => t.Counts).Stitch ?? _run.LastStitch;
            _places.At(new Place(PlaceKind.Each, new Thing(ThingKind.Stitch), _run.Row.Origin), CrochetNames.Plain(stitch), 1, 1);
        }

        if (_run.Spread >= 0)
        {
            _run.Tops.Make(_run.LastStitch, Math.Min(_run.Spread, _run.Trial.Budget.MostStitches), below.Last);
        }
        else if (!_run.Tops.TakeBack(-_run.Spread))
        {
            _run.NotKnown = true;
        }
    }
}
