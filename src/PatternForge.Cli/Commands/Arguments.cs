using System.CommandLine;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Commands;

/// <summary>Arguments and options that several commands share.</summary>
internal static class Arguments
{
    /// <summary>Any number of paths; the command says in its own words when there is none.</summary>
    public static Argument<string[]> Paths()
    {
        var paths = new Argument<string[]>("PATH")
        {
            Description = "A pattern file, a folder that is searched for *.pattern.md (folders whose names begin with a dot are passed over), or - for standard input",
            Arity = ArgumentArity.ZeroOrMore,
        };
        paths.CompletionSources.Add(Suggestions.PatternFiles);
        return paths;
    }

    /// <summary>The form of the output.</summary>
    public static Option<string> Form(string description, string[] forms)
    {
        var option = new Option<string>("--format") { Description = $"{description}: {string.Join(", ", forms)}", HelpName = string.Join('|', forms) };
        option.CompletionSources.Add(forms);
        return option;
    }

    /// <summary>The choice that was meant; null after telling that there is none such.</summary>
    public static string? Choice(string said, string what, IReadOnlyCollection<string> known, Surroundings around, string command)
    {
        if (known.FirstOrDefault(k => string.Equals(k, said, StringComparison.OrdinalIgnoreCase)) is { } choice)
        {
            return choice;
        }

        var nearest = Suggest.Nearest(said, known, 1);
        var hint = nearest.Count > 0 ? $"did you mean `{nearest[0]}`?" : $"there {(known.Count == 1 ? "is" : "are")} {string.Join(", ", known)}";
        CommandLine.Refuse($"`{said}` is not known as {(what[0] is 'e' ? "an" : "a")} {what}: {hint}", around, command);
        return null;
    }

    /// <summary>Says what could not be read and what was passed over; answers with the exit code for it.</summary>
    public static int Complain(InputSet input, Surroundings around)
    {
        foreach (var remark in input.Remarks)
        {
            around.Say(remark);
        }

        foreach (var problem in input.Problems)
        {
            around.Say(problem);
        }

        return input.Problems.IsEmpty ? ExitCode.Clean : ExitCode.Usage;
    }
}
