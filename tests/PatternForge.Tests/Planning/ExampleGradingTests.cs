using PatternForge.Core;
using PatternForge.Core.Reference;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Planning;

/// <summary>The examples that are computed from measurements: their counts against arithmetic that is done again here, and one more size.</summary>
public class ExampleGradingTests
{
    private const string Jumper = "fairwater-jumper";
    private const string Socks = "bilge-keel-socks";
    private const string Vest = "shingle-bank-vest";

    // A tenth column: invented, as the nine before it go on.
    private static readonly Dictionary<string, decimal> Tenth = new(StringComparer.Ordinal)
    {
        ["bust"] = 165.5m,
        ["cross back"] = 48m,
        ["upper arm"] = 52m,
        ["armhole depth"] = 27.5m,
        ["arm length to underarm"] = 47m,
        ["back waist length"] = 47.5m,
    };

    [Theory]
    [InlineData(Jumper, 9)]
    [InlineData(Socks, 5)]
    [InlineData(Vest, 8)]
    public void Every_row_is_worked_in_every_size_and_nothing_is_found(string name, int sizes)
    {
        var made = Compile(Text(name));

        Assert.Equal("", Said(made));
        Assert.Equal(sizes, made.Pattern.Facts.Sizes.Count);
        Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
        foreach (var line in made.Lines.Where(l => l.Label is "Rnd 1" or "Row 1"))
        {
            Assert.Equal(sizes, line.After.Count(c => c is not null));
        }
    }

    [Fact]
    public void The_jumper_has_the_stitches_that_the_published_bodies_and_the_gauge_give() => Fits(Compile(Text(Jumper)), [.. Enumerable.Range(0, 9).Select(Published)]);

    [Fact]
    public void One_more_column_of_measurements_makes_a_tenth_size()
    {
        var made = Compile(WithTenSizes(Text(Jumper)), Table());

        Assert.Equal("", Said(made));
        Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
        Fits(made, [.. Enumerable.Range(0, 9).Select(Published), m => Tenth[m]]);
    }

    [Fact]
    public void A_tenth_size_leaves_the_nine_as_they_are()
    {
        var (nine, ten) = (Compile(Text(Jumper)), Compile(WithTenSizes(Text(Jumper)), Table()));

        foreach (var label in (string[])["Dividing round", "Rnd 1", "Dec Rnd"])
        {
            Assert.Equal(After(nine, label), After(ten, label)[..9]);
        }
    }

    [Fact]
    public void The_socks_have_the_stitches_that_foot_and_gauge_give()
    {
        var made = Compile(Text(Socks));
        int[] feet = [19, 21, 23, 25, 27];
        var castOn = feet.Select(f => Nearest((f - 2) * 3.2m, 4)).ToArray();

        Assert.Equal(castOn, After(made, "Rnds 1-16"));
        Assert.Equal(castOn.Select(c => c / 2), made.Lines.First(l => l.Piece == "Heel").After.Select(c => c!.Value));
        Assert.Equal(castOn, made.Lines.Last(l => l.Piece == "Gusset").After.Select(c => c!.Value));
        Assert.Equal(castOn.Select(c => Nearest(c * 0.3m, 4)), made.Lines.Last(l => l.Piece == "Toe" && l.After.All(c => c > 0)).After.Select(c => c!.Value));
    }

    [Fact]
    public void The_vest_has_the_stitches_that_the_published_bodies_and_the_gauge_give()
    {
        var made = Compile(Text(Vest));
        for (var size = 0; size < 8; size++)
        {
            var body = Published(size);
            var width = Nearest((body("bust") + 12) / 2 * 1.5m, 2);
            var across = Nearest(body("cross back") * 1.5m, 2);
            var neck = Nearest(body("cross back") * 0.42m * 1.5m, 2);
            Assert.Equal(width, made.Lines.First(l => l.Label.StartsWith("Row 1", StringComparison.Ordinal)).After[size]);
            Assert.Equal(across, made.Lines.Last(l => l.Piece == "Back" && l.After[size] > 0).After[size]);
            Assert.Equal((across - neck) / 2, made.Lines.Last(l => l.Piece == "Front" && l.After[size] > 0).After[size]);
        }
    }

    // The counts that a designer would reckon by hand from bust, upper arm and the rest at 20 stitches to 10 cm.
    private static void Fits(Compilation made, Func<string, decimal>[] bodies)
    {
        var dividing = After(made, "Dividing round");
        var sleeves = After(made, "Rnd 1");
        var yoke = made.Lines[made.Lines.Select(l => l.Label).ToList().IndexOf("Dividing round")].Before;
        for (var size = 0; size < bodies.Length; size++)
        {
            var body = bodies[size];
            var underarm = 2 * Nearest(body("bust") * 2 * 0.025m, 1);
            var front = Nearest((body("bust") + 10) * 2 / 2 - underarm, 2);
            var arm = Nearest((body("upper arm") + 5) * 2, 2);
            Assert.Equal(2 * (front + underarm), dividing[size]);
            Assert.Equal(arm, sleeves[size]);
            Assert.Equal(2 * (front + arm - underarm), yoke[size]);
            var bust = made.Pattern.Facts.Finished.Single(m => m.Name == "bust").Values[size]!.Value;
            Assert.Equal(dividing[size] / 2m, bust);
            Assert.InRange(bust - body("bust"), 9, 11);
        }
    }

    private static Func<string, decimal> Published(int size) => measure =>
    {
        var range = BodySizes.All.Single(t => t.Group == BodyGroup.Woman && t.Measure == measure).Sizes[size];
        return (range.LeastCm + range.MostCm) / 2;
    };

    private static int Nearest(decimal exact, int multiple) => (int)decimal.Floor((exact / multiple) + 0.5m) * multiple;

    private static int[] After(Compilation made, string label) => [.. made.Lines.First(l => l.Label == label && !l.After.All(c => c is null) && (label != "Rnd 1" || l.Piece.StartsWith("Sleeve", StringComparison.Ordinal))).After.Select(c => c!.Value)];

    private static string Table() => "sizes: XS (S, M, L, 1X, 2X, 3X, 4X, 5X, 6X)\n" + string.Concat(Tenth.Select(t =>
        FormattableString.Invariant($"{t.Key.Replace(' ', '-')}: {Published(0)(t.Key)} ({string.Join(", ", Enumerable.Range(1, 8).Select(s => Published(s)(t.Key).ToString(System.Globalization.CultureInfo.InvariantCulture)))}, {t.Value}) cm\n")));

    private static string WithTenSizes(string text) => Replaced(text, ("names: XS (S, M, L, 1X, 2X, 3X, 4X, 5X)", "names: XS (S, M, L, 1X, 2X, 3X, 4X, 5X, 6X)"), ("from: women", "from: ten-sizes.yaml"), ("1570, 1700) m", "1570, 1700, 1820) m"), ("70, 75) m", "70, 75, 80) m"));

    private static string Replaced(string text, params (string From, string To)[] changes)
    {
        foreach (var (from, to) in changes)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        return text;
    }

    private static string Text(string name) => File.ReadAllText(RepositoryRoot.Path("examples", name + ".pattern.md")).ReplaceLineEndings("\n");

    private static Compilation Compile(string text, string? table = null) => Compiler.Compile(new SourceText("x.pattern.md", text), CompileOptions.Default with { ReadFile = name => name == "ten-sizes.yaml" ? table : null });

    private static string Said(Compilation made) => string.Join('\n', made.Findings.Select(f => $"{f.Rule.Code} {f.Message}"));
}
