using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>The two parts of a source file.</summary>
/// <param name="Header">The lines between the two <c>---</c> lines, without them; null when the file has no header.</param>
/// <param name="Body">What stands after the header; the whole file when there is none.</param>
public sealed record SplitFile(TextSpan? Header, TextSpan Body);

/// <summary>Cuts a source file into its header and its body.</summary>
public static class FileSplitter
{
    /// <summary>Finds the header between <c>---</c> lines at the top. A missing header or a missing closing line is a finding, and the rest is still given out.</summary>
    public static SplitFile Split(SourceText source, FindingBag bag)
    {
        var text = source.Text;
        var start = text.StartsWith('\uFEFF') ? 1 : 0;
        var opening = SkipBlankLines(text, start);
        var first = LineAt(text, opening);
        if (!IsFence(text, first))
        {
            bag.Add(
                SyntaxRules.MissingHeader,
                Trimmed(text, first),
                "the file does not begin with a header",
                "begin the file with a `---` line, then lines such as `title: ...` and `sizes: S (M, L)`, then another `---` line");
            return new SplitFile(null, TextSpan.FromBounds(start, text.Length));
        }

        var headerStart = AfterLineEnd(text, first.End);
        var at = headerStart;
        while (at < text.Length)
        {
            var line = LineAt(text, at);
            if (IsFence(text, line))
            {
                return new SplitFile(TextSpan.FromBounds(headerStart, at), TextSpan.FromBounds(AfterLineEnd(text, line.End), text.Length));
            }

            at = AfterLineEnd(text, line.End);
        }

        var end = GuessEnd(text, headerStart);
        bag.Add(new Finding(SyntaxRules.UnclosedHeader, source, Trimmed(text, first), "the header that begins here has no closing `---` line")
        {
            Help = end < text.Length
                ? $"put a `---` line after the last line of the header; it was read up to line {source.Lines.PositionOf(end).Line}"
                : "put a `---` line after the last line of the header",
            Fix = new Fix("Close the header with a `---` line", [new Edit(new TextSpan(end, 0), end > 0 && text[end - 1] is not ('\n' or '\r') ? "\n---\n" : "---\n")]),
        });
        return new SplitFile(TextSpan.FromBounds(headerStart, end), TextSpan.FromBounds(end, text.Length));
    }

    /// <summary>The line that holds an offset, from its first character up to its line end.</summary>
    internal static TextSpan LineAt(string text, int start)
    {
        var end = text.AsSpan(start).IndexOfAny('\n', '\r');
        return TextSpan.FromBounds(start, end < 0 ? text.Length : start + end);
    }

    /// <summary>The start of the line after a line that ends at <paramref name="end"/>.</summary>
    internal static int AfterLineEnd(string text, int end)
    {
        if (end >= text.Length)
        {
            return text.Length;
        }

        return text[end] == '\r' && end + 1 < text.Length && text[end + 1] == '\n' ? end + 2 : end + 1;
    }

    /// <summary>A span without the blanks around it.</summary>
    internal static TextSpan Trimmed(string text, TextSpan span)
    {
        var (start, end) = (span.Start, span.End);
        while (start < end && char.IsWhiteSpace(text[start]))
        {
            start++;
        }

        while (end > start && char.IsWhiteSpace(text[end - 1]))
        {
            end--;
        }

        return TextSpan.FromBounds(start, end);
    }

    private static int SkipBlankLines(string text, int start)
    {
        for (var at = start; at < text.Length;)
        {
            var line = LineAt(text, at);
            if (!text.AsSpan(line.Start, line.Length).IsWhiteSpace())
            {
                return at;
            }

            at = AfterLineEnd(text, line.End);
        }

        return start;
    }

    private static bool IsFence(string text, TextSpan line)
    {
        var said = text.AsSpan(line.Start, line.Length).TrimEnd();
        return said.Length >= 3 && said.TrimStart('-').IsEmpty;
    }

    // Where nothing closes the header, it ends before the first heading that follows a blank line; failing that, before the first
    // line after a blank one that is neither a key, a list item, a remark nor set in.
    private static int GuessEnd(string text, int headerStart)
    {
        var afterBlank = false;
        int? prose = null;
        for (var at = headerStart; at < text.Length;)
        {
            var line = LineAt(text, at);
            var said = text.AsSpan(line.Start, line.Length);
            if (said.IsWhiteSpace())
            {
                afterBlank = true;
            }
            else
            {
                if (said.StartsWith("## ") || (afterBlank && said.StartsWith("# ")))
                {
                    return at;
                }

                if (afterBlank && prose is null && !IsHeaderLike(said))
                {
                    prose = at;
                }

                afterBlank = false;
            }

            at = AfterLineEnd(text, line.End);
        }

        return prose ?? text.Length;
    }

    private static bool IsHeaderLike(ReadOnlySpan<char> line)
    {
        if (line[0] is ' ' or '\t' or '#' or '-')
        {
            return true;
        }

        var colon = line.IndexOf(':');
        return colon > 0 && !line[..colon].ContainsAnyExcept(KeyLetters);
    }

    private static readonly System.Buffers.SearchValues<char> KeyLetters = System.Buffers.SearchValues.Create("abcdefghijklmnopqrstuvwxyz-");
}
