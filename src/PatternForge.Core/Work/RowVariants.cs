using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>A row with one of its numbers changed by as much in every size: what the designer may have meant.</summary>
/// <param name="Steps">The row's steps with the change.</param>
/// <param name="Change">How much more (or less) the number is.</param>
/// <param name="Number">Where the number stands.</param>
/// <param name="Phrase">The words that it stands in.</param>
/// <param name="Depth">How deep in brackets and repeats; 0 for the edges of the row.</param>
internal sealed record RowVariant(ImmutableArray<Step> Steps, int Change, TextSpan Number, TextSpan Phrase, int Depth);

/// <summary>Makes the rows that differ from a row by one number.</summary>
internal static class RowVariants
{
    private const int MostDepth = 4;

    /// <summary>All rows in which one number is so much more or less.</summary>
    public static IEnumerable<RowVariant> Of(ImmutableArray<Step> steps, int change, int depth = 0)
    {
        for (var i = 0; i < steps.Length && depth <= MostDepth; i++)
        {
            foreach (var (step, number, phrase, at) in Of(steps[i], change, depth))
            {
                yield return new RowVariant(steps.SetItem(i, step), change, number, phrase, at);
            }
        }
    }

    private static IEnumerable<(Step Step, TextSpan Number, TextSpan Phrase, int Depth)> Of(Step step, int change, int depth)
    {
        (Step, TextSpan, TextSpan, int)? One(Amount? amount, Func<Amount, Step> with) =>
            amount is not null && Changed(amount, change) is { } other ? (with(other), amount.Origin, step.Origin, depth) : null;

        var own = step switch
        {
            OperationStep s => One(s.Times, a => s with { Times = a }),
            RunStep s => One(s.To.Stitches, a => s with { To = s.To with { Stitches = a } }),
            BindOffStep s => One(s.Stitches, a => s with { Stitches = a }),
            CastOnStep s => One(s.Stitches, a => s with { Stitches = a }),
            GroupStep s => One(s.Times, a => s with { Times = a }),
            RepeatStep { Times: not null } s => One(s.Times, a => s with { Times = a }),
            RepeatStep { To.Stitches: not null } s => One(s.To.Stitches, a => s with { To = s.To with { Stitches = a } }),
            CrochetStep { Place.Count: not null, Place.Kind: not PlaceKind.ChainFromHook } s => One(s.Place.Count, a => s with { Place = s.Place with { Count = a } }),
            CrochetStep s => One(s.Each, a => s with { Each = a }),
            SkipStep s => One(s.Place.Count, a => s with { Place = s.Place with { Count = a } }),
            _ => null,
        };
        if (own is { } changed)
        {
            yield return changed;
        }

        var body = step switch
        {
            GroupStep s => s.Body,
            RepeatStep s => s.Body,
            _ => [],
        };
        foreach (var inner in Of(body, change, depth + 1))
        {
            yield return (step is GroupStep group ? group with { Body = inner.Steps } : (RepeatStep)step with { Body = inner.Steps }, inner.Number, inner.Phrase, inner.Depth);
        }

        foreach (var inner in step is RepeatStep { Ending.IsEmpty: false } ending ? Of(ending.Ending, change, depth) : [])
        {
            yield return ((RepeatStep)step with { Ending = inner.Steps }, inner.Number, inner.Phrase, inner.Depth);
        }
    }

    private static Amount? Changed(Amount amount, int change) =>
        amount.Origin.IsEmpty || amount.Values.Values.Any(v => v + change <= 0) ? null : amount with { Values = amount.Values.Map(v => v + change) };
}
