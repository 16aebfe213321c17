using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Short rows over one piece: pairs that leave more and more stitches at each end, or fewer.</summary>
/// <param name="Stitches">Stitches of the piece.</param>
/// <param name="Left">Stitches left unworked at each end by each pair.</param>
public sealed record ShortRowPlan(int Stitches, ImmutableArray<int> Left)
{
    /// <summary>Rows that the middle gains.</summary>
    public int RowsGained => 2 * Left.Length;

    /// <summary>The short rows as lines of a pattern, with a last row over all stitches.</summary>
    public ImmutableArray<string> Lines()
    {
        var lines = ImmutableArray.CreateBuilder<string>((2 * Left.Length) + 1);
        var number = 1;
        foreach (var left in Left)
        {
            lines.Add(Line(number++, "RS", "K", left));
            lines.Add(Line(number++, "WS", "P", left));
        }

        lines.Add("Next Row (RS): Knit.");
        return lines.ToImmutable();
    }

    private static string Line(int number, string side, string stitch, int left) =>
        string.Create(CultureInfo.InvariantCulture, $"Short Row {number} ({side}): {stitch} to last {(left == 1 ? "st" : $"{left} sts")}, w&t.");
}

/// <summary>Shoulders and busts by short rows, and shoulders by bind-offs.</summary>
public static class ShortRows
{
    /// <summary>A slope at both ends, steps of the same number of stitches, one more or less: the shoulders of a back, both at once.</summary>
    /// <param name="stitches">Stitches of the piece.</param>
    /// <param name="shoulder">Stitches of one shoulder.</param>
    /// <param name="rows">Rows of height of the slope; two to a step.</param>
    /// <remarks>Worked example: shoulders of 21 sts over 6 rows: turn with 7, 14 and 21 sts left at each end (common practice).</remarks>
    public static Planned<ShortRowPlan> Shoulders(int stitches, int shoulder, int rows) => Slope(stitches, shoulder, rows, narrowing: true);

    /// <summary>More length in the middle: the first pair leaves the fewest stitches, or with <paramref name="narrowing"/> false the most.</summary>
    /// <param name="stitches">Stitches of the piece.</param>
    /// <param name="slope">Stitches of the slope at each end.</param>
    /// <param name="rows">Rows that the middle gains.</param>
    /// <param name="narrowing">Whether each pair is shorter than the one before.</param>
    public static Planned<ShortRowPlan> Slope(int stitches, int slope, int rows, bool narrowing)
    {
        var pairs = rows / 2;
        if (!PlanLimits.IsCount(stitches) || slope < 1 || 2L * slope >= stitches || pairs < 1 || pairs > slope)
        {
            return Planned.No<ShortRowPlan>(
                string.Create(CultureInfo.InvariantCulture, $"a slope of {slope} sts at each end of {stitches} over {rows} rows cannot be worked in short rows"),
                "each pair of rows turns at least one stitch further on, and some stitches stay between the turns");
        }

        var left = ImmutableArray.CreateBuilder<int>(pairs);
        var reached = 0;
        foreach (var step in EvenShare.Parts(slope, pairs, ShareOrder.LongerTogether))
        {
            left.Add(reached += step);
        }

        if (!narrowing)
        {
            left.Reverse();
        }

        return Planned.Of(new ShortRowPlan(stitches, left.MoveToImmutable()));
    }

    /// <summary>A bust: as many rows as the front is longer than the back, in whole pairs.</summary>
    /// <remarks>Worked example: 5 cm more in front at 28 rows in 10 cm are 14 rows: 7 pairs (common practice).</remarks>
    public static int? BustRows(decimal difference, decimal rows, decimal over) =>
        GaugeMath.Rows(difference, rows, over) is { } exact && exact <= PlanLimits.MostRows ? 2 * (int)decimal.Round(exact / 2, MidpointRounding.AwayFromZero) : null;

    /// <summary>A bust: short rows over the front that reach less and less far, down to a middle between the two points of the bust.</summary>
    /// <param name="stitches">Stitches of the front.</param>
    /// <param name="between">Stitches between the last two turns.</param>
    /// <param name="rows">Rows that the middle gains: <see cref="BustRows"/>.</param>
    /// <remarks>Worked example: 90 sts with 34 between the turns and 14 rows: 7 pairs, each 4 sts shorter at both ends (common practice).</remarks>
    public static Planned<ShortRowPlan> Bust(int stitches, int between, int rows) =>
        between < 1 || between >= stitches || (stitches - between) % 2 != 0
            ? Planned.No<ShortRowPlan>(string.Create(CultureInfo.InvariantCulture, $"{between} sts between the turns do not lie in the middle of {stitches}"), string.Create(CultureInfo.InvariantCulture, $"{between + 1} sts do"))
            : Slope(stitches, (stitches - between) / 2, rows, narrowing: true);

    /// <summary>Shoulders bound off in steps at the beginning of rows, both alike.</summary>
    public static Planned<CurvePlan> BoundOff(int shoulder, int rows) => Curve.Slope(shoulder, rows);
}
