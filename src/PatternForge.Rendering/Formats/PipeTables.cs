using System.Globalization;
using System.Text;

namespace PatternForge.Rendering.Formats;

/// <summary>Sets the tables of a Markdown text in straight columns, so that they read well as plain text too. No cell is changed.</summary>
internal static class PipeTables
{
    /// <summary>A column with a cell longer than this stays ragged: blanks up to there would help nobody.</summary>
    private const int Widest = 40;

    /// <summary>The text with its tables in columns; what stands in a fence, and what may be no table, is left as it is.</summary>
    public static string Align(string text)
    {
        var result = new StringBuilder(text.Length + 256);
        var lines = text.Split('\n');
        string? fence = null;
        for (var i = 0; i < lines.Length; i++)
        {
            var run = lines[i].Length - lines[i].TrimStart('`').Length;
            if (fence is null ? run >= 3 : run >= fence.Length && lines[i].TrimEnd().Length == run)
            {
                fence = fence is null ? lines[i][..run] : null;
            }

            var end = i;
            while (fence is null && end < lines.Length && lines[end].StartsWith('|'))
            {
                end++;
            }

            var standsAlone = (i == 0 || lines[i - 1].Length == 0) && (end == lines.Length || lines[end].Length == 0);
            if (standsAlone && end > i + 1 && Table(lines[i..end]) is { } table)
            {
                result.AppendJoin('\n', table);
                i = end - 1;
            }
            else
            {
                // Lines that are no table are not looked at again.
                result.AppendJoin('\n', lines[i..Math.Max(end, i + 1)]);
                i = Math.Max(end - 1, i);
            }

            result.Append(i + 1 < lines.Length ? "\n" : "");
        }

        return result.ToString();
    }

    private static string[]? Table(string[] lines)
    {
        var rows = Array.ConvertAll(lines, Cells);
        var columns = rows[0].Length;
        if (columns == 0 || lines.Any(l => l.Contains('`', StringComparison.Ordinal)) || rows.Any(r => r.Length != columns) || !rows[1].All(IsRule))
        {
            return null;
        }

        var widths = Enumerable.Range(0, columns).Select(c => rows.Where((_, i) => i != 1).Max(r => Width(r[c]))).ToArray();
        return [.. rows.Select((row, i) => $"| {string.Join(" | ", row.Select((cell, c) => Cell(cell, widths[c], rows[1][c], isRule: i == 1)))} |")];
    }

    private static string Cell(string cell, int width, string rule, bool isRule)
    {
        if (isRule)
        {
            var (left, right) = (rule[0] == ':' ? ":" : "", rule[^1] == ':' ? ":" : "");
            var dashes = Math.Max(width > Widest ? 3 : width, 3) - left.Length - right.Length;
            return left + new string('-', Math.Max(dashes, 1)) + right;
        }

        var room = width > Widest ? 0 : Math.Max(width, 3) - Width(cell);
        return room <= 0 ? cell : rule[^1] == ':' && rule[0] != ':' ? new string(' ', room) + cell : cell + new string(' ', room);
    }

    /// <summary>The cells of a line; none when it does not end as a line of a table does.</summary>
    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var start = 1;
        for (var i = 1; i < line.Length; i++)
        {
            if (line[i] == '\\')
            {
                i++;
            }
            else if (line[i] == '|')
            {
                cells.Add(line[start..i].Trim(' '));
                start = i + 1;
            }
        }

        return start == line.Length ? [.. cells] : [];
    }

    private static bool IsRule(string cell) => cell.Trim(':') is { Length: > 0 } dashes && dashes.All(c => c == '-');

    private static int Width(string cell) => new StringInfo(cell).LengthInTextElements;
}
