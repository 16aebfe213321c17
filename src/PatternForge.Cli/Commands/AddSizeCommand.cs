using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Commands;

/// <summary><c>add-size FILE NAME</c>: what must change, line by line, for the pattern to have one more size.</summary>
internal static class AddSizeCommand
{
    private const string Name = "add-size";
    private static readonly string[] Forms = ["text", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var words = new Argument<string[]>("FILE NAME") { Description = "A pattern file, or - for standard input, and the name of the new size", Arity = ArgumentArity.ZeroOrMore };
        words.CompletionSources.Add(Suggestions.PatternFiles);
        var before = new Option<string>("--before") { Description = "The size that the new one stands before", HelpName = "M" };
        var after = new Option<string>("--after") { Description = "The size that the new one stands behind", HelpName = "M" };
        before.CompletionSources.Add(context => CountsCommand.SizesOf(context.ParseResult.GetValue(words)?.Take(1).ToArray() ?? [], around));
        after.CompletionSources.Add(context => CountsCommand.SizesOf(context.ParseResult.GetValue(words)?.Take(1).ToArray() ?? [], around));
        var set = new Option<string[]>("--set") { Description = "A measurement or number of the new size, by its name in the header; the first tells how far the size is from its neighbours", HelpName = "NAME=VALUE" };
        var format = Arguments.Form("How to tell what changes", Forms);
        var write = new Option<bool>("--write") { Description = "Write the new size into the file, with all that is proposed; `-` is written to standard output" };
        var command = new Command(Name, "Tell line by line what must change for one more size, and propose the values.") { words, before, after, set, format, write };
        command.SetAction(parsed => Run(
            parsed.GetValue(words) ?? [],
            new(parsed.GetValue(before), parsed.GetValue(after), parsed.GetValue(set) ?? [], parsed.GetValue(format), parsed.GetValue(write)),
            around));
        return command;
    }

    private static int Run(string[] words, Asked asked, Surroundings around)
    {
        if (words is not [var path, var name])
        {
            return CommandLine.Refuse("say which pattern and what the new size is called: `patternforge add-size harbour-hat.pattern.md 2XL`", around, Name);
        }

        if (Arguments.Choice(asked.Form ?? Forms[0], "form", Forms, around, Name) is not { } form)
        {
            return ExitCode.Usage;
        }

        var given = asked.Set.Select(s => (Said: s, At: s.IndexOf('=', StringComparison.Ordinal))).ToArray();
        if (Array.Find(given, g => g.At <= 0 || g.At == g.Said.Length - 1) is { Said: { } unclear })
        {
            return CommandLine.Refuse($"`{unclear}` gives no value: write it as `--set \"bust=132 cm\"`", around, Name);
        }

        if (InputFiles.FullPathOf(path, around.Folder) is { } folder && Directory.Exists(folder) && path != InputFiles.StandardInput)
        {
            return CommandLine.Refuse($"`{path}` is a folder: a size is added to one file", around, Name);
        }

        var input = InputFiles.Find([path], around);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return code;
        }

        var wish = new SizeWish(name.Trim()) { Before = asked.Before, After = asked.After, Given = [.. given.Select(g => (g.Said[..g.At].Trim(), g.Said[(g.At + 1)..].Trim()))] };
        var work = SizeWork.Of(input.Files[0], wish, new HouseFiles(around), asked.Write, around);
        code = Math.Max(PatternWork.Complain([work.Worked], around), HouseFiles.Complain([work.Worked], around));
        if (work.Added is not { } added)
        {
            if (work.Worked.Report is { } refused)
            {
                around.Tell(TextReport.Of([refused], around.Width, new Paint(around.ColourError)));
                code = Math.Max(code, ExitCode.Findings);
            }

            return code;
        }

        if (added.Refusal is { } reason)
        {
            return CommandLine.Refuse(reason, around, Name);
        }

        if (work.Problem is { } problem)
        {
            around.Say(problem);
            code = Math.Max(code, ExitCode.Usage);
        }

        var toOutput = asked.Write && work.IsStandardInput && work.Problem is null;
        if (toOutput)
        {
            around.Write(added.Source!.Text);
        }

        Action<string> tell = toOutput ? around.Tell : around.Write;
        tell(form == "json" ? AddedSizeReport.Json(path, wish.Name, added, work.IsWritten) : AddedSizeReport.Text(work.ReportOf(added), wish.Name, added, around.Width, new Paint(toOutput ? around.ColourError : around.ColourOut)));
        if (work.IsWritten && !toOutput)
        {
            around.Say($"`{path}`: size {wish.Name} is written; look over every proposed value");
        }

        return added.Findings.Any(f => f is { Accepted: null, Severity: Severity.Error }) ? Math.Max(code, ExitCode.Findings) : code;
    }

    /// <summary>What the command line asks for.</summary>
    private sealed record Asked(string? Before, string? After, string[] Set, string? Form, bool Write);
}
