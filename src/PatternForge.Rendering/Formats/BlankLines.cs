using System.Buffers;

namespace PatternForge.Rendering.Formats;

/// <summary>Tidies the blank lines that templates leave between their parts.</summary>
internal static class BlankLines
{
    /// <summary>Takes out blank lines, except between the two marks.</summary>
    public static string Drop(string text, string open, string close) => !text.Contains(open, StringComparison.Ordinal) ? Tidy(text, 0, _ => null) : Tidy(text, 0, line =>
    {
        var (opened, closed) = (line.LastIndexOf(open), line.LastIndexOf(close));
        return opened > closed ? true : closed > opened ? false : null;
    });

    /// <summary>Leaves at most one blank line together, except inside fenced text.</summary>
    public static string Single(string text)
    {
        var fence = 0; // how long the marks are that end the fenced text; 0 outside
        return Tidy(text, 1, line =>
        {
            var trimmed = line.TrimStart(" >");
            var run = trimmed.Length - trimmed.TrimStart('`').Length;
            if (fence == 0 && run >= 3)
            {
                fence = run;
                return true;
            }

            if (fence > 0 && run >= fence && trimmed.Trim().Length == run)
            {
                fence = 0;
                return false;
            }

            return null;
        });
    }

    // True where lines are kept as they are from here on, false where they are not, null where nothing changes.
    private delegate bool? Keeping(ReadOnlySpan<char> line);

    private static string Tidy(string text, int allowed, Keeping keeps)
    {
        var tidy = ArrayPool<char>.Shared.Rent(text.Length + 1);
        var length = 0;
        var (blank, keep) = (allowed, false);
        foreach (var range in text.AsSpan().Split('\n'))
        {
            var line = text.AsSpan(range);
            keep = keeps(line) ?? keep;
            if (!keep && line.IsWhiteSpace())
            {
                blank++;
                if (blank > allowed)
                {
                    continue;
                }
            }
            else
            {
                blank = 0;
                line.CopyTo(tidy.AsSpan(length));
                length += line.Length;
            }

            tidy[length++] = '\n';
        }

        while (length > 0 && tidy[length - 1] == '\n')
        {
            length--;
        }

        tidy[length++] = '\n';
        var result = new string(tidy, 0, length);
        ArrayPool<char>.Shared.Return(tidy);
        return result;
    }
}
