namespace PatternForge.Core.Text;

/// <summary>A place as people count it: line and column from 1, columns in UTF-16 units.</summary>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>Turns offsets into lines and columns. A line ends at LF, CR, or CR LF.</summary>
public sealed class LineMap
{
    private readonly int[] _starts;
    private readonly int _length;

    /// <summary>Finds the line starts of a text.</summary>
    public LineMap(string text)
    {
        var starts = new List<int>(1 + (text.Length / 32)) { 0 };
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        _starts = [.. starts];
        _length = text.Length;
    }

    /// <summary>How many lines there are; an empty text has one.</summary>
    public int Count => _starts.Length;

    /// <summary>The line and column of an offset; offsets past the end count as the end.</summary>
    public LinePosition PositionOf(int offset)
    {
        var index = Array.BinarySearch(_starts, Math.Clamp(offset, 0, _length));
        var line = index >= 0 ? index : ~index - 1;
        return new LinePosition(line + 1, Math.Clamp(offset, 0, _length) - _starts[line] + 1);
    }

    /// <summary>The offset at which a line (from 1) begins.</summary>
    public int StartOf(int line) => _starts[line - 1];

    /// <summary>The span of a line (from 1) without its line end.</summary>
    public TextSpan SpanOf(int line, string text)
    {
        var start = _starts[line - 1];
        var end = line < _starts.Length ? _starts[line] : text.Length;
        while (end > start && text[end - 1] is '\n' or '\r')
        {
            end--;
        }

        return TextSpan.FromBounds(start, end);
    }
}
