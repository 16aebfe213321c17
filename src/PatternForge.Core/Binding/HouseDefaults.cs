using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>The header keys that a studio may settle for all its patterns. A pattern's own value wins; lists are taken as a whole, `omit` alone adds up.</summary>
internal static class HouseDefaults
{
    private static readonly (string Key, Func<PatternFacts, PatternFacts, TextSpan, PatternFacts> Take)[] All =
    [
        ("designer", (own, house, _) => own with { Designer = house.Designer }),
        ("contact", (own, house, _) => own with { Contact = house.Contact }),
        ("craft", (own, house, _) => own with { Craft = house.Craft }),
        ("terms", (own, house, place) => own with { Terms = house.Terms is { } terms ? terms with { Origin = place } : null }),
        ("audience", (own, house, place) => own with { Audience = house.Audience is { } audience ? audience with { Origin = place } : null }),
        ("notes", (own, house, place) => own with { Notes = [.. house.Notes.Select(n => n with { Origin = place })] }),
        ("videos", (own, house, place) => own with { Videos = [.. house.Videos.Select(l => l with { Origin = place })] }),
        ("links", (own, house, place) => own with { Links = [.. house.Links.Select(l => l with { Origin = place })] }),
        ("care", (own, house, place) => own with { Care = [.. house.Care.Select(c => c with { Origin = place })] }),
        ("release", (own, house, place) => own with { Release = [.. house.Release.Select(r => r with { Origin = place })] }),
        ("paper", (own, house, place) => own with { Paper = house.Paper is { } paper ? paper with { Origin = place } : null }),
    ];

    /// <summary>The keys, in the order of the documents.</summary>
    public static ImmutableArray<string> Keys { get; } = [.. All.Select(d => d.Key), "omit"];

    /// <summary>The facts of a header with the house's own where it says nothing. Their place is the header's opening line.</summary>
    /// <param name="own">What the header says.</param>
    /// <param name="house">The house.</param>
    /// <param name="said">The header's keys; one whose value could not be made out counts as said.</param>
    public static PatternFacts Apply(PatternFacts own, House house, ImmutableHashSet<string> said)
    {
        var place = own.HeaderOrigin ?? default;
        foreach (var (key, take) in All)
        {
            if (house.DefaultKeys.Contains(key, StringComparer.Ordinal) && !said.Contains(key) && !own.Unread.Contains(key, StringComparer.Ordinal))
            {
                own = take(own, house.Defaults, place);
            }
        }

        return house.Defaults.Omit.IsEmpty ? own : own with { Omit = [.. own.Omit, .. house.Defaults.Omit] };
    }
}
