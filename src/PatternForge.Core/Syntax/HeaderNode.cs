using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Something that stands in the header: a text, a list, or a map of keys.</summary>
public abstract class HeaderNode
{
    /// <summary>Holds its place.</summary>
    protected HeaderNode(TextSpan span) => Span = span;

    /// <summary>Where it stands in the whole file.</summary>
    public TextSpan Span { get; }
}

/// <summary>A text as it was written, quotes and line folds undone. An empty one says nothing.</summary>
public sealed class HeaderScalar : HeaderNode
{
    private readonly SourceText _source;
    private int[]? _places;

    /// <summary>Holds a text read from a place.</summary>
    public HeaderScalar(SourceText source, TextSpan span, string text)
        : base(span)
    {
        _source = source;
        Text = text;
    }

    /// <summary>The text.</summary>
    public string Text { get; }

    /// <summary>True when nothing is said.</summary>
    public bool IsBlank => string.IsNullOrWhiteSpace(Text);

    /// <summary>Where a part of the text stands in the file; the whole text's place where that cannot be told.</summary>
    public TextSpan SpanOf(int start, int length)
    {
        _places ??= Places();
        if (_places.Length == 0 || start < 0 || length <= 0 || start + length > Text.Length)
        {
            return Span;
        }

        return TextSpan.FromBounds(_places[start], _places[start + length - 1] + 1);
    }

    // Walks the text and its source side by side: blanks may differ (line folds), other characters must be the same but for quotes' escapes.
    private int[] Places()
    {
        var raw = _source.Slice(Span);
        var at = 0;
        var quote = raw.Length > 0 && raw[0] is '"' or '\'' && (Text.Length == 0 || raw.Length > Text.Length) ? raw[0] : '\0';
        if (quote != '\0')
        {
            at = 1;
        }
        else if (raw.Length > 0 && raw[0] is '|' or '>' && raw.IndexOfAny('\n', '\r') is > 0 and var lineEnd)
        {
            at = lineEnd;
        }

        var places = new int[Text.Length];
        for (var i = 0; i < Text.Length; i++)
        {
            var said = Text[i];
            if (char.IsWhiteSpace(said))
            {
                places[i] = Span.Start + Math.Min(at, Math.Max(0, raw.Length - 1));
                if (at < raw.Length && raw[at] is ' ' or '\t')
                {
                    at++;
                }

                continue;
            }

            while (at < raw.Length && char.IsWhiteSpace(raw[at]))
            {
                at++;
            }

            if (at + 1 < raw.Length && ((quote == '"' && raw[at] == '\\') || (quote == '\'' && raw[at] == '\'')) && raw[at + 1] == said)
            {
                at++;
            }

            if (at >= raw.Length || raw[at] != said)
            {
                return [];
            }

            places[i] = Span.Start + at;
            at++;
        }

        return places;
    }
}

/// <summary>A list.</summary>
public sealed class HeaderList : HeaderNode
{
    /// <summary>Holds a list.</summary>
    public HeaderList(TextSpan span, ImmutableArray<HeaderNode> items)
        : base(span) => Items = items;

    /// <summary>Its items in order.</summary>
    public ImmutableArray<HeaderNode> Items { get; }
}

/// <summary>A key and what it says.</summary>
public sealed class HeaderEntry
{
    /// <summary>Holds a key and its value.</summary>
    public HeaderEntry(HeaderScalar key, HeaderNode value)
    {
        Key = key;
        Value = value;
    }

    /// <summary>The key as written.</summary>
    public HeaderScalar Key { get; }

    /// <summary>The key's words.</summary>
    public string Name => Key.Text;

    /// <summary>What it says.</summary>
    public HeaderNode Value { get; }

    /// <summary>Key and value together.</summary>
    public TextSpan Span => Key.Span.Cover(Value.Span);
}

/// <summary>Keys with what they say, in the order of the file. A key that stands twice is here once.</summary>
public sealed class HeaderMap : HeaderNode
{
    /// <summary>Holds keys and values.</summary>
    public HeaderMap(TextSpan span, ImmutableArray<HeaderEntry> entries)
        : base(span) => Entries = entries;

    /// <summary>The keys and what they say.</summary>
    public ImmutableArray<HeaderEntry> Entries { get; }

    /// <summary>Keys of which something could not be read; what is missing under them is no news.</summary>
    public ImmutableArray<string> Damaged { get; init; } = [];
}
