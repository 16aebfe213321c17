using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A size of knitting needle.</summary>
/// <param name="Mm">Its diameter in millimetres.</param>
/// <param name="Us">Its American number; null where most charts give none.</param>
/// <param name="Uk">Its old British and Canadian number; null where there is none.</param>
public sealed record NeedleSize(decimal Mm, string? Us, string? Uk)
{
    /// <summary>American numbers that some charts or makers give to this diameter, accepted beside <see cref="Us"/>.</summary>
    public ImmutableArray<string> OtherUs { get; init; } = [];

    /// <summary>The same of the old British numbers.</summary>
    public ImmutableArray<string> OtherUk { get; init; } = [];
}

/// <summary>Knitting needles: diameters with their American and old British numbers (common practice: charts of makers and shops, which differ in places; all readings are accepted).</summary>
/// <remarks>
/// Charts disagree on US 0 (2 or 2.25 mm), US 1 (2.25 or 2.5), US 2 (2.75 or 3), US 6 (4 or 4.25), US 17 (12 or 12.75), US 19 (15 or 16) and on UK 10 (3.25 or 3.5).
/// US 2½ for 3 mm, US 10¾ for 7 mm and US 50 for 25.5 mm are from memory: they only keep a finding away.
/// </remarks>
public static class NeedleSizes
{
    /// <summary>Every size, thinnest first.</summary>
    public static ImmutableArray<NeedleSize> All { get; } =
    [
        new(1, "00000", "19"),
        new(1.25m, "0000", "18"),
        new(1.5m, "000", "17"),
        new(1.75m, "00", "15"),
        new(2, "0", "14"),
        new(2.25m, "1", "13") { OtherUs = ["0"] },
        new(2.5m, "1.5", null) { OtherUs = ["1"] },
        new(2.75m, "2", "12"),
        new(3, null, "11") { OtherUs = ["2", "2.5"] },
        new(3.25m, "3", "10"),
        new(3.5m, "4", null) { OtherUk = ["10"] },
        new(3.75m, "5", "9"),
        new(4, "6", "8"),
        new(4.25m, null, null) { OtherUs = ["6"] },
        new(4.5m, "7", "7"),
        new(5, "8", "6"),
        new(5.5m, "9", "5"),
        new(6, "10", "4"),
        new(6.5m, "10.5", "3"),
        new(7, null, "2") { OtherUs = ["10.75"] },
        new(7.5m, null, "1"),
        new(8, "11", "0"),
        new(9, "13", "00"),
        new(10, "15", "000"),
        new(12, "17", null),
        new(12.75m, "17", null),
        new(15, "19", null),
        new(16, null, null) { OtherUs = ["19"] },
        new(19, "35", null),
        new(20, "36", null),
        new(25, "50", null),
        new(25.5m, null, null) { OtherUs = ["50"] },
    ];

    /// <summary>Japanese numbers 0 to 15: the diameter is 2.1 mm and 0.3 mm more for each number (common practice).</summary>
    public static decimal? JapaneseMm(int number) => number is >= 0 and <= 15 ? 2.1m + (0.3m * number) : null;
}
