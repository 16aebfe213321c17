using CsCheck;

namespace PatternForge.Cli.Tests;

/// <summary>What the program answers a shell that asks how a command line may go on.</summary>
public class SuggestionTests
{
    [Theory]
    [InlineData("", "add-size amount build completions counts diff explain lint new plan regauge schema serve spread tables test-pack test-results")]
    [InlineData("l", "lint")]
    [InlineData("lint", "lint")]
    [InlineData("LI", "lint")]
    [InlineData("-", "--help --version -h")]
    [InlineData("lint ", ":patterns")]
    [InlineData("lint hat", ":patterns")]
    [InlineData("lint one.pattern.md \"two", ":patterns")]
    [InlineData("lint --", "--diff --fix --format --help --online --warnings-as-errors")]
    [InlineData("lint x --w", "--warnings-as-errors")]
    [InlineData("lint x -- --w", "")]
    [InlineData("lint --format ", "github json sarif text")]
    [InlineData("lint x --format s", "sarif")]
    [InlineData("lint --format=s", "--format=sarif")]
    [InlineData("lint --format=json ", ":patterns")]
    [InlineData("lint --format=,\t\tx --fi", "--fix")]
    [InlineData("build --format h", "html")]
    [InlineData("build --format html,", "html,json html,listing html,md html,pdf html,png html,source html,txt")]
    [InlineData("build --format=html,m", "--format=html,md")]
    [InlineData("build --out ", ":folders")]
    [InlineData("build --templates=t", ":folders")]
    [InlineData("counts --format c", "csv")]
    [InlineData("new Hat --craft ", "crochet knitting")]
    [InlineData("new ", "")]
    [InlineData("explain pf30", "PF301 PF302 PF303 PF304 PF305 PF306 PF307 PF308 PF309")]
    [InlineData("explain stated-", "stated-change-differs stated-count-differs")]
    [InlineData("completions ", "bash fish powershell zsh")]
    [InlineData("tables n", "needles")]
    [InlineData("plan 38 60 --at ", "corners edge ends markers")]
    [InlineData("spread 51 --with k", "k2tog kfb")]
    [InlineData("amount --fabric st", "stockinette stranded")]
    [InlineData("knit ", "")]
    public void What_may_come_next_is_offered(string line, string words)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(words, string.Join(' ', Words(folder, line)));
    }

    [Fact]
    public void The_sizes_of_the_pattern_that_is_named_are_offered()
    {
        using var folder = new TemporaryFolder();
        folder.Write("my hat.pattern.md", "---\ntitle: Hat\nsizes: S (M, L, XL)\n---\n");
        Assert.Equal(["L", "M", "S", "XL"], Words(folder, "counts \"my hat.pattern.md\" --size "));
        Assert.Equal(["--size=XL"], Words(folder, "counts \"my hat.pattern.md\" --size=x"));
        Assert.Empty(Words(folder, "counts gone.pattern.md --size "));
        Assert.Empty(Words(folder, "counts --size "));
    }

    [Fact]
    public void A_word_comes_with_what_it_stands_for()
    {
        using var folder = new TemporaryFolder();
        Assert.StartsWith("PF301\tstated-count-differs: ", Outcome.Of(folder, "[suggest]", "explain PF301").Out, StringComparison.Ordinal);
        Assert.StartsWith("lint\tCheck patterns: ", Outcome.Of(folder, "[suggest]", "lint").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_behind_the_cursor_changes_nothing()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(["lint"], WordsOf(Outcome.Of(folder, "[suggest:2]", "lint --format json")));
        Assert.Equal(["--fix", "--format"], WordsOf(Outcome.Of(folder, "[suggest:8]", "lint --f")));
        Assert.Equal(["lint"], WordsOf(Outcome.Of(folder, "[suggest:99]", "lin")));
    }

    [Fact]
    public void Without_a_line_the_commands_are_offered()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(["add-size", "amount", "build", "completions", "counts", "diff", "explain", "lint", "new", "plan", "regauge", "schema", "serve", "spread", "tables", "test-pack", "test-results"], WordsOf(Outcome.Of(folder, "[suggest]")));
    }

    [Fact]
    public void Any_line_is_answered_without_a_fault()
    {
        using var folder = new TemporaryFolder();
        string[] signs = ["lint", "build", "counts", "explain", "new", " ", " ", "  ", "=", "\"", "'", "--", "-", "--format", "--format=", "--size", "--out", ",", "@x", "[suggest]", "\t", "PF"];
        var piece = Gen.Int[0, signs.Length].SelectMany(i => i < signs.Length ? Gen.Const(signs[i]) : Gen.String[0, 4]);
        piece.Array[0, 8].Select(string.Concat).Sample(
            line =>
            {
                var outcome = Outcome.Of(folder, "[suggest]", line);
                Assert.True((outcome.Code, outcome.Error) == (0, ""), $"`{line}`: {outcome.Error}");
            },
            iter: 2_000);
    }

    private static string[] Words(TemporaryFolder folder, string line) => WordsOf(Outcome.Of(folder, "[suggest]", line));

    private static string[] WordsOf(Outcome outcome)
    {
        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        return [.. outcome.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split('\t')[0])];
    }
}
