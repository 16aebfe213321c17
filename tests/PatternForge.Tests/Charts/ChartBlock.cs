using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Charts;

/// <summary>Writes a chart as a block of the source: short names with a key, as a designer would type it.</summary>
internal static class ChartBlock
{
    /// <summary>The block; null, with the reason, where a square has no name that a key can hold.</summary>
    public static (string? Text, string? Reason) Of(Chart chart)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        var lines = new List<string>();
        foreach (var row in chart.Rows.Reverse())
        {
            var squares = new List<string>();
            foreach (var cell in row.Cells.Reverse())
            {
                var left = cell.Column + cell.Span;
                if (chart.Repeat is { } opens && left == opens.From + row.RepeatShift + opens.Columns)
                {
                    squares.Add("[");
                }

                if (cell.Operation is null)
                {
                    squares.Add("_");
                }
                else if (Shown(cell.Operation, row.Side) is not { } shown)
                {
                    return (null, $"no square shows {cell.Operation.Id} of a {(row.Side == FabricSide.Right ? "right" : "wrong")}-side row");
                }
                else if (shown.Id.Contains(',', StringComparison.Ordinal))
                {
                    return (null, $"{shown.Id} is several stitches in words");
                }
                else
                {
                    if (!names.TryGetValue(shown.Id, out var name))
                    {
                        names[shown.Id] = name = string.Create(CultureInfo.InvariantCulture, $"s{names.Count + 1}");
                    }

                    squares.Add(name);
                }

                if (chart.Repeat is { } closes && cell.Column == closes.From + row.RepeatShift)
                {
                    squares.Add("]");
                }
            }

            var number = row.Number.ToString(CultureInfo.InvariantCulture);
            lines.Add(row.Side == FabricSide.Wrong ? $"{number}  {string.Join(' ', squares)}" : $"   {string.Join(' ', squares)}  {number}");
        }

        return ($"```chart\nkey: {string.Join(", ", names.Select(n => $"{n.Value} = {n.Key}"))}\n{string.Join('\n', lines)}\n```\n", null);
    }

    /// <summary>The stitch whose square on the right side stands for an operation of a row.</summary>
    private static Operation? Shown(Operation operation, FabricSide side)
    {
        if (side == FabricSide.Right)
        {
            return operation;
        }

        return KnitOperations.All.Append(KnitSlips.Front).Append(KnitSlips.Back).Append(operation)
            .FirstOrDefault(o => o.Takes == operation.Takes && o.Makes == operation.Makes && StitchLook.For(o, side).Id == operation.Id);
    }
}
