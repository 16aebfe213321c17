using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Curves as bind-offs and decreases: at each pair of rows the edge is within one stitch of the curve.</summary>
/// <remarks>
/// An edge can only be shaped at the beginning of a row, so once in two rows. Worked example: an armhole that loses 29 sts at each side over 40 rows begins with the longest
/// bind-off and ends with single decreases (common practice); the 29 come of 162 sts that leave 104.
/// </remarks>
public static class Curve
{
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
}
