using PatternForge.Core;
using PatternForge.Core.Model;
using static PatternForge.Tests.Rendering.HandMade;

namespace PatternForge.Tests.Rendering;

/// <summary>A cardigan of our own in nine sizes with many measurements: the widest tables and the longest counts.</summary>
internal static class SampleCardigan
{
    public static Compilation Compile()
    {
        var cardigan = new HandMade { Facts = Facts() };
        int?[] Counts(int first, int step) => [.. Enumerable.Range(0, 9).Select(i => (int?)(first + (i * step)))];
        string Trade(int?[] counts) => $"{counts[0]} ({string.Join(", ", counts[1..])})";
        var cast = Counts(161, 20);
        var yoke = Counts(193, 24);
        cardigan.Heading("Body", "body")
            .Row("", $"CO {Trade(cast)} sts.", Counts(0, 0).Select(_ => (int?)null).ToArray(), cast)
            .Row("Row 1 (WS)", "P1, *k1, p1; rep from * to end.", cast, cast, numbers: [1])
            .Row("Row 2 (RS)", "K1, *p1, k1; rep from * to end.", cast, cast, numbers: [2])
            .Row("Rows 3–46", "Rep Rows 1 and 2.", cast, cast, numbers: [.. Enumerable.Range(3, 44)])
            .Row("Next row (RS)", $"Inc evenly across. {Trade(yoke)} sts.", cast, yoke, yoke)
            .Row("Next row (WS), increasing at both fronts", "P1, m1p, p to last st, m1p, p1.", yoke, [.. yoke.Select(n => n + 2)]);
        cardigan.Heading("Right front", "right-front", 3).Row("Row 1", "K.", Counts(40, 5), Counts(40, 5), numbers: [1]);
        cardigan.Heading("Left front", "left-front", 3).Prose("Work as right front, reversing the shaping.");
        return cardigan.Compile("weir-cardigan.pattern.md");
    }

    private static PatternFacts Facts() => new()
    {
        Title = new Located<string>("Weir Cardigan with a Title That Goes On for Quite Some Time", default),
        Designer = "Perrin Vale",
        Sizes = new SizeSet(["1", "2", "3", "4", "5", "6", "7", "8", "9"]),
        Fits = [new Measurement("bust", Each(Cm, 71, 81, 91, 102, 112, 122, 132, 142, 152), default)],
        Finished =
        [
            new Measurement("bust", Each(Cm, 81, 91, 101, 112, 122, 132, 142, 152, 162), default),
            new Measurement("length", Each(Cm, 52, 54, 56, 58, 60, 62, 64, 66, 68), default),
            new Measurement("upper-arm", Each(Cm, 29, 31, 33, 36, 39, 42, 45, 48, 51), default),
            new Measurement("sleeve length", Each(Cm, 43, 44, 44, 45, 45, 46, 46, 46, 46), default),
            new Measurement("yoke depth", Each(In, 7.5m, 8, 8.25m, 8.5m, 9, 9.25m, 9.5m, 10, 10.5m), default),
        ],
        Yarns =
        [
            new Yarn(default) { Name = "Sluice Sport", Label = "MC", WeightClass = 2, PutUpMass = G(50), PutUpLength = M(150), Needs = Each(M, 820, 900, 990, 1100, 1210, 1320, 1440, 1560, 1690) },
            new Yarn(default) { Name = "Sluice Sport", Label = "CC", WeightClass = 2, PutUpMass = G(50), PutUpLength = M(150), Needs = Each(M, 120, 130, 140, 150, 170, 180, 200, 210, 230) },
        ],
    };
}
