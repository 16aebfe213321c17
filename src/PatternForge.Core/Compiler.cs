using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

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
        options ??= CompileOptions.Default;
        var bag = new FindingBag(source);
        if (source.Text.Length > options.MaxLength)
        {
            bag.Add(FileRules.TooLarge(source, options.MaxLength));
        }

        if (bag.Count > 0 || !FileRules.Check(source, bag))
        {
            return Of(source, new Pattern(new PatternFacts(), []), [], [], bag.ToSorted());
        }

        var file = FileSplitter.Split(source, bag);
        var header = file.Header is { } span ? HeaderReader.Read(source, span, options, bag) : null;
        var facts = HeaderBinder.Bind(header, source, bag);
        facts = facts with { TurningChains = TurningChainReader.Read(facts.Notes) };
        var sections = BodyParser.Parse(source, file.Body, bag);
        facts = facts with { ProvedTerms = CrochetTerms.Prove(sections, source, facts) };
        var body = BodyBinder.Bind(sections, facts, source, bag, options, cancel);
        var worked = PatternWorker.Work(body.Lines, facts, bag, options, cancel);
        var pattern = new Pattern(facts, body.Sections);
        CheckList.Run(new CheckContext(pattern, worked, source, bag) { Abbreviations = body.Abbreviations, Words = body.Words });
        return Of(source, pattern, worked, body.Abbreviations, Acceptances.Apply(bag.ToSorted(), source, file));
    }

    private static Compilation Of(SourceText source, Pattern pattern, ImmutableArray<WorkedLine> lines, ImmutableArray<AbbreviationUse> abbreviations, ImmutableArray<Finding> findings) => new()
    {
        Source = source,
        Pattern = pattern,
        Lines = lines,
        Abbreviations = abbreviations,
        Findings = findings,
        Coverage = new Coverage(
            lines.Length,
            lines.Count(l => l.Status == LineStatus.Checked),
            lines.Count(l => l.Status == LineStatus.Trusted),
            lines.Count(l => l.Status == LineStatus.Unread)),
    };
}
