using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>Whose bodies a table measures.</summary>
public enum BodyGroup
{
    /// <summary>Up to two years, sizes in months.</summary>
    Baby,

    /// <summary>Two to sixteen years, sizes in years.</summary>
    Child,

    /// <summary>Women, XS to 5X.</summary>
    Woman,

    /// <summary>Men, S to XXL.</summary>
    Man,
}

/// <summary>One measurement of one size as published, in both systems: the centimetres are the table's own, rounded, not worked out.</summary>
public readonly record struct BodyRange(decimal LeastInches, decimal MostInches, decimal LeastCm, decimal MostCm);

/// <summary>One measurement of the body in all sizes of a table.</summary>
/// <param name="Group">Whose body.</param>
/// <param name="Measure">What is measured, in small letters.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Sizes">One range a size, smallest first.</param>
public sealed record BodyTable(BodyGroup Group, string Measure, Source Source, ImmutableArray<BodyRange> Sizes);
