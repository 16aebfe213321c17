using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>A round neck: stitches bound off in the middle, and the curve of each side.</summary>
/// <param name="Stitches">Stitches of the neck.</param>
/// <param name="Centre">Stitches bound off, or put on a holder, in the middle.</param>
/// <param name="Side">The curve of each side.</param>
public sealed record NecklinePlan(int Stitches, int Centre, CurvePlan Side)
{
    /// <summary>One side as lines of a pattern, worked from the middle row on.</summary>
    /// <param name="side">Stitches of the side when it is begun.</param>
    public ImmutableArray<string> Lines(int side) => Side.OneEdge(side);

    /// <summary>The plan in a sentence.</summary>
    public string Words() => string.Create(CultureInfo.InvariantCulture, $"bind off the centre {PlanWords.Sts(Centre)}; each side at the neck edge: {Side.Words()}");
}

/// <summary>Necklines.</summary>
public static class Neckline
{
    /// <summary>A front neck: a part of its stitches in the middle at once, the rest in a quarter of an ellipse at each side.</summary>
    /// <param name="stitches">Stitches of the neck.</param>
    /// <param name="rows">Rows from the middle bind-off to the shoulder.</param>
    /// <param name="centreShare">The part in the middle: a third to a half is common practice.</param>
    public static Planned<NecklinePlan> Round(int stitches, int rows, decimal centreShare = 0.4m)
    {
        if (!PlanLimits.IsCount(stitches) || stitches < 1 || centreShare is < 0 or > 1)
        {
            return Planned.No<NecklinePlan>(string.Create(CultureInfo.InvariantCulture, $"a neck of {stitches} sts with {centreShare * 100:0.##} per cent in its middle is none"));
        }

        var centre = Math.Min(stitches, GaugeMath.SameParity(stitches * centreShare, stitches));
        return WithCentre(stitches, centre, rows);
    }

    /// <summary>A front neck with a middle of so many stitches.</summary>
    /// <param name="stitches">Stitches of the neck.</param>
    /// <param name="centre">Stitches in the middle; what is left of the neck is an even number.</param>
    /// <param name="rows">Rows from the middle bind-off to the shoulder.</param>
    /// <remarks>Worked example: a neck of 41 sts with 17 in its middle leaves a curve of 12 sts to each side (common practice: a third to a half in the middle).</remarks>
    public static Planned<NecklinePlan> WithCentre(int stitches, int centre, int rows)
    {
        if (centre < 0 || centre > stitches || (stitches - centre) % 2 != 0)
        {
            return Planned.No<NecklinePlan>(string.Create(CultureInfo.InvariantCulture, $"a middle of {centre} sts does not leave the same at both sides of a neck of {stitches}"));
        }

        var side = Curve.Quarter((stitches - centre) / 2, rows);
        return side.IsPlanned ? Planned.Of(new NecklinePlan(stitches, centre, side.Plan)) : Planned.No<NecklinePlan>(side.Reason, side.Help);
    }

    /// <summary>Depth of a front neck that is a half circle under its width.</summary>
    /// <remarks>Worked example: a neck 18 cm wide is 9 cm deep: geometry.</remarks>
    public static decimal? HalfCircleDepth(decimal width) => PlanLimits.IsMeasure(width) ? width / 2 : null;
}
