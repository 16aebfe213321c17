using System.Text;
using PatternForge.Core;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>Lays out, where a fenced block <c>shaping</c> asks for it, what the line before it stands for: shapings that go on at the same time, or shaping that is reversed.</summary>
internal static class ShapingText
{
    /// <summary>The Markdown of a line's shaping; null where the line has none to lay out.</summary>
    public static string? Of(WorkedLine line, Compilation compilation)
    {
        var text = new StringBuilder();
        if (line.Together is { } table)
        {
            Append(text, table, compilation);
        }

        if (!line.Mirrored.IsEmpty)
        {
            text.Append("Written out, left and right changed:\n\n");
            foreach (var row in line.Mirrored)
            {
                var label = row.Label.Length > 0 ? $"**{row.Label}:** " : "";
                text.Append($"- {label}{OneLine(row.Text).Replace("*", "\\*", StringComparison.Ordinal)}{(row.IsWrittenOut ? "" : " (turn this one round as you work it)")}\n");
            }
        }

        return text.Length == 0 ? null : text.ToString().TrimEnd('\n');
    }

    private static void Append(StringBuilder text, ShapingTable table, Compilation compilation)
    {
        text.Append("At the same time, rows counted from the first one of this line:\n\n");
        for (var i = 0; i < table.Shapings.Length; i++)
        {
            text.Append($"- ({Letter(i)}) {ClauseWords.Of(table.Shapings[i], compilation.Text.Text, int.MaxValue).Replace("*", "\\*", StringComparison.Ordinal)}\n");
        }

        var names = compilation.Pattern.Facts.Sizes.Names;
        for (var size = 0; size < table.Sizes.Length; size++)
        {
            if (table.Sizes[size].IsEmpty)
            {
                continue;
            }

            text.Append('\n');
            if (names.Length > 1)
            {
                text.Append($"**{names[size]}**\n\n");
            }

            text.Append("| row |").AppendJoin("", table.Shapings.Select((_, i) => $" ({Letter(i)}) |")).Append(" stitches |\n|--:|").AppendJoin("", table.Shapings.Select(_ => "--:|")).Append("--:|\n");
            foreach (var row in table.Sizes[size])
            {
                text.Append($"| {row.Row} |").AppendJoin("", row.Changes.Select(c => $" {(c == 0 ? "" : c > 0 ? $"+{c}" : $"−{-c}")} |")).Append($" {row.Count} |\n");
            }
        }

        text.Append('\n');
    }

    private static char Letter(int index) => (char)('a' + (index % 26));

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
