using System.Text;

namespace PatternForge.Rendering.Formats;

/// <summary>Tidies the blank lines that templates leave between their parts.</summary>
internal static class BlankLines
{
    /// <summary>Takes out blank lines, except between the two marks.</summary>
    public static string Drop(string text, string open, string close) => Tidy(text, 0, line =>
    {
        var (opened, closed) = (line.LastIndexOf(open, StringComparison.Ordinal), line.LastIndexOf(close, StringComparison.Ordinal));
        return opened > closed ? true : closed > opened ? false : null;
    });

    /// <summary>Leaves at most one blank line together, except inside fenced text.</summary>
    public static string Single(string text)
    {
        string? fence = null;
        return Tidy(text, 1, line =>
        {
            var trimmed = line.TrimStart(' ', '>');
            var run = trimmed.Length - trimmed.TrimStart('`').Length;
            if (fence is null && run >= 3)
            {
                fence = trimmed[..run];
                return true;
            }

            if (fence is not null && run >= fence.Length && trimmed.Trim().Length == run)
            {
                fence = null;
                return false;
            }

            return null;
        });
    }

    private static string Tidy(string text, int allowed, Func<string, bool?> keeps)
    {
        var tidy = new StringBuilder(text.Length);
        var (blank, keep) = (allowed, false);
        foreach (var line in text.Split('\n'))
        {
            keep = keeps(line) ?? keep;
            if (!keep && string.IsNullOrWhiteSpace(line))
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
            }

            tidy.Append(!keep && string.IsNullOrWhiteSpace(line) ? "" : line).Append('\n');
        }

        return tidy.ToString().TrimEnd('\n') + "\n";
    }
}
