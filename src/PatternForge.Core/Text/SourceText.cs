namespace PatternForge.Core.Text;

/// <summary>One source file as it was read: its path for messages, its characters, and its lines. Never changes.</summary>
public sealed class SourceText
{
    private LineMap? _lines;

    /// <summary>Holds a text under the path that findings will name.</summary>
    public SourceText(string path, string text)
    {
        Path = path;
        Text = text;
    }

    /// <summary>The path as the reader knows it; <c>-</c> for standard input.</summary>
    public string Path { get; }

    /// <summary>All characters of the file, byte-order mark removed, line ends as they were.</summary>
    public string Text { get; }

    /// <summary>Where the lines begin.</summary>
    public LineMap Lines => _lines ??= new LineMap(Text);

    /// <summary>The characters under a span.</summary>
    public ReadOnlySpan<char> Slice(TextSpan span) => Text.AsSpan(span.Start, span.Length);

    /// <summary>The characters under a span as a string of its own.</summary>
    public string ToString(TextSpan span) => Text.Substring(span.Start, span.Length);
}
