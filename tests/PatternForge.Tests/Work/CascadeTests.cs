using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>One mistake of the designer gives one finding, whatever follows from it.</summary>
public class CascadeTests
{
    [Theory]
    [InlineData("33", "PF210", "Row 1 (RS): Knit.", "Row 2 (WS): Purl.", "Row 33 (RS): K2tog, k to end. (23 sts)", "Row 4 (WS): Purl.", "Rep Rows 1-4 twice more. (21 sts)")]
    [InlineData("2", "PF211", "Row 1 (RS): Knit.", "Row 2 (WS): Purl.", "Row 2 (RS): K2tog, k to end. (23 sts)", "Row 4 (WS): Purl.", "Rep Rows 1-4 twice more. (21 sts)")]
    [InlineData("3", "PF210", "Row 1 (RS): K2tog, k to end. (23 sts)", "Row 3 (WS): Purl.", "Row 3 (RS): Knit.", "Row 4 (WS): Purl.", "Rep Rows 1-4 twice more. (21 sts)")]
    public void A_row_number_that_is_a_slip_of_the_keys_is_told_once_and_the_row_worked_under_the_one_that_is_due(string slip, string code, params string[] rows)
    {
        var compiled = Compile(rows);

        var finding = Assert.Single(Told(compiled));
        Assert.Equal(code, finding.Rule.Code);
        var edit = Assert.Single(finding.Fix!.Edits);
        Assert.Equal(slip, finding.Source.ToString(edit.Span));
        Assert.Equal<int?>([21], compiled.Lines[^1].After);
        Assert.Empty(Told(Compiler.Compile(new SourceText("x.pattern.md", compiled.Source.Text[..edit.Span.Start] + edit.NewText + compiled.Source.Text[edit.Span.End..]))));
    }

    [Fact]
    public void Numbers_that_begin_again_or_leave_rows_out_on_both_sides_are_no_slips()
    {
        var compiled = Compile("Row 1: Knit.", "Row 2: Purl.", "Row 7: Knit.", "Row 8: Purl.");

        var finding = Assert.Single(Told(compiled));
        Assert.Equal("rows 3 to 6 are not given: row 2 is followed by row 7", finding.Message);
    }

    [Fact]
    public void A_row_that_is_missing_is_told_where_it_is_asked_for_and_not_at_the_next_row_as_well()
    {
        var compiled = Compile("Row 1 (RS): Knit.", "Row 2 (WS): Purl.", "Row 4 (WS): Purl.", "Rep Rows 1-4 twice more.");

        var finding = Assert.Single(Told(compiled));
        Assert.Equal("PF212", finding.Rule.Code);
        Assert.Equal("row 3 is not given: row 2 is followed by row 4", Assert.Single(finding.Labels).Text);
    }

    [Fact]
    public void A_marker_left_out_is_told_at_the_first_row_that_goes_to_it_and_the_others_stand_beside_it()
    {
        var compiled = Compile("Row 1: Knit.", "Row 2: P to m, sm, p to end. (24 sts)", "Row 3: K to m, sm, k to end. (24 sts)", "Row 4: P to m, sm, p to end. (24 sts)");

        var finding = Assert.Single(Told(compiled));
        Assert.Equal("PF309", finding.Rule.Code);
        Assert.Equal(2, finding.Labels.Length);
    }

    [Fact]
    public void Two_markers_left_out_with_another_placed_between_are_two()
    {
        var compiled = Compile("Row 1: K to m, sm, k to end. (24 sts)", "Row 2: P6, pm, p to end. (24 sts)", "Row 3: K to m, sm, k to m, sm, k to end. (24 sts)");

        Assert.Equal(["PF309", "PF309"], Told(compiled).Select(f => f.Rule.Code));
    }

    [Fact]
    public void A_marker_by_a_name_that_none_has_is_said_to_be_the_next_one()
    {
        var compiled = Compile("Row 1: K6, pm, k12, pm, k6.", "Row 2: P to marker A, sm, p to end. (24 sts)");

        var finding = Assert.Single(compiled.Findings, f => f.Rule.Code == "PF318");
        Assert.Equal((Severity.Note, "P to marker A"), (finding.Severity, finding.Source.ToString(finding.Span)));
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
    }

    [Fact]
    public void A_marker_that_was_placed_by_its_name_is_not_told()
    {
        var compiled = Compile("Row 1: K6, place marker A, k12, place marker B, k6.", "Row 2: P to marker B, sm, p to marker A, sm, p to end. (24 sts)");

        Assert.DoesNotContain(compiled.Findings, f => f.Rule.Code == "PF318");
    }

    [Theory]
    [InlineData("Row 1: K2tog, k to end. 22 sts", "Row 2: Purl.", "Rep last 2 rows 3 times. 19 sts", "Bind off rem 19 sts.")]
    [InlineData("Row 1: Knit. 22 sts", "Row 2: *K9, k2tog; rep from * to end. 20 sts", "Row 3: K20.", "Row 4: Purl.")]
    [InlineData("Row 1: Kfb in each st to end. 46 sts", "Row 2: Kfb in each st to end. 92 sts", "Row 3: Purl. 92 sts")]
    public void What_follows_from_a_count_told_to_be_wrong_is_not_told_again(params string[] rows)
    {
        Assert.Equal("PF301", Assert.Single(Told(Compile(rows))).Rule.Code);
    }

    [Fact]
    public void A_slip_in_the_cast_on_is_told_at_the_first_repeat_that_does_not_fit()
    {
        var compiled = Compile("Row 1: *K5, p5; rep from * to end.", "Row 2: *K5, p5; rep from * to end.", "Row 3: Knit, inc 10 sts evenly. 40 sts", "Row 4: *K6, k2tog; rep from * to end. 35 sts");

        Assert.Equal("PF302", Assert.Single(Told(compiled)).Rule.Code); // 30 were meant
    }

    [Fact]
    public void Two_repeats_that_do_not_fit_stitches_which_a_repeat_before_them_fitted_are_two()
    {
        var compiled = Compile("Row 1: *K2, p2; rep from * to end.", "Row 2: *K5, p5; rep from * to end.", "Row 3: *K10, p10; rep from * to end.");

        Assert.Equal(["PF302", "PF302"], Told(compiled).Select(f => f.Rule.Code));
    }

    [Fact]
    public void Two_kinds_that_differ_in_one_row_are_told_together()
    {
        var compiled = Compiler.Compile(new SourceText("net.pattern.md", "---\ntitle: Net\ncraft: crochet\nterms: us\nsizes: one size\n---\n\n## Piece\n\nBegin with 21 sc.\n\nRow 1: Ch 1, sc in first st, *ch 1, sk 1, sc in next st; rep from * across. 10 sc, 9 ch-1 sps\n"));

        var finding = Assert.Single(Told(compiled));
        Assert.Equal("row 1 states 10 sc, but makes 11", finding.Message);
        Assert.Equal("row 1 states 9 ch-1 spaces, but makes 10", finding.Labels[^1].Text);
    }

    private static IEnumerable<Finding> Told(Compilation compilation) => compilation.Findings.Where(f => f.Rule.Area is Area.Notation or Area.Counts && f.Severity != Severity.Note);

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\nsizes: one size\n---\n\n## Piece\n\nCO 24 sts.\n\n{string.Join("\n", rows)}\n"));
}
