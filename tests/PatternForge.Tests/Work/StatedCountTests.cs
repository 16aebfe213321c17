using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

public class StatedCountTests
{
    [Fact]
    public void A_list_in_one_bracket_gives_one_value_a_size()
    {
        var compiled = Compile("S (M)", "CO 66 (72) sts.", "Next round: *K9 (10), k2tog; rep from * to end. (60, 66 sts)");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([60, 66], compiled.Lines[^1].Stated);
    }

    [Fact]
    public void A_list_in_one_bracket_that_is_wrong_names_the_size()
    {
        var compiled = Compile("S (M)", "CO 66 (72) sts.", "Next round: *K9 (10), k2tog; rep from * to end. (60, 67 sts)");

        var finding = Assert.Single(compiled.Findings, f => f.Rule.Code == "PF301");
        Assert.Equal<int>([1], finding.Sizes);
        Assert.Contains("66", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_in_the_middle_of_a_line_is_of_what_stands_before_it()
    {
        var compiled = Compile("one size", "CO 21 sts.", "Row 1: Ssk, k to last 2 sts, k2tog — 19 sts. Dec 1 st at each end of every RS row until 5 sts rem.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([5], compiled.Lines[^1].After);
    }

    [Fact]
    public void Work_that_changes_the_count_is_never_taken_for_even_work()
    {
        var compiled = Compile("one size", "CO 21 sts.", "Row 1: Knit.", "Continue in this manner until 5 sts rem.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(LineStatus.Unread, compiled.Lines[^1].Status);
    }

    [Fact]
    public void Totals_that_go_on_from_a_change_told_wrong_are_not_told_again()
    {
        var compiled = Compile("S (M)", "CO 20 (24) sts.", "Row 1: K1, m1, k to last st, m1, k1. 1 st inc'd.", "Row 2: Purl. 21 (25) sts.", "Row 3: Ssk, k to end. 20 (24) sts.");

        Assert.Equal("PF305", Assert.Single(compiled.Findings, f => f.Severity == Severity.Error).Rule.Code);
    }

    [Fact]
    public void A_total_that_goes_on_from_neither_is_told_as_well()
    {
        var compiled = Compile("S (M)", "CO 20 (24) sts.", "Row 1: K1, m1, k to last st, m1, k1. 1 st inc'd.", "Row 2: Purl. 21 (27) sts.");

        Assert.Equal<int>([1], Assert.Single(compiled.Findings, f => f.Rule.Code == "PF301").Sizes);
    }

    [Fact]
    public void Two_stitches_slipped_together_are_two()
    {
        var compiled = Compile("one size", "CO 5 sts.", "Row 1: K1, sl 2 tog knitwise, k1, p2sso, k1. (3 sts)");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
    }

    private static Compilation Compile(string sizes, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\nsizes: {sizes}\n---\n\n## Piece\n\n{string.Join("\n\n", rows)}\n"));
}
