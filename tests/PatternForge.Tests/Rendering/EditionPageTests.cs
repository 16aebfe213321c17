using PatternForge.Rendering.Documents;
using PatternForge.Tests.Editions;

namespace PatternForge.Tests.Rendering;

/// <summary>What the page says itself, in the words of each edition.</summary>
public class EditionPageTests
{
    private const string Hat = "---\ntitle: Harbour hat\nterms: us\ngauge: 20 sts and 28 rnds = 10 cm in stockinette on 4 mm, blocked\ntools: 4 mm needles\nstitches:\n  - {name: BL3, how: slip 3, takes: 3, makes: 3}\n---\n\n## Hat\n\nCO 24 sts and join to work in the round.\n\nRnd 1: *K2tog, k2; rep from * around.\n\nRnd 2: *K2tog, k1; rep from * around. {count}\n";
    private const string Mat = "---\ntitle: Mat\ncraft: crochet\nterms: us\n---\n\n## Mat\n\nCh 4, join with sl st to form a ring.\n\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) 3 times in ring, join with sl st in top of ch-3.\n";

    [Fact]
    public void Without_abbreviations_the_page_writes_its_own_counts_in_full()
    {
        var view = Page(Hat, "spelled-out");
        Assert.Equal("20 stitches and 28 rounds", view.Gauges[0].Counts);
        Assert.Equal("uses 3 stitches, makes 3 stitches", view.SpecialStitches[0].Counts);
        var rows = view.Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).SelectMany(b => b.Rows).ToArray();
        Assert.Equal([null, "18 stitches", "12 stitches"], rows.Select(r => r.CountIsSaid && r.Count is null ? null : r.Count));
        Assert.DoesNotContain("sts", rows[2].Text, StringComparison.Ordinal);

        var mat = Page(Mat, "spelled-out").Instructions.SelectMany(s => s.Parts).SelectMany(p => p.Blocks).SelectMany(b => b.Rows).Last();
        Assert.Equal("12 double crochet, 4 chain-2 spaces", mat.Count);
    }

    [Fact]
    public void The_pattern_itself_keeps_the_trades_short_words()
    {
        var view = ViewBuilder.Build(EditionsOf.Compile(Hat));
        Assert.Equal("20 sts and 28 rounds", view.Gauges[0].Counts);
    }

    [Theory]
    [InlineData("us", "4 mm (US 6) needles")]
    [InlineData("uk", "4 mm (UK 8) needles")]
    [InlineData("spelled-out", "4 mm (US 6, UK 8) needles")]
    public void A_tool_is_told_in_the_names_of_the_readers(string edition, string tool) => Assert.Equal(tool, Page(Hat, edition).Tools[0].Text);

    private static PatternView Page(string text, string edition) => ViewBuilder.Build(EditionsOf.In(EditionsOf.Compile(text), edition).Compilation!);
}
