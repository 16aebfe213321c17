using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>
/// A first look at the header's characters, before they are read as YAML: finds remarks and the lines where a key begins, and what a
/// designer writes as plain text though YAML takes it for something else. Such characters are masked one for one, so that every
/// offset stays true and the text is read as it was meant.
/// </summary>
internal sealed class HeaderScan
{
    private const string Maskable = ":[]{},*&!%@`\"'#|>?";

    // No text of a header that is meant is longer on one line; beyond it nothing is searched for or quoted in a repair.
    private const int MostSearched = 1000;

    // What a header full of noise is told at most.
    private const int MostFindings = 200;

    private readonly SourceText _source;
    private readonly FindingBag _bag;
    private readonly string _text;
    private readonly int _start;
    private readonly char[] _masked;
    private readonly char _base;
    private readonly List<TextSpan> _remarks = [];
    private readonly List<int> _keyLines = [];
    private readonly List<Edit> _tabs = [];
    private int _quoteStart = -1;
    private int _flowDepth;
    private int _blockIndent = -1;
    private bool _quoteIsOpen;
    private int _told;

    private HeaderScan(SourceText source, TextSpan header, FindingBag bag)
    {
        (_source, _bag, _text, _start) = (source, bag, source.Text, header.Start);
        _masked = source.Slice(header).ToArray();
        _base = FreeLetters(_masked);
        for (var at = header.Start; at < header.End;)
        {
            var line = FileSplitter.LineAt(_text, at);
            Line(TextSpan.FromBounds(at, Math.Min(line.End, header.End)));
            at = FileSplitter.AfterLineEnd(_text, line.End);
        }

        LeaveQuoteOpen();
        for (var i = 0; i < _masked.Length; i++)
        {
            _masked[i] = _masked[i] switch
            {
                '\t' or '\u0085' or '\u2028' or '\u2029' or '\uFEFF' => ' ',
                < ' ' and not ('\n' or '\r') => '\uFFFD',
                var c => c,
            };
        }

        if (_tabs.Count > 0)
        {
            bag.Add(new Finding(SyntaxRules.TabInHeader, source, _tabs[0].Span, _tabs.Count == 1 ? "this line is set in with a tab" : $"this line and {_tabs.Count - 1} more are set in with tabs")
            {
                Help = "set header lines in with blanks, two for each step",
                Fix = new Fix("Replace the tabs by blanks", [.. _tabs]),
            });
        }
    }

    /// <summary>The header's characters with the masked ones replaced; as long as the header.</summary>
    public char[] Masked => _masked;

    /// <summary>Where the header starts in the file.</summary>
    public int Start => _start;

    /// <summary>Remarks, from their <c>#</c> to the end of the line, in the whole file.</summary>
    public ImmutableArray<TextSpan> Remarks => [.. _remarks];

    /// <summary>Offsets in the whole file of the lines where a key of the header itself begins.</summary>
    public IReadOnlyList<int> KeyLines => _keyLines;

    /// <summary>Looks through a header.</summary>
    public static HeaderScan Of(SourceText source, TextSpan header, FindingBag bag) => new(source, header, bag);

    /// <summary>A text read from the masked header with its own characters put back.</summary>
    public string Unmask(string text)
    {
        if (!text.AsSpan().ContainsAnyInRange(_base, (char)(_base + Maskable.Length - 1)))
        {
            return text;
        }

        return string.Create(text.Length, (text, letters: _base), static (to, from) =>
        {
            for (var i = 0; i < to.Length; i++)
            {
                var mask = from.text[i] - from.letters;
                to[i] = mask >= 0 && mask < Maskable.Length ? Maskable[mask] : from.text[i];
            }
        });
    }

    private static char FreeLetters(ReadOnlySpan<char> text)
    {
        for (var first = '\uE000'; first < '\uF8E0'; first += ' ')
        {
            if (!text.ContainsAnyInRange(first, (char)(first + Maskable.Length - 1)))
            {
                return first;
            }
        }

        return '\uE000';
    }

    private void Mask(int at) => _masked[at - _start] = (char)(_base + Maskable.IndexOf(_text[at]));

    private static bool IsBlank(char c) => c is ' ' or '\t';

    private bool EndsWord(int at, int end) => at >= end || IsBlank(_text[at]);

    private int SkipBlanks(int at, int end)
    {
        while (at < end && IsBlank(_text[at]))
        {
            at++;
        }

        return at;
    }

    private void Line(TextSpan line)
    {
        var first = SkipBlanks(line.Start, line.End);
        if (first == line.End)
        {
            return;
        }

        var at = first;
        if (_quoteStart >= 0)
        {
            var close = CloseOf(_text[_quoteStart], line.Start, line.End);
            if (LooksLikeKey(first, line.End) && (close < 0 || (first == line.Start && !EndsValue(close + 1, line.End))))
            {
                LeaveQuoteOpen();
            }
            else if (close < 0)
            {
                return;
            }
            else
            {
                _quoteStart = -1;
                Tokens(line, close + 1, -1);
                return;
            }
        }

        if (_blockIndent >= 0)
        {
            if (first - line.Start > _blockIndent)
            {
                return;
            }

            _blockIndent = -1;
        }

        if (_flowDepth > 0 && first == line.Start && LooksLikeKey(first, line.End))
        {
            _flowDepth = 0;
        }

        var tab = _text.AsSpan(line.Start, first - line.Start).IndexOf('\t');
        if (tab >= 0)
        {
            var last = _text.AsSpan(line.Start, first - line.Start).LastIndexOf('\t');
            var tabs = TextSpan.FromBounds(line.Start + tab, line.Start + last + 1);
            _tabs.Add(new Edit(tabs, new string(' ', 2 * _text.AsSpan(tabs.Start, tabs.Length).Count('\t') + _text.AsSpan(tabs.Start, tabs.Length).Count(' '))));
        }

        Tokens(line, at);
    }

    private void LeaveQuoteOpen()
    {
        if (_quoteStart < 0)
        {
            return;
        }

        var (open, end) = (_quoteStart, FileSplitter.LineAt(_text, _quoteStart).End);
        _quoteStart = -1;
        Tell(new Finding(SyntaxRules.UnclosedQuote, _source, FileSplitter.Trimmed(_text, TextSpan.FromBounds(open, end)), $"the {Quoted(_text[open])} that opens here is never closed")
        {
            Help = "close it at the end of the text, or leave it out",
        });
        Mask(open);
        var start = open;
        while (start > _start && _text[start - 1] is not ('\n' or '\r'))
        {
            start--;
        }

        // What else is odd about the line comes from the open quote.
        _quoteIsOpen = true;
        Tokens(TextSpan.FromBounds(start, end), open + 1, open);
        _quoteIsOpen = false;
    }

    private static string Quoted(char quote) => quote == '"' ? "`\"`" : "`'`";

    // What a line says, token by token. A token starts after a key's colon, after a list's dash, and in brackets after a comma.
    // Where a quoted text came before, "goingOn" is the offset of the text that goes on, or -1.
    private void Tokens(TextSpan line, int at, int? goingOn = null)
    {
        var afterQuote = goingOn is not null;
        var (start, end) = (line.Start, line.End);
        var tokenStarts = !afterQuote;
        var valueSeen = afterQuote;
        var keyColumn = SkipBlanks(start, end) - start;
        var dashColumn = keyColumn;
        var keyIsBare = true;
        var plain = goingOn ?? -1;
        var colons = new List<int>();
        while (at < end)
        {
            var c = _text[at];
            if (IsBlank(c))
            {
                at++;
                continue;
            }

            if (c == '#' && (at == start || IsBlank(_text[at - 1])))
            {
                if (plain >= 0 && _flowDepth == 0 && valueSeen && at + 1 < end && char.IsAsciiDigit(_text[at + 1]))
                {
                    Swallowed(at, plain, end);
                    Mask(at++);
                    continue;
                }

                _remarks.Add(TextSpan.FromBounds(at, end));
                end = at;
                break;
            }

            if (tokenStarts)
            {
                tokenStarts = false;
                if (c == '-' && _flowDepth == 0 && !valueSeen && EndsWord(at + 1, end))
                {
                    dashColumn = at - start;
                    tokenStarts = true;
                    keyIsBare = false;
                    at++;
                    keyColumn = SkipBlanks(at, end) - start;
                    continue;
                }

                if (c is '"' or '\'')
                {
                    var close = CloseOf(c, at + 1, end);
                    if (close < 0 && _flowDepth > 0 && c == '\'')
                    {
                        Mask(at++);
                        continue;
                    }

                    if (close < 0)
                    {
                        _quoteStart = at;
                        return;
                    }

                    if (EndsValue(close + 1, end))
                    {
                        at = close + 1;
                        continue;
                    }

                    NeedsQuotes(TextSpan.FromBounds(at, close + 1), at, end, "the text goes on after its closing quote");
                    Mask(at);
                    plain = at++;
                    continue;
                }

                if (_flowDepth == 0 && c is '[' or '{')
                {
                    var close = MatchingClose(at, end);
                    if (_flowDepth == 0 && close > 0 && !EndsValue(close + 1, end))
                    {
                        Mask(at);
                        plain = at++;
                        continue;
                    }
                }
                else if (_flowDepth == 0 && c is '|' or '>' && IsBlockHead(at + 1, end))
                {
                    _blockIndent = valueSeen ? keyColumn : dashColumn;
                    at++;
                    continue;
                }
                else if (c is '*' or '&' or '!')
                {
                    Reference(at, end);
                    plain = at;
                    Mask(at++);
                    continue;
                }
                else if (c is '@' or '`' or '%' || (_flowDepth == 0 && c is ',' or ']' or '}' or '|' or '>'))
                {
                    NeedsQuotes(new TextSpan(at, 1), at, end, $"a text that begins with `{(c == '`' ? "backtick" : c.ToString())}` needs quotes around it");
                    Mask(at);
                    plain = at++;
                    continue;
                }

                plain = c is '[' or '{' ? -1 : at;
            }

            if (c == '(' && _flowDepth > 0 && GroupEnd(at, end) is > 0 and var group)
            {
                at = MaskGroup(at, group);
                continue;
            }

            if (c is '[' or '{' && (_flowDepth > 0 || plain < 0))
            {
                _flowDepth++;
                tokenStarts = true;
            }
            else if (_flowDepth > 0 && c is ']' or '}')
            {
                _flowDepth--;
                plain = -1;
            }
            else if (_flowDepth > 0 && c == ',')
            {
                tokenStarts = true;
                plain = -1;
            }
            else if (c == ':' && (EndsWord(at + 1, end) || (_flowDepth > 0 && _text[at + 1] is ',' or ']' or '}')))
            {
                if (_flowDepth > 0 || !valueSeen)
                {
                    if (_flowDepth == 0 && keyIsBare && keyColumn == 0)
                    {
                        _keyLines.Add(start);
                    }

                    valueSeen |= _flowDepth == 0;
                    tokenStarts = true;
                    plain = -1;
                }
                else if (plain >= 0)
                {
                    colons.Add(at);
                }
            }

            at++;
        }

        var told = false;
        foreach (var colon in colons)
        {
            if (!told && colon - plain < MostSearched && !IsBetweenSizes(colon, plain, end))
            {
                told = true;
                NeedsQuotes(new TextSpan(colon, 1), plain, end, "a text with a colon and a blank in it needs quotes around it");
            }

            Mask(colon);
        }
    }

    private void Tell(Finding finding)
    {
        if (_told++ < MostFindings)
        {
            _bag.Add(finding);
        }
    }

    private void NeedsQuotes(TextSpan place, int from, int to, string message)
    {
        if (_quoteIsOpen)
        {
            return;
        }

        var value = FileSplitter.Trimmed(_text, TextSpan.FromBounds(from, to));
        Tell(new Finding(SyntaxRules.TextNeedsQuotes, _source, place, message)
        {
            Help = "it was read as plain text; other programs may stumble over it",
            Fix = _flowDepth == 0 ? Quote(value) : null,
        });
    }

    private void Swallowed(int at, int from, int to)
    {
        var value = FileSplitter.Trimmed(_text, TextSpan.FromBounds(from, to));
        var word = at;
        while (word < to && !IsBlank(_text[word]))
        {
            word++;
        }

        Tell(new Finding(SyntaxRules.NumberSignInText, _source, TextSpan.FromBounds(at, word), $"`{_text[at..word]}` would be read as a remark, as everything after a blank and `#` is")
        {
            Help = "put the whole text in quotes",
            Fix = Quote(value),
        });
    }

    private void Reference(int at, int end)
    {
        var word = at + 1;
        while (word < end && word < at + MostSearched && !IsBlank(_text[word]) && !(_flowDepth > 0 && _text[word] is ',' or ']' or '}'))
        {
            word++;
        }

        var value = FileSplitter.Trimmed(_text, TextSpan.FromBounds(at, end));
        Tell(new Finding(SyntaxRules.YamlReference, _source, TextSpan.FromBounds(at, word), $"`{_text[at]}` at the start of a text has a meaning of its own in YAML that the header does not use")
        {
            Help = "put the text in quotes; say what is meant in full each time",
            Fix = _flowDepth == 0 ? Quote(value) : Quote(TextSpan.FromBounds(at, word)),
        });
    }

    private Fix? Quote(TextSpan value)
    {
        if (value.Length > MostSearched)
        {
            return null;
        }

        var said = _text.Substring(value.Start, value.Length);
        var quote = !said.Contains('"', StringComparison.Ordinal) && !said.Contains('\\', StringComparison.Ordinal) ? '"' : '\'';
        return said.Contains(quote, StringComparison.Ordinal) ? null : new Fix("Put quotes around the text", [new Edit(value, quote + said + quote)]);
    }

    // A quote closes where it stands and is neither doubled (') nor after a backslash (").
    private int CloseOf(char quote, int from, int end)
    {
        for (var at = from; at < end; at++)
        {
            if (quote == '"' && _text[at] == '\\')
            {
                at++;
            }
            else if (_text[at] == quote)
            {
                if (quote == '\'' && at + 1 < end && _text[at + 1] == '\'')
                {
                    at++;
                    continue;
                }

                return at;
            }
        }

        return -1;
    }

    private bool EndsValue(int at, int end)
    {
        var next = SkipBlanks(at, end);
        return next >= end
            || (_text[next] == '#' && next > at)
            || (_text[next] == ':' && EndsWord(next + 1, end))
            || (_flowDepth > 0 && _text[next] is ',' or ']' or '}' or ':');
    }

    // The bracket that closes the one at an offset, on the same line, quotes passed over; -1 when there is none.
    private int MatchingClose(int at, int end)
    {
        end = Math.Min(end, at + (4 * MostSearched));
        var depth = 0;
        for (var i = at; i < end; i++)
        {
            switch (_text[i])
            {
                case '"' when i == at || _text[i - 1] is ' ' or ',' or '[' or '{':
                    var close = CloseOf('"', i + 1, end);
                    i = close < 0 ? i : close;
                    break;
                case '[' or '{':
                    depth++;
                    break;
                case ']' or '}' when --depth == 0:
                    return i;
                case '#' when i > at && IsBlank(_text[i - 1]):
                    return -1;
                default:
                    break;
            }
        }

        return -1;
    }

    // Inside a list or map in brackets, "91 (102, 112) cm" is one value: its commas do not part anything.
    private int MaskGroup(int at, int close)
    {
        for (; at <= close; at++)
        {
            if (_text[at] is ',' or ':' or '[' or ']' or '{' or '}' or '#' or '"')
            {
                Mask(at);
            }
        }

        return at;
    }

    private int GroupEnd(int at, int end)
    {
        var depth = 0;
        for (end = Math.Min(end, at + MostSearched); at < end; at++)
        {
            depth += _text[at] switch { '(' => 1, ')' => -1, _ => 0 };
            if (depth == 0)
            {
                return at;
            }
        }

        return -1;
    }

    private bool IsBlockHead(int at, int end)
    {
        while (at < end && _text[at] is '+' or '-' or (>= '0' and <= '9'))
        {
            at++;
        }

        var next = SkipBlanks(at, end);
        return next >= end || (_text[next] == '#' && next > at);
    }

    private bool LooksLikeKey(int first, int end)
    {
        var at = first;
        while (at < end && (char.IsAsciiLetterOrDigit(_text[at]) || _text[at] is '-' or '_'))
        {
            at++;
        }

        return at > first && at < end && _text[at] == ':' && EndsWord(at + 1, end);
    }

    // "82 (90: 94: 102)": a colon between the values of the sizes, inside brackets.
    private bool IsBetweenSizes(int colon, int from, int end)
    {
        var depth = 0;
        for (var i = from; i < colon; i++)
        {
            depth += _text[i] switch { '(' or '[' or '{' => 1, ')' or ']' or '}' => -1, _ => 0 };
        }

        var next = SkipBlanks(colon + 1, end);
        return depth > 0 && next < end && (!char.IsLetter(_text[next]) || next + 1 >= end || !char.IsAsciiLetterLower(_text[next + 1]));
    }
}
