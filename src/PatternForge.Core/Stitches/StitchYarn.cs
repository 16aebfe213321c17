namespace PatternForge.Core.Stitches;

/// <summary>
/// How much yarn a crochet stitch takes beside a double crochet of British, single crochet of American names. By its height in chains: each chain of height takes half of what the
/// shortest stitch takes, and so does a chain, a slip stitch being one (a rule of thumb of the trade, set down from memory: it is told with every amount and judges nothing).
/// </summary>
public static class StitchYarn
{
    /// <summary>What a chain takes.</summary>
    public const decimal Chain = 0.5m;

    /// <summary>What a picot takes: three chains.</summary>
    public const decimal Picot = 3 * Chain;

    private const decimal EachChainOfHeight = 0.5m;

    /// <summary>What a stitch takes; 1 where its height is not known. Stitches worked together take as much as all of them.</summary>
    public static decimal Of(Operation stitch) =>
        (stitch.Height is { } height ? Chain + (EachChainOfHeight * height) : 1) * (stitch is { Makes: 1, Takes: > 1, Family: Family.Decrease } ? stitch.Takes : 1);
}
