using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads what crochet goes into: a stitch, a named stitch, a chain, a chain space.</summary>
internal static class ThingReader
{
    private const string Bumps = "bump|bumps|hump|humps|ridge|ridges";

    private const string SpaceWords = "sp|sps|space|spaces|loop|loops|lp|lps|arch|arches|sp(s)";

    /// <summary>The thing at the cursor, or null with the cursor unmoved.</summary>
    public static Thing? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var corner = c.Eat("corner|corners");
        if (TryChainLength(c) is { } length)
        {
            if (c.Lexemes[c.At - 1].Norm.Contains("-sp", StringComparison.Ordinal) || c.Lexemes[c.At - 1].Norm.Contains("-l", StringComparison.Ordinal))
            {
                return new Thing(ThingKind.Space, null, length, corner); // "ch-2-sp", "2ch-sp"
            }

            corner |= c.Eat("corner|corners");
            if (c.Eat(SpaceWords) || corner)
            {
                return new Thing(ThingKind.Space, null, length, corner);
            }

            // "in next ch-2": the space that those chains are.
            if (LengthOf(c.Lexemes[c.At - 1]) is not null && (c.IsDone || c.Is("and|then|across|around|to")))
            {
                return new Thing(ThingKind.Space, null, length);
            }

            c.At = start;
            corner = c.Eat("corner|corners");
        }

        if (c.Eat("ch-sp|ch-sps|ch-space|ch-spaces|chsp|ch-loop|ch-lp") || c.EatAll("ch|chain", SpaceWords) || c.Eat(SpaceWords))
        {
            return new Thing(ThingKind.Space, IsCorner: corner | c.Eat("corner|corners"));
        }

        if (c.Eat("ch|chs|chain|chains|ch(s)"))
        {
            c.Eat("st"); // "each ch st"
            return new Thing(ThingKind.Chain);
        }

        if (c.Eat("bar|bars") || c.EatAll("vertical|horizontal", "bar|bars") || c.EatAll("front", "vertical", "bar|bars"))
        {
            return new Thing(ThingKind.Stitch); // Tunisian: the front of a stitch
        }

        if (c.Eat("st|stitch"))
        {
            var at = c.At;
            if (c.Eat("and|or|&") && c.Eat("sp|sps|space|spaces|ch-sp|ch-sps") && !c.Is("between"))
            {
                return new Thing(ThingKind.Any);
            }

            c.At = at;
            return new Thing(ThingKind.Stitch);
        }

        if (Named(c, context) is { } named)
        {
            return named;
        }

        if (corner && (c.IsDone || c.Is("and|then|across|around|to|of")))
        {
            return new Thing(ThingKind.Space, IsCorner: true);
        }

        c.At = start;
        return null;
    }

    private static Thing? Named(PhraseCursor c, RowContext context)
    {
        for (var words = Math.Min(4, c.Lexemes.Count - c.At); words >= 1; words--)
        {
            var name = context.Source.ToString(c.Lexemes[c.At].Span.Cover(c.Lexemes[c.At + words - 1].Span)).TrimEnd('.');
            if (name.Length <= 40 && c.Lexemes[c.At].Atom.Kind == Syntax.TokenKind.Word && context.Book.FindPlural(name) is { Id: not "ch" } operation)
            {
                c.At += words;
                return new Thing(ThingKind.Named, operation);
            }
        }

        return null;
    }

    /// <summary>"ch-3", "3ch", "3-ch", "ch 3": the length of chains that are already there; null with the cursor unmoved.</summary>
    public static int? TryChainLength(PhraseCursor c)
    {
        if (c.Peek() is { } word && LengthOf(word) is { } joined)
        {
            c.At++;
            return joined;
        }

        if (c.Peek()?.Number is { IsList: false, IsOrdinal: false } number && c.Peek(1) is { } ch && (ch.Is("ch") || ch.Is("chain") || ch.Norm is "ch-sp" or "ch-sps" or "ch-space" or "ch-spaces" or "ch-lp" or "ch-lps" or "ch-loop" or "ch-loops"))
        {
            c.At += 2;
            return (int)Math.Min(number.Values[0] ?? 0, 1000);
        }

        if (c.Peek()?.Number is { IsList: false, IsOrdinal: false } dashed && c.Peek(1)?.Atom.Kind == Syntax.TokenKind.Dash && c.Is("ch|chain|ch-sp|ch-sps", 2))
        {
            c.At += 3;
            return (int)Math.Min(dashed.Values[0] ?? 0, 1000);
        }

        if (c.Is("ch|chain") && c.Peek(1)?.Number is { IsList: false } behind)
        {
            c.At += 2;
            return (int)Math.Min(behind.Values[0] ?? 0, 1000);
        }

        return null;
    }

    /// <summary>The length in "ch-3", "ch-2-sp" and "ch3"; null for other words.</summary>
    public static int? LengthOf(Lexeme lexeme)
    {
        var from = lexeme.Norm.StartsWith("ch-", StringComparison.Ordinal) ? 3 : lexeme.Norm.StartsWith("chain-", StringComparison.Ordinal) ? 6 : IsChainsOfSpace(lexeme.Norm) ? 2 : 0;
        if (from == 0)
        {
            return null;
        }

        var number = lexeme.Norm.AsSpan(from);
        var dash = number.IndexOf('-');
        return int.TryParse(dash > 0 ? number[..dash] : number, NumberStyles.None, CultureInfo.InvariantCulture, out var length) ? Math.Min(length, 1000) : null;
    }

    // "ch2-sp"; "ch2" alone are chains made now.
    private static bool IsChainsOfSpace(string norm) => norm.Length > 4 && norm.StartsWith("ch", StringComparison.Ordinal) && char.IsAsciiDigit(norm[2]) && norm.Contains('-', StringComparison.Ordinal);

    /// <summary>Back, front and third loops, posts: they change no count.</summary>
    public static void EatLoops(PhraseCursor c)
    {
        while (!c.IsDone)
        {
            if (c.Eat("blo|flo|bl|fl|blp|flp|tbl|tfl|post|posts") || c.EatAll("back|bottom|top", Bumps) || c.EatAll("the", "back|bottom|top", Bumps) || c.EatAll("back|front|third|both|bottom|free|unused|rem|unworked", "loop|loops|lp|lps") || c.EatAll("back|front", "post|posts|bar")
                || c.EatAll("the", "back|front|third|both|bottom|free|unused", "loop|loops|lp|lps|post") || (c.Is("of|in|behind", 2) && c.EatAll("horizontal|vertical|back", "bar|bars")) || EatOrdinalLoop(c))
            {
                c.Eat("only");
                c.Eat("of|in");
                c.Eat("the");
                continue;
            }

            return;
        }
    }

    private static bool EatOrdinalLoop(PhraseCursor c)
    {
        if (c.Peek()?.Number is not { IsOrdinal: true } || !c.Is("loop|lp", 1))
        {
            return false;
        }

        c.At += 2;
        return true;
    }
}
