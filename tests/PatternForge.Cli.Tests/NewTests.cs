namespace PatternForge.Cli.Tests;

public class NewTests
{
    [Theory]
    [InlineData("Harbour", "Harbour.pattern.md", "Harbour")]
    [InlineData("Harbour Hat", "Harbour-Hat.pattern.md", "Harbour Hat")]
    [InlineData("harbour-hat", "harbour-hat.pattern.md", "Harbour hat")]
    [InlineData("harbour-hat.pattern.md", "harbour-hat.pattern.md", "Harbour hat")]
    [InlineData("Eve's \"Best\" Hat: No. 7\\8", "Eves-Best-Hat-No.-7-8.pattern.md", "Eve's \\\"Best\\\" Hat: No. 7\\\\8")]
    [InlineData("../../evil", "evil.pattern.md", "../../evil")]
    [InlineData("Bonnet für Zoë 毛糸", "Bonnet-für-Zoë-毛糸.pattern.md", "Bonnet für Zoë 毛糸")]
    [InlineData("nul", "nul-pattern.pattern.md", "nul")]
    [InlineData("DATE and TITLE", "DATE-and-TITLE.pattern.md", "DATE and TITLE")]
    public void A_new_file_is_called_after_its_title(string said, string file, string title)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, "new", said);
        Assert.Equal((0, file + "\n"), (outcome.Code, outcome.Out));
        Assert.Equal([file], folder.Files());
        var text = folder.Read(file);
        Assert.Contains($"\ntitle: \"{title}\"\n", text, StringComparison.Ordinal);
        Assert.Contains("\ndate: 2025-03-14\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_words_make_one_title()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal("Harbour-Hat.pattern.md\n", Outcome.Of(folder, "new", "Harbour", "Hat").Out);
    }

    [Fact]
    public void A_very_long_title_gets_a_file_name_that_every_system_takes()
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, "new", string.Concat(Enumerable.Repeat("糸", 500)));
        Assert.Equal(0, outcome.Code);
        Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(outcome.Out.Trim()), 1, 255);
    }

    [Fact]
    public void A_file_that_is_there_is_never_overwritten()
    {
        using var folder = new TemporaryFolder();
        folder.Write("Hat.pattern.md", "mine");
        var outcome = Outcome.Of(folder, "new", "Hat");
        Assert.Equal(2, outcome.Code);
        Assert.Equal("`Hat.pattern.md` is there already and was left as it is: choose another name, or move it away first\n", outcome.Error);
        Assert.Equal("mine", folder.Read("Hat.pattern.md"));
    }

    [Theory]
    [InlineData("knitting")]
    [InlineData("crochet")]
    public void A_new_file_has_nothing_to_find(string craft)
    {
        using var folder = new TemporaryFolder();
        Outcome.Of(folder, "new", "Harbour Hat", "--craft", craft);
        var outcome = Outcome.Of(folder, "lint", ".", "--warnings-as-errors");
        Assert.True(outcome.Code == 0, outcome.Out);
        Assert.EndsWith("\n0 errors, 0 warnings, 0 notes\n", outcome.Out, StringComparison.Ordinal);
    }
}
