using System.Diagnostics;
using System.Globalization;

namespace PatternForge.Benchmarks;

/// <summary>Times whole processes of a program, from start to exit, beside the same program doing nothing.</summary>
internal static class StartTimes
{
    /// <summary>Runs the measurement and prints a table: medians, and how many times the empty run they take.</summary>
    /// <param name="program">The program; a <c>.dll</c> is run by <c>dotnet</c>.</param>
    /// <param name="files">How many patterns the folder holds.</param>
    /// <param name="runs">How often each is run; the kinds take turns, so that a busy moment hits all of them.</param>
    public static int Print(string program, int files, int runs)
    {
        var folder = Directory.CreateTempSubdirectory("patternforge-bench-");
        try
        {
            for (var i = 0; i < files; i++)
            {
                File.WriteAllText(Path.Combine(folder.FullName, string.Create(CultureInfo.InvariantCulture, $"p{i:00000}.pattern.md")), MadePattern.Source(i).Text);
            }

            var one = Path.Combine(folder.FullName, "p00000.pattern.md");
            var output = Path.Combine(folder.FullName, "out");
            (string Name, string[] Arguments)[] kinds =
            [
                ("nothing", ["--version"]),
                ("lint, 1 file", ["lint", one]),
                ("build, 1 file", ["build", one, "--out", output, "--format", "html"]),
                (string.Create(CultureInfo.InvariantCulture, $"lint, {files} files"), ["lint", folder.FullName]),
                (string.Create(CultureInfo.InvariantCulture, $"build, {files} files"), ["build", folder.FullName, "--out", output]),
            ];
            var times = kinds.Select(_ => new List<double>()).ToArray();
            for (var run = -1; run < runs; run++)
            {
                for (var kind = 0; kind < kinds.Length; kind++)
                {
                    var time = Time(program, kinds[kind].Arguments);
                    if (run >= 0)
                    {
                        times[kind].Add(time);
                    }
                }
            }

            var nothing = Median(times[0]);
            Console.WriteLine("| run | median ms | least ms | times nothing |\n|---|--:|--:|--:|");
            for (var kind = 0; kind < kinds.Length; kind++)
            {
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {kinds[kind].Name} | {Median(times[kind]):0.0} | {times[kind].Min():0.0} | {Median(times[kind]) / nothing:0.0} |"));
            }

            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static double Time(string program, string[] arguments)
    {
        var start = new ProcessStartInfo { RedirectStandardOutput = true, RedirectStandardError = true };
        start.FileName = program.EndsWith(".dll", StringComparison.OrdinalIgnoreCase) ? "dotnet" : program;
        foreach (var argument in start.FileName == program ? arguments : [program, .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} could not be started.");
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var time = clock.Elapsed.TotalMilliseconds;
        return process.ExitCode == 0 ? time : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {error.Result}");
    }

    private static double Median(List<double> times)
    {
        var sorted = times.Order().ToArray();
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }
}
