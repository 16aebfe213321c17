using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Where a crochet row may state its counts. "24 dc" is a count behind a full stop at the row's end, and one in each of 24 stitches anywhere else.</summary>
internal static class CrochetClaims
{
    /// <summary>True when the phrase at a node may be a count: behind a stop or dash, or behind another count, with no stitches after it.</summary>
    public static bool IsPlace(ImmutableArray<StepNode> nodes, int at, bool isTop, RowContext context)
    {
        var phrase = (PhraseNode)nodes[at];
        if (!isTop)
        {
            return false;
        }

        if (nodes.Length == 1)
        {
            return phrase.Atoms is not [{ Kind: TokenKind.Number }, { Kind: TokenKind.Word }] || ClaimReader.TryRead(Vocabulary.Normalise(phrase.Atoms), context, introduced: false) is { Of: null };
        }

        var follows = (phrase.Before == Separator.Comma && phrase.Atoms[0].Kind == TokenKind.Number && phrase.Atoms.Any(a => a.Is("total") || a.Is("altogether") || a.Is("remain") || a.Is("remaining"))) || phrase.Before is Separator.Stop or Separator.Dash or Separator.Semicolon
            || (phrase.Before == Separator.None && at > 0 && nodes[at - 1] is GroupNode or RepeatNode && phrase.Atoms[^1].Kind == TokenKind.Word)
            || (phrase.Before == Separator.Comma && at > 0 && nodes[at - 1] is PhraseNode { Before: Separator.Stop or Separator.Dash or Separator.Semicolon } && (IsCount(nodes[at - 1], context) || IsBefore(Vocabulary.Normalise(((PhraseNode)nodes[at - 1]).Atoms), context)));
        return (follows || IsLastTotal(nodes, at)) && nodes.Skip(at + 1).All(n => n is not RepeatNode && (n is not PhraseNode next || IsCount(next, context) || !CrochetReader.IsNext(new PhraseCursor(Vocabulary.Normalise(next.Atoms)), context)));
    }

    /// <summary>"..., inc, 29 sts": stitches without a name behind the last comma, in a row that does not say "5 sts" for five of them elsewhere.</summary>
    public static bool IsLastTotal(ImmutableArray<StepNode> nodes, int at) =>
        at > 0 && at == nodes.Length - 1 && nodes[at] is PhraseNode { Before: Separator.Comma or Separator.Semicolon } last && IsStitches(last) && !nodes.Take(at).Any(SaysStitches);

    private static bool SaysStitches(StepNode node) => node switch
    {
        PhraseNode phrase => phrase.Atoms is [{ Kind: TokenKind.Number }, var noun, ..] && IsStitchNoun(noun),
        GroupNode group => group.Body.Any(SaysStitches),
        RepeatNode repeat => repeat.Body.Any(SaysStitches),
        _ => false,
    };

    private static bool IsStitches(PhraseNode phrase) => phrase.Atoms is [{ Kind: TokenKind.Number, Number.IsOrdinal: false }, var noun] && IsStitchNoun(noun);

    private static bool IsStitchNoun(Atom atom) => atom.Is("st") || atom.Is("sts") || atom.Is("stitch") || atom.Is("stitches");

    /// <summary>"18 sc and 6 ch-2 sps", "18 sc/6 ch-2 sps", "6 sc, 18 dc = 24 sts": several counts in one phrase; null when it is anything else.</summary>
    public static List<Claim>? TrySeveral(List<Lexeme> lexemes, RowContext context, bool introduced)
    {
        var claims = new List<Claim>();
        var from = 0;
        for (var i = 0; i <= lexemes.Count; i++)
        {
            if (i < lexemes.Count && !(i > from && (lexemes[i].Norm is "and" or "&" or "+" or "/" or "plus" || lexemes[i].Atom.Kind is TokenKind.EqualsSign or TokenKind.Slash)))
            {
                continue;
            }

            if (i == from || ClaimReader.TryRead(lexemes.GetRange(from, i - from), context, introduced) is not { } claim)
            {
                return null;
            }

            claims.Add(claim);
            from = i + 1;
            introduced = false;
        }

        return claims.Count > 1 ? claims : null;
    }

    /// <summary>Words beside a count that state none to be compared: "4 rnds" behind a dash, "7 dc each side", "24 sts before", "not counting beg ch".</summary>
    public static bool TryRemark(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, List<Lexeme> lexemes, RowContext context)
    {
        var c = new PhraseCursor(lexemes);
        if (phrase.Before == Separator.Comma && context.Claims.Count > 0 && (c.EatAll("not", "counting|including|counted") || c.Eat("excluding|without")))
        {
            context.Claims[^1] = lexemes.Exists(l => l.Norm is "ch" or "chain" or "tch" or "t-ch" || ThingReader.LengthOf(l) is not null) ? context.Claims[^1] with { IsTrusted = false } : context.Claims[^1];
            return true;
        }

        if (phrase.Before is not (Separator.Dash or Separator.Stop or Separator.Semicolon))
        {
            return false;
        }

        return (at == nodes.Length - 1 && c.EatNumber() is not null && c.Eat("row|rnd") && (c.IsDone || c.EatAll("in", "total|all") || c.Eat("total|made"))) || IsPerSide(lexemes, context) || IsBefore(lexemes, context);
    }

    /// <summary>"24 sts before": what stood there, which the row before has told.</summary>
    public static bool IsBefore(List<Lexeme> lexemes, RowContext context) =>
        lexemes.Count is > 1 and < 5 && lexemes[^1].Is("before") && ClaimReader.TryRead(lexemes.GetRange(0, lexemes.Count - 1), context, introduced: true) is not null;

    /// <summary>"7 dc each side", "7 sts along each edge": how many of them lie along one side, which the count does not tell.</summary>
    public static bool IsPerSide(List<Lexeme> lexemes, RowContext context)
    {
        var each = lexemes.FindIndex(l => l.Norm is "each" or "per" or "every");
        if (each < 1 || !lexemes[0].IsNumber || each + 1 >= lexemes.Count || lexemes[each + 1].Norm is not ("side" or "edge" or "corner" or "point" or "segment" or "section" or "wedge" or "petal"))
        {
            return false;
        }

        var upTo = lexemes[each - 1].Norm is "on" or "along" or "in" or "for" or "at" ? each - 1 : each;
        return upTo > 0 && ClaimReader.TryRead(lexemes.GetRange(0, upTo), context, introduced: true) is not null;
    }

    /// <summary>"-6 sts (18)": a minus close to its number, and the count behind it.</summary>
    public static bool IsMinus(PhraseNode phrase, ImmutableArray<StepNode> nodes, int at, RowContext context)
    {
        var start = phrase.Span.Start;
        return at + 1 < nodes.Length && nodes[at + 1] is GroupNode && start > 1 && context.Source.Text[start - 1] is '-' or '−' && !char.IsLetterOrDigit(context.Source.Text[start - 2]);
    }

    private static bool IsCount(StepNode node, RowContext context) => node is PhraseNode phrase && ClaimReader.TryRead(Vocabulary.Normalise(phrase.Atoms), context, introduced: false) is not null;
}
