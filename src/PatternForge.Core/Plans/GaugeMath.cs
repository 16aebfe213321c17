using System.Collections.Immutable;

namespace PatternForge.Core.Plans;

/// <summary>Which way a count is rounded.</summary>
public enum RoundTo
{
    /// <summary>To the nearest that fits; of two as near the smaller.</summary>
    Nearest,

    /// <summary>To the next below that fits.</summary>
    Below,

    /// <summary>To the next above that fits.</summary>
    Above,
}

/// <summary>Counts from measurements and back. Null where a figure is not above 0, or too great to be one.</summary>
/// <remarks>
/// A gauge is so many stitches (or rows) over a length: 20 over 10 cm, 5 over 1 in. Worked examples: 88 sts at 9 in 4 in are 39.11 in; 128 sts with 2 seam stitches at 5.5 an inch
/// are 151 at 6.5 (common practice).
/// </remarks>
public static class GaugeMath
{
    /// <summary>Centimetres in an inch: exact.</summary>
    public const decimal CmPerInch = 2.54m;

    /// <summary>Stitches over a width, unrounded.</summary>
    public static decimal? Stitches(decimal width, decimal gauge, decimal over) => Product(width, gauge, over);

    /// <summary>Rows over a length, unrounded.</summary>
    public static decimal? Rows(decimal length, decimal gauge, decimal over) => Product(length, gauge, over);

    /// <summary>The width of so many stitches, or the length of so many rows.</summary>
    public static decimal? Measure(decimal count, decimal gauge, decimal over) => Product(count, over, gauge);

    /// <summary>A count converted from one gauge to another, unrounded; seam stitches stay as they are.</summary>
    public static decimal? Convert(decimal count, decimal from, decimal to, decimal seam = 0) =>
        seam < 0 || seam > count ? null : count == seam ? seam : Product(count - seam, to, from) + seam;

    /// <summary>The gauge over another length: 22 in 10 cm are 22.352 in 4 in.</summary>
    public static decimal? Over(decimal gauge, decimal over, decimal other) => Product(gauge, other, over);

    /// <summary>The count that fits a stitch pattern, "multiple of 6 + 1"; null where none fits. It is not below the pattern's least: one repeat and what it adds.</summary>
    /// <param name="wanted">The count that is wished.</param>
    /// <param name="multiple">Stitches of a repeat.</param>
    /// <param name="plus">Stitches beside the repeats.</param>
    /// <param name="round">Which way.</param>
    public static int? Fit(decimal wanted, int multiple, int plus = 0, RoundTo round = RoundTo.Nearest)
    {
        if (multiple < 1 || multiple > PlanLimits.MostStitches || plus is < 0 or > PlanLimits.MostStitches || wanted is < 0 or > PlanLimits.MostStitches)
        {
            return null;
        }

        var repeats = (wanted - plus) / multiple;
        var fit = round switch
        {
            RoundTo.Below => decimal.Floor(repeats),
            RoundTo.Above => decimal.Ceiling(repeats),
            _ => decimal.Ceiling(repeats - 0.5m),
        };
        return fit < 1 && round == RoundTo.Below ? null : (int)((Math.Max(1, fit) * multiple) + plus);
    }

    /// <summary>How many repeats a count holds; null where it does not fit.</summary>
    public static int? Repeats(int stitches, int multiple, int plus) => multiple > 0 && stitches > plus && (stitches - plus) % multiple == 0 ? (stitches - plus) / multiple : null;

    /// <summary>The counts that fit, up to a most.</summary>
    public static ImmutableArray<int> Fits(int multiple, int plus, int least, int most) =>
        multiple < 1 || plus < 0 || most > PlanLimits.MostStitches ? [] : [.. Enumerable.Range(0, Math.Max(0, (most - plus) / multiple) + 1).Select(n => (n * multiple) + plus).Where(s => s >= least && s <= most && s > plus)];

    /// <summary>The whole number of the same parity as another that is nearest to a count; of two as near the greater. Shaping at both ends needs it.</summary>
    public static int SameParity(decimal count, int other)
    {
        var below = (int)decimal.Floor(Math.Clamp(count, 0, PlanLimits.MostStitches));
        below -= Math.Abs(below - other) % 2;
        return count - below < below + 2 - count && below >= 0 ? below : below + 2;
    }

    /// <summary>A measurement with its ease: per cent below 0 is negative ease.</summary>
    public static decimal WithEase(decimal body, decimal percent) => body * (1 + (percent / 100));

    private static decimal? Product(decimal a, decimal b, decimal divisor) =>
        PlanLimits.IsMeasure(a) && PlanLimits.IsMeasure(b) && PlanLimits.IsMeasure(divisor) ? a * b / divisor : null;
}
