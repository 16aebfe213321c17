using System.Runtime.InteropServices;
using System.Text;

namespace PatternForge.Cli;

/// <summary>Joins the program to the real console, clock and signals.</summary>
internal static class Program
{
    /// <summary>The entry point.</summary>
    public static int Main(string[] arguments)
    {
        using var stop = new CancellationTokenSource();
        void Ask(PosixSignalContext signal)
        {
            // The second time the system ends the program as it always does.
            signal.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
        }

        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask);
        return CommandLine.Run(arguments, new Surroundings
        {
            In = Console.OpenStandardInput(),
            Out = Writer(Console.OpenStandardOutput()),
            Error = Writer(Console.OpenStandardError()),
            Folder = Environment.CurrentDirectory,
            ColourOut = AllowsColour && !Console.IsOutputRedirected,
            ColourError = AllowsColour && !Console.IsErrorRedirected,
            ShowsProgress = !Console.IsErrorRedirected && !IsDumb,
            Width = WidthOfTerminal(),
            Today = DateOnly.FromDateTime(DateTime.Now),
            Trace = Environment.GetEnvironmentVariable("PATTERNFORGE_TRACE") is "1",
            Stop = stop.Token,
        });
    }

    private static bool IsDumb => Environment.GetEnvironmentVariable("TERM") is "dumb";

    private static bool AllowsColour => !IsDumb && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));

    private static StreamWriter Writer(Stream stream)
    {
        if (OperatingSystem.IsWindows() && !(Console.IsOutputRedirected && Console.IsErrorRedirected))
        {
            Console.OutputEncoding = Encoding.UTF8;
        }

        return new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 8192) { NewLine = "\n", AutoFlush = true };
    }

    private static int WidthOfTerminal()
    {
        const int Plain = 120;
        if (Console.IsOutputRedirected)
        {
            return Plain;
        }

        try
        {
            return Console.WindowWidth is > 0 and var columns ? Math.Clamp(columns, 60, 200) : Plain;
        }
        catch (IOException)
        {
            return Plain;
        }
    }
}
