using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>A point of a measured piece: how far up, and how wide it is there (or how far round).</summary>
/// <param name="Up">Height above the beginning.</param>
/// <param name="Width">Width, or girth, in the same unit.</param>
public readonly record struct WidthPoint(decimal Up, decimal Width);

/// <summary>A change of the count in one row.</summary>
/// <param name="Row">The row, the first being 1.</param>
/// <param name="Change">Stitches more, or fewer.</param>
/// <param name="Count">Stitches after it.</param>
public readonly record struct OutlineStep(int Row, int Change, int Count);

/// <summary>A piece that follows a measured outline: a crown, a toe, a yoke, a shawl.</summary>
/// <param name="From">Stitches at its beginning.</param>
/// <param name="Rows">Its rows.</param>
/// <param name="InRound">True in the round.</param>
/// <param name="Steps">The rows in which the count changes.</param>
public sealed record OutlinePlan(int From, int Rows, bool InRound, ImmutableArray<OutlineStep> Steps)
{
    /// <summary>Stitches at its end.</summary>
    public int To => Steps.IsEmpty ? From : Steps[^1].Count;

    /// <summary>The schedule in trade words: "dec 8 sts every 4th rnd twice, dec 8 sts every other rnd 5 times".</summary>
    public string Words()
    {
        var runs = new List<(int Interval, int Change, int Times)>();
        var before = 0;
        foreach (var step in Steps)
        {
            var interval = step.Row - before;
            before = step.Row;
            if (runs.Count > 0 && runs[^1].Interval == interval && runs[^1].Change == step.Change)
            {
                runs[^1] = runs[^1] with { Times = runs[^1].Times + 1 };
            }
            else
            {
                runs.Add((interval, step.Change, 1));
            }
        }

        var said = runs.Select(r => $"{(r.Change > 0 ? "inc" : "dec")} {PlanWords.Sts(Math.Abs(r.Change))} {PlanWords.Every(r.Interval, InRound)} {PlanWords.Times(r.Times)}").ToList();
        if (Rows > before)
        {
            said.Add($"{PlanWords.Counted(Rows - before, PlanWords.Row(InRound))} even");
        }

        return string.Join(", then ", said);
    }

    /// <summary>The rounds as lines of a pattern, each change spread evenly; for pieces in the round, such as crowns and yokes. Null where a round is so steep that its decreases do not fit in.</summary>
    public ImmutableArray<string>? Rounds()
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var (row, count) = (0, From);
        foreach (var step in Steps)
        {
            if (step.Row - row > 1)
            {
                lines.Add($"Work {PlanWords.Counted(step.Row - row - 1, "rnd")} even.");
            }

            var round = Spread.FromTo(count, step.Count, SpreadEnds.Round);
            if (!round.IsPlanned)
            {
                return null;
            }

            lines.Add(round.Plan.Line("Next rnd"));
            (row, count) = (step.Row, step.Count);
        }

        if (Rows > row)
        {
            lines.Add($"Work {PlanWords.Counted(Rows - row, "rnd")} even.");
        }

        return lines.ToImmutable();
    }
}

/// <summary>Measured outlines as shaping.</summary>
/// <remarks>Worked example: the half ball of a hat 56 cm round at 20 sts and 28 rows in 10 cm begins with 112 sts and is 8.9 cm high: its girth shrinks slowly at first and then ever faster (geometry).</remarks>
public static class Outline
{
    /// <summary>Shaping that follows a measured outline: where it is due, the count changes by so many stitches at a time, and is never further from the outline than that where a round can follow it.</summary>
    /// <param name="points">At least two, going up.</param>
    /// <param name="stitches">Stitches of the gauge.</param>
    /// <param name="rows">Rows of the gauge.</param>
    /// <param name="over">Over how much, in the unit of the points.</param>
    /// <param name="perTime">Stitches that one shaping changes; a steep place takes several at once, a round no more than half of its stitches.</param>
    /// <param name="on">Which rows may be shaped.</param>
    /// <param name="inRound">True in the round.</param>
    /// <param name="begin">Stitches that it begins with; those of the first width where none are said.</param>
    public static Planned<OutlinePlan> Plan(ImmutableArray<WidthPoint> points, decimal stitches, decimal rows, decimal over, int perTime, ShapedRows on = ShapedRows.EveryOther, bool inRound = false, int? begin = null)
    {
        if (points.IsDefault || points.Length is < 2 or > 1000 || perTime is < 1 or > PlanLimits.MostStitches || !PlanLimits.IsMeasure(stitches) || !PlanLimits.IsMeasure(rows) || !PlanLimits.IsMeasure(over))
        {
            return Planned.No<OutlinePlan>("an outline needs at least two points, a gauge of stitches and rows, and at least 1 st at a time");
        }

        for (var i = 0; i < points.Length; i++)
        {
            if (points[i].Width is < 0 or > PlanLimits.MostMeasure || Math.Abs(points[i].Up) > PlanLimits.MostMeasure || (i > 0 && points[i].Up <= points[i - 1].Up))
            {
                return Planned.No<OutlinePlan>(string.Create(CultureInfo.InvariantCulture, $"point {i + 1} of the outline does not go up, or has no width"));
            }
        }

        var height = points[^1].Up - points[0].Up;
        var widest = points.Max(p => p.Width);
        if (GaugeMath.Rows(height, rows, over) is not { } exact || exact is < 1 or > PlanLimits.MostRows || widest * stitches / over > PlanLimits.MostStitches)
        {
            return Planned.No<OutlinePlan>("the outline is too large or too small for rows and stitches");
        }

        var from = begin ?? (int)decimal.Round(points[0].Width * stitches / over, MidpointRounding.AwayFromZero);
        var (count, step) = (from, on == ShapedRows.Any ? 1 : 2);

        // In flat work whole steps, so that the last of them is where the outline ends.
        var whole = inRound ? 1 : step;
        var all = whole * (int)decimal.Round(exact / whole, MidpointRounding.AwayFromZero);
        var steps = ImmutableArray.CreateBuilder<OutlineStep>();
        for (var row = step; row <= all; row += step)
        {
            var wanted = WidthAt(points, points[0].Up + (height * row / all)) * stitches / over;
            var change = perTime * (int)decimal.Round((wanted - count) / perTime, MidpointRounding.AwayFromZero);
            // A round at most halves, every two stitches together.
            change = Math.Max(change, -perTime * ((inRound ? count / 2 : count) / perTime));

            if (change != 0)
            {
                count += change;
                steps.Add(new(row, change, count));
            }
        }

        return Planned.Of(new OutlinePlan(from, all, inRound, steps.ToImmutable()));
    }

    /// <summary>The outline of a half ball from its widest round up: the crown of a hat, the end of a toe. The top is left open by a last stitch or two.</summary>
    /// <param name="girth">The girth at its beginning.</param>
    /// <param name="depth">Its height; the radius of the girth for a true ball.</param>
    public static ImmutableArray<WidthPoint> Dome(decimal girth, decimal depth) =>
        !PlanLimits.IsMeasure(girth) || !PlanLimits.IsMeasure(depth) ? [] :
        [.. Enumerable.Range(0, 41).Select(i => i / 40.0).Select(share => new WidthPoint(depth * (decimal)share, girth * (decimal)Math.Sqrt(Math.Max(0, 1 - (share * share)))))];

    private static decimal WidthAt(ImmutableArray<WidthPoint> points, decimal up)
    {
        for (var i = 1; i < points.Length; i++)
        {
            if (up <= points[i].Up)
            {
                var (a, b) = (points[i - 1], points[i]);
                return a.Width + ((b.Width - a.Width) * (up - a.Up) / (b.Up - a.Up));
            }
        }

        return points[^1].Width;
    }
}
