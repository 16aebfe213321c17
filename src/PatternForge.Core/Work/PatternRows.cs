using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Works a row of a stitch pattern over part of a knitted row.</summary>
internal static class PatternRows
{
    /// <summary>Works the pattern over the stitches meant; where it does not fit, they are worked as they are.</summary>
    public static void Work(RowRun run, PatternRowStep step)
    {
        run.HasExtent |= step.To?.Extent is Extent.End or Extent.LastStitches;
        if ((step.To is { } target ? Places.Distance(run, target, step.Origin) : step.Over is not null ? run.In(step.Over) ?? 0 : step.Pattern.Plus) is not { } over || run.Guessed)
        {
            return;
        }

        if (over <= 0)
        {
            run.Missing -= over;
            return;
        }

        var fits = step.Pattern.Fits(over);
        if (!fits)
        {
            run.Report(new Problem(ProblemKind.PatternMisfit, step.Origin, over) { Pattern = step.Pattern });
        }

        var makes = fits && step.Row is { } number && over <= run.Needles.LeftCount ? MadeBy(run, step.Pattern, number, over) : over;
        if (step.Row is null || !fits)
        {
            run.Trial.Stitches?.Spoil();
        }

        run.Take(over);
        run.Needles.Put(StitchKind.InPattern, Math.Min(makes, run.Budget.MostStitches + 1));
    }

    /// <summary>What a row of the pattern makes of so many stitches; the same number where that cannot be known.</summary>
    private static int MadeBy(RowRun run, StitchPattern pattern, int number, int over)
    {
        if (run.State.Patterns.Row(pattern, number) is not { HasUnread: false } row || row.Steps.Any(s => s is RowsStep))
        {
            run.Trial.Stitches?.Spoil();
            return over;
        }

        var aside = new NeedleWork();
        aside.Set(over);
        var state = new SizeState(run.State.Size, aside) { IsKnown = true };
        var outcome = new RowOutcome();
        var part = new RowRun(run.Trial with { State = state, Outcome = outcome, Notes = null });
        new StepWorker(part).Work(row.Steps);
        return outcome.Problems.Count == 0 && part is { Missing: 0, Misfit: null, TooLarge: null } && part.Needles.LeftCount == 0 ? part.Needles.RightCount : over;
    }
}
