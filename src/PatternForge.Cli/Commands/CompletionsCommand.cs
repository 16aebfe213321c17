using System.CommandLine;
using System.Text;

namespace PatternForge.Cli.Commands;

/// <summary><c>completions SHELL</c>: prints the script that teaches a shell to complete the words of this program.</summary>
internal static class CompletionsCommand
{
    // The shells, each with the ending of its script.
    private static readonly (string Shell, string Extension)[] Scripts = [("bash", "bash"), ("zsh", "zsh"), ("fish", "fish"), ("powershell", "ps1")];

    private static readonly string[] Shells = [.. Scripts.Select(s => s.Shell)];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var shell = new Argument<string[]>("SHELL") { Description = $"The shell: {string.Join(", ", Shells)}", Arity = ArgumentArity.ZeroOrMore };
        shell.CompletionSources.Add(Shells);
        var command = new Command("completions", "Print the script that lets a shell complete commands, options, files and codes.") { shell };
        command.SetAction(parsed => Run(parsed.GetValue(shell) ?? [], around));
        return command;
    }

    private static int Run(string[] said, Surroundings around)
    {
        if (said.Length != 1)
        {
            return CommandLine.Refuse($"say for which shell: {string.Join(", ", Shells)}", around, "completions");
        }

        if (Arguments.Choice(said[0], "shell", Shells, around, "completions") is not { } shell)
        {
            return ExitCode.Usage;
        }

        var extension = Scripts.First(s => string.Equals(s.Shell, shell, StringComparison.Ordinal)).Extension;
        using var stream = typeof(CompletionsCommand).Assembly.GetManifestResourceStream($"shells/patternforge.{extension}")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        around.Write(reader.ReadToEnd().ReplaceLineEndings("\n"));
        return ExitCode.Clean;
    }
}
