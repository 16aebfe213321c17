using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Yarns;

/// <summary>The area of all pieces of a pattern, from their outlines.</summary>
internal static class PieceAreas
{
    /// <summary>Square centimetres, one a size; empty, with a reason, where a piece has no outline.</summary>
    public static (ImmutableArray<decimal> Cm2, string? Reason) Of(Pattern pattern, ImmutableArray<PieceOutline> outlines)
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
                areas[size] += AreaOf(outline, outline.Sizes[size], gauge) * times[section, size];
            }
        }

        return areas.All(a => a > 0) ? ([.. areas], null) : ([], "a piece has no area");
    }

    private static decimal AreaOf(PieceOutline outline, SizeOutline size, Gauge gauge) => outline.View switch
    {
        OutlineView.Tube or OutlineView.Sock => 2 * size.AreaCm2,
        // From the side: each round is a band as high as a row is.
        OutlineView.Side => size.Levels.Sum(l => (gauge.Across(l.Stitches) ?? 0) * (gauge.Along(1) ?? 0)),
        _ => size.AreaCm2,
    };
}
