using System.Text.Json;
using PatternForge.Core.Model;

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
            [.. table.Pieces.Select(p => new PieceShape(Words.WellFormed(p.Name), [.. p.Rows.Select(ShapeOf)]))],
            table.Shares.IsEmpty ? null : table.Shares);
        return JsonSerializer.Serialize(shape, JsonReport.Shapes.CountsShape) + "\n";
    }

    /// <summary>The shares of a part in the sizes asked for.</summary>
    /// <param name="share">The shares.</param>
    /// <param name="sizes">The sizes, by their number from 0.</param>
    public static SharesShape SharesOf(YarnShares share, IReadOnlyList<int> sizes)
    {
        IReadOnlyList<IReadOnlyList<decimal?>?>? Amounts(Func<ColourAmount, decimal?> read) =>
            share.Amounts.Any(size => size.Any(a => read(a) is not null))
                ? [.. sizes.Select(s => share.Amounts[s].IsEmpty ? null : (IReadOnlyList<decimal?>)[.. share.Amounts[s].Select(a => read(a) is { } value ? Math.Round(value, 1) : (decimal?)null)])]
                : null;

        return new(
            Words.WellFormed(share.Name),
            [.. share.Yarns.Select(Words.WellFormed)],
            [.. sizes.Select(s => share.Stitches[s].IsEmpty ? null : (IReadOnlyList<int>)share.Stitches[s])],
            [.. sizes.Select(s => share.Of(0, s) is null ? null : (IReadOnlyList<decimal>)[.. share.Yarns.Select((_, y) => Math.Round(share.Of(y, s)!.Value, 4))])],
            Amounts(a => a.Metres),
            Amounts(a => a.Grams));
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
