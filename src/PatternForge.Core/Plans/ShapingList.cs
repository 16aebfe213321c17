namespace PatternForge.Core.Plans;

/// <summary>A list of shapings in the manner of Japanese patterns: rows, stitches, times.</summary>
/// <remarks>Worked example: 2-4-1, 2-2-1, 1-4-3 takes 7 rows and 18 sts (common practice).</remarks>
public static class ShapingList
{
    /// <summary>The rows and the stitches that a list takes at one edge.</summary>
    public static (int Rows, int Stitches) Totals(params ReadOnlySpan<(int Rows, int Stitches, int Times)> list)
    {
        var (rows, stitches) = (0, 0);
        foreach (var entry in list)
        {
            rows += entry.Rows * entry.Times;
            stitches += entry.Stitches * entry.Times;
        }

        return (rows, stitches);
    }
}
