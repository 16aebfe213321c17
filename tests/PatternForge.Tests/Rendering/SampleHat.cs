using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using static PatternForge.Tests.Rendering.HandMade;

namespace PatternForge.Tests.Rendering;

/// <summary>A hat of our own in five sizes that has every part a page can have.</summary>
internal static class SampleHat
{
    private static readonly int[] CastOn = [80, 88, 96, 104, 112];

    public static Compilation Compile() => Make().Compile("saltgrass-hat.pattern.md");

    public static HandMade Make()
    {
        var hat = new HandMade { Facts = Facts() };
        hat.Abbreviations =
        [
            Short("CO", "cast on", false), Short("k", "knit", false), Short("k2tog", "knit 2 stitches together", false), Short("m", "marker", false),
            Short("p", "purl", false), Short("pm", "place marker", false), Short("rep", "repeat", false), Short("rnd(s)", "round(s)", false),
            Short("RT", "right twist", true), Short("sm", "slip marker", false), Short("st(s)", "stitch(es)", false), Short("WS", "wrong side", false),
        ];
        hat.Heading("About", "about").Prose("Saltgrass grows where the sea comes twice a day. The *twisted stitches* stand like its stems, and lean with the wind at the crown.\n\nKnit it deep, and fold the brim.");
        hat.Heading("Construction", "construction").Prose("The hat is worked **in the round from the brim up**. To make it deeper, work more rounds before the crown; every 3 rounds add 1 cm (½ in) and take about 3 m of yarn.");
        var start = Array.ConvertAll(CastOn, n => (int?)n);
        hat.Heading("Brim", "brim")
            .Row("", "CO 80 (88, 96, 104, 112) sts with the smaller needle. Pm and join to work in the round, taking care not to twist.", [null, null, null, null, null], start)
            .Row("Rnds 1–10", "*K2, p2; rep from * to end.", start, start, numbers: [.. Enumerable.Range(1, 10)])
            .Prose("Try it on: the brim should sit snugly without pulling in.")
            .Row("", "Change to the larger needle.", start, start);
        hat.Heading("Body", "body")
            .Row("Rnd 11", "Knit.", start, start, numbers: [11])
            .Row("Rnd 12", "*RT, k2; rep from * to end.", start, start, numbers: [12])
            .Row("Rnd 13", "Knit.", start, start, numbers: [13])
            .Row("Rnd 14", "K1, *k2, RT; rep from * to last 3 sts, k3.", start, start, numbers: [14])
            .Row("", "Rep Rnds 11–14 until the hat measures 11 (12, 13, 14, 15) cm from the cast-on edge, ending after Rnd 14.", start, start);
        hat.Heading("Crown", "crown").Prose("Change to double-pointed needles when the stitches no longer reach round.");
        var now = CastOn;
        for (var (round, plain) = (1, 8); plain >= 0; round++, plain--)
        {
            var next = Array.ConvertAll(now, n => n - 8);
            var ks = string.Join(", ", Enumerable.Range(plain + 1, 4));
            var text = plain == 0 ? $"*K0 ({ks}), k2tog; rep from * to end." : $"*K{plain} ({ks}), k2tog; rep from * to end.";
            var claim = round is 1 or 5 or 9 ? $" {next[0]} ({string.Join(", ", next[1..])}) sts." : "";
            hat.Row($"Rnd {round}", text + claim, Array.ConvertAll(now, n => (int?)n), Array.ConvertAll(next, n => (int?)n), claim.Length > 0 ? Array.ConvertAll(next, n => (int?)n) : null, [round]);
            now = next;
        }

        hat.Heading("Finishing", "finishing").Row("", "Cut the yarn, leaving a tail of 20 cm. Thread it through the remaining sts, draw up and fasten off inside.", Array.ConvertAll(now, n => (int?)n), [0, 0, 0, 0, 0])
            .Row("", "Weave in ends. Soak, press out the water in a towel, and dry flat over a bowl of the size of the head.");
        hat.Heading("Care", "care").Prose("Wash by hand, cool, with wool soap. Dry flat, away from heat.");
        hat.Heading("Terms of use", "terms-of-use").Prose("You may sell hats that you make yourself from this pattern. Please do not copy or pass on the pattern itself.");
        hat.Heading("Thanks", "thanks").Prose("To the tide tables, and to everyone who tried on a half-made hat.");
        hat.Heading("Other designs", "other-designs").Prose("- [Eelgrass mitts](https://example.com/eelgrass)\n- [Samphire cowl](https://example.com/samphire)");
        return hat;
    }

    private static PatternFacts Facts() => new()
    {
        Title = new Located<string>("Saltgrass Hat", default),
        Designer = "Perrin Vale",
        Version = "1.2",
        Date = "2025-03-01",
        Terms = new Located<Dialect>(Dialect.Us, default),
        Level = new Located<Level>(Level.Easy, default),
        LevelReason = "Knit, purl and one twist, in the round, with simple crown shaping",
        Summary = "A close, deep hat with stems of twisted stitches that lean together at the crown. One skein for most heads, one evening for the brim.",
        Sizes = new SizeSet(["Toddler", "Child", "Adult S", "Adult M", "Adult L"]),
        Fits = [new Measurement("head", Each(Cm, 46, 50, 54, 57, 60), default)],
        Finished =
        [
            new Measurement("circumference", Each(Cm, 36.5m, 40, 43.5m, 47, 51), default),
            new Measurement("height, brim folded", Each(Cm, 16, 17.5m, 19, 20, 21), default),
        ],
        Ease = "about 10 cm smaller than the head; ribbing and twists stretch to fit",
        Gauges =
        [
            new Gauge(default) { Name = "Twisted stitch", Stitch = "the pattern of Rnds 11–14", Stitches = 22, Rows = 30, RowsAreRounds = true, Width = Cm(10), Height = Cm(10), Tool = "4 mm", Blocked = true },
            new Gauge(default) { Name = "Ribbing", Stitch = "k2, p2 rib, unstretched", Stitches = 26, Width = Cm(10), Tool = "3.5 mm", Blocked = false },
        ],
        Yarns =
        [
            new Yarn(default)
            {
                Name = "Foreshore Worsted", Label = "MC", Fibre = "80% wool, 20% flax", WeightClass = 4, Weight = "worsted", PutUpMass = G(100), PutUpLength = M(200),
                Needs = Each(M, 120, 140, 160, 180, 205), Colours = ["Marram"],
                Alternatives =
                [
                    new YarnAlternative("Any plain worsted wool", "a little warmer, at half the price", G(50), M(98), default),
                    new YarnAlternative("Two strands of Creek Sock", "smoother and heavier", null, null, default),
                ],
            },
        ],
        Tools = [new Item("4 mm (US 6) circular needle, 40 cm long, and double-pointed needles", null, default), new Item("3.5 mm (US 4) circular needle, 40 cm long", null, default)],
        Notions = [new Item("stitch marker", null, default), new Item("tapestry needle", "https://example.com/needles", default)],
        Stitches = [new StitchDefinition("RT", "k2tog but leave both sts on the left needle; knit the first st again, then slip both off together", "right twist", 2, 2, default)],
        Notes = [new Located<string>("Slip the marker at the start of every round.", default)],
        Sample = new Sample("Adult M", G(88), default),
        Photos = [new Photo("photos/front.jpg", "A woman on a sea wall in a deep green hat, its brim folded once", "Adult M in Marram", default), new Photo("photos/crown.jpg", "The crown from above: eight lines of decreases meet in a star", null, default)],
        Videos = [new Link("How to work the right twist", "https://example.com/right-twist", default)],
        Contact = "help@perrinvale.example.com",
    };
}
