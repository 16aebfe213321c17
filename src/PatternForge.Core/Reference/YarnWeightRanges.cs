using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A published span of figures; null where it is open.</summary>
public readonly record struct FigureSpan(decimal? Least, decimal? Most)
{
    /// <summary>True when a figure lies in the span, widened by a share of its ends.</summary>
    public bool Holds(decimal figure, decimal share = 0) => !(figure < Least * (1 - share)) && !(figure > Most * (1 + share));

    /// <summary>"16 to 20", "7 or more", "6 or fewer".</summary>
    public override string ToString() => (Least, Most) switch
    {
        ({ } least, { } most) => FormattableString.Invariant($"{least:0.##} to {most:0.##}"),
        ({ } least, null) => FormattableString.Invariant($"{least:0.##} or more"),
        (null, { } most) => FormattableString.Invariant($"{most:0.##} or less"),
        _ => "any",
    };
}

/// <summary>What is published for a class of yarn weight. Where printings differ, the span takes both in.</summary>
/// <param name="Class">0 to 7.</param>
/// <param name="KnitStitches">Stitches of stockinette over 4 in.</param>
/// <param name="Needles">Needles in millimetres.</param>
/// <param name="CrochetStitches">Single crochets (American) over 4 in; for class 0 double crochets.</param>
/// <param name="Hooks">Hooks in millimetres.</param>
/// <param name="MetresPer100Grams">Usual length of 100 grams.</param>
public sealed record YarnWeightRange(int Class, FigureSpan KnitStitches, FigureSpan Needles, FigureSpan CrochetStitches, FigureSpan Hooks, FigureSpan MetresPer100Grams);

/// <summary>Gauges, tools and lengths by class of yarn weight.</summary>
/// <remarks>
/// Crochet: Craft Yarn Council as printed in Crochet World, October 2018 (<see cref="Sources.YarnWeights"/>); knitting: the same as quoted in the trade
/// (<see cref="Sources.YarnWeightsQuoted"/>). Other printings and charts give class 0 as 33 stitches or more, class 1 as 28 to 36, class 2 as 24 to 28, class 3 as 20 to 24,
/// class 5 as 12 to 16, class 6 as 6 to 11 (crochet 5 to 9), class 7 as crochet of 6 or fewer on 15 mm and up; class 0 in crochet with steel hooks of 1.4 to 1.6 mm: both are accepted.
/// The lengths are the union of charts of dyers and shops (<see cref="Sources.YarnLengths"/>); fibre changes them, so they call for a second look and no more.
/// </remarks>
public static class YarnWeightRanges
{
    /// <summary>The classes in order.</summary>
    public static ImmutableArray<YarnWeightRange> All { get; } =
    [
        new(0, new(33, null), new(1.5m, 2.25m), new(32, 42), new(1.4m, 2.25m), new(480, null)),
        new(1, new(27, 36), new(2.25m, 3.25m), new(21, 32), new(2.25m, 3.5m), new(330, 600)),
        new(2, new(23, 28), new(3.25m, 3.75m), new(16, 20), new(3.5m, 4.5m), new(250, 400)),
        new(3, new(20, 24), new(3.75m, 4.5m), new(12, 17), new(4.5m, 5.5m), new(200, 300)),
        new(4, new(16, 20), new(4.5m, 5.5m), new(11, 14), new(5.5m, 6.5m), new(120, 240)),
        new(5, new(12, 16), new(5.5m, 8), new(8, 11), new(6.5m, 9), new(90, 160)),
        new(6, new(6, 11), new(8, 12.75m), new(5, 9), new(9, 16), new(40, 100)),
        new(7, new(null, 6), new(12.75m, null), new(null, 6), new(15, null), new(null, 60)),
    ];
}
