using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Corrections;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Commands;

/// <summary><c>diff OLD NEW</c>: what makers must know who have the old version of a pattern.</summary>
internal static class DiffCommand
{
    private const string Name = "diff";
    private static readonly string[] Forms = ["text", "md", "html", "json", "yaml"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var files = new Argument<string[]>("OLD NEW") { Description = "The old and the new version of a pattern; one of them may be - for standard input", Arity = ArgumentArity.ZeroOrMore };
        files.CompletionSources.Add(Suggestions.PatternFiles);
        var size = new Option<string>("--size") { Description = "Tell only what concerns one size, by its name", HelpName = "M" };
        size.CompletionSources.Add(context => CountsCommand.SizesOf(context.ParseResult.GetValue(files)?.Skip(1).Take(1).ToArray() ?? [], around));
        var format = Arguments.Form("How to tell what changed; yaml is the list of corrections for the header", Forms);
        var command = new Command(Name, "Work two versions of a pattern and tell makers what changed, for which rows and sizes, and whom it concerns.") { files, size, format };
        command.SetAction(parsed => Run(parsed.GetValue(files) ?? [], parsed.GetValue(size), parsed.GetValue(format), around));
        return command;
    }

    private static int Run(string[] paths, string? size, string? said, Surroundings around)
    {
        if (paths is not [var old, var now])
        {
            return CommandLine.Refuse("say which two versions: `patternforge diff hat-1.0.pattern.md hat.pattern.md`", around, Name);
        }

        if (Arguments.Choice(said ?? Forms[0], "form", Forms, around, Name) is not { } form)
        {
            return ExitCode.Usage;
        }

        if (old == InputFiles.StandardInput && now == InputFiles.StandardInput)
        {
            return CommandLine.Refuse("only one of the two can come over standard input", around, Name);
        }

        foreach (var path in paths)
        {
            if (path != InputFiles.StandardInput && InputFiles.FullPathOf(path, around.Folder) is { } folder && Directory.Exists(folder))
            {
                return CommandLine.Refuse($"`{path}` is a folder: two files are compared", around, Name);
            }
        }

        var houses = new HouseFiles(around);
        var (first, second) = (Read(old, houses, around), Read(now, houses, around));
        if (first?.Compilation is not { } before || second?.Compilation is not { } after)
        {
            return ExitCode.Usage;
        }

        var (from, to) = (before.Pattern.Facts, after.Pattern.Facts.TermsInForce);
        var comparison = PatternComparison.Compare(before, after, to is { } terms ? words => TermsWords.In(words, from, terms) : null);
        if (size is not null)
        {
            if (!comparison.Sizes.Contains(size, StringComparer.OrdinalIgnoreCase))
            {
                var near = Suggest.Nearest(size, comparison.Sizes, 1);
                return CommandLine.Refuse($"neither version has a size `{size}`{(near.Count > 0 ? $": did you mean `{near[0]}`?" : comparison.Sizes.IsEmpty ? "" : $": there are {string.Join(", ", comparison.Sizes)}")}", around, Name);
            }

            comparison = comparison.InSize(size);
        }

        around.Write(form switch
        {
            "json" => DiffReport.Json(old, now, comparison),
            "yaml" => DiffReport.Yaml(comparison, around.Today),
            "md" => DiffReport.Markdown(comparison),
            "html" => DiffHtml.Of(comparison),
            _ => DiffReport.Text(comparison, new Paint(around.ColourOut)),
        });
        return comparison.Corrections.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
    }

    private static WorkedFile? Read(string path, HouseFiles houses, Surroundings around)
    {
        var input = InputFiles.Find([path], around);
        Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return null;
        }

        var worked = PatternWork.Compile(input.Files[0], houses, around, editions: []);
        PatternWork.Complain([worked], around);
        HouseFiles.Complain([worked], around);
        if (worked is { Compilation: null, Report: { } refused })
        {
            around.Tell(TextReport.Of([refused], around.Width, new Paint(around.ColourError)));
        }

        return worked;
    }
}
