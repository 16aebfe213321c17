using System.Buffers;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>The tokens of one stretch, asked for by their places. What a maker does not read as words (addresses, files, code) answers as no word.</summary>
internal sealed class WordRun
{
    private static readonly SearchValues<char> Suspects = SearchValues.Create("`<@/\\.{");

    private readonly SourceText _text;
    private readonly List<Token> _tokens;
    private readonly List<TextSpan> _kept;

    public WordRun(SourceText text, Stretch stretch)
    {
        _text = text;
        Kind = stretch.Kind;
        _tokens = Lexer.Lex(text, stretch.Span);
        _kept = stretch.Kind == StretchKind.Row ? [] : Untouched(text.Text, stretch.Span);
    }

    /// <summary>What kind of words they are.</summary>
    public StretchKind Kind { get; }

    /// <summary>How many tokens there are.</summary>
    public int Count => _tokens.Count;

    /// <summary>True where rows are written, whose words are read by the rules of the notation.</summary>
    public bool IsRow => Kind is StretchKind.Row;

    /// <summary>A token's place.</summary>
    public TextSpan SpanOf(int at) => _tokens[at].Span;

    /// <summary>The kind of a token; <see cref="TokenKind.Other"/> outside the stretch.</summary>
    public TokenKind KindOf(int at) => at < 0 || at >= _tokens.Count ? TokenKind.Other : _tokens[at].Kind;

    /// <summary>True when a blank stands before a token.</summary>
    public bool IsApart(int at) => at < 0 || at >= _tokens.Count || _tokens[at].SpaceBefore;

    /// <summary>A word as it is written; empty for what is no word or must not be touched.</summary>
    public string Word(int at) => KindOf(at) == TokenKind.Word && !IsKept(_tokens[at].Span) ? _text.ToString(_tokens[at].Span) : "";

    /// <summary>A token as it is written, whatever it is; empty outside the stretch.</summary>
    public string Said(int at) => at < 0 || at >= _tokens.Count ? "" : _text.ToString(_tokens[at].Span);

    /// <summary>True when a word is one of those, ignoring case.</summary>
    public bool Is(int at, params ReadOnlySpan<string> words)
    {
        var word = Word(at);
        if (word.Length == 0)
        {
            return false;
        }

        foreach (var one in words)
        {
            if (string.Equals(one, word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when words stand one after the other, parted by blanks or hyphens alone.</summary>
    public bool Are(int at, params ReadOnlySpan<string> words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (!Is(at + i, words[i]) || (i > 0 && !IsApart(at + i)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when a sentence begins at a token, or right after a mark that opens one.</summary>
    public bool BeginsSentence(int at) => at == 0 || KindOf(at - 1) is TokenKind.Stop or TokenKind.Colon or TokenKind.Mark or TokenKind.Open or TokenKind.Dash || Said(at - 1) is "!" or "?" or "_";

    /// <summary>The sentences as first token and number of tokens.</summary>
    public IEnumerable<(int From, int Count)> Sentences()
    {
        var from = 0;
        for (var i = 0; i < _tokens.Count; i++)
        {
            if ((_tokens[i].Kind == TokenKind.Stop && IsApart(i + 1)) || Said(i) is "!" or "?")
            {
                yield return (from, i + 1 - from);
                from = i + 1;
            }
        }

        if (from < _tokens.Count)
        {
            yield return (from, _tokens.Count - from);
        }
    }

    /// <summary>Where to go on behind an address, a file or code that holds a place of the text; the place itself where none does.</summary>
    public int Behind(int offset)
    {
        foreach (var kept in _kept)
        {
            if (kept.Start <= offset && offset < kept.End)
            {
                return kept.End;
            }
        }

        return offset;
    }

    private bool IsKept(TextSpan span)
    {
        foreach (var kept in _kept)
        {
            if (kept.Start <= span.Start && span.Start < kept.End)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Code, addresses of links and pictures, web and mail addresses, tags, files, and names in braces.</summary>
    private static List<TextSpan> Untouched(string text, TextSpan span)
    {
        var kept = new List<TextSpan>();
        if (!text.AsSpan(span.Start, span.Length).ContainsAny(Suspects))
        {
            return kept;
        }

        for (var i = span.Start; i < span.End; i++)
        {
            var close = text[i] switch
            {
                '`' => text.IndexOf('`', i + 1, span.End - i - 1),
                '<' => text.IndexOf('>', i + 1, span.End - i - 1),
                '{' => text.IndexOf('}', i + 1, span.End - i - 1),
                '(' when i > span.Start && text[i - 1] == ']' => text.IndexOf(')', i + 1, span.End - i - 1),
                _ => -1,
            };
            if (close > 0)
            {
                kept.Add(TextSpan.FromBounds(i, close + 1));
                i = close;
            }
            else if (!char.IsWhiteSpace(text[i]) && (i == span.Start || char.IsWhiteSpace(text[i - 1])))
            {
                var end = i;
                while (end < span.End && !char.IsWhiteSpace(text[end]) && text[end] is not '`' and not '<' and not '{' && !(end > span.Start && text[end] == '(' && text[end - 1] == ']'))
                {
                    end++;
                }

                if (IsAddress(text.AsSpan(i, end - i)))
                {
                    kept.Add(TextSpan.FromBounds(i, end));
                    i = end - 1;
                }
            }
        }

        return kept;
    }

    private static bool IsAddress(ReadOnlySpan<char> word)
    {
        word = word.TrimEnd(".,;:!?)").TrimStart("([");
        var dot = word.LastIndexOf('.');
        return word.Contains("://", StringComparison.Ordinal) || word.Contains('@') || word.StartsWith("www.", StringComparison.OrdinalIgnoreCase)
            || (dot > 1 && word.Length - dot is > 2 and < 6 && char.IsAsciiLetter(word[dot - 1]) && char.IsAsciiLetter(word[dot + 1]) && !word.Contains("..", StringComparison.Ordinal));
    }
}
