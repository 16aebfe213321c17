using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A size of crochet hook.</summary>
/// <param name="Mm">Its diameter in millimetres.</param>
/// <param name="Letter">Its American letter, "M/N" where makers differ; null where it has none.</param>
/// <param name="Number">Its American number; null where it has none.</param>
/// <param name="Uk">Its old British number; null where it has none.</param>
public sealed record HookSize(decimal Mm, string? Letter, string? Number, string? Uk)
{
    /// <summary>Letters and numbers that some charts or makers give to this diameter, accepted beside the usual ones.</summary>
    public ImmutableArray<string> OtherUs { get; init; } = [];

    /// <summary>The same of the old British numbers.</summary>
    public ImmutableArray<string> OtherUk { get; init; } = [];
}

/// <summary>A steel hook for thread, by its American number.</summary>
/// <param name="Number">The number; a greater one is a finer hook.</param>
/// <param name="Mm">The diameters that makers give to it, in millimetres.</param>
/// <param name="Source">Where they come from.</param>
public sealed record SteelHook(string Number, ImmutableArray<decimal> Mm, Source Source);

/// <summary>
/// Crochet hooks: diameters with their American letters and numbers and old British numbers (common practice: charts of makers and shops, which differ in places; all
/// readings are accepted), steel hooks and Japanese hooks.
/// </summary>
/// <remarks>
/// Makers differ on B (2, 2.25 or 2.5 mm), C (2.5 or 2.75), G (4 or 4.25), K (6.5, once 7), M to Q, and on whether there is a 7 with a letter. A steel hook of one number
/// differs by maker by as much as 0.15 mm. The largest hooks, over 19 mm, have no letter that makers agree on.
/// </remarks>
public static class HookSizes
{
    /// <summary>Every ordinary hook, thinnest first.</summary>
    public static ImmutableArray<HookSize> All { get; } =
    [
        new(2, null, "0", "14") { OtherUs = ["B", "1"] },
        new(2.25m, "B", "1", "13"),
        new(2.5m, null, "1.5", "12") { OtherUs = ["B", "1", "C", "2"] },
        new(2.75m, "C", "2", "11") { OtherUk = ["12"] },
        new(3, null, null, "11") { OtherUs = ["3", "D"] },
        new(3.25m, "D", "3", "10"),
        new(3.5m, "E", "4", "9"),
        new(3.75m, "F", "5", null),
        new(4, "G", "6", "8"),
        new(4.25m, "G", null, null),
        new(4.5m, null, "7", "7") { OtherUs = ["G"] },
        new(5, "H", "8", "6"),
        new(5.5m, "I", "9", "5"),
        new(6, "J", "10", "4"),
        new(6.5m, "K", "10.5", "3"),
        new(7, null, null, "2") { OtherUs = ["K", "10.5"] },
        new(7.5m, null, null, null) { OtherUk = ["1"] },
        new(8, "L", "11", "0"),
        new(9, "M/N", "13", "00"),
        new(10, "N/P", "15", "000") { OtherUs = ["13"] },
        new(11, null, null, null) { OtherUs = ["P", "16"] },
        new(11.5m, "P", "16", null),
        new(12, "O", "16", null),
        new(15, "P/Q", "19", null),
        new(15.75m, "Q", null, null),
        new(16, "Q", null, null),
        new(17.5m, "R", null, null),
        new(19, "S", "35", null),
    ];

    /// <summary>Steel hooks. Most diameters were set down from memory; 00, 7 and 14 were seen.</summary>
    public static ImmutableArray<SteelHook> Steel { get; } =
    [
        new("00", [3.5m], Sources.CommonPractice),
        new("0", [3.25m], Sources.Remembered),
        new("1", [2.75m], Sources.Remembered),
        new("2", [2.25m], Sources.Remembered),
        new("3", [2.1m], Sources.Remembered),
        new("4", [2.0m], Sources.Remembered),
        new("5", [1.9m], Sources.Remembered),
        new("6", [1.8m, 1.6m], Sources.Remembered),
        new("7", [1.65m, 1.5m], Sources.CommonPractice),
        new("8", [1.5m, 1.4m], Sources.Remembered),
        new("9", [1.4m], Sources.Remembered),
        new("10", [1.3m], Sources.Remembered),
        new("11", [1.1m], Sources.Remembered),
        new("12", [1.0m], Sources.Remembered),
        new("13", [0.85m], Sources.Remembered),
        new("14", [0.75m], Sources.CommonPractice),
    ];

    /// <summary>Diameters of Japanese hooks, for lace and for yarn (0 to 6 seen, the rest from memory): they only say which diameters are made.</summary>
    public static ImmutableArray<decimal> Japanese { get; } = [0.5m, 0.6m, 0.75m, 0.9m, 1.0m, 1.25m, 1.5m, 1.75m, 2.0m, 2.3m, 2.5m, 3.0m, 3.5m, 4.0m, 4.5m, 5.0m, 5.5m, 6.0m];
}
