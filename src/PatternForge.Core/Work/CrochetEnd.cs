using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>The end of a crochet row: whether it came out, and what becomes of stitches that nobody mentioned.</summary>
internal static class CrochetEnd
{
    /// <summary>Says what did not come out; false when nothing is known of the work from here.</summary>
    public static bool Finish(CrochetRun run, int total, Action<ImmutableArray<Step>> work)
    {
        var row = run.Row;
        if (run.Tops.IsTooMany || run.Trial.Budget.IsSpent)
        {
            run.Report(new Problem(ProblemKind.TooLarge, row.Origin, run.Tops.IsTooMany ? 0 : 2));
            return false;
        }

        if (run.NotKnown || run.Below.NotKnown || ((run.Below.Row.IsGuess || (run.Below.Row.IsTold && run.BeforeSpaces)) && HasProblem(run)))
        {
            run.Report(new Problem(ProblemKind.Unknown, row.Origin));
            return false;
        }

        if (run.Below.NoPlace is { } place)
        {
            run.Report(new Problem(ProblemKind.NoSuchPlace, place.Origin, place.Thing.Length ?? 0) { Text = NameOf(place) });
            return false;
        }

        if (run.Misfit is not null)
        {
            run.Report(run.Misfit);
            return false;
        }

        if (run.Below.Missing > 0)
        {
            run.Report(new Problem(ProblemKind.TooFew, row.Origin, (int)Math.Min((long)total + run.Below.Missing, int.MaxValue), total));
            return false;
        }

        return !IsLeftOver(run, total, work);
    }

    // Where the order of the row below is only guessed, what does not come out shows that the guess was wrong.
    private static bool HasProblem(CrochetRun run) => run.Below.NoPlace is not null || run.Misfit is not null || run.Below.Missing > 0;

    private static string NameOf(Place place) => place switch
    {
        { Kind: PlaceKind.TurningChain } => "turning chain",
        { Kind: PlaceKind.ChainFromHook } or { Thing.Kind: ThingKind.Chain } => "chain",
        { Thing: { Kind: ThingKind.Named, Named: { } stitch } } => stitch.Id,
        _ => "chain space",
    };

    /// <summary>Stitches are left, and nobody said to leave them: an implied repeat, or a mistake. Stitches between the spaces that a row goes into are passed over without a word.</summary>
    private static bool IsLeftOver(CrochetRun run, int total, Action<ImmutableArray<Step>> work)
    {
        if (run.ToUnseen is { } between)
        {
            run.Tops.Notes?.Spoil();
            run.Tops.Make(between, run.Below.StitchesLeft, -1); // all that stood between the spaces
            return false;
        }

        var left = run.Below.StitchesLeft;
        if (left == 0 || run.MayLeave || run.Below.IsRing || total == 0 || !run.WorkedStitches || run.Below.WorkedSpaces || (left == 1 && IsTurningChain(run)) || left <= run.Overhang || StopsShort(run))
        {
            return false;
        }

        if (IsImplied(run, total - left, work))
        {
            run.Trial.Outcome.Readings.Add(new Reading(ReadingKind.Implied, run.Row.Origin));
            return false;
        }

        run.Report(new Problem(ProblemKind.LeftOver, run.Row.BareGroup ?? run.Row.Origin, total - left, total, run.Row.BareGroup is null ? 0 : 1));
        return true;
    }

    /// <summary>True when the one stitch left is a turning chain, or may be one: where only a number is known, a tall row or a count that agrees.</summary>
    private static bool IsTurningChain(CrochetRun run) =>
        run.Below.EndsInTurningChain && (!run.Below.MayEndInTurningChain || (!run.InTheRound && (run.Tops.TurningChain > 1 || run.Row.Stated == run.Tops.Stitches)));

    /// <summary>"... to last 3 sts, turn", and a row that slip stitches began further on and that is turned as far from its end: what is left is left on purpose.</summary>
    private static bool StopsShort(CrochetRun run)
    {
        var last = run.Row.Steps.LastOrDefault(s => s is not (RemarkStep or SentenceStep or TurnStep or ChainStep or CloseStep or FastenOffStep));
        var turns = !run.InTheRound && run.Row.Steps.Any(s => s is TurnStep or FastenOffStep);
        return (last is CrochetStep { Place.Kind: PlaceKind.EachToLast } && turns) || (turns && run.BeganAt > 0 && run.Below.StitchesLeft <= run.BeganAt + 1);
    }

    /// <summary>"2 sc, inc" over 24: the row again and again, if that comes out exactly.</summary>
    private static bool IsImplied(CrochetRun run, int used, Action<ImmutableArray<Step>> work)
    {
        var steps = run.Row.Steps;
        if (used <= 0 || run.Below.StitchesLeft % used != 0 || steps.Any(s => s is ChainStep or CloseStep or RepeatStep or TurnStep or LeaveStep or SkipStep or BeginAtStep or CrochetStep { Place.Kind: not PlaceKind.Next }))
        {
            return false;
        }

        var (below, tops) = (run.Below.Save(), run.Tops.Save());
        while (run.Below.StitchesLeft > 0 && run.Go())
        {
            work(steps);
            if (run.Below.Missing > 0 || (run.Row.Stated is { } stated && run.Tops.Count > stated))
            {
                run.Below.Restore(below);
                run.Tops.Restore(tops);
                return false;
            }
        }

        return true;
    }
}
