using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>Works crochet rows one after the other and shows what the next row would meet.</summary>
internal sealed class CrochetPiece
{
    private readonly CompileOptions _options = new();
    private readonly Compilation _empty = Compiler.Compile(new SourceText("piece.pattern.md", "---\ntitle: Sill mat\ncraft: crochet\nterms: us\n---\n"));
    private readonly SizeState _state;

    public CrochetPiece(int stitches, bool inTheRound = false)
    {
        var work = new CrochetWork(new TurningChainBook(TurningChainNotes.None), Dialect.Us, Craft.Crochet);
        work.Set(stitches);
        _state = new SizeState(0, work) { IsKnown = true, InTheRound = inTheRound };
    }

    /// <summary>The row as the next one meets it.</summary>
    public ImmutableArray<Top> Tops => _state.Live.Below!.Tops;

    public RowBelow Below => _state.Live.Below!;

    /// <summary>Works a row; what went wrong in it.</summary>
    public IReadOnlyList<Problem> Row(string text)
    {
        var source = new SourceText("", text);
        var bag = new FindingBag(source);
        var context = new RowContext(source, _empty.Pattern.Facts, new StitchBook(_empty.Pattern.Facts), bag, _options) { RowEnd = text.Length };
        var body = RowBinder.Bind(RowParser.ParseSteps(source, new TextSpan(0, text.Length), bag, _options.MaxDepth), context);
        Assert.False(body.HasUnread);
        var outcome = new RowOutcome();
        _state.Live.WorkRow(new RowTask(body.Steps, new TextSpan(0, text.Length), null, null), new Trial(_state, Choices.First, new Budget(_options), outcome));
        return outcome.Problems;
    }
}
