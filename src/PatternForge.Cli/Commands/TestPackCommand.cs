using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Rendering;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Commands;

/// <summary><c>test-pack PATTERN...</c>: what test makers get, a form and a blank for each size.</summary>
internal static class TestPackCommand
{
    private const string Name = "test-pack";
    private const string DefaultFolder = "out";

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var paths = Arguments.Paths();
        var folder = new Option<string>("--out") { Description = $"The folder to write into; {DefaultFolder} where none is said", HelpName = "DIR" };
        folder.CompletionSources.Add(Suggestions.FolderNames);
        var size = new Option<string>("--size") { Description = "Write the sheet of one size alone, by its name", HelpName = "M" };
        size.CompletionSources.Add(context => CountsCommand.SizesOf(context.ParseResult.GetValue(paths) ?? [], around));
        var templates = new Option<string>("--templates") { Description = "A folder of templates that replace the built-in ones file by file", HelpName = "DIR" };
        templates.CompletionSources.Add(Suggestions.FolderNames);
        var command = new Command(Name, "Write what test makers get: for each size a form that works from disk, and a blank in YAML.") { paths, folder, size, templates };
        command.SetAction(parsed => Run(parsed.GetValue(paths) ?? [], parsed.GetValue(folder) ?? DefaultFolder, parsed.GetValue(size), parsed.GetValue(templates), around));
        return command;
    }

    private static int Run(string[] paths, string said, string? size, string? own, Surroundings around)
    {
        if (paths.Length == 0)
        {
            return CommandLine.Refuse("say which pattern is to be tested: a file, a folder, or `-` for standard input", around, Name);
        }

        if (InputFiles.FullPathOf(said, around.Folder) is not { } folder || File.Exists(folder))
        {
            return CommandLine.Refuse($"`{said}` cannot be the folder to write into", around, Name);
        }

        var templates = TemplateSet.Default;
        if (own is not null)
        {
            if (InputFiles.FullPathOf(own, around.Folder) is not { } place || !Directory.Exists(place))
            {
                return CommandLine.Refuse($"there is no folder `{own}` with templates", around, Name);
            }

            templates = TemplateSet.FromFolder(place);
        }

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        var houses = new HouseFiles(around);
        var findings = new List<Finding>(templates.Findings);
        var written = 0;
        foreach (var file in input.Files)
        {
            var worked = PatternWork.Compile(file, houses, around, editions: []);
            code = Math.Max(code, Math.Max(PatternWork.Complain([worked], around), HouseFiles.Complain([worked], around)));
            if (worked.Compilation is not { } pattern)
            {
                if (worked.Report is { } refused)
                {
                    around.Tell(TextReport.Of([refused], around.Width, new Paint(around.ColourError)));
                    code = Math.Max(code, ExitCode.Findings);
                }

                continue;
            }

            if (worked.HasErrors)
            {
                // Makers should not be sent into a mistake that is known; a test of what is not ready is still the designer's to decide.
                around.Say($"`{file.Path}` has errors: `patternforge lint {file.Path}` tells them, and makers would meet them");
                code = Math.Max(code, ExitCode.Findings);
            }

            var sizes = pattern.Pattern.Facts.Sizes;
            var only = size is null ? -1 : sizes.IndexOf(size);
            if (size is not null && only < 0)
            {
                var near = Suggest.Nearest(size, sizes.Names, 1);
                return CommandLine.Refuse($"`{file.Path}` has no size `{size}`{(near.Count > 0 ? $": did you mean `{near[0]}`?" : "")}", around, Name);
            }

            for (var i = only < 0 ? 0 : only; i < (only < 0 ? sizes.Count : only + 1); i++)
            {
                var made = Renderer.TestSheet(pattern, i, templates);
                findings.AddRange(made.Findings);
                foreach (var sheet in made.Files)
                {
                    if (OutputFiles.Write(Path.Combine(folder, sheet.Name), sheet.Text, overwrite: true) is { } reason)
                    {
                        around.Say($"`{said}/{sheet.Name}` was not written: {reason}");
                        code = Math.Max(code, ExitCode.Usage);
                    }
                    else
                    {
                        written++;
                        around.Write($"{said.TrimEnd('/', '\\')}/{sheet.Name}\n");
                    }
                }
            }
        }

        foreach (var group in findings.Distinct().GroupBy(f => f.Source.Path, StringComparer.Ordinal))
        {
            var report = new FileReport { Path = group.Key, Sizes = [], Coverage = null, IsPattern = false, Findings = [.. group] };
            around.Tell(TextReport.Of([report], around.Width, new Paint(around.ColourError)));
            code = report.Stands(Severity.Error) ? Math.Max(code, ExitCode.Findings) : code;
        }

        return written == 0 ? Math.Max(code, ExitCode.Findings) : code;
    }
}
