using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>The end of a row: whether it came out, what becomes of stitches that nobody mentioned, and which way the work faces next.</summary>
internal static class RowEnd
{
    /// <summary>Says what did not come out, or reads the row so that it does; then turns the work.</summary>
    public static void Finish(RowRun run, RowTask row, int start, StepWorker steps)
    {
        if (run.TooLarge is not null)
        {
            run.Lose(run.TooLarge with { Span = row.Origin });
        }
        else if (!run.State.IsKnown)
        {
            // Told already, or not to be known.
        }
        else if (run.Guessed && (run.Missing > 0 || run.Misfit is not null))
        {
            run.Trial.Lose(new Problem(ProblemKind.Unknown, row.Origin));
        }
        else if (run.Guessed)
        {
            run.Plain(run.Needles.LeftCount);
        }
        else if (run.Misfit is not null)
        {
            run.Lose(run.Misfit);
        }
        else if (run.Missing > 0)
        {
            run.Lose(new Problem(ProblemKind.TooFew, row.Origin, run.Used + run.Missing, start, run.Missing));
        }
        else if (run.Needles.LeftCount > 0 && !run.MayLeave && !run.Turned)
        {
            LeftOver(run, row, steps);
        }

        Turn(run);
    }

    /// <summary>The row is done: flat work is turned, a round begins again.</summary>
    public static void Turn(RowRun run)
    {
        if (run.Slid || (run.State.InTheRound && !run.Turned))
        {
            run.Needles.Restart();
        }
        else if (!run.Turned)
        {
            run.Needles.Turn();
            run.State.TurnSide();
        }
    }

    /// <summary>Stitches are left and nobody said to leave them: an implied repeat, then plain working on where the stated count agrees, else a mistake.</summary>
    private static void LeftOver(RowRun run, RowTask row, StepWorker steps)
    {
        var left = run.Needles.LeftCount;
        var fitsStated = row.Stated == run.Needles.Count;
        if (run.Remainder is not null && !fitsStated)
        {
            run.Lose(run.Remainder);
            return;
        }

        if (run.Remainder is null && !run.HasExtent && Implied(run, row, steps))
        {
            run.Trial.Outcome.Readings.Add(new Reading(ReadingKind.Implied, row.Origin));
            return;
        }

        if (run.Remainder is not null || (fitsStated && run.EndsWithGroup))
        {
            run.Trial.Outcome.Readings.Add(new Reading(run.Remainder is not null ? ReadingKind.OnePlain : ReadingKind.RestPlain, row.Origin));
            run.Plain(left);
            return;
        }

        if (row.Steps.Any(s => s is HoldStep) && row.Steps.All(s => s is HoldStep or RemarkStep or SentenceStep or MarkerStep))
        {
            run.Slid = true; // stitches were put aside, and the next line works the others
            return;
        }

        if (run.Used == 0 && !row.Steps.Any(s => StepCounts.IsWork(s) || s is BindOffStep or HoldStep or InOneStitchStep or IncreaseStep))
        {
            return; // nothing was worked: markers, joins, stitches cast on
        }

        run.Lose(new Problem(ProblemKind.LeftOver, row.BareGroup ?? row.Origin, run.Used, run.Used + left, row.BareGroup is null ? 0 : 1));
    }

    /// <summary>"K8, k2tog" over 80: the row again and again, if that comes out exactly.</summary>
    private static bool Implied(RowRun run, RowTask row, StepWorker steps)
    {
        if (row.Steps.Any(s => s is HoldStep or BindOffStep or CastOnStep or PickUpStep or MarkerStep { Action: MarkerAction.Place } or TurnStep or SpreadStep or RunStep or NeedleStep))
        {
            return false;
        }

        var after = run.State.Save();
        var (missing, used) = (run.Missing, run.Used);
        run.Quiet = true;
        run.Trial.Notes?.Hush();
        var fits = true;
        var times = 1;
        while (fits && run.Needles.LeftCount > 0)
        {
            var left = run.Needles.LeftCount;
            steps.Work(row.Steps);
            times++;
            fits = run.Missing == missing && run.Needles.LeftCount < left && !run.Budget.IsSpent;
        }

        run.Quiet = false;
        run.Trial.Notes?.Speak();
        run.TooLarge = null;
        (run.Missing, run.Used) = (missing, fits ? run.Used : used);
        fits &= row.Stated is null || row.Stated == run.Needles.Count;
        if (!fits)
        {
            run.State.Restore(after);
        }
        else
        {
            run.Trial.Notes?.Through(times);
        }

        return fits;
    }
}
