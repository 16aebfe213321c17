namespace PatternForge.Core.Stitches;

/// <summary>Slipped stitches of which it is told where the yarn lies. Rows say so in words beside the stitch, so that they are no names of their own; charts and their keys tell them apart.</summary>
public static class KnitSlips
{
    /// <summary>The yarn lies before the stitch, on the side that faces the maker.</summary>
    public static Operation Front { get; } = Of("sl wyif", "slip with the yarn in front", "slip-front", "Pass the stitch to the right needle unworked, purlwise, with the yarn in front of it.");

    /// <summary>The yarn lies behind the stitch.</summary>
    public static Operation Back { get; } = Of("sl wyib", "slip with the yarn in back", "slip", "Pass the stitch to the right needle unworked, purlwise, with the yarn behind it.");

    /// <summary>The one of a name in a chart's key: "sl wyif", "sl1 wyib"; null for other names.</summary>
    public static Operation? Find(string name) => name.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant() switch
    {
        "slwyif" or "sl1wyif" or "slwyf" or "sl1wyf" => Front,
        "slwyib" or "sl1wyib" or "slwyb" or "sl1wyb" => Back,
        _ => null,
    };

    /// <summary>A plain slipped stitch with its yarn on one side; other operations stay what they are.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="inFront">True with the yarn in front, false behind; null where nothing is said.</param>
    public static Operation With(Operation operation, bool? inFront) => operation.Id is not ("sl" or "sl1p") || inFront is null ? operation : inFront == true ? Front : Back;

    private static Operation Of(string name, string spoken, string symbol, string definition) => new()
    {
        Id = name,
        Craft = Craft.Knitting,
        Names = [new OperationName(Dialect.Any, name)],
        Spoken = spoken,
        Definition = definition,
        Takes = 1,
        Makes = 1,
        Family = Family.Slip,
        Gives = StitchKind.Slipped,
        Difficulty = Difficulty.Basic,
        Symbol = symbol,
    };
}
