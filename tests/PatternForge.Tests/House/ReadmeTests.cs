using System.Collections.Immutable;
using System.Text.Json;
using System.Text.RegularExpressions;
using PatternForge.Cli;
using PatternForge.Core;
using PatternForge.Core.Formulas;
using PatternForge.Core.Planning;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.House;

/// <summary>What README.md says is what the program does.</summary>
public sealed class ReadmeTests : IDisposable
{
    private static readonly ProjectFile Readme = ProjectFiles.Read("README.md");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("patternforge-readme-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_sample_gets_the_finding_that_is_shown()
    {
        var shown = Block(after: "`patternforge lint cuff.pattern.md` answers");
        File.WriteAllText(Path.Combine(_folder.FullName, "cuff.pattern.md"), Block(after: "A source file is a YAML header"));

        var (code, said) = Run("lint", "cuff.pattern.md");

        var paragraphs = said.TrimEnd('\n').Split("\n\n");
        Assert.Equal(1, code);
        Assert.Equal(1, paragraphs.Count(p => p.StartsWith("note[", StringComparison.Ordinal)));
        Assert.Equal(shown.TrimEnd('\n'), string.Join("\n\n", paragraphs.Where(p => !p.StartsWith("note[", StringComparison.Ordinal))));
    }

    [Fact]
    public void The_header_that_shows_the_keys_is_read_without_a_finding()
    {
        var text = Block(after: "## The header") + "\n## Cuff\n\nCO {brim} sts. Join in the round.\n\nRnd 1: K1, mb, k to end.\n\nBO all sts.\n";
        var compilation = Compiler.Compile(new SourceText("header.pattern.md", text));
        Assert.Empty(compilation.Findings.Select(f => $"{f.Rule.Code} {f.Message}"));
        Assert.Equal(compilation.Coverage.Instructions, compilation.Coverage.Checked);
    }

    [Fact]
    public void The_reports_for_programs_have_just_the_keys_that_are_shown()
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "cuff.pattern.md"), Block(after: "A source file is a YAML header"));
        Assert.Equal(Keys(Block(after: "## JSON")), Keys(Run("lint", "cuff.pattern.md", "--format", "json").Said));
        Assert.Equal(Keys(Block(after: "And the counts")), Keys(Run("counts", "cuff.pattern.md", "--format", "json").Said));
    }

    [Theory]
    [InlineData("new")]
    [InlineData("lint")]
    [InlineData("build")]
    [InlineData("counts")]
    [InlineData("explain")]
    [InlineData("spread")]
    [InlineData("plan")]
    [InlineData("regauge")]
    [InlineData("amount")]
    [InlineData("tables")]
    [InlineData("completions")]
    public void A_command_and_each_of_its_options_is_told(string command)
    {
        var (_, help) = Run(command, "--help");
        Assert.Contains($"| `{command} ", Readme.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Regex.Matches(help, @"--[a-z][a-z-]+").Select(m => m.Value), o => o != "--help" && !Readme.Text.Contains(o, StringComparison.Ordinal));
    }

    [Fact]
    public void The_command_that_passes_the_tests_is_the_one_that_ci_runs()
    {
        const string Command = "dotnet test PatternForge.sln -c Release";
        Assert.Contains($"\n    {Command}\n", Readme.Text, StringComparison.Ordinal);
        Assert.Contains(Command, ProjectFiles.Read(".ci/run").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_is_there_and_small() =>
        Assert.All(Regex.Matches(Readme.Text, @"!\[[^\]]{20,}\]\(([^)]+)\)"), m => Assert.InRange(new FileInfo(RepositoryRoot.Path(m.Groups[1].Value)).Length, 1, 150 * 1024));

    [Fact]
    public void Every_finding_is_listed() => MarkedPart.Match("README.md", "findings",
    [
        "| code | name | weight | it says |",
        "|---|---|---|---|",
        .. RuleCatalog.All.Concat(TemplateRules.All).OrderBy(r => r.Code, StringComparer.Ordinal)
            .Select(r => $"| {r.Code} | {r.Name} | {r.Severity.ToString().ToLowerInvariant()} | {Cell(r.Summary)} |"),
    ]);

    [Fact]
    public void Every_key_of_the_project_file_is_listed() => MarkedPart.Match("README.md", "project keys",
    [
        "| key | values | without it | what it settles |",
        "|---|---|---|---|",
        .. HouseFile.Keys.Select(k => $"| `{k.Path}` | {Cell(k.Values)} | {Cell(k.Usual)} | {Cell(k.About)} |"),
    ]);

    [Fact]
    public void Every_function_of_formulas_is_listed() => MarkedPart.Match("README.md", "functions",
    [
        "| function | gives |",
        "|---|---|",
        .. FormulaFunction.All.Select(f => $"| `{f.Form}` | {Cell(f.Meaning)} |"),
    ]);

    [Fact]
    public void Every_kind_of_plan_is_listed() => MarkedPart.Match("README.md", "plans",
    [
        "| `work:` | numbers | words | plans |",
        "|---|---|---|---|",
        .. PlanKind.All.Select(k => $"| `{k.Name}` | {Keys(k.Numbers, ", ")} | {Keys(k.Words, "; ")} | {Cell(k.Meaning)} |"),
    ]);

    private static string Keys(string keys, string between) =>
        string.Join(between, keys.Split(between, StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split(':') is [var key, var words] ? $"`{key}` ({words.Trim()})" : $"`{k.Trim()}`"));

    [Fact]
    public void The_formulas_that_are_shown_are_read_without_a_finding()
    {
        var made = Compiler.Compile(new SourceText("formulas.pattern.md", $"---\ntitle: Ferryman top\n{Block(after: "## Numbers and formulas")}\nomit: [yarn]\n---\n"));
        Assert.DoesNotContain(made.Findings, f => string.CompareOrdinal(f.Rule.Code, "PF200") < 0);
        Assert.Equal([98m, 106m, 118m, 130m], made.Pattern.Facts.Numbers[0].Values.Values.Select(v => v!.Value));
    }

    [Fact]
    public void The_project_file_that_is_shown_is_read_without_a_finding()
    {
        var file = HouseFile.Read(new SourceText(HouseFile.Name, Block(after: "## The project file")));
        Assert.Empty(file.Findings.Select(f => $"{f.Rule.Code} {f.Message}"));
        Assert.Equal("Ilsa Merrowby", file.House.Defaults.Designer);
    }

    [Fact]
    public void The_commands_of_the_workflow_are_taken()
    {
        Directory.CreateDirectory(Path.Combine(_folder.FullName, "designs"));
        var cuff = Block(after: "A source file is a YAML header").Replace("36 (40, 43)", "36 (40, 44)", StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(_folder.FullName, "designs", "cuff.pattern.md"), cuff);
        var commands = Regex.Matches(Block(after: "### In a workflow"), "run: patternforge (.+)").Select(m => m.Groups[1].Value.Split(' ')).ToArray();
        Assert.Equal(["lint", "build"], commands.Select(c => c[0]));
        Assert.All(commands, c => Assert.Equal(0, Run(c).Code));
        Assert.True(File.Exists(Path.Combine(_folder.FullName, "pages", "cuff.html")));
        Assert.Equal(0, Run("lint", "designs", "--diff").Code);
    }

    [Fact]
    public void The_commands_about_numbers_are_taken_and_answer_what_is_shown()
    {
        var lines = Block(after: "Five commands answer").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var commands = lines.Select(l => WordsOf(l)[1..]).ToArray();
        Assert.Equal(["amount", "plan", "regauge", "spread", "tables"], commands.Select(c => c[0]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(commands, c => Assert.Equal(0, Run(c).Code));
        Assert.Equal(Block(after: "The third answers"), Run(commands[2]).Said);
    }

    [Fact]
    public void Every_knitting_stitch_is_listed() => MarkedPart.Match("README.md", "stitches",
    [
        "| written | stitch | uses | makes |",
        "|---|---|--:|--:|",
        .. OperationTable.All(Craft.Knitting).Select(o => $"| {Names(o.Names)} | {Cell(o.Spoken)} | {o.Takes + o.PassesOver} | {o.Makes} |"),
    ]);

    /// <summary>The words of a command line, quoted ones whole.</summary>
    private static string[] WordsOf(string line) => [.. line.Split('"').SelectMany((part, i) => i % 2 == 1 ? [part] : part.Split(' ', StringSplitOptions.RemoveEmptyEntries))];

    private static string Names(ImmutableArray<OperationName> names) =>
        string.Join(", ", names.Select(n => Cell($"`{n.Text}`") + (n.Dialect == Dialect.Any ? "" : $" ({n.Dialect.ToString().ToUpperInvariant()})")));

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);

    /// <summary>The first block of indented lines after some words, its indent taken off.</summary>
    private static string Block(string after)
    {
        var at = Readme.Text.IndexOf(after, StringComparison.Ordinal);
        Assert.True(at >= 0, $"README.md does not say: {after}");
        var lines = Readme.Text[at..].Split('\n').SkipWhile(l => !l.StartsWith("    ", StringComparison.Ordinal)).TakeWhile(l => l.Length == 0 || l.StartsWith("    ", StringComparison.Ordinal));
        return string.Join('\n', lines.Select(l => l.Length == 0 ? l : l[4..])).TrimEnd('\n') + "\n";
    }

    /// <summary>The keys of a JSON text in their order, each with its way down; what a list holds counts once.</summary>
    private static string[] Keys(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Walk(document.RootElement, "").Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Walk(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Walk(p.Value, $"{path}/{p.Name}").Prepend($"{path}/{p.Name}")),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(e => Walk(e, path)),
        _ => [],
    };

    private (int Code, string Said) Run(params string[] arguments)
    {
        using var said = new StringWriter { NewLine = "\n" };
        using var told = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(arguments, new Surroundings { In = Stream.Null, Out = said, Error = told, Folder = _folder.FullName });
        return (code, said.ToString());
    }
}
