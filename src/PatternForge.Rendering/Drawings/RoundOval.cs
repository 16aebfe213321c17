namespace PatternForge.Rendering.Drawings;

/// <summary>The geometry of an oval: everything that is equally far from a straight line in its middle, the foundation chain.</summary>
internal static class RoundOval
{
    // The way round is measured on the oval of this radius, so that it does not change from round to round.
    private const double Reference = 40;

    private const double Quarter = Math.PI / 2 * Reference;

    /// <summary>How far a point is from the line.</summary>
    public static double LevelOf(Spot point, double half) => (point - Foot(point, half)).Length;

    /// <summary>The way out at a point.</summary>
    public static Spot Outward(Spot point, double half)
    {
        var way = point - Foot(point, half);
        return way.Length < 1e-6 ? new Spot(0, 1) : way * (1 / way.Length);
    }

    /// <summary>The point as far out as the radius says, at an angle.</summary>
    public static Spot At(double angle, double radius, double half)
    {
        var u = (angle / (2 * Math.PI)) - Math.Floor(angle / (2 * Math.PI));
        u *= (4 * half) + (4 * Quarter);
        return u <= Quarter ? new Spot(half, 0) + Spot.At(u / Reference, radius)
            : u <= Quarter + (2 * half) ? new Spot(half - (u - Quarter), radius)
            : u <= (3 * Quarter) + (2 * half) ? new Spot(-half, 0) + Spot.At((Math.PI / 2) + ((u - Quarter - (2 * half)) / Reference), radius)
            : u <= (3 * Quarter) + (4 * half) ? new Spot(-half + (u - (3 * Quarter) - (2 * half)), -radius)
            : new Spot(half, 0) + Spot.At((1.5 * Math.PI) + ((u - (3 * Quarter) - (4 * half)) / Reference), radius);
    }

    /// <summary>The angle of a point.</summary>
    public static double AngleOf(Spot point, double half)
    {
        double u;
        if (Math.Abs(point.X) <= half)
        {
            u = point.Y >= 0 ? Quarter + half - point.X : (3 * Quarter) + (3 * half) + point.X;
        }
        else
        {
            var angle = (point - Foot(point, half)).Angle;
            u = point.X > 0 ? angle >= 0 ? angle * Reference : (4 * Quarter) + (4 * half) + (angle * Reference)
                : Quarter + (2 * half) + (((angle < 0 ? angle + (2 * Math.PI) : angle) - (Math.PI / 2)) * Reference);
        }

        return 2 * Math.PI * u / ((4 * half) + (4 * Quarter));
    }

    private static Spot Foot(Spot point, double half) => new(Math.Clamp(point.X, -half, half), 0);
}
