using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>A point of a crochet diagram; y goes up.</summary>
internal readonly record struct Spot(double X, double Y)
{
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public double Angle => Math.Atan2(Y, X);

    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);

    public static Spot operator *(Spot a, double by) => new(a.X * by, a.Y * by);

    public static Spot At(double angle, double radius) => new(Math.Cos(angle) * radius, Math.Sin(angle) * radius);

    public Spot Turned(double by) => new((X * Math.Cos(by)) - (Y * Math.Sin(by)), (X * Math.Sin(by)) + (Y * Math.Cos(by)));

    public double DistanceTo(Spot other) => (this - other).Length;
}

/// <summary>One chain of a diagram: where its oval lies, and which way.</summary>
internal readonly record struct Oval(Spot Centre, double Angle);

/// <summary>A mark with its place in the drawing.</summary>
internal sealed class PlacedMark
{
    public required DiagramStitch Stitch { get; init; }

    /// <summary>The row, from 0.</summary>
    public required int Row { get; init; }

    /// <summary>Where it stands on what it is worked into: several for stitches worked together.</summary>
    public List<Spot> Feet { get; init; } = [];

    /// <summary>Its upper end.</summary>
    public Spot Head { get; set; }

    /// <summary>The chains that it is drawn with.</summary>
    public List<Oval> Ovals { get; init; } = [];

    public void Turn(double by)
    {
        for (var i = 0; i < Feet.Count; i++)
        {
            Feet[i] = Feet[i].Turned(by);
        }

        for (var i = 0; i < Ovals.Count; i++)
        {
            Ovals[i] = new Oval(Ovals[i].Centre.Turned(by), Ovals[i].Angle + by);
        }

        Head = Head.Turned(by);
    }
}

/// <summary>The number of a row, at its beginning.</summary>
internal sealed record RowNumber(Spot At, string Text, int Row);

/// <summary>Measures of crochet diagrams in pixels, and what is common to rows and rounds.</summary>
internal static class DiagramMeasures
{
    /// <summary>The length of a chain's oval.</summary>
    public const double Chain = 11;

    /// <summary>From one stitch to the next.</summary>
    public const double Pitch = 15;

    /// <summary>From one stitch to the next of many in one place.</summary>
    public const double TightPitch = 12;

    // A stitch is its chains tall, and a little more for the foot.
    private const double PerChain = 12;
    private const double Foot = 4;
    private const int UsualSpecial = 3;

    /// <summary>How tall a stitch is drawn: in proportion to the chains that replace it.</summary>
    public static double HeightOf(Operation? stitch) => stitch is { Id: "sl st" } ? 5 : Foot + (PerChain * ChainsOf(stitch));

    /// <summary>True for a stitch of the pattern's own, or one that is named and not defined ("popcorn").</summary>
    public static bool IsOwn(Operation stitch) => stitch.IsSpecial || stitch is { Family: Family.Special, Symbol: null or "work" };

    /// <summary>How many chains tall a stitch is; a stitch of the pattern's own is taken for a usual tall one.</summary>
    public static double ChainsOf(Operation? stitch) => stitch is null ? 1 : Math.Max(1, stitch.Height ?? (IsOwn(stitch) ? UsualSpecial : 1)) + (stitch.Symbol?.StartsWith("extended", StringComparison.Ordinal) == true ? 0.5 : 0);

    /// <summary>How tall chains that stand upright are drawn.</summary>
    public static double HeightOf(DiagramStitch mark) => mark.Mark switch
    {
        DiagramMark.TurningChain when mark.Counts => Math.Max(HeightOf(mark.Stitch), mark.Chains * 9),
        DiagramMark.TurningChain or DiagramMark.SkippedChains => (mark.Chains * Chain) + 2,
        DiagramMark.SlipStitch => 4,
        _ => HeightOf(mark.Stitch),
    };

    /// <summary>The least distance of two heads with so many chains between them.</summary>
    public static double Gap(int chains) => chains == 0 ? Pitch : 12 + (Math.Min(chains, 3.4) * 10);

    /// <summary>Ovals that stand upright from a foot to a head.</summary>
    public static void Upright(PlacedMark mark)
    {
        var (from, way) = (mark.Feet[0], mark.Head - mark.Feet[0]);
        for (var i = 0; i < mark.Stitch.Chains; i++)
        {
            mark.Ovals.Add(new Oval(from + (way * ((i + 0.5) / mark.Stitch.Chains)), way.Angle));
        }
    }

    /// <summary>
    /// Values as near as can be to those wanted, in their order and no nearer to each other than the gaps, within bounds: least squares by pooling neighbours
    /// that are in each other's way (isotonic regression).
    /// </summary>
    /// <param name="wanted">Where each would stand.</param>
    /// <param name="gaps">The least distance of each from the one before it; the first is not used.</param>
    /// <param name="from">The lowest value.</param>
    /// <param name="to">The highest value.</param>
    public static double[] Spread(double[] wanted, double[] gaps, double from = double.NegativeInfinity, double to = double.PositiveInfinity)
    {
        var shift = new double[wanted.Length];
        var pools = new List<(double Sum, int Count)>();
        for (var i = 0; i < wanted.Length; i++)
        {
            shift[i] = i == 0 ? 0 : shift[i - 1] + gaps[i];
            pools.Add((wanted[i] - shift[i], 1));
            while (pools.Count > 1 && pools[^2].Sum / pools[^2].Count > pools[^1].Sum / pools[^1].Count)
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        var values = new double[wanted.Length];
        var at = 0;
        var highest = wanted.Length == 0 ? to : to - shift[^1];
        foreach (var (sum, count) in pools)
        {
            for (var i = 0; i < count; i++, at++)
            {
                values[at] = Math.Max(from, Math.Min(highest, sum / count)) + shift[at];
            }
        }

        return values;
    }
}
