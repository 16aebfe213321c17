using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>One line of a table, cut into its cells.</summary>
/// <param name="Span">The line.</param>
/// <param name="Cells">Its cells without the blanks around them; an empty one is a place without length.</param>
/// <param name="IsRule">True for the line of hyphens under the head.</param>
internal sealed record TableLine(TextSpan Span, List<TextSpan> Cells, bool IsRule)
{
    private const int MostCells = 40;

    /// <summary>Cuts a line at a sign.</summary>
    public static TableLine Of(SourceText source, TextSpan line, char sign)
    {
        var text = source.Slice(line).TrimEnd();
        var span = new TextSpan(line.Start, text.Length);
        var (start, end) = (0, text.Length);
        if (sign == '|')
        {
            start = text is ['|', ..] ? 1 : 0;
            end -= text.Length > 1 && text is [.., '|'] ? 1 : 0;
        }

        var cells = new List<TextSpan>();
        var at = start;
        while (cells.Count < MostCells && at <= end)
        {
            var length = text[at..end].IndexOf(sign);
            var cell = length < 0 ? text[at..end] : text.Slice(at, length);
            var lead = cell.Length - cell.TrimStart().Length;
            cells.Add(new TextSpan(line.Start + at + lead, cell.Trim().Length));
            at = length < 0 ? end + 1 : at + length + 1;
        }

        return new TableLine(span, cells, sign == '|' && text.IndexOf('-') >= 0 && text.IndexOfAnyExcept("|-: ") < 0);
    }
}
