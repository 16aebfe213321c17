using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The side of crochet that is worked first, the other stitches of its first row left unworked.</summary>
/// <param name="Begun">Its stitches after its first row.</param>
/// <param name="Left">What was left of the row below; null where another row of it left stitches too, so that it is not known where the sides part.</param>
/// <param name="Ended">Its last row, when its yarn was fastened off; null before.</param>
internal sealed record FirstOfTwo(int Begun, RowBelow? Left, RowBelow? Ended)
{
    /// <summary>What is known of it when a row has been worked.</summary>
    public static FirstOfTwo? After(FirstOfTwo? side, ImmutableArray<Step> steps, CrochetRun run, int count, Dialect terms)
    {
        // A row of an armhole slips over stitches at its beginning, and leaves as many at its end.
        var leaves = !run.InTheRound && steps.Any(s => s is LeaveStep { IsTurningChain: false }) && !steps.Any(s => s is CrochetStep { Operation.Id: "sl st" });
        return !leaves ? side
            : side is { Ended: null } ? side with { Left = null }
            : new(count, new RowBelow([.. run.Below.Row.Tops.Skip(run.Below.At)], [], terms) { IsCountOnly = run.Below.Row.IsCountOnly }, null);
    }

    /// <summary>True for a row that passes over stitches and joins its yarn behind them: it goes into what the first side has left.</summary>
    public static bool Skips(ImmutableArray<Step> steps) =>
        steps.Where(s => s is not (RemarkStep or SentenceStep)).Take(2).ToArray() is [SkipStep, BeginAtStep { IsJoin: true }] or [BeginAtStep { IsJoin: true, Place.Count: not null }, ..];
}
