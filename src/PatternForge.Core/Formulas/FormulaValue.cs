using PatternForge.Core.Model;

namespace PatternForge.Core.Formulas;

/// <summary>A value of a formula in one size: a number in the base unit of what it measures, or the answer to a condition.</summary>
/// <param name="Value">The number in centimetres, stitches, rows, grams or metres; 1 or 0 for the answer to a condition.</param>
/// <param name="Dimensions">What it measures.</param>
/// <param name="Exact">What it would be had nothing been rounded on the way.</param>
internal readonly record struct FormulaValue(decimal Value, Dimensions Dimensions, decimal Exact)
{
    /// <summary>A value that nothing was rounded for.</summary>
    public FormulaValue(decimal value, Dimensions dimensions)
        : this(value, dimensions, value)
    {
    }

    /// <summary>True for the answer to a condition.</summary>
    public bool IsAnswer { get; init; }

    /// <summary>The unit to tell it in, taken from what it was made of; null for the base unit.</summary>
    public Unit? Unit { get; init; }

    /// <summary>The answer to a condition.</summary>
    public static FormulaValue Answer(bool holds) => new(holds ? 1 : 0, Dimensions.None) { IsAnswer = true };

    /// <summary>A quantity of the header; of a range the middle.</summary>
    public static FormulaValue Of(Quantity quantity)
    {
        var value = (quantity.UpTo is { } upTo ? (quantity.Value + upTo) / 2 : quantity.Value) * quantity.Unit.InBase;
        return new(value, Dimensions.Of(quantity.Unit)) { Unit = quantity.Unit.Dimension == Dimension.Count ? null : quantity.Unit };
    }

    /// <summary>The value as the header writes it: counts bare, measures in the unit they came in. Null for what no header value can be (stitches per cm).</summary>
    public Quantity? ToQuantity() => Told(Value);

    /// <summary>The same, had nothing been rounded.</summary>
    public Quantity? ToExactQuantity() => Told(Exact);

    private Quantity? Told(decimal value)
    {
        var unit = Dimensions switch
        {
            { IsCount: true } => Model.Unit.None,
            var d when d == Dimensions.OfLength => Unit is { Dimension: Dimension.Length } said ? said : Model.Unit.Centimetre,
            var d when d == Dimensions.OfMass => Unit is { Dimension: Dimension.Mass } said ? said : Model.Unit.Gram,
            var d when d == Dimensions.OfYarn => Unit is { Dimension: Dimension.YarnLength } said ? said : Model.Unit.Metre,
            _ => null,
        };
        return unit is null ? null : new Quantity(decimal.Round(value / unit.InBase, 10) / 1.000000000000000000000000000m, unit);
    }
}
