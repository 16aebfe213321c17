using PatternForge.Core.Editions;

namespace PatternForge.Tests.Editions;

public class SpelledOutEditionTests
{
    [Theory]
    [InlineData("Row 2 (RS): K2, p1, [k1, yo, k2tog] twice, ssk, k to last 3 sts, sl 1 wyif, k2.", "Row 2 (right side): Knit 2, purl 1, [knit 1, yarn over, knit 2 together] twice, slip-slip-knit, knit to last 3 stitches, slip 1 with yarn in front, knit 2.")]
    [InlineData("Row 2: K1, M1L, k1 tbl, p2tog, C4F, T3B, k to end.", "Row 2: Knit 1, make 1 left, knit 1 through the back loop, purl 2 together, cable 4 front, twist 3 back, knit to end.")]
    [InlineData("Row 2: 2/2 LC, 2/1 RPC, LT, k to end.", "Row 2: 2 over 2 left cross, 2 over 1 right purl cross, left twist, knit to end.")]
    [InlineData("Row 2: K20, w&t.", "Row 2: Knit 20, wrap and turn.")]
    [InlineData("BO 4 sts, k to end.", "Bind off 4 stitches, knit to end.")]
    [InlineData("Row 2: Sl 1, k2tog, psso, kfb, *k2, p2; rep from * to last 2 sts, k2.", "Row 2: Slip 1, knit 2 together, pass slipped stitch over, knit into the front and back, *knit 2, purl 2; repeat from * to last 2 stitches, knit 2.")]
    public void Knitting_is_written_out(string row, string words)
    {
        var plain = EditionsOf.Compile($"---\ntitle: Harbour piece\nterms: us\n---\n\n## Piece\n\nCO 24 sts.\n\nRow 1: Knit.\n\n{row}\n");
        var made = EditionsOf.In(plain, "spelled-out");
        Assert.Equal($"---\ntitle: Harbour piece\nterms: us\n---\n\n## Piece\n\nCast on 24 stitches.\n\nRow 1: Knit.\n\n{words}\n", made.Source.Text.Text);
        Assert.Empty(made.Compilation!.Abbreviations);
    }

    [Theory]
    [InlineData("Row 2: Ch 1, turn, sc in next 3 sts, 2 hdc in next st, sk 1 st, dc in last st.", "Row 2: Chain 1, turn, single crochet in next 3 stitches, 2 half double crochet in next stitch, skip 1 stitch, double crochet in last stitch.")]
    [InlineData("Row 2: Ch 3, turn, sk first st, *ch 1, sk 1 st, dc in next st; rep from * once more, dc in 3rd ch of beg ch-3.", "Row 2: Chain 3, turn, skip first stitch, *chain 1, skip 1 stitch, double crochet in next stitch; repeat from * once more, double crochet in 3rd chain of beginning chain-3.")]
    public void Crochet_is_written_out(string row, string words)
    {
        var plain = EditionsOf.Compile($"---\ntitle: Harbour piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\nBegin with 6 sts.\n\n{row}\n");
        Assert.Equal($"---\ntitle: Harbour piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\nBegin with 6 stitches.\n\n{words}\n", EditionsOf.In(plain, "spelled-out").Source.Text.Text);
    }

    [Fact]
    public void The_patterns_own_list_goes_and_its_own_stitches_keep_their_names()
    {
        const string Source = "---\ntitle: Harbour piece\nabbreviations:\n  - k = knit\n  - st = stitch\nstitches:\n  mb: (k1, yo, k1) in next st, turn, p3, turn, k3tog\nyarn: [{name: Any, label: A}]\n---\n\n## Piece\n\nCO 5 sts.\n\nRow 1: K2, mb, k2 in A. Visit St Ives, 3 m from the sea.\n";
        var text = EditionsOf.Text(Source, "spelled-out");
        Assert.DoesNotContain("abbreviations", text, StringComparison.Ordinal);
        Assert.Contains("  mb: (knit 1, yarn over, knit 1) in next stitch, turn, purl 3, turn, knit 3 together\n", text, StringComparison.Ordinal);
        Assert.Contains("Row 1: Knit 2, mb, knit 2 in A.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sizes_that_are_letters_are_no_stitches()
    {
        var text = EditionsOf.Text("---\ntitle: Harbour piece\nsizes: S (M, L)\n---\n\n## Piece\n\nCO 8 (10, 12) sts.\n\nSizes S and M only: Row 1: K2tog, k to end.\n", "spelled-out");
        Assert.Contains("Sizes S and M only: Row 1: Knit 2 together, knit to end.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_would_be_read_otherwise_stays_and_is_told()
    {
        var made = EditionsOf.In(EditionsOf.Compile("---\ntitle: Rib\n---\n\n## Rib\n\nCO 12 sts.\n\nWork k1, p1 rib for 5 cm.\n\nRow 1: K12.\n"), "spelled-out");
        Assert.Contains("Work k1, p1 rib for 5 cm.\n\nRow 1: Knit 12.", made.Source.Text.Text, StringComparison.Ordinal);
        Assert.Equal([EditionRules.LineLeft], made.Findings.Select(f => f.Rule));
    }
}
