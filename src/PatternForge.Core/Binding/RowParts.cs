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
        var totals = Totals(row);
        var cutter = totals.Length > 1 ? new Cutter(row) : null;
        foreach (var claim in totals)
        {
            var end = claim.Origin.End;
            if (!HasWork(rest.Steps, int.MinValue, claim.Origin.Start) || !HasWork(rest.Steps, end, int.MaxValue))
            {
                continue;
            }

            cutter ??= new Cutter(row);
            var (before, after) = cutter.Steps(rest.Steps, end);
            var (claimsBefore, claimsAfter) = cutter.Claims(rest.Claims, end);
            rows.Add(rest with
            {
                Origin = TextSpan.FromBounds(rest.Origin.Start, Math.Min(rest.Origin.End, before[^1].Origin.End)),
                Steps = before,
                Claims = claimsBefore,
                HasUnread = cutter.HasUnread(before),
                Yarns = rest.Yarns?.OfPart(),
                BareGroup = rest.BareGroup is { } first && first.Start < end ? first : null,
            });
            rest = new BoundRow
            {
                Origin = after[0].Origin.Cover(after[^1].Origin),
                Sizes = rest.Sizes,
                Steps = after,
                Claims = claimsAfter,
                HasUnread = cutter.HasUnread(after) || (rest.HasUnread && !cutter.HasUnread(before)),
                WantsCount = rest.WantsCount,
                Yarns = rest.Yarns?.OfPart(),
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

    /// <summary>Cuts steps and claims in two at a place; where they stand in order, as they nearly always do, without looking at each of them again.</summary>
    private sealed class Cutter(BoundRow row)
    {
        private readonly bool _stepsInOrder = IsInOrder(row.Steps, s => s.Origin.Start);
        private readonly bool _claimsInOrder = IsInOrder(row.Claims, c => c.Origin.Start);
        private readonly bool _hasUnread = row.Steps.Any(IsUnread);

        public (ImmutableArray<Step> Before, ImmutableArray<Step> After) Steps(ImmutableArray<Step> steps, int at) => Cut(steps, s => s.Origin.Start, at, _stepsInOrder);

        public (ImmutableArray<Claim> Before, ImmutableArray<Claim> After) Claims(ImmutableArray<Claim> claims, int at) => Cut(claims, c => c.Origin.Start, at, _claimsInOrder);

        public bool HasUnread(ImmutableArray<Step> steps) => _hasUnread && steps.Any(IsUnread);

        private static bool IsUnread(Step step) => step is UnreadStep;

        private static bool IsInOrder<T>(ImmutableArray<T> all, Func<T, int> start)
        {
            for (var i = 1; i < all.Length; i++)
            {
                if (start(all[i]) < start(all[i - 1]))
                {
                    return false;
                }
            }

            return true;
        }

        private static (ImmutableArray<T> Before, ImmutableArray<T> After) Cut<T>(ImmutableArray<T> all, Func<T, int> start, int at, bool isInOrder)
        {
            if (!isInOrder)
            {
                return ([.. all.Where(x => start(x) < at)], [.. all.Where(x => start(x) >= at)]);
            }

            var cut = 0;
            while (cut < all.Length && start(all[cut]) < at)
            {
                cut++;
            }

            return (all[..cut], all[cut..]);
        }
    }
}
