using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;
using PatternForge.Tests.Editions;

namespace PatternForge.Tests.Rendering;

/// <summary>Editions whose words are the pattern's own, and whose page is another.</summary>
public class PageEditionTests
{
    private const string Lace = "---\ntitle: Lace\nterms: us\nsizes:\n  names: S (M, L)\n  finished: {width: 20 (24, 28) cm}\nyarn: {name: Wool, put-up: 100 g = 200 m, needs: 100 (150, 300) m}\nphotos: [{file: lace.jpg, alt: The lace}]\n---\n\n## Lace\n\nCO 11 (13, 15) sts.\n\nRow 1 (RS): K1, *k2tog, yo; rep from * to last 2 sts, k2.\n\nRow 2: Purl. {count}\n\nRow 3: K2tog, k to end. 10 (12, 14) sts.\n\n```chart\nrows: 1-2\n```\n";
    private const string Mat = "---\ntitle: Mat\ncraft: crochet\nterms: us\n---\n\n## Mat\n\nRnd 1: 6 sc in magic ring. (6 sc)\n\nRnd 2: 2 dc in each sc around. (12 dc)\n";
    private const string Typed = "---\ntitle: Ladder\n---\n\n## Ladder\n\nCO 3 sts.\n\n```chart\nkey: . = k, - = p\n    . - .     3\n2   . - .\n    . - .     1\n```\n";

    private static PatternView View(string text, string edition) => ViewBuilder.Build(EditionsOf.In(EditionsOf.Compile(text), edition).Compilation!);

    private static string Html(string text, string edition)
    {
        var made = EditionsOf.In(EditionsOf.Compile(text), edition).Compilation!;
        return Renderer.Render(made, OutputFormat.Find("html")!).Files.Single(f => f.Name.EndsWith(".html", StringComparison.Ordinal)).Text;
    }

    [Fact]
    public void Words_only_has_no_chart_whose_rows_stand_in_words()
    {
        Assert.Single(Drawings(View(Lace, "marked-m")));
        var view = View(Lace, "words-only");
        Assert.Empty(Drawings(view));
        Assert.Contains("Charts are left out where their rows stand in words.", view.EditionNotes);
    }

    [Fact]
    public void Words_only_keeps_a_chart_without_words_and_says_so()
    {
        var view = View(Typed, "words-only");
        Assert.Single(Drawings(view));
        Assert.Contains(view.EditionNotes, n => n.StartsWith("The chart of Ladder", StringComparison.Ordinal) && n.Contains("stays", StringComparison.Ordinal));
    }

    [Fact]
    public void Charts_only_leaves_the_rows_of_the_chart_to_it_and_keeps_the_others()
    {
        var blocks = View(Lace, "charts-only").Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).ToArray();
        Assert.Equal(["", "Row 3"], blocks.SelectMany(b => b.Rows).Select(r => r.Label));
        Assert.Contains(blocks, b => b.Prose is { } prose && prose.Markdown.StartsWith("**Row 1 (RS) to Row 2:** work from the chart", StringComparison.Ordinal));
        Assert.Contains(blocks, b => b.Drawing is not null);
    }

    [Fact]
    public void Both_terms_stand_side_by_side_in_the_abbreviations()
    {
        var view = View(Mat, "both-terms");
        var single = Assert.Single(view.Abbreviations, a => a.Name == "sc");
        Assert.Equal(("single crochet", "dc", "double crochet"), (single.Meaning, single.OtherName, single.OtherMeaning));
        Assert.Equal("UK", view.OtherTerms);
        Assert.Null(View(Mat, "large-print").Abbreviations[0].OtherName);
        Assert.Contains("<td><b>tr</b></td><td>treble", Html(Mat, "both-terms"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_marked_size_stands_out_from_the_first()
    {
        Assert.Equal(2, View(Lace, "marked-m").Sizes!.Marked);
        Assert.Contains("id=\"size_2\" value=\"2\" checked=\"checked\"", Html(Lace, "marked-m"), StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"size_0\" value=\"0\" checked", Html(Lace, "marked-m"), StringComparison.Ordinal);
    }

    [Fact]
    public void Low_ink_leaves_out_photos_and_says_so()
    {
        var view = View(Lace, "low-ink");
        Assert.Empty(view.Photos);
        Assert.Contains("Photos are left out to spare ink.", view.EditionNotes);
    }

    [Fact]
    public void A_page_that_is_read_out_has_no_tables_no_signs_and_counts_by_size()
    {
        var html = Html(Lace, "screen-reader");
        Assert.DoesNotContain("<table", html, StringComparison.Ordinal);
        Assert.Contains("Size M: finished width: 24 cm, which is 9½ in.", html, StringComparison.Ordinal);
        Assert.Contains("Size M: 150 m, 165 yd, 75 g, 1 ball, 50 m left.", html, StringComparison.Ordinal);
        var rows = View(Lace, "screen-reader").Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).SelectMany(b => b.Rows).ToArray();
        Assert.Equal("Knit 1, star, knit 2 together, yarn over; repeat from star to last 2 stitches, knit 2.", rows[1].Instruction);
        Assert.Equal("S: 10, M: 12, L: 14 stitches", rows[3].Count);
    }

    private static DrawingView[] Drawings(PatternView view) =>
        [.. view.Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).Select(b => b.Drawing).OfType<DrawingView>()];

    [Theory]
    [InlineData("*K2, p2; rep from * to end.", "Star, knit 2, purl 2; repeat from star to end.")]
    [InlineData("K4, [p2, k2] 3 times.", "Knit 4, group: purl 2, knit 2, end of group, 3 times.")]
    [InlineData("(K1, yo, k1) in next st.", "(Knit 1, yarn over, knit 1) in next stitch.")]
    public void Signs_are_said_by_their_names(string row, string said)
    {
        var view = View($"---\ntitle: Band\n---\n\n## Band\n\nCO 16 sts.\n\nRow 1: {row}\n", "screen-reader");
        Assert.Equal(said, view.Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).SelectMany(b => b.Rows).Last().Instruction);
    }
}
