namespace PatternForge.Core.Formulas;

/// <summary>What a name of a formula stands for in one size.</summary>
/// <param name="Value">The value; null where this size has none, or where <paramref name="Fault"/> says why not.</param>
/// <param name="Fault">Why there is none, its place within the name; null where there is nothing to tell.</param>
internal readonly record struct NamedValue(FormulaValue? Value, FormulaFault? Fault = null);

/// <summary>Gauge as formulas ask for it.</summary>
/// <param name="StitchesPerCm">Stitches in a centimetre; null where it is not said.</param>
/// <param name="RowsPerCm">Rows in a centimetre; null where it is not said.</param>
internal sealed record FormulaGauge(decimal? StitchesPerCm, decimal? RowsPerCm);

/// <summary>What formulas may ask of the pattern.</summary>
internal interface IFormulaScope
{
    /// <summary>What a name stands for.</summary>
    NamedValue Find(string name, int size);

    /// <summary>The number of a size by its name, from 1; null where there is none such.</summary>
    int? SizeNumber(string name);

    /// <summary>The gauge of that name, or the first where none is named; null where there is none, with what to say of it.</summary>
    (FormulaGauge? Gauge, FormulaFault? Fault) Gauge(string? name);
}
