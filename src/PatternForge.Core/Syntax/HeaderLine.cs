namespace PatternForge.Core.Syntax;

/// <summary>Looks along a line of the header: where words, quotes and brackets end. Offsets are those of the whole file; <c>end</c> is the line's end.</summary>
internal static class HeaderLine
{
    /// <summary>No text of a header that is meant is longer on one line; beyond it nothing is searched for or quoted in a repair.</summary>
    public const int MostSearched = 1000;

    public static bool IsBlank(char c) => c is ' ' or '\t';

    public static bool EndsWord(string text, int at, int end) => at >= end || IsBlank(text[at]);

    public static int SkipBlanks(string text, int at, int end)
    {
        while (at < end && IsBlank(text[at]))
        {
            at++;
        }

        return at;
    }

    // A quote closes where it stands and is neither doubled (') nor after a backslash (").
    public static int CloseOf(string text, char quote, int from, int end)
    {
        for (var at = from; at < end; at++)
        {
            if (quote == '"' && text[at] == '\\')
            {
                at++;
            }
            else if (text[at] == quote)
            {
                if (quote == '\'' && at + 1 < end && text[at + 1] == '\'')
                {
                    at++;
                    continue;
                }

                return at;
            }
        }

        return -1;
    }

    public static bool EndsValue(string text, int at, int end, bool inBrackets)
    {
        var next = SkipBlanks(text, at, end);
        return next >= end
            || (text[next] == '#' && next > at)
            || (text[next] == ':' && EndsWord(text, next + 1, end))
            || (inBrackets && text[next] is ',' or ']' or '}' or ':');
    }

    // The bracket that closes the one at an offset, on the same line, quotes passed over; -1 when there is none.
    public static int MatchingClose(string text, int at, int end)
    {
        end = Math.Min(end, at + (4 * MostSearched));
        var depth = 0;
        for (var i = at; i < end; i++)
        {
            switch (text[i])
            {
                case '"' when i == at || text[i - 1] is ' ' or ',' or '[' or '{':
                    var close = CloseOf(text, '"', i + 1, end);
                    i = close < 0 ? i : close;
                    break;
                case '[' or '{':
                    depth++;
                    break;
                case ']' or '}' when --depth == 0:
                    return i;
                case '#' when i > at && IsBlank(text[i - 1]):
                    return -1;
                default:
                    break;
            }
        }

        return -1;
    }

    public static int GroupEnd(string text, int at, int end)
    {
        var depth = 0;
        for (end = Math.Min(end, at + MostSearched); at < end; at++)
        {
            depth += text[at] switch { '(' => 1, ')' => -1, _ => 0 };
            if (depth == 0)
            {
                return at;
            }
        }

        return -1;
    }

    public static bool IsBlockHead(string text, int at, int end)
    {
        while (at < end && text[at] is '+' or '-' or (>= '0' and <= '9'))
        {
            at++;
        }

        var next = SkipBlanks(text, at, end);
        return next >= end || (text[next] == '#' && next > at);
    }

    public static bool LooksLikeKey(string text, int first, int end)
    {
        var at = first;
        while (at < end && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '-' or '_'))
        {
            at++;
        }

        return at > first && at < end && text[at] == ':' && EndsWord(text, at + 1, end);
    }

    // "82 (90: 94: 102)": a colon between the values of the sizes, inside brackets.
    public static bool IsBetweenSizes(string text, int colon, int from, int end)
    {
        var depth = 0;
        for (var i = from; i < colon; i++)
        {
            depth += text[i] switch { '(' or '[' or '{' => 1, ')' or ']' or '}' => -1, _ => 0 };
        }

        var next = SkipBlanks(text, colon + 1, end);
        return depth > 0 && next < end && (!char.IsLetter(text[next]) || next + 1 >= end || !char.IsAsciiLetterLower(text[next + 1]));
    }
}
