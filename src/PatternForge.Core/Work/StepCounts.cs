using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What can be told of steps without working them.</summary>
internal static class StepCounts
{
    /// <summary>The first step that is more than a remark; null for none.</summary>
    public static Step? First(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            if (step is not (RemarkStep or SentenceStep))
            {
                return step;
            }
        }

        return null;
    }

    /// <summary>True when every step makes as many stitches as it takes.</summary>
    public static bool Keeps(ImmutableArray<Step> steps) => steps.All(step => step switch
    {
        OperationStep operation => operation.Operation.Change == 0,
        RunStep run => run.Operation.Change == 0,
        GroupStep group => Keeps(group.Body),
        RepeatStep repeat => Keeps(repeat.Body) && Keeps(repeat.Ending),
        CrochetStep stitch => stitch.Operation.Change == 0 && (stitch.Each is null || stitch.Place is null),
        ShellStep or InsteadStep or SkipStep or LeaveStep or NamedIncreaseStep or BeginAtStep or FreeSideStep => false,
        IncreaseStep or InOneStitchStep or PatternRowStep or CastOnStep or BindOffStep or HoldStep or ReturnStep or PickUpStep or SpreadStep or RowsStep or UnreadStep => false,
        _ => true,
    });

    /// <summary>True when a step works stitches that are on the needle.</summary>
    public static bool IsWork(Step step) => step is OperationStep or RunStep or GroupStep or RepeatStep or PatternRowStep;

    /// <summary>Where the last step stands that is more than a remark; -1 for none.</summary>
    public static int LastWork(ImmutableArray<Step> steps)
    {
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            if (steps[i] is not (RemarkStep or SentenceStep))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>True when the steps from here on work stitches before they turn or pick up others.</summary>
    public static bool NeedStitches(ImmutableArray<Step> steps, int from)
    {
        for (var i = from; i < steps.Length; i++)
        {
            if (IsWork(steps[i]) || steps[i] is BindOffStep { Stitches: not null } or HoldStep { FromRight: false })
            {
                return true;
            }

            if (steps[i] is TurnStep or PickUpStep or ReturnStep)
            {
                return false;
            }
        }

        return false;
    }

    /// <summary>True when the steps work a row; markers, joins, remarks, and stitches cast on to begin are none.</summary>
    public static bool MakeRow(ImmutableArray<Step> steps)
    {
        var (some, onlyBeside) = (false, true);
        foreach (var step in steps)
        {
            some |= step is not (RemarkStep or SentenceStep or MarkerStep or JoinStep or SlideStep or NeedleStep or NeedleCountStep or UnreadStep or CastOnStep or SpreadStep or ReturnStep or TurnStep);
            onlyBeside &= step is RemarkStep or SentenceStep or MarkerStep or JoinStep or SlideStep or CastOnStep or BindOffStep { Stitches: null, To: null } or ReturnStep or NeedleStep;
        }

        return some && !onlyBeside;
    }
}
