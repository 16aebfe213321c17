using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Goes through the lines of a body and knows which of them cannot hold rows: headings, remarks, sections of prose.</summary>
internal sealed class BodyLines
{
    private readonly SourceText _source;
    private readonly int _end;
    private int _next;

    public BodyLines(SourceText source, TextSpan body)
    {
        _source = source;
        _next = body.Start;
        _end = body.End;
    }

    /// <summary>The line without the blanks before it.</summary>
    public TextSpan Content { get; private set; }

    /// <summary>True inside a section of prose.</summary>
    public bool IsProse { get; private set; }

    /// <summary>How many headings have been passed.</summary>
    public int Section { get; private set; }

    /// <summary>The fence that the line opens; null for another line.</summary>
    public string? Fence { get; private set; }

    /// <summary>Where it stands, to come back to.</summary>
    public (TextSpan Content, int Next) Place
    {
        get => (Content, _next);
        set => (Content, _next) = value;
    }

    public ReadOnlySpan<char> Text => _source.Slice(Content);

    public bool Starts(char c) => Text is [var first, ..] && first == c;

    /// <summary>Goes on to the next line that is no heading and no remark of its own.</summary>
    public bool Next()
    {
        while (NextInside())
        {
            var text = Text;
            Fence = text.StartsWith("```") ? "```" : text.StartsWith("~~~") ? "~~~" : null;
            if (text is ['#', ..] && text.TrimStart('#') is [] or [' ' or '\t', ..])
            {
                var words = text.ToString().Trim('#', ' ', '\t');
                var role = words.LastIndexOf("{#", StringComparison.Ordinal) is var open and >= 0 ? words[(open + 2)..].Trim('}', ' ').ToLowerInvariant() : SectionRoles.Slug(words);
                IsProse = SectionRoles.IsProse(role);
                Section++;
                continue;
            }

            if (text.StartsWith("<!--"))
            {
                var close = Remarks.EndOf(_source.Text, Content.Start, _end);
                if (close > Content.End)
                {
                    _next = LineEnd(close, out _);
                    continue;
                }
            }

            return true;
        }

        return false;
    }

    /// <summary>Goes on to the very next line, whatever it is.</summary>
    public bool NextInside()
    {
        if (_next >= _end)
        {
            Content = new TextSpan(_end, 0);
            return false;
        }

        var start = _next;
        _next = LineEnd(start, out var end);
        var line = TextSpan.FromBounds(start, end);
        Content = TextSpan.FromBounds(end - _source.Slice(line).TrimStart().Length, end);
        return true;
    }

    /// <summary>The line after this one, without the blanks before it; empty at the end.</summary>
    public TextSpan Peek()
    {
        if (_next >= _end)
        {
            return new TextSpan(_end, 0);
        }

        LineEnd(_next, out var end);
        return TextSpan.FromBounds(end - _source.Slice(TextSpan.FromBounds(_next, end)).TrimStart().Length, end);
    }

    public bool PeekStarts(char c) => _source.Slice(Peek()) is [var first, ..] && first == c;

    private int LineEnd(int at, out int end)
    {
        var length = _source.Text.AsSpan(at, _end - at).IndexOfAny('\r', '\n');
        end = length < 0 ? _end : at + length;
        return length < 0 ? _end : Math.Min(_end, end + (_source.Text[end] == '\r' && end + 1 < _end && _source.Text[end + 1] == '\n' ? 2 : 1));
    }
}
