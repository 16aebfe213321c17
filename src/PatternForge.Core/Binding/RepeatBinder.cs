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

        if (Extent(repeat, cursor, new RepeatStep(repeat.Span, body)) is not { } step)
        {
            _draft.Unread(repeat.Extent is [var first, ..] ? first.Span.Cover(repeat.Extent[^1].Span) : repeat.Span, steps);
            return at;
        }

        if (_draft.Context.IsCrochet && !repeat.SaysRepeat && repeat.Span.Start == repeat.Body[0].Span.Start && CrochetRepeatReader.Once(body) is { IsEmpty: false } once)
        {
            steps.AddRange(once);
            step = step with { Body = body[once.Length..] };
        }

        steps.Add(step with { Ending = _rows.Sequence(repeat.LastPass, isTop: false) });
        if (cursor.Is("end"))
        {
            return Ending(nodes, at, cursor, steps);
        }

        if (repeat.LastPass.IsEmpty && step.To is { Extent: Model.Extent.End } && (cursor.IsDone ? HasTail(nodes, at) : IsStitch(cursor)))
        {
            return Tail(nodes, at, cursor, steps, isOfLastRepeat: false);
        }

        _words.Bind(cursor, steps);
        return at;
    }

    /// <summary>How far or how often the repeat goes; null when that is not understood.</summary>
    private RepeatStep? Extent(RepeatNode repeat, PhraseCursor cursor, RepeatStep step)
    {
        if (!repeat.SaysRepeat)
        {
            cursor.Eat("rep");
        }

        if (!repeat.SaysRepeat && IsStitch(cursor))
        {
            return step with { To = new Target(Model.Extent.End) }; // "*...* k6": to the end, but for what follows
        }

        if (cursor.IsDone || (cursor.Is("end") && cursor.Lexemes.Count > cursor.At + 1) || cursor.Peek()!.Atom.Kind == TokenKind.EqualsSign)
        {
            return step with { To = new Target(Model.Extent.End) };
        }

        if (cursor.EatAll("end") || cursor.EatAll("ends"))
        {
            return step with { To = new Target(Model.Extent.End) };
        }

        if (cursor.Is("until") && cursor.Lexemes.Exists(l => l.Is("measure")) && step.Body.Any(s => s is SlideStep or TurnStep))
        {
            cursor.At = cursor.Lexemes.Count; // "*k4, slide; rep from * until cord measures 10 cm": each pass is a row
            return step with { Times = RowContext.Constant(1, step.Origin) };
        }

        if ((_draft.Context.IsCrochet ? CrochetReader.TryTarget(cursor, _draft.Context) : null) is { } crochetTarget)
        {
            return step with { To = crochetTarget };
        }

        if (TargetReader.TryRead(cursor, _draft.Context) is { } target)
        {
            return step with { To = target };
        }

        var saysMore = cursor.Eat("another");
        var isTotal = cursor.EatAll("for", "a", "total", "of") || cursor.EatAll("a", "total", "of");
        var times = TimesReader.TryRead(cursor, _draft.Context);
        if (times is null && cursor.IsNumber() && cursor.Is("more", 1))
        {
            times = _draft.Context.AmountOf(cursor.EatNumber()!);
            cursor.At++;
            cursor.Eat("times");
            saysMore = true;
        }

        if (times is null)
        {
            // "*...* Do not cut yarn": to the end, and a remark.
            var at = cursor.At;
            var isRemark = !repeat.SaysRepeat && RowPhrases.TryRead(cursor, _draft.Context) is RemarkStep;
            cursor.At = at;
            return isRemark ? step with { To = new Target(Model.Extent.End) } : null;
        }

        saysMore |= cursor.Eat("more|again");
        var inAll = TimesReader.EatInAll(cursor) || !repeat.SaysRepeat || isTotal;
        TargetReader.EatWholeRow(cursor);
        return step with { Times = times, IsMore = saysMore, IsTwoWays = !saysMore && !inAll };
    }

    private bool IsStitch(PhraseCursor cursor) => _draft.Context.IsCrochet ? CrochetReader.IsNext(cursor, _draft.Context) : StitchReader.IsNext(cursor, _draft.Context);

    /// <summary>True when more stitches stand behind a repeat that goes to the end: they are its tail.</summary>
    private bool HasTail(ImmutableArray<StepNode> nodes, int at)
    {
        while (at + 1 < nodes.Length && nodes[at + 1] is PhraseNode { Before: Separator.Comma or Separator.Semicolon } phrase && !IsTotal(nodes, at + 1))
        {
            var cursor = new PhraseCursor(Vocabulary.Normalise(phrase.Atoms));
            if (MarkerReader.TryRead(cursor) is null || !cursor.IsDone)
            {
                cursor.At = 0;
                return RowPhrases.TryRead(cursor, _draft.Context) is null && IsStitch(cursor);
            }

            at++;
        }

        return false;
    }

    // "rep from * around, 24 sts"
    private bool IsTotal(ImmutableArray<StepNode> nodes, int at) => _draft.Context.IsCrochet && CrochetClaims.IsLastTotal(nodes, at);

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

        return Tail(nodes, at, cursor, steps, last, saysEnding: true);
    }

    /// <summary>What stands behind a repeat up to the next full stop becomes its ending.</summary>
    private int Tail(ImmutableArray<StepNode> nodes, int at, PhraseCursor cursor, List<Step> steps, bool isOfLastRepeat, bool saysEnding = false)
    {
        var ending = new List<Step>();
        var outer = _draft.Sentence;
        _draft.Sentence = 0;
        _words.Bind(cursor, ending);
        while (at + 1 < nodes.Length && nodes[at + 1].Before is Separator.Comma or Separator.None or Separator.Semicolon && nodes[at + 1] is PhraseNode or GroupNode && !IsTotal(nodes, at + 1))
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
            RepeatStep repeat => repeat with { Ending = [.. ending], EndsLastRepeat = isOfLastRepeat, SaysEnding = saysEnding },
            RepeatRowsStep rows => rows with { Ending = [.. ending] },
            var other => other,
        };
        return at;
    }
}
