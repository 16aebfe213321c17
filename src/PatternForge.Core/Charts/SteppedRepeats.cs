using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Finds a repeat whose edge steps aside in some rows, because no straight line runs between the stitches of all of them: woven cables.</summary>
internal static class SteppedRepeats
{
    /// <summary>A repeat: its rightmost column, its columns, how often it comes, and by how many columns it begins further to the left in each row.</summary>
    public readonly record struct Found(int From, int Period, int Times, int[] Shifts);

    /// <summary>The repeat that leaves the fewest columns to draw, and of those the one that steps aside least; null where there is none.</summary>
    /// <param name="grid">The squares of each row by column.</param>
    /// <param name="rows">The rows, laid out.</param>
    /// <param name="columns">How many columns they have.</param>
    /// <param name="worked">The same rows as they were worked: where their words begin to repeat.</param>
    /// <param name="periods">How many columns it may have.</param>
    public static Found? Fold(ChartRepeats.Square[][] grid, ImmutableArray<ChartRow> rows, int columns, Fabric worked, IEnumerable<int> periods)
    {
        // Where all stitches are one column wide, a straight line runs between them anywhere.
        var widest = rows.Max(r => r.Cells.Max(c => c.Span));
        if (widest < 2)
        {
            return null;
        }

        (int Drawn, int Steps, int Votes, Found Repeat)? best = null;
        foreach (var period in periods.Where(p => p >= 1 && p <= columns / 2))
        {
            var runs = RunsOf(grid, columns, period);
            for (var from = 0; runs.Length > 0 && from < runs.Max(r => r.From) + period && from + period <= columns; from++)
            {
                if (At(grid, runs, from, period, widest) is not { } found)
                {
                    continue;
                }

                var (drawn, steps, votes) = (columns - ((found.Times - 1) * period), found.Shifts.Count(s => s != 0), Votes(rows, worked, found));
                if (best is not { } b || drawn < b.Drawn || (drawn == b.Drawn && (steps < b.Steps || (steps == b.Steps && votes > b.Votes))))
                {
                    best = (drawn, steps, votes, found);
                }
            }
        }

        return best?.Repeat;
    }

    /// <summary>The longest stretch of each row that comes again after so many columns; none where a row has no such stretch.</summary>
    private static (int From, int To)[] RunsOf(ChartRepeats.Square[][] grid, int columns, int period)
    {
        var runs = new (int From, int To)[grid.Length];
        for (var row = 0; row < grid.Length; row++)
        {
            if (ChartRepeats.LongestRun([grid[row]], columns, period) is not { } run)
            {
                return [];
            }

            runs[row] = run;
        }

        return runs;
    }

    /// <summary>A repeat that begins in a column, with each row's own beginning as near to it as its stitches allow; null where it does not come at least twice.</summary>
    private static Found? At(ChartRepeats.Square[][] grid, (int From, int To)[] runs, int from, int period, int widest)
    {
        var shifts = new int[grid.Length];
        var times = int.MaxValue;
        for (var row = 0; row < grid.Length; row++)
        {
            if (ShiftOf(grid[row], runs[row], from, period, Math.Min(widest, period) - 1) is not { } shift)
            {
                return null;
            }

            shifts[row] = shift;
            times = Math.Min(times, (runs[row].To - from - shift) / period);
        }

        return times >= 2 && Array.Exists(shifts, s => s == 0) ? new Found(from, period, times, shifts) : null;
    }

    /// <summary>The nearest column to the beginning of the repeat at which a row can be parted; of two the right one.</summary>
    private static int? ShiftOf(ChartRepeats.Square[] row, (int From, int To) run, int from, int period, int most)
    {
        bool CanPart(int at) => at >= run.From && at + (2 * period) <= run.To && row[at].Within == 0 && row[at + period].Within == 0;
        for (var aside = 0; aside <= most; aside++)
        {
            if (CanPart(from - aside))
            {
                return -aside;
            }

            if (CanPart(from + aside))
            {
                return aside;
            }
        }

        return null;
    }

    /// <summary>In how many rows the repeat begins where their words begin theirs.</summary>
    private static int Votes(ImmutableArray<ChartRow> rows, Fabric worked, Found found)
    {
        var votes = 0;
        for (var r = 0; r < rows.Length; r++)
        {
            votes += worked.Rows[r].RepeatAt is { } at && ChartRepeats.EdgeOf(rows[r], at) is { } edge && (edge - found.From - found.Shifts[r]) % found.Period == 0 ? 1 : 0;
        }

        return votes;
    }
}
