using System.Diagnostics;

namespace PatternForge.Cli.Printing;

/// <summary>One run of a browser that ends for certain: by itself, when its time is up, or when the user stops; its children go with it.</summary>
internal static class BrowserRun
{
    private const int MostWords = 64 * 1024;
    private static readonly TimeSpan LastWords = TimeSpan.FromSeconds(10);

    /// <summary>Runs a program.</summary>
    /// <param name="program">Its file.</param>
    /// <param name="arguments">Its arguments.</param>
    /// <param name="patience">How long it may take.</param>
    /// <param name="stop">Ends it early.</param>
    /// <returns>Null when it ended well; else why not, in a few words.</returns>
    public static string? Run(string program, IEnumerable<string> arguments, TimeSpan patience, CancellationToken stop)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, CreateNoWindow = true, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or IOException or UnauthorizedAccessException)
        {
            return "it cannot be run";
        }

        using (process)
        using (var limit = CancellationTokenSource.CreateLinkedTokenSource(stop))
        {
            limit.CancelAfter(patience);
            process.StandardInput.Close();
            var output = LastLine(process.StandardOutput);
            var error = LastLine(process.StandardError);
            try
            {
                // Its ending alone is waited for: a child that holds the streams open would be waited for without end.
                WaitForEnd(process, limit.Token);
            }
            catch (OperationCanceledException)
            {
                End(process);
                stop.ThrowIfCancellationRequested();
                return $"it did not end within {patience.TotalSeconds:0} second{(patience.TotalSeconds == 1 ? "" : "s")}";
            }

            if (process.ExitCode == 0)
            {
                return null;
            }

            var said = Task.WaitAll([output, error], LastWords) ? error.Result ?? output.Result : null;
            return $"it ended with {process.ExitCode}{(said is null ? "" : $" and said: {said}")}";
        }
    }

    private static void WaitForEnd(Process process, CancellationToken limit)
    {
        using var ended = new ManualResetEventSlim();
        process.EnableRaisingEvents = true;
        process.Exited += (_, _) => ended.Set();
        if (!process.HasExited)
        {
            ended.Wait(limit);
        }
    }

    private static void End(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit(5000);
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception or NotSupportedException or AggregateException)
        {
            // It has just ended by itself.
        }
    }

    // Read to the end, so that the program is never held up; only the last words are kept.
    private static async Task<string?> LastLine(StreamReader reader)
    {
        try
        {
            var buffer = new char[4096];
            var kept = "";
            int count;
            while ((count = await reader.ReadAsync(buffer.AsMemory()).ConfigureAwait(false)) > 0)
            {
                kept += new string(buffer, 0, count);
                kept = kept.Length > MostWords ? kept[^(MostWords / 2)..] : kept;
            }

            return kept.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() is { } last ? last.Length > 200 ? last[..200] : last : null;
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            return null;
        }
    }
}
