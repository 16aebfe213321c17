using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>Which measurements of an outline a maker wants to see: its widths where it is even or turns, and how far apart these places are.</summary>
internal static class OutlineMeasures
{
    // Shorter stretches are steps of a slope, in centimetres.
    private const decimal Stretch = 1.5m;
    private const decimal Same = 0.3m;

    /// <summary>The measurements, widths first.</summary>
    /// <param name="name">What the piece is called.</param>
    /// <param name="isRound">True where widths are told around.</param>
    /// <param name="sizes">Its outline, one a size, with the same levels in each.</param>
    public static ImmutableArray<OutlineMeasure> Of(string name, bool isRound, ImmutableArray<SizeOutline> sizes)
    {
        var middle = sizes[sizes.Length / 2];
        var levels = middle.Levels;
        var top = levels.Length - 1;
        var isBody = Says(name, "back") || Says(name, "front") || Says(name, "body");
        var isHand = Says(name, "mitt") || Says(name, "glove");
        var fall = Fall(levels);
        var slope = TopSlope(levels, fall);
        var measures = ImmutableArray.CreateBuilder<OutlineMeasure>();

        // Widths, from the bottom up.
        var widest = Enumerable.Range(0, levels.Length).MaxBy(i => levels[i].WidthCm);
        var last = 0;
        var isPlain = middle.Arms.IsEmpty && levels.All(l => Math.Abs(l.WidthCm - levels[0].WidthCm) < Same);
        Across(isPlain ? isRound ? "around" : "width" : isRound ? "around the lower edge" : "lower edge", 0);
        for (var i = 1; i <= top; i++)
        {
            var isEven = i < top && levels[i + 1].HeightCm - levels[i].HeightCm >= Stretch && Math.Abs(levels[i + 1].WidthCm - levels[i].WidthCm) < Same;
            var isTop = i == top && middle.Arms.IsEmpty;
            if (Math.Abs(levels[i].WidthCm - levels[last].WidthCm) < Same || !(isEven || isTop || i == widest || (i == fall && fall > 0)) || levels[i].WidthCm < Same)
            {
                continue;
            }

            Across(
                i == widest || (i == fall && levels[i].WidthCm == levels[widest].WidthCm) ? isHand ? "around hand and thumb" : isRound ? "around the widest part" : "widest part"
                : isTop ? isRound ? "around the top" : isBody && slope is not null ? "neck" : "upper edge"
                : fall > 0 && i > fall ? isHand ? "around the hand" : isRound ? "around, above the decreases" : isBody ? "above the armholes" : "above the decreases"
                : isRound ? "around, further up" : "further up",
                i);
            last = i;
        }

        if (!middle.Arms.IsEmpty)
        {
            var (left, right) = (middle.Arms[0].Length - 1, middle.Arms[1].Length - 1);
            measures.Add(new OutlineMeasure("neck", OutlineDirection.Across, left, right, [.. sizes.Select(s => s.Arms[1][^1].LeftCm - s.Arms[0][^1].RightCm)]) { IsOfArms = true, IsGap = true });
            measures.Add(new OutlineMeasure("each shoulder", OutlineDirection.Across, right, right, [.. sizes.Select(s => s.Arms[1][^1].WidthCm)]) { IsOfArms = true });
        }

        // Lengths: the stretches one above the other, then the whole.
        var (below, above) = isBody ? ("up to the armholes", "armhole") : Says(name, "sleeve") ? ("up to the underarm", "sleeve cap") : isHand ? ("up to the thumb", "from the thumb on") : ("up to the decreases", "decreases");
        var cut = fall > 0 && fall < top ? fall : 0;
        if (cut > 0)
        {
            Along(below, 0, cut);
        }

        if (!middle.Arms.IsEmpty)
        {
            if (cut > 0)
            {
                Along("armhole to the neck", cut, top);
            }
            else
            {
                Along("up to the neck", 0, top);
            }

            measures.Add(new OutlineMeasure("neck depth", OutlineDirection.Along, 0, middle.Arms[1].Length - 1, [.. sizes.Select(s => s.TopCm - s.Levels[top].HeightCm)]) { IsOfArms = true });
        }
        else if (cut > 0)
        {
            Along(above, cut, slope ?? top);
            if (slope is { } from)
            {
                Along("shoulder slope", from, top);
            }
        }

        measures.Add(new OutlineMeasure("whole length", OutlineDirection.Along, 0, top, [.. sizes.Select(s => s.TopCm)]));
        return measures.ToImmutable();

        void Across(string what, int at) => measures.Add(new OutlineMeasure(what, OutlineDirection.Across, at, at, [.. sizes.Select(s => s.Levels[at].WidthCm * (isRound ? 2 : 1))]));
        void Along(string what, int from, int to) => measures.Add(new OutlineMeasure(what, OutlineDirection.Along, from, to, [.. sizes.Select(s => s.Levels[to].HeightCm - s.Levels[from].HeightCm)]));
    }

    /// <summary>The last level of the widest width, where the piece gets narrower above it; 0 where it does not.</summary>
    private static int Fall(ImmutableArray<OutlineLevel> levels)
    {
        var most = levels.Max(l => l.WidthCm);
        var at = Enumerable.Range(0, levels.Length).Last(i => levels[i].WidthCm >= most - Same);
        return at < levels.Length - 1 && levels[^1].WidthCm < most - 1 ? at : 0;
    }

    /// <summary>Where the stitches at the top begin to be bound off in steps; null where they are not.</summary>
    private static int? TopSlope(ImmutableArray<OutlineLevel> levels, int fall)
    {
        var at = levels.Length - 1;
        while (at > fall + 1 && (levels[at].IsEdge || levels[at].WidthCm == levels[at - 1].WidthCm) && levels[at].HeightCm - levels[at - 1].HeightCm < 2 * Stretch)
        {
            at--;
        }

        return at < levels.Length - 1 && levels[^1].WidthCm < levels[at].WidthCm - Same && at > fall + 1 ? at : null;
    }

    private static bool Says(string name, string word) => name.Contains(word, StringComparison.OrdinalIgnoreCase);
}
