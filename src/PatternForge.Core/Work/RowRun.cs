using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>
/// One row on its way over the needles: what it has used so far and what is to be remembered until its end. Goes on after a mistake as well as it
/// can: what was missing is counted, so that the message can say how many stitches the row needs.
/// </summary>
internal sealed class RowRun
{
    public RowRun(Trial trial) => Trial = trial;

    public Trial Trial { get; }

    /// <summary>The work as it is now: another one after a reading has been taken back.</summary>
    public NeedleWork Work => (NeedleWork)Trial.State.Live;

    public Needles Needles => Work.Needles;

    public SizeState State => Trial.State;

    public Budget Budget => Trial.Budget;

    /// <summary>Stitches asked for that were not there.</summary>
    public int Missing { get; set; }

    /// <summary>Stitches used.</summary>
    public int Used { get; set; }

    /// <summary>Stitches on the cable needle.</summary>
    public int OnCableNeedle { get; set; }

    /// <summary>True while the stitch that binding off left on the right needle may be the first of the next ones told.</summary>
    public bool BoundOff { get; set; }

    /// <summary>True when the work has just been turned.</summary>
    public bool Turned { get; set; }

    /// <summary>True when the row ends without turning.</summary>
    public bool Slid { get; set; }

    /// <summary>True when stitches may be left unworked: a short row.</summary>
    public bool MayLeave { get; set; }

    /// <summary>True when some step says how far it goes.</summary>
    public bool HasExtent { get; set; }

    /// <summary>True when the last step was a bracket or a marker, after which plain working on may be left unsaid.</summary>
    public bool EndsWithGroup { get; set; }

    /// <summary>True when the row may go on past the start of the round: stitches have been picked up, or its marker has been slipped.</summary>
    public bool MayGoRound { get; set; }

    /// <summary>True when a place was needed that is not known: the row's count holds if the rest is worked to its end.</summary>
    public bool Guessed { get; set; }

    /// <summary>True while problems are not to be told: a reading is tried.</summary>
    public bool Quiet { get; set; }

    /// <summary>The first repeat that did not fit; null for none.</summary>
    public Problem? Misfit { get; set; }

    /// <summary>Set when the row is more than can be worked: told once, at its end.</summary>
    public Problem? TooLarge { get; set; }

    /// <summary>Stitches that "k2tog to end" leaves over; null for none.</summary>
    public Problem? Remainder { get; set; }

    /// <summary>The number that an amount has in this size; null where there is none.</summary>
    public int? In(Amount? amount) => Trial.In(amount);

    public void Report(Problem problem)
    {
        if (!Quiet)
        {
            Trial.Outcome.Problems.Add(problem);
        }
    }

    /// <summary>Reports, and nothing is known of the work from here.</summary>
    public void Lose(Problem problem)
    {
        Report(problem);
        State.IsKnown = false;
    }

    public void Read(ReadingKind kind, Step at) => Trial.Outcome.Readings.Add(new Reading(kind, at.Origin));

    /// <summary>Takes so many stitches off the left needle, in a ring also those past its end. Returns how many there were.</summary>
    public int Take(int count)
    {
        Used += count;
        var taken = Needles.Take(count);
        while (taken < count && State.InTheRound && (MayLeave || MayGoRound) && Needles.RightCount > 0)
        {
            Needles.BringRound(count - taken);
            taken += Needles.Take(count - taken);
        }

        if (taken < count)
        {
            Used -= count - taken;
            Missing += count - taken;
        }

        return taken;
    }

    /// <summary>Works an operation so many times.</summary>
    public void Apply(Operation operation, int times)
    {
        if (times <= 0)
        {
            return;
        }

        Trial.Stitches?.Add(operation, times);

        if ((long)operation.Takes * times > int.MaxValue / 2 || (long)operation.Makes * times > int.MaxValue / 2 || times > Budget.MostStitches * 4)
        {
            Missing += operation.Takes > 0 ? (int)Math.Min((long)operation.Takes * times - Needles.LeftCount, 1_000_000_000) : 0;
            if (operation.Takes == 0)
            {
                Needles.Put(operation.Gives, Budget.MostStitches + 1);
            }

            return;
        }

        for (var left = times; left > 0;)
        {
            // Up to the next mark at once, so that marks keep their places among the stitches.
            var run = operation.Takes == 0 ? left : Math.Clamp(Needles.DistanceToMark(operation.Takes * left) / operation.Takes, 1, left);
            run = Needles.LeftCount == 0 ? left : run;
            Take(operation.Takes * run);
            Needles.Put(operation.Gives, operation.Makes * run);
            left -= run;
        }

        Needles.Drop(operation.PassesOver * times);
    }

    /// <summary>Works so many stitches plainly, without a word about it.</summary>
    public void Plain(int count)
    {
        Trial.Stitches?.Plain(count);
        Needles.Take(count);
        Needles.Put(StitchKind.Knit, count);
    }
}
