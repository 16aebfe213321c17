using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Counts of a sleeve.</summary>
/// <param name="Cuff">Stitches at the cuff.</param>
/// <param name="Top">Stitches at the upper arm.</param>
public readonly record struct SleeveCounts(int Cuff, int Top)
{
    /// <summary>Shaping rows with a stitch at each end.</summary>
    public int ShapingRows => Math.Abs(Top - Cuff) / 2;
}

/// <summary>The top of a sleeve.</summary>
/// <param name="Stitches">Stitches at the upper arm.</param>
/// <param name="FirstBindOff">Stitches bound off at each side first, as at the armhole.</param>
/// <param name="Top">Stitches that are left.</param>
/// <param name="Side">The shaping of each side behind the first bind-off.</param>
public sealed record SleeveCapPlan(int Stitches, int FirstBindOff, int Top, CurvePlan Side)
{
    /// <summary>All rows of the cap.</summary>
    public int Rows => 2 + Side.Rows;

    /// <summary>The cap as lines of a pattern.</summary>
    public ImmutableArray<string> Lines()
    {
        var after = Stitches - (2 * FirstBindOff);
        return
        [
            $"BO {PlanWords.Sts(FirstBindOff)} at beg of next 2 rows. ({PlanWords.Sts(after)})",
            .. Side.BothEdges(after),
            $"BO rem {PlanWords.Sts(Top)}.",
        ];
    }
}

/// <summary>Sleeves: counts that can be joined, and a top that fits its armhole.</summary>
public static class Sleeve
{
    /// <summary>Counts for a cuff and an upper arm: the top to the nearest stitch, the cuff to the nearest of the same parity, so that shaping at both ends joins them.</summary>
    /// <remarks>Worked example: 7.75 in and 12 in at 5 an inch are 38 (not 39) and 60: 11 increase rows (common practice).</remarks>
    public static SleeveCounts? Counts(decimal cuff, decimal top, decimal gauge, decimal over)
    {
        if (GaugeMath.Stitches(top, gauge, over) is not { } wide || GaugeMath.Stitches(cuff, gauge, over) is not { } narrow || wide > PlanLimits.MostStitches || narrow > PlanLimits.MostStitches)
        {
            return null;
        }

        var upper = (int)decimal.Round(wide, MidpointRounding.AwayFromZero);
        return new(GaugeMath.SameParity(narrow, upper), upper);
    }

    /// <summary>How high a cap must be for its edge, from underarm to the middle of its top, to be as long as the armhole's edge; null where the armhole is too short.</summary>
    /// <remarks>
    /// The cap of <see cref="Curve.Bell"/>: its first bind-off, its curve and half its top together are the armhole's edge, with a little more to ease in. Lengths in one unit.
    /// Worked example: a cap 32 cm wide with a top of 8 cm, 2 cm bound off at each side, in an armhole of 21 cm is 10.48 cm high (derived from the curve).
    /// </remarks>
    public static decimal? CapHeight(decimal upperArm, decimal top, decimal firstBindOff, decimal armholeEdge, decimal ease = 0)
    {
        if (!PlanLimits.IsMeasure(upperArm) || top < 0 || firstBindOff < 0 || !PlanLimits.IsMeasure(armholeEdge) || top + (2 * firstBindOff) >= upperArm || Math.Abs(ease) > armholeEdge)
        {
            return null;
        }

        var wide = (double)((upperArm - top) / 2 - firstBindOff);
        var edge = (double)(armholeEdge + ease - firstBindOff - (top / 2));
        if (edge <= wide)
        {
            return null;
        }

        // The longer the cap the longer its edge: halve the span until it is found.
        var (low, high) = (0.0, edge);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Length(wide, middle) < edge ? (middle, high) : (low, middle);
        }

        return decimal.Round((decimal)low, 2);
    }

    /// <summary>A cap of so many rows.</summary>
    /// <param name="stitches">Stitches at the upper arm.</param>
    /// <param name="firstBindOff">Stitches bound off at each side first.</param>
    /// <param name="top">Stitches that are left at the top.</param>
    /// <param name="rows">All rows of the cap, the two of the first bind-off counted in.</param>
    public static Planned<SleeveCapPlan> Cap(int stitches, int firstBindOff, int top, int rows)
    {
        var side = stitches - (2L * firstBindOff) - top;
        if (!PlanLimits.IsCount(stitches) || firstBindOff < 1 || top < 0 || side < 0 || side % 2 != 0)
        {
            return Planned.No<SleeveCapPlan>(
                string.Create(CultureInfo.InvariantCulture, $"{stitches} sts less {firstBindOff} at each side do not come to {top} by shaping both sides alike"),
                side % 2 != 0 ? string.Create(CultureInfo.InvariantCulture, $"a top of {top + 1} sts does") : null);
        }

        var curve = Curve.Bell((int)side / 2, rows - 2);
        return curve.IsPlanned ? Planned.Of(new SleeveCapPlan(stitches, firstBindOff, top, curve.Plan)) : Planned.No<SleeveCapPlan>(curve.Reason, curve.Help);
    }

    private static double Length(double wide, double height)
    {
        const int Pieces = 400;
        var (length, before) = (0.0, 0.0);
        for (var i = 1; i <= Pieces; i++)
        {
            var inwards = Curve.BellIn((double)i / Pieces);
            length += double.Hypot(wide * (inwards - before), height / Pieces);
            before = inwards;
        }

        return length;
    }
}
