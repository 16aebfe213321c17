using System.Globalization;
using BenchmarkDotNet.Running;
using PatternForge.Benchmarks;

// start PROGRAM [FILES] [RUNS] times whole processes; stages [LINES] says what each stage costs; fill FOLDER [FILES] writes patterns; print LINES [NUMBER] and garment [ROWS] show a pattern made for measuring;
// charts [NUMBER] times the drawing of charts; sheet FILE FOLDER ... writes all drawings of patterns on one page; rows [ROWS ...] says what a row costs as the file grows; all else goes to the benchmark runner.
switch (args)
{
    case ["start", var program, .. var rest]:
        return StartTimes.Print(program, files: Number(rest, 0, 200), runs: Number(rest, 1, 20));
    case ["stages", .. var rest]:
        return StageCosts.Print(Number(rest, 0, MadePattern.UsualLines));
    case ["fill", var folder, .. var rest]:
        for (var i = 0; i < Number(rest, 0, 200); i++)
        {
            File.WriteAllText(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"p{i:00000}.pattern.md")), MadePattern.Of(i));
        }

        return 0;
    case ["print", .. var rest]:
        Console.Write(MadePattern.Of(Number(rest, 1, 1), Number(rest, 0, MadePattern.UsualLines)));
        return 0;
    case ["garment", .. var rest]:
        Console.Write(MadeGarment.Of(Number(rest, 0, MadeGarment.ManyRows)));
        return 0;
    case ["rows", .. var rest]:
        return RowCosts.Print(rest.Length > 0 ? [.. rest.Select((_, i) => Number(rest, i, 0))] : [250, 500, 1_000, MadeGarment.ManyRows]);
    case ["charts", .. var rest]:
        var sampler = MadeCharts.Source(Number(rest, 0, MadeCharts.ManyCharts));
        for (var run = 0; run < 3; run++)
        {
            var clock = System.Diagnostics.Stopwatch.StartNew();
            var signs = MadeCharts.Draw(sampler);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds:0.00} s, {signs / 1e6:0.0} million characters of SVG"));
        }

        return 0;
    case ["sheet", var sheet, .. var of]:
        return ContactSheet.Write(sheet, of);
    default:
        BenchmarkSwitcher.FromAssembly(typeof(MadePattern).Assembly).Run(args);
        return 0;
}

static int Number(string[] values, int index, int usual) =>
    index < values.Length ? int.Parse(values[index], NumberStyles.None, CultureInfo.InvariantCulture) : usual;
