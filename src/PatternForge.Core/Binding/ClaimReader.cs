using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads stated counts: "(24 sts)", "— 48 (52, 56) sts", "= 48", "48 sts rem", "6 sts dec'd", "you should have 20 sts".</summary>
internal static class ClaimReader
{
    private static readonly Lazy<PhrasePatterns> Introductions = new(() =>
        new(
        [
            "you should|will now? have now? a? total? of? >", "you now? have now? >", "should|now have >", "there should|will now? be now? >", "there are|is now? >", "for a total of >", "a total of >",
            "total st? count? of|is|=? >", "st count of|is|=? >", "count of|is|=? >", "leaving|makes|giving >", "now >",
        ]));

    /// <summary>A claim that takes up the whole phrase, or null. A number alone counts only where its place introduces it: in brackets, behind an equals sign, last in the row.</summary>
    public static Claim? TryRead(List<Lexeme> lexemes, RowContext context, bool introduced)
    {
        var c = new PhraseCursor(lexemes);
        return Read(c, context, introduced) is { } claim && c.IsDone ? claim : null;
    }

    /// <summary>"for a total of 30 sts" and "= 30 sts" inside a phrase; null with the cursor unmoved.</summary>
    public static Claim? TryReadTotal(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Peek()?.Atom.Kind == TokenKind.EqualsSign && Read(c, context, introduced: true) is { } equal && c.IsDone)
        {
            return equal;
        }

        c.At = start;
        if (start > 0 && c.Is("you|there") && Read(c, context, introduced: true) is { } having && c.IsDone)
        {
            return having; // "k2tog. you should now have 30 sts": small letters behind an abbreviation's full stop
        }

        c.At = start;
        c.Eat("for");
        c.Eat("a");
        if (c.EatAll("total", "of") && c.EatNumber() is { } number && c.Eat("st") && !c.Is("times"))
        {
            return Total(number, c, start, context);
        }

        c.At = start;
        return null;
    }

    /// <summary>True for words that only introduce the count behind them: "Total:", "Stitch count:".</summary>
    public static bool IsIntroduction(List<Lexeme> lexemes) =>
        Introductions.Value.Match(lexemes, 0) is { } match && match.End == lexemes.Count;

    private static bool Introduction(PhraseCursor c)
    {
        if (Introductions.Value.Match(c.Lexemes, c.At) is not { } match)
        {
            return false;
        }

        c.At = match.End;
        return true;
    }

    private static Claim? Read(PhraseCursor c, RowContext context, bool introduced)
    {
        if (c.Peek()?.Atom.Kind == TokenKind.EqualsSign)
        {
            c.At++;
            introduced = true;
        }

        var start = c.At;
        introduced |= Introduction(c);
        var sign = c.Eat("+") ? 1 : c.Eat("inc'd") ? 1 : c.Eat("dec'd") ? -1 : 0;
        if (c.EatNumber() is not { } number)
        {
            return null;
        }

        var isLoops = context.Facts.Craft == Craft.Tunisian && c.Eat("loop|loops|lp|lps") && (c.EatAll("on", "hook") || c.EatAll("on", "the", "hook") || c.IsDone);
        if (context.IsCrochet && !isLoops && !c.Is("st") && KindOf(c, context) is { } kind)
        {
            if (kind.Kind == CountedKind.Stitch && c.Is("inc'd|dec'd|inc|dec") && c.Is("each|every|per", 1) && c.Is("row|rnd", 2) && c.Peek(3) is null)
            {
                var isDown = c.Is("dec'd|dec");
                c.At += 3;
                return Change(number, isDown, c, start, context) with { IsEachRow = true }; // "1 sc dec each row"
            }

            var at = c.At;
            var isWhole = Tail(c);
            if (!c.IsDone && !c.Is("and"))
            {
                c.At = at;
            }

            var (kindValues, kindTrusted) = Values(number, context);
            return new Claim(c.SpanFrom(start), ClaimKind.Total, kindValues, kindTrusted && isWhole) { Of = kind };
        }

        var noun = isLoops || c.Eat("st") || c.EatAll("live", "st") || c.EatAll("total", "st") || c.EatAll("heel", "st");
        if (noun && (sign != 0 || c.Is("inc'd|dec'd|inc|dec|more|fewer|less")))
        {
            var down = sign < 0 || c.Is("dec'd|dec|fewer|less");
            c.Eat("inc'd|dec'd|inc|dec|more|fewer|less");
            c.EatAll("in", "total");
            var isEach = c.Eat("each|every|per");
            c.Eat("this");
            c.Eat("row|rnd");
            return c.IsDone ? Change(number, down, c, start, context) with { IsEachRow = isEach } : null;
        }

        if (context.IsCrochet && noun)
        {
            var tail = c.At;
            var isWhole = Tail(c);
            if (c.IsDone)
            {
                var (values, trusted) = Values(number, context);
                return new Claim(c.SpanFrom(start), ClaimKind.Total, values, trusted && isWhole);
            }

            c.At = tail;
        }

        if (!noun && ((!introduced && !c.Is("rem")) || (!c.IsDone && !c.Is("rem|total|on"))))
        {
            return null;
        }

        return Total(number, c, start, context);
    }

    /// <summary>Words behind a crochet count that add nothing: "in the round", "at end of Row 9", "including beg ch". False when they take the turning chain out of it.</summary>
    private static bool Tail(PhraseCursor c)
    {
        const string Words = "rem|total|made|worked|work|altogether|left|now|in|around|across|on|at|per|each|every|all|the|this|end|of|last|after|same|round|hook";
        var start = c.At;
        while (!c.IsDone)
        {
            if (c.Eat("row|rnd"))
            {
                c.EatNumber();
            }
            else if (!c.Eat(Words))
            {
                break;
            }
        }

        if (c.Eat("including|incl|counting|included|with"))
        {
            c.At = c.Lexemes.Count;
            return true;
        }

        var rest = c.At;
        if (c.EatAll("not", "counting|including|counted") || c.Eat("excluding|without"))
        {
            var isChain = c.Lexemes.Skip(c.At).Any(l => l.Norm is "ch" or "chain" or "tch" or "t-ch" || ThingReader.LengthOf(l) is not null);
            c.At = c.Lexemes.Count;
            return !isChain;
        }

        c.At = c.IsDone ? c.At : Math.Max(start, rest);
        return true;
    }

    private static Claim Change(Lexeme number, bool down, PhraseCursor c, int start, RowContext context)
    {
        var (values, trusted) = Values(number, context);
        return new Claim(c.SpanFrom(start), ClaimKind.Change, down ? values.Map(v => -v) : values, trusted);
    }

    /// <summary>"(-2 sts)": the dash before the number takes away.</summary>
    public static Claim? TryReadMinus(List<Lexeme> lexemes, RowContext context)
    {
        var c = new PhraseCursor(lexemes);
        return c.EatNumber() is { } number && (c.IsDone || (c.Eat("st") && c.IsDone)) ? Change(number, down: true, c, 0, context) : null;
    }

    /// <summary>What a crochet count counts: a stitch by its name, a space, a group that the header defines; null for stitches alone.</summary>
    private static Counted? KindOf(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("corner|underarm");
        if (c.Eat("open|solid|filled|closed"))
        {
            c.Eat("mesh|meshes|sp|sps|space|spaces|block|blocks|square|squares");
            return new Counted(CountedKind.Other, "meshes");
        }

        if (c.Eat("picots|picot"))
        {
            return new Counted(CountedKind.Picot, "picots");
        }

        var other = c.Peek() is { Norm: "shells" or "petals" or "clusters" or "popcorns" or "bobbles" or "v-sts" or "groups" or "motifs" or "meshes" or "boxes" or "corners" or "blocks" or "scallops" or "points" or "ridges" or "leaves" or "cl" or "cls" or "pc" or "pcs" or "pops" or "puffs" or "pairs" or "tiles" or "wedges" or "waves" or "cables" or "crosses" or "stars" or "bars" or "rings" or "eyelets" or "spokes" or "fans" or "arches" } word && context.Book.FindPlural(word.Atom.Text) is null;
        if (other)
        {
            c.At++;
            var said = c.Lexemes[c.At - 1].Norm;
            c.At = c.Is("of") ? c.Lexemes.Count : c.At; // "8 groups of 3 dc"
            return new Counted(CountedKind.Other, said);
        }

        if (ThingReader.TryRead(c, context) is { Kind: not ThingKind.Stitch and not ThingKind.Any } thing)
        {
            return thing.Kind switch
            {
                ThingKind.Named when thing.Named is { Id: "inc" or "dec" or "invdec" } change => new Counted(CountedKind.Other, change.Id), // "6 decreases"
                ThingKind.Space => new Counted(CountedKind.Space, thing.Length is { } length ? $"ch-{length} sp" : "chain space") { Length = thing.Length },
                ThingKind.Chain => new Counted(CountedKind.Chain, "ch"),
                _ when context.Book.ShellOf(thing.Named!) is not null => new Counted(CountedKind.Group, thing.Named!.Id) { Stitch = thing.Named },
                _ => new Counted(CountedKind.Stitch, CrochetNames.Of(thing.Named!, context.Terms)) { Stitch = thing.Named },
            };
        }

        c.At = start;
        return null;
    }

    private static Claim? Total(Lexeme number, PhraseCursor c, int start, RowContext context)
    {
        while (c.Eat("rem|total|altogether|left|now|in") || c.EatAll("on", "the", "needle") || c.EatAll("on", "needle") || c.EatAll("on", "your", "needle") || c.EatAll("for", "each", "needle")
            || c.EatAll("on", "last", "row|rnd"))
        {
        }

        var (values, trusted) = Values(number, context);
        return new Claim(c.SpanFrom(start), ClaimKind.Total, values, trusted);
    }

    /// <summary>The values of a claim; a list of the wrong length is one finding and the claim is otherwise ignored.</summary>
    private static (PerSize<int?> Values, bool Trusted) Values(Lexeme number, RowContext context)
    {
        if (number.Atom.Kind == TokenKind.Placeholder)
        {
            return (context.AmountOf(number).Values, true);
        }

        var bad = context.HasBadNumber;
        var spread = context.Spread(number.Number!);
        context.HasBadNumber = bad;
        return spread is null ? (PerSize.Shared<int?>(null), false) : (spread, true);
    }
}
