using System.Globalization;

namespace PatternForge.Core.Model;

/// <summary>
/// Figures as the trade rounds them (common practice): inches and ounces to the nearest quarter and below one to an eighth, centimetres to the nearest half and
/// below one to a tenth, yards and metres of yarn to whole ones and below ten to halves, grams to whole ones.
/// </summary>
public static class TradeSteps
{
    private const decimal Largest = 1_000_000_000m;

    // Lengths of circular needles go by names rather than by measure: 80 cm is sold as 32 in (common practice).
    private static readonly (decimal Cm, decimal Inches)[] Circulars = [(23, 9), (25, 10), (30, 12), (40, 16), (50, 20), (60, 24), (70, 28), (80, 32), (90, 36), (100, 40), (120, 47), (150, 60)];

    /// <summary>The unit of a system for what a unit measures; the unit itself where no other is customary: plain counts, and the millimetres of tools.</summary>
    public static Unit In(UnitSystem system, Unit unit) => unit.Dimension switch
    {
        Dimension.Length when unit == Unit.Millimetre && system == UnitSystem.Metric => unit,
        Dimension.Length => system == UnitSystem.Metric ? Unit.Centimetre : Unit.Inch,
        Dimension.YarnLength => system == UnitSystem.Metric ? Unit.Metre : Unit.Yard,
        Dimension.Mass => system == UnitSystem.Metric ? Unit.Gram : Unit.Ounce,
        _ => unit,
    };

    /// <summary>Which system a unit belongs to; null for plain counts.</summary>
    public static UnitSystem? Of(Unit unit) =>
        unit == Unit.Inch || unit == Unit.Yard || unit == Unit.Ounce ? UnitSystem.Imperial : unit.Dimension == Dimension.Count ? null : UnitSystem.Metric;

    /// <summary>One value told in a unit of the same dimension: as it was typed where the unit is its own, else rounded.</summary>
    public static string Number(Quantity quantity, Unit unit)
    {
        var typed = quantity.Unit == unit;
        if (Math.Abs(quantity.Value) >= Largest)
        {
            return Plain(quantity.Value);
        }

        var value = quantity.InBase / unit.InBase;
        if (unit == Unit.Inch || unit == Unit.Ounce)
        {
            return Fraction(value, typed);
        }

        if (typed || unit.Dimension == Dimension.Count)
        {
            return Plain(value);
        }

        var size = Math.Abs(value);
        if (unit.Dimension == Dimension.YarnLength)
        {
            var rounded = size < 10m ? Math.Max(0.5m, Stepped(size, 0.5m)) : Stepped(size, 1m);
            return unit == Unit.Yard && value > 0 ? Fraction(rounded, exactOnly: true) : Plain(Math.Sign(value) * rounded);
        }

        return Plain(Stepped(value, unit == Unit.Centimetre ? (size < 1m ? 0.1m : 0.5m) : 1m));
    }

    /// <summary>The length of a circular needle under the name that it has in the other system; null where the length is not among the usual ones.</summary>
    public static decimal? Circular(Quantity length, UnitSystem system)
    {
        foreach (var (cm, inches) in Circulars)
        {
            if (system == UnitSystem.Imperial && length.Unit != Unit.Inch && length.InBase == cm)
            {
                return inches;
            }

            if (system == UnitSystem.Metric && length.Unit == Unit.Inch && (length.Value == inches || (inches == 47 && length.Value == 48)))
            {
                return cm;
            }
        }

        return null;
    }

    /// <summary>Whole, quarter, half and three-quarter values with a fraction sign; under one, eighths too, so that small things keep their size.</summary>
    /// <param name="value">The value.</param>
    /// <param name="exactOnly">True to leave a value that is none of them as a decimal number.</param>
    public static string Fraction(decimal value, bool exactOnly)
    {
        var eighths = value * 8m;
        var step = value < 1m ? 1m : 2m;
        var rounded = Math.Round(eighths / step, MidpointRounding.AwayFromZero) * step;
        if ((exactOnly && rounded != eighths) || value < 0m || value > 1_000_000m)
        {
            return Plain(value);
        }

        if (rounded == 0m && value > 0m)
        {
            rounded = 1m;
        }

        var whole = (long)(rounded / 8m);
        var sign = (int)(rounded - (whole * 8m)) switch
        {
            1 => "⅛",
            2 => "¼",
            3 => "⅜",
            4 => "½",
            5 => "⅝",
            6 => "¾",
            7 => "⅞",
            _ => "",
        };
        var digits = whole.ToString(CultureInfo.InvariantCulture);
        return sign.Length == 0 ? digits : whole == 0 ? sign : digits + sign;
    }

    private static decimal Stepped(decimal value, decimal step) => Math.Round(value / step, MidpointRounding.AwayFromZero) * step;

    private static string Plain(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
