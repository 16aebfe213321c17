using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>The words of a phrase become steps: stitches with their numbers, and what else a row says.</summary>
internal sealed class WordBinder
{
    private readonly RowDraft _draft;

    public WordBinder(RowDraft draft) => _draft = draft;

    /// <summary>Stitches and other steps one after the other until the phrase's words are used up.</summary>
    public void Bind(PhraseCursor cursor, List<Step> steps)
    {
        while (!cursor.IsDone)
        {
            var start = cursor.At;
            if (start == 0 && _draft.Context.IsCrochet && steps.Count > 0 && cursor.Is("across|around"))
            {
                ToEnd(cursor, steps); // "..., 2 sc in next st, around"
                if (cursor.At > start)
                {
                    continue;
                }
            }

            if (cursor.Eat("and|then|&|+|,|also|again|next|loosely|tightly|firmly") || (cursor.Is("wyif|wyib") && StitchReader.IsNext(cursor, _draft.Context, ahead: 1) && cursor.Eat("wyif|wyib")))
            {
                continue;
            }

            if (cursor.Peek()!.Atom is { Kind: TokenKind.Placeholder, Text: "{count}" })
            {
                _draft.WantsCount = true;
                cursor.At++;
                continue;
            }

            if (_draft.Context.IsCrochet && steps.Count > 0 && cursor.Peek()!.Atom.Kind == TokenKind.EqualsSign && cursor.Is("corner|shell|petal|cluster|v-st|group|fan|inc|dec", 1))
            {
                cursor.At += 2; // "2 dc = corner": what has been made is called by a name
                if (steps[^1] is CrochetStep { Place: null } named && PlaceReader.TryRead(cursor, _draft.Context) is { } where)
                {
                    steps[^1] = named with { Place = where };
                }

                continue;
            }

            if (_draft.Context.IsCrochet && (CountsWords.TryBehindChains(cursor, steps, _draft.Context) || (start == 0 && steps.Count > 0 && steps[^1] is ChainStep && cursor.Is("does|do|not|doesn't|doesn’t|counts|count") && CountsWords.Read(cursor.Lexemes)?.TryApply(steps, cursor.SpanFrom(0), _draft.Context.Book) == true && ToTheEnd(cursor))))
            {
                continue;
            }

            if (start == 0 && IsYarnAlone(cursor, steps))
            {
                continue;
            }

            if (ClaimReader.TryReadTotal(cursor, _draft.Context) is { } total)
            {
                _draft.Context.Claims.Add(total);
                continue;
            }

            if (cursor.Is("with|using") && WithStitchesLater(cursor, steps, countedOnly: true))
            {
                continue;
            }

            cursor.At = start;
            if (_draft.Context.IsCrochet && StitchPatternReader.TryPart(cursor, _draft.Context) is { } part)
            {
                steps.Add(part);
                continue;
            }

            if (_draft.Context.IsCrochet && CrochetReader.TryRead(cursor, _draft.Context) is { IsEmpty: false } crochet)
            {
                steps.AddRange(crochet);
                if (cursor.At > start && cursor.Eat("only"))
                {
                    steps.Add(new LeaveStep(cursor.SpanFrom(start))); // "sc in first 12 sts only"
                }

                ToEnd(cursor, steps);
                continue;
            }

            if ((StitchPatternReader.TryPart(cursor, _draft.Context) ?? MarkerReader.TryRead(cursor) ?? CableNeedleReader.TryRead(cursor, _draft.Context) ?? RowPhrases.TryRead(cursor, _draft.Context) ?? ChartReader.TryRead(cursor, _draft.Context) ?? (_draft.Context.IsCrochet ? null : StitchReader.TryRead(cursor, _draft.Context))) is { } step)
            {
                steps.Add(step);
                ToEnd(cursor, steps);
                continue;
            }

            cursor.At = start;
            if (steps.Count == 0 || steps[^1] is RowsStep or OperationStep)
            {
                // "to end" by itself: go on in pattern.
                if (TargetReader.TryRead(cursor, _draft.Context) is { } target)
                {
                    steps.Add(new RunStep(cursor.SpanFrom(start), StitchBook.InPattern, target));
                    continue;
                }
            }

            cursor.At = start;
            if (cursor.Eat("for") && SkipTo(cursor, "and"))
            {
                continue;
            }

            cursor.At = start;
            if (_draft.Context.IsCrochet && Elsewhere(cursor, steps))
            {
                continue;
            }

            cursor.At = start;
            if (WithStitchesLater(cursor, steps, countedOnly: false))
            {
                continue;
            }

            cursor.At = start;
            NotUnderstood(cursor, steps);
        }
    }

    /// <summary>"Dc in 4th ch from hook (counts as 2 dc) and in each ch across": the stitch told last, at another place.</summary>
    private bool Elsewhere(PhraseCursor cursor, List<Step> steps)
    {
        if (!(cursor.Is("in|into") || (cursor.At == 1 && cursor.Is("across|around"))) || (cursor.At > 0 && !cursor.Lexemes[cursor.At - 1].Is("and")) || steps.Count == 0 || steps[^1] is not (CrochetStep or SkippedChainsStep)
            || steps.OfType<CrochetStep>().LastOrDefault() is not { Place: not null } stitch || PlaceReader.TryRead(cursor, _draft.Context) is not { } place)
        {
            return false;
        }

        steps.Add(stitch with { Origin = place.Origin, Place = place });
        return true;
    }

    /// <summary>"MC: k2, CC: k3", "as Row 9, but with CC": the yarn of what stands beside it.</summary>
    private bool IsYarnAlone(PhraseCursor cursor, List<Step> steps)
    {
        var yarn = cursor.Lexemes.Count - 1;
        var isBut = cursor.Is("but|except") && cursor.Is("with|using|in", 1) && yarn is 2 or 3;
        if (!(isBut || (yarn == 0 && !_draft.Context.IsCrochet)) || !(_draft.Context.IsYarn(cursor.Lexemes[yarn].Atom.Text) || (isBut && cursor.Is("mc|cc|color|colour|yarn|needle|hook|a|b|c|d", yarn))))
        {
            return false;
        }

        steps.Add(new RemarkStep(cursor.SpanFrom(0).Cover(cursor.Lexemes[yarn].Span)));
        return ToTheEnd(cursor);
    }

    private static bool ToTheEnd(PhraseCursor cursor)
    {
        cursor.At = cursor.Lexemes.Count;
        return true;
    }

    // "for left front and place these sts on a holder"
    private static bool SkipTo(PhraseCursor cursor, string word)
    {
        while (!cursor.IsDone && !cursor.Is(word))
        {
            cursor.At++;
        }

        return !cursor.IsDone;
    }

    /// <summary>"K1, p1 across row", "k2, p2 to last 2 sts": what has been said since the sentence began is repeated so far.</summary>
    private void ToEnd(PhraseCursor cursor, List<Step> steps)
    {
        if (cursor.IsDone || steps[^1] is not (OperationStep or GroupStep or CrochetStep or ShellStep) || !cursor.Is("across|around|to|rep"))
        {
            return;
        }

        var start = cursor.At;
        cursor.Eat("rep");
        if (TargetReader.TryRead(cursor, _draft.Context) is not { } target)
        {
            cursor.At = start;
            return;
        }

        var from = Math.Min(_draft.Sentence, steps.Count - 1);
        while (_draft.Context.IsCrochet && from < steps.Count - 1 && steps[from] is ChainStep or TurnStep or RemarkStep or JoinStep or BeginAtStep or SentenceStep)
        {
            from++; // the turning chain is made once
        }

        var body = steps.GetRange(from, steps.Count - from);
        if (body.Exists(s => s is RowsStep or RunStep or RepeatStep))
        {
            cursor.At = start;
            return;
        }

        steps.RemoveRange(from, body.Count);
        steps.Add(new RepeatStep(body[0].Origin.Cover(cursor.SpanFrom(start)), [.. body]) { To = target });
    }

    /// <summary>"With waste yarn k4": the words before the first stitch are a remark.</summary>
    private bool WithStitchesLater(PhraseCursor cursor, List<Step> steps, bool countedOnly)
    {
        if (!cursor.Is("with|using|in|on|for|over|across|from|the|work|now|turn|this|rs|ws|b|a|mc|cc"))
        {
            return false;
        }

        var start = cursor.At;
        for (var skip = start + 1; skip < cursor.Lexemes.Count && cursor.Lexemes[skip].Atom.Kind != TokenKind.EqualsSign; skip++)
        {
            cursor.At = skip;
            if (_draft.Context.IsCrochet && countedOnly)
            {
                if (CrochetReader.TryRead(cursor, _draft.Context) is [ChainStep or CrochetStep { Each: not null } or CrochetStep { Place: not null }, ..] crochet)
                {
                    steps.Add(new RemarkStep(cursor.Lexemes[start].Span));
                    steps.AddRange(crochet);
                    return true;
                }

                continue;
            }

            if (cursor.Lexemes[skip].Atom.Kind == TokenKind.Word && !cursor.Lexemes[skip].Is("a|in|st|work") && StitchReader.TryRead(cursor, _draft.Context) is { } step
                && (!countedOnly || step is RunStep or OperationStep { Times: not null }))
            {
                steps.Add(new RemarkStep(cursor.Lexemes[start].Span));
                steps.Add(step);
                return true;
            }
        }

        return false;
    }

    /// <summary>"The last of the markers is the one for the beginning of the round": a sentence about the work, with no stitches or rows counted in it.</summary>
    private static bool IsSentence(PhraseCursor cursor) =>
        cursor.Lexemes.Count >= 4 && cursor.Lexemes[0].Atom.Text.ToLowerInvariant() is "the" or "this" or "these" or "it" or "you" or "your" or "there" or "they" or "if" or "when" or "each"
        && !Enumerable.Range(0, cursor.Lexemes.Count - 1).Any(i => cursor.Lexemes[i].IsNumber && cursor.Is("st|row|rnd|times|more", i + 1));

    /// <summary>"scc in next 5 sts", "5 hdcc": where a stitch stands, a word one letter off a stitch's name and no word of English.</summary>
    private Lexeme? MisspeltStitch(PhraseCursor cursor)
    {
        var at = cursor.IsNumber() ? 1 : 0;
        return cursor.Peek(at) is { Atom.Kind: TokenKind.Word } word && (cursor.Peek(at + 1) is null || cursor.Is("in|into|around|across|evenly", at + 1) || cursor.IsNumber(at + 1)) && UnknownWords.IsNearStitch(word.Atom.Text, _draft.Context) ? word : null;
    }

    private void NotUnderstood(PhraseCursor cursor, List<Step> steps)
    {
        if (cursor.At == 0 && IsSentence(cursor))
        {
            steps.Add(new RemarkStep(cursor.Lexemes[0].Span.Cover(cursor.Lexemes[^1].Span), IsSentence: true));
            cursor.At = cursor.Lexemes.Count;
            return;
        }

        var lexeme = cursor.Peek()!;
        var isWholePhrase = cursor.At == 0 && (cursor.Lexemes.Count == 1 || (cursor.Lexemes.Count == 2 && cursor.Lexemes[1].IsNumber));
        var isSpelledOut = _draft.Context.IsCrochet && lexeme.Norm is "yo" or "yoh" or "yrh" or "yon" or "insert" or "pull" or "draw" or "hook" or "plus"; // how a stitch is worked, told loop by loop
        if (!isSpelledOut && lexeme.Atom.Kind == TokenKind.Word && (isWholePhrase || StitchReader.IsNext(cursor, _draft.Context, ahead: 1)) && UnknownWords.LooksLikeStitch(lexeme.Atom.Text, isWholePhrase))
        {
            var other = UnknownWords.OtherCraft(lexeme.Atom.Text, _draft.Context.Facts.Craft);
            if (other is not null)
            {
                _draft.Context.Bag.Add(RowRules.OtherCraft, lexeme.Atom.Span, $"`{lexeme.Atom.Text}` is {other}, and this is a {UnknownWords.CraftWord(_draft.Context.Facts.Craft)} row", "use a stitch of this craft, or define it under `stitches` in the header");
            }
            else
            {
                UnknownWords.Report(lexeme.Atom, _draft.Context);
            }

            _draft.HasUnread = true;
            cursor.At += isWholePhrase ? cursor.Lexemes.Count : 1;
            steps.Add(new UnreadStep(lexeme.Span));
            return;
        }

        if (_draft.Context.IsCrochet && MisspeltStitch(cursor) is { } slip)
        {
            UnknownWords.Report(slip.Atom, _draft.Context);
            _draft.HasUnread = true;
        }
        else if (_draft.Context.IsCrochet && lexeme.Atom.Kind == TokenKind.Word && cursor.Is("in|into|around", 1) && cursor.Is("next|each|same|first|last|every|the", 2) && UnknownWords.IsMisspelt(lexeme.Atom.Text, _draft.Context))
        {
            UnknownWords.Report(lexeme.Atom, _draft.Context);
            _draft.HasUnread = true;
        }

        if (UnknownWords.OtherCraft(lexeme.Atom.Text, _draft.Context.Facts.Craft) is { } craft && lexeme.Atom.Kind == TokenKind.Word)
        {
            _draft.Context.Bag.Add(RowRules.OtherCraft, lexeme.Atom.Span, $"`{lexeme.Atom.Text}` is {craft}, and this is a {UnknownWords.CraftWord(_draft.Context.Facts.Craft)} row", "use a stitch of this craft, or define it under `stitches` in the header");
        }

        var rest = cursor.Lexemes[cursor.At].Span.Cover(cursor.Lexemes[^1].Span);
        cursor.At = cursor.Lexemes.Count;
        _draft.Unread(rest, steps);
    }
}
