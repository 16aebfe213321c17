using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Puts numbers and their size lists together: tokens in, atoms out.</summary>
public sealed class NumberFolder
{
    private static readonly Dictionary<string, int> NumberWords = new[]
        {
            "nought", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
        }
        .Select((word, value) => (word, value))
        .Concat(new[] { "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety" }.Select((word, ten) => (word, value: 10 * (ten + 2))))
        .ToDictionary(pair => pair.word, pair => pair.value, StringComparer.OrdinalIgnoreCase);

    private const decimal Greatest = 1_000_000_000_000_000m;

    private const int MostKept = 4_096;

    private static readonly SourceText Nothing = new("", "");
    private static readonly List<Token> NoTokens = [];

    // The lists of a folder that has done its line serve the next one of the same thread.
    [ThreadStatic]
    private static NumberFolder? _spare;

    private readonly List<Atom> _atoms = [];
    private SourceText _source;
    private List<Token> _tokens;

    // Values on their way: of the number being read, of a bracket behind it, and of a chain of signs.
    private readonly List<decimal?> _values = [];
    private readonly List<decimal?> _inside = [];
    private readonly List<decimal?> _chained = [];

    private NumberFolder(SourceText source, List<Token> tokens)
    {
        _source = source;
        _tokens = tokens;
    }

    /// <summary>The atoms of the line that was folded; until <see cref="Release"/>.</summary>
    public List<Atom> Atoms => _atoms;

    /// <summary>Folds the tokens of one line. The folder is to be released once its atoms have been read.</summary>
    public static NumberFolder Fold(SourceText source, List<Token> tokens)
    {
        var folder = _spare ?? new NumberFolder(source, tokens);
        _spare = null;
        (folder._source, folder._tokens) = (source, tokens);
        var at = 0;
        while (at < tokens.Count)
        {
            at = folder.One(at);
        }

        return folder;
    }

    /// <summary>Gives the lists back for the next line.</summary>
    public void Release()
    {
        if (_atoms.Capacity <= MostKept)
        {
            _atoms.Clear();
            (_source, _tokens) = (Nothing, NoTokens);
            _spare = this;
        }
    }

    private ReadOnlySpan<char> TextOf(int at) => _source.Slice(_tokens[at].Span);

    private Spelling SpellingOf(int at) => Spelling.Of(TextOf(at));

    private decimal ValueOf(int at) => SpellingOf(at).Value ?? 0;

    private List<decimal?> Values(params ReadOnlySpan<decimal?> first)
    {
        _values.Clear();
        _values.AddRange(first);
        return _values;
    }

    private bool IsKind(int at, TokenKind kind) => at < _tokens.Count && _tokens[at].Kind == kind;

    private int One(int at)
    {
        var token = _tokens[at];
        var spelling = SpellingOf(at);
        switch (token.Kind)
        {
            case TokenKind.Number:
                return Number(at);
            case TokenKind.Word when spelling.Value is { } value && !IsKind(at + 1, TokenKind.Dash):
                return Finish(at, at + 1, Values(value), isOrdinal: false, isWord: true);
            case TokenKind.Word when char.IsAsciiDigit(spelling.Text[^1]) && IsKind(at + 1, TokenKind.Open) && TrailingValue(spelling.Text) is { } trailing:
                var values = Values(trailing);
                var after = Groups(at + 1, values);
                if (after > at + 1)
                {
                    var span = token.Span.Cover(_tokens[after - 1].Span);
                    _atoms.Add(new Atom(TokenKind.Word, span, spelling, token.SpaceBefore, new SizedNumber([.. values], span)));
                    return after;
                }

                break;
            case TokenKind.Dash when (token.SpaceBefore || IsBehindPlainStitch(at)) && IsKind(at + 1, TokenKind.Open):
                // " - (12, 13)", "k–(12, 13)": the first size skips it.
                var skipFirst = Values((decimal?)null);
                var end = Groups(at + 1, skipFirst);
                if (end > at + 1 && skipFirst.Count > 2)
                {
                    return Add(at, end, skipFirst, isOrdinal: false, isWord: false);
                }

                break;
            case TokenKind.Open:
                var bare = Values();
                var close = ListIn(at, bare);
                if (close > 0 && bare.Count > 1)
                {
                    // "6, (6- 7- 8- 9) sts": a stray comma before the list.
                    if (_atoms.Count > 1 && _atoms[^1].Kind == TokenKind.Comma && _atoms[^2] is { Number.IsList: false } first
                        && IsKind(close, TokenKind.Word) && SpellingOf(close).Text.ToLowerInvariant() is "sts" or "st" or "stitches" or "stitch")
                    {
                        _atoms.RemoveRange(_atoms.Count - 2, 2);
                        var span = first.Span.Cover(_tokens[close - 1].Span);
                        _atoms.Add(new Atom(first.Kind, span, first.Spelling, first.SpaceBefore, new SizedNumber([.. first.Number!.Values, .. bare], span)));
                        return close;
                    }

                    return Add(at, close, bare, isOrdinal: false, isWord: false);
                }

                break;
        }

        _atoms.Add(new Atom(token.Kind, token.Span, spelling, token.SpaceBefore));
        return at + 1;
    }

    private bool IsBehindPlainStitch(int at) => at > 0 && TextOf(at - 1) is "k" or "K" or "p" or "P";

    private int Number(int at)
    {
        var values = Values(ValueOf(at));
        var next = at + 1;

        // 6 1/2: a whole number and a fraction with a known divisor.
        if (FractionAt(next) is { } fraction && values[0] == decimal.Truncate(values[0]!.Value) && _tokens[next].SpaceBefore)
        {
            values[0] += fraction;
            next += 3;
        }

        var isOrdinal = false;
        if (IsKind(next, TokenKind.Word) && !_tokens[next].SpaceBefore && IsOrdinalEnd(TextOf(next)) && FitsOrdinal(values[0], TextOf(next)))
        {
            isOrdinal = true;
            next++;
        }

        return Finish(at, next, values, isOrdinal, isWord: false);
    }

    private int Finish(int at, int next, List<decimal?> values, bool isOrdinal, bool isWord)
    {
        var grouped = Groups(next, values);
        if (grouped == next && !isOrdinal)
        {
            grouped = Chain(next, TokenKind.Dash, values);
            grouped = grouped == next ? Chain(next, TokenKind.Slash, values) : grouped;
        }

        return Add(at, grouped, values, isOrdinal, isWord);
    }

    private int Add(int at, int next, List<decimal?> values, bool isOrdinal, bool isWord)
    {
        var span = _tokens[at].Span.Cover(_tokens[next - 1].Span);
        _atoms.Add(new Atom(TokenKind.Number, span, SpellingOf(at), _tokens[at].SpaceBefore, new SizedNumber([.. values], span, isOrdinal, isWord)));
        return next;
    }

    /// <summary>Reads <c>(88, 96) [104]</c> after a first value; returns where it ends, or where it began if nothing fits.</summary>
    private int Groups(int at, List<decimal?> values)
    {
        while (IsKind(at, TokenKind.Open))
        {
            _inside.Clear();
            var close = ListIn(at, _inside);
            if (close < 0)
            {
                break;
            }

            values.AddRange(_inside);
            at = close;
        }

        return at;
    }

    /// <summary>Reads a bracket that holds nothing but values; returns the place after it, or -1.</summary>
    private int ListIn(int open, List<decimal?> values)
    {
        var at = open + 1;
        var expectValue = true;
        while (at < _tokens.Count)
        {
            switch (_tokens[at].Kind)
            {
                case TokenKind.Close when !expectValue && values.Count > 0 && Matches(open, at):
                    return at + 1;
                case TokenKind.Number when expectValue:
                    decimal? value = ValueOf(at);
                    at++;
                    if (FractionAt(at) is { } fraction)
                    {
                        value += fraction;
                        at += 3;
                    }

                    if (IsKind(at, TokenKind.Word) && !_tokens[at].SpaceBefore && IsOrdinalEnd(TextOf(at)))
                    {
                        at++;
                    }

                    values.Add(value);
                    expectValue = false;
                    break;
                case TokenKind.Word when expectValue && SpellingOf(at).Value is { } spelt:
                    values.Add(spelt);
                    expectValue = false;
                    at++;
                    break;
                case TokenKind.Dash when expectValue:
                    values.Add(null);
                    expectValue = false;
                    at++;
                    break;
                case TokenKind.Comma or TokenKind.Colon or TokenKind.Semicolon or TokenKind.Slash or TokenKind.Dash when !expectValue:
                    expectValue = true;
                    at++;
                    break;
                default:
                    return -1;
            }
        }

        return -1;
    }

    /// <summary>Reads <c>-100-108</c> or <c>/66/72</c> without blanks, two more values at least.</summary>
    private int Chain(int at, TokenKind sign, List<decimal?> values)
    {
        var end = at;
        _chained.Clear();
        while (IsKind(end, sign) && IsKind(end + 1, TokenKind.Number) && !_tokens[end].SpaceBefore && !_tokens[end + 1].SpaceBefore)
        {
            _chained.Add(ValueOf(end + 1));
            end += 2;
        }

        if (_chained.Count < 2)
        {
            return at;
        }

        values.AddRange(_chained);
        return end;
    }

    private bool Matches(int open, int close) => (_source.Text[_tokens[open].Span.Start], _source.Text[_tokens[close].Span.Start]) is ('(', ')') or ('[', ']') or ('{', '}');

    private decimal? FractionAt(int at)
    {
        if (!IsKind(at, TokenKind.Number) || !IsKind(at + 1, TokenKind.Slash) || !IsKind(at + 2, TokenKind.Number))
        {
            return null;
        }

        var (over, under) = (ValueOf(at), ValueOf(at + 2));
        return under is 2 or 3 or 4 or 8 && over < under && over > 0 ? over / under : null;
    }

    /// <summary>True for what makes a number an ordinal: the end of 1st, 2nd, 3d and 4th.</summary>
    public static bool IsOrdinalEnd(ReadOnlySpan<char> text) => text is "st" or "nd" or "rd" or "th" or "d" or "D" or "ST" or "ND" or "RD" or "TH";

    // "2st" is two stitches, "1st" the first.
    private static bool FitsOrdinal(decimal? value, ReadOnlySpan<char> end) => !end.Equals("st", StringComparison.OrdinalIgnoreCase) || (value % 10 == 1 && value % 100 != 11);

    /// <summary>True for what a number begins with.</summary>
    internal static bool IsNumber(char first) => char.IsAsciiDigit(first) || Lexer.Fractions.Contains(first, StringComparison.Ordinal);

    /// <summary>The value of a number in letters; null for other words.</summary>
    internal static decimal? WordValue(string text)
    {
        if (text.Length is < 3 or > 15)
        {
            return null;
        }

        if (NumberWords.TryGetValue(text, out var value))
        {
            return value;
        }

        var hyphen = text.IndexOf('-', StringComparison.Ordinal);
        return hyphen > 0 && NumberWords.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(text.AsSpan(0, hyphen), out var tens) && tens >= 20 && WordValue(text[(hyphen + 1)..]) is > 0 and < 10 and var ones
            ? tens + ones
            : null;
    }

    private static decimal? TrailingValue(string word)
    {
        var start = word.Length;
        while (start > 0 && char.IsAsciiDigit(word[start - 1]))
        {
            start--;
        }

        return word.Length - start <= 9 ? decimal.Parse(word.AsSpan(start), NumberStyles.None, CultureInfo.InvariantCulture) : null;
    }

    /// <summary>The value of a number token; a number too long to hold counts as the greatest there is.</summary>
    public static decimal ValueOf(string text)
    {
        var fraction = text[^1] switch
        {
            '½' => 1m / 2,
            '⅓' => 1m / 3,
            '⅔' => 2m / 3,
            '¼' => 1m / 4,
            '¾' => 3m / 4,
            '⅛' => 1m / 8,
            '⅜' => 3m / 8,
            '⅝' => 5m / 8,
            '⅞' => 7m / 8,
            _ => 0m,
        };
        var digits = fraction > 0 ? text[..^1] : text;
        if (digits.Length == 0)
        {
            return fraction;
        }

        return decimal.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value < Greatest ? value + fraction : Greatest;
    }
}
