namespace PatternForge.Cli.Tests;

/// <summary><c>add-size</c>: what must change for one more size, told line by line, and written only when that is wanted.</summary>
public class AddSizeTests
{
    private const string Scarf = "---\ntitle: Quay scarf\nsizes: S (M)\n---\n\n## Scarf\n\nCO 20 (24) sts.\n\nRow 1: K2, *p1, k1; rep from * to end. 20 (24) sts.\n\nBO all sts.\n";

    [Fact]
    public void The_report_tells_each_line_and_changes_nothing()
    {
        using var folder = new TemporaryFolder();
        folder.Write("scarf.pattern.md", Scarf);
        var outcome = Outcome.Of(folder, "add-size", "scarf.pattern.md", "L");

        Assert.Equal(ExitCode.Clean, outcome.Code);
        Assert.Contains(
            """
            size L among S, M, L

            line 3  given: sizes.names = L
                S (M) -> S (M, L)
                the name of the new size
            line 8  proposed: CO 20 (24) sts. = 28
                20 (24) -> 20 (24, 28)
                one step on, a multiple of 4
            line 10  proposed: Row 1: K2, *p1, k1; rep from * to end. 20 (24) sts. = 28
                20 (24) -> 20 (24, 28)
                one step on, a multiple of 4

            1 given, 2 proposed
            with these values nothing new is found in size L

            """.ReplaceLineEndings("\n"),
            outcome.Out,
            StringComparison.Ordinal);
        Assert.Equal(Scarf, folder.Read("scarf.pattern.md"));
    }

    [Fact]
    public void What_is_written_is_the_pattern_with_the_new_size()
    {
        using var folder = new TemporaryFolder();
        folder.Write("scarf.pattern.md", Scarf.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(ExitCode.Clean, Outcome.Of(folder, "add-size", "scarf.pattern.md", "L", "--write").Code);
        var expected = Scarf.Replace("S (M)", "S (M, L)", StringComparison.Ordinal).Replace("20 (24)", "20 (24, 28)", StringComparison.Ordinal);
        Assert.Equal(expected.Replace("\n", "\r\n", StringComparison.Ordinal), folder.Read("scarf.pattern.md"));
        Assert.Equal(["scarf.pattern.md"], folder.Files());
    }

    [Fact]
    public void Standard_input_is_written_to_standard_output_and_the_report_beside_it()
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.WithInput(folder, Scarf, "add-size", "-", "L", "--write");
        Assert.StartsWith("---\ntitle: Quay scarf\nsizes: S (M, L)\n", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("1 given, 2 proposed", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_of_the_new_size_are_told_and_answered()
    {
        using var folder = new TemporaryFolder();
        folder.Write("scarf.pattern.md", "---\ntitle: Hat\nsizes: S (M, L)\n---\n\n## Hat\n\nCO 12 (36, 120) sts.\n\nRow 1: [K2tog, k2 (4, 8)] 3 (6, 12) times.\n");
        var outcome = Outcome.Of(folder, "add-size", "scarf.pattern.md", "XL", "--format", "json");
        Assert.Equal(ExitCode.Findings, outcome.Code);
        Assert.Equal("XL", outcome.Json.GetProperty("findings")[0].GetProperty("sizes")[0].GetString());
        Assert.False(outcome.Json.GetProperty("written").GetBoolean());
    }

    [Theory]
    [InlineData("say which pattern", "scarf.pattern.md")]
    [InlineData("has a size `M` already", "scarf.pattern.md", "M")]
    [InlineData("`bust` gives no value", "scarf.pattern.md", "L", "--set", "bust")]
    [InlineData("the header has no list `bust`", "scarf.pattern.md", "L", "--set", "bust=90 cm")]
    public void What_cannot_be_done_is_refused(string words, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        folder.Write("scarf.pattern.md", Scarf);
        var outcome = Outcome.Of(folder, ["add-size", .. arguments]);
        Assert.Equal(ExitCode.Usage, outcome.Code);
        Assert.Contains(words, outcome.Error, StringComparison.Ordinal);
    }
}
