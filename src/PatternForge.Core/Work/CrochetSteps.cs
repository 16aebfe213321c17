using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What can be told of crochet steps without working them.</summary>
internal static class CrochetSteps
{
    /// <summary>True when a stitch goes into a chain counted from the hook; a picot's slip stitch does not make it so.</summary>
    public static bool HasFromHook(ImmutableArray<Step> steps) => steps.FirstOrDefault(s => s is not (RemarkStep or SentenceStep or TurnStep)) is SkipStep { Place.Thing.Kind: ThingKind.Chain } || Any(steps, s => s is CrochetStep { Operation.Id: not "sl st", Place.Kind: PlaceKind.ChainFromHook } or CrochetStep { Place: { Kind: PlaceKind.TurningChain, FromStart: 1 } } or BeginAtStep { Place.Kind: PlaceKind.ChainFromHook } or SkipStep { Place: { Kind: PlaceKind.First, Thing.Kind: ThingKind.Chain } });

    /// <summary>True when stitches go into a ring.</summary>
    public static bool HasRing(ImmutableArray<Step> steps) => Any(steps, s => s is CrochetStep { Place.Kind: PlaceKind.Ring } or ShellStep { Place.Kind: PlaceKind.Ring } or RingStep);

    /// <summary>"Ch 3, 2 dc, ch 2, *3 dc, ch 2, rep from * 3 times, join" from nothing: stitches with no place go into the ring.</summary>
    public static bool IsRingRound(ImmutableArray<Step> steps) =>
        Closes(steps) && steps.FirstOrDefault(s => s is not (RemarkStep or SentenceStep)) is ChainStep && Any(steps, s => s is CrochetStep) && !Any(steps, s => s is CrochetStep { Place: not null } or ShellStep or SkipStep or RunStep or OperationStep);

    /// <summary>True when the row itself closes a chain into a ring.</summary>
    public static bool MakesRing(ImmutableArray<Step> steps) => steps.Any(s => s is RingStep) && steps.Any(s => s is ChainStep);

    /// <summary>"hdc in each st to next ch-1 sp": stitches up to a space.</summary>
    public static bool GoesToSpaces(ImmutableArray<Step> steps) => Any(steps, s => s is CrochetStep { Place: { Kind: PlaceKind.EachToNext, Until.Kind: ThingKind.Space } });

    /// <summary>"Dc in each ch around": a closed chain is worked into chain by chain.</summary>
    public static bool GoesIntoEachChain(ImmutableArray<Step> steps) =>
        !HasRing(steps) && Any(steps, s => s is CrochetStep { Operation.Id: not "sl st", Place: { Kind: PlaceKind.Each or PlaceKind.EachToLast or PlaceKind.Next, Thing.Kind: ThingKind.Chain } });

    /// <summary>True when the round is closed.</summary>
    public static bool Closes(ImmutableArray<Step> steps) => steps.Any(s => s is CloseStep);

    /// <summary>True when the row can begin from nothing: a foundation, a ring, stitches along an edge.</summary>
    public static bool BeginPiece(ImmutableArray<Step> steps)
    {
        var work = steps.Where(s => s is not (RemarkStep or SentenceStep or TurnStep or JoinStep)).ToArray();
        return work.Length > 0 && (HasRing(steps) || IsRingRound(steps) || (work[0] is ChainStep && (work.All(s => s is ChainStep or RingStep or CloseStep) || HasFromHook(steps)))
            || work[0] is CrochetStep { Operation: { Takes: 0, Makes: > 0 } } or CrochetStep { Place.Kind: PlaceKind.Edge or PlaceKind.ChainFromHook });
    }

    private static bool Any(ImmutableArray<Step> steps, Func<Step, bool> test) => steps.Any(step => test(step) || step switch
    {
        GroupStep group => Any(group.Body, test),
        RepeatStep repeat => Any(repeat.Body, test),
        _ => false,
    });
}
