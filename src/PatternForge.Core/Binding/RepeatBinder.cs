using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>A starred repeat and the words behind it, and the ending of a repeat.</summary>
internal sealed class RepeatBinder
{
    private readonly RowDraft _draft;
    private readonly RowBinder _rows;
    private readonly WordBinder _words;
    private readonly GroupBinder _groups;

    public RepeatBinder(RowDraft draft, RowBinder rows, WordBinder words, GroupBinder groups)
    {
        _draft = draft;
        _rows = rows;
        _words = words;
        _groups = groups;
    }

    /// <summary>Binds the repeat at a node; gives the last node taken.</summary>
    public int Bind(ImmutableArray<StepNode> nodes, int at, RepeatNode repeat, List<Step> steps)
    {
        var body = _rows.Sequence(repeat.Body, isTop: false);
        var cursor = new PhraseCursor(Vocabulary.Normalise(repeat.Extent));
        if (cursor.Lexemes.Count > RowDraft.MostLexemes)
        {
            _draft.Unread(repeat.Span, steps);
            return at;
        }

        var step = new RepeatStep(repeat.Span, body);
        if (cursor.IsDone)
        {
            steps.Add(step with { To = new Target(Extent.End) });
            return at;
        }

        if (TargetReader.TryRead(cursor, _draft.Context) is { } target)
        {
            step = step with { To = target };
        }
        else
        {
            cursor.Eat("another");
            var saysMore = cursor.At > 0;
            var times = TimesReader.TryRead(cursor, _draft.Context);
            if (times is null && cursor.IsNumber() && cursor.Is("more", 1))
            {
                times = _draft.Context.AmountOf(cursor.EatNumber()!);
                cursor.Eat("more");
                cursor.Eat("times");
                saysMore = true;
            }
            else if (times is not null && cursor.Eat("more"))
            {
                saysMore = true;
            }

            if (times is null)
            {
                _draft.Unread(repeat.Span, steps);
                return at;
            }

            var inAll = cursor.EatAll("in", "all|total") || !repeat.SaysRepeat;
            step = step with { Times = times, IsMore = saysMore, IsTwoWays = !saysMore && !inAll };
        }

        steps.Add(step);
        if (!cursor.IsDone)
        {
            if (cursor.Is("end"))
            {
                return Ending(nodes, at, cursor, steps);
            }

            _words.Bind(cursor, steps);
        }

        return at;
    }

    /// <summary>"ending k2", "end last rep skp", "ending with yo, k2": to the next full stop.</summary>
    public int Ending(ImmutableArray<StepNode> nodes, int at, PhraseCursor cursor, List<Step> steps)
    {
        cursor.Eat("end");
        var last = cursor.EatAll("last", "rep") || cursor.EatAll("the", "last", "rep");
        cursor.Eat("with|in");
        if (cursor.IsDone || cursor.Is("at|a|row|rs|ws"))
        {
            if (!cursor.IsDone && cursor.Is("at"))
            {
                _draft.Unread(nodes[at].Span, steps);
            }

            return at;
        }

        var ending = new List<Step>();
        var outer = _draft.Sentence;
        _draft.Sentence = 0;
        _words.Bind(cursor, ending);
        while (at + 1 < nodes.Length && nodes[at + 1].Before is Separator.Comma or Separator.None or Separator.Semicolon && nodes[at + 1] is PhraseNode or GroupNode)
        {
            at++;
            if (nodes[at] is PhraseNode phrase)
            {
                _words.Bind(new PhraseCursor(Vocabulary.Normalise(phrase.Atoms)), ending);
            }
            else
            {
                at = _groups.Bind(nodes, at, (GroupNode)nodes[at], ending, isTop: false);
            }
        }

        _draft.Sentence = outer;
        steps[^1] = steps[^1] switch
        {
            RepeatStep repeat => repeat with { Ending = [.. ending], EndsLastRepeat = last },
            RepeatRowsStep rows => rows with { Ending = [.. ending] },
            var other => other,
        };
        return at;
    }
}
