using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The live stitches of knitting: two needles, and groups of stitches on hold.</summary>
internal sealed class NeedleWork : ILiveWork
{
    /// <summary>Empty needles.</summary>
    public NeedleWork()
        : this(new Needles())
    {
    }

    private NeedleWork(Needles needles) => Needles = needles;

    /// <summary>The two needles.</summary>
    public Needles Needles { get; private set; }

    /// <summary>Groups of held stitches, in the order they were put on hold.</summary>
    public List<int> Held { get; private init; } = [];

    /// <summary>False when stitches are counted but the places of markers are not known any more.</summary>
    public bool KnowsPlaces { get; set; } = true;

    /// <inheritdoc/>
    public int Count => Needles.Count;

    /// <inheritdoc/>
    public RowBelow? Below => null;

    /// <inheritdoc/>
    public ImmutableArray<MarkedSection> Sections => KnowsPlaces ? Needles.Sections() : [];

    /// <inheritdoc/>
    public bool HasOpenQuestion => false;

    /// <inheritdoc/>
    public bool BeginsPiece(ImmutableArray<Step> steps) => false;

    /// <inheritdoc/>
    public void Confirm()
    {
    }

    /// <inheritdoc/>
    public ILiveWork Copy() => new NeedleWork(Needles.Copy()) { Held = [.. Held], KnowsPlaces = KnowsPlaces };

    /// <inheritdoc/>
    public void Begin()
    {
        Needles = new Needles();
        KnowsPlaces = true;
    }

    /// <inheritdoc/>
    public void Set(int count)
    {
        if (Needles.LeftCount == count && Needles.RightCount == 0)
        {
            return;
        }

        Needles = new Needles();
        Needles.PutLeft(StitchKind.InPattern, count);
        KnowsPlaces = false;
    }

    /// <inheritdoc/>
    public void Start(StartStep start, int count, SizeState state)
    {
        // The same count in hand keeps what is known of it: gaps, markers, which stitch is what.
        if (!(state.IsKnown && Count == count && start.Markers.IsEmpty && start.Needles.IsEmpty))
        {
            Needles = new Needles();
            Needles.PutLeft(StitchKind.InPattern, count);
            KnowsPlaces = !start.Markers.IsEmpty || state.History.Count == 0;
        }

        foreach (var marker in start.Markers)
        {
            if (marker[state.Size] is { } at and >= 0 && at <= count)
            {
                Needles.PlaceAhead(PlaceMark.Marker, at);
            }
        }

        var ahead = 0;
        foreach (var needle in start.Needles.Length > 0 ? start.Needles[..^1] : [])
        {
            ahead += needle[state.Size] ?? 0;
            Needles.PlaceAhead(PlaceMark.NeedleEnd, Math.Min(ahead, count));
        }
    }

    /// <inheritdoc/>
    public void TakeUpHeld()
    {
        if (Count == 0 && Held.Count > 0)
        {
            Needles.PutLeft(StitchKind.InPattern, Held[0]);
            Held.RemoveAt(0);
        }
    }

    /// <inheritdoc/>
    public void Change(int change)
    {
        if (change >= 0)
        {
            Needles.PutLeft(StitchKind.Increase, change);
        }
        else
        {
            var lost = Needles.Take(-change);
            Needles.Drop(-change - lost);
        }
    }

    /// <inheritdoc/>
    public void Settle()
    {
        if (Needles.RightCount > 0)
        {
            Needles.Restart();
        }
    }

    /// <inheritdoc/>
    public void ForgetPlaces() => KnowsPlaces = false;

    /// <inheritdoc/>
    public void WorkRow(RowTask row, Trial trial)
    {
        // A short row in a ring may go on past the start of the round, also where an earlier row has turned.
        var run = new RowRun(trial) { MayGoRound = trial.State.InTheRound && Needles.RightCount > 0 && row.Steps.Any(s => s is TurnStep) };
        var steps = new StepWorker(run);
        var start = Count;
        Places.DivideNeedles(run, row.Steps);
        steps.Work(row.Steps);
        RowEnd.Finish(run, row, start, steps);
        var made = run.Used + Math.Max(0, Count - start); // a yarn over uses none, and two knit together are a stitch that was made and taken
        trial.State.Tally?.Worked(start, made, made);
    }

    /// <inheritdoc/>
    public void Between(Step step, Trial trial)
    {
        switch (step)
        {
            case CastOnStep cast:
                Needles.PutLeft(StitchKind.CastOn, Math.Min(trial.In(cast.Stitches) ?? 0, trial.Budget.MostStitches + 1));
                if (Count > trial.Budget.MostStitches)
                {
                    trial.Lose(new Problem(ProblemKind.TooLarge, cast.Origin, 0));
                }

                break;
            case TurnStep:
                Needles.Turn();
                break;
            case BindOffStep or ReturnStep or MarkerStep { Action: MarkerAction.Place }:
                new StepWorker(new RowRun(trial)).Work([step]);
                break;
            case JoinStep join:
                trial.State.InTheRound = join.IntoRound;
                break;
        }
    }

    /// <inheritdoc/>
    public int? ChangeOf(ImmutableArray<Step> steps, Trial trial) => Probed.Of(steps, trial) is { } probed ? probed.Makes - probed.Takes : null;
}
