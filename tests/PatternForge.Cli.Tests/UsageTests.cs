namespace PatternForge.Cli.Tests;

/// <summary>Wrong usage is answered with 2 and a sentence that helps; results go to one stream, everything else to the other.</summary>
public class UsageTests
{
    [Theory]
    [InlineData("say what to do: new, lint, build, serve, counts, add-size, diff, test-pack, test-results, explain, spread, plan, regauge, amount, tables, schema, completions")]
    [InlineData("`lnt` is not known as a command: did you mean `lint`?", "lnt")]
    [InlineData("`--frmat` is not known as an option: did you mean `--format`?", "lint", "--frmat", "json", "x")]
    [InlineData("`--frmat=json` is not known as an option: did you mean `--format`?", "lint", "--frmat=json", "x")]
    [InlineData("`-x` is not known as an option", "lint", "-x")]
    [InlineData("say what to check: a file, a folder, or `-` for standard input", "lint")]
    [InlineData("`jsn` is not known as a form: did you mean `json`?", "lint", "--format", "jsn", "x")]
    [InlineData("`painting` is not known as a form: there are text, json, sarif, github", "lint", "--format", "painting", "x")]
    [InlineData("Required argument missing for option: '--format'", "lint", "x", "--format")]
    [InlineData("say what to release: a file, a folder, or `-` for standard input", "build")]
    [InlineData("say which pattern to count: one file, or `-` for standard input", "counts")]
    [InlineData("say which pattern to count: one file, or `-` for standard input", "counts", "a", "b")]
    [InlineData("`.` is a folder: counts looks at one file", "counts", ".")]
    [InlineData("there is no file or folder `gone`", "counts", "gone")]
    [InlineData("say what the pattern is called: `patternforge new \"Harbour Hat\"`", "new")]
    [InlineData("`weaving` is not known as a craft: there are knitting, crochet", "new", "Hat", "--craft", "weaving")]
    [InlineData("`--- ...` holds no letter or digit that a file could be called after", "new", "--", "--- ...")]
    [InlineData("say which finding to explain, by its code or its name: `patternforge explain PF301`", "explain")]
    [InlineData("say for which shell: bash, zsh, fish, powershell", "completions")]
    [InlineData("`bsh` is not known as a shell: did you mean `bash`?", "completions", "bsh")]
    public void Wrong_usage_ends_with_2_and_a_sentence(string sentence, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, arguments);
        Assert.Equal((2, ""), (outcome.Code, outcome.Out));
        Assert.Equal(sentence, outcome.Error.Split('\n')[0]);
        Assert.Empty(folder.Files());
    }

    [Fact]
    public void A_lone_double_dash_lets_a_file_begin_with_a_dash()
    {
        using var folder = new TemporaryFolder();
        folder.Write("-x.pattern.md", "");
        Assert.Contains("\"path\":\"-x.pattern.md\"", Outcome.Of(folder, "lint", "--format", "json", "--", "-x.pattern.md").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_at_sign_is_no_file_of_arguments()
    {
        using var folder = new TemporaryFolder();
        folder.Write("args", "explain PF101");
        Assert.Equal("`@args` is not known as a command\n`patternforge --help` shows how it is used\n", Outcome.Of(folder, "@args").Error);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("lint", "--help")]
    [InlineData("build", "-h")]
    public void Help_is_a_result(params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, arguments);
        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        Assert.Contains("Usage:", outcome.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Version_says_the_name_and_the_version()
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, "--version");
        Assert.Equal((0, $"patternforge {CommandLine.Version}\n"), (outcome.Code, outcome.Out));
    }

    [Fact]
    public void A_fault_of_the_tool_ends_with_3_and_a_plain_sentence()
    {
        using var folder = new TemporaryFolder();
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(["--version"], new Surroundings { In = Stream.Null, Out = new FaultyWriter(), Error = error, Folder = folder.Path });
        Assert.Equal(3, code);
        Assert.Equal(
            "patternforge failed: this is a fault of the tool, not yours\n"
            + "please report it to the makers of the tool with the pattern and what PATTERNFORGE_TRACE=1 adds to this message\n",
            error.ToString());
    }

    [Fact]
    public void The_trace_of_a_fault_is_shown_on_request_alone()
    {
        using var folder = new TemporaryFolder();
        using var error = new StringWriter();
        CommandLine.Run(["--version"], new Surroundings { In = Stream.Null, Out = new FaultyWriter(), Error = error, Folder = folder.Path, Trace = true });
        Assert.Contains("InvalidOperationException", error.ToString(), StringComparison.Ordinal);
    }

    private sealed class FaultyWriter : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("a fault on purpose");
    }
}
