using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Reporting;

/// <summary>For spreadsheets: one line a row of the pattern, three columns a size; quoted and ended as RFC 4180 says.</summary>
internal static class CountsCsv
{
    /// <summary>The whole table.</summary>
    public static string Of(CountsTable table)
    {
        var page = new StringBuilder();
        var hasKinds = table.Pieces.Any(p => p.Rows.Any(r => !r.Kinds.IsEmpty));
        var columns = new List<string> { "piece", "line", "row", "text", "status" };
        foreach (var size in table.Sizes)
        {
            columns.AddRange(ColumnsOf(size, hasKinds));
        }

        columns.Add("reading");
        Append(page, columns);
        foreach (var piece in table.Pieces)
        {
            foreach (var row in piece.Rows)
            {
                var cells = new List<string> { piece.Name, row.Line.ToString(CultureInfo.InvariantCulture), row.Label, row.Text, row.Status };
                for (var size = 0; size < table.Sizes.Length; size++)
                {
                    cells.AddRange(Cell(row.Before, size), Cell(row.After, size), Cell(row.Stated, size));
                    if (hasKinds)
                    {
                        cells.Add(size < row.Kinds.Length ? CountWords.Of(row.Kinds[size]) : "");
                    }
                }

                cells.Add(row.Reading ?? "");
                Append(page, cells);
            }
        }

        return page.ToString();
    }

    private static IEnumerable<string> ColumnsOf(string size, bool hasKinds)
    {
        var tail = size.Length == 0 ? "" : " " + size;
        return hasKinds ? ["before" + tail, "after" + tail, "stated" + tail, "kinds" + tail] : ["before" + tail, "after" + tail, "stated" + tail];
    }

    private static string Cell(ImmutableArray<int?> perSize, int size) =>
        size < perSize.Length && perSize[size] is { } number ? number.ToString(CultureInfo.InvariantCulture) : "";

    private static void Append(StringBuilder page, List<string> cells) => page.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");

    /// <summary>In quotes where a comma, a quote or a line end asks for them.</summary>
    public static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\r\n") < 0 && (cell.Length == 0 || (cell[0] != ' ' && cell[^1] != ' '))
            ? cell
            : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
