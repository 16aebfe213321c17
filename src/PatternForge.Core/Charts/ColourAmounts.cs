using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Charts;

/// <summary>Shares out the whole amount of one yarn that is used in several colours by the stitches that are worked in each.</summary>
internal static class ColourAmounts
{
    /// <summary>The amounts of each colour, one list a size; empty where the colours are of several yarns, or where their amounts were worked out by the stitches already.</summary>
    /// <param name="facts">The header.</param>
    /// <param name="share">How the stitches of the pattern's only part are shared out.</param>
    public static ImmutableArray<ImmutableArray<ColourAmount>> Of(PatternFacts facts, YarnShares share)
    {
        Yarn[] yarns = [.. share.Yarns.Select(label => facts.Yarns.First(y => y.Label == label))];
        if (yarns.Any(y => !IsSameYarn(y, yarns[0]) || y.Needs is null || y.NeedsAreEstimated || y.EstimatedBy is not null)
            || facts.Yarns.Count(y => IsSameYarn(y, yarns[0])) > yarns.Length)
        {
            return [];
        }

        var sizes = ImmutableArray.CreateBuilder<ImmutableArray<ColourAmount>>();
        for (var size = 0; size < facts.Sizes.Count; size++)
        {
            decimal?[] metres = [.. yarns.Select(y => MetresOf(y, size))];
            decimal?[] grams = [.. yarns.Select(y => GramsOf(y, size))];
            var (length, mass) = (Sum(metres), Sum(grams));
            sizes.Add((length ?? mass) is null || share.Of(0, size) is null ? []
                : [.. yarns.Select((_, i) => new ColourAmount(length * share.Of(i, size), mass * share.Of(i, size)))]);
        }

        return sizes.All(s => s.IsEmpty) ? [] : sizes.ToImmutable();
    }

    /// <summary>The metres that a size needs of a yarn; null where they are not told, or as whole balls, which say nothing of what is left of them.</summary>
    public static decimal? MetresOf(Yarn yarn, int size) => NeedOf(yarn, size) switch
    {
        { Unit.Dimension: Dimension.YarnLength } length => length.InBase,
        { Unit.Dimension: Dimension.Mass } mass => mass.InBase * yarn.MetresPerGram,
        _ => null,
    };

    private static decimal? GramsOf(Yarn yarn, int size) => NeedOf(yarn, size) switch
    {
        { Unit.Dimension: Dimension.Mass } mass => mass.InBase,
        { Unit.Dimension: Dimension.YarnLength } length when yarn.MetresPerGram is > 0 and var grist => length.InBase / grist,
        _ => null,
    };

    private static Quantity? NeedOf(Yarn yarn, int size)
    {
        if (yarn.Needs?[size] is not { } need)
        {
            return null;
        }

        var ball = need.Unit.Dimension == Dimension.Mass ? yarn.PutUpMass?.InBase : yarn.PutUpLength?.InBase;
        return ball > 0 && need.InBase % ball.Value == 0 ? null : need;
    }

    private static decimal? Sum(decimal?[] amounts) => amounts.All(a => a > 0) ? amounts.Sum() : null;

    private static bool IsSameYarn(Yarn one, Yarn other) =>
        one.Name is { Length: > 0 } && string.Equals(one.Name, other.Name, StringComparison.OrdinalIgnoreCase)
        && one.PutUpMass == other.PutUpMass && one.PutUpLength == other.PutUpLength && one.Strands == other.Strands;
}
