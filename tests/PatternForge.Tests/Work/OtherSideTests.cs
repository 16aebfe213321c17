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

    private const string CrochetFront = "## Front\n\nCh 41 (45).\n\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. 40 (44) sc.\n\nRow 2: Ch 1, turn, sc in each st across.\n\n"
        + "Row 3: Ch 1, turn, sc in next 14 (16) sts, leave rem sts unworked. 14 (16) sc.\n\nRow 4: Ch 1, turn, sc2tog, sc in each st to end. 13 (15) sc.\n\nRow 5: Ch 1, turn, sc in each st to last 2 sts, sc2tog. 12 (14) sc.\n\n";

    [Theory]
    [InlineData("", "", LineStatus.Checked, 0)]
    [InlineData("", "## Front, second side\n\n", LineStatus.Checked, 0)]
    [InlineData("Row 6: Ch 1, turn, sc in next 10 sts, leave rem sts unworked. 10 sc.\n\n", "", LineStatus.Trusted, 0)] // which of them begins the side is not known
    public void A_second_side_of_crochet_goes_into_what_the_first_has_left_and_ends_as_it_did(string more, string heading, LineStatus status, int findings)
    {
        var ends = more.Length > 0 ? "10" : "12 (14)";
        var compiled = Crocheted(CrochetFront + more + "Fasten off.\n\n" + heading
            + (more.Length > 0 ? "Begin with 14 (16) sts.\n\n" : "Next row (RS): Skip next 12 sts, join yarn in next st, ch 1, sc in same st, sc in next 13 (15) sts. 14 (16) sc.\n\n")
            + $"Complete to match first side, reversing shaping. {ends} sc.\n");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(findings, compiled.Findings.Count(f => f.Rule.Code is "PF319" or "PF301"));
        Assert.Equal(status, compiled.Lines[^1].Status);
        Assert.All(compiled.Lines.SkipLast(1), l => Assert.Equal(LineStatus.Checked, l.Status));
    }

    [Fact]
    public void A_second_side_of_crochet_that_is_another_width_or_ends_with_other_stitches_is_found()
    {
        const string Begins = CrochetFront + "Fasten off.\n\nNext row (RS): Skip next 13 sts, join yarn in next st, ch 1, sc in same st, sc in next 12 (14) sts. 13 (15) sc.\n\n";
        Assert.Equal("the second side begins with 13 (15) stitches, but the first began with 14 (16)", Assert.Single(Crocheted(Begins + "Complete to match first side.\n").Findings, f => f.Rule.Code == "PF319").Message);

        const string Ends = CrochetFront + "Fasten off.\n\nNext row (RS): Skip next 12 sts, join yarn in next st, ch 1, sc in same st, sc in next 13 (15) sts. 14 (16) sc.\n\n";
        Assert.Single(Crocheted(Ends + "Complete to match first side. 11 (14) sc.\n").Findings, f => f.Rule.Code == "PF301");
        Assert.Single(Crocheted(Ends.Replace("next 13 (15) sts. 14 (16)", "next 14 (16) sts. 15 (17)", StringComparison.Ordinal)).Findings, f => f.Severity == Severity.Error); // there are 14 (16) left
    }

    [Theory]
    [InlineData("Row 2: Ch 1, turn, [sc in each st to 2 sts before m, sc2tog, sm, sc2tog] 3 times, sc in each st to end. (34 sc)")]
    [InlineData("Row 2: Ch 1, turn, sc in each st to marked st, 3 sc in marked st, sc in each st to end. (42 sc)")]
    public void Markers_of_crochet_are_not_followed_and_never_a_mistake(string row)
    {
        var compiled = Crocheted("## Piece\n\nCh 41.\n\nRow 1: Sc in 2nd ch from hook and in each ch across. (40 sc)\n\n" + row + "\n", "one size");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(LineStatus.Trusted, compiled.Lines[^1].Status);
    }

    private static Compilation Crocheted(string body, string sizes = "S (M)") =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour vest\ncraft: crochet\nterms: us\nsizes: {sizes}\n---\n\n{body}"));

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
