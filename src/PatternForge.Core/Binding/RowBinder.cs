using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>The parts of a row become steps: words are looked up, numbers laid out over the sizes, counts set apart.</summary>
internal sealed class RowBinder
{
    private readonly RowDraft _draft;
    private readonly WordBinder _words;
    private readonly GroupBinder _groups;
    private readonly RepeatBinder _repeats;
    private readonly WholeRows _whole;

    private RowBinder(RowDraft draft)
    {
        _draft = draft;
        _words = new WordBinder(draft);
        _groups = new GroupBinder(draft, this, _words);
        _repeats = new RepeatBinder(draft, this, _words, _groups);
        _whole = new WholeRows(draft, _words);
    }

    /// <summary>What a row's body says.</summary>
    public sealed record Body(ImmutableArray<Step> Steps, ImmutableArray<Claim> Claims, bool HasUnread, TextSpan? BareGroup, bool WantsCount);

    /// <summary>Binds a row's body.</summary>
    public static Body Bind(ImmutableArray<StepNode> nodes, RowContext context)
    {
        context.Claims.Clear();
        context.HasBadNumber = false;
        context.HasChart = false;
        var draft = new RowDraft(context) { HasOpenBracket = nodes.Any(n => GroupBinder.IsOpen(n, context)) };
        if (context.Facts.Craft == Stitches.Craft.Tunisian && !nodes.IsEmpty)
        {
            var whole = nodes[0].Span.Cover(nodes[^1].Span);
            if (TunisianPasses.IsBindOff(nodes))
            {
                return new Body([new BindOffStep(whole, null, null, null)], [], false, null, false);
            }

            var shortened = TunisianPasses.Shorten(nodes);
            if (shortened.IsEmpty)
            {
                return new Body([new RemarkStep(whole)], [], false, null, false); // the return pass by itself
            }

            nodes = shortened;
        }

        var steps = new RowBinder(draft).Sequence(CastOnParts.Split(nodes), isTop: true);
        if (context.IsCrochet && context.Claims.Count > 0 && steps.Length > 0 && steps.All(s => s is RemarkStep or SentenceStep))
        {
            draft.HasUnread = true; // what is said to be worked was not understood
        }

        steps = StepLoops.Mark(StepColours.Mark(steps, context), context);
        return new Body(steps, [.. context.Claims], draft.HasUnread || context.HasBadNumber, draft.BareGroup, draft.WantsCount);
    }

    /// <summary>Binds parts that follow each other, a whole body or what is in a bracket.</summary>
    public ImmutableArray<Step> Sequence(ImmutableArray<StepNode> nodes, bool isTop)
    {
        nodes = _draft.Context.IsCrochet ? ExplainedWords.Join(nodes, _draft.Context) : nodes;
        var steps = new List<Step>();
        var outer = _draft.Sentence;
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

            _draft.Sentence = sentence;
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

                    if (SizedStitchReader.TryRead(nodes, i, _draft.Context) is { } sized)
                    {
                        steps.AddRange(sized);
                        i++;
                        break;
                    }

                    i = Multiplied(nodes, i, steps) ?? Phrase(nodes, i, phrase, steps, isTop, needle);
                    break;
                case GroupNode group:
                    i = _groups.Bind(nodes, i, group, steps, isTop);
                    break;
                case RepeatNode repeat:
                    i = _repeats.Bind(nodes, i, repeat, steps);
                    break;
                case MarkNode mark:
                    if (_draft.HasOpenBracket)
                    {
                        _draft.HasUnread = true; // the bracket that is never closed has been told, and parts the star from its repeat
                    }
                    else if (nodes.Length > 1 && i > 0 && nodes[i - 1] is PhraseNode back && RepeatFolder.SaysRepeat(back))
                    {
                        _draft.Context.Bag.Add(RowSyntaxRules.RepeatWithoutStar, back.Span.Cover(mark.Span), "there is no star to repeat from", "put a star where the repeat begins");
                        _draft.HasUnread = true;
                    }
                    else if (nodes.Length > 1 && mark.Mark == "*")
                    {
                        _draft.Context.Bag.Add(RowSyntaxRules.StarWithoutRepeat, mark.Span, "a star opens a repeat here, but no \"rep from *\" follows", "write \"rep from * to ...\" where the repeat ends, or take the star out");
                        _draft.HasUnread = true;
                    }

                    break;
            }
        }

        WholeRowIfBare(steps, sentence, needle);
        YarnForward(steps);
        if (_draft.Context.IsCrochet)
        {
            CrochetGroupReader.InOneSpace(steps);
            CrochetGroupReader.FirstSkipped(steps);
        }

        if (_draft.Context.IsCrochet && isTop)
        {
            CrochetGroupReader.Together(steps);
        }

        _draft.Sentence = outer;
        return [.. steps];
    }

    /// <summary>"6 x [k1, p1]", "Rep (k1, p1) across": the words before a bracket say how often, or only that it is repeated; null for other words.</summary>
    private int? Multiplied(ImmutableArray<StepNode> nodes, int at, List<Step> steps)
    {
        if (at + 1 >= nodes.Length || nodes[at + 1] is not GroupNode { Before: Separator.None } group)
        {
            return null;
        }

        var cursor = new PhraseCursor(Vocabulary.Normalise(((PhraseNode)nodes[at]).Atoms));
        if (_draft.Context.IsCrochet && CrochetGroupReader.Introduces(cursor) is { } kind)
        {
            return Introduced(nodes, at + 1, group, steps, kind);
        }

        if (_draft.Context.IsCrochet && PlaceFirst.BeforeBracket(cursor, _draft.Context) is { } place)
        {
            steps.Add(new ShellStep(nodes[at].Span.Cover(group.Span), Sequence(group.Body, isTop: false), place));
            return at + 1;
        }

        cursor.At = 0;
        cursor.Eat("then");
        var isRepeat = cursor.Eat("rep|work");
        var times = cursor.IsNumber() && cursor.Is("times", 1) && cursor.Lexemes.Count == cursor.At + 2 ? TimesReader.TryRead(cursor, _draft.Context) : null;
        var isCount = isRepeat && times is not null && group.Body is [PhraseNode { Atoms: [{ Kind: TokenKind.Number }, ..] and { Length: < 3 } }]; // "repeat 6 times (30)"
        if (!cursor.IsDone || (times is null && !isRepeat) || isCount)
        {
            return null;
        }

        var from = steps.Count;
        var last = _groups.Bind(nodes, at + 1, group, steps, isTop: true);
        if (times is not null && steps.Count > from && steps[from] is GroupStep { Times: null } bare)
        {
            steps[from] = bare with { Times = times };
            _draft.BareGroup = _draft.BareGroup is { } span && span == bare.Origin ? null : _draft.BareGroup;
        }

        return last;
    }

    /// <summary>"shell of (3 dc, ch 1, 3 dc) in next sp"; "working (sc, ch 2, sc) in each corner": the words before the bracket say what it is.</summary>
    private int Introduced(ImmutableArray<StepNode> nodes, int at, GroupNode group, List<Step> steps, string kind)
    {
        var from = steps.Count;
        var last = _groups.Bind(nodes, at, group, steps, isTop: true);
        if (steps.Count > from && steps[from] is ShellStep shell)
        {
            steps[from] = kind == "working" && shell.Place.Kind is PlaceKind.Each or PlaceKind.Next ? new InsteadStep(shell.Origin, shell.Body, shell.Place.Thing) : kind == "working" ? shell : shell with { Name = kind };
        }

        return last;
    }

    private static bool IsNeedle(PhraseNode phrase) =>
        (phrase.Atoms.Length == 1 && RowWords.IsNeedle(phrase.Atoms[0])) || (phrase.Atoms is [.., { Kind: TokenKind.Number, Number.IsOrdinal: true }, var noun] && noun.Is("needle") && phrase.Atoms.Length <= 3 && (phrase.Atoms.Length == 2 || phrase.Atoms[0].Is("on")))
        || phrase.Atoms.Length is 2 or 3 && (phrase.Atoms[0].Is("needle") || (phrase.Atoms[0].Is("on") && phrase.Atoms[1].Is("needle"))) && phrase.Atoms[^1].Kind == TokenKind.Number;

    /// <summary>"yf, sl 1, yb" and "yfwd, p1" only move the yarn; "yf, sl 1, k1, psso" makes a stitch (NOTATION, signs that mean two things).</summary>
    private void YarnForward(List<Step> steps)
    {
        for (var i = 0; i + 1 < steps.Count; i++)
        {
            if (steps[i] is not OperationStep { Operation.Id: "yfwd" } forward || steps[i + 1] is not OperationStep next)
            {
                continue;
            }

            var passes = steps.Skip(i + 2).Take(3).Any(s => s is OperationStep { Operation.PassesOver: > 0 });
            if (next.Operation.Gives == Stitches.StitchKind.Purl || (next.Operation.Family == Stitches.Family.Slip && !passes))
            {
                steps[i] = forward with { Operation = _draft.Context.Book.YarnToFront };
            }
        }
    }

    /// <summary>"Knit." alone in its sentence means every stitch.</summary>
    private static void WholeRowIfBare(List<Step> steps, int from, bool needle)
    {
        var working = -1;
        for (var i = from; i < steps.Count; i++)
        {
            if (steps[i] is RemarkStep or SpreadStep or TurnStep or JoinStep or SlideStep or SentenceStep or NeedleStep or CastOnStep or PickUpStep or MarkerStep)
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
        if (lexemes.Count > RowDraft.MostLexemes)
        {
            _draft.Unread(phrase.Span, steps);
            return at;
        }

        if (lexemes is [var word] && Vocabulary.AlternativesContain("note|tip|nb|hint|important", word.Norm) && at + 1 < nodes.Length && nodes[at + 1].Before == Separator.Semicolon)
        {
            // "NOTE: keep edges loose": a remark to the next full stop.
            steps.Add(new RemarkStep(phrase.Span));
            while (at + 1 < nodes.Length && nodes[at + 1].Before != Separator.Stop)
            {
                at++;
            }

            return at;
        }

        if (isTop && MakingUp.Begins(lexemes))
        {
            // "Embroider the eyes between Rnds 7 and 9, eight stitches apart": words to the maker, to the next full stop.
            while (at + 1 < nodes.Length && nodes[at + 1].Before != Separator.Stop)
            {
                at++;
            }

            steps.Add(new RemarkStep(phrase.Span.Cover(nodes[at].Span)));
            return at;
        }

        if (phrase is { Before: Separator.Stop or Separator.Dash or Separator.Semicolon, Atoms: [{ Kind: TokenKind.Number }, _, ..] } && SplitCountReader.TryRead(nodes, at, _draft.Context, out var lastPart) is { } split)
        {
            _draft.Context.Claims.Add(split);
            return lastPart;
        }

        if (at + 2 < nodes.Length && nodes[at + 1].Before == Separator.Semicolon && IsClaimPlace(nodes, at, phrase, isTop) && SplitCountReader.TryReadNumbers(nodes, at, _draft.Context, out var lastSection) is { } sections)
        {
            _draft.Context.Claims.Add(sections);
            return lastSection;
        }

        if (ClaimReader.IsIntroduction(lexemes) && at + 1 < nodes.Length && nodes[at + 1] is PhraseNode { Before: Separator.None or Separator.Semicolon } counted)
        {
            // "Total: 50 sts"
            lexemes.AddRange(Vocabulary.Normalise(counted.Atoms));
            if (ClaimReader.TryRead(lexemes, _draft.Context, introduced: false) is { } total)
            {
                _draft.Context.Claims.Add(total);
                return at + 1;
            }

            lexemes = Vocabulary.Normalise(phrase.Atoms);
        }

        if (_draft.Context.IsCrochet && isTop && steps.Count > 0 && CrochetClaims.TryRemark(nodes, at, phrase, lexemes, _draft.Context))
        {
            return at;
        }

        if (_draft.Context.IsCrochet && IsClaimPlace(nodes, at, phrase, isTop) && CrochetClaims.TrySeveral(lexemes, _draft.Context, introduced: false) is { } several)
        {
            _draft.Context.Claims.AddRange(several);
            return at;
        }

        if (IsClaimPlace(nodes, at, phrase, isTop) && ClaimReader.TryRead(lexemes, _draft.Context, introduced: IsLastNumber(nodes, at, phrase) || IsBehindColon(nodes, at, phrase)) is { } claim)
        {
            if (_draft.Context.IsCrochet && CrochetClaims.IsMinus(phrase, nodes, at, _draft.Context))
            {
                claim = claim with { Kind = ClaimKind.Change, Values = claim.Values.Map(v => -v), Of = null }; // "-6 sts (18)"
            }

            if (needle && steps.Count > 0 && steps[^1] is NeedleStep)
            {
                steps[^1] = new NeedleCountStep(phrase.Span, new Amount(claim.Values, claim.Origin));
            }
            else
            {
                _draft.Context.Claims.Add(claim);
            }

            return at;
        }

        _draft.Context.HasChart |= lexemes.Exists(l => l.Is("chart"));
        ReferenceReader.Check(lexemes, _draft.Context);
        if (isTop && ReferenceReader.IsAsForSection(nodes, at, lexemes, _draft.Context))
        {
            var words = _draft.Context.Source.ToString(phrase.Span).ToLowerInvariant();
            steps.Add(new AsPieceStep(phrase.Span.Cover(nodes[at + 1].Span), PieceReader.NameIn(words, _draft.Context) ?? "") { ToMark = true });
            return at + 1;
        }

        if (isTop && PieceReader.TryBind(phrase, steps, _draft.Context))
        {
            return at;
        }

        var cursor = new PhraseCursor(lexemes);
        if (_draft.Context.IsCrochet && PlaceFirst.TryBind(nodes, at, cursor, steps, _draft.Context, _words) is { } inPlace)
        {
            return inPlace;
        }

        if (cursor.Is("end") && steps.Count > 0 && steps[^1] is RunStep { To.Extent: Extent.End, Operation.Takes: > 0 } run && StitchReader.IsNext(cursor, _draft.Context, cursor.Is("with|in", 1) ? 2 : 1))
        {
            // "p across, ending k3"
            steps[^1] = new RepeatStep(run.Origin, [new OperationStep(run.Origin, run.Operation, null)]) { To = run.To };
        }

        if (_draft.Context.IsCrochet && steps.Count > 0 && CrochetRepeatReader.TryBare(cursor, steps, _draft.Context))
        {
            return at;
        }

        if (_draft.Context.IsCrochet && cursor.Is("end") && !cursor.Is("st", 1) && steps.Count > 0 && steps[^1] is CrochetStep { Place: not null } && cursor.Eat("end"))
        {
            cursor.Eat("with"); // "1 tr into each tr, ending 1 tr into top of 3 ch"
            var ending = steps.Count;
            _words.Bind(cursor, steps);
            if (ending == steps.Count - 1 && steps[ending] is CrochetStep { Place: { Kind: PlaceKind.Last or PlaceKind.Next, Thing.Kind: ThingKind.Stitch or ThingKind.Named } last } && steps[ending - 1] is CrochetStep { Place: { Kind: PlaceKind.Each } whole } each && whole.Until == default)
            {
                // "sc across, ending with 2 sc in last st": all but what the ending takes
                steps[ending - 1] = each with { Place = whole with { Kind = PlaceKind.EachToLast, Until = new Thing(ThingKind.Stitch), Count = last.Count ?? RowContext.Constant(1, last.Origin) } };
            }

            return at;
        }

        if (cursor.Is("end") && steps.Count > 0 && steps[^1] is RepeatStep or RepeatRowsStep && !(_draft.Context.IsCrochet && cursor.Is("st", 1))) // "end st" is a stitch of Tunisian crochet
        {
            return _repeats.Ending(nodes, at, cursor, steps);
        }

        if (isTop && lexemes.Exists(l => l.Is("att")))
        {
            new TogetherReader(_draft.Context).Bind(lexemes, steps, part => Bind(nodes, at, phrase, part, steps));
            return at;
        }

        if (isTop && TogetherReader.TryCondition(cursor, steps, _draft.Context))
        {
            return at;
        }

        if (isTop && _whole.TryBind(nodes, at, phrase, cursor, steps) is { } next)
        {
            return next;
        }

        var from = steps.Count;
        _words.Bind(cursor, steps);
        if (needle)
        {
            OfThisNeedle(steps, from);
        }

        return at;
    }

    /// <summary>Binds a part of a phrase: words for whole rows, else stitches.</summary>
    private void Bind(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, PhraseCursor part, List<Step> steps)
    {
        if (_whole.TryBind(nodes, at, phrase, part, steps) is null)
        {
            _words.Bind(part, steps);
        }
    }

    // "K to end. 79 (85, 91)": numbers alone, the last thing in the row.
    private static bool IsLastNumber(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase) =>
        at > 0 && at == nodes.Length - 1 && phrase is { Before: Separator.Stop or Separator.Dash, Atoms: [{ Kind: TokenKind.Number, Number.IsOrdinal: false }] };

    // "(2 sc, inc) x 6: 24"
    private bool IsBehindColon(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase) =>
        _draft.Context.IsCrochet && at > 0 && at == nodes.Length - 1 && phrase is { Before: Separator.Semicolon, Atoms: [{ Kind: TokenKind.Number, Number.IsOrdinal: false }] };

    private bool IsClaimPlace(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, bool isTop) =>
        _draft.Context.IsCrochet && phrase.Atoms[0].Kind != TokenKind.EqualsSign ? CrochetClaims.IsPlace(nodes, at, isTop, _draft.Context) : phrase.Before is Separator.Stop or Separator.Dash or Separator.Semicolon
        || phrase.Atoms[0].Kind == TokenKind.EqualsSign
        || (phrase.Before == Separator.None && at > 0 && nodes[at - 1] is GroupNode or RepeatNode && phrase.Atoms[^1].Kind == TokenKind.Word)
        || (phrase.Before == Separator.Comma && phrase.Atoms is [{ Kind: TokenKind.Number }, { Kind: TokenKind.Word }, ..] && !nodes.Take(at).Any(n => n is PhraseNode before && IsNeedle(before)))
        || nodes.Length == 1;
}
