using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using static PatternForge.Tests.Rendering.HandMade;

namespace PatternForge.Tests.Rendering;

/// <summary>A crocheted square of our own: one size without a name, counts by kind, two colours, a pattern for a baby's blanket.</summary>
internal static class SampleSquare
{
    public static Compilation Compile()
    {
        var square = new HandMade { Facts = Facts() };
        square.Abbreviations = [Short("ch", "chain", false), Short("sl st", "slip stitch", false), Short("sp(s)", "space(s)", false), Short("tr", "treble crochet", false)];
        square.Heading("Square", "square")
            .Row("", "With A, ch 4, sl st in first ch to form a ring.", [null], [null])
            .Row("Rnd 1", "Ch 3 (counts as tr), 2 tr in ring, ch 2, *3 tr in ring, ch 2; rep from * twice more, sl st in top of ch-3. (12 tr, 4 ch-2 sps)", [null], [12], [12], [1], Kinds(("tr", 12), ("ch-2 sp", 4)))
            .Row("Rnd 2", "With B, (ch 3, 2 tr, ch 2, 3 tr) in any corner, *ch 1, (3 tr, ch 2, 3 tr) in next corner; rep from * twice more, ch 1, sl st in top of ch-3.", [12], [24], null, [2], Kinds(("tr", 24), ("ch-2 sp", 4), ("ch-1 sp", 4)))
            .Row("Rnds 3–6", "Work as Rnd 2, with 3 tr in every ch-1 sp of the sides.", [24], [72], null, [3, 4, 5, 6], Kinds(("tr", 72), ("ch-2 sp", 4), ("ch-1 sp", 20)))
            .Fenced("chart", "  o o o\n  | | |\n(  ring  )");
        square.Heading("Joining", "joining").Prose("Lay the squares out first.\n\n1. Join in rows.\n2. Join the rows.\n\n| Squares | Blanket |\n| --- | --- |\n| 5 by 6 | 60 by 72 cm |");
        return square.Compile("moor-square.pattern.md");
    }

    private static ImmutableArray<ImmutableSortedDictionary<string, int>> Kinds(params (string Kind, int Count)[] kinds) =>
        [kinds.ToImmutableSortedDictionary(k => k.Kind, k => k.Count, StringComparer.Ordinal)];

    private static PatternFacts Facts() => new()
    {
        Title = new Located<string>("Moor Square Baby Blanket", default),
        Craft = Craft.Crochet,
        Terms = new Located<Dialect>(Dialect.Uk, default),
        Summary = "Thirty small squares in two colours of heather.",
        Finished = [new Measurement("square", PerSize.Shared<Quantity?>(Cm(12)), default), new Measurement("blanket-width", PerSize.Shared<Quantity?>(In(23.5m)), default)],
        Gauges = [new Gauge(default) { Stitch = "treble crochet", Stitches = 17, Rows = 9, Width = In(4), Height = In(4), Tool = "4 mm hook" }],
        Yarns =
        [
            new Yarn(default) { Name = "Heath DK", Label = "A", Weight = "DK", WeightClass = 3, PutUpMass = G(50), PutUpLength = M(112), Needs = PerSize.Shared<Quantity?>(G(180)) },
            new Yarn(default) { Name = "Heath DK", Label = "B", Weight = "DK", WeightClass = 3, PutUpMass = G(50), PutUpLength = M(112), Needs = PerSize.Shared<Quantity?>(new Quantity(4, new Unit("balls", Dimension.Count, 1))) },
        ],
        Tools = [new Item("4 mm hook", null, default)],
    };
}
