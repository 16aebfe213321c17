using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Reads the lines of a table as rows where they begin with a row's number: cells between `|`, or parted by tabs.</summary>
internal sealed class TableRows
{
    private const int MostLines = 2000;

    private readonly SourceText _source;
    private readonly List<Mend> _mends;
    private int _noTableBefore;

    public TableRows(SourceText source, List<Mend> mends)
    {
        _source = source;
        _mends = mends;
    }

    /// <summary>True for a line of at least two cells.</summary>
    public static bool Begins(BodyLines lines) => SignOf(lines.Text) is not null;

    /// <summary>Reads the table that begins at the line, and passes over a table of other things; false, with the lines where they were, where there is no table.</summary>
    public bool Read(BodyLines lines)
    {
        var sign = SignOf(lines.Text)!.Value;
        var start = lines.Place;
        if (lines.Content.Start < _noTableBefore)
        {
            return false;
        }

        var table = new List<TableLine> { TableLine.Of(_source, lines.Content, sign) };
        while (table.Count < MostLines && IsOfTable(_source.Slice(lines.Peek()), sign) && lines.Next())
        {
            table.Add(TableLine.Of(_source, lines.Content, sign));
        }

        var columns = TableColumns.Of(_source, table);
        if (columns is null)
        {
            // Lines with a tab in them may be rows all the same: "1.<tab>Knit".
            _noTableBefore = table[^1].Span.End;
            lines.Place = sign == '|' ? lines.Place : start;
            return sign == '|';
        }

        foreach (var line in table)
        {
            Line(line, columns);
        }

        return true;
    }

    private static bool IsOfTable(ReadOnlySpan<char> text, char sign) => sign == '|' ? text.Contains('|') : text.Trim().Contains('\t');

    private static char? SignOf(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        return text.Contains('|') && text.Length > 2 ? '|' : text.Contains('\t') ? '\t' : null;
    }

    private void Line(TableLine line, TableColumns columns)
    {
        if (line == columns.Head || line.IsRule)
        {
            _mends.Add(new Mend(line.Span, "", DraftRules.RowsInTable));
            return;
        }

        var label = columns.LabelOf(_source, line);
        var words = columns.Words(_source, line);
        if (words.Count == 0)
        {
            _mends.Add(new Mend(line.Span, "", DraftRules.RowsInTable));
            return;
        }

        var count = columns.Count < 0 || columns.Count >= line.Cells.Count ? default : line.Cells[columns.Count];
        var shown = TextSpan.FromBounds(line.Cells[0].IsEmpty ? words[0].Start : line.Cells[0].Start, count.IsEmpty ? words[^1].End : Math.Max(words[^1].End, count.End));
        var at = line.Span.Start;
        TextSpan? told = shown; // by the first mend of the line
        void Until(int place, string text)
        {
            if (place > at || text.Length > 0)
            {
                _mends.Add(new Mend(TextSpan.FromBounds(at, place), text, DraftRules.RowsInTable, told));
                told = null;
            }

            at = place;
        }

        if (label is { } name)
        {
            Until(name.Start, TableColumns.IsBare(_source, name) ? columns.RowWord + " " : "");
            at = name.End;
            var side = columns.Side < 0 || columns.Side >= line.Cells.Count ? default : line.Cells[columns.Side];
            Until(words[0].Start, side.IsEmpty ? ": " : $" ({_source.ToString(side)}): ");
        }
        else
        {
            Until(words[0].Start, "\n");
        }

        at = words[0].End;
        foreach (var cell in words.Skip(1))
        {
            Until(cell.Start, " ");
            at = cell.End;
        }

        if (!count.IsEmpty && count.Start >= at)
        {
            var said = _source.Slice(count);
            var isBracketed = said[0] is '(' or '[';
            var isList = said.IndexOfAny("([,/") > 0;
            var stop = _source.Text[at - 1] == '.' ? " " : ". ";
            Until(count.Start, isBracketed ? " " : isList ? stop : " (");
            at = count.End;
            Until(line.Span.End, (isBracketed, isList) switch
            {
                (true, _) => "",
                (false, true) => said.IndexOfAnyInRange('a', 'z') < 0 ? " sts" : "",
                _ => said.IndexOfAnyInRange('a', 'z') < 0 ? " sts)" : ")",
            });
        }
        else
        {
            Until(line.Span.End, "");
        }
    }
}
