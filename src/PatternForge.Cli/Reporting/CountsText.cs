using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Reporting;

/// <summary>For people: a table a piece, with the counts of all sizes as the trade writes them.</summary>
internal static class CountsText
{
    private const int Gap = 2;
    private const int LeastText = 24;

    /// <summary>The whole table.</summary>
    public static string Of(CountsTable table, int width, Paint paint)
    {
        var page = new StringBuilder();
        if (table.Sizes is not [""])
        {
            var sizes = table.Sizes.Length == 1 ? table.Sizes[0] : $"{table.Sizes[0]} ({string.Join(", ", table.Sizes[1..])})";
            page.Append($"sizes {DisplayText.OneLine(sizes)}\n\n");
        }

        foreach (var piece in table.Pieces)
        {
            AppendPiece(page, piece, table.Sizes, width, paint);
        }

        if (table.Pieces.IsEmpty)
        {
            page.Append("no instruction lines\n");
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }

    private static void AppendPiece(StringBuilder page, CountedPiece piece, ImmutableArray<string> sizes, int width, Paint paint)
    {
        if (piece.Name.Length > 0)
        {
            page.Append(paint.Strong(DisplayText.OneLine(piece.Name))).Append('\n');
        }

        string[] head = ["line", "row", "before", "after", "stated", ""];
        var rows = piece.Rows.Select(CellsOf).ToArray();
        var widths = Enumerable.Range(0, 5).Select(c => rows.Select(r => DisplayText.Width(r[c])).Append(head[c].Length).Max()).ToArray();
        var room = Math.Max(LeastText, width - widths.Sum() - (5 * Gap));
        page.Append(paint.Faint(Line(head, widths))).Append('\n');
        foreach (var (row, cells) in piece.Rows.Zip(rows))
        {
            cells[5] = DisplayText.Cut(row.Text, room);
            page.Append(Line(cells, widths)).Append('\n');
            AppendRemarks(page, row, sizes, widths[0] + Gap, paint);
        }

        page.Append('\n');
    }

    private static void AppendRemarks(StringBuilder page, CountedRow row, ImmutableArray<string> sizes, int indent, Paint paint)
    {
        void Remark(string text) => page.Append(' ', indent).Append(paint.Faint(text)).Append('\n');

        if (!row.Kinds.IsEmpty)
        {
            var words = row.Kinds.Select(CountWords.Of).ToArray();
            if (words.Distinct(StringComparer.Ordinal).Count() == 1)
            {
                Remark($"made of {words[0]}");
            }
            else
            {
                foreach (var (size, kinds) in sizes.Zip(words))
                {
                    Remark($"{DisplayText.OneLine(size)}: made of {kinds}");
                }
            }
        }

        switch (row.Status)
        {
            case "trusted":
                Remark("taken on trust: not checked");
                break;
            case "unread":
                Remark("not understood");
                break;
        }

        if (!row.Sections.IsEmpty)
        {
            var sections = row.Sections.Select(SectionsOf).ToArray();
            if (sections.Distinct(StringComparer.Ordinal).Count() == 1)
            {
                Remark($"between markers: {sections[0]}");
            }
            else
            {
                foreach (var (size, words) in sizes.Zip(sections).Where(s => s.Second.Length > 0))
                {
                    Remark($"{DisplayText.OneLine(size)}: between markers {words}");
                }
            }
        }

        if (!row.Mirrored.IsEmpty)
        {
            Remark("written out, left and right changed:");
            foreach (var mirrored in row.Mirrored)
            {
                Remark($"  {(mirrored.Label.Length > 0 ? DisplayText.OneLine(mirrored.Label) + ": " : "")}{DisplayText.Cut(mirrored.Text, 90)} [{CountedRow.InTradeForm([.. mirrored.After])}]{(mirrored.WrittenOut ? "" : " (turn this one round yourself)")}");
            }
        }

        if (row.Together is { } together)
        {
            AppendTogether(together, sizes, Remark);
        }

        if (row.Reading is { } reading)
        {
            Remark($"read as: {DisplayText.OneLine(reading)}");
        }
    }

    /// <summary>"20 | 1 (A) 24 | 20": the stitches, and a stroke or the name of each marker, in the order of the next row.</summary>
    private static string SectionsOf(IReadOnlyList<SectionShape> sections) =>
        string.Concat(sections.Select(s => s.Marker is null ? $"{s.Stitches}" : s.Marker.Length == 0 ? $"{s.Stitches} | " : $"{s.Stitches} ({DisplayText.OneLine(s.Marker.ToUpperInvariant())}) "));

    /// <summary>Shapings that go on at the same time: a table a size, with the rows in which something is shaped.</summary>
    private static void AppendTogether(TogetherShape together, ImmutableArray<string> sizes, Action<string> remark)
    {
        remark("at the same time, counted from the first row of this line:");
        for (var i = 0; i < together.Shapings.Count; i++)
        {
            remark($"  ({(char)('a' + (i % 26))}) {DisplayText.OneLine(together.Shapings[i])}");
        }

        foreach (var (size, rows) in sizes.Zip(together.Sizes))
        {
            if (rows.Count == 0)
            {
                continue;
            }

            remark($"  {(size.Length == 0 ? "" : DisplayText.OneLine(size) + ", ")}{"row",4}{string.Concat(together.Shapings.Select((_, i) => $"{$"({(char)('a' + (i % 26))})",6}"))}{"stitches",10}");
            foreach (var row in rows)
            {
                remark($"  {new string(' ', size.Length == 0 ? 0 : DisplayText.Width(size) + 2)}{row.Row,4}{string.Concat(row.Changes.Select(c => $"{(c == 0 ? "·" : c > 0 ? $"+{c}" : $"−{-c}"),6}"))}{row.Count,10}");
            }
        }
    }

    private static string[] CellsOf(CountedRow row) =>
    [
        row.Line.ToString(CultureInfo.InvariantCulture),
        DisplayText.Cut(row.Label, 40),
        CountedRow.InTradeForm(row.Before),
        CountedRow.InTradeForm(row.After),
        CountedRow.InTradeForm(row.Stated),
        "",
    ];

    private static string Line(string[] cells, int[] widths)
    {
        var line = new StringBuilder();
        for (var c = 0; c < cells.Length; c++)
        {
            line.Append(cells[c]);
            if (c < widths.Length)
            {
                line.Append(' ', Math.Max(0, widths[c] - DisplayText.Width(cells[c])) + Gap);
            }
        }

        return line.ToString().TrimEnd();
    }
}
