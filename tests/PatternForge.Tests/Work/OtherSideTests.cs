using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>Second sides and pieces that are told by those worked before: their counts, and "reversing shaping" written out (common practice).</summary>
public class OtherSideTests
{
    private const string Front =
        """
        ## Left front

        Cast on 30 (34) sts.

        Row 1: Knit.

        BO 4 sts at beg of next RS row. 26 (30) sts. **

        Row 1 (RS): K2, ssk, k to last 3 sts, k3.

        Row 2 (WS): BO 2 (3), p to end.

        Dec 1 st at neck edge every RS row 3 times. 20 (23) sts.
        """;

    [Theory]
    [InlineData("Work as for Left front, reversing all shaping. 20 (23) sts.", 20, 23)]
    [InlineData("Work as for Left Front, reversing shaping.", 20, 23)]
    [InlineData("Work as for left front but reverse all shapings.", 20, 23)]
    [InlineData("Work as given for Left front.", 20, 23)]
    [InlineData("Work same as Left front.", 20, 23)]
    [InlineData("Work as for Left front to **.", 26, 30)]
    public void A_piece_told_by_another_has_its_counts(string line, int small, int medium)
    {
        var compiled = Compile("S (M)", Front, "## Right front", line);

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
        Assert.Equal<int?>([small, medium], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_count_stated_for_the_other_side_is_checked_against_the_side_that_it_mirrors()
    {
        var finding = Assert.Single(Compile("S (M)", Front, "## Right front", "Work as for Left front, reversing all shaping. 20 (24) sts.").Findings, f => f.Severity == Severity.Error);

        Assert.Equal<int>([1], finding.Sizes);
        Assert.Contains("but makes 23", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Reversed_shaping_is_written_out()
    {
        var rows = Compile("S (M)", Front, "## Right front", "Work as for Left front, reversing all shaping.").Lines[^1].Mirrored;

        Assert.Equal(
            [
                "Cast on 30 (34) sts.",
                "K to end.",
                "BO 4 sts at beg of next WS row. 26 (30) sts. **",
                "K3, k to last 4 sts, k2tog, k2.",
                "BO 2 (3), k to end.",
                "Dec 1 st at neck edge every WS row 3 times. 20 (23) sts.",
            ],
            rows.Select(r => r.Text).ToArray());
        Assert.All(rows, r => Assert.True(r.IsWrittenOut));
        Assert.Equal("Row 2 (RS)", rows[4].Label);
        Assert.Equal<int?>([20, 23], rows[^1].After);
    }

    [Fact]
    public void A_row_written_out_gives_the_count_of_the_row_that_it_mirrors()
    {
        var first = Compile("one size", "## Left", "Cast on 30 sts.", "Row 1: K2, ssk, k to last 8 sts, k2tog, k6.", "Row 2: K1, m1l, k to end.", "## Right", "Work as for Left, reversing shaping.");
        var mirrored = first.Lines[^1].Mirrored;

        var second = Compile("one size", "## Right", "Cast on 30 sts.", $"Row 1: {mirrored[1].Text}", $"Row 2: {mirrored[2].Text}");
        Assert.DoesNotContain(second.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(mirrored.Skip(1).Select(m => m.After[0]), second.Lines.Skip(1).Select(l => l.After[0]));
        Assert.Equal("K6, ssk, k to last 4 sts, k2tog, k2.", mirrored[1].Text);
        Assert.Equal("K to last 1 sts, m1r, k1.", mirrored[2].Text);
    }

    [Fact]
    public void A_row_that_cannot_be_turned_round_is_given_as_it_stands_and_says_so()
    {
        var rows = Compile("one size", "## Left", "Cast on 30 sts.", "Row 1: *K2tog, yo; rep from * to end.", "## Right", "Work as for Left, reversing shaping.").Lines[^1].Mirrored;

        Assert.False(rows[^1].IsWrittenOut);
        Assert.Equal("*K2tog, yo; rep from * to end.", rows[^1].Text);
    }

    [Theory]
    [InlineData("BO 16 sts, k to end.", 0)]
    [InlineData("BO 17 sts, k to end.", 1)]
    public void The_second_side_of_a_neck_begins_with_the_stitches_of_the_first(string rejoined, int findings)
    {
        var compiled = Compile("one size", "## Back", "Cast on 56 sts.", "Row 1 (RS): K20, turn, leaving rem sts on a holder.", "Row 2: P to last 2 sts, p2tog.", "BO.", $"With RS facing, rejoin yarn to rem sts, {rejoined}", "Complete to match first side, reversing shaping.");

        Assert.Equal(findings, compiled.Findings.Count(f => f.Rule.Code == "PF319"));
        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([0], compiled.Lines[^1].After);
        Assert.Equal("P to end.", Compile("one size", "## Back", "Cast on 9 sts.", "Row 1: Purl.", "## Front", "Work as for Back, reversing shaping.").Lines[^1].Mirrored[^1].Text);
    }

    [Theory]
    [InlineData("Return 12 held sts to needle, pick up and knit 4 sts. 16 sts.", 16)]
    [InlineData("Thumb: Place 12 held sts on needles, pick up and knit 4 sts over gap, join. 16 sts.", 16)]
    [InlineData("Rejoin yarn to held sts, k12. 12 sts.", 12)]
    public void Held_stitches_are_worked_again_once(string row, int after)
    {
        var compiled = Compile("one size", "## Mitten", "Cast on 64 sts.", "Row 1: K2, place next 12 sts on holder for thumb, CO 2, k to end. 54 sts.", "BO all sts.", row);

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([after], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_piece_that_is_not_there_is_not_guessed()
    {
        var compiled = Compile("one size", "## Sleeve", "Cast on 30 sts.", "Work as for Hood, reversing shaping.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Empty(compiled.Lines[^1].Mirrored);
    }

    private static Compilation Compile(string sizes, params string[] blocks) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour vest\nsizes: {sizes}\n---\n\n{string.Join("\n\n", blocks)}\n"));
}
