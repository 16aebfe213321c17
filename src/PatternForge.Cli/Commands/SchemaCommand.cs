using System.CommandLine;
using PatternForge.Rendering.Data;

namespace PatternForge.Cli.Commands;

/// <summary><c>schema</c>: prints the description of what <c>build --format json</c> writes.</summary>
internal static class SchemaCommand
{
    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var command = new Command("schema", "Print the JSON Schema of what `build --format json` writes.");
        command.SetAction(_ =>
        {
            around.Write(PatternSchema.Text);
            return ExitCode.Clean;
        });
        return command;
    }
}
