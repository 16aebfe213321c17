namespace PatternForge.Rendering.Drawings;

/// <summary>
/// The line that the heads of a round stand on: a circle, a polygon with real corners, or a circle that is on its way to one. Lengths along it go with the angle.
/// </summary>
internal sealed class RoundContour
{
    private const int Steps = 2_880;

    private readonly double[] _lengths = new double[Steps + 1];
    private readonly int _corners;
    private readonly double _first;
    private readonly double _radius;
    private readonly double _power;
    private readonly double _half;

    /// <summary>A contour.</summary>
    /// <param name="radius">From the centre to the middle of a side.</param>
    /// <param name="corners">How many corners; 0 for a circle.</param>
    /// <param name="first">The angle of one of them.</param>
    /// <param name="reach">From the centre to a corner, as a multiple of the radius.</param>
    /// <param name="half">Half the length of its straight sides where it is an oval; 0 for others.</param>
    public RoundContour(double radius, int corners, double first, double reach, double half = 0)
    {
        (_radius, _corners, _first, _half) = (radius, corners, first, half);
        _power = corners == 0 ? 0 : Math.Log(Math.Max(1, reach)) / Math.Log(FullReach(corners));
        for (var i = 1; i <= Steps; i++)
        {
            _lengths[i] = _lengths[i - 1] + At(2 * Math.PI * i / Steps).DistanceTo(At(2 * Math.PI * (i - 1) / Steps));
        }
    }

    /// <summary>How much farther out the corners of a polygon are than its sides.</summary>
    public static double FullReach(int corners) => 1 / Math.Cos(Math.PI / corners);

    /// <summary>Its whole length.</summary>
    public double Length => _lengths[Steps];

    /// <summary>The radius at an angle.</summary>
    public double RadiusAt(double angle) => _radius * Shape(angle);

    /// <summary>How far out a point is: the radius of the contour of this shape that goes through it.</summary>
    public double LevelOf(Spot point) => _half > 0 ? RoundOval.LevelOf(point, _half) : point.Length / Shape(point.Angle);

    /// <summary>The point at an angle, so much farther out.</summary>
    public Spot At(double angle, double farther = 0) => _half > 0 ? RoundOval.At(angle, _radius + farther, _half) : Spot.At(angle, RadiusAt(angle) + farther);

    /// <summary>The angle of a point; on an oval a measure of the way round that goes with it.</summary>
    public double AngleOf(Spot point) => _half > 0 ? RoundOval.AngleOf(point, _half) : point.Angle;

    /// <summary>How much farther out a point is than the contour.</summary>
    public double Beyond(Spot point) => _half > 0 ? RoundOval.LevelOf(point, _half) - _radius : point.Length - RadiusAt(point.Angle);

    /// <summary>The length from angle 0 to an angle; whole turns count.</summary>
    public double LengthTo(double angle)
    {
        var turns = Math.Floor(angle / (2 * Math.PI));
        var at = (angle - (turns * 2 * Math.PI)) / (2 * Math.PI) * Steps;
        var i = Math.Min(Steps - 1, (int)at);
        return (turns * Length) + _lengths[i] + ((_lengths[i + 1] - _lengths[i]) * (at - i));
    }

    /// <summary>The angle at a length.</summary>
    public double AngleAt(double length)
    {
        var turns = Math.Floor(length / Length);
        var rest = length - (turns * Length);
        var i = Array.BinarySearch(_lengths, rest);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, Steps - 1);
        return 2 * Math.PI * (turns + ((i + ((rest - _lengths[i]) / Math.Max(1e-9, _lengths[i + 1] - _lengths[i]))) / Steps));
    }

    /// <summary>The angle at which a point stands over the contour: straight out from the centre on a circle, at right angles to its side on a polygon.</summary>
    public double Over(Spot point)
    {
        var angle = AngleOf(point);
        if (_corners == 0)
        {
            return angle;
        }

        var middle = angle - FromMiddle(angle);
        var along = (point.X * -Math.Sin(middle)) + (point.Y * Math.Cos(middle));
        var square = Math.Clamp(Math.Atan2(along, _radius), -Math.PI / _corners, Math.PI / _corners);
        return angle + (_power * (middle + square - angle));
    }

    private double Shape(double angle) => _corners == 0 ? 1 : Math.Pow(1 / Math.Cos(FromMiddle(angle)), _power);

    private double FromMiddle(double angle)
    {
        var part = 2 * Math.PI / _corners;
        var from = (angle - _first) / part;
        return (from - Math.Floor(from) - 0.5) * part;
    }
}
