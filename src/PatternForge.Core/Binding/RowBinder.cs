using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>The parts of a row become steps: words are looked up, numbers laid out over the sizes, counts set apart.</summary>
internal sealed class RowBinder
{
    private const int MostLexemes = 160;

    private readonly RowContext _context;
    private readonly ShapingReader _shaping = new();
    private bool _hasUnread;
    private bool _hasBareGroup;
    private bool _wantsCount;
    private int _sentence;

    private RowBinder(RowContext context) => _context = context;

    /// <summary>What a row's body says.</summary>
    public sealed record Body(ImmutableArray<Step> Steps, ImmutableArray<Claim> Claims, bool HasUnread, bool HasBareGroup, bool WantsCount);

    /// <summary>Binds a row's body.</summary>
    public static Body Bind(ImmutableArray<StepNode> nodes, RowContext context)
    {
        context.Claims.Clear();
        context.HasBadNumber = false;
        var binder = new RowBinder(context);
        var steps = binder.Sequence(nodes, isTop: true);
        return new Body(steps, [.. context.Claims], binder._hasUnread || context.HasBadNumber, binder._hasBareGroup, binder._wantsCount);
    }

    private ImmutableArray<Step> Sequence(ImmutableArray<StepNode> nodes, bool isTop)
    {
        var steps = new List<Step>();
        var sentence = 0; // where the sentence now being read begins
        var needle = false;
        for (var i = 0; i < nodes.Length; i++)
        {
            var node = nodes[i];
            if (node.Before == Separator.Stop && steps.Count > sentence)
            {
                WholeRowIfBare(steps, sentence, needle);
                if (isTop)
                {
                    steps.Add(new SentenceStep(new TextSpan(node.Span.Start, 0)));
                }

                sentence = steps.Count;
            }

            _sentence = sentence;
            switch (node)
            {
                case PhraseNode phrase:
                    if (IsNeedle(phrase))
                    {
                        WholeRowIfBare(steps, sentence, needle);
                        needle = true;
                        sentence = steps.Count;
                        steps.Add(new NeedleStep(phrase.Span));
                        break;
                    }

                    i = Phrase(nodes, i, phrase, steps, isTop, needle);
                    break;
                case GroupNode group:
                    i = Group(nodes, i, group, steps, isTop);
                    break;
                case RepeatNode repeat:
                    i = Repeat(nodes, i, repeat, steps);
                    break;
                case MarkNode mark:
                    var isLone = nodes.Length == 1;
                    if (!isLone && mark.Mark == "*")
                    {
                        _context.Bag.Add(RowSyntaxRules.StarWithoutRepeat, mark.Span, "a star opens a repeat here, but no \"rep from *\" follows", "write \"rep from * to ...\" where the repeat ends, or take the star out");
                        _hasUnread = true;
                    }

                    break;
            }
        }

        WholeRowIfBare(steps, sentence, needle);
        return [.. steps];
    }

    private static bool IsNeedle(PhraseNode phrase) =>
        phrase.Atoms.Length is 2 or 3 && (phrase.Atoms[0].Is("needle") || (phrase.Atoms[0].Is("on") && phrase.Atoms[1].Is("needle"))) && phrase.Atoms[^1].Kind == TokenKind.Number;

    /// <summary>"Knit." alone in its sentence means every stitch.</summary>
    private static void WholeRowIfBare(List<Step> steps, int from, bool needle)
    {
        var working = -1;
        for (var i = from; i < steps.Count; i++)
        {
            if (steps[i] is RemarkStep or SpreadStep or TurnStep or JoinStep or SlideStep or SentenceStep or NeedleStep or CastOnStep { AtEnd: true } or MarkerStep)
            {
                continue;
            }

            if (working >= 0)
            {
                return;
            }

            working = i;
        }

        if (working >= 0 && StitchReader.IsBarePlain(steps[working]))
        {
            steps[working] = new RunStep(steps[working].Origin, ((OperationStep)steps[working]).Operation, new Target(needle ? Extent.Needle : Extent.End));
        }
    }

    /// <summary>In what is said of one needle, "to end" and "to last 3 sts" are of that needle.</summary>
    private static void OfThisNeedle(List<Step> steps, int from)
    {
        for (var i = from; i < steps.Count; i++)
        {
            if (steps[i] is RunStep { To.Extent: Extent.End or Extent.LastStitches } run)
            {
                steps[i] = run with { To = run.To with { Extent = Extent.Needle } };
            }
        }
    }

    private int Phrase(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, List<Step> steps, bool isTop, bool needle)
    {
        var lexemes = Vocabulary.Normalise(phrase.Atoms);
        if (lexemes.Count > MostLexemes)
        {
            Unread(phrase.Span, steps);
            return at;
        }

        if (IsClaimPlace(nodes, at, phrase) && ClaimReader.TryRead(lexemes, _context, inBracket: false) is { } claim)
        {
            if (needle && steps.Count > 0 && steps[^1] is NeedleStep)
            {
                steps[^1] = new NeedleCountStep(phrase.Span, new Amount(claim.Values, claim.Origin));
            }
            else
            {
                _context.Claims.Add(claim);
            }

            return at;
        }

        ReferenceReader.Check(lexemes, _context);
        if (isTop && ReferenceReader.IsAsForSection(nodes, at, lexemes, _context))
        {
            _hasUnread = true;
            steps.Add(new AsPieceStep(phrase.Span.Cover(nodes[at + 1].Span)));
            return at + 1;
        }

        var cursor = new PhraseCursor(lexemes);
        if (cursor.Is("end") && steps.Count > 0 && steps[^1] is RepeatStep or RepeatRowsStep)
        {
            return Ending(nodes, at, cursor, steps);
        }

        if (isTop && Whole(nodes, at, phrase, cursor, steps) is { } next)
        {
            return next;
        }

        var from = steps.Count;
        Words(cursor, steps);
        if (needle)
        {
            OfThisNeedle(steps, from);
        }

        return at;
    }

    /// <summary>A phrase, alone or with the next ones, that stands for whole rows; the last node taken, or null.</summary>
    private int? Whole(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, PhraseCursor cursor, List<Step> steps)
    {
        // "Work even in K1, P1 rib for 2 in" is cut at its comma.
        var isFabric = cursor.Is("work|cont") && cursor.Lexemes.Exists(l => l.Is("in"));
        if (isFabric && Merged(nodes, at, phrase, steps) is { } fabric)
        {
            return fabric;
        }

        if (LateTimes(cursor, steps) || TryWhole(cursor, steps) || Start(nodes, ref at, cursor, steps))
        {
            return at;
        }

        return !isFabric && cursor.Is("inc|dec|rep|beg|k|p") ? Merged(nodes, at, phrase, steps) : null;
    }

    /// <summary>"Rep Rnds 1 and 2, with 2 more sts between increases each time, 8 more times": the number of times comes last.</summary>
    private bool LateTimes(PhraseCursor cursor, List<Step> steps)
    {
        var at = steps.FindLastIndex(s => s is not RemarkStep);
        if (at < 0 || steps[at] is not RepeatRowsStep { Until: RowsUntil.Open } rows)
        {
            return false;
        }

        if (cursor.Is("with") && cursor.Lexemes.Exists(l => l.Is("more") || l.Is("fewer") || l.Is("less")))
        {
            steps[at] = rows with { Grows = true };
            cursor.At = cursor.Lexemes.Count;
            return true;
        }

        cursor.Eat("another");
        var times = TimesReader.TryRead(cursor, _context);
        if (times is null && cursor.IsNumber() && cursor.Is("more", 1) && cursor.Is("times", 2))
        {
            times = _context.AmountOf(cursor.EatNumber()!);
            cursor.At += 2;
        }

        cursor.Eat("more");
        if (times is null || !cursor.IsDone)
        {
            cursor.At = 0;
            return false;
        }

        steps[at] = rows with { Until = RowsUntil.Times, Value = times };
        return true;
    }

    private int? Merged(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, List<Step> steps)
    {
        var atoms = phrase.Atoms;
        for (var more = 1; more <= 2 && at + more < nodes.Length && nodes[at + more] is PhraseNode { Before: Separator.Comma or Separator.None } joined; more++)
        {
            atoms = atoms.AddRange(joined.Atoms);
            var added = Vocabulary.Normalise(joined.Atoms);
            var merged = new PhraseCursor(Vocabulary.Normalise(atoms));
            if (merged.Lexemes.Count <= MostLexemes && added.Exists(l => l.Is("rib") || l.Is("row") || l.Is("rnd") || l.Is("patt") || l.Is("stst")) && TryWhole(merged, steps))
            {
                return at + more;
            }
        }

        return null;
    }

    private bool TryWhole(PhraseCursor cursor, List<Step> steps)
    {
        var step = _shaping.TryRead(cursor, _context) ?? RowsReader.TryRead(cursor, _context);
        if (step is null || !cursor.IsDone)
        {
            cursor.At = 0;
            return false;
        }

        steps.Add(step);
        return true;
    }

    private bool Start(ImmutableArray<StepNode> nodes, ref int at, PhraseCursor cursor, List<Step> steps)
    {
        if (!cursor.Is("beg") || !cursor.Is("with", 1))
        {
            return false;
        }

        var start = StartReader.TryRead(nodes, at, _context, out var taken);
        if (start is null)
        {
            return false;
        }

        steps.Add(start);
        at = taken;
        return true;
    }

    private static bool IsClaimPlace(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase) =>
        phrase.Before is Separator.Stop or Separator.Dash or Separator.Semicolon
        || phrase.Atoms[0].Kind == TokenKind.EqualsSign
        || (phrase.Before == Separator.None && at > 0 && nodes[at - 1] is GroupNode or RepeatNode && phrase.Atoms[^1].Kind == TokenKind.Word)
        || nodes.Length == 1;

    /// <summary>Stitches and other steps one after the other until the phrase's words are used up.</summary>
    private void Words(PhraseCursor cursor, List<Step> steps)
    {
        while (!cursor.IsDone)
        {
            var start = cursor.At;
            if (cursor.Eat("and|then|&|+|,|also|again|next"))
            {
                continue;
            }

            if (cursor.Peek()!.Atom is { Kind: TokenKind.Placeholder, Text: "{count}" })
            {
                _wantsCount = true;
                cursor.At++;
                continue;
            }

            if (ClaimReader.TryReadTotal(cursor, _context) is { } total)
            {
                _context.Claims.Add(total);
                continue;
            }

            if ((Marker(cursor) ?? CableNeedle(cursor) ?? RowPhrases.TryRead(cursor, _context) ?? ChartOrPanel(cursor) ?? StitchReader.TryRead(cursor, _context)) is { } step)
            {
                steps.Add(step);
                ToEnd(cursor, steps);
                continue;
            }

            cursor.At = start;
            if (steps.Count == 0 || steps[^1] is RowsStep or OperationStep)
            {
                // "to end" by itself: go on in pattern.
                if (TargetReader.TryRead(cursor, _context) is { } target)
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
            if (WithStitchesLater(cursor, steps))
            {
                continue;
            }

            cursor.At = start;
            NotUnderstood(cursor, steps);
        }
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
        if (cursor.IsDone || steps[^1] is not (OperationStep or GroupStep) || !cursor.Is("across|around|to|rep"))
        {
            return;
        }

        var start = cursor.At;
        cursor.Eat("rep");
        if (TargetReader.TryRead(cursor, _context) is not { } target)
        {
            cursor.At = start;
            return;
        }

        var from = Math.Min(_sentence, steps.Count - 1);
        var body = steps.GetRange(from, steps.Count - from);
        if (body.Exists(s => s is RowsStep or RunStep or RepeatStep))
        {
            cursor.At = start;
            return;
        }

        steps.RemoveRange(from, body.Count);
        steps.Add(new RepeatStep(body[0].Origin.Cover(cursor.SpanFrom(start)), [.. body]) { To = target });
    }

    private static MarkerStep? Marker(PhraseCursor c)
    {
        var start = c.At;
        var action = c.Is("pm") ? MarkerAction.Place : c.Is("sm") ? MarkerAction.Slip : c.Is("rm") ? MarkerAction.Remove : (MarkerAction?)null;
        if (action is null)
        {
            return null;
        }

        c.At++;
        string? name = null;
        if (c.Peek() is { } after && after.Atom.Kind == TokenKind.Word && (after.Atom.Text.Length == 1 && char.IsUpper(after.Atom.Text[0])))
        {
            name = after.Atom.Text.ToLowerInvariant();
            c.At++;
        }

        if (c.Is("for|to|on|at|here|around"))
        {
            while (!c.IsDone && !c.Is("and"))
            {
                c.At++;
            }
        }

        return new MarkerStep(c.SpanFrom(start), action.Value, name);
    }

    /// <summary>"k2 from cn", "then K the 2 sts from cn".</summary>
    private CableNeedleStep? CableNeedle(PhraseCursor c)
    {
        var start = c.At;
        if (c.Peek() is not { Atom.Kind: TokenKind.Word } first)
        {
            return null;
        }

        var (stem, digits) = StitchReader.Split(first.Atom.Text);
        if (_context.Book.Find(stem) is not { Takes: 1, Makes: 1 } operation)
        {
            return null;
        }

        c.At++;
        c.Eat("the");
        var amount = digits >= 0 ? RowContext.Constant(digits, first.Span) : c.EatNumber() is { } number ? _context.AmountOf(number) : null;
        StitchReader.Modifiers(c);
        c.Eat("st");
        if (amount is not null && c.Eat("from|off"))
        {
            c.Eat("the");
            if (c.Eat("cn"))
            {
                _context.LastName = stem;
                _context.Use(operation, first.Span);
                return new CableNeedleStep(c.SpanFrom(start), amount, operation);
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>"work 21 sts of Cable Panel", "6 sts of Chart A 2 times", "next row of Chart A over 19 sts", "rem 4 sts in rev St st".</summary>
    private OperationStep? ChartOrPanel(PhraseCursor c)
    {
        var start = c.At;
        var work = c.Eat("work");
        if ((c.EatAll("next", "row|rnd", "of") || c.EatAll("row|rnd", "{n}", "of") || work) && c.Peek() is not null)
        {
            var name = c.At;
            while (!c.IsDone && !c.Is("over|across"))
            {
                c.At++;
            }

            if (c.At > name && c.Eat("over|across"))
            {
                c.Eat("the");
                c.Eat("next");
                if (c.EatNumber() is { } over && c.Eat("st"))
                {
                    return new OperationStep(c.SpanFrom(start), StitchBook.InPattern, _context.AmountOf(over));
                }
            }

            c.At = start;
            c.Eat("work");
        }

        c.Eat("the");
        c.Eat("rem|next|foll|last|first");
        if (c.EatNumber() is { } number && c.Eat("st") && c.Eat("of|in|as-set|in-patt"))
        {
            var amount = _context.AmountOf(number);
            Amount? times = null;
            while (!c.IsDone && !c.Is("pm|sm|and"))
            {
                times = TimesReader.TryRead(c, _context) ?? times;
                if (!c.IsDone)
                {
                    c.At++;
                }
            }

            var step = new OperationStep(c.SpanFrom(start), StitchBook.InPattern, times is null ? amount : Product(amount, times));
            return step;
        }

        c.At = start;
        return null;
    }

    private Amount Product(Amount a, Amount b) => a with
    {
        Values = PerSize.Each([.. Enumerable.Range(0, _context.SizeCount).Select(i => a[i] is { } x && b[i] is { } y ? (int?)Math.Clamp((long)x * y, 0, 1_000_000_000) : null)]),
    };

    /// <summary>"With waste yarn k4": the words before the first stitch are a remark.</summary>
    private bool WithStitchesLater(PhraseCursor cursor, List<Step> steps)
    {
        if (!cursor.Is("with|using|in|on|for|over|across|from|the|work|now|turn|this|rs|ws|b|a|mc|cc"))
        {
            return false;
        }

        var start = cursor.At;
        for (var skip = start + 1; skip < cursor.Lexemes.Count; skip++)
        {
            cursor.At = skip;
            if (cursor.Lexemes[skip].Atom.Kind == TokenKind.Word && !cursor.Lexemes[skip].Is("a|in|st|work") && StitchReader.TryRead(cursor, _context) is { } step)
            {
                steps.Add(new RemarkStep(cursor.Lexemes[start].Span));
                steps.Add(step);
                return true;
            }
        }

        return false;
    }

    private void NotUnderstood(PhraseCursor cursor, List<Step> steps)
    {
        var lexeme = cursor.Peek()!;
        var isWholePhrase = cursor.At == 0 && (cursor.Lexemes.Count == 1 || (cursor.Lexemes.Count == 2 && cursor.Lexemes[1].IsNumber));
        if (lexeme.Atom.Kind == TokenKind.Word && (isWholePhrase || NextIsStitch(cursor)) && UnknownWords.LooksLikeStitch(lexeme.Atom.Text, isWholePhrase))
        {
            var other = UnknownWords.OtherCraft(lexeme.Atom.Text, _context.Facts.Craft);
            if (other is not null)
            {
                _context.Bag.Add(RowRules.OtherCraft, lexeme.Atom.Span, $"`{lexeme.Atom.Text}` is {other}, and this is a {UnknownWords.CraftWord(_context.Facts.Craft)} row", "use a stitch of this craft, or define it under `stitches` in the header");
            }
            else
            {
                UnknownWords.Report(lexeme.Atom, _context);
            }

            _hasUnread = true;
            cursor.At += isWholePhrase ? cursor.Lexemes.Count : 1;
            steps.Add(new UnreadStep(lexeme.Span));
            return;
        }

        if (UnknownWords.OtherCraft(lexeme.Atom.Text, _context.Facts.Craft) is { } craft && lexeme.Atom.Kind == TokenKind.Word)
        {
            _context.Bag.Add(RowRules.OtherCraft, lexeme.Atom.Span, $"`{lexeme.Atom.Text}` is {craft}, and this is a {UnknownWords.CraftWord(_context.Facts.Craft)} row", "use a stitch of this craft, or define it under `stitches` in the header");
        }

        var rest = cursor.Lexemes[cursor.At].Span.Cover(cursor.Lexemes[^1].Span);
        cursor.At = cursor.Lexemes.Count;
        Unread(rest, steps);
    }

    private bool NextIsStitch(PhraseCursor cursor)
    {
        if (cursor.At + 1 >= cursor.Lexemes.Count)
        {
            return false;
        }

        var (at, used) = (cursor.At, _context.Used.Count);
        cursor.At++;
        var found = StitchReader.TryRead(cursor, _context) is not null;
        cursor.At = at;
        _context.Used.RemoveRange(used, _context.Used.Count - used);
        return found;
    }

    private void Unread(TextSpan span, List<Step> steps)
    {
        _hasUnread = true;
        steps.Add(new UnreadStep(span));
    }

    private int Group(ImmutableArray<StepNode> nodes, int at, GroupNode group, List<Step> steps, bool isTop)
    {
        var followed = at + 1 < nodes.Length && nodes[at + 1] is PhraseNode { Before: Separator.None } ? (PhraseNode)nodes[at + 1] : null;
        if (group.Body is [PhraseNode inner])
        {
            var lexemes = Vocabulary.Normalise(inner.Atoms);
            if (lexemes.Count <= MostLexemes)
            {
                if ((followed is null || !IsTimes(followed)) && ClaimReader.TryRead(lexemes, _context, inBracket: true) is { } claim)
                {
                    _context.Claims.Add(claim);
                    return at;
                }

                var inside = new PhraseCursor(lexemes);
                if (TimesReader.TryRead(inside, _context) is { } times && inside.IsDone && steps.Count > 0)
                {
                    steps[^1] = new GroupStep(steps[^1].Origin.Cover(group.Span), [steps[^1]], times);
                    return at;
                }
            }
        }

        // "until piece measures 15 in (38 cm) from beg": the length once more.
        if (steps.Count > 0 && steps[^1] is RowsStep && group.Body is [PhraseNode { Atoms: [{ Kind: TokenKind.Number }, ..] } length] && length.Atoms.Length <= 3 && !length.Atoms.Any(a => a.Is("sts") || a.Is("st")))
        {
            return followed is null ? at : at + 1;
        }

        if (group.Body.Length == 2 && ClaimsOnly(group))
        {
            return at;
        }

        // "Knit in front and back of each st (kfb)": the bracket explains what has just been said.
        if (followed is null && group.Before == Separator.None && steps.Count > 0 && steps[^1] is RunStep { To.Extent: Extent.End })
        {
            return at;
        }

        var (findings, hadUnread) = (_context.Bag.Count, _hasUnread);
        var body = Sequence(group.Body, isTop: false);
        if (body.IsEmpty || body.All(s => s is UnreadStep or RemarkStep))
        {
            // A remark in brackets: nothing in it is a stitch.
            if (_context.Bag.Count == findings)
            {
                _hasUnread = hadUnread;
                return at;
            }
        }

        if (followed is null)
        {
            _hasBareGroup |= isTop;
            steps.Add(new GroupStep(group.Span, body, null));
            return at;
        }

        var cursor = new PhraseCursor(Vocabulary.Normalise(followed.Atoms));
        if (cursor.Lexemes.Count > MostLexemes)
        {
            Unread(followed.Span, steps);
            return at + 1;
        }

        steps.Add(WithModifiers(group.Span, body, cursor));
        if (!cursor.IsDone)
        {
            Words(cursor, steps);
        }

        return at + 1;
    }

    private bool ClaimsOnly(GroupNode group)
    {
        var claims = new List<Claim>();
        foreach (var node in group.Body)
        {
            if (node is not PhraseNode phrase || ClaimReader.TryRead(Vocabulary.Normalise(phrase.Atoms), _context, inBracket: true) is not { } claim)
            {
                return false;
            }

            claims.Add(claim);
        }

        _context.Claims.AddRange(claims);
        return true;
    }

    private bool IsTimes(PhraseNode phrase)
    {
        var cursor = new PhraseCursor(Vocabulary.Normalise(phrase.Atoms));
        return TimesReader.TryRead(cursor, _context) is not null || cursor.Is("to|around|across|until");
    }

    private Step WithModifiers(TextSpan span, ImmutableArray<Step> body, PhraseCursor cursor)
    {
        if (cursor.Is("in|into") && (cursor.Is("next|same|first|last|this|center|foll", 1) || (cursor.Is("the", 1) && cursor.Is("next|same|first|last", 2))))
        {
            cursor.At += cursor.Is("the", 1) ? 3 : 2;
            var many = cursor.EatNumber();
            cursor.Eat("st|yo");
            return new InOneStitchStep(span.Cover(cursor.SpanFrom(0)), body, many is null ? TimesReader.TryRead(cursor, _context) : _context.AmountOf(many));
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

        if (TargetReader.TryRead(cursor, _context) is { } target)
        {
            return new RepeatStep(span.Cover(cursor.SpanFrom(0)), body) { To = target };
        }

        var times = TimesReader.TryRead(cursor, _context);
        if (times is null && cursor.IsNumber() && cursor.Is("more", 1))
        {
            times = _context.AmountOf(cursor.EatNumber()!);
        }

        cursor.EatAll("in", "all|total");
        if (times is null)
        {
            _hasBareGroup = true;
        }

        return new GroupStep(cursor.At > 0 ? span.Cover(cursor.SpanFrom(0)) : span, body, times);
    }

    private int Repeat(ImmutableArray<StepNode> nodes, int at, RepeatNode repeat, List<Step> steps)
    {
        var body = Sequence(repeat.Body, isTop: false);
        var cursor = new PhraseCursor(Vocabulary.Normalise(repeat.Extent));
        if (cursor.Lexemes.Count > MostLexemes)
        {
            Unread(repeat.Span, steps);
            return at;
        }

        var step = new RepeatStep(repeat.Span, body);
        if (cursor.IsDone)
        {
            steps.Add(step with { To = new Target(Extent.End) });
            return at;
        }

        if (TargetReader.TryRead(cursor, _context) is { } target)
        {
            step = step with { To = target };
        }
        else
        {
            cursor.Eat("another");
            var saysMore = cursor.At > 0;
            var times = TimesReader.TryRead(cursor, _context);
            if (times is null && cursor.IsNumber() && cursor.Is("more", 1))
            {
                times = _context.AmountOf(cursor.EatNumber()!);
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
                Unread(repeat.Span, steps);
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

            Words(cursor, steps);
        }

        return at;
    }

    /// <summary>"ending k2", "end last rep skp", "ending with yo, k2": to the next full stop.</summary>
    private int Ending(ImmutableArray<StepNode> nodes, int at, PhraseCursor cursor, List<Step> steps)
    {
        cursor.Eat("end");
        var last = cursor.EatAll("last", "rep") || cursor.EatAll("the", "last", "rep");
        cursor.Eat("with|in");
        if (cursor.IsDone || cursor.Is("at|a|row|rs|ws"))
        {
            if (!cursor.IsDone && cursor.Is("at"))
            {
                Unread(nodes[at].Span, steps);
            }

            return at;
        }

        var ending = new List<Step>();
        Words(cursor, ending);
        while (at + 1 < nodes.Length && nodes[at + 1].Before is Separator.Comma or Separator.None or Separator.Semicolon && nodes[at + 1] is PhraseNode or GroupNode)
        {
            at++;
            if (nodes[at] is PhraseNode phrase)
            {
                Words(new PhraseCursor(Vocabulary.Normalise(phrase.Atoms)), ending);
            }
            else
            {
                at = Group(nodes, at, (GroupNode)nodes[at], ending, isTop: false);
            }
        }

        steps[^1] = steps[^1] switch
        {
            RepeatStep repeat => repeat with { Ending = [.. ending], EndsLastRepeat = last },
            RepeatRowsStep rows => rows with { Ending = [.. ending] },
            var other => other,
        };
        return at;
    }
}
