using System.Diagnostics;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Benchmarks;

/// <summary>What a row of a garment in nine sizes costs as the file grows, in processor time and bytes, cold and warm: a quick look where the benchmark runner takes minutes.</summary>
internal static class RowCosts
{
    private const int Runs = 15;

    /// <summary>Prints a table, one line a length.</summary>
    public static int Print(int[] lengths)
    {
        Console.WriteLine("| rows | first run, ms | warm, ms | µs a row | bytes a row |\n|--:|--:|--:|--:|--:|");
        foreach (var rows in lengths)
        {
            var text = MadeGarment.Of(rows);
            var first = Processor(text);
            _ = MadeGarment.Source(rows);
            var times = Enumerable.Range(0, Runs).Select(_ => Processor(text)).Order().ToArray();
            var before = GC.GetAllocatedBytesForCurrentThread();
            Compiler.Compile(new SourceText("garment.pattern.md", text));
            var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            var warm = times[Runs / 2];
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {rows:N0} | {first:0} | {warm:0} | {warm * 1_000 / rows:0} | {bytes / rows:N0} |"));
        }

        return 0;
    }

    // Time of all the process's threads: steadier than the clock where other work runs beside it.
    private static double Processor(string text)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        Compiler.Compile(new SourceText("garment.pattern.md", text));
        process.Refresh();
        return (process.TotalProcessorTime - before).TotalMilliseconds;
    }
}
