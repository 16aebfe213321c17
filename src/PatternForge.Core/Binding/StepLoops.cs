using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Finds out which loop of the stitch below crochet goes into: "sc in blo of each st", "working in front loops only, …". Counts do not need it; diagrams show it.</summary>
internal static class StepLoops
{
    private static readonly string[] Back = ["back loop", "back lp", "blo", "blp"];
    private static readonly string[] Front = ["front loop", "front lp", "flo", "flp"];

    /// <summary>The steps with their loops; as they are where the row speaks of none.</summary>
    public static ImmutableArray<Step> Mark(ImmutableArray<Step> steps, RowContext context)
    {
        if (!context.IsCrochet || steps.IsEmpty)
        {
            return steps;
        }

        var words = Words(steps[0].Origin.Start, steps[^1].Origin.End, context.Source);
        return !Says(words, Back) && !Says(words, Front) ? steps : In(steps, steps[0].Origin.Start, Whole(words, steps[0].Origin.Start), context.Source);
    }

    /// <summary>"Working in back loops only, …": for what stands behind it in the row.</summary>
    private static (StitchLoop Loop, int From) Whole(string words, int start)
    {
        var at = words.IndexOf("work", StringComparison.OrdinalIgnoreCase);
        var end = at < 0 ? -1 : words.IndexOf(',', at);
        return end > 0 ? (Of(words[at..end]), start + at) : (StitchLoop.Both, 0);
    }

    private static ImmutableArray<Step> In(ImmutableArray<Step> steps, int from, (StitchLoop Loop, int From) whole, SourceText source)
    {
        var marked = ImmutableArray.CreateBuilder<Step>(steps.Length);
        foreach (var step in steps)
        {
            marked.Add(step switch
            {
                CrochetStep stitch => stitch with { Loop = Of(Words(Math.Min(from, step.Origin.Start), step.Origin.End, source)) is not StitchLoop.Both and var own ? own : step.Origin.Start >= whole.From ? whole.Loop : StitchLoop.Both },
                RepeatStep repeat => repeat with { Body = In(repeat.Body, step.Origin.Start, whole, source), Ending = In(repeat.Ending, step.Origin.Start, whole, source) },
                GroupStep group => group with { Body = In(group.Body, step.Origin.Start, whole, source) },
                ShellStep shell => shell with { Body = In(shell.Body, step.Origin.Start, whole, source) },
                _ => step,
            });
            from = step.Origin.End;
        }

        return marked.MoveToImmutable();
    }

    private static string Words(int from, int to, SourceText source) => source.Text[Math.Clamp(from, 0, source.Text.Length)..Math.Clamp(Math.Max(from, to), 0, source.Text.Length)];

    private static StitchLoop Of(string words) => (Says(words, Back), Says(words, Front)) switch
    {
        (true, false) => StitchLoop.Back,
        (false, true) => StitchLoop.Front,
        _ => StitchLoop.Both,
    };

    private static bool Says(string words, string[] names)
    {
        foreach (var name in names)
        {
            for (var at = words.IndexOf(name, StringComparison.OrdinalIgnoreCase); at >= 0; at = words.IndexOf(name, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                var end = at + name.Length;
                var isWhole = name.Contains(' ', StringComparison.Ordinal) || end == words.Length || !char.IsLetterOrDigit(words[end]);
                if (isWhole && (at == 0 || !char.IsLetterOrDigit(words[at - 1])))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
