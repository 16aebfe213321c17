namespace PatternForge.Tests.House;

/// <summary>Reads a table of a Markdown file by the words of its head.</summary>
internal static class MarkdownTable
{
    /// <summary>The rows of the table whose head begins with these cells, each as its cells.</summary>
    public static string[][] Rows(ProjectFile file, params string[] head)
    {
        var lines = file.Lines;
        var at = Array.FindIndex(lines, line => Cells(line).Take(head.Length).SequenceEqual(head, StringComparer.Ordinal));
        return at < 0
            ? throw new InvalidOperationException($"{file.Path} has no table with the head | {string.Join(" | ", head)} |")
            : [.. lines.Skip(at + 2).TakeWhile(line => line.StartsWith('|')).Select(Cells)];
    }

    /// <summary>The words of a cell that stand in backticks.</summary>
    public static string[] Quoted(string cell) => [.. cell.Split('`').Where((_, i) => i % 2 == 1)];

    private static string[] Cells(string line) => line.StartsWith('|') ? [.. line.Trim().Trim('|').Split('|').Select(c => c.Trim())] : [];
}
