using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>The work as it was before one more pass of a repeat, so that a pass that does not come out can be ripped back.</summary>
internal readonly record struct RepeatPoint(Lifeline Lifeline, int[] Held, bool KnowsPlaces, bool InTheRound, FabricSide? NextSide, int Missing, int Used)
{
    /// <summary>The point that has been reached; puts a lifeline into the needles.</summary>
    public static RepeatPoint Of(RowRun run) =>
        new(run.Needles.PutLifeline(), [.. run.Work.Held], run.Work.KnowsPlaces, run.State.InTheRound, run.State.NextSide, run.Missing, run.Used);

    /// <summary>Back to that point; the lifeline stays in.</summary>
    public void RipBack(RowRun run)
    {
        run.Needles.RipBackTo(Lifeline);
        run.Work.Held.Clear();
        run.Work.Held.AddRange(Held);
        run.Work.KnowsPlaces = KnowsPlaces;
        run.State.InTheRound = InTheRound;
        run.State.NextSide = NextSide;
        (run.Missing, run.Used) = (Missing, Used);
    }
}
