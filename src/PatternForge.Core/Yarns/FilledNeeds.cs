using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Yarns;

/// <summary>Puts amounts that were worked out in the place of those that the header asks for.</summary>
public static class FilledNeeds
{
    /// <summary>The facts with the amounts of each yarn that asks for them, the margin counted in, rounded up; as they are where there is no estimate.</summary>
    public static PatternFacts In(PatternFacts facts, YarnEstimate estimate) => facts with
    {
        Yarns = [.. facts.Yarns.Select((yarn, i) => yarn.NeedsAreEstimated && i < estimate.Yarns.Length ? One(yarn, estimate.Yarns[i]) : yarn)],
    };

    /// <summary>The facts with the amounts that another form of the same pattern has.</summary>
    public static PatternFacts As(PatternFacts facts, PatternFacts filled) => facts.Yarns.Length != filled.Yarns.Length || !facts.Yarns.Any(y => y.NeedsAreEstimated) ? facts : facts with
    {
        Yarns = [.. facts.Yarns.Zip(filled.Yarns, (yarn, same) => yarn.NeedsAreEstimated ? yarn with { Needs = same.Needs, EstimatedBy = same.EstimatedBy } : yarn)],
    };

    private static Yarn One(Yarn yarn, EstimatedYarn estimate)
    {
        if (estimate.Method is null || estimate.Sizes.IsEmpty)
        {
            return yarn;
        }

        var inMetres = estimate.Sizes.All(s => s.SafeMetres is not null);
        ImmutableArray<Quantity?> needs = [.. estimate.Sizes.Select(s => inMetres ? Of(s.SafeMetres, Unit.Metre) : Of(s.SafeGrams, Unit.Gram))];
        return yarn with { Needs = needs.Length == 1 ? PerSize.Shared(needs[0]) : PerSize.Each(needs), EstimatedBy = estimate.Method };
    }

    /// <summary>Rounded up: to a whole one below 50, to five below 200, to ten below 1000, to fifty above.</summary>
    public static decimal Rounded(decimal amount)
    {
        var step = amount switch { <= 50 => 1m, <= 200 => 5m, <= 1000 => 10m, _ => 50m };
        return decimal.Ceiling(Math.Round(amount / step, 6)) * step;
    }

    private static Quantity? Of(decimal? amount, Unit unit) => amount is > 0 and var value ? new Quantity(Rounded(value), unit) : null;
}
