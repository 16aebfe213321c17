using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Commands;

/// <summary><c>lint PATH...</c>: reads patterns, works every row in every size, and tells what is wrong.</summary>
internal static class LintCommand
{
    private static readonly string[] Forms = ["text", "json", "sarif", "github"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var paths = Arguments.Paths();
        var format = Arguments.Form("How to tell what was found", Forms);
        var strict = new Option<bool>("--warnings-as-errors") { Description = "Answer with exit code 1 for warnings too" };
        var online = new Option<bool>("--online") { Description = "Ask over the network whether the links are there" };
        var command = new Command("lint", "Check patterns: every row in every size, and all that a released pattern needs.") { paths, format, strict, online };
        command.SetAction(parsed => Run(parsed.GetValue(paths) ?? [], parsed.GetValue(format), parsed.GetValue(strict), parsed.GetValue(online), around));
        return command;
    }

    private static int Run(string[] paths, string? said, bool strict, bool online, Surroundings around)
    {
        if (paths.Length == 0)
        {
            return CommandLine.Refuse("say what to check: a file, a folder, or `-` for standard input", around, "lint");
        }

        if (Arguments.Choice(said ?? Forms[0], "form", Forms, around, "lint") is not { } form)
        {
            return ExitCode.Usage;
        }

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return code;
        }

        // The compilation is not kept: only what a report needs, so that thousands of files fit.
        var files = PatternWork.Each(input.Files, f => PatternWork.Compile(f, around) is var worked && online ? worked : worked.ForReport, around);
        files = online ? PatternWork.WithAnswers(files, around) : files;
        code = Math.Max(code, PatternWork.Complain(files, around));
        var reports = files.Select(f => f.Report).OfType<FileReport>().ToArray();
        around.Write(form switch
        {
            "json" => JsonReport.Of(reports),
            "sarif" => SarifReport.Of(reports, CommandLine.Version, complete: code == ExitCode.Clean),
            "github" => GitHubReport.Of(reports),
            _ => TextReport.Of(reports, around.Width, new Paint(around.ColourOut)),
        });
        var threshold = strict ? Severity.Warning : Severity.Error;
        return files.Any(f => f.Stands(threshold)) ? Math.Max(code, ExitCode.Findings) : code;
    }
}
