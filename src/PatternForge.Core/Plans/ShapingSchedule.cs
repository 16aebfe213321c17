using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Shaping from one count to another over rows: both counts and the rows are met exactly, and the intervals differ by one step at most.</summary>
/// <remarks>
/// A step is two rows where only right-side rows are shaped, else one. "Every 4th row" counts as the trade counts: rows 4, 8, 12; so right-side rows have even numbers and the
/// first row of the plan is a wrong-side one, unless the plan begins at once. Worked example: 11 shapings over 108 rows, right-side rows only: every 8th row once, then
/// every 10th row 10 times (common practice).
/// </remarks>
public static class ShapingSchedule
{
    /// <summary>The plan for given rows.</summary>
    public static Planned<ShapingPlan> Plan(ShapingAsk ask)
    {
        if (!PlanLimits.IsCount(ask.From) || !PlanLimits.IsCount(ask.To) || ask.Rows is < 0 or > PlanLimits.MostRows || ask.PlainAtEnd < 0 || ask.PerTime < 1)
        {
            return Planned.No<ShapingPlan>(string.Create(CultureInfo.InvariantCulture, $"from {ask.From} to {ask.To} sts over {ask.Rows} rows, {ask.PerTime} at a time, is no shaping: counts and rows go from 0 to {PlanLimits.MostStitches}, at least 1 st at a time"));
        }

        var change = Math.Abs(ask.To - ask.From);
        if (change % ask.PerTime != 0)
        {
            var over = change % ask.PerTime;
            var up = Math.Sign(ask.To - ask.From);
            int[] before = [ask.From - (up * (ask.PerTime - over)), ask.From + (up * over)];
            int[] after = [ask.To - (up * over), ask.To + (up * (ask.PerTime - over))];
            return Planned.No<ShapingPlan>(
                string.Create(CultureInfo.InvariantCulture, $"from {ask.From} to {ask.To} sts are {change}, which {ask.PerTime} at a time do not give"),
                string.Create(CultureInfo.InvariantCulture, $"use {before.Min()} or {before.Max()} sts before, or {after.Min()} or {after.Max()} after"));
        }

        var times = change / ask.PerTime;
        if (times == 0)
        {
            return Planned.Of(new ShapingPlan(ask, default, default, ask.Rows));
        }

        var step = ask.On == ShapedRows.Any ? 1 : 2;
        var rows = ask.Rows - ask.PlainAtEnd;
        var steps = ask.BeginsNow ? (rows + step - 1) / step : rows / step;
        if (steps < times)
        {
            var needed = ((times - (ask.BeginsNow ? 1 : 0)) * step) + (ask.BeginsNow ? 1 : 0) + ask.PlainAtEnd;
            var least = steps < 1 ? 0 : (change + steps - 1) / steps;
            return Planned.No<ShapingPlan>(
                string.Create(CultureInfo.InvariantCulture, $"{times} shaping rows need {needed} rows; there are {ask.Rows}"),
                string.Create(CultureInfo.InvariantCulture, $"more rows{(step == 2 ? ", shaping on every row" : "")}{(least > 0 ? $", or at least {least} sts at a time" : "")}"));
        }

        var (shorter, more) = (steps / times, steps % times);
        var (shorts, longs) = (new Stretch(shorter * step, times - more), new Stretch((shorter + 1) * step, more));
        var (first, then) = ask.LongerFirst && more > 0 ? (longs, shorts) : (shorts, longs);
        if (!ask.BeginsNow)
        {
            return Planned.Of(new ShapingPlan(ask, first, Told(then), rows - (steps * step) + ask.PlainAtEnd));
        }

        // The first row is shaped, and the last interval holds plain rows alone.
        (first, then) = then.Times > 0 ? (first, then with { Times = then.Times - 1 }) : (first with { Times = first.Times - 1 }, then);
        var last = 1 + (first.Every * first.Times) + (then.Every * then.Times);
        return Planned.Of(new ShapingPlan(ask, Told(first), Told(then), rows - last + ask.PlainAtEnd));
    }

    /// <summary>The plan over a length: as many whole rows as the gauge gives.</summary>
    /// <param name="ask">What is asked; its rows are not looked at.</param>
    /// <param name="length">The length.</param>
    /// <param name="rows">Rows of the gauge.</param>
    /// <param name="over">Over how much, in the unit of the length.</param>
    public static Planned<ShapingPlan> Plan(ShapingAsk ask, decimal length, decimal rows, decimal over) =>
        GaugeMath.Rows(length, rows, over) is { } exact && exact <= PlanLimits.MostRows
            ? Plan(ask with { Rows = (int)decimal.Floor(exact) })
            : Planned.No<ShapingPlan>($"a length of {PlanWords.Figure(length)} at {PlanWords.Figure(rows)} rows in {PlanWords.Figure(over)} gives no rows to shape over");

    private static Stretch Told(Stretch stretch) => stretch.Times == 0 ? default : stretch;
}
