using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>A dimension line of a schematic and the letter beside it, in the drawing's own units.</summary>
/// <param name="Letter">The letter that the key explains.</param>
/// <param name="X1">Where it begins.</param>
/// <param name="Y1">Where it begins.</param>
/// <param name="X2">Where it ends.</param>
/// <param name="Y2">Where it ends.</param>
/// <param name="LetterX">The middle of the letter.</param>
/// <param name="LetterY">The foot of the letter.</param>
internal sealed record DimensionLine(string Letter, double X1, double Y1, double X2, double Y2, double LetterX, double LetterY)
{
    /// <summary>True for a line that goes across.</summary>
    public bool IsAcross => Math.Abs(Y1 - Y2) < 0.01;
}

/// <summary>Where everything of a schematic stands: the outline to scale, and its dimension lines clear of it.</summary>
internal sealed record SchematicLayout
{
    // The outline is made to fit into so many units, that a telephone shows the whole of it.
    private const double MostWide = 216;
    private const double MostHigh = 300;
    private const double Beside = 40;
    private const double Row = 22;
    private const double Inset = 6;

    // From a level down to a line that stands under it.
    private const double Under = 22;

    // Steps smaller than this are those of single rows.
    private const double Step = 2.6;

    // From an edge down to a line whose letter stands between them, and widths that are the same in centimetres.
    private const double LetterHigh = 22;
    private const decimal SameCm = 0.3m;

    /// <summary>The whole drawing's width.</summary>
    public required double Width { get; init; }

    /// <summary>The whole drawing's height.</summary>
    public required double Height { get; init; }

    /// <summary>Units to a centimetre.</summary>
    public required double Scale { get; init; }

    /// <summary>The corners of the outline, all around.</summary>
    public required ImmutableArray<(double X, double Y)> Outline { get; init; }

    /// <summary>Thin lines inside it, where one part ends and the next begins.</summary>
    public ImmutableArray<ImmutableArray<(double X, double Y)>> Seams { get; init; } = [];

    /// <summary>The dimension lines, in the order of the measurements.</summary>
    public required ImmutableArray<DimensionLine> Lines { get; init; }

    /// <summary>Lays an outline out.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="size">The size that is drawn.</param>
    public static SchematicLayout Of(PieceOutline piece, int size)
    {
        var shape = piece.Sizes[size];
        if (shape.Sock is { } sock)
        {
            return SockLayout.Of(piece, sock);
        }

        var (least, most, high) = ((double)shape.LeastLeftCm, (double)shape.MostRightCm, (double)shape.TopCm);
        var scale = Math.Min(MostWide / Math.Max(most - least, 0.1), MostHigh / Math.Max(high, 0.1));
        var (left, top) = (Beside + 4, Row + 10);
        double X(decimal cm) => left + (((double)cm - least) * scale);
        double Y(decimal cm) => top + ((high - (double)cm) * scale);
        var right = left + ((most - least) * scale);
        var bottom = top + (high * scale);
        var lines = ImmutableArray.CreateBuilder<DimensionLine>();
        var taken = new List<double>();
        var beside = new List<double>();
        var further = false;
        foreach (var (measure, letter) in piece.Measures.Select((m, i) => (m, LetterOf(i))))
        {
            if (measure.Direction == OutlineDirection.Across)
            {
                lines.Add(Across(measure, letter));
            }
            else if (measure.Name == "whole length")
            {
                lines.Add(new DimensionLine(letter, left - 16, top, left - 16, bottom, left - 28, ((top + bottom) / 2) + 4.5));
            }
            else
            {
                var arm = measure.IsOfArms;
                var (from, to) = arm ? (Y(shape.Levels[^1].HeightCm), top) : (Y(shape.Levels[measure.From].HeightCm), Y(shape.Levels[measure.To].HeightCm));
                further |= arm;
                var x = right + 16 + (arm && piece.Measures.Any(m => m is { Direction: OutlineDirection.Along, IsOfArms: false } && m.Name != "whole length" && Y(shape.Levels[m.To].HeightCm) < from - 1) ? 26 : 0);
                var y = ((from + to) / 2) + 4.5;
                while (beside.Exists(b => Math.Abs(b - y) < 13))
                {
                    y -= 4;
                }

                beside.Add(y);
                lines.Add(new DimensionLine(letter, x, to, x, from, x + 11, y));
            }
        }

        return new SchematicLayout
        {
            Width = right + Beside + (further ? 26 : 0),
            Height = bottom + Row + 10,
            Scale = scale,
            Outline = Corners(shape, X, Y),
            Lines = lines.ToImmutable(),
        };

        DimensionLine Across(OutlineMeasure measure, string letter)
        {
            if (measure.IsOfArms)
            {
                var (one, other) = (shape.Arms[0][^1], shape.Arms[1][^1]);
                var (from, to) = measure.IsGap ? (X(one.RightCm), X(other.LeftCm) - 3) : (X(other.LeftCm) + 3, X(other.RightCm));
                return new DimensionLine(letter, from, top - 10, to, top - 10, (from + to) / 2, top - 15);
            }

            var level = shape.Levels[measure.From];
            if (measure.IsBelow)
            {
                return new DimensionLine(letter, left, bottom + 10, right, bottom + 10, (left + right) / 2, bottom + 24);
            }

            if (measure.From == 0)
            {
                return new DimensionLine(letter, X(level.LeftCm), bottom + 10, X(level.RightCm), bottom + 10, (X(level.LeftCm) + X(level.RightCm)) / 2, bottom + 24);
            }

            if (measure.From == shape.Levels.Length - 1 && shape.Arms.IsEmpty)
            {
                return new DimensionLine(letter, X(level.LeftCm), top - 10, X(level.RightCm), top - 10, (X(level.LeftCm) + X(level.RightCm)) / 2, top - 15);
            }

            // A place so near the upper edge that it is as wide as that: above it.
            if (shape.Arms.IsEmpty && Y(level.HeightCm) - top < LetterHigh && Math.Abs(level.WidthCm - shape.Levels[^1].WidthCm) < SameCm && !piece.Measures.Any(m => m.Direction == OutlineDirection.Across && m.From == shape.Levels.Length - 1))
            {
                return new DimensionLine(letter, X(level.LeftCm), top - 10, X(level.RightCm), top - 10, (X(level.LeftCm) + X(level.RightCm)) / 2, top - 15);
            }

            // Inside, a little above its place, clear of both edges and of the lines before it; never so high that its letter comes to the upper edge or the neck.
            var y = Y(level.HeightCm) + (measure.IsUnder || IsNarrower(shape, level, Y(level.HeightCm) - 7, X, Y) ? Under : -7);
            while (taken.Exists(t => Math.Abs(t - y) < 18) && y > top + 18)
            {
                y -= 6;
            }

            y = Math.Max(y, (shape.Arms.IsEmpty ? top : Y(shape.Levels[^1].HeightCm)) + LetterHigh);
            while (taken.Exists(t => Math.Abs(t - y) < 18) && y < bottom - 18)
            {
                y += 6;
            }

            taken.Add(y);
            var (inLeft, inRight) = Inside(shape, y, X, Y);
            return new DimensionLine(letter, inLeft + Inset, y, inRight - Inset, y, (inLeft + inRight) / 2, y - 5);
        }
    }

    /// <summary>True where the piece gets so much narrower just above a level that a line there would tell another width.</summary>
    private static bool IsNarrower(SizeOutline shape, OutlineLevel level, double y, Func<decimal, double> x, Func<decimal, double> toY)
    {
        var (left, right) = Inside(shape, y, x, toY);
        return right - left < 0.93 * (x(level.RightCm) - x(level.LeftCm)) && level.HeightCm > 0 && toY(0) - toY(level.HeightCm) > 2 * Under;
    }

    /// <summary>"A", "B", … in the order of the measurements.</summary>
    public static string LetterOf(int index) => ((char)('A' + Math.Min(index, 25))).ToString();

    /// <summary>The edges within a few units above and below a height: the narrowest there.</summary>
    private static (double Left, double Right) Inside(SizeOutline shape, double y, Func<decimal, double> x, Func<decimal, double> toY)
    {
        var (left, right) = (double.MinValue, double.MaxValue);
        foreach (var at in new[] { y - 3, y, y + 3 })
        {
            for (var i = 1; i < shape.Levels.Length; i++)
            {
                var (below, above) = (shape.Levels[i - 1], shape.Levels[i]);
                var (from, to) = (toY(below.HeightCm), toY(above.HeightCm));
                if (at <= from + 0.01 && at >= to - 0.01)
                {
                    var share = from - to < 0.01 ? 1 : (from - at) / (from - to);
                    left = Math.Max(left, x(below.LeftCm) + (share * (x(above.LeftCm) - x(below.LeftCm))));
                    right = Math.Min(right, x(below.RightCm) + (share * (x(above.RightCm) - x(below.RightCm))));
                }
            }
        }

        return left == double.MinValue ? (x(shape.Levels[^1].LeftCm), x(shape.Levels[^1].RightCm)) : (left, right);
    }

    private static ImmutableArray<(double X, double Y)> Corners(SizeOutline shape, Func<decimal, double> x, Func<decimal, double> y)
    {
        var corners = new List<(double X, double Y)>();
        Add(Smooth([.. shape.Levels.Select(l => (x(l.LeftCm), y(l.HeightCm)))]));
        foreach (var arm in shape.Arms)
        {
            Add(Smooth([.. arm.Select(l => (x(l.LeftCm), y(l.HeightCm)))]));
            Add(Smooth([.. arm.Reverse().Select(l => (x(l.RightCm), y(l.HeightCm)))]));
        }

        Add(Smooth([.. shape.Levels.Reverse().Select(l => (x(l.RightCm), y(l.HeightCm)))]));
        return [.. corners];

        void Add(IEnumerable<(double X, double Y)> points)
        {
            foreach (var point in points)
            {
                if (corners.Count == 0 || Math.Abs(corners[^1].X - point.X) > 0.005 || Math.Abs(corners[^1].Y - point.Y) > 0.005)
                {
                    corners.Add(point);
                }
            }
        }
    }

    /// <summary>An edge without the steps of single rows: what lies within a line's breadth of the straight way is on it.</summary>
    internal static IEnumerable<(double X, double Y)> Smooth((double X, double Y)[] points)
    {
        var kept = new bool[points.Length];
        (kept[0], kept[^1]) = (true, true);
        var open = new Stack<(int From, int To)>([(0, points.Length - 1)]);
        while (open.TryPop(out var part))
        {
            var (from, to, worst, at) = (points[part.From], points[part.To], Step, -1);
            var (dx, dy) = (to.X - from.X, to.Y - from.Y);
            var length = Math.Sqrt((dx * dx) + (dy * dy));
            for (var i = part.From + 1; i < part.To; i++)
            {
                var (px, py) = (points[i].X - from.X, points[i].Y - from.Y);
                var off = length < 0.01 ? Math.Sqrt((px * px) + (py * py)) : Math.Abs((px * dy) - (py * dx)) / length;
                if (off > worst)
                {
                    (worst, at) = (off, i);
                }
            }

            if (at >= 0)
            {
                kept[at] = true;
                open.Push((part.From, at));
                open.Push((at, part.To));
            }
        }

        return points.Where((_, i) => kept[i]);
    }
}
