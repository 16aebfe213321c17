using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>The mark of a crossing: two slanting bands over all its squares, the one on top whole; dots where stitches are purled.</summary>
internal static class CableMark
{
    private const double Top = 2.5;
    private const double Bottom = 21.5;

    /// <summary>Draws it from the left edge of its leftmost square.</summary>
    /// <param name="page">The drawing.</param>
    /// <param name="crossing">The crossing.</param>
    /// <param name="isBack">
    /// True where it is worked on the wrong side: it leans the same way on the right side, but the group that lies underneath for the maker lies on top there, and what is knit looks purled (by turning
    /// the fabric over).
    /// </param>
    public static void Draw(SvgPage page, Crossing crossing, bool isBack = false)
    {
        var width = KnitMarks.Square * crossing.Total;
        var held = (crossing.Over ?? ((crossing.Total + 1) / 2)) * KnitMarks.Square;
        var rest = width - held - (crossing.Middle * KnitMarks.Square);
        var (over, under) = isBack ? (rest, held) : (held, rest);
        var left = crossing.Lean == Lean.Left;
        Band(page, left ? 0 : width - under, left ? width - under : 0, under);
        Band(page, left ? width - over : 0, left ? 0 : width - over, over);
        if (isBack || crossing.Kind == CrossingKind.OverPurl)
        {
            Dots(page, left ? width - under : 0, under);
        }

        if (isBack && crossing.Kind != CrossingKind.OverPurl)
        {
            Dots(page, left ? 0 : width - over, over);
        }
    }

    private static void Dots(SvgPage page, double from, double width)
    {
        for (var x = KnitMarks.Square / 2; x < width; x += KnitMarks.Square)
        {
            page.Ink(KnitMarks.Dot(from + x, 5.4, 1.7));
        }
    }

    /// <summary>A band from its place at the bottom to its place at the top, with a line between its stitches.</summary>
    private static void Band(SvgPage page, double bottom, double top, double width)
    {
        const double Inset = 2;
        string Point(double x, double y) => $"{SvgPage.Number(x)} {SvgPage.Number(y)}";
        page.Paper($"M{Point(bottom + Inset, Bottom)}L{Point(top + Inset, Top)}H{SvgPage.Number(top + width - Inset)}L{Point(bottom + width - Inset, Bottom)}Z");
        for (var x = KnitMarks.Square; x < width; x += KnitMarks.Square)
        {
            page.Line($"M{Point(bottom + x, Bottom)}L{Point(top + x, Top)}", 0.8, 0.7);
        }
    }
}
