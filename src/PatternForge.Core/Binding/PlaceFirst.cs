using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Crochet that names the place before the stitches: "in each ch-3 loop work (sc, 3 dc, sc)", "in next sp make 3 dc, ch 2 and 3 dc".</summary>
internal static class PlaceFirst
{
    /// <summary>The words before a bracket of stitches: where all of them go. Null for other words.</summary>
    public static Place? BeforeBracket(PhraseCursor c, RowContext context)
    {
        c.At = 0;
        c.Eat("and|then");
        if (!c.Is("in|into") || PlaceReader.TryRead(c, context) is not { Kind: not (PlaceKind.Unclear or PlaceKind.Ring) } place)
        {
            return null;
        }

        c.Eat("work|make");
        return c.IsDone ? place : null;
    }

    /// <summary>A phrase that begins so: the last node taken; null, with nothing done, for other phrases.</summary>
    public static int? TryBind(ImmutableArray<StepNode> nodes, int at, PhraseCursor c, List<Step> steps, RowContext context, WordBinder words)
    {
        var start = c.At;
        c.Eat("and|then");
        if (!c.Is("in|into") || PlaceReader.TryRead(c, context) is not { Kind: not (PlaceKind.Unclear or PlaceKind.ChainFromHook) } place || !c.Eat("work|make") || !CrochetReader.IsNext(c, context))
        {
            c.At = start;
            return null;
        }

        var body = new List<Step>();
        var isWhole = c.Lexemes.FindIndex(c.At, l => l.Is("and")) >= 0;
        words.Bind(c, body);
        while (!isWhole && at + 1 < nodes.Length && nodes[at + 1] is PhraseNode { Before: Separator.Comma } next)
        {
            var more = new PhraseCursor(Vocabulary.Normalise(next.Atoms));
            isWhole = more.Lexemes.Exists(l => l.Is("and"));
            words.Bind(more, body);
            at++;
        }

        steps.Add(body.TrueForAll(s => s is CrochetStep { Place: null } or ChainStep or GroupStep or ShellStep or RemarkStep)
            ? new ShellStep(c.SpanFrom(start).Cover(nodes[at].Span), [.. body], place)
            : new UnreadStep(c.SpanFrom(start)));
        return steps[^1] is UnreadStep ? null : at;
    }
}
