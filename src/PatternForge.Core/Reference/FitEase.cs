using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>How much larger than the body a garment is, by the fit that its designer means.</summary>
/// <param name="Name">The fit.</param>
/// <param name="Inches">Ease in inches; neighbouring fits share their ends.</param>
public sealed record FitEase(string Name, FigureSpan Inches)
{
    /// <summary>The fits, closest first (<see cref="Sources.FitChart"/>).</summary>
    public static ImmutableArray<FitEase> All { get; } =
    [
        new("very close-fitting", new(null, 0)),
        new("close-fitting", new(1, 2)),
        new("standard-fitting", new(2, 4)),
        new("loose-fitting", new(4, 6)),
        new("oversized", new(6, null)),
    ];

    /// <summary>The girth of a garment for a body, both in inches.</summary>
    public FigureSpan Garment(decimal bodyInches) => new(bodyInches + Inches.Least, bodyInches + Inches.Most);
}
