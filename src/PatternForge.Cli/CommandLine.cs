using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using PatternForge.Cli.Commands;
using PatternForge.Core.Findings;

namespace PatternForge.Cli;

/// <summary>The whole program as one function: arguments in, exit code out.</summary>
internal static class CommandLine
{
    /// <summary>The tool's version, as the package carries it.</summary>
    public static string Version { get; } = typeof(CommandLine).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    /// <summary>Runs one command. Never throws: a fault of the tool is told and answered with <see cref="ExitCode.Fault"/>.</summary>
    public static int Run(IReadOnlyList<string> arguments, Surroundings around)
    {
        try
        {
            var parsed = RootOf(around).Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Action is Suggestions suggestions)
            {
                return suggestions.Invoke(parsed);
            }

            if (parsed.Errors.Count > 0)
            {
                return Refuse(parsed, around);
            }

            if (UnknownOption(parsed, arguments) is { } unknown)
            {
                return RefuseUnknown(unknown, parsed.CommandResult.Command, around);
            }

            // The parser's own exit code for bad usage is 1, which here means findings; its errors are told above.
            return parsed.Invoke(new InvocationConfiguration
            {
                Output = around.Out,
                Error = around.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        }
        catch (OperationCanceledException) when (around.Stop.IsCancellationRequested)
        {
            around.Say("stopped");
            return ExitCode.Stopped;
        }
        catch (OutputFailedException e)
        {
            around.Say($"the result could not be written: {InputFiles.ReasonOf((IOException)e.InnerException!)}");
            return ExitCode.Usage;
        }
#pragma warning disable CA1031 // The last resort: whatever was not foreseen becomes a plain sentence and the exit code of a fault.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Faults.Tell(fault, around);
            return ExitCode.Fault;
        }
    }

    /// <summary>Tells of wrong usage in a sentence.</summary>
    public static int Refuse(string sentence, Surroundings around, string command)
    {
        around.Say(sentence);
        around.Say($"`patternforge {command} --help` shows how it is used");
        return ExitCode.Usage;
    }

    private static RootCommand RootOf(Surroundings around)
    {
        var root = new RootCommand("Reads, checks and releases hand-knitting and crochet patterns.")
        {
            NewCommand.Of(around),
            LintCommand.Of(around),
            BuildCommand.Of(around),
            ServeCommand.Of(around),
            CountsCommand.Of(around),
            AddSizeCommand.Of(around),
            DiffCommand.Of(around),
            TestPackCommand.Of(around),
            TestResultsCommand.Of(around),
            ExplainCommand.Of(around),
            SpreadCommand.Of(around),
            PlanCommand.Of(around),
            RegaugeCommand.Of(around),
            AmountCommand.Of(around),
            TablesCommand.Of(around),
            SchemaCommand.Of(around),
            CompletionsCommand.Of(around),
        };
        root.Options.Clear();
        root.Options.Add(new HelpOption("--help", "-h") { Description = "Show what a command does and how it is used" });
        root.Options.Add(new VersionOption("--version") { Description = "Show the version of the tool", Action = new ShowVersion(around) });
        root.Directives.Clear();
        var suggest = new SuggestDirective();
        suggest.Action = new Suggestions(root, suggest, around);
        root.Directives.Add(suggest);
        return root;
    }

    private static int Refuse(ParseResult parsed, Surroundings around)
    {
        var command = parsed.CommandResult.Command;
        if (parsed.UnmatchedTokens is [var first, ..])
        {
            return RefuseUnknown(first, command, around);
        }

        if (command is RootCommand)
        {
            around.Say($"say what to do: {string.Join(", ", command.Subcommands.Select(c => c.Name))}");
        }
        else
        {
            foreach (var error in parsed.Errors)
            {
                around.Say(error.Message.TrimEnd('.'));
            }
        }

        return PointToHelp(command, around);
    }

    // The parser hands unknown options to a command's argument. After a lone `--` they are meant as arguments.
    private static string? UnknownOption(ParseResult parsed, IReadOnlyList<string> arguments) =>
        arguments.Contains("--", StringComparer.Ordinal)
            ? null
            : parsed.CommandResult.Children.OfType<ArgumentResult>()
                .SelectMany(a => a.Tokens)
                .Select(t => t.Value)
                .FirstOrDefault(value => value.Length > 1 && value[0] == '-');

    private static int RefuseUnknown(string said, Command command, Surroundings around)
    {
        var (kind, known) = said.StartsWith('-') ? ("an option", command.Options.Select(o => o.Name))
            : command is RootCommand ? ("a command", command.Subcommands.Select(c => c.Name))
            : ("an argument", []);
        var nearest = Suggest.Nearest(said.Split('=')[0], known);
        around.Say($"`{said}` is not known as {kind}{(nearest.Count > 0 ? $": did you mean `{nearest[0]}`?" : "")}");
        return PointToHelp(command, around);
    }

    private static int PointToHelp(Command command, Surroundings around)
    {
        around.Say($"`patternforge {(command is RootCommand ? "" : command.Name + " ")}--help` shows how it is used");
        return ExitCode.Usage;
    }

    private sealed class ShowVersion(Surroundings around) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            around.Write($"patternforge {Version}\n");
            return ExitCode.Clean;
        }
    }
}
