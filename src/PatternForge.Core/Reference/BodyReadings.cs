using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A body measurement that is published as a span and not size by size, or that differs from the table of sizes: accepted beside it.</summary>
/// <param name="Group">Whose body.</param>
/// <param name="Measure">What is measured, in small letters.</param>
/// <param name="LeastInches">The least value in inches.</param>
/// <param name="MostInches">The greatest value in inches.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record BodyReading(BodyGroup Group, string Measure, decimal LeastInches, decimal MostInches, Source Source);

/// <summary>Heads, hands and feet, and readings of the chest that differ from table to table.</summary>
/// <remarks>
/// Heads differ most: one table gives a toddler 16 in and another 19, a child 18 and 20½, a woman 20 and 21; real heads are nearer the larger. All are accepted.
/// Published foot sizes could not be confirmed and are left out; what stands here for feet is the usual finished sock.
/// </remarks>
public static class BodyReadings
{
    /// <summary>Every reading.</summary>
    public static ImmutableArray<BodyReading> All { get; } =
    [
        new(BodyGroup.Baby, "head", 12m, 19m, Sources.CommonPractice),
        new(BodyGroup.Child, "head", 18m, 18m, Sources.BodySizes),
        new(BodyGroup.Child, "head", 19m, 21m, Sources.CommonPractice),
        new(BodyGroup.Woman, "head", 20m, 20m, Sources.BodySizes),
        new(BodyGroup.Woman, "head", 21m, 23m, Sources.CommonPractice),
        new(BodyGroup.Man, "head", 22m, 22m, Sources.BodySizes),
        new(BodyGroup.Man, "head", 21m, 25m, Sources.CommonPractice),
        new(BodyGroup.Baby, "hand", 3m, 5.5m, Sources.CommonPractice),
        new(BodyGroup.Child, "hand", 5.5m, 6m, Sources.CommonPractice),
        new(BodyGroup.Woman, "hand", 6m, 7.5m, Sources.CommonPractice),
        new(BodyGroup.Man, "hand", 7.5m, 9m, Sources.CommonPractice),
        new(BodyGroup.Woman, "foot", 8m, 8m, Sources.SockSizes),
        new(BodyGroup.Man, "foot", 10m, 10m, Sources.SockSizes),
        new(BodyGroup.Baby, "chest", 19m, 20m, Sources.CommonPractice),
        new(BodyGroup.Child, "chest", 22m, 31m, Sources.CommonPractice),
    ];
}
