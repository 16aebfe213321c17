using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Yarns;

/// <summary>The area of all pieces of a pattern, from their outlines.</summary>
internal static class PieceAreas
{
    /// <summary>Square centimetres, one a size; empty, with a reason, where a piece has no outline.</summary>
    public static (ImmutableArray<decimal> Cm2, string? Reason) Of(Pattern pattern, ImmutableArray<WorkedLine> worked, ImmutableArray<PieceOutline> outlines)
    {
        if (outlines.IsEmpty)
        {
            return ([], "no piece has rows and a gauge");
        }

        var areas = new decimal[pattern.Facts.Sizes.Count];
        var times = PieceTimes.Of(pattern);
        foreach (var outline in outlines)
        {
            if (!outline.IsDrawn || outline.Gauge is not { } gauge)
            {
                return ([], $"{outline.Name} cannot be measured: {outline.Reason ?? "it has no rows"}");
            }

            var section = pattern.Sections.ToList().FindIndex(s => s.Heading == outline.Headings.FirstOrDefault());
            for (var size = 0; size < areas.Length; size++)
            {
                areas[size] += AreaOf(outline, size, gauge, worked) * times[section, size];
            }
        }

        return areas.All(a => a > 0) ? ([.. areas], null) : ([], "a piece has no area");
    }

    private static decimal AreaOf(PieceOutline outline, int size, Gauge gauge, ImmutableArray<WorkedLine> worked) => outline.View switch
    {
        OutlineView.Tube or OutlineView.Sock => 2 * outline.Sizes[size].AreaCm2,
        OutlineView.Yoke or OutlineView.OpenYoke => Around(outline.Sizes[size].Levels, size, gauge, worked),
        // From the side: each round is a band as high as a row is.
        OutlineView.Side => outline.Sizes[size].Levels.Sum(l => (gauge.Across(l.Stitches) ?? 0) * (gauge.Along(1) ?? 0)),
        _ => outline.Sizes[size].AreaCm2,
    };

    /// <summary>A yoke and its body show front or back alone; its area is that of all their stitches, the tops of the sleeves among them.</summary>
    private static decimal Around(ImmutableArray<OutlineLevel> levels, int size, Gauge gauge, ImmutableArray<WorkedLine> worked)
    {
        var area = 0m;
        for (var i = 1; i < levels.Length; i++)
        {
            area += (levels[i].HeightCm - levels[i - 1].HeightCm) * (Width(i) + Width(i - 1)) / 2;
        }

        return area;

        decimal Width(int at)
        {
            var (level, line) = (levels[at], worked[levels[at].Line]);
            var (before, after) = (line.Before[size] ?? 0, line.After[size] ?? 0);
            // Where body and sleeves part, or join, two levels of one line lie one above the other; the upper one has all stitches.
            var isAbove = !level.IsEdge && at > 0 && levels[at - 1] is { IsEdge: true } below && below.Line == level.Line;
            return gauge.Across(isAbove ? Math.Max(before, after) : after > 0 ? after : before) ?? 0;
        }
    }
}
