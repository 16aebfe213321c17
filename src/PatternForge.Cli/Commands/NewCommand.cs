using System.CommandLine;
using System.Globalization;
using System.Text;

namespace PatternForge.Cli.Commands;

/// <summary><c>new NAME</c>: writes a complete starting file, to be filled with the designer's own.</summary>
internal static class NewCommand
{
    private static readonly string[] Crafts = ["knitting", "crochet"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var name = new Argument<string[]>("NAME") { Description = "The title of the pattern; the file is called after it", Arity = ArgumentArity.ZeroOrMore };
        var craft = new Option<string>("--craft") { Description = $"The craft: {string.Join(", ", Crafts)}", HelpName = string.Join('|', Crafts) };
        craft.CompletionSources.Add(Crafts);
        var command = new Command("new", "Write a complete starting file into the current folder.") { name, craft };
        command.SetAction(parsed => Run(string.Join(' ', parsed.GetValue(name) ?? []), parsed.GetValue(craft), around));
        return command;
    }

    private static int Run(string said, string? saidCraft, Surroundings around)
    {
        if (said.Length == 0)
        {
            return CommandLine.Refuse("say what the pattern is called: `patternforge new \"Harbour Hat\"`", around, "new");
        }

        if (Arguments.Choice(saidCraft ?? Crafts[0], "craft", Crafts, around, "new") is not { } craft)
        {
            return ExitCode.Usage;
        }

        if (StarterName.From(said) is not { } name)
        {
            return CommandLine.Refuse($"`{said}` holds no letter or digit that a file could be called after", around, "new");
        }

        var path = Path.Combine(around.Folder, name.FileName);
        if (Path.Exists(path))
        {
            around.Say($"`{name.FileName}` is there already and was left as it is: choose another name, or move it away first");
            return ExitCode.Usage;
        }

        var text = Starter(craft)
            .Replace("DATE", around.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("TITLE", Quoted(name.Title), StringComparison.Ordinal);
        if (OutputFiles.Write(path, text, overwrite: false) is { } reason)
        {
            around.Say($"`{name.FileName}` could not be written: {reason}");
            return ExitCode.Usage;
        }

        around.Write(name.FileName + "\n");
        around.Say($"now put your own design in its place, and check it with `patternforge lint {name.FileName}`");
        return ExitCode.Clean;
    }

    /// <summary>The starting file of a craft.</summary>
    private static string Starter(string craft)
    {
        using var stream = typeof(NewCommand).Assembly.GetManifestResourceStream($"starters/{craft}.pattern.md")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    /// <summary>A title as a YAML scalar in double quotes, whatever it holds.</summary>
    private static string Quoted(string title) =>
        $"\"{title.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
