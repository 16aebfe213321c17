using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Cuts a stretch of an instruction line into tokens. Never fails: what it does not know is <see cref="TokenKind.Other"/>.</summary>
public static class Lexer
{
    private const int LongestQuote = 40;
    private const int MostDots = 32;

    internal const string Fractions = "½⅓⅔¼¾⅛⅜⅝⅞";

    /// <summary>The tokens of a span, in order.</summary>
    public static List<Token> Lex(SourceText source, TextSpan span)
    {
        var tokens = new List<Token>(span.Length / 3);
        Lex(source, span, tokens);
        return tokens;
    }

    /// <summary>Puts the tokens of a span, in order, into a list that is used for one line after the other.</summary>
    public static void Lex(SourceText source, TextSpan span, List<Token> tokens)
    {
        tokens.Clear();
        var text = source.Text;
        var at = span.Start;
        var space = true;
        var quoteEnd = -1;
        while (at < span.End)
        {
            var c = text[at];
            if (char.IsWhiteSpace(c) || c is '\u200B' or '\uFEFF')
            {
                at++;
                space = true;
                continue;
            }

            if (c == '<' && string.CompareOrdinal(text, at, "<!--", 0, 4) == 0)
            {
                at = Remarks.EndOf(text, at, span.End);
                space = true;
                continue;
            }

            if (c == '\\' && at + 1 < span.End && !char.IsLetterOrDigit(text[at + 1]) && !char.IsWhiteSpace(text[at + 1]))
            {
                at++;
                continue;
            }

            if (at == quoteEnd || (c is '“' or '"' && QuoteEnd(text, at, span.End) is > 0 and var close && (quoteEnd = close) > 0))
            {
                at++; // quotes around words say nothing
                space = true;
                continue;
            }

            if (c is '…' or '.' && EllipsisEnd(text, at, span.End) is > 0 and var dots)
            {
                at = dots;
                space = true;
                continue;
            }

            var (kind, end) = Next(text, at, span.End);
            tokens.Add(new Token(kind, TextSpan.FromBounds(at, end), space));
            at = end;
            space = false;
        }
    }

    /// <summary>The closing quote of an opening one before a word; -1 where the sign is an inch mark or never closed.</summary>
    private static int QuoteEnd(string text, int at, int end)
    {
        if ((at > 0 && !char.IsWhiteSpace(text[at - 1]) && text[at - 1] is not ('(' or '[')) || at + 2 >= end || !char.IsLetterOrDigit(text[at + 1]))
        {
            return -1;
        }

        var close = text.AsSpan(at + 1, Math.Min(LongestQuote, end - at - 1)).IndexOfAny('”', '"', '\n');
        return close > 0 && text[at + 1 + close] is not '\n' && (text[at] == '“' || text[at + 1 + close] == '"') ? at + 1 + close : -1;
    }

    /// <summary>"k2, p2, ... to end": dots before the words that say how far, which then say all.</summary>
    private static int EllipsisEnd(string text, int at, int end)
    {
        var dots = at;
        while (dots < end && dots - at < MostDots && text[dots] is '.' or '…')
        {
            dots++;
        }

        if (text[at] == '.' && dots - at < 3)
        {
            return -1;
        }

        var rest = text.AsSpan(dots, end - dots).TrimStart();
        return rest.StartsWith("to ") || rest.StartsWith("across") || rest.StartsWith("around") ? dots : -1;
    }

    private static (TokenKind Kind, int End) Next(string text, int at, int end)
    {
        var c = text[at];
        if (char.IsAsciiDigit(c) || Fractions.Contains(c))
        {
            return (TokenKind.Number, NumberEnd(text, at, end));
        }

        if (char.IsLetter(c))
        {
            return (TokenKind.Word, WordEnd(text, at, end));
        }

        switch (c)
        {
            case ',': return (TokenKind.Comma, at + 1);
            case ';' or '|': return (TokenKind.Semicolon, at + 1);
            case '.': return (TokenKind.Stop, at + 1);
            case '…': return (TokenKind.Stop, at + 1);
            case ':': return (TokenKind.Colon, at + 1);
            case '{' when PlaceholderEnd(text, at, end) is var close and > 0: return (TokenKind.Placeholder, close);
            case '(' or '[' or '{': return (TokenKind.Open, at + 1);
            case ')' or ']' or '}': return (TokenKind.Close, at + 1);
            case '*' or '†' or '‡' or '§' or '°' or '#' when c != '#' || IsMark(text, at, end):
                var stop = at + 1;
                while (stop < end && text[stop] == c)
                {
                    stop++;
                }

                return (TokenKind.Mark, stop);
            case '-' or '–' or '—' or '−' or '‐' or '‑' or '→': return (TokenKind.Dash, at + 1);
            case '/': return (TokenKind.Slash, at + 1);
            case '=': return (TokenKind.EqualsSign, at + 1);
            case '×': return (TokenKind.Times, at + 1);
            case '"' or '”' or '″' or '“': return (TokenKind.Inch, at + 1);
            default:
                return (TokenKind.Other, at + (char.IsHighSurrogate(c) && at + 1 < end && char.IsLowSurrogate(text[at + 1]) ? 2 : 1));
        }
    }

    // "needle #8" and "size # 8" name a size; "#K1, p1" opens a repeat.
    private static bool IsMark(string text, int at, int end)
    {
        var next = at + 1;
        while (next < end && text[next] is ' ' or '#')
        {
            next++;
        }

        return next == end || !char.IsAsciiDigit(text[next]);
    }

    private static int NumberEnd(string text, int at, int end)
    {
        while (at < end && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        if (at + 1 < end && text[at] == '.' && char.IsAsciiDigit(text[at + 1]))
        {
            at++;
            while (at < end && char.IsAsciiDigit(text[at]))
            {
                at++;
            }
        }

        return at < end && Fractions.Contains(text[at]) ? at + 1 : at;
    }

    private static bool IsSpelled(string text, int at, int end) =>
        at + 2 < end && text[at] == '.' && char.IsLetter(text[at + 1]) && text[at + 2] == '.';

    private static int WordEnd(string text, int at, int end)
    {
        var start = at;
        while (at < end)
        {
            var c = text[at];
            if (char.IsLetterOrDigit(c))
            {
                at++;
                continue;
            }

            if (at + 1 < end && Joins(text[at - 1], c, text[at + 1]))
            {
                at += 2;
                continue;
            }

            if (at - start == 1 && IsSpelled(text, at, end))
            {
                // y.o., p.s.s.o.: letters with stops between them are one abbreviation.
                while (IsSpelled(text, at, end))
                {
                    at += 2;
                }

                return at < end && text[at] == '.' ? at + 1 : at;
            }

            break;
        }

        // st(s), rep(s): the plural in brackets belongs to the word.
        return at + 2 < end && text[at] == '(' && text[at + 1] is 's' or 'S' && text[at + 2] == ')' ? at + 3 : at;
    }

    private static bool Joins(char before, char sign, char after) => sign switch
    {
        '\'' or '’' => char.IsLetter(after),
        '&' or '+' or '/' => char.IsLetter(before) && char.IsLetter(after),
        '-' or '‑' => char.IsLetterOrDigit(before) && char.IsLetterOrDigit(after),
        _ => false,
    };

    private static int PlaceholderEnd(string text, int at, int end)
    {
        var close = at + 1;
        while (close < end && (char.IsAsciiLetterOrDigit(text[close]) || text[close] is '-' or '_'))
        {
            close++;
        }

        return close < end && text[close] == '}' && close > at + 1 && char.IsAsciiLetter(text[at + 1]) ? close + 1 : -1;
    }
}
