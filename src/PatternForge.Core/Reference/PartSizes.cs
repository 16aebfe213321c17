using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>Sizes of a part of the body, one span a size and measurement, in the unit that its source has.</summary>
/// <param name="Name">Its name, by which a pattern asks for it.</param>
/// <param name="Title">What it holds.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="InCentimetres">True where its figures are in centimetres, false where they are in inches.</param>
/// <param name="Sizes">The names of its sizes, smallest first.</param>
/// <param name="Measures">The measurements, in that unit; null where a size has none.</param>
public sealed record PartTable(string Name, string Title, Source Source, bool InCentimetres, ImmutableArray<string> Sizes, ImmutableArray<(string Measure, ImmutableArray<(decimal Least, decimal Most)?> Spans)> Measures);

/// <summary>Heads, hands and feet. The tables of heads differ, a child's by two inches: each is offered under its own name.</summary>
/// <remarks>
/// Published foot sizes by age could not be confirmed and are left out. What stands for feet is the usual finished sock, with the ankle at 1 to 1.05 times the foot's girth and the gusset at 1.1 times (common practice), and the feet
/// that shoe sizes stand for: a European size counts two thirds of a centimetre of the last, which is some 1.5 cm longer than the foot (the Paris point; from memory), and a foot is 0.95 times as big around as it is long (common practice).
/// </remarks>
public static class PartSizes
{
    /// <summary>Every table.</summary>
    public static ImmutableArray<PartTable> All { get; } =
    [
        new("heads", "Heads: children, women and men from memory, and smaller than other tables have them", Sources.HeadSizes, false, ["preemie", "newborn", "baby", "toddler", "child", "woman", "man"],
        [
            ("head", One(12, 13, 14, 16, 18, 20, 22)),
            ("hat-height", [(4, 4.5m), (4.5m, 5), (5, 5.5m), (5.5m, 6), null, null, null]),
        ]),
        new("heads-by-age", "Heads by age, and the height of a hat from crown to brow", Sources.CommonPractice, false, ["preemie", "newborn", "0-6-months", "6-12-months", "toddler", "child", "teen", "woman", "man"],
        [
            ("head", One(12, 14, 16, 17, 19, 20.5m, 21, 21, 22)),
            ("hat-height", One(3, 3.5m, 4, 4.25m, 4.75m, 5, 5.25m, 5.25m, 5.5m)),
        ]),
        new("hands", "Hands: girth without the thumb", Sources.CommonPractice, false, ["baby", "toddler", "child", "woman", "man"], [("hand", [(3, 4), (4, 5.5m), (5.5m, 6), (6, 7.5m), (7.5m, 9)])]),
        new("feet", "Feet: the usual finished sock", Sources.SockSizes, false, ["woman", "man"], [("sock", One(8, 10))]),
        new("feet-by-shoe", "Feet by European shoe sizes, as socks are sold: worked out from the length of the shoe", Sources.ShoeSizes, true, [.. Shoes.Select(s => $"{s.Least}-{s.Most}")],
        [
            ("foot-length", Each(FootLength)),
            ("foot", Each(shoe => FootLength(shoe) * 0.95m)),
        ]),
    ];

    // The steps in which socks are sold.
    private static (int Least, int Most)[] Shoes => [(15, 18), (19, 22), (23, 26), (27, 30), (31, 34), (35, 38), (39, 42), (43, 46)];

    /// <summary>The table of that name; null when there is none.</summary>
    public static PartTable? Find(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.OrdinalIgnoreCase));

    // The foot in a shoe of that European size, in cm.
    private static decimal FootLength(int shoe) => (shoe * 2m / 3) - 1.5m;

    private static ImmutableArray<(decimal Least, decimal Most)?> Each(Func<int, decimal> cmOf) => [.. Shoes.Select(s => ((decimal, decimal)?)(ToHalf(cmOf(s.Least)), ToHalf(cmOf(s.Most))))];

    private static decimal ToHalf(decimal cm) => Math.Round(cm * 2, MidpointRounding.AwayFromZero) / 2;

    private static ImmutableArray<(decimal Least, decimal Most)?> One(params ReadOnlySpan<decimal> inches)
    {
        var sizes = ImmutableArray.CreateBuilder<(decimal, decimal)?>(inches.Length);
        foreach (var size in inches)
        {
            sizes.Add((size, size));
        }

        return sizes.MoveToImmutable();
    }
}
