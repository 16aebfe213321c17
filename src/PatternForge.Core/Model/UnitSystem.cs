namespace PatternForge.Core.Model;

/// <summary>The units that a maker measures and weighs in.</summary>
public enum UnitSystem
{
    /// <summary>Centimetres, metres of yarn, grams.</summary>
    Metric,

    /// <summary>Inches, yards of yarn, ounces.</summary>
    Imperial,
}
