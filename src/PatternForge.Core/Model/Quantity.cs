using System.Globalization;

namespace PatternForge.Core.Model;

/// <summary>What kind of thing a quantity measures.</summary>
public enum Dimension
{
    /// <summary>Length of fabric, body or tool: mm, cm, in.</summary>
    Length,

    /// <summary>Length of yarn: m, yd.</summary>
    YarnLength,

    /// <summary>Mass: g, kg, oz.</summary>
    Mass,

    /// <summary>A count of things: balls, skeins, stitches.</summary>
    Count,
}

/// <summary>A unit that quantities may be written in, declared once in <see cref="Unit.All"/>.</summary>
/// <param name="Symbol">As it is printed.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="InBase">How many base units (cm, m, g, 1) one of it is; exact (1 in = 2.54 cm, 1 yd = 0.9144 m, 1 oz = 28.349523125 g: international yard and pound agreement, 1959).</param>
/// <param name="Spellings">Other ways it is written.</param>
public sealed record Unit(string Symbol, Dimension Dimension, decimal InBase, params string[] Spellings)
{
    /// <summary>Millimetre.</summary>
    public static Unit Millimetre { get; } = new("mm", Dimension.Length, 0.1m, "millimetre", "millimetres", "millimeter", "millimeters");

    /// <summary>Centimetre, the base of lengths.</summary>
    public static Unit Centimetre { get; } = new("cm", Dimension.Length, 1m, "cms", "centimetre", "centimetres", "centimeter", "centimeters");

    /// <summary>Inch.</summary>
    public static Unit Inch { get; } = new("in", Dimension.Length, 2.54m, "in.", "ins", "inch", "inches", "\"", "″", "”", "''", "’’");

    /// <summary>Metre of yarn, the base of yarn lengths.</summary>
    public static Unit Metre { get; } = new("m", Dimension.YarnLength, 1m, "metre", "metres", "meter", "meters");

    /// <summary>Yard of yarn.</summary>
    public static Unit Yard { get; } = new("yd", Dimension.YarnLength, 0.9144m, "yds", "yard", "yards");

    /// <summary>Gram, the base of masses.</summary>
    public static Unit Gram { get; } = new("g", Dimension.Mass, 1m, "gr", "gram", "grams", "gramme", "grammes");

    /// <summary>Kilogram.</summary>
    public static Unit Kilogram { get; } = new("kg", Dimension.Mass, 1000m);

    /// <summary>Ounce.</summary>
    public static Unit Ounce { get; } = new("oz", Dimension.Mass, 28.349523125m, "ounce", "ounces");

    /// <summary>No unit: a bare number.</summary>
    public static Unit None { get; } = new("", Dimension.Count, 1m);

    /// <summary>Every unit.</summary>
    public static IReadOnlyList<Unit> All { get; } = [Millimetre, Centimetre, Inch, Metre, Yard, Gram, Kilogram, Ounce];

    /// <summary>The unit of that symbol or spelling, ignoring case; null when nobody knows it.</summary>
    public static Unit? Find(string word) => All.FirstOrDefault(u =>
        string.Equals(u.Symbol, word, StringComparison.OrdinalIgnoreCase) || u.Spellings.Contains(word, StringComparer.OrdinalIgnoreCase));
}

/// <summary>A number with its unit, as it was written.</summary>
public sealed record Quantity(decimal Value, Unit Unit)
{
    /// <summary>The upper end where a range was written ("54-58 cm"); null for a single value.</summary>
    public decimal? UpTo { get; init; }

    /// <summary>The value in the base unit of its dimension (cm, m, g).</summary>
    public decimal InBase => Value * Unit.InBase;

    /// <summary>The same amount in another unit of the same dimension.</summary>
    public Quantity To(Unit unit) => unit.Dimension == Unit.Dimension
        ? new(InBase / unit.InBase, unit) { UpTo = UpTo * Unit.InBase / unit.InBase }
        : throw new ArgumentException($"{Unit.Symbol} cannot be told in {unit.Symbol}.", nameof(unit));

    /// <summary>"91 cm" or "54–58 cm": plain digits, no trailing noughts.</summary>
    public override string ToString() => UpTo is { } upTo
        ? string.Create(CultureInfo.InvariantCulture, $"{Value:0.####}–{upTo:0.####} {Unit.Symbol}").TrimEnd()
        : string.Create(CultureInfo.InvariantCulture, $"{Value:0.####} {Unit.Symbol}").TrimEnd();
}
