using PatternForge.Exam;

namespace PatternForge.Tests.Exam;

public class SourceBuilderTests
{
    [Theory]
    [InlineData("\"worked\":\"flat\",\"before\":34", "Begin with 34 sts.")]
    [InlineData("\"worked\":\"round\",\"before\":72", "Begin with 72 sts, in the round.")]
    [InlineData("\"worked\":\"flat\",\"sizes\":[\"S\",\"M\",\"L\"],\"before\":[34,38,42]", "Begin with 34 (38, 42) sts.")]
    [InlineData("\"worked\":\"flat\",\"sizes\":[\"S\",\"M\",\"L\"],\"before\":[34,34,34]", "Begin with 34 sts.")]
    [InlineData("\"worked\":\"flat\",\"sizes\":[\"S\",\"M\",\"L\"],\"before\":[null,56,62]", "Begin with - (56, 62) sts.")]
    [InlineData("\"worked\":\"flat\",\"before\":24,\"markers\":[12]", "Begin with 24 sts, with a marker after st 12.")]
    [InlineData("\"worked\":\"round\",\"before\":134,\"markers\":[4,63,71,130]", "Begin with 134 sts, in the round, with markers after sts 4, 63, 71 and 130.")]
    [InlineData("\"worked\":\"flat\",\"sizes\":[\"S\",\"M\"],\"before\":[64,79],\"markers\":[[6,16],[8,16]]", "Begin with 64 (79) sts, with markers after sts 6 (8) and 16.")]
    [InlineData("\"worked\":\"round\",\"before\":20,\"context\":{\"needles\":[10,10]}", "Begin with 20 sts, with 10 sts on each of 2 needles, in the round.")]
    [InlineData("\"worked\":\"flat\",\"before\":{\"dc\":12,\"ch-2 sp\":4}", "Begin with 12 dc and 4 ch-2 sps.")]
    [InlineData("\"worked\":\"flat\",\"before\":{\"dc\":6,\"ch-1 sp\":1}", "Begin with 6 dc and 1 ch-1 sp.")]
    public void A_row_starts_from_a_line_as_a_designer_writes_it(string given, string line) =>
        Assert.Contains($"\n{line}\n\nRow 1: Knit.\n", Text($$"""{"id":"T","craft":"knit","dialect":"US","forms":[],{{given}},"text":"Row 1: Knit.","after":1,"verdict":"ok"}"""), StringComparison.Ordinal);

    [Theory]
    [InlineData("\"before\":0,\"text\":\"CO 34 sts.\"")]
    [InlineData("\"before\":60,\"setup\":[\"BACK: CO 60 sts. Work 20 rows in rib.\"],\"text\":\"Knit.\"")]
    public void No_starting_line_stands_where_a_cast_on_leads_to_the_count(string given) =>
        Assert.DoesNotContain("Begin with", Text($$"""{"id":"T","craft":"knit","dialect":"US","worked":"flat","forms":[],{{given}},"after":1,"verdict":"ok"}"""), StringComparison.Ordinal);

    [Fact]
    public void The_rows_before_stand_above_the_starting_line()
    {
        var text = Text("""{"id":"T","craft":"knit","dialect":"UK","worked":"flat","forms":[],"before":44,"setup":["Row 7: Knit.","Row 8: Purl."],"text":"Row 9: Knit.","after":1,"verdict":"ok"}""");
        Assert.EndsWith("## Piece\n\nRow 7: Knit.\n\nRow 8: Purl.\n\nBegin with 44 sts.\n\nRow 9: Knit.\n", text, StringComparison.Ordinal);
        Assert.Contains("\nterms: uk\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_case_defines_stands_in_the_header()
    {
        var text = Text("""{"id":"T","craft":"knit","dialect":"US","worked":"flat","forms":[],"before":4,"defs":{"3/3 LC":"cross 3 over \"3\""},"context":{"charts":{"Chart A":12},"notes":["Ch 3: counts."]},"text":"Knit.","after":1,"verdict":"ok"}""");
        Assert.Contains("stitches:\n  \"3/3 LC\": \"cross 3 over \\\"3\\\"\"\n", text, StringComparison.Ordinal);
        Assert.Contains("charts:\n  Chart A: 12\n", text, StringComparison.Ordinal);
        Assert.Contains("notes: [\"Ch 3: counts.\"]\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_worked_into_a_foundation_chain_starts_from_that_chain() =>
        Assert.Contains("\nCh 26.\n\nRow 1: Sc in 2nd ch from hook", Text("""{"id":"T","craft":"crochet","dialect":"US","worked":"flat","forms":[],"before":26,"text":"Row 1: Sc in 2nd ch from hook and in each ch across.","after":25,"verdict":"ok"}"""), StringComparison.Ordinal);

    [Fact]
    public void The_asked_rows_are_found_where_they_stand()
    {
        var cases = CaseReader.ReadFiles([RepositoryRoot.Path("tests", "exam", "rows.jsonl"), RepositoryRoot.Path("tests", "exam", "patterns.jsonl")]);
        Assert.All(cases.Rows, c =>
        {
            var source = SourceBuilder.Of(c.Question);
            Assert.Equal(c.Question.Text.Trim(), source.Source.ToString(source.Rows[0]));
        });
        Assert.All(cases.Patterns, c =>
        {
            var source = SourceBuilder.Of(c.Question);
            Assert.Equal(c.Question.Rows.Select(r => r.Text), source.Rows.Select(source.Source.ToString));
        });
    }

    [Fact]
    public void A_pattern_keeps_its_own_list_and_sections()
    {
        var question = CaseReader.Read(["""{"id":"P","title":"Hat: one","craft":"knit","dialect":"US","worked":"round","sizes":["S","L"],"header":{"gauge":"20 sts = 4 in","finished chest":"24 (26) in","abbreviations":["k","st(s)"],"special":{"MB":"make a bobble"}},"rows":[{"n":1,"section":"Main","text":"CO 40 (48) sts.","after":[40,48]},{"n":2,"section":"Crown","text":"Knit 1 rnd.","after":[40,48]}],"findings":[]}"""]).Patterns[0].Question;
        var text = SourceBuilder.Of(question).Source.Text;
        Assert.Contains("title: \"Hat: one\"\n", text, StringComparison.Ordinal);
        Assert.Contains("gauge: \"20 sts = 4 in\"\n", text, StringComparison.Ordinal);
        Assert.Contains("sizes:\n  names: \"S (L)\"\n  finished:\n    chest: \"24 (26) in\"\n", text, StringComparison.Ordinal);
        Assert.Contains("abbreviations: [k, \"st(s)\"]\n", text, StringComparison.Ordinal);
        Assert.Contains("stitches:\n  MB: make a bobble\n", text, StringComparison.Ordinal);
        Assert.EndsWith("## Main\n\nCO 40 (48) sts.\n\n## Crown\n\nKnit 1 rnd.\n", text, StringComparison.Ordinal);
    }

    private static string Text(string json) => SourceBuilder.Of(CaseReader.Read([json]).Rows[0].Question).Source.Text;
}
