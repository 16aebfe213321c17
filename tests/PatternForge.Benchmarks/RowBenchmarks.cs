using BenchmarkDotNet.Attributes;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Benchmarks;

/// <summary>Checking one file in nine sizes in process, as the file grows: twice the rows, twice the time.</summary>
[MemoryDiagnoser]
public class RowBenchmarks
{
    private SourceText _source = new("", "");

    /// <summary>Rows of the garment.</summary>
    [Params(250, 500, 1_000, MadeGarment.ManyRows)]
    public int Rows { get; set; }

    /// <summary>Makes the garment.</summary>
    [GlobalSetup]
    public void Make() => _source = MadeGarment.Source(Rows);

    /// <summary>Text to findings.</summary>
    [Benchmark]
    public Compilation Compile() => Compiler.Compile(new SourceText(_source.Path, _source.Text));
}
