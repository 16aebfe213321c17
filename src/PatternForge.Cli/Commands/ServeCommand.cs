using System.CommandLine;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using PatternForge.Cli.Serving;

namespace PatternForge.Cli.Commands;

/// <summary><c>serve PATH...</c>: shows the page of a pattern with its findings beside it, made again while the designer types.</summary>
internal static class ServeCommand
{
    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var paths = Arguments.Paths();
        var port = new Option<int?>("--port") { Description = "The port to listen on; any free one where none is said", HelpName = "N" };
        var templates = new Option<string>("--templates") { Description = "A folder of templates that replace the built-in ones file by file", HelpName = "DIR" };
        templates.CompletionSources.Add(Suggestions.FolderNames);
        var command = new Command("serve", "Show patterns in the browser of this machine while they are written, with what is found beside them.") { paths, port, templates };
        command.SetAction(parsed => Run(parsed.GetValue(paths) ?? [], parsed.GetValue(port), parsed.GetValue(templates), around));
        return command;
    }

    private static int Run(string[] paths, int? port, string? said, Surroundings around)
    {
        if (paths.Length == 0 || paths.Contains(InputFiles.StandardInput, StringComparer.Ordinal))
        {
            return CommandLine.Refuse("say what to show: files or folders", around, "serve");
        }

        if (port is < 1 or > 65535)
        {
            return CommandLine.Refuse(string.Create(CultureInfo.InvariantCulture, $"{port} is no port: they go from 1 to 65535"), around, "serve");
        }

        var templates = said is null ? null : InputFiles.FullPathOf(said, around.Folder);
        if (said is not null && !Directory.Exists(templates))
        {
            return CommandLine.Refuse($"there is no folder of templates `{said}`", around, "serve");
        }

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return code;
        }

        var chosen = port ?? FreePort();
        using var listener = new HttpListener();
        listener.Prefixes.Add(PreviewServer.AddressOf(chosen));
        try
        {
            listener.Start();
        }
        catch (HttpListenerException e)
        {
            around.Say(string.Create(CultureInfo.InvariantCulture, $"port {chosen} cannot be listened on: {e.Message.TrimEnd('.')}"));
            return ExitCode.Usage;
        }

        around.Write(PreviewServer.AddressOf(chosen) + "\n");
        around.Say("open this address in a browser on this machine; stop with Ctrl+C");
        using var server = new PreviewServer(new Preview(input.Files, templates, around), around);
        server.Run(listener, chosen);
        return code;
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
