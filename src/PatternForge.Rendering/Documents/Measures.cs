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

    private static string Single(Quantity quantity, Unit unit) => TradeSteps.Number(quantity, unit);

    /// <summary>The quantity with its unit.</summary>
    public static string Text(Quantity quantity, Unit unit) => $"{Number(quantity, unit)} {unit.Symbol}".TrimEnd();

    /// <summary>The quantity in metric units, then the other in parentheses: "51 cm (20 in)"; in an edition of one system in that alone.</summary>
    public static string Both(Quantity quantity, UnitSystem? only = null)
    {
        if (only is { } system)
        {
            return Text(quantity, TradeSteps.In(system, quantity.Unit));
        }

        var metric = Text(quantity, Metric(quantity.Unit));
        return Imperial(quantity.Unit) is { } other ? $"{metric} ({Text(quantity, other)})" : metric;
    }
}
