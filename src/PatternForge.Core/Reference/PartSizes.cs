using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>Sizes of a part of the body, one span a size and measurement, in inches as told.</summary>
/// <param name="Name">Its name, by which a pattern asks for it.</param>
/// <param name="Title">What it holds.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Sizes">The names of its sizes, smallest first.</param>
/// <param name="Measures">The measurements; null where a size has none.</param>
public sealed record PartTable(string Name, string Title, Source Source, ImmutableArray<string> Sizes, ImmutableArray<(string Measure, ImmutableArray<(decimal Least, decimal Most)?> Inches)> Measures);

/// <summary>Heads, hands and feet. The tables of heads differ, a child's by two inches: each is offered under its own name.</summary>
/// <remarks>
/// Published foot sizes could not be confirmed and are left out; what stands for feet is the usual finished sock, with the ankle at 1 to 1.05 times the foot's girth, the foot's girth at 0.95 times its length and the gusset at
/// 1.1 times the girth (common practice).
/// </remarks>
public static class PartSizes
{
    /// <summary>Every table.</summary>
    public static ImmutableArray<PartTable> All { get; } =
    [
        new("heads", "Heads: children, women and men from memory, and smaller than other tables have them", Sources.HeadSizes, ["preemie", "newborn", "baby", "toddler", "child", "woman", "man"],
        [
            ("head", One(12, 13, 14, 16, 18, 20, 22)),
            ("hat-height", [(4, 4.5m), (4.5m, 5), (5, 5.5m), (5.5m, 6), null, null, null]),
        ]),
        new("heads-by-age", "Heads by age, and the height of a hat from crown to brow", Sources.CommonPractice, ["preemie", "newborn", "0-6-months", "6-12-months", "toddler", "child", "teen", "woman", "man"],
        [
            ("head", One(12, 14, 16, 17, 19, 20.5m, 21, 21, 22)),
            ("hat-height", One(3, 3.5m, 4, 4.25m, 4.75m, 5, 5.25m, 5.25m, 5.5m)),
        ]),
        new("hands", "Hands: girth without the thumb", Sources.CommonPractice, ["baby", "toddler", "child", "woman", "man"], [("hand", [(3, 4), (4, 5.5m), (5.5m, 6), (6, 7.5m), (7.5m, 9)])]),
        new("feet", "Feet: the usual finished sock", Sources.SockSizes, ["woman", "man"], [("sock", One(8, 10))]),
    ];

    /// <summary>The table of that name; null when there is none.</summary>
    public static PartTable? Find(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.OrdinalIgnoreCase));

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
