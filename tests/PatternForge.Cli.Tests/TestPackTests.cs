namespace PatternForge.Cli.Tests;

/// <summary><c>test-pack</c> and <c>test-results</c>: to the makers and back.</summary>
public class TestPackTests
{
    private const string Hat = "---\ntitle: Harbour hat\nversion: 1.1\nsizes:\n  names: S (M)\n  finished: {circumference: 45 (50) cm}\nyarn: {name: Quayside Wool, put-up: 100 g = 200 m, needs: 120 (140) m}\n---\n\n## Brim\n\nCO 90 (100) sts. Join in the round.\n\nRnd 1: Knit.\n";

    [Fact]
    public void Each_size_gets_a_form_and_a_blank_and_one_size_alone_can_be_asked_for()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        var outcome = Outcome.Of(folder, "test-pack", "hat.pattern.md", "--out", "pack");
        Assert.Equal((ExitCode.Clean, "pack/hat.test-s.html\npack/hat.test-s.yaml\npack/hat.test-m.html\npack/hat.test-m.yaml\n"), (outcome.Code, outcome.Out));
        Assert.Equal("one/hat.test-m.html\none/hat.test-m.yaml\n", Outcome.Of(folder, "test-pack", "hat.pattern.md", "--out", "one", "--size", "m").Out);
        Assert.Equal(ExitCode.Usage, Outcome.Of(folder, "test-pack", "hat.pattern.md", "--size", "XL").Code);
        Assert.Equal(ExitCode.Usage, Outcome.Of(folder, "test-pack").Code);
    }

    [Fact]
    public void What_comes_back_stands_beside_what_the_pattern_says()
    {
        using var folder = Answered();
        var outcome = Outcome.Of(folder, "test-results", "hat.pattern.md", "back");
        Assert.Equal(ExitCode.Clean, outcome.Code);
        Assert.Equal(
            """
            Harbour hat, version 1.1: 2 answers (S 1, M 1)

            size S
              yarn: Quayside Wool  60 g  61 g  +2 %  Otter

            size M
              yarn: Quayside Wool          70 g   90 g  +29 %  maker 1  takes more than is told
              measurement: circumference  50 cm  49 cm   -2 %  maker 1

            time
              size M: 11 hours

            mistakes found
              Brim, Rnd 1: knit or purl? (Otter, size S)

            """.ReplaceLineEndings("\n"),
            outcome.Out);
    }

    [Fact]
    public void Json_and_csv_have_the_promised_keys_and_no_cell_becomes_a_formula()
    {
        using var folder = Answered();
        folder.Write("back/c.yaml", "pattern: Harbour hat\nsize: S\nname: \"=1+1\"\ncomments: {Brim: \"@sum\"}\n");
        var json = Outcome.Of(folder, "test-results", "hat.pattern.md", "back", "--format", "json").Json;
        Assert.Equal(["version", "path", "title", "patternVersion", "sizes", "numbers", "mistakes", "comments", "questions"], json.EnumerateObject().Select(p => p.Name));
        Assert.Equal(["size", "maker", "kind", "name", "told", "got", "unit", "difference", "flag"], json.GetProperty("numbers")[0].EnumerateObject().Select(p => p.Name));
        var csv = Outcome.Of(folder, "test-results", "hat.pattern.md", "back", "--format", "csv").Out;
        Assert.StartsWith("size,maker,kind,name,told,got,unit,difference,flag,text\r\n", csv, StringComparison.Ordinal);
        Assert.Contains("S,'=1+1,comment,Brim,,,,,,'@sum\r\n", csv, StringComparison.Ordinal);
    }

    [Fact]
    public void Answers_that_cannot_be_used_are_told_and_the_others_are_still_tabled()
    {
        using var folder = Answered();
        folder.Write("back/x.json", "{\"pattern\": \"Harbour cowl\", \"size\": \"S\"}");
        folder.Write("back/y.json", "{\"pattern\": [");
        var outcome = Outcome.Of(folder, "test-results", "hat.pattern.md", "back");
        Assert.Equal(ExitCode.Findings, outcome.Code);
        Assert.Contains("error[PF922]", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("2 answers", outcome.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, Outcome.Of(folder, "test-results", "hat.pattern.md", "gone.json").Code);
        Assert.Equal(ExitCode.Usage, Outcome.Of(folder, "test-results", "hat.pattern.md").Code);
    }

    private static TemporaryFolder Answered()
    {
        var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        folder.Write("back/a.json", "{\"pattern\": \"Harbour hat\", \"version\": \"1.1\", \"size\": \"M\", \"yarn\": {\"Quayside Wool\": \"90\"}, \"measurements\": {\"circumference\": \"49\"}, \"time\": \"11\"}");
        folder.Write("back/b.yaml", "pattern: Harbour hat\nsize: S\nname: Otter\nyarn: 61 g\nerrors:\n  - \"Brim, Rnd 1: knit or purl?\"\n");
        return folder;
    }
}
