using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>A point of a measured edge: how far up, and how far the edge has gone in there.</summary>
/// <param name="Up">Height above the beginning of the curve.</param>
/// <param name="In">How far in, in the same unit.</param>
public readonly record struct EdgePoint(decimal Up, decimal In);

/// <summary>Curves as bind-offs and decreases: at each pair of rows the edge is within one stitch of the curve.</summary>
/// <remarks>
/// An edge can only be shaped at the beginning of a row, so once in two rows. Worked example: an armhole that loses 29 sts at each side over 40 rows begins with the longest
/// bind-off and ends with single decreases (common practice); the 29 come of 162 sts that leave 104.
/// </remarks>
public static class Curve
{
    /// <summary>A measured edge. The points go up, the edge never goes out again.</summary>
    /// <param name="points">At least two, the first at height 0 or taken as the beginning.</param>
    /// <param name="stitches">Stitches of the gauge.</param>
    /// <param name="rows">Rows of the gauge.</param>
    /// <param name="over">Over how much, in the unit of the points.</param>
    public static Planned<CurvePlan> FromOutline(ImmutableArray<EdgePoint> points, decimal stitches, decimal rows, decimal over)
    {
        if (points.IsDefault || points.Length < 2 || points.Length > 1000 || !PlanLimits.IsMeasure(stitches) || !PlanLimits.IsMeasure(rows) || !PlanLimits.IsMeasure(over))
        {
            return Planned.No<CurvePlan>("an outline needs at least two points and a gauge of stitches and rows");
        }

        for (var i = 1; i < points.Length; i++)
        {
            if (points[i].Up <= points[i - 1].Up || points[i].In < points[i - 1].In || points[i].Up > PlanLimits.MostMeasure || points[i].In > PlanLimits.MostMeasure)
            {
                return Planned.No<CurvePlan>(string.Create(CultureInfo.InvariantCulture, $"point {i + 1} of the outline does not go up, or goes out again"));
            }
        }

        var (height, width) = (points[^1].Up - points[0].Up, points[^1].In - points[0].In);
        if (GaugeMath.Rows(height, rows, over) is not { } exactRows || exactRows > PlanLimits.MostRows || (width > 0 ? GaugeMath.Stitches(width, stitches, over) : 0) is not { } exactStitches || exactStitches > PlanLimits.MostStitches)
        {
            return Planned.No<CurvePlan>("the outline is too large or too small for rows and stitches");
        }

        return Steps((int)decimal.Round(exactStitches, MidpointRounding.AwayFromZero), (int)decimal.Floor(exactRows), share => InAt(points, height, width, share));
    }

    /// <summary>An armhole, or one side of a round neck: a quarter of an ellipse, steep at its end.</summary>
    /// <param name="stitches">Stitches that the edge loses.</param>
    /// <param name="rows">Rows over which it is shaped.</param>
    public static Planned<CurvePlan> Quarter(int stitches, int rows) => Steps(stitches, rows, share => Math.Sqrt(Math.Max(0, 1 - ((1 - share) * (1 - share)))));

    /// <summary>A straight slope.</summary>
    /// <param name="stitches">Stitches that the edge loses.</param>
    /// <param name="rows">Rows over which it is shaped.</param>
    public static Planned<CurvePlan> Slope(int stitches, int rows) => Steps(stitches, rows, share => share);

    /// <summary>One side of the top of a sleeve: flat at its foot, steep in the middle, flat at its crown.</summary>
    /// <param name="stitches">Stitches that the edge loses.</param>
    /// <param name="rows">Rows over which it is shaped.</param>
    public static Planned<CurvePlan> Bell(int stitches, int rows) => Steps(stitches, rows, BellIn);

    internal static double BellIn(double share) => Math.Acos(Math.Clamp(1 - (2 * share), -1, 1)) / Math.PI;

    /// <summary>Steps along a curve: <paramref name="curve"/> says how much of the stitches is gone after a share of the rows.</summary>
    internal static Planned<CurvePlan> Steps(int stitches, int rows, Func<double, double> curve)
    {
        if (!PlanLimits.IsCount(stitches) || rows is < 0 or > PlanLimits.MostRows || (rows < 2 && stitches > 0))
        {
            return Planned.No<CurvePlan>(string.Create(CultureInfo.InvariantCulture, $"{stitches} sts cannot be taken off over {rows} rows"), "an edge is shaped once in two rows");
        }

        var pairs = rows / 2;
        var steps = ImmutableArray.CreateBuilder<CurveStep>();
        var gone = 0;
        for (var pair = 1; pair <= pairs; pair++)
        {
            var until = pair == pairs ? stitches : Math.Clamp((int)Math.Round(stitches * curve((double)pair / pairs), MidpointRounding.AwayFromZero), gone, stitches);
            if (until > gone)
            {
                steps.Add(new((2 * pair) - 1, until - gone));
                gone = until;
            }
        }

        return Planned.Of(new CurvePlan(stitches, rows, steps.ToImmutable()));
    }

    private static double InAt(ImmutableArray<EdgePoint> points, decimal height, decimal width, double share)
    {
        var up = points[0].Up + ((decimal)share * height);
        for (var i = 1; i < points.Length; i++)
        {
            if (up <= points[i].Up || i == points.Length - 1)
            {
                var (a, b) = (points[i - 1], points[i]);
                var at = a.In + ((b.In - a.In) * Math.Clamp((up - a.Up) / (b.Up - a.Up), 0, 1));
                return width == 0 ? 0 : (double)((at - points[0].In) / width);
            }
        }

        return 1;
    }
}
