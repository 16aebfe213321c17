using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>A bracket becomes a repeat, a count, stitches worked in one place, or nothing but a remark.</summary>
internal sealed class GroupBinder
{
    private readonly RowDraft _draft;
    private readonly RowBinder _rows;
    private readonly WordBinder _words;

    public GroupBinder(RowDraft draft, RowBinder rows, WordBinder words)
    {
        _draft = draft;
        _rows = rows;
        _words = words;
    }

    /// <summary>Binds the bracket at a node; gives the last node taken.</summary>
    public int Bind(ImmutableArray<StepNode> nodes, int at, GroupNode group, List<Step> steps, bool isTop)
    {
        var followed = at + 1 < nodes.Length && nodes[at + 1] is PhraseNode { Before: Separator.None } ? (PhraseNode)nodes[at + 1] : null;
        if (_draft.Context.IsCrochet && !IsClosed(group, _draft.Context))
        {
            // Never closed, which has been said: what belongs into it cannot be told.
            var found = _draft.Context.Bag.Count;
            _rows.Sequence(group.Body, isTop: false);
            _draft.Context.Bag.TakeBack(found);
            _draft.HasUnread = true;
            steps.Add(new UnreadStep(new TextSpan(group.Span.Start, 0)));
            return at;
        }

        if (group.Body is [PhraseNode inner])
        {
            var lexemes = Vocabulary.Normalise(inner.Atoms);
            if (lexemes.Count <= RowDraft.MostLexemes)
            {
                if (_draft.Context.IsCrochet && steps.Count > 0 && IsRemark(lexemes, steps[^1]))
                {
                    return at;
                }

                if (_draft.Context.IsCrochet && steps.Count > 0 && steps[^1] is ChainStep && CountsWords.Read(lexemes)?.TryApply(steps, group.Span, _draft.Context.Book) == true)
                {
                    return at; // "(= 1 dc)" behind chains is no count
                }

                if (inner.Before == Separator.Dash && followed is null && ClaimReader.TryReadMinus(lexemes, _draft.Context) is { } fewer)
                {
                    _draft.Context.Claims.Add(fewer);
                    return at;
                }

                if (_draft.Context.IsCrochet && followed is null && steps.Count > 0 && (CrochetClaims.IsPerSide(lexemes, _draft.Context) || CrochetClaims.IsBefore(lexemes, _draft.Context)))
                {
                    return at;
                }

                if (_draft.Context.IsCrochet && followed is null && steps.Count > 0 && CrochetClaims.TrySeveral(lexemes, _draft.Context, introduced: true) is { } several)
                {
                    _draft.Context.Claims.AddRange(several);
                    return at;
                }

                if ((followed is null || !IsUsed(followed)) && ClaimReader.TryRead(lexemes, _draft.Context, introduced: true) is { } claim)
                {
                    _draft.Context.Claims.Add(claim);
                    return at;
                }

                if (_draft.Context.IsCrochet && CountsWords.Read(lexemes)?.TryApply(steps, group.Span, _draft.Context.Book) == true)
                {
                    return at;
                }

                var inside = new PhraseCursor(lexemes);
                if (TimesReader.TryRead(inside, _draft.Context) is { } times && inside.IsDone && steps.Count > 0)
                {
                    steps[^1] = new GroupStep(steps[^1].Origin.Cover(group.Span), [steps[^1]], times);
                    return at;
                }
            }
        }

        if (_draft.Context.IsCrochet && group.Body.Length is > 1 and < 5 && group.Body.All(n => n is PhraseNode { Atoms.Length: < RowDraft.MostLexemes })
            && CountsWords.Read(Vocabulary.Normalise([.. group.Body.SelectMany(n => ((PhraseNode)n).Atoms)]))?.TryApply(steps, group.Span, _draft.Context.Book) == true)
        {
            return at; // "(counts as dc, ch 1)"
        }

        // "until piece measures 15 in (38 cm) from beg": the length once more.
        if (steps.Count > 0 && steps[^1] is RowsStep && group.Body is [PhraseNode { Atoms: [{ Kind: TokenKind.Number }, ..] } length] && length.Atoms.Length <= 3 && !length.Atoms.Any(a => a.Is("sts") || a.Is("st")))
        {
            return followed is null ? at : at + 1;
        }

        if (group.Body.Length > 1 && SplitCountReader.TryRead(group.Body, 0, _draft.Context, out var lastPart) is { } split && lastPart == group.Body.Length - 1)
        {
            _draft.Context.Claims.Add(split);
            return at;
        }

        if (group.Body.Length > 2 && SplitCountReader.TryReadNumbers(group.Body, 0, _draft.Context, out var lastNumber) is { } sections && lastNumber == group.Body.Length - 1)
        {
            _draft.Context.Claims.Add(sections);
            return at;
        }

        if (SizedClaim(group) is { } sized)
        {
            _draft.Context.Claims.Add(sized);
            return at;
        }

        if ((group.Body.Length == 2 || _draft.Context.IsCrochet) && (followed is null || !IsUsed(followed)) && (steps.Count > 0 || !_draft.Context.IsCrochet) && ClaimsOnly(group))
        {
            return at;
        }

        // "K2 (edge sts)": the bracket says which stitches they are.
        if (group.Before == Separator.None && steps.Count > 0 && (followed is null || !IsTimes(followed)) && group.Body is [PhraseNode { Atoms: [_, _, ..] } said]
            && (said.Atoms[^1].Is("sts") || said.Atoms[^1].Is("st") || said.Atoms[^1].Is("stitches") || said.Atoms[^1].Is("stitch")) && said.Atoms.All(a => a.Kind == TokenKind.Word && a.Text.All(char.IsLetter)))
        {
            return at;
        }

        // "Work in St st (knit every rnd) for 5 in": the bracket explains the fabric.
        if (steps.Count > 0 && steps[^1] is EvenRowsStep && (followed is null || !IsTimes(followed)))
        {
            return at;
        }

        // "Knit in front and back of each st (kfb)": the bracket explains what has just been said.
        if (followed is null && group.Before == Separator.None && steps.Count > 0 && steps[^1] is RunStep { To.Extent: Extent.End })
        {
            return at;
        }

        var (findings, hadUnread) = (_draft.Context.Bag.Count, _draft.HasUnread);
        var body = _rows.Sequence(group.Body, isTop: false);
        if (body.IsEmpty || body.All(s => s is UnreadStep or RemarkStep))
        {
            // A remark in brackets: nothing in it is a stitch.
            if (_draft.Context.Bag.Count == findings || followed is null || !IsTimes(followed))
            {
                _draft.Context.Bag.TakeBack(findings);
                _draft.HasUnread = hadUnread;
                return at;
            }
        }

        if (_draft.Context.IsCrochet && followed is null && body.Length > 1 && body[^1] is CrochetStep { Place: { Kind: PlaceKind.Next, Count: null, Thing.Kind: ThingKind.Space } or { Kind: PlaceKind.Same, Count: null } } last && body.SkipLast(1).All(s => s is CrochetStep { Place: null, Operation.Takes: 1 } or ChainStep) && body.Any(s => s is ChainStep))
        {
            steps.Add(new ShellStep(group.Span, body.SetItem(body.Length - 1, last with { Place = null }), last.Place)); // "(3 dc, ch 2, 3 dc in next ch-2 sp)"
            return at;
        }

        if (followed is null)
        {
            _draft.BareGroup ??= isTop ? group.Span : null;
            steps.Add(new GroupStep(group.Span, body, null));
            return at;
        }

        var cursor = new PhraseCursor(Vocabulary.Normalise(followed.Atoms));
        if (cursor.Lexemes.Count > RowDraft.MostLexemes)
        {
            _draft.Unread(followed.Span, steps);
            return at + 1;
        }

        steps.Add(WithModifiers(group.Span, body, cursor));
        if (!cursor.IsDone)
        {
            _words.Bind(cursor, steps);
        }

        return at + 1;
    }

    /// <summary>"(inc made)", "(1 sp made)", "(beginning cluster)": what has just been worked, called by a name.</summary>
    private static bool IsRemark(List<Lexeme> lexemes, Step before)
    {
        if (before is RepeatStep || lexemes.Count > 6)
        {
            return false;
        }

        return (lexemes[^1].Norm is "made" or "completed" or "complete" && (!lexemes[0].IsNumber || lexemes[0].Number is { IsList: false } one && one.Values[0] == 1))
            || (lexemes.Count > 1 && lexemes[0].Is("beg") && lexemes.TrueForAll(l => !l.IsNumber) && lexemes[^1].Norm is "cluster" or "cl" or "shell" or "popcorn" or "puff" or "bobble" or "v-st" or "st" or "dec" or "inc" or "pc");
    }

    // A brace closes a brace; elsewhere it ends a placeholder.
    private static bool IsClosed(GroupNode group, RowContext context)
    {
        var span = group.Span;
        var isInner = !group.Body.IsEmpty && group.Body[^1].Span.End == span.End; // the last sign closes a bracket within
        return !isInner && context.Source.Text[span.End - 1] is var last && (last is ')' or ']' || (last == '}' && context.Source.Text[span.Start] == '{'));
    }

    /// <summary>True when a part is, or holds, a bracket that is never closed.</summary>
    public static bool IsOpen(StepNode node, RowContext context) => node switch
    {
        GroupNode group => !IsClosed(group, context) || group.Body.Any(n => IsOpen(n, context)),
        RepeatNode repeat => repeat.Body.Any(n => IsOpen(n, context)),
        _ => false,
    };

    /// <summary>"(60, 66 sts)": one value for each size, the noun behind the last.</summary>
    private Claim? SizedClaim(GroupNode group)
    {
        var sizes = _draft.Context.Scope.IsEmpty ? _draft.Context.SizeCount : _draft.Context.Scope.Length;
        if (sizes < 2 || group.Body.Length != sizes || group.Body[^1] is not PhraseNode { Atoms: [_, _, ..] })
        {
            return null;
        }

        var values = ImmutableArray.CreateBuilder<decimal?>(sizes);
        foreach (var node in group.Body)
        {
            if (node is not PhraseNode { Atoms: [{ Kind: TokenKind.Number, Number.IsList: false } number, ..] atoms } || (node != group.Body[^1] && atoms.Length > 1))
            {
                return null;
            }

            values.Add(number.Number!.Values[0]);
        }

        // The last value with its noun is read as a claim by itself; the list takes its place.
        var last = ClaimReader.TryRead(Vocabulary.Normalise(((PhraseNode)group.Body[^1]).Atoms), _draft.Context, introduced: true);
        var span = group.Body[0].Span.Cover(group.Body[^1].Span);
        return last is { Kind: ClaimKind.Total } && _draft.Context.Spread(new SizedNumber(values.ToImmutable(), span)) is { } each ? new Claim(span, ClaimKind.Total, each) : null;
    }

    private bool ClaimsOnly(GroupNode group)
    {
        var claims = new List<Claim>();
        foreach (var node in group.Body)
        {
            if (_draft.Context.IsCrochet && group.Body.Length > 1 && node is PhraseNode { Atoms: [{ Kind: TokenKind.Number }, var unit] } && Vocabulary.NormOf(unit) is "row" or "rnd")
            {
                continue; // "(5 rnds, 30 sts)"
            }

            if (node is not PhraseNode phrase)
            {
                return false;
            }

            var lexemes = Vocabulary.Normalise(phrase.Atoms);
            if (_draft.Context.IsCrochet && claims.Count > 0 && CrochetClaims.IsPerSide(lexemes, _draft.Context))
            {
                continue; // "(28 dc: 7 each side)"
            }

            if (_draft.Context.IsCrochet && CrochetClaims.TrySeveral(lexemes, _draft.Context, introduced: true) is { } several)
            {
                claims.AddRange(several);
                continue;
            }

            if (ClaimReader.TryRead(lexemes, _draft.Context, introduced: true) is not { } claim)
            {
                return false;
            }

            claims.Add(claim);
        }

        if (_draft.Context.IsCrochet && claims.Count > 2 && claims.Take(claims.Count - 1).All(c => c is { Of: null, Kind: ClaimKind.Total }) && group.Body.SkipLast(1).All(n => n is PhraseNode { Atoms.Length: 1 }))
        {
            claims.RemoveRange(0, claims.Count - 1); // "(28, 26, 24, 22, 20, 18 sc)": after each row of several
        }

        _draft.Context.Claims.AddRange(claims);
        return true;
    }

    // "(2 dc) in next sp", "(2 dc, ch 2) 3 times": stitches, not a count.
    private bool IsUsed(PhraseNode phrase) => IsTimes(phrase) || (_draft.Context.IsCrochet && PlaceReader.TryRead(new PhraseCursor(Vocabulary.Normalise(phrase.Atoms)), _draft.Context) is not null);

    private bool IsTimes(PhraseNode phrase)
    {
        var cursor = new PhraseCursor(Vocabulary.Normalise(phrase.Atoms));
        return TimesReader.TryRead(cursor, _draft.Context) is not null || cursor.Is("to|around|across|until");
    }

    private Step WithModifiers(TextSpan span, ImmutableArray<Step> body, PhraseCursor cursor)
    {
        if (_draft.Context.IsCrochet && CrochetGroupReader.TryRead(span, body, cursor, _draft.Context) is { } crochet)
        {
            return crochet;
        }

        var isRepeat = cursor.Is("rep") && cursor.Is("to|until|across|around", 1);
        cursor.At += isRepeat ? 1 : 0;
        var begin = cursor.At;
        cursor.Eat("all");
        var many = TimesReader.TryRead(cursor, _draft.Context);
        if (many is not null && cursor.Is("in|into") && cursor.Is("the|next|same|first|last|this|foll", 1))
        {
            body = [new GroupStep(span, body, many)]; // "(k1, p1) twice in next st"
        }
        else
        {
            cursor.At = begin;
            cursor.Eat("all");
        }

        if (cursor.Is("in|into") && (cursor.Is("next|same|first|last|this|center|foll", 1) || (cursor.Is("the", 1) && cursor.Is("next|same|first|last", 2))))
        {
            cursor.At += cursor.Is("the", 1) ? 3 : 2;
            var places = cursor.EatNumber();
            cursor.Eat("st|yo");
            return new InOneStitchStep(span.Cover(cursor.SpanFrom(0)), body, places is null ? TimesReader.TryRead(cursor, _draft.Context) : _draft.Context.AmountOf(places));
        }

        if (cursor.Is("in|into") && cursor.Is("each|every|all", 1) && TargetReader.TryRead(cursor, _draft.Context) is { } each)
        {
            // "(k1, p1) in each st across": the whole bracket into every stitch.
            var place = span.Cover(cursor.SpanFrom(0));
            return new RepeatStep(place, [new InOneStitchStep(place, body, null)]) { To = each };
        }

        if (cursor.Is("in|into"))
        {
            // "(k1, p1) in yo2": each into a loop of its own.
            var into = cursor.At;
            cursor.At++;
            cursor.Eat("the");
            cursor.Eat("double");
            if (cursor.Eat("yo|yo2|yon|yrn|yfwd"))
            {
                return new GroupStep(span, body, null);
            }

            cursor.At = into;
        }

        if (TargetReader.TryRead(cursor, _draft.Context) is { } target)
        {
            return new RepeatStep(span.Cover(cursor.SpanFrom(0)), body) { To = target };
        }

        var times = TimesReader.TryRead(cursor, _draft.Context);
        if (times is null && cursor.IsNumber() && cursor.Is("more", 1))
        {
            times = _draft.Context.AmountOf(cursor.EatNumber()!);
        }

        if (times is not null)
        {
            cursor.Eat("more|again");
            TimesReader.EatInAll(cursor);
            TargetReader.EatWholeRow(cursor);
            CrochetGroupReader.EatRing(cursor, _draft.Context);
        }

        if (times is null)
        {
            _draft.BareGroup ??= span;
        }

        return new GroupStep(cursor.At > 0 ? span.Cover(cursor.SpanFrom(0)) : span, body, times);
    }
}
