using PatternForge.Core.Model;

namespace PatternForge.Core.Formulas;

/// <summary>What a value of a formula measures: the powers of the five things that patterns count and measure. All nought: a bare number.</summary>
/// <param name="Length">Length of fabric or body, in centimetres.</param>
/// <param name="Stitches">Stitches.</param>
/// <param name="Rows">Rows or rounds.</param>
/// <param name="Mass">Mass, in grams.</param>
/// <param name="Yarn">Length of yarn, in metres.</param>
internal readonly record struct Dimensions(sbyte Length, sbyte Stitches, sbyte Rows, sbyte Mass, sbyte Yarn)
{
    private const int MostPower = 8;

    /// <summary>A bare number.</summary>
    public static Dimensions None => default;

    /// <summary>Centimetres.</summary>
    public static Dimensions OfLength => new(1, 0, 0, 0, 0);

    /// <summary>Stitches.</summary>
    public static Dimensions OfStitches => new(0, 1, 0, 0, 0);

    /// <summary>Rows.</summary>
    public static Dimensions OfRows => new(0, 0, 1, 0, 0);

    /// <summary>Grams.</summary>
    public static Dimensions OfMass => new(0, 0, 0, 1, 0);

    /// <summary>Metres of yarn.</summary>
    public static Dimensions OfYarn => new(0, 0, 0, 0, 1);

    /// <summary>True for stitches, rows and bare numbers: what is counted and not measured.</summary>
    public bool IsCount => this == None || this == OfStitches || this == OfRows;

    /// <summary>What a unit of the header measures: words for stitches and rows are told apart, other counted things are bare numbers.</summary>
    public static Dimensions Of(Unit unit) => unit.Dimension switch
    {
        Dimension.Length => OfLength,
        Dimension.YarnLength => OfYarn,
        Dimension.Mass => OfMass,
        _ => unit.Symbol.ToLowerInvariant() switch
        {
            "st" or "sts" or "stitch" or "stitches" => OfStitches,
            "row" or "rows" or "rnd" or "rnds" or "round" or "rounds" => OfRows,
            _ => None,
        },
    };

    /// <summary>That of a product; null where a power becomes absurd.</summary>
    public Dimensions? Times(Dimensions other) => Sum(other, 1);

    /// <summary>That of a quotient; null where a power becomes absurd.</summary>
    public Dimensions? Per(Dimensions other) => Sum(other, -1);

    /// <summary>That of the square root; null where a power is odd.</summary>
    public Dimensions? Root() => Length % 2 != 0 || Stitches % 2 != 0 || Rows % 2 != 0 || Mass % 2 != 0 || Yarn % 2 != 0
        ? null
        : new((sbyte)(Length / 2), (sbyte)(Stitches / 2), (sbyte)(Rows / 2), (sbyte)(Mass / 2), (sbyte)(Yarn / 2));

    /// <summary>"a length", "stitches", "stitches per cm": for messages.</summary>
    public string Words()
    {
        if (this == None)
        {
            return "a bare number";
        }

        (sbyte Power, string Name)[] parts = [(Length, "cm"), (Stitches, "stitches"), (Rows, "rows"), (Mass, "grams"), (Yarn, "metres of yarn")];
        var over = string.Join(" times ", parts.Where(p => p.Power > 0).Select(p => Named(p.Power, p.Name)));
        var under = string.Join(" and ", parts.Where(p => p.Power < 0).Select(p => Named((sbyte)-p.Power, p.Name)));
        return this == OfLength ? "a length" : under.Length == 0 ? over : over.Length == 0 ? $"a number per {under}" : $"{over} per {under}";
    }

    private static string Named(sbyte power, string name) => power == 1 ? name : $"{name} to the power of {power}";

    private Dimensions? Sum(Dimensions other, int sign)
    {
        int[] powers = [Length + (sign * other.Length), Stitches + (sign * other.Stitches), Rows + (sign * other.Rows), Mass + (sign * other.Mass), Yarn + (sign * other.Yarn)];
        return Array.Exists(powers, p => Math.Abs(p) > MostPower) ? null : new((sbyte)powers[0], (sbyte)powers[1], (sbyte)powers[2], (sbyte)powers[3], (sbyte)powers[4]);
    }
}
