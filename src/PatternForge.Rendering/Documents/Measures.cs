using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Quantities told in metric units and in inches, yards and ounces. What the designer typed is kept as it is; only the other
/// unit is rounded, as the trade does (common practice): inches to the nearest quarter, centimetres to the nearest half.
/// </summary>
internal static class Measures
{
    private const decimal Largest = 1_000_000_000m;
    private const decimal Smallest = 0.000_001m;

    /// <summary>The amount in its base unit where it can be reckoned with; null when not known, or beyond anything that is made by hand.</summary>
    public static decimal? Base(Quantity? quantity) =>
        quantity is { Value: > Smallest and < Largest } ? quantity.InBase : null;

    /// <summary>The metric unit that a quantity is told in.</summary>
    public static Unit Metric(Unit unit) => unit.Dimension switch
    {
        Dimension.Length => unit == Unit.Millimetre ? unit : Unit.Centimetre,
        Dimension.YarnLength => Unit.Metre,
        Dimension.Mass => Unit.Gram,
        _ => unit,
    };

    /// <summary>The other unit that a quantity is told in; null for plain counts.</summary>
    public static Unit? Imperial(Unit unit) => unit.Dimension switch
    {
        Dimension.Length => Unit.Inch,
        Dimension.YarnLength => Unit.Yard,
        Dimension.Mass => Unit.Ounce,
        _ => null,
    };

    /// <summary>The number alone, told in a unit of the same dimension; "54–58" where a range was written.</summary>
    public static string Number(Quantity quantity, Unit unit)
    {
        if (quantity.UpTo is not { } upTo)
        {
            return Single(quantity, unit);
        }

        var (from, to) = (Single(quantity with { UpTo = null }, unit), Single(quantity with { Value = upTo, UpTo = null }, unit));
        return string.Equals(from, to, StringComparison.Ordinal) ? from : $"{from}–{to}";
    }

    private static string Single(Quantity quantity, Unit unit)
    {
        if (Math.Abs(quantity.Value) >= Largest)
        {
            return Wording.Number(quantity.Value);
        }

        var typed = quantity.Unit == unit;
        var value = quantity.InBase / unit.InBase;
        if (unit == Unit.Inch || unit == Unit.Ounce)
        {
            return typed ? Fraction(value, exactOnly: true) : Fraction(value, exactOnly: false);
        }

        if (typed || unit.Dimension == Dimension.Count)
        {
            return Wording.Number(value);
        }

        var step = unit == Unit.Centimetre ? 0.5m : 1m;
        return Wording.Number(Math.Round(value / step, MidpointRounding.AwayFromZero) * step);
    }

    /// <summary>The quantity with its unit.</summary>
    public static string Text(Quantity quantity, Unit unit) => $"{Number(quantity, unit)} {unit.Symbol}".TrimEnd();

    /// <summary>The quantity in metric units, then the other in parentheses: "51 cm (20 in)".</summary>
    public static string Both(Quantity quantity)
    {
        var metric = Text(quantity, Metric(quantity.Unit));
        return Imperial(quantity.Unit) is { } other ? $"{metric} ({Text(quantity, other)})" : metric;
    }

    /// <summary>Whole, quarter, half and three-quarter values with a fraction sign; under one, eighths too, so that small things keep their size.</summary>
    private static string Fraction(decimal value, bool exactOnly)
    {
        var eighths = value * 8m;
        var step = value < 1m ? 1m : 2m;
        var rounded = Math.Round(eighths / step, MidpointRounding.AwayFromZero) * step;
        if ((exactOnly && rounded != eighths) || value < 0m || value > 1_000_000m)
        {
            return Wording.Number(value);
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
}
