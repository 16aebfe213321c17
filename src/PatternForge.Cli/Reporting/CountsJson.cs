using System.Text.Json;

namespace PatternForge.Cli.Reporting;

/// <summary>For other programs: the shape that the README promises, on one line.</summary>
internal static class CountsJson
{
    /// <summary>The whole table.</summary>
    public static string Of(CountsTable table)
    {
        var shape = new CountsShape(
            1,
            Words.WellFormed(table.Path),
            [.. table.Sizes.Select(Words.WellFormed)],
            [.. table.Pieces.Select(p => new PieceShape(Words.WellFormed(p.Name), [.. p.Rows.Select(ShapeOf)]))]);
        return JsonSerializer.Serialize(shape, JsonReport.Shapes.CountsShape) + "\n";
    }

    private static RowShape ShapeOf(CountedRow row) => new(
        Words.WellFormed(row.Label),
        row.Line,
        Words.WellFormed(row.Text),
        row.Status,
        row.Worked.IsDefault ? [] : row.Worked,
        row.Before,
        row.After,
        row.Kinds.IsEmpty ? null : [.. row.Kinds],
        row.Stated.IsEmpty ? null : row.Stated,
        row.Reading is null ? null : Words.WellFormed(row.Reading),
        row.Trace.IsEmpty ? null : row.Trace,
        row.Mirrored.IsEmpty ? null : row.Mirrored,
        row.Sections.IsEmpty ? null : row.Sections,
        row.Together);
}
