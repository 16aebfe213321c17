using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Formulas;

/// <summary>A part of a formula, with its place in the formula's text.</summary>
internal abstract record FormulaNode(int Start, int End);

/// <summary>A number, with its unit where one stands behind it.</summary>
internal sealed record NumberNode(decimal Number, Unit? Unit, int Start, int End) : FormulaNode(Start, End);

/// <summary>A name: of another number, a measurement, the gauge, the size.</summary>
internal sealed record NameNode(string Name, int Start, int End) : FormulaNode(Start, End);

/// <summary>A size by its name, in quotes.</summary>
internal sealed record SizeNode(string Name, int Start, int End) : FormulaNode(Start, End);

/// <summary>A minus or a "not" before a part.</summary>
internal sealed record SignNode(FormulaSign Sign, FormulaNode Of, int Start, int End) : FormulaNode(Start, End);

/// <summary>Two parts with a sign between them.</summary>
internal sealed record PairNode(FormulaSign Sign, FormulaNode Left, FormulaNode Right, int SignStart, int SignEnd) : FormulaNode(Left.Start, Right.End);

/// <summary>A function of parts.</summary>
/// <param name="Function">Which.</param>
/// <param name="Parts">What stands in its brackets, ways of rounding apart.</param>
/// <param name="Rounding">What it rounds to; null where nothing is said.</param>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Where it ends.</param>
internal sealed record FunctionNode(FormulaFunction Function, ImmutableArray<FormulaNode> Parts, RoundingNode? Rounding, int Start, int End) : FormulaNode(Start, End);

/// <summary>What is rounded to: a multiple with what is added to it, odd or even numbers.</summary>
internal sealed record RoundingNode(FormulaNode? Multiple, FormulaNode? Plus, Parity Parity);

/// <summary>Odd or even.</summary>
internal enum Parity
{
    /// <summary>Either.</summary>
    Any,

    /// <summary>2, 4, 6.</summary>
    Even,

    /// <summary>1, 3, 5.</summary>
    Odd,
}

/// <summary>A sign of a formula.</summary>
internal enum FormulaSign
{
    /// <summary>+</summary>
    Plus,

    /// <summary>-</summary>
    Minus,

    /// <summary>*</summary>
    Times,

    /// <summary>/</summary>
    Per,

    /// <summary>&lt;</summary>
    Less,

    /// <summary>&lt;=</summary>
    AtMost,

    /// <summary>&gt;</summary>
    More,

    /// <summary>&gt;=</summary>
    AtLeast,

    /// <summary>=</summary>
    Equal,

    /// <summary>and</summary>
    And,

    /// <summary>or</summary>
    Or,

    /// <summary>not</summary>
    Not,
}
