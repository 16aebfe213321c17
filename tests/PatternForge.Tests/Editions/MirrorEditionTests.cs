using PatternForge.Core.Editions;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Editions;

/// <summary>The pattern in mirror image: sides change places, rows and stitches do not.</summary>
public class MirrorEditionTests
{
    private static DrawingView[] Drawings(PatternView view) =>
        [.. view.Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).Select(b => b.Drawing).OfType<DrawingView>()];

    private static string Of(string line) => EditionsOf.Text($"---\ntitle: Vest\nterms: us\n---\n\n## Notes\n\n{line}\n", "left-handed").Split("## Notes\n\n")[1].TrimEnd('\n');

    [Theory]
    [InlineData("Sew the left front to the right sleeve.", "Sew the right front to the left sleeve.")]
    [InlineData("Work along the left edge, then the right-hand edge.", "Work along the right edge, then the left-hand edge.")]
    [InlineData("Slip it back to the left needle, RH needle in front.", "Slip it back to the right needle, LH needle in front.")]
    [InlineData("Read it from right to left.", "Read it from left to right.")]
    [InlineData("The bird looks to the left, and leans right.", "The bird looks to the right, and leans left.")]
    [InlineData("Left (right) shoulder first.", "Right (left) shoulder first.")]
    [InlineData("The left side seam is longer than the left side.", "The right side seam is longer than the right-hand side.")]
    [InlineData("With the right side facing, on right-side rows, right sides together.", "With the right side facing, on right-side rows, right sides together.")]
    [InlineData("Sew the right side of the neck.", "Sew the left side of the neck.")]
    [InlineData("There are 12 stitches left, and 6 m of yarn left over.", "There are 12 stitches left, and 6 m of yarn left over.")]
    [InlineData("Seams are left open. That is right. Right after it, try the right size.", "Seams are left open. That is right. Right after it, try the right size.")]
    [InlineData("Make 1 left, make one right.", "Make 1 left, make one right.")]
    [InlineData("Left-leaning decreases turn clockwise.", "Right-leaning decreases turn counterclockwise.")]
    [InlineData("Left-handed makers know it.", "Left-handed makers know it.")]
    [InlineData("See [the left front](https://example.com/left-front).", "See [the right front](https://example.com/left-front).")]
    public void Sides_change_places_and_nothing_else(string line, string expected) => Assert.Equal(expected, Of(line));

    [Fact]
    public void What_is_not_sure_is_told()
    {
        var found = EditionsOf.In(EditionsOf.Compile("---\ntitle: Vest\n---\n\n## Notes\n\nFold it left.\n"), "left-handed").Findings;
        Assert.Contains(found, f => f.Rule == EditionRules.SideLeft);
    }

    [Fact]
    public void Pieces_and_what_is_measured_over_them_change_their_names_together()
    {
        const string Cardigan = "---\ntitle: Cardigan\nsizes: S (M, L)\nmeasured: {chest: Left Front}\n---\n\n## Left Front\n\nCO 20 (24, 28) sts.\n\nRow 1: K2tog, k to end. 19 (23, 27) sts.\n\n## Right Front\n\nWork as for Left Front.\n";
        var made = EditionsOf.In(EditionsOf.Compile(Cardigan), "left-handed").Compilation!.Source.Text;
        Assert.Contains("measured: {chest: Right Front}", made, StringComparison.Ordinal);
        Assert.Contains("## Right Front\n\nCO 20", made, StringComparison.Ordinal);
        Assert.Contains("## Left Front\n\nWork as for Right Front.", made, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chart_is_mirrored_and_its_letters_are_not()
    {
        const string Lace = "---\ntitle: Lace\ngauge: 20 sts and 28 rows = 10 cm in lace on 4 mm, blocked\n---\n\n## Lace\n\nCO 5 sts.\n\nRow 1 (RS): K1, k2tog, yo, k2.\n\nRow 2: Purl.\n\n```chart\nrows: 1-2\n```\n";
        var plain = EditionsOf.Compile(Lace);
        var drawing = Assert.Single(Drawings(ViewBuilder.Build(EditionsOf.In(plain, "left-handed").Compilation!)));
        var usual = Assert.Single(Drawings(ViewBuilder.Build(plain)));
        Assert.Contains("<g transform=\"matrix(-1 0 0 1 ", drawing.Pictures[0].Svg, StringComparison.Ordinal);
        Assert.DoesNotContain("matrix", usual.Pictures[0].Svg, StringComparison.Ordinal);
        Assert.All(drawing.Pictures[0].Svg.Split("<text ").Skip(1), t => Assert.Contains("matrix(-1 0 0 1 ", t.Split('>')[0], StringComparison.Ordinal));
        Assert.Contains(drawing.Notes, n => n.Contains("right-side rows from left to right", StringComparison.Ordinal));
        _ = System.Xml.Linq.XElement.Parse(drawing.Pictures[0].Svg);
    }

    [Fact]
    public void The_page_says_what_is_mirrored_and_what_is_not()
    {
        var notes = ViewBuilder.Build(EditionsOf.In(EditionsOf.Compile("---\ntitle: Cap\nphotos: [cap.jpg]\n---\n\n## Cap\n\nCO 6 sts.\n\nRow 1: K2, m1l, k2, ssk.\n"), "left-handed").Compilation!).EditionNotes;
        Assert.Contains(notes, n => n.Contains("mirror image", StringComparison.Ordinal));
        Assert.Contains(notes, n => n.Contains("ssk", StringComparison.Ordinal));
        Assert.Contains("Photos are not mirrored.", notes);
    }

    [Theory]
    [InlineData("tidewrack-scarf")]
    [InlineData("hawser-cowl")]
    [InlineData("mooring-square-mat")]
    [InlineData("fairwater-jumper")]
    public void A_drawing_file_keeps_its_title_and_key_where_they_are_read(string example)
    {
        var plain = EditionsOf.Compile(File.ReadAllText(RepositoryRoot.Path("examples", example + ".pattern.md")));
        var (here, there) = (Alone(plain), Alone(EditionsOf.In(plain, "left-handed").Compilation!));
        Assert.NotEmpty(here);
        Assert.Equal(here.Length, there.Length);
        foreach (var (one, other) in here.Zip(there))
        {
            Assert.Equal(Words(one), Words(other));
            Assert.NotEqual(one, other);
        }

        // Title and key stand at the left margin in both, from where they are read.
        static string[] Words(string svg) => [.. System.Xml.Linq.XElement.Parse(svg).Elements().Where(e => e.Name.LocalName == "text").Select(e => $"{e.Attribute("x")?.Value} {e.Attribute("y")?.Value} {e.Attribute("text-anchor")?.Value} {e.Attribute("transform")?.Value}")];

        static string[] Alone(Core.Compilation compiled) =>
            [.. PatternForge.Rendering.Documents.ViewBuilder.Build(compiled).Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).Select(b => b.Drawing).OfType<PatternForge.Rendering.Documents.DrawingView>().Where(d => d.Kind != PatternForge.Rendering.Documents.DrawingKind.Stripes).Select(d => d.Alone)];
    }
}
