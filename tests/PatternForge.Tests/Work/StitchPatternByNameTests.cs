using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>Stitch patterns that stand in a section of their own and are worked elsewhere by name.</summary>
public class StitchPatternByNameTests
{
    private const string Lace =
        """
        ## Lace panel (multiple of 6 + 2)

        Row 1 (RS): K1, *yo, k2tog, k4; rep from * to last st, k1.

        Row 2 and all WS rows: Purl.

        Row 3: K1, *k3, yo, k2tog, k1; rep from * to last st, k1.
        """;

    [Theory]
    [InlineData("Work Rows 1-4 of Lace panel twice.")]
    [InlineData("Work Rows 1-4 of the Lace Panel 3 times.")]
    [InlineData("Work Lace panel over 44 sts.")]
    [InlineData("Work in Lace panel for 10 rows.")]
    [InlineData("Continue in Lace panel until piece measures 20 cm, ending with a WS row.")]
    [InlineData("Work even in Lace panel for 12 cm.")]
    [InlineData("Cont in lace panel as established until piece measures 30 cm.")]
    [InlineData("Work Row 3 of Lace panel.")]
    [InlineData("Begin Lace panel.")]
    [InlineData("Row 1 (RS): K3, work Row 1 of Lace panel over next 38 sts, k3.")]
    [InlineData("Next row: K3, work Lace panel to last 3 sts, k3.")]
    [InlineData("Next row: K3, work next row of Lace panel over the next 38 sts, k to end.")]
    [InlineData("Next row: Work Lace panel to end.")]
    [InlineData("Next row: Work Lace panel across.")]
    public void A_stitch_pattern_is_worked_by_its_name(string row)
    {
        var compiled = Compile("one size", Lace, "## Scarf", "Cast on 44 sts.", row, "Row 99: K44. (44 sts)");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error || f.Rule.Code is "PF208");
        Assert.All(compiled.Lines, line => Assert.Equal(LineStatus.Checked, line.Status));
        Assert.Equal<int?>([44], compiled.Lines[^1].After);
    }

    [Fact]
    public void Where_it_does_not_fit_the_nearest_counts_are_told_in_each_size_and_only_once()
    {
        var compiled = Compile("S (M, L)", Lace, "## Scarf", "Cast on 44 (48, 55) sts.", "Work Rows 1-4 of Lace panel twice.", "Work in Lace panel for 10 rows.");

        var finding = Assert.Single(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF317", finding.Rule.Code);
        Assert.Equal<int>([1, 2], finding.Sizes);
        Assert.Equal("Lace panel takes a multiple of 6 + 2 sts; there are 48 and 55 in sizes M and L; nearest that fit: 44 or 50 in M, 50 or 56 in L", finding.Message);
    }

    [Fact]
    public void A_pattern_may_stand_after_the_piece_that_names_it()
    {
        var compiled = Compile("one size", "## Scarf", "Cast on 45 sts.", "Work Rows 1-4 of Lace panel twice.", Lace);

        Assert.Single(compiled.Findings, f => f.Rule.Code == "PF317");
    }

    [Fact]
    public void Its_own_rows_are_worked_over_a_few_repeats_and_the_piece_goes_on_where_it_was()
    {
        var compiled = Compile("one size", "## Scarf", "Cast on 44 sts.", "Row 1: Knit.", Lace, "## Scarf, second part", "Row 2: K44.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([14], compiled.Lines[2].After);
        Assert.Equal<int?>([44], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_row_that_is_no_multiple_of_what_its_heading_says_is_told()
    {
        var compiled = Compile("one size", Lace.Replace("6 + 2", "6 + 3", StringComparison.Ordinal));

        Assert.Contains(compiled.Findings, f => f.Rule.Code == "PF302");
    }

    [Fact]
    public void A_row_that_the_pattern_does_not_have_is_told()
    {
        var compiled = Compile("one size", Lace, "## Scarf", "Cast on 44 sts.", "Work Row 9 of Lace panel.");

        Assert.Contains("row 9 has not been given", Assert.Single(compiled.Findings, f => f.Severity == Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_that_changes_the_count_changes_it_where_it_is_worked()
    {
        const string Fan = "## Fan\n\nMultiple of 4 sts + 1.\n\nRow 1: *K1, yo, k2, yo, k1; rep from * to last st, k1.\n\nRow 2: *K1, k2tog, k2tog, k1; rep from * to last st, k1.";
        var compiled = Compile("one size", Fan, "## Scarf", "Cast on 23 sts.", "Row 1: K3, work Row 1 of Fan over next 17 sts, k3. 31 sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([31], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_panel_has_one_width()
    {
        const string Panel = "## Rope (panel of 10 sts)\n\nRow 1: P2, k6, p2.\n\nRow 2: K2, p6, k2.";
        var compiled = Compile("one size", Panel, "## Scarf", "Cast on 30 sts.", "Row 1: P10, work Rope, p10.", "Row 2: P10, work Row 2 of Rope over next 12 sts, p8.");

        Assert.Equal("Rope is a panel of 10 sts; there are 12; nearest that fit: 10", Assert.Single(compiled.Findings, f => f.Severity == Severity.Error).Message);
    }

    [Theory]
    [InlineData("## Net (multiple of 4 + 3)", 4, 3)]
    [InlineData("## Net, multiple of 4 sts plus 3", 4, 3)]
    [InlineData("## Stitch pattern: Net (mult of 4 sts + 3 sts)", 4, 3)]
    [InlineData("## Net (any odd number of sts)", 2, 1)]
    [InlineData("## Net (an even number of stitches)", 2, 0)]
    [InlineData("## Net — worked over 12 sts", 0, 12)]
    [InlineData("## Net\n\n(Multiple of 4 stitches and 3 extra)", 4, 3)]
    [InlineData("## Net\n\n*Worked over a multiple of 4 sts.*", 4, 0)]
    public void A_multiple_is_read_as_designers_write_it(string heading, int multiple, int plus)
    {
        // Seen through the message: 2 stitches fit none of these but the even number.
        var compiled = Compile("one size", $"{heading}\n\nRow 1: Knit.", "## Scarf", "Cast on 301 sts.", "Row 1: K300, k1.", "Work Row 1 of Net.");

        var pattern = new StitchPattern("Net", 1, multiple, plus, default);
        Assert.Equal(pattern.Fits(301) ? 0 : 1, compiled.Findings.Count(f => f.Rule.Code == "PF317" && f.Message.Contains($" {pattern.InTradeForm} sts", StringComparison.Ordinal)));
        Assert.Equal(pattern.Fits(301), !compiled.Findings.Any(f => f.Severity == Severity.Error));
    }

    [Fact]
    public void A_piece_that_casts_on_a_multiple_is_no_stitch_pattern()
    {
        var compiled = Compile("one size", "## Cowl (multiple of 4 + 2)", "Cast on 42 sts.", "Row 1: K2, *p2, k2; rep from * to end.", "## Edging", "Row 1: K42.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void The_nearest_counts_fit_and_none_nearer_does() =>
        Gen.Select(Gen.Int[1, 24], Gen.Int[0, 30], Gen.Int[1, 300]).Sample((multiple, plus, stitches) =>
        {
            var pattern = new StitchPattern("Net", 1, multiple, plus, default);
            var (below, above) = pattern.Nearest(stitches);
            Assert.True(pattern.Fits(above) && above > 0);
            Assert.True(below is null || pattern.Fits(below.Value));
            for (var n = (below ?? 0) + 1; n < above; n++)
            {
                Assert.False(pattern.Fits(n) && n != stitches);
            }
        });

    private static Compilation Compile(string sizes, params string[] blocks) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour scarf\nsizes: {sizes}\n---\n\n{string.Join("\n\n", blocks)}\n"));
}
