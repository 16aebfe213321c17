using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Finds what has become of rows in lists, tables, italics and narrow columns, line by line.</summary>
internal static class LineMender
{
    /// <summary>The mends of the body, in order.</summary>
    public static List<Mend> Find(SourceText source, TextSpan body)
    {
        var mends = new List<Mend>();
        var lines = new BodyLines(source, body);
        var tables = new TableRows(source, mends);
        var numbers = new ListNumbers(source, mends);
        var labels = new LostLabels(source, mends);
        var stars = new LostStars(source, mends);
        var begins = true;
        while (lines.Next())
        {
            if (lines.Fence is { } fence)
            {
                SkipFence(lines, fence);
                numbers.Break();
                stars.Break();
                continue;
            }

            if (lines.IsProse)
            {
                continue;
            }

            if (lines.Text.Trim().IsEmpty)
            {
                stars.Break();
                begins = true;
                continue;
            }

            if (TableRows.Begins(lines) && tables.Read(lines))
            {
                numbers.Break();
                stars.Break();
                continue;
            }

            var content = ListMarks.Read(source, lines.Content, mends);
            WebTags.Read(source, content, mends);
            numbers.Read(content, lines.Section, begins);
            labels.Read(content, lines.Section);
            begins = false;
            stars.Read(content);
            Emphasis.Read(source, content, mends);
            BrokenWords.Read(source, lines, mends);
        }

        numbers.Break();
        labels.Break();
        if (mends.Count > 1)
        {
            var sorted = mends.Select((mend, index) => (mend, index)).OrderBy(m => m.mend.Span.Start).ThenBy(m => m.mend.Span.Length).ThenBy(m => m.index).Select(m => m.mend).ToList();
            return sorted;
        }

        return mends;
    }

    private static void SkipFence(BodyLines lines, string fence)
    {
        while (lines.NextInside() && !lines.Text.TrimEnd().StartsWith(fence))
        {
        }
    }
}
