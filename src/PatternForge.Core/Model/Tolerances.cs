namespace PatternForge.Core.Model;

/// <summary>How far two figures that should agree may stand apart before a check speaks. Shares of one: 0.05 is five in a hundred.</summary>
public sealed record Tolerances
{
    /// <summary>What holds where nothing else is set.</summary>
    public static Tolerances Default { get; } = new();

    /// <summary>A worked width or length against the finished measurement that the header declares.</summary>
    public decimal Measurement { get; init; } = 0.05m;

    /// <summary>The most stitches that a yarn is carried over on the back before it is told.</summary>
    public int LongestFloat { get; init; } = 5;

    /// <summary>How many times smaller a yarn's part of the amounts may be than its part of the stitches.</summary>
    public int YarnShare { get; init; } = 3;

    /// <summary>An alternative yarn's metres per gram against the main yarn's.</summary>
    public decimal Grist { get; init; } = 0.1m;

    /// <summary>A finished measurement against the body and the ease.</summary>
    public decimal Ease { get; init; } = 0.02m;

    /// <summary>A body measurement against the ends of the published table for whom the pattern is made.</summary>
    public decimal Body { get; init; } = 0.15m;

    /// <summary>The same length or mass in two units, given by hand in rows or prose, as a share of the first; rounding of either number comes on top.</summary>
    public decimal Units { get; init; } = 0.05m;

    /// <summary>The shortest side that a photo should have, in pixels.</summary>
    public int PhotoSide { get; init; } = 600;
}
