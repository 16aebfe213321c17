using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>A stated count ends a row: what is worked behind it in the same line is a row of its own.</summary>
internal static class RowParts
{
    // No line that a maker can follow has so many rows in it.
    private const int MostParts = 256;

    /// <summary>Adds the row, or its parts where a total is stated before more work.</summary>
    public static void Split(BoundRow row, ImmutableArray<BoundRow>.Builder rows)
    {
        var rest = row;
        foreach (var claim in Totals(row))
        {
            var end = claim.Origin.End;
            if (!HasWork(rest.Steps, int.MinValue, claim.Origin.Start) || !HasWork(rest.Steps, end, int.MaxValue))
            {
                continue;
            }

            ImmutableArray<Step> before = [.. rest.Steps.Where(s => s.Origin.Start < end)];
            ImmutableArray<Step> after = [.. rest.Steps.Where(s => s.Origin.Start >= end)];
            rows.Add(rest with
            {
                Origin = TextSpan.FromBounds(rest.Origin.Start, Math.Min(rest.Origin.End, before[^1].Origin.End)),
                Steps = before,
                Claims = [.. rest.Claims.Where(c => c.Origin.Start < end)],
                HasUnread = HasUnread(before),
                BareGroup = rest.BareGroup is { } first && first.Start < end ? first : null,
            });
            rest = new BoundRow
            {
                Origin = after[0].Origin.Cover(after[^1].Origin),
                Sizes = rest.Sizes,
                Steps = after,
                Claims = [.. rest.Claims.Where(c => c.Origin.Start >= end)],
                HasUnread = HasUnread(after) || (rest.HasUnread && !HasUnread(before)),
                WantsCount = rest.WantsCount,
                BareGroup = rest.BareGroup is { } last && last.Start >= end ? last : null,
            };
        }

        rows.Add(rest);
    }

    private static ImmutableArray<Claim> Totals(BoundRow row) =>
        row.Claims is [{ Kind: ClaimKind.Total }] or [] ? row.Claims : [.. row.Claims.Where(c => c.Kind == ClaimKind.Total).OrderBy(c => c.Origin.Start).Take(MostParts)];

    private static bool HasWork(ImmutableArray<Step> steps, int from, int to)
    {
        foreach (var step in steps)
        {
            if (step.Origin.Start >= from && step.Origin.Start < to && Works(step))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Works(Step step) => step is not (RemarkStep or SentenceStep or MarkerStep or TurnStep or SlideStep or JoinStep or UnreadStep);

    private static bool HasUnread(ImmutableArray<Step> steps) => steps.Any(s => s is UnreadStep or AsPieceStep);
}
