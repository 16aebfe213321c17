using System.Text;
using PatternForge.Core.Model;

namespace PatternForge.Tests.Charts;

/// <summary>A chart in letters: the top row first, right on the right; `.` is a square without a stitch, `[ ]` stand round the repeat.</summary>
internal static class ChartText
{
    public static string Of(Chart chart)
    {
        var width = Math.Max(3, chart.Rows.Max(r => r.Cells.Max(c => ((c.Operation?.Id.Length ?? 1) / c.Span) + 1)));
        var text = new StringBuilder();
        foreach (var row in chart.Rows.Reverse())
        {
            text.Append(row.Side == FabricSide.Wrong ? $"{row.Number,3} " : "    ");
            foreach (var cell in row.Cells.Reverse())
            {
                var left = cell.Column + cell.Span;
                text.Append(chart.Repeat is { } r && (left == r.From + row.RepeatShift + r.Columns || left == r.From + row.RepeatShift) ? '|' : ' ');
                var name = cell.Operation?.Id.Replace(' ', '_') ?? ".";
                text.Append(name.PadLeft((width * cell.Span) + cell.Span - 1));
            }

            text.Append(chart.Repeat?.From + row.RepeatShift == 0 ? '|' : ' ').Append(row.Side == FabricSide.Right ? $" {row.Number}" : "").Append('\n');
        }

        return string.Join('\n', text.ToString().Split('\n').Select(l => l.TrimEnd()));
    }
}
