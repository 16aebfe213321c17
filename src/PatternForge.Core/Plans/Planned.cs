using System.Diagnostics.CodeAnalysis;

namespace PatternForge.Core.Plans;

/// <summary>A plan, or in a designer's words why there is none.</summary>
/// <param name="Plan">The plan; null where there is none.</param>
/// <param name="Reason">Why there is none; null where there is one.</param>
/// <param name="Help">What would do instead; null where nothing is known.</param>
public sealed record Planned<T>(T? Plan, string? Reason, string? Help)
    where T : class
{
    /// <summary>True where there is a plan.</summary>
    [MemberNotNullWhen(true, nameof(Plan))]
    [MemberNotNullWhen(false, nameof(Reason))]
    public bool IsPlanned => Plan is not null;
}

/// <summary>Makes <see cref="Planned{T}"/>.</summary>
public static class Planned
{
    /// <summary>A plan.</summary>
    public static Planned<T> Of<T>(T plan)
        where T : class => new(plan, null, null);

    /// <summary>No plan, and why.</summary>
    public static Planned<T> No<T>(string reason, string? help = null)
        where T : class => new(null, reason, help);
}

/// <summary>What a plan may take: more is answered with a reason.</summary>
public static class PlanLimits
{
    /// <summary>The most stitches in a row.</summary>
    public const int MostStitches = 100_000;

    /// <summary>The most rows of a piece.</summary>
    public const int MostRows = 100_000;

    /// <summary>The most increases, holes or markers in a row.</summary>
    public const int MostTimes = 10_000;

    /// <summary>The greatest length, gauge or weight, in any unit.</summary>
    public const decimal MostMeasure = 1_000_000;

    internal const decimal Pi = 3.1415926535897932384626433833m;

    internal static bool IsCount(int stitches) => stitches is >= 0 and <= MostStitches;

    internal static bool IsMeasure(decimal measure) => measure is > 0 and <= MostMeasure;
}
