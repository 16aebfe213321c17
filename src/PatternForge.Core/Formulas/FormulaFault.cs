namespace PatternForge.Core.Formulas;

/// <summary>What kind of thing is wrong with a formula.</summary>
internal enum FaultKind
{
    /// <summary>It cannot be read.</summary>
    NotUnderstood,

    /// <summary>Nothing has that name.</summary>
    NameNotFound,

    /// <summary>Names that need each other.</summary>
    Circle,

    /// <summary>Things that cannot be added, compared or chosen between.</summary>
    UnitsDiffer,

    /// <summary>It can be read and has no answer: a division by nought, a root of less than nought, a number beyond all bounds.</summary>
    NoAnswer,

    /// <summary>What it needs was reported already: nothing is said again.</summary>
    Told,
}

/// <summary>What is wrong with a formula, and where in its text.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Start">Offset in the formula's text.</param>
/// <param name="Length">How long the place is.</param>
/// <param name="Message">The sentence for the designer.</param>
/// <param name="Help">The likely repair; null when there is none.</param>
internal sealed record FormulaFault(FaultKind Kind, int Start, int Length, string Message, string? Help = null);
