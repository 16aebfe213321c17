using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>
/// Lays rows of stitches out in columns. The widest row fills them all; the others leave squares free, so that each stitch stands as near as can be
/// over the stitches it is worked into and under those that are worked into it.
/// </summary>
internal static class ChartLayout
{
    /// <summary>The most columns that a chart is laid out in.</summary>
    public const int MostColumns = 600;

    /// <summary>A stitch with its place among those below and those it makes, all counted from the right.</summary>
    private sealed class Cell
    {
        public required Operation Operation { get; init; }

        public required int Base { get; init; }

        public required int Made { get; init; }

        public string? Colour { get; init; }

        public int Column { get; set; }

        public int Span => Math.Max(1, Operation.Makes);
    }

    /// <summary>The rows of the chart; null when it would have too many columns.</summary>
    /// <param name="fabric">The rows as they were worked.</param>
    /// <param name="isShaped">True for a piece of its own whose edges step out and in: then no square is left free between its stitches.</param>
    public static (ImmutableArray<ChartRow> Rows, int Columns)? Of(Fabric fabric, bool isShaped)
    {
        var rows = fabric.Rows.Select(CellsOf).ToArray();
        var columns = rows.Max(r => r.Sum(c => c.Span));
        if (columns > MostColumns)
        {
            return null;
        }

        var widest = Array.FindIndex(rows, r => r.Sum(c => c.Span) == columns);
        Fill(rows[widest]);
        for (var r = widest + 1; r < rows.Length; r++)
        {
            Place(rows[r], Above(rows[r], StitchColumns(rows[r - 1])), columns, isShaped);
        }

        for (var r = widest - 1; r >= 0; r--)
        {
            Place(rows[r], Below(rows[r], rows[r + 1]), columns, isShaped);
        }

        return ([.. rows.Select((cells, i) => new ChartRow(fabric.Rows[i].Number, fabric.Rows[i].Side, Squares(cells, columns), fabric.Rows[i].Origin))], columns);
    }

    /// <summary>A row's stitches from right to left: wrong-side rows are worked the other way.</summary>
    private static Cell[] CellsOf(FabricRow row)
    {
        var cells = new List<Cell>();
        var (at, made) = (0, 0);
        for (var i = 0; i < row.Stitches.Length; i++)
        {
            var index = row.Side == FabricSide.Right ? i : row.Stitches.Length - 1 - i;
            var operation = row.Stitches[index];
            cells.Add(new Cell { Operation = operation, Base = at, Made = made, Colour = row.Colours[index] });
            at += operation.Takes;
            made += operation.Makes;
        }

        return [.. cells];
    }

    private static void Fill(Cell[] cells)
    {
        var column = 0;
        foreach (var cell in cells)
        {
            cell.Column = column;
            column += cell.Span;
        }
    }

    /// <summary>The column of each stitch that a row makes.</summary>
    private static List<int> StitchColumns(Cell[] cells)
    {
        var columns = new List<int>();
        foreach (var cell in cells)
        {
            for (var i = 0; i < cell.Operation.Makes; i++)
            {
                columns.Add(cell.Column + i);
            }
        }

        return columns;
    }

    /// <summary>Twice the column where each stitch would begin if it stood right over those that it is worked into; null where that does not matter.</summary>
    private static int?[] Above(Cell[] cells, List<int> below)
    {
        var wanted = new int?[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var (from, to) = (cells[i].Base, cells[i].Base + cells[i].Operation.Takes - 1);
            if (from <= to && to < below.Count)
            {
                wanted[i] = below[from] + below[to] - (cells[i].Span - 1);
            }
        }

        return wanted;
    }

    /// <summary>Twice the column where each stitch would begin if it stood right under those that are worked into it.</summary>
    private static int?[] Below(Cell[] cells, Cell[] above)
    {
        var over = new List<int>();
        foreach (var cell in above)
        {
            for (var i = 0; i < cell.Operation.Takes; i++)
            {
                over.Add(cell.Operation.Takes == cell.Span ? 2 * (cell.Column + i) : (2 * cell.Column) + cell.Span - 1);
            }
        }

        var wanted = new int?[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var (from, makes) = (cells[i].Made, cells[i].Operation.Makes);
            if (makes > 0 && from + makes <= over.Count)
            {
                wanted[i] = ((over[from] + over[from + makes - 1]) / 2) - (makes - 1);
            }
        }

        return wanted;
    }

    /// <summary>Puts the stitches into columns in their order, as near to where they are wanted as can be: the sum of all distances is the least.</summary>
    private static void Place(Cell[] cells, int?[] wanted, int columns, bool together)
    {
        var free = columns - cells.Sum(c => c.Span);
        if (free == 0)
        {
            Fill(cells);
            return;
        }

        if (together)
        {
            var (nearest, least) = (0, long.MaxValue);
            Fill(cells);
            for (var gap = 0; gap <= free; gap++)
            {
                var distance = cells.Select((c, i) => wanted[i] is { } at ? (long)Math.Abs((2 * (c.Column + gap)) - at) : 0).Sum();
                (nearest, least) = distance < least ? (gap, distance) : (nearest, least);
            }

            foreach (var cell in cells)
            {
                cell.Column += nearest;
            }

            return;
        }

        // After so many free squares to the right of it, the stitches up to this one cost at least so much.
        var cost = new int[cells.Length, free + 1];
        var taken = new bool[cells.Length, free + 1];
        var packed = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            for (var gap = 0; gap <= free; gap++)
            {
                var here = (i > 0 ? cost[i - 1, gap] : 0) + (wanted[i] is { } at ? Math.Abs((2 * (packed + gap)) - at) : 0);
                taken[i, gap] = gap == 0 || here < cost[i, gap - 1];
                cost[i, gap] = taken[i, gap] ? here : cost[i, gap - 1];
            }

            packed += cells[i].Span;
        }

        var left = free;
        for (var i = cells.Length - 1; i >= 0; i--)
        {
            while (!taken[i, left])
            {
                left--;
            }

            packed -= cells[i].Span;
            cells[i].Column = packed + left;
        }
    }

    /// <summary>The row's squares, those without a stitch among them.</summary>
    private static ImmutableArray<ChartCell> Squares(Cell[] cells, int columns)
    {
        var squares = ImmutableArray.CreateBuilder<ChartCell>();
        var column = 0;
        foreach (var cell in cells)
        {
            for (; column < cell.Column; column++)
            {
                squares.Add(new ChartCell(null, column, 1));
            }

            squares.Add(new ChartCell(cell.Operation, column, cell.Span) { Colour = cell.Colour });
            column += cell.Span;
        }

        for (; column < columns; column++)
        {
            squares.Add(new ChartCell(null, column, 1));
        }

        return squares.ToImmutable();
    }
}
