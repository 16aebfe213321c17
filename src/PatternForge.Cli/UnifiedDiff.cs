using System.Globalization;
using System.Text;
using DiffPlex;
using DiffPlex.Chunkers;

namespace PatternForge.Cli;

/// <summary>The difference of two texts in the unified format of POSIX <c>diff -u</c>, as <c>patch</c> takes it.</summary>
internal static class UnifiedDiff
{
    private const int Context = 3;

    /// <summary>The difference; empty where there is none.</summary>
    public static string Of(string path, string before, string after)
    {
        var diff = Differ.Instance.CreateDiffs(before, after, ignoreWhiteSpace: false, ignoreCase: false, new LineEndingsPreservingChunker());
        var blocks = diff.DiffBlocks;
        if (blocks.Count == 0)
        {
            return "";
        }

        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"--- {path}\n+++ {path}\n");
        for (var first = 0; first < blocks.Count;)
        {
            // Blocks whose lines around them meet share a hunk.
            var last = first;
            while (last + 1 < blocks.Count && blocks[last + 1].DeleteStartA - (blocks[last].DeleteStartA + blocks[last].DeleteCountA) <= 2 * Context)
            {
                last++;
            }

            var (begin, end) = (Math.Max(0, blocks[first].DeleteStartA - Context), Math.Min(diff.PiecesOld.Count, blocks[last].DeleteStartA + blocks[last].DeleteCountA + Context));
            var lines = new StringBuilder();
            var (old, at, added) = (0, begin, 0);
            for (var i = first; i <= last; i++)
            {
                var block = blocks[i];
                old += Lines(lines, ' ', diff.PiecesOld, at, block.DeleteStartA);
                old += Lines(lines, '-', diff.PiecesOld, block.DeleteStartA, block.DeleteStartA + block.DeleteCountA);
                added += Lines(lines, '+', diff.PiecesNew, block.InsertStartB, block.InsertStartB + block.InsertCountB) - block.DeleteCountA;
                at = block.DeleteStartA + block.DeleteCountA;
            }

            old += Lines(lines, ' ', diff.PiecesOld, at, end);
            var beginNew = blocks[first].InsertStartB - (blocks[first].DeleteStartA - begin);
            page.Append(CultureInfo.InvariantCulture, $"@@ -{Range(begin, old)} +{Range(beginNew, old + added)} @@\n").Append(lines);
            first = last + 1;
        }

        return page.ToString();
    }

    private static int Lines(StringBuilder page, char sign, IReadOnlyList<string> pieces, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            page.Append(sign).Append(pieces[i]);
            if (!pieces[i].EndsWith('\n'))
            {
                page.Append("\n\\ No newline at end of file\n");
            }
        }

        return Math.Max(0, to - from);
    }

    private static string Range(int start, int count) => count == 1
        ? (start + 1).ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{(count == 0 ? start : start + 1)},{count}");
}
