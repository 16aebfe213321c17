using System.Buffers;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Which column of a table holds the row numbers, which the words, which the counts: from its head, else from what stands in it.</summary>
internal sealed class TableColumns
{
    private static readonly SearchValues<char> BareSigns = SearchValues.Create("0123456789-–,&. ()RSWrsw");

    private TableColumns(TableLine? head, int label, int count, int side, string rowWord)
    {
        Head = head;
        Label = label;
        Count = count;
        Side = side;
        RowWord = rowWord;
    }

    /// <summary>The line that names the columns; null where there is none.</summary>
    public TableLine? Head { get; }

    /// <summary>The column of row numbers.</summary>
    public int Label { get; }

    /// <summary>The column of stitch counts; -1 for none.</summary>
    public int Count { get; }

    /// <summary>The column that says RS or WS; -1 for none.</summary>
    public int Side { get; }

    /// <summary>What a bare number is: "Row" or "Rnd".</summary>
    public string RowWord { get; }

    /// <summary>The columns of a table of rows; null for another table.</summary>
    public static TableColumns? Of(SourceText source, List<TableLine> table)
    {
        var hasRule = table.Count > 1 && table[1].IsRule;
        var head = hasRule || IsHead(source, table[0]) ? table[0] : null;
        var (label, count, side) = (0, -1, -1);
        var isLabelled = false;
        var word = "Row";
        for (var i = 0; head is not null && i < head.Cells.Count; i++)
        {
            var name = source.ToString(head.Cells[i]).ToLowerInvariant().Trim('*', '_', '#', '.', ' ');
            switch (name)
            {
                case "row" or "rows" or "row no" or "row number" or "rnd" or "rnds" or "round" or "rounds" or "r" or "no" or "number" or "step" or "":
                    label = isLabelled ? label : i;
                    isLabelled = true;
                    word = name.StartsWith("rnd", StringComparison.Ordinal) || name.StartsWith("round", StringComparison.Ordinal) ? "Rnd" : word;
                    break;
                case "sts" or "st" or "stitches" or "count" or "total" or "stitch count" or "st count" or "sts count" or "total sts" or "no of sts" or "number of stitches" or "stitches on needle":
                    count = i;
                    break;
                case "side" or "rs/ws" or "ws/rs":
                    side = i;
                    break;
            }
        }

        if (head is null && source.Slice(table[0].Cells[0]) is [.., '.' or ')'] and [>= '0' and <= '9', ..])
        {
            return null; // "1.<tab>Knit" is a list
        }

        var body = table.Where(l => l != head && !l.IsRule).ToList();
        if (body.Count == 0)
        {
            return null;
        }

        if (count < 0)
        {
            var last = body.Max(l => l.Cells.Count) - 1;
            var isCount = last >= 2 && last != label && body.All(l => last >= l.Cells.Count || l.Cells[last].IsEmpty || IsNumber(source.Slice(l.Cells[last]))) && body.Exists(l => last < l.Cells.Count && !l.Cells[last].IsEmpty);
            count = isCount ? last : -1;
        }

        var columns = new TableColumns(head, label, count, side, word);
        var labelled = body.Where(l => columns.LabelOf(source, l) is not null).ToList();
        var reads = labelled.Count(l => columns.Words(source, l) is { Count: > 0 and < 4 } words && words.Exists(w => RowLooks.Reads(source.Slice(w))));
        var isBare = labelled.Count > 0 && IsBare(source, columns.LabelOf(source, labelled[0])!.Value);
        return labelled.Count > 0 && reads * 3 >= labelled.Count * 2 && labelled.Count * 2 >= body.Count && (!isBare || isLabelled || labelled.Count > 1) ? columns : null;
    }

    /// <summary>The cell with the row's number; null where the line has none.</summary>
    public TextSpan? LabelOf(SourceText source, TableLine line)
    {
        if (Label >= line.Cells.Count || line.Cells[Label].IsEmpty)
        {
            return null;
        }

        var cell = line.Cells[Label];
        return IsBare(source, cell) || RowLooks.BeginsNumbered(source, cell) || IsPlainLabel(source.Slice(cell)) ? TrimColon(source, cell) : null;
    }

    /// <summary>True for "3", "3-5", "3 (RS)": a number that does not say of what.</summary>
    public static bool IsBare(SourceText source, TextSpan cell) => source.Slice(cell) is [>= '0' and <= '9', ..] and var text && text.IndexOfAnyExcept(BareSigns) < 0 && text.Length < 24;

    /// <summary>The cells with the words of the row, in order.</summary>
    public List<TextSpan> Words(SourceText source, TableLine line) =>
        [.. line.Cells.Where((cell, i) => i > Label && i != Count && i != Side && !cell.IsEmpty)];

    private static TextSpan TrimColon(SourceText source, TextSpan cell) => new(cell.Start, source.Slice(cell).TrimEnd(":. ").Length);

    // "Row 3" without a sign behind it.
    private static bool IsPlainLabel(ReadOnlySpan<char> text)
    {
        var blank = text.IndexOf(' ');
        return blank > 0 && blank + 1 < text.Length && char.IsAsciiDigit(text[blank + 1]) && (text[..blank].StartsWith("row", StringComparison.OrdinalIgnoreCase) || text[..blank].StartsWith("rnd", StringComparison.OrdinalIgnoreCase)
            || text[..blank].StartsWith("round", StringComparison.OrdinalIgnoreCase) || text[..blank].Equals("r", StringComparison.OrdinalIgnoreCase));
    }

    private static bool IsHead(SourceText source, TableLine line) =>
        source.ToString(line.Cells[0]).ToLowerInvariant().Trim('*', '#', ' ') is "row" or "rows" or "rnd" or "rnds" or "round" or "rounds" or "row no" or "no" or "row no.";

    private static bool IsNumber(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        var letters = text.TrimStart("0123456789()[], /:=-–").TrimEnd(")].");
        return text.IndexOfAnyInRange('0', '9') >= 0 && (letters.IsEmpty || letters is "sts" or "st" or "stitches" or "sc" or "hdc" or "dc" or "tr");
    }
}
