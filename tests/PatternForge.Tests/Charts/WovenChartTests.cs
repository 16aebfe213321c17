using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.Charts;

/// <summary>Repeats that reach into one another: the frame steps aside in the rows whose cables lie across its edge.</summary>
public class WovenChartTests
{
    private const string Basket = """
        ## Basket (multiple of 6 + 2)

        Row 1 (RS): P1, *k6; rep from * to last st, p1.

        Row 2 and all WS rows: K1, p to last st, k1.

        Row 3: P1, *C6F; rep from * to last st, p1.

        Row 5: P1, k to last st, p1.

        Row 7: P1, k3, *C6B; rep from * to last 4 sts, k3, p1.
        """;

    [Fact]
    public void A_woven_cable_has_one_repeat_that_steps_aside_in_the_rows_that_need_it()
    {
        var chart = Assert.Single(Compile(Basket).Charts);

        Assert.Equal(6, chart.Repeat?.Columns);
        Assert.Equal(14, chart.Columns); // one repeat in the frame, and beside it the stitches that the rows share out differently
        var shifted = Assert.Single(chart.Rows, r => r.RepeatShift != 0);
        Assert.Equal((7, 3), (shifted.Number, Math.Abs(shifted.RepeatShift)));
        Assert.Equal("Row 3 (RS): P1, *c6f; rep from * to last 7 sts, c6f, p1.", ChartWords.Row(chart.Rows[2], chart, Dialect.Us), ignoreCase: true);
        Assert.Equal("Row 7 (RS): P1, k3, *c6b; rep from * to last 4 sts, k3, p1.", ChartWords.Row(chart.Rows[6], chart, Dialect.Us), ignoreCase: true);
    }

    [Fact]
    public void No_stitch_lies_across_the_frame_in_any_row()
    {
        var chart = Assert.Single(Compile(Basket).Charts);

        foreach (var row in chart.Rows)
        {
            var from = chart.Repeat!.From + row.RepeatShift;
            Assert.DoesNotContain(row.Cells, c => Cuts(c, from) || Cuts(c, from + chart.Repeat.Columns));
            Assert.Equal(chart.Repeat.Columns, chart.Repeat.Part(row).Within.Sum(c => c.Span));
        }

        static bool Cuts(ChartCell cell, int column) => cell.Column < column && cell.Column + cell.Span > column;
    }

    [Fact]
    public void A_straight_repeat_is_never_stepped()
    {
        var chart = Assert.Single(Compile("## Ropes (multiple of 6 + 2)\n\nRow 1 (RS): P2, *C4F, p2; rep from * to end.\n\nRow 2: K2, *p4, k2; rep from * to end.\n").Charts);

        Assert.NotNull(chart.Repeat);
        Assert.All(chart.Rows, r => Assert.Equal(0, r.RepeatShift));
    }

    [Fact]
    public void The_drawing_is_the_one_that_was_looked_at_and_approved()
    {
        var drawing = ChartDrawing.Of(Assert.Single(Compile(Basket).Charts), "chart", Dialect.Us, SizeSet.One, []);

        Golden.Match(drawing.Alone.Replace("><", ">\n<", StringComparison.Ordinal), "charts/woven.svg");
        Assert.Contains(drawing.Notes, n => n.StartsWith("The frame steps aside", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(". . [ / ] . .", null)] // the cable lies across the edge of the other rows' repeat
    [InlineData(". [ . . . . ] . . .", "the repeat of row 3 does not stand over that of the other rows")] // nothing does
    public void Brackets_in_a_source_step_aside_only_where_a_stitch_reaches_over_the_edge(string row, string? message)
    {
        var compiled = Compile($"## Weave (multiple of 4 + 4)\n\n```chart\nkey: . = k, / = C4F, x = C4B\n        [ . . . . ] . . . .   4\n        {row}   3\n        [ . . . . ] . . . .   2\n        [ x ] x   1\n```\n");

        Assert.Equal(message is null ? [] : [message], compiled.Findings.Where(f => f.Rule.Code == "PF241").Select(f => f.Message));
        if (message is null)
        {
            Assert.Equal([0, 0, 2, 0], Assert.Single(compiled.Charts).Rows.Select(r => Math.Abs(r.RepeatShift)));
        }
    }

    private static Compilation Compile(string body)
    {
        var compiled = Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\ncraft: knitting\n---\n\n{body}\n"));
        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error && f.Rule.Code != "PF241");
        return compiled;
    }
}
