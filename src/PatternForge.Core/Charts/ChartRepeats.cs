using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Finds the part of a chart that comes again and again, and leaves it in once.</summary>
internal static class ChartRepeats
{
    /// <summary>One square in a column: the stitch it belongs to, and how far into it.</summary>
    internal readonly record struct Square(string? Id, int Within, int Span, string? Colour);

    /// <summary>The chart's rows with the repeat once; as they are, and null, where nothing comes twice.</summary>
    /// <param name="rows">The rows, laid out.</param>
    /// <param name="columns">How many columns they have.</param>
    /// <param name="worked">The same rows as they were worked: where their words begin to repeat.</param>
    /// <param name="period">Columns of the repeat where they are known; null to look for them.</param>
    public static (ImmutableArray<ChartRow> Rows, int Columns, (int From, int Columns, int Times)? Repeat) Fold(
        ImmutableArray<ChartRow> rows, int columns, Fabric worked, int? period)
    {
        var grid = rows.Select(r => SquaresOf(r, columns)).ToArray();
        var periods = period is { } known ? [known] : Enumerable.Range(1, columns / 2);
        (int Drawn, int From, int Period, int Times)? best = null;
        foreach (var candidate in periods)
        {
            if (candidate < 1 || candidate > columns / 2 || LongestRun(grid, columns, candidate) is not { } run)
            {
                continue;
            }

            var from = Begin(grid, rows, worked, run, candidate);
            var times = from is { } at ? (run.To - at) / candidate : 0;
            if (times >= 2 && (best is null || columns - ((times - 1) * candidate) < best.Value.Drawn))
            {
                best = (columns - ((times - 1) * candidate), from!.Value, candidate, times);
            }
        }

        if (best is not { } found)
        {
            return SteppedRepeats.Fold(grid, rows, columns, worked, periods) is not { } stepped ? (rows, columns, null)
                : ([.. rows.Select((r, i) => r with
                {
                    Cells = Without(r.Cells, stepped.From + stepped.Shifts[i] + stepped.Period, stepped.From + stepped.Shifts[i] + (stepped.Period * stepped.Times)),
                    RepeatShift = stepped.Shifts[i],
                })], columns - ((stepped.Times - 1) * stepped.Period), (stepped.From, stepped.Period, stepped.Times));
        }

        var (cutFrom, cutTo) = (found.From + found.Period, found.From + (found.Period * found.Times));
        return ([.. rows.Select(r => r with { Cells = Without(r.Cells, cutFrom, cutTo) })], found.Drawn, (found.From, found.Period, found.Times));
    }

    private static Square[] SquaresOf(ChartRow row, int columns)
    {
        var squares = new Square[columns];
        foreach (var cell in row.Cells)
        {
            for (var i = 0; i < cell.Span; i++)
            {
                squares[cell.Column + i] = new Square(cell.Operation?.Id, i, cell.Span, cell.Colour);
            }
        }

        return squares;
    }

    /// <summary>The longest stretch of columns in which every row comes again after so many columns; null where it is not at least twice as long.</summary>
    internal static (int From, int To)? LongestRun(Square[][] grid, int columns, int period)
    {
        var (bestFrom, bestTo, from) = (0, 0, 0);
        for (var column = 0; column + period <= columns; column++)
        {
            if (column + period < columns && grid.All(row => row[column] == row[column + period]))
            {
                continue;
            }

            if (column + period - from > bestTo - bestFrom)
            {
                (bestFrom, bestTo) = (from, column + period);
            }

            from = column + 1;
        }

        return bestTo - bestFrom >= 2 * period ? (bestFrom, bestTo) : null;
    }

    /// <summary>Where the repeat begins: where the words of most rows begin theirs, else as far to the right as can be; never inside a stitch.</summary>
    private static int? Begin(Square[][] grid, ImmutableArray<ChartRow> rows, Fabric worked, (int From, int To) run, int period)
    {
        var votes = new int[period];
        for (var r = 0; r < rows.Length; r++)
        {
            if (worked.Rows[r].RepeatAt is { } at && EdgeOf(rows[r], at) is { } edge)
            {
                votes[edge % period]++;
            }
        }

        int? best = null;
        for (var from = run.From; from < run.From + period && from + (2 * period) <= run.To; from++)
        {
            if (grid.All(row => row[from].Within == 0 && (from + period >= row.Length || row[from + period].Within == 0)) && (best is null || votes[from % period] > votes[best.Value % period]))
            {
                best = from;
            }
        }

        return best;
    }

    /// <summary>The column at which the words of a row begin to repeat: on the right of that stitch in a right-side row, on the left of it in the others.</summary>
    internal static int? EdgeOf(ChartRow row, int at)
    {
        var cells = row.Cells.Where(c => c.Operation is not null).ToArray();
        return at >= cells.Length ? null : row.Side == FabricSide.Right ? cells[at].Column : cells[cells.Length - 1 - at].Column + cells[cells.Length - 1 - at].Span;
    }

    private static ImmutableArray<ChartCell> Without(ImmutableArray<ChartCell> cells, int from, int to) =>
        [.. cells.Where(c => c.Column < from || c.Column >= to).Select(c => c.Column < from ? c : c with { Column = c.Column - (to - from) })];
}
