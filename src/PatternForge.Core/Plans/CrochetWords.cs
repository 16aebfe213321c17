namespace PatternForge.Core.Plans;

/// <summary>How a row or a round of crochet begins: with chains as high as its stitch, which do not count as one.</summary>
internal static class CrochetWords
{
    // A chain less than the stitch is high, as is usual where the chains do not count (common practice).
    private static int Chains(string stitch) => stitch switch
    {
        "dc" => 2,
        "tr" => 3,
        "dtr" => 4,
        _ => 1,
    };

    /// <summary>"ch 1", "ch 2 (does not count as a st)".</summary>
    public static string Begin(string stitch) => Chains(stitch) is > 1 and var chains ? FormattableString.Invariant($"ch {chains} (does not count as a st)") : "ch 1";

    /// <summary>The same with the turn of a row.</summary>
    public static string Turn(string stitch) => Begin(stitch) + ", turn";
}
