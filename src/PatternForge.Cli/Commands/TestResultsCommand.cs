using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Text;
using PatternForge.Core.Trials;

namespace PatternForge.Cli.Commands;

/// <summary><c>test-results PATTERN ANSWERS...</c>: what test makers sent back, beside what the pattern says.</summary>
internal static class TestResultsCommand
{
    private const string Name = "test-results";
    private const int MostFiles = 1_000;
    private static readonly string[] Forms = ["text", "md", "csv", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var words = new Argument<string[]>("PATTERN ANSWERS") { Description = "The pattern that was tested, then the files that came back (JSON or YAML), or folders with them", Arity = ArgumentArity.ZeroOrMore };
        words.CompletionSources.Add(Suggestions.PatternFiles);
        var format = Arguments.Form("How to tell the results", Forms);
        var command = new Command(Name, "Table what test makers sent back beside what the pattern says.") { words, format };
        command.SetAction(parsed => Run(parsed.GetValue(words) ?? [], parsed.GetValue(format), around));
        return command;
    }

    private static int Run(string[] words, string? said, Surroundings around)
    {
        if (words is not [var path, .. { Length: > 0 } rest])
        {
            return CommandLine.Refuse("say which pattern was tested, and which answers came back: `patternforge test-results hat.pattern.md answers`", around, Name);
        }

        if (Arguments.Choice(said ?? Forms[0], "form", Forms, around, Name) is not { } form)
        {
            return ExitCode.Usage;
        }

        if (InputFiles.FullPathOf(path, around.Folder) is { } folder && Directory.Exists(folder) && path != InputFiles.StandardInput)
        {
            return CommandLine.Refuse($"`{path}` is a folder: the first is the pattern that was tested", around, Name);
        }

        var input = InputFiles.Find([path], around);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return code;
        }

        var worked = PatternWork.Compile(input.Files[0], new HouseFiles(around), around, editions: []);
        code = Math.Max(PatternWork.Complain([worked], around), HouseFiles.Complain([worked], around));
        if (worked.Compilation is not { } pattern)
        {
            if (worked.Report is { } refused)
            {
                around.Tell(TextReport.Of([refused], around.Width, new Paint(around.ColourError)));
            }

            return Math.Max(code, ExitCode.Usage);
        }

        var answers = new List<TestAnswers>();
        foreach (var (name, full) in FilesOf(rest, around, ref code))
        {
            var read = InputFiles.Read(new InputFile(name, full, name), AnswersReader.MaxLength, around);
            if (read.Problem is { } problem)
            {
                around.Say(problem);
                code = Math.Max(code, ExitCode.Usage);
                continue;
            }

            if (read.TooLarge)
            {
                around.Say($"`{name}` is too large for answers and was not read");
                code = Math.Max(code, ExitCode.Usage);
                continue;
            }

            var one = AnswersReader.Read(new SourceText(name, read.Source.Text), pattern);
            answers.Add(one);
            if (!one.Findings.IsEmpty)
            {
                around.Tell(TextReport.Of([new FileReport { Path = name, Sizes = [], Coverage = null, IsPattern = false, Findings = one.Findings }], around.Width, new Paint(around.ColourError)));
                code = one.HasErrors ? Math.Max(code, ExitCode.Findings) : code;
            }
        }

        if (answers.Count == 0)
        {
            around.Say("there are no answers to read");
            return Math.Max(code, ExitCode.Usage);
        }

        var results = TestResults.Of(pattern, answers, worked.House?.House.Tolerances);
        around.Write(form switch
        {
            "json" => TestResultsReport.Json(path, results),
            "csv" => TestResultsReport.Csv(results),
            "md" => TestResultsReport.Markdown(results),
            _ => TestResultsReport.Text(results, new Paint(around.ColourOut)),
        });
        return code;
    }

    private static List<(string Name, string Full)> FilesOf(string[] said, Surroundings around, ref int code)
    {
        var files = new List<(string, string)>();
        foreach (var one in said)
        {
            if (InputFiles.FullPathOf(one, around.Folder) is not { } full || (!File.Exists(full) && !Directory.Exists(full)))
            {
                around.Say($"`{one}` is not there");
                code = Math.Max(code, ExitCode.Usage);
            }
            else if (Directory.Exists(full))
            {
                try
                {
                    files.AddRange(Directory.EnumerateFiles(full).Where(f => Path.GetExtension(f).ToLowerInvariant() is ".json" or ".yaml" or ".yml").Order(StringComparer.Ordinal).Take(MostFiles).Select(f => ($"{one.TrimEnd('/', '\\')}/{Path.GetFileName(f)}", f)));
                }
                catch (Exception e) when (e is IOException or UnauthorizedAccessException)
                {
                    around.Say($"`{one}` cannot be read: {InputFiles.ReasonOf(e)}");
                    code = Math.Max(code, ExitCode.Usage);
                }
            }
            else
            {
                files.Add((one, full));
            }
        }

        return files;
    }
}
