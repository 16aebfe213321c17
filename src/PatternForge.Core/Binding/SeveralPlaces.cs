using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>What a stitch takes and makes that its header defines over several places of the row below: "skip next st, dc in next st, dc in skipped st".</summary>
internal static class SeveralPlaces
{
    private const int Most = 200;

    /// <summary>Places used and stitches made; null where the steps do not tell, or all of them go into one place.</summary>
    public static (int Takes, int Makes)? Of(ImmutableArray<Step> steps)
    {
        var (takes, makes, isOver) = (0, 0, false);
        return Add(steps, 1, ref takes, ref makes, ref isOver) && isOver && takes is > 0 and <= Most && makes is > 0 and <= Most ? (takes, makes) : null;
    }

    private static bool Add(ImmutableArray<Step> steps, int times, ref int takes, ref int makes, ref bool isOver)
    {
        foreach (var step in steps)
        {
            switch (step)
            {
                case SkipStep { Place: { Kind: PlaceKind.Next or PlaceKind.First, Thing.Kind: ThingKind.Stitch or ThingKind.Named or ThingKind.Chain } skipped }:
                    takes += times * One(skipped.Count);
                    isOver = true;
                    break;
                case CrochetStep { Operation.Makes: > 0, Place: { Kind: PlaceKind.Next or PlaceKind.Same, Thing.Kind: ThingKind.Stitch or ThingKind.Named or ThingKind.Any } place } stitch:
                    var places = One(place.Count) * (place.Count is null ? stitch.Operation.Takes : 1);
                    takes += place.Kind == PlaceKind.Same ? 0 : times * places;
                    makes += times * One(stitch.Each) * Math.Max(1, places / Math.Max(1, stitch.Operation.Takes)) * stitch.Operation.Makes;
                    isOver |= place.Kind == PlaceKind.Next && places > 1;
                    break;
                case ShellStep { Place: { Kind: PlaceKind.Next, Thing.Kind: ThingKind.Stitch or ThingKind.Named } at } shell:
                    takes += times * One(at.Count);
                    foreach (var inner in shell.Body)
                    {
                        makes += inner is CrochetStep made ? times * One(at.Count) * One(made.Each) : 0;
                    }

                    break;
                case GroupStep group when times * One(group.Times) <= Most:
                    if (!Add(group.Body, times * One(group.Times), ref takes, ref makes, ref isOver))
                    {
                        return false;
                    }

                    break;
                case ChainStep or RemarkStep or SentenceStep:
                    break;
                default:
                    return false;
            }

            if (takes > Most || makes > Most)
            {
                return false;
            }
        }

        return true;
    }

    private static int One(Amount? amount) => amount is null ? 1 : Math.Clamp(amount[0] ?? 0, 0, Most);
}
