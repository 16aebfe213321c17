namespace PatternForge.Core.Plans;

/// <summary>Mittens: the gusset of a thumb.</summary>
public static class Mitten
{
    /// <summary>A gusset that grows by a stitch at each side between two markers.</summary>
    /// <param name="start">Stitches between the markers at the beginning: 1, or 3.</param>
    /// <param name="thumb">Stitches of the thumb when it is put on a holder.</param>
    /// <param name="rounds">Rounds of the gusset.</param>
    /// <remarks>Worked example: from 1 to 15 sts in 21 rounds: every 3rd round 7 times (common practice).</remarks>
    public static Planned<ShapingPlan> Gusset(int start, int thumb, int rounds) => ShapingSchedule.Plan(new(start, thumb, rounds) { On = ShapedRows.Any, InRound = true });

    /// <summary>The increase round in notation, the markers at both sides of the gusset.</summary>
    public static string GussetRound() => "k to m, sm, M1L, k to m, M1R, sm, k to end";
}

/// <summary>Shawls that grow from the middle of their upper edge.</summary>
public static class Shawl
{
    /// <summary>Stitches after so many right-side rows.</summary>
    /// <remarks>Worked example: 9 sts that grow by 4: 25 after 4 right-side rows, then 29, 33, 37, 41 (common practice).</remarks>
    public static int Count(int start, int perRow, int rows) => (int)Math.Clamp(start + ((long)perRow * rows), 0, PlanLimits.MostStitches);

    /// <summary>Right-side rows that it takes to reach a count at least.</summary>
    public static int? RowsTo(int start, int perRow, int count) => perRow < 1 || count < start ? null : (count - start + perRow - 1) / perRow;
}
