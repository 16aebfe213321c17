using BenchmarkDotNet.Attributes;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;

namespace PatternForge.Benchmarks;

/// <summary>Compiling and rendering in process, once the program is warm.</summary>
[MemoryDiagnoser]
public class CompileBenchmarks
{
    private SourceText _source = new("", "");
    private Compilation _compilation = null!;

    /// <summary>Lines of the pattern: small, usual, large.</summary>
    [Params(60, MadePattern.UsualLines, 5_000)]
    public int Lines { get; set; }

    /// <summary>Makes the pattern.</summary>
    [GlobalSetup]
    public void Make()
    {
        _source = MadePattern.Source(1, Lines);
        _compilation = Compiler.Compile(_source);
    }

    /// <summary>Text to compilation.</summary>
    [Benchmark(Baseline = true)]
    public Compilation Compile() => Compiler.Compile(new SourceText(_source.Path, _source.Text));

    /// <summary>Compilation to a web page.</summary>
    [Benchmark]
    public RenderResult Html() => Renderer.Render(_compilation, OutputFormat.Html);

    /// <summary>Compilation to Markdown.</summary>
    [Benchmark]
    public RenderResult Markdown() => Renderer.Render(_compilation, OutputFormat.Markdown);
}
