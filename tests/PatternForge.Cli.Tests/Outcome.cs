using System.Text;
using System.Text.Json;
using PatternForge.Cli.Printing;

namespace PatternForge.Cli.Tests;

/// <summary>What one run of the program answered.</summary>
internal sealed record Outcome(int Code, string Out, string Error)
{
    public JsonElement Json => JsonDocument.Parse(Out).RootElement;

    /// <summary>Runs the program in this process.</summary>
    public static Outcome Of(TemporaryFolder folder, params string[] arguments) => WithInput(folder, [], arguments);

    /// <summary>Runs the program in this process with bytes on its standard input.</summary>
    public static Outcome WithInput(TemporaryFolder folder, byte[] input, params string[] arguments) => WithBrowsers(BrowserSearch.OfMachine, folder, input, arguments);

    /// <summary>Runs the program in this process where browsers are looked for in these places.</summary>
    public static Outcome WithBrowsers(BrowserSearch browsers, TemporaryFolder folder, byte[] input, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var stdin = new MemoryStream(input);
        var code = CommandLine.Run(arguments, new Surroundings
        {
            In = stdin,
            Out = output,
            Error = error,
            Folder = folder.Path,
            Today = new DateOnly(2025, 3, 14),
            Trace = true,
            Browsers = browsers,
        });
        return new(code, output.ToString(), error.ToString());
    }

    /// <summary>The same with a text on its standard input.</summary>
    public static Outcome WithInput(TemporaryFolder folder, string input, params string[] arguments) =>
        WithInput(folder, Encoding.UTF8.GetBytes(input), arguments);
}
