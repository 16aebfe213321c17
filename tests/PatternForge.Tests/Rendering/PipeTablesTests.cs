using CsCheck;
using Markdig;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Rendering;

public class PipeTablesTests
{
    private static readonly string[] Pieces = ["| ", " |\n", "| --- | ---: |\n", "\\|", "\\\\", "a", "word ", "`", "```\n", "\n", "½"];

    [Fact]
    public void A_table_is_set_in_columns()
    {
        const string Loose = "| Size | m |\n| --- | ---: |\n| Child | 90 |\n| S | 105 |\n";
        Assert.Equal("| Size  |   m |\n| ----- | --: |\n| Child |  90 |\n| S     | 105 |\n", PipeTables.Align(Loose));
    }

    [Fact]
    public void A_column_with_long_words_stays_ragged()
    {
        var words = new string('x', 80);
        Assert.Equal($"| yo  | over |\n| --- | --- |\n| k   | {words} |", PipeTables.Align($"| yo | over |\n| --- | --- |\n| k | {words} |"));
    }

    [Theory]
    [InlineData("```\n| a | b |\n| --- | --- |\n| aaaaa | b |\n```")]
    [InlineData("| a | b |\n| --- | --- |\n| a | b | c |")]
    [InlineData("| no table\n| at all")]
    [InlineData("|")]
    [InlineData("")]
    public void What_is_no_table_is_left_as_it_is(string text) => Assert.Equal(text, PipeTables.Align(text));

    [Fact]
    public void A_table_in_columns_reads_the_same()
    {
        var pipeline = new MarkdownPipelineBuilder().UsePipeTables().Build();
        Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]).Array[0, 30].Sample(parts =>
        {
            var text = "| a | b |\n| --- | ---: |\n" + string.Concat(parts);
            Assert.Equal(Markdown.ToHtml(text, pipeline), Markdown.ToHtml(PipeTables.Align(text), pipeline));
        });
    }
}
