using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Tells from a knitted row's steps whether it can be read in several ways. Most rows cannot: the stitches need not be kept to go back to.</summary>
internal static class ReadingSigns
{
    /// <summary>False when <see cref="Choices"/> cannot be asked anything while these steps are worked.</summary>
    public static bool MayDiffer(ImmutableArray<Step> steps)
    {
        for (var i = 0; i < steps.Length; i++)
        {
            var differs = steps[i] switch
            {
                OperationStep or RemarkStep or SentenceStep or MarkerStep or JoinStep or SlideStep or TurnStep or NeedleStep or CastOnStep or PickUpStep => false,
                BindOffStep bindOff => bindOff.Stitches is not null, // the stitch after it
                RunStep run => i > 0 && run is not { Operation: { Takes: 1, Makes: 1 } }, // "k8, k2tog around"
                GroupStep group => MayDiffer(group.Body),
                RepeatStep repeat => repeat.IsTwoWays || MayDiffer(repeat.Body) || MayDiffer(repeat.Ending),
                _ => true,
            };
            if (differs)
            {
                return true;
            }
        }

        return false;
    }
}
