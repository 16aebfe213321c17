using System.Text.Json;

namespace PatternForge.Cli.Tests;

public class TraceTests
{
    private const string Pattern =
        """
        ---
        title: Quay vest
        craft: knitting
        sizes: {names: S (M)}
        ---
        ## Back
        Cast on 20 (24) sts.

        Row 1 (RS): K1, *k2tog, yo; rep from * to last st, k1.

        Rows 2-4: K1, ssk, k to end.

        Dec 1 st at each end of every 4th row 3 times. 11 (15) sts.

        ## Front
        Cast on 20 (24) sts.

        Row 1 (RS): Knit.
        """;

    [Fact]
    public void A_row_is_told_clause_by_clause_in_a_size()
    {
        Assert.Equal(
            """
            line 9, Row 1 (RS), size M
              24 stitches when it begins
                                                            uses  makes   left
              K1                                               1      1     23
              11 times: *k2tog, yo; rep from * to last st     22     22      1
                  k2tog                                        2      1     21
                  yo                                           0      1     21
              k1                                               1      1      0
              24 stitches when it ends

            """.ReplaceLineEndings("\n"),
            Counts("--trace", "9", "--size", "M").Out);
    }

    [Fact]
    public void A_row_is_found_by_its_label()
    {
        Assert.StartsWith("line 11, Rows 2-4, size S\n", Counts("--trace", "rows 2-4").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_with_the_same_words_are_told_once_and_then_by_their_counts()
    {
        var output = Counts("--trace", "Rows 2-4", "--size", "S").Out;

        Assert.Contains("the same again: 19 stitches to 18 stitches\n  the same again: 18 stitches to 17 stitches\n", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_for_whole_rows_are_told_by_their_counts()
    {
        Assert.Contains("17 stitches to 11 stitches over 3 rows", Counts("--trace", "13", "--size", "S").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_tells_each_clause()
    {
        var row = JsonDocument.Parse(Counts("--trace", "9", "--size", "M", "--format", "json").Out).RootElement.GetProperty("pieces")[0].GetProperty("rows")[0];

        var clause = row.GetProperty("trace")[0][0].GetProperty("clauses")[1];
        Assert.Equal(11, clause.GetProperty("times").GetInt32());
        Assert.Equal(22, clause.GetProperty("uses").GetInt32());
        Assert.Equal("k2tog", clause.GetProperty("within")[0].GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("Row 1", "stands on 2 lines (9, 18): say the number of the line")]
    [InlineData("Row 9", "no row is called `Row 9`")]
    [InlineData("3", "line 3 holds no instruction")]
    public void A_row_that_is_not_there_or_not_clear_is_refused(string row, string words)
    {
        var outcome = Counts("--trace", row);

        Assert.Equal(ExitCode.Usage, outcome.Code);
        Assert.Contains(words, outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trace_is_no_table()
    {
        Assert.Equal(ExitCode.Usage, Counts("--trace", "9", "--format", "csv").Code);
    }

    private static Outcome Counts(params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        return Outcome.WithInput(folder, Pattern, ["counts", "-", .. arguments]);
    }
}
