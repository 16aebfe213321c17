using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>The order of evidence for what a turning chain counts as: the row's own words, the header, the stated counts, the default.</summary>
public class TurningChainTests
{
    [Fact]
    public void The_rows_own_words_win_over_the_header()
    {
        var compiled = Compile("Ch 3 counts as dc throughout.", "Begin with 20 sts.", "Row 2: Ch 3 (does not count as a st), turn, dc in each st across. (20 dc)");

        AssertClean(compiled, 20);
    }

    [Fact]
    public void The_header_wins_over_the_stated_count()
    {
        var compiled = Compile("Ch 3 counts as dc throughout.", "Begin with 20 sts.", "Row 2: Ch 3, turn, dc in first st and in each st across. (20 dc)");

        var error = Assert.Single(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Contains("makes 21", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_speak_for_all_rows_hold_for_later_ones()
    {
        var compiled = Compile(null, "Begin with 20 sts.", "Row 2: Ch 2 (counts as hdc here and throughout), turn, hdc in next st and in each st across.", "Row 3: Ch 2, turn, hdc in next st and in each st across. (20 hdc)");

        AssertClean(compiled, 20);
    }

    [Fact]
    public void What_a_stated_count_shows_holds_for_the_rows_after_it_and_is_told()
    {
        var compiled = Compile(null, "Ch 21.", "Row 1: Hdc in 3rd ch from hook and in each ch across. (20 hdc)", "Row 2: Ch 2, turn, hdc in next st and in each st across.");

        AssertClean(compiled, 20);
        Assert.Contains("count", compiled.Lines[1].Reading, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_and_rounds_are_apart()
    {
        var compiled = Compile(
            null, "Ch 21.", "Row 1: Hdc in 3rd ch from hook and in each ch across. (20 hdc)",
            "Begin with 12 sts, in the round.", "Rnd 1: Ch 2, 2 hdc in each st around, join. (24 hdc)");

        AssertClean(compiled, 24);
    }

    [Fact]
    public void Each_height_is_apart()
    {
        var compiled = Compile(
            null, "Begin with 20 sts.", "Row 2: Ch 3, turn, dc in next st and in each st across. (20 dc)", "Row 3: Ch 1, turn, sc in each st across. (20 sc)",
            "Row 4: Ch 2, turn, hdc in each st across. (20 hdc)");

        AssertClean(compiled, 20);
    }

    [Theory]
    [InlineData("Row 2: Ch 2, turn, hdc in each st across. (20 hdc)")]
    [InlineData("Row 2: Ch 2, turn, hdc in next st and in each st across. (20 hdc)")]
    [InlineData("Row 2: Ch 3, turn, dc in next st and in each st across. (20 dc)")]
    [InlineData("Row 2: Ch 3, turn, dc in each st across. (20 dc)")]
    [InlineData("Row 2: Ch 3, turn, sk first st, dc in each st across. (20 dc)")]
    public void What_nothing_decides_is_no_mistake(string row) => AssertClean(Compile(null, "Begin with 20 sts.", row), 20);

    private static void AssertClean(Compilation compiled, int count)
    {
        Assert.Empty(compiled.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message));
        Assert.Equal<int?>([count], compiled.Lines[^1].After);
    }

    private static Compilation Compile(string? note, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour band\ncraft: crochet\nterms: us\n{(note is null ? "" : $"notes: [\"{note}\"]\n")}---\n\n## Band\n\n{string.Join("\n\n", rows)}\n"));
}
