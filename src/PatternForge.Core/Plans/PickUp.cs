using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Stitches picked up along the ends of rows.</summary>
/// <param name="Rows">Rows along the edge.</param>
/// <param name="Stitches">Stitches picked up.</param>
/// <param name="Groups">Rows that give a stitch each, up to the next row that is skipped or gives two.</param>
/// <param name="EndsInGroup">True where a group stands behind the last row that is skipped or gives two.</param>
public sealed record PickUpPlan(int Rows, int Stitches, ImmutableArray<int> Groups, bool EndsInGroup)
{
    /// <summary>Rows that are skipped.</summary>
    public int Skipped => Math.Max(0, Rows - Stitches);

    /// <summary>Rows that give two stitches.</summary>
    public int Doubled => Math.Max(0, Stitches - Rows);

    /// <summary>The rule: <c>(pick up 4, skip 1) 17 times, pick up 3</c>.</summary>
    public string Words()
    {
        if (Skipped + Doubled == 0)
        {
            return string.Create(CultureInfo.InvariantCulture, $"pick up 1 in each of {Rows} rows");
        }

        var mark = Skipped > 0 ? "skip 1" : "pick up 2 in next row";
        var last = EndsInGroup ? Groups.Length - 1 : Groups.Length;
        var clauses = Groups.Take(last).Select(g => g == 0 ? mark : string.Create(CultureInfo.InvariantCulture, $"pick up {g}, {mark}"));
        return PlanWords.Row([.. clauses, EndsInGroup && Groups[^1] > 0 ? string.Create(CultureInfo.InvariantCulture, $"pick up {Groups[^1]}") : ""]);
    }

    /// <summary>The row in notation.</summary>
    public string Row() => string.Create(CultureInfo.InvariantCulture, $"pick up and k {Stitches} sts evenly along edge");
}

/// <summary>Pick-up ratios along rows and edges.</summary>
/// <remarks>Worked example: 71 sts along 88 rows: (pick up 4, skip 1) 17 times, pick up 3; at 20 sts and 26 rows in 4 in the ratio is 10 in 13, which is 3 in 4, 3 in 4, 4 in 5 (common practice).</remarks>
public static class PickUp
{
    /// <summary>So many stitches along so many rows.</summary>
    /// <param name="rows">Rows along the edge.</param>
    /// <param name="stitches">Stitches to pick up.</param>
    /// <param name="endsInGroup">True where the edge ends with rows that give a stitch; false where its last row is the one that is skipped.</param>
    public static Planned<PickUpPlan> Along(int rows, int stitches, bool endsInGroup = true)
    {
        if (rows is < 1 or > PlanLimits.MostRows || stitches < 1 || stitches > 2L * rows)
        {
            return Planned.No<PickUpPlan>(string.Create(CultureInfo.InvariantCulture, $"{stitches} sts cannot be picked up along {rows} rows"), "from 1 st in all to 2 in each row");
        }

        var odd = Math.Abs(rows - stitches);
        var plain = rows - odd;
        var groups = odd == 0 ? [rows] : EvenShare.Parts(plain, endsInGroup ? odd + 1 : odd, endsInGroup ? ShareOrder.LongerTogether : ShareOrder.LongerFirst);
        return Planned.Of(new PickUpPlan(rows, stitches, groups, endsInGroup || odd == 0));
    }

    /// <summary>The ratio of a gauge in its smallest numbers: so many stitches in so many rows; null for a gauge without stitches or rows.</summary>
    public static (int Stitches, int Rows)? Ratio(decimal stitches, decimal rows)
    {
        if (stitches is <= 0 or > 10_000 || rows is <= 0 or > 10_000)
        {
            return null;
        }

        var (a, b) = ((int)decimal.Round(stitches * 100), (int)decimal.Round(rows * 100));
        var (x, y) = (a, b);
        while (y != 0)
        {
            (x, y) = (y, x % y);
        }

        return a == 0 || b == 0 ? null : (a / x, b / x);
    }

    /// <summary>A ratio below one as steps, each of which leaves out one row: 10 in 13 is 3 in 4, 3 in 4, 4 in 5. Empty where no row is left out.</summary>
    public static ImmutableArray<(int Stitches, int Rows)> Steps(int stitches, int rows) =>
        stitches < 1 || rows <= stitches ? [] : [.. EvenShare.Parts(stitches, rows - stitches).Select(s => (s, s + 1))];

    /// <summary>The simplest ratio that is near: so many stitches to so many rows, 10 rows at most, within a fortieth where there is one.</summary>
    /// <remarks>Worked example: 20 sts and 28 rows are 5 in 7; 0.8 is 4 in 5 (arithmetic).</remarks>
    public static (int Stitches, int Rows) Simple(decimal ratio)
    {
        var best = (Stitches: 1, Rows: 1);
        for (var rows = 1; rows <= 10; rows++)
        {
            var near = (Stitches: Math.Max(1, (int)decimal.Round(Math.Clamp(ratio, 0, 10) * rows, MidpointRounding.AwayFromZero)), Rows: rows);
            best = Off(near) < Off(best) ? near : best;
            if (Off(best) <= 0.025m * ratio)
            {
                break;
            }
        }

        return best;

        decimal Off((int Stitches, int Rows) pair) => Math.Abs(((decimal)pair.Stitches / pair.Rows) - ratio);
    }

    /// <summary>The row of a pattern in which stitches are picked up.</summary>
    /// <param name="count">All stitches.</param>
    /// <param name="ratio">Stitches to rows along the ends of rows; null where there are none.</param>
    /// <param name="oneForOne">Stitches picked up one for one.</param>
    /// <param name="edge">The edge's name.</param>
    /// <param name="inRound">True where the work is joined.</param>
    /// <param name="stitch">The stitch of crochet; empty in knitting.</param>
    public static string Line(int count, (int Stitches, int Rows)? ratio, int oneForOne, string edge, bool inRound, string stitch)
    {
        var rate = ratio is var (s, r) ? string.Create(CultureInfo.InvariantCulture, $"at about {PlanWords.Sts(s)} for every {(r == 1 ? "row" : $"{r} rows")}") : "";
        var single = oneForOne == 0 ? "" : stitch.Length > 0 ? "with 1 st for each free st" : "1 st in each bound-off st";
        var between = rate.Length == 0 || single.Length == 0 ? "" : stitch.Length > 0 ? ", " : " and ";
        var where = $"{(inRound ? "around" : "along")} the {edge} {(rate.Length == 0 && stitch.Length == 0 ? "at " : "")}{rate}{between}{single}";
        return stitch.Length > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Join yarn with RS facing; work {count} {stitch} evenly {where}. ({PlanWords.Sts(count)})")
            : $"Pick-up {(inRound ? "Rnd" : "Row (RS)")}: Pick up and k {PlanWords.Sts(count)} evenly {where}.{(inRound ? " Place marker and join in the round." : "")} ({PlanWords.Sts(count)})";
    }
}
