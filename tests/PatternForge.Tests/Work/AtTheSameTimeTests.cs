using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>Shapings that go on at the same time add up, row by row and in every size (common practice).</summary>
public class AtTheSameTimeTests
{
    [Theory]
    [InlineData("Dec 1 st at armhole edge every RS row 4 times and AT THE SAME TIME dec 1 st at neck edge every 4th row 2 times.", 34)]
    [InlineData("Dec 1 st at armhole edge every RS row 4 times. At the same time, dec 1 st at neck edge every 4th row 2 times.", 34)]
    [InlineData("BO 4 sts at beg of next RS row, then dec 1 st at armhole edge every other row 3 times; at the same time dec 1 st at neck edge on next and every foll 4th row 3 times.", 30)]
    [InlineData("Dec 1 st at neck edge every row 5 times, AT THE SAME TIME, when armhole measures 2 cm, shape shoulder: BO 5 sts at beg of next RS row, then 5 sts at armhole edge twice.", 20)]
    public void Shapings_at_the_same_time_add_up(string row, int after)
    {
        var compiled = Compile("one size", "CO 40 sts.", $"{row} {after} sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error || f.Rule.Code == "PF208");
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
        Assert.Equal<int?>([after], compiled.Lines[^1].After);
    }

    [Fact]
    public void They_are_laid_out_row_by_row_in_every_size()
    {
        var table = Compile("S (M)", "CO 40 (44) sts.", "Dec 1 st at armhole edge every RS row 3 (4) times and AT THE SAME TIME dec 1 st at neck edge every 4th row 2 times.").Lines[^1].Together!;

        Assert.Equal(["2: -1 0 = 39", "4: -1 -1 = 37", "6: -1 0 = 36", "8: 0 -1 = 35"], Words(table, 0));
        Assert.Equal(["2: -1 0 = 43", "4: -1 -1 = 41", "6: -1 0 = 40", "8: -1 -1 = 38"], Words(table, 1));
    }

    [Fact]
    public void A_shaping_that_begins_at_a_length_is_placed_by_the_row_gauge()
    {
        // 28 rows to 10 cm: 5 cm are 14 rows.
        var table = Compile("one size", "CO 40 sts.", "Dec 1 st at armhole edge every RS row twice, AT THE SAME TIME, when piece measures 5 cm, dec 1 st at neck edge every row 2 times.").Lines[^1].Together!;

        Assert.Equal(["2: -1 0 = 39", "4: -1 0 = 38", "15: 0 -1 = 37", "16: 0 -1 = 36"], Words(table, 0));
    }

    [Fact]
    public void A_line_that_begins_with_the_words_goes_on_beside_the_line_before()
    {
        var compiled = Compile("one size", "CO 40 sts.", "Inc 1 st at side edge every 6th row 2 times.", "At the same time, dec 1 st at neck edge every other row 3 times. 39 sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(["2: 0 -1 = 39", "4: 0 -1 = 38", "6: 1 -1 = 38", "12: 1 0 = 39"], Words(compiled.Lines[^1].Together!, 0));
    }

    [Fact]
    public void The_last_row_of_the_table_has_the_count_of_the_line()
    {
        var line = Compile("S (M)", "CO 60 (66) sts.", "Dec 1 st each end of every 4th row 5 (6) times, AT THE SAME TIME dec 1 st at neck edge on next and every foll alt row 7 times.").Lines[^1];

        Assert.Equal<int?>(line.After, [.. line.Together!.Sizes.Select(rows => (int?)rows[^1].Count)]);
    }

    [Fact]
    public void Both_sides_worked_at_the_same_time_are_a_remark()
    {
        var compiled = Compile("one size", "CO 40 sts.", "Work both sides at the same time with separate balls of yarn.", "Row 1: K40.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error || f.Rule.Code == "PF208");
        Assert.All(compiled.Lines, line => Assert.Null(line.Together));
    }

    private static string[] Words(ShapingTable table, int size) =>
        [.. table.Sizes[size].Select(r => $"{r.Row}: {string.Join(' ', r.Changes)} = {r.Count}")];

    private static Compilation Compile(string sizes, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour vest\nsizes: {sizes}\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked\n---\n\n## Piece\n\n{string.Join("\n\n", rows)}\n"));
}
