using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>Pieces of crochet that are worked in rounds from their middle: seen from the side, or lying flat where they do not rise.</summary>
internal static class RoundProfile
{
    private const decimal Pi = 3.14159265358979m;
    private const int FewStitches = 16;
    private const int CircleCorners = 48;
    private const int MostRounds = 2_000;

    // A circle that rises by less than this share of its radius lies flat.
    private const decimal Rise = 0.45m;

    // Fabric does not turn within a round: so many rounds on either side share a change.
    private const int Shared = 2;

    /// <summary>The outline in a size; null with a reason where its rounds are not known.</summary>
    public static (SizeOutline? Outline, bool IsFlat, string? Reason) Of(ImmutableArray<ShapedLine> lines, int size, Gauge gauge)
    {
        var counts = new List<(int Count, int Line)>();
        foreach (var line in lines.Select(l => l.Worked))
        {
            var (before, after) = (line.Before[size], line.After[size]);
            if (after is 0 || (before is > 0 && before == after && !line.Rows.IsEmpty && line.Rows[size] is 0) || (counts.Count == 0 && line.Numbers.IsEmpty))
            {
                continue;
            }

            if (line.Status != LineStatus.Checked || after is not { } to || !line.Kinds.IsEmpty || line.Rows.IsEmpty || line.Rows[size] is not { } rows)
            {
                return (null, false, $"`{(line.Label.Length > 0 ? line.Label : line.Text)}` does not say its rounds and stitches in numbers alone");
            }

            var from = counts.Count == 0 ? 0 : counts[^1].Count;
            for (var i = 1; i <= rows && counts.Count < MostRounds; i++)
            {
                counts.Add((from + ((to - from) * i / rows), line.Index));
            }
        }

        if (counts.Count == 0 || counts[0].Count > FewStitches || gauge.Along(1) is not { } tall)
        {
            return (null, false, "it is worked in rounds, and they do not begin at its middle");
        }

        var (height, radius) = (0m, 0m);
        var levels = ImmutableArray.CreateBuilder<OutlineLevel>();
        levels.Add(new OutlineLevel(lines[0].Worked.Index, 0, 0, 0, 0));
        for (var i = 0; i < counts.Count; i++)
        {
            var beside = Math.Min(Shared, Math.Min(i, counts.Count - 1 - i));
            var around = counts.Skip(i - beside).Take((2 * beside) + 1).Average(c => (decimal)c.Count);
            var wide = (gauge.Across(around) ?? 0) / (2 * Pi);
            var rise = (double)((tall * tall) - ((wide - radius) * (wide - radius)));
            (height, radius) = (height + (rise > 0 ? (decimal)Math.Sqrt(rise) : 0), wide);
            levels.Add(new OutlineLevel(counts[i].Line, height, -radius, radius, counts[i].Count));
        }

        var most = levels.Max(l => l.RightCm);
        return height <= most * Rise ? (Circle(counts.Count * tall, counts[^1], lines[0].Worked.Index), true, null) : (new SizeOutline(levels.ToImmutable(), []), false, null);
    }

    /// <summary>Across and in height, in every size.</summary>
    public static ImmutableArray<OutlineMeasure> Measures(ImmutableArray<SizeOutline> sizes, bool isFlat, Gauge gauge)
    {
        var levels = sizes[sizes.Length / 2].Levels;
        var widest = Enumerable.Range(0, levels.Length).MaxBy(i => levels[i].WidthCm);
        return isFlat
            ? [new OutlineMeasure("across", OutlineDirection.Across, widest, widest, [.. sizes.Select(s => s.Levels.Max(l => l.WidthCm))])]
            :
            [
                new OutlineMeasure("around the widest part", OutlineDirection.Across, widest, widest, [.. sizes.Select(s => gauge.Across(s.Levels.Max(l => l.Stitches)) ?? 0)]),
                new OutlineMeasure("across", OutlineDirection.Across, widest, widest, [.. sizes.Select(s => (gauge.Across(s.Levels.Max(l => l.Stitches)) ?? 0) / Pi)]) { IsBelow = true },
                new OutlineMeasure("whole length", OutlineDirection.Along, 0, levels.Length - 1, [.. sizes.Select(s => s.TopCm)]),
            ];
    }

    private static SizeOutline Circle(decimal radius, (int Count, int Line) last, int first)
    {
        var levels = ImmutableArray.CreateBuilder<OutlineLevel>();
        for (var i = 0; i <= CircleCorners / 2; i++)
        {
            var angle = Math.PI * i / (CircleCorners / 2);
            var (up, half) = (radius - (radius * (decimal)Math.Cos(angle)), radius * (decimal)Math.Sin(angle));
            levels.Add(new OutlineLevel(i == 0 ? first : last.Line, up, -half, half, last.Count));
        }

        return new SizeOutline(levels.ToImmutable(), []);
    }
}
