using System.Collections.Immutable;

namespace PatternForge.Core.Formulas;

/// <summary>A function that formulas may use; each is declared once, in <see cref="All"/>.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Least">How many parts it needs.</param>
/// <param name="Most">How many parts it may have.</param>
/// <param name="Form">How it is written, for messages and the README.</param>
/// <param name="Meaning">What it gives, in half a sentence.</param>
internal sealed record FormulaFunction(string Name, int Least, int Most, string Form, string Meaning)
{
    /// <summary>The most parts of any function.</summary>
    public const int MostParts = 64;

    /// <summary>To the nearest.</summary>
    public static FormulaFunction Round { get; } = new("round", 1, 2, "round(x, multiple 8 plus 1)", "the nearest whole number, or the nearest `multiple N plus M`, `odd` or `even` number, or step (`0.5 cm`); from the middle up");

    /// <summary>Upwards.</summary>
    public static FormulaFunction RoundUp { get; } = new("round-up", 1, 2, "round-up(x, even)", "the same, upwards");

    /// <summary>Downwards.</summary>
    public static FormulaFunction RoundDown { get; } = new("round-down", 1, 2, "round-down(x, odd)", "the same, downwards");

    /// <summary>Least.</summary>
    public static FormulaFunction Min { get; } = new("min", 2, MostParts, "min(a, b)", "the least of them");

    /// <summary>Greatest.</summary>
    public static FormulaFunction Max { get; } = new("max", 2, MostParts, "max(a, b)", "the greatest of them");

    /// <summary>A choice.</summary>
    public static FormulaFunction If { get; } = new("if", 3, 3, "if(size >= 'L', a, b)", "the second where the first holds, else the third; conditions have `<`, `<=`, `=`, `>=`, `>`, `and`, `or`, `not`");

    /// <summary>A table.</summary>
    public static FormulaFunction Table { get; } = new("table", 2, MostParts, "table(x, 4, from 80 cm use 5, from 100 cm use 6)", "a value by steps of another: the first below all steps, then that of the last step reached");

    /// <summary>Stitches of a width.</summary>
    public static FormulaFunction Stitches { get; } = new("sts", 1, 2, "sts(width)", "the stitches of a width by the gauge; `sts(width, rib)` by the gauge named `rib`");

    /// <summary>Rows of a length.</summary>
    public static FormulaFunction Rows { get; } = new("rows", 1, 2, "rows(length)", "the rows of a length by the gauge");

    /// <summary>The width of stitches.</summary>
    public static FormulaFunction Width { get; } = new("width", 1, 2, "width(stitches)", "how wide stitches are by the gauge");

    /// <summary>The length of rows.</summary>
    public static FormulaFunction Length { get; } = new("length", 1, 2, "length(rows)", "how long rows are by the gauge");

    /// <summary>The square root.</summary>
    public static FormulaFunction Root { get; } = new("root", 1, 1, "root(x)", "the square root, for slopes");

    /// <summary>Every function.</summary>
    public static ImmutableArray<FormulaFunction> All { get; } = [Round, RoundUp, RoundDown, Min, Max, If, Table, Stitches, Rows, Width, Length, Root];

    /// <summary>True for those that ask the gauge and may name it.</summary>
    public bool AsksGauge => this == Stitches || this == Rows || this == Width || this == Length;

    /// <summary>True for those that round.</summary>
    public bool Rounds => this == Round || this == RoundUp || this == RoundDown;

    /// <summary>The function of that name; null when there is none.</summary>
    public static FormulaFunction? Find(string name) => All.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.OrdinalIgnoreCase));
}
