using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What steps take and make on a long plain needle.</summary>
internal sealed record Probed(int Takes, int Makes)
{
    private const int Plenty = 20_000;

    /// <summary>Works the steps aside; null where what they do depends on places or on how many stitches there are.</summary>
    public static Probed? Of(ImmutableArray<Step> steps, Trial trial)
    {
        var plain = new NeedleWork();
        plain.Set(Plenty);
        plain.KnowsPlaces = true;
        var state = new SizeState(trial.State.Size, plain) { IsKnown = true, InTheRound = trial.State.InTheRound };
        var run = new RowRun(trial with { State = state, Outcome = new RowOutcome(), Notes = null, Stitches = null });
        new StepWorker(run).Work(steps);
        return run.Trial.Outcome.Problems.Count == 0 && run is { Missing: 0, HasExtent: false, Misfit: null, TooLarge: null } ? new Probed(Plenty - run.Needles.LeftCount, run.Needles.RightCount) : null;
    }
}
