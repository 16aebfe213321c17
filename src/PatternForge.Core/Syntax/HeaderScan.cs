using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using static PatternForge.Core.Syntax.HeaderLine;

namespace PatternForge.Core.Syntax;

/// <summary>
/// A first look at the header's characters, before they are read as YAML: finds remarks and the lines where a key begins, and what a
/// designer writes as plain text though YAML takes it for something else. Such characters are masked one for one, so that every
/// offset stays true and the text is read as it was meant.
/// </summary>
internal sealed class HeaderScan
{
    // What a header full of noise is told at most.
    private const int MostFindings = 200;

    private readonly SourceText _source;
    private readonly FindingBag _bag;
    private readonly string _text;
    private readonly int _start;
    private readonly HeaderMask _mask;
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
        _mask = new HeaderMask(source, header);
        for (var at = header.Start; at < header.End;)
        {
            var line = FileSplitter.LineAt(_text, at);
            Line(TextSpan.FromBounds(at, Math.Min(line.End, header.End)));
            at = FileSplitter.AfterLineEnd(_text, line.End);
        }

        LeaveQuoteOpen();
        _mask.CoverOddLetters();
        if (_tabs.Count > 0)
        {
            bag.Add(new Finding(SyntaxRules.TabInHeader, source, _tabs[0].Span, _tabs.Count == 1 ? "this line is set in with a tab" : $"this line and {_tabs.Count - 1} more are set in with tabs")
            {
                Help = "set header lines in with blanks, two for each step",
                Fix = new Fix("Replace the tabs by blanks", [.. _tabs]),
            });
        }
    }

    /// <summary>The header's characters with the misleading ones covered.</summary>
    public HeaderMask Mask => _mask;

    /// <summary>Where the header starts in the file.</summary>
    public int Start => _start;

    /// <summary>Remarks, from their <c>#</c> to the end of the line, in the whole file.</summary>
    public ImmutableArray<TextSpan> Remarks => [.. _remarks];

    /// <summary>Offsets in the whole file of the lines where a key of the header itself begins.</summary>
    public IReadOnlyList<int> KeyLines => _keyLines;

    /// <summary>Looks through a header.</summary>
    public static HeaderScan Of(SourceText source, TextSpan header, FindingBag bag) => new(source, header, bag);

    private void Line(TextSpan line)
    {
        var first = SkipBlanks(_text, line.Start, line.End);
        if (first == line.End)
        {
            return;
        }

        var at = first;
        if (_quoteStart >= 0)
        {
            var close = CloseOf(_text, _text[_quoteStart], line.Start, line.End);
            if (LooksLikeKey(_text, first, line.End) && (close < 0 || (first == line.Start && !EndsValue(_text, close + 1, line.End, _flowDepth > 0))))
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

        if (_flowDepth > 0 && first == line.Start && LooksLikeKey(_text, first, line.End))
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
        _mask.Cover(open);
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
        var keyColumn = SkipBlanks(_text, start, end) - start;
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
                    _mask.Cover(at++);
                    continue;
                }

                _remarks.Add(TextSpan.FromBounds(at, end));
                end = at;
                break;
            }

            if (tokenStarts)
            {
                tokenStarts = false;
                if (c == '-' && _flowDepth == 0 && !valueSeen && EndsWord(_text, at + 1, end))
                {
                    dashColumn = at - start;
                    tokenStarts = true;
                    keyIsBare = false;
                    at++;
                    keyColumn = SkipBlanks(_text, at, end) - start;
                    continue;
                }

                if (c is '"' or '\'')
                {
                    var close = CloseOf(_text, c, at + 1, end);
                    if (close < 0 && _flowDepth > 0 && c == '\'')
                    {
                        _mask.Cover(at++);
                        continue;
                    }

                    if (close < 0)
                    {
                        _quoteStart = at;
                        return;
                    }

                    if (EndsValue(_text, close + 1, end, _flowDepth > 0))
                    {
                        at = close + 1;
                        continue;
                    }

                    NeedsQuotes(TextSpan.FromBounds(at, close + 1), at, end, "the text goes on after its closing quote");
                    _mask.Cover(at);
                    plain = at++;
                    continue;
                }

                if (_flowDepth == 0 && c is '[' or '{')
                {
                    var close = MatchingClose(_text, at, end);
                    if (_flowDepth == 0 && close > 0 && !EndsValue(_text, close + 1, end, _flowDepth > 0))
                    {
                        _mask.Cover(at);
                        plain = at++;
                        continue;
                    }
                }
                else if (_flowDepth == 0 && c is '|' or '>' && IsBlockHead(_text, at + 1, end))
                {
                    _blockIndent = valueSeen ? keyColumn : dashColumn;
                    at++;
                    continue;
                }
                else if (c is '*' or '&' or '!')
                {
                    Reference(at, end);
                    plain = at;
                    _mask.Cover(at++);
                    continue;
                }
                else if (c is '@' or '`' or '%' || (_flowDepth == 0 && c is ',' or ']' or '}' or '|' or '>'))
                {
                    NeedsQuotes(new TextSpan(at, 1), at, end, $"a text that begins with `{(c == '`' ? "backtick" : c.ToString())}` needs quotes around it");
                    _mask.Cover(at);
                    plain = at++;
                    continue;
                }

                plain = c is '[' or '{' ? -1 : at;
            }

            if (c == '(' && _flowDepth > 0 && GroupEnd(_text, at, end) is > 0 and var group)
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
            else if (c == ':' && (EndsWord(_text, at + 1, end) || (_flowDepth > 0 && _text[at + 1] is ',' or ']' or '}')))
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
            if (!told && colon - plain < MostSearched && !IsBetweenSizes(_text, colon, plain, end))
            {
                told = true;
                NeedsQuotes(new TextSpan(colon, 1), plain, end, "a text with a colon and a blank in it needs quotes around it");
            }

            _mask.Cover(colon);
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

    // Inside a list or map in brackets, "91 (102, 112) cm" is one value: its commas do not part anything.
    private int MaskGroup(int at, int close)
    {
        for (; at <= close; at++)
        {
            if (_text[at] is ',' or ':' or '[' or ']' or '{' or '}' or '#' or '"')
            {
                _mask.Cover(at);
            }
        }

        return at;
    }
}
