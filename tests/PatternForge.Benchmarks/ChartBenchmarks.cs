using BenchmarkDotNet.Attributes;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Benchmarks;

/// <summary>Many charts of one pattern: its rows read and worked, then drawn.</summary>
[MemoryDiagnoser]
public class ChartBenchmarks
{
    private SourceText _source = new("", "");

    /// <summary>How many charts of 60 by 60.</summary>
    [Params(10, MadeCharts.ManyCharts)]
    public int Charts { get; set; }

    /// <summary>Makes the pattern.</summary>
    [GlobalSetup]
    public void Make() => _source = MadeCharts.Source(Charts);

    /// <summary>Reading and working alone.</summary>
    [Benchmark(Baseline = true)]
    public Compilation Compile() => Compiler.Compile(new SourceText(_source.Path, _source.Text));

    /// <summary>The same with the drawings.</summary>
    [Benchmark]
    public int Draw() => MadeCharts.Draw(_source);
}
