using PatternForge.Core.Model;

namespace PatternForge.Core.Editions;

/// <summary>A number of a measurement, and where it stands.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="End">Behind its last one.</param>
/// <param name="Value">Its value.</param>
/// <param name="IsUpTo">True for the upper end of a range that begins with the number before it.</param>
internal readonly record struct MeasureNumber(int Start, int End, decimal Value, bool IsUpTo);

/// <summary>A length, a length of yarn or a mass as the words of a pattern tell it: one value, a range, one a size, or two sides.</summary>
/// <param name="Start">Where it begins in the words.</param>
/// <param name="Numbers">Its numbers in their order.</param>
/// <param name="UnitStart">Where its unit begins; the end for a number of the header that is called by name and brings its own.</param>
/// <param name="End">Behind its unit.</param>
/// <param name="Unit">The unit.</param>
internal sealed record MeasureTold(int Start, IReadOnlyList<MeasureNumber> Numbers, int UnitStart, int End, Unit Unit)
{
    /// <summary>The values of a number of the header that is called by name here; null where the numbers are written out.</summary>
    public PerSize<Quantity?>? Called { get; init; }

    /// <summary>True for metric units.</summary>
    public UnitSystem System => TradeSteps.Of(Unit) ?? UnitSystem.Metric;
}

/// <summary>A measurement with the same told in the other system behind it, where a designer gave both by hand.</summary>
/// <param name="First">The first.</param>
/// <param name="Second">The second; null where there is one alone.</param>
/// <param name="End">Behind both, the bracket of the second included.</param>
internal sealed record MeasurePlace(MeasureTold First, MeasureTold? Second, int End);
