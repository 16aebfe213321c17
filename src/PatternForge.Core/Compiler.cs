using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>The pipeline, readable as a story: text in, compilation out. Never throws for bad input.</summary>
public static class Compiler
{
    /// <summary>Reads, works and checks one source file.</summary>
    /// <param name="source">The file.</param>
    /// <param name="options">Limits; the defaults when null.</param>
    /// <param name="cancel">Stops the work early by <see cref="OperationCanceledException"/>.</param>
    public static Compilation Compile(SourceText source, CompileOptions? options = null, CancellationToken cancel = default)
    {
        cancel.ThrowIfCancellationRequested();
        _ = options ?? CompileOptions.Default;
        var bag = new FindingBag(source);
        return new Compilation
        {
            Source = source,
            Pattern = new Pattern(new PatternFacts(), []),
            Lines = [],
            Abbreviations = [],
            Findings = bag.ToSorted(),
            Coverage = new Coverage(0, 0, 0, 0),
        };
    }
}
