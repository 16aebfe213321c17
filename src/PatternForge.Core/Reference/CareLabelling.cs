using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>
/// The steps of care labels in words (ISO 3758:2023, ASTM D5489-18). The symbols themselves are trade marks and are not used. Figures as the
/// owner of the symbols prints them in its technical booklet.
/// </summary>
public static class CareLabelling
{
    /// <summary>Where the steps come from.</summary>
    public static Source Source => Sources.CareLabelling;

    /// <summary>Highest temperatures of washing that labels know, in °C. Hand wash is at most 40.</summary>
    public static ImmutableArray<int> WashingCelsius => [30, 40, 50, 60, 70, 95];

    /// <summary>Highest temperatures of the iron's sole, in °C: one, two and three dots. 110 means no steam. Some lists print 135 for one dot; both are taken.</summary>
    public static ImmutableArray<int> IroningCelsius => [110, 135, 150, 200];

    /// <summary>Highest temperatures of the air that leaves a tumble dryer, in °C: low and normal.</summary>
    public static ImmutableArray<int> TumbleCelsius => [60, 80];

    /// <summary>Words that labels and the trade use, as they are offered for a misspelt one.</summary>
    public static ImmutableArray<string> Words =>
    [
        "hand wash", "machine wash", "wash", "do not wash", "soak", "rinse", "cold", "cool", "lukewarm", "warm", "hot", "mild", "very mild", "gentle", "delicate",
        "bleach", "do not bleach", "oxygen bleach only", "non-chlorine bleach only", "chlorine",
        "tumble dry", "tumble dry low", "do not tumble dry", "line dry", "dry flat", "drip dry", "dry in shade", "reshape and dry flat", "air dry",
        "iron", "do not iron", "steam", "no steam", "press", "dry clean", "do not dry clean", "wet clean", "do not wet clean",
    ];
}
