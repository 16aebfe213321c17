using System.Collections.Immutable;
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
        var fix = new Option<bool>("--fix") { Description = "Make the exact repairs that findings offer, then tell what is left; `-` is written to standard output" };
        var diff = new Option<bool>("--diff") { Description = "Show what --fix would change, as a unified diff, and change nothing" };
        var online = new Option<bool>("--online") { Description = "Ask over the network whether the links are there" };
        var command = new Command("lint", "Check patterns: every row in every size, and all that a released pattern needs.") { paths, format, strict, fix, diff, online };
        command.SetAction(parsed => Run(
            parsed.GetValue(paths) ?? [],
            parsed.GetValue(format),
            new(parsed.GetValue(strict), parsed.GetValue(fix), parsed.GetValue(diff), parsed.GetValue(online)),
            around));
        return command;
    }

    private static int Run(string[] paths, string? said, Wishes wishes, Surroundings around)
    {
        if (paths.Length == 0)
        {
            return CommandLine.Refuse("say what to check: a file, a folder, or `-` for standard input", around, "lint");
        }

        if (Arguments.Choice(said ?? Forms[0], "form", Forms, around, "lint") is not { } form)
        {
            return ExitCode.Usage;
        }

        if (said is not null && wishes.Diff)
        {
            return CommandLine.Refuse("--diff shows a diff and no report: leave out --format", around, "lint");
        }

        if (wishes.Online && (wishes.Fix || wishes.Diff))
        {
            return CommandLine.Refuse("--online asks for links and repairs nothing: leave out --fix and --diff", around, "lint");
        }

        var input = InputFiles.Find(paths, around, takesHouses: true);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty && input.Houses.IsEmpty)
        {
            return code;
        }

        if (wishes is { Fix: true, Diff: false } && input.Files.Length > 1 && input.Files.Any(f => f.FullPath is null))
        {
            return CommandLine.Refuse("`-` is repaired by itself: name no file beside it", around, "lint");
        }

        return wishes.Fix || wishes.Diff ? Repair(input, code, form, wishes, around) : Report(Checked(input, wishes.Online, around), new HouseFiles(around).Named(input.Houses), code, form, wishes, around, around.Write, around.ColourOut);
    }

    // The compilation is not kept: only what a report needs, so that thousands of files fit.
    private static WorkedFile[] Checked(InputSet input, bool online, Surroundings around)
    {
        var houses = new HouseFiles(around);
        var files = PatternWork.Each(input.Files, f => PatternWork.Compile(f, houses, around) is var worked && online ? worked : worked.ForReport, around);
        return online ? PatternWork.WithAnswers(files, houses, around) : files;
    }

    private static int Report(WorkedFile[] files, ImmutableArray<FoundHouse> named, int code, string form, Wishes wishes, Surroundings around, Action<string> write, bool colour)
    {
        code = Math.Max(code, Math.Max(PatternWork.Complain(files, around), HouseFiles.Complain(files, around, named)));
        var ofHouses = HouseFiles.Reports(files, named);
        FileReport[] reports = [.. ofHouses, .. files.Select(f => f.Report).OfType<FileReport>()];
        write(form switch
        {
            "json" => JsonReport.Of(reports),
            "sarif" => SarifReport.Of(reports, CommandLine.Version, complete: code == ExitCode.Clean),
            "github" => GitHubReport.Of(reports),
            _ => TextReport.Of(reports, around.Width, new Paint(colour)),
        });
        var threshold = wishes.Strict ? Severity.Warning : Severity.Error;
        return reports.Any(r => r.Stands(threshold)) ? Math.Max(code, ExitCode.Findings) : code;
    }

    private static int Repair(InputSet input, int code, string form, Wishes wishes, Surroundings around)
    {
        var houses = new HouseFiles(around);
        var named = houses.Named(input.Houses);
        var repaired = PatternWork.Each(input.Files, f => RepairWork.Of(f, houses, write: !wishes.Diff, around), around);
        foreach (var remark in repaired.SelectMany(r => r.Remarks))
        {
            around.Say(remark);
        }

        var files = repaired.Select(r => r.Worked).ToArray();
        code = repaired.Any(r => r.Failed) ? Math.Max(code, ExitCode.Usage) : code;
        if (wishes.Diff)
        {
            foreach (var one in repaired.Where(r => r.After is not null))
            {
                around.Write(UnifiedDiff.Of(DisplayText.OneLine(one.Worked.File.Path), one.Before!, one.After!));
            }

            // What would be left is told too, but not where the diff goes.
            return Report(files, named, code, form, wishes, around, around.Tell, around.ColourError);
        }

        if (repaired is [{ Worked.File.FullPath: null, Before: { } before } only])
        {
            around.Write(only.After ?? before);
            return Report(files, named, code, form, wishes, around, around.Tell, around.ColourError);
        }

        return Report(files, named, code, form, wishes, around, around.Write, around.ColourOut);
    }

    /// <summary>What the command line asks for.</summary>
    private sealed record Wishes(bool Strict, bool Fix, bool Diff, bool Online);
}
