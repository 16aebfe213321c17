using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>What a family of fibres bears. Null = bears what labels know.</summary>
/// <param name="Name">The family.</param>
/// <param name="Words">Words of a fibre content that belong to it, in small letters.</param>
/// <param name="WashCelsius">Hottest wash, in °C.</param>
/// <param name="IronCelsius">Hottest iron, in °C.</param>
public sealed record FibreFamily(string Name, ImmutableArray<string> Words, int? WashCelsius, int? IronCelsius)
{
    /// <summary>True when machine and dryer felt it, unless it is treated against that (superwash).</summary>
    public bool Felts { get; init; }

    /// <summary>True when a tumble dryer spoils it whatever its heat.</summary>
    public bool NoTumbling { get; init; }

    /// <summary>True when chlorine bleach destroys it.</summary>
    public bool NoChlorine { get; init; }

    /// <summary>True when it softens or melts beside great heat.</summary>
    public bool Melts { get; init; }
}

/// <summary>
/// How fibres bear washing, drying, bleach and the iron: common practice of textile care, set down from memory, on the safe side of what single labels
/// allow. It drives warnings alone; the label of the yarn has the last word.
/// </summary>
public static class FibreCare
{
    /// <summary>Where the figures come from.</summary>
    public static Source Source => Sources.FibreCare;

    /// <summary>The families. A word that is in none of them is not judged.</summary>
    public static ImmutableArray<FibreFamily> All { get; } =
    [
        new("wool", ["wool", "merino", "lambswool", "shetland", "bluefaced", "corriedale", "alpaca", "llama", "mohair", "cashmere", "angora", "yak", "camel", "qiviut", "vicuña", "vicuna"], 40, 150) { Felts = true, NoChlorine = true },
        new("silk", ["silk", "tussah"], 40, 150) { NoTumbling = true, NoChlorine = true },
        new("acrylic", ["acrylic", "polyacrylic"], 40, 110) { Melts = true },
        new("nylon", ["nylon", "polyamide"], 60, 110) { NoChlorine = true, Melts = true },
        new("polyester", ["polyester", "microfibre", "microfiber"], 60, 150) { Melts = true },
        new("viscose", ["viscose", "rayon", "modal", "lyocell", "bamboo"], 60, 150),
    ];
}
