using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>A place in the outline of a piece: how far up, and where its two edges are.</summary>
/// <param name="Line">The index of the line that ends here.</param>
/// <param name="HeightCm">Above the lower edge, in centimetres.</param>
/// <param name="LeftCm">The left edge as the right side shows it, in centimetres from the middle of the lower edge.</param>
/// <param name="RightCm">The right edge.</param>
/// <param name="Stitches">The stitches that the width is made of.</param>
public sealed record OutlineLevel(int Line, decimal HeightCm, decimal LeftCm, decimal RightCm, int Stitches)
{
    /// <summary>How wide it is there, in centimetres.</summary>
    public decimal WidthCm => RightCm - LeftCm;

    /// <summary>The same place on the other side of a middle line.</summary>
    public OutlineLevel Mirrored(decimal middleCm) => this with { LeftCm = (2 * middleCm) - RightCm, RightCm = (2 * middleCm) - LeftCm };

    /// <summary>True where the line casts on or binds off stitches at the edges.</summary>
    public bool IsEdge { get; init; }
}

/// <summary>The outline of a piece in one size.</summary>
/// <param name="Levels">From the lower edge up to where it ends, or parts in two.</param>
/// <param name="Arms">The two parts above that place, the left one first; empty where it does not part.</param>
public sealed record SizeOutline(ImmutableArray<OutlineLevel> Levels, ImmutableArray<ImmutableArray<OutlineLevel>> Arms)
{
    /// <summary>What is known of a sock, whose leg and foot do not lie one above the other; null for all that is no sock.</summary>
    public SockShape? Sock { get; init; }

    /// <summary>The highest place, in centimetres.</summary>
    public decimal TopCm => Arms.IsEmpty ? Levels[^1].HeightCm : Arms.Max(a => a[^1].HeightCm);

    /// <summary>Half the widest width on either side of the middle, in centimetres.</summary>
    public decimal LeastLeftCm => Levels.Concat(Arms.SelectMany(a => a)).Min(l => l.LeftCm);

    /// <summary>The place furthest to the right, in centimetres.</summary>
    public decimal MostRightCm => Levels.Concat(Arms.SelectMany(a => a)).Max(l => l.RightCm);

    /// <summary>What the outline takes in, in square centimetres.</summary>
    public decimal AreaCm2 => Sock is { } sock ? sock.AreaCm2 : Area(Levels) + Arms.Sum(Area);

    /// <summary>Left and right change places.</summary>
    public SizeOutline Mirrored() => new([.. Levels.Select(l => l.Mirrored(0))], [.. Arms.Reverse().Select(a => a.Select(l => l.Mirrored(0)).ToImmutableArray())]);

    /// <summary>The upper edge below: for pieces that are worked from their top down.</summary>
    public SizeOutline UpsideDown()
    {
        var top = TopCm;
        return new([.. Levels.Reverse().Select(l => l with { HeightCm = top - l.HeightCm })], []);
    }

    private static decimal Area(ImmutableArray<OutlineLevel> levels) =>
        Enumerable.Range(1, Math.Max(0, levels.Length - 1)).Sum(i => (levels[i].HeightCm - levels[i - 1].HeightCm) * (levels[i].WidthCm + levels[i - 1].WidthCm) / 2);
}

/// <summary>Which way a measurement of an outline goes.</summary>
public enum OutlineDirection
{
    /// <summary>Across the stitches.</summary>
    Across,

    /// <summary>Along the rows.</summary>
    Along,
}

/// <summary>A measurement of an outline.</summary>
/// <param name="Name">What it is, in words ("lower edge", "armhole").</param>
/// <param name="Direction">Across or along.</param>
/// <param name="From">The level that it begins at; the level itself for a width.</param>
/// <param name="To">The level that it goes to.</param>
/// <param name="Cm">What it measures, one a size, in centimetres: around, in a piece that is worked in the round.</param>
public sealed record OutlineMeasure(string Name, OutlineDirection Direction, int From, int To, ImmutableArray<decimal> Cm)
{
    /// <summary>True for what is measured at the two parts above the neck.</summary>
    public bool IsOfArms { get; init; }

    /// <summary>True for the space between the two parts.</summary>
    public bool IsGap { get; init; }

    /// <summary>True for a width whose line stands a little below its place.</summary>
    public bool IsUnder { get; init; }

    /// <summary>True for a width that is told under the piece, because its place has another measurement already.</summary>
    public bool IsBelow { get; init; }
}

/// <summary>How a piece is drawn.</summary>
public enum OutlineView
{
    /// <summary>Flat, as its right side shows it.</summary>
    Flat,

    /// <summary>A tube that lies flat: half of it is in front.</summary>
    Tube,

    /// <summary>The front of a body and its yoke: the body laid flat, the sleeves left out.</summary>
    Yoke,

    /// <summary>The back of a body and its yoke that are open in front: the sleeves left out.</summary>
    OpenYoke,

    /// <summary>From the side: worked in rounds from its middle.</summary>
    Side,

    /// <summary>A circle from above.</summary>
    Circle,

    /// <summary>A sock on its side, laid flat: half of it is in front.</summary>
    Sock,
}

/// <summary>The outline of a piece as its rows and its gauge make it, in every size.</summary>
public sealed record PieceOutline
{
    /// <summary>What the piece is called.</summary>
    public required string Name { get; init; }

    /// <summary>The headings that its rows stand under, in their order.</summary>
    public required ImmutableArray<string> Headings { get; init; }

    /// <summary>Where its first line stands.</summary>
    public required TextSpan Origin { get; init; }

    /// <summary>How it is drawn.</summary>
    public OutlineView View { get; init; }

    /// <summary>The gauge that it is reckoned with; null where it cannot be drawn.</summary>
    public Gauge? Gauge { get; init; }

    /// <summary>Its outline, one a size; empty where it cannot be drawn.</summary>
    public ImmutableArray<SizeOutline> Sizes { get; init; } = [];

    /// <summary>Its measurements, widths first.</summary>
    public ImmutableArray<OutlineMeasure> Measures { get; init; } = [];

    /// <summary>Why it cannot be drawn, as the end of a sentence; null where it can.</summary>
    public string? Reason { get; init; }

    /// <summary>True where there is something to draw.</summary>
    public bool IsDrawn => Reason is null && !Sizes.IsEmpty;
}
