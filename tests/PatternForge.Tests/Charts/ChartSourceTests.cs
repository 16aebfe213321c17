using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Charts;

/// <summary>Charts that stand in the source: worked like rows, put into words, drawn, and compared with words that stand beside them.</summary>
public class ChartSourceTests
{
    private const string Leaf = """
        ```chart
        key: . = k, - = p, o = yo, / = k2tog, ^ = s2kp
        4   . [ . . . . . . ]
            . [ . o ^ o . . ]     3
        2   . [ . . . . . . ]
            . [ . / o . . . ]     1
        ```
        """;

    [Fact]
    public void Its_rows_are_worked_and_put_into_words()
    {
        var compiled = Compile($"## Leaf (multiple of 6 + 1)\n\n{Leaf}");

        Assert.Equal(
            ["Row 1 (RS): *K3, yo, k2tog, k1; rep from * to last st, k1.", "Row 2 (WS): Purl.", "Row 3 (RS): *K2, yo, s2kp, yo, k1; rep from * to last st, k1.", "Row 4 (WS): Purl."],
            compiled.Lines.Select(l => $"{l.Label}: {l.Text}"));
        Assert.All(compiled.Lines, l => Assert.Equal((LineStatus.Checked, 13, 13), (l.Status, l.Before[0], l.After[0])));
        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void It_is_drawn_as_it_stands()
    {
        var rows = ChartText.Of(Assert.Single(Compile($"## Leaf (multiple of 6 + 1)\n\n{Leaf}").Charts)).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(
            ["4 p| p p p p p p|", "k| k yo s2kp yo k k| 3", "2 p| p p p p p p|", "k| k k2tog yo k k k| 1"],
            rows.Select(r => string.Join(' ', r.Split(' ', StringSplitOptions.RemoveEmptyEntries))));
    }

    [Fact]
    public void A_square_in_a_wrong_side_row_is_worked_the_other_way_round()
    {
        var compiled = Compile("## Cuff\n\nCO 4 sts.\n\n```chart\n2   k p k2tog _\n    k p k k    1\n```\n");

        Assert.Equal("Row 2 (WS): P1, k1, p2tog.", $"{compiled.Lines[^1].Label}: {compiled.Lines[^1].Text}");
        Assert.Equal(3, compiled.Lines[^1].After[0]);
    }

    [Fact]
    public void Its_repeat_must_fit_in_every_size()
    {
        var finding = Assert.Single(Compile("## Yoke\n\nCO 80 (91) sts. Join to work in the round.\n\n```chart\n  [ k k k k yo k2tog k k k k ]   2\n  [ k k k k k k k k k k ]   1\n```\n", "sizes: S (M)").Findings, f => f.Severity == Severity.Error);

        Assert.Equal(("PF302", "the repeat takes 10 sts; 91 sts are 9 repeats and 1 over in size M"), (finding.Rule.Code, finding.Message));
    }

    [Fact]
    public void Every_stitch_is_compared_with_the_words()
    {
        var same = Compile($"## Leaf (multiple of 6 + 1)\n\nRow 1 (RS): *K3, yo, k2tog, k1; rep from * to last st, k1.\n\nRow 2: Purl.\n\nRow 3: *K2, yo, s2kp, yo, k1; rep from * to last st, k1.\n\nRow 4: Purl.\n\n{Leaf}");
        var other = Compile($"## Leaf (multiple of 6 + 1)\n\nRow 1 (RS): *K3, yo, k2tog, k1; rep from * to last st, k1.\n\nRow 2: Purl.\n\nRow 3: *K2, yo, sk2p, yo, k1; rep from * to last st, k1.\n\nRow 4: Purl.\n\n{Leaf}");

        Assert.DoesNotContain(same.Findings, f => f.Severity == Severity.Error);
        var finding = Assert.Single(other.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF323", "row 3, stitch 4: the chart has s2kp, the words have sk2p"), (finding.Rule.Code, finding.Message));
        Assert.Equal(4, other.Lines.Length);
    }

    [Fact]
    public void A_special_stitch_of_the_header_can_stand_in_a_square_and_a_written_row_of_it_is_drawn()
    {
        const string Header = "stitches:\n  - {name: MB, how: \"(k1, yo, k1) in next st, turn, p3, turn, sk2p\", takes: 1, makes: 1}";
        var compiled = Compile("## Bobbles\n\nCO 5 sts.\n\n```chart\n  k k MB k k   1\n```\n", Header);
        var drawn = Compile("## Bobbles (multiple of 4 + 1)\n\nRow 1: K2, *MB, k3; rep from * to last 3 sts, MB, k2.\n", Header);

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("K2, MB, k2.", compiled.Lines[^1].Text);
        Assert.Contains(Assert.Single(drawn.Charts).Rows[0].Cells, c => c.Operation?.Id == "MB");
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("key:")]
    [InlineData("key: = , = k,,")]
    [InlineData("1 1 1")]
    [InlineData("[ ] 1")]
    [InlineData("[ k 1")]
    [InlineData("k ] [ 1")]
    [InlineData("_ _ 1")]
    [InlineData("99999999999 k 1")]
    public void Anything_in_the_block_is_answered_without_a_fault(string block) =>
        Assert.NotNull(Compile($"## Cuff\n\nCO 4 sts.\n\n```chart\n{block}\n```\n"));

    private static Compilation Compile(string body, string header = "level: easy") =>
        Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\ncraft: knitting\n{header}\n---\n\n{body}\n"));
}
