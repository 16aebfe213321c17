using PatternForge.Core.Stitches;

namespace PatternForge.Core.Model;

/// <summary>The things that a crochet count may count.</summary>
public enum CountedKind
{
    /// <summary>Stitches of one kind ("12 dc").</summary>
    Stitch,

    /// <summary>Chain spaces, of one length or of any ("6 ch-2 sps", "8 loops").</summary>
    Space,

    /// <summary>Chains ("8 underarm chs").</summary>
    Chain,

    /// <summary>Groups that the header defines ("6 shells").</summary>
    Group,

    /// <summary>Picots.</summary>
    Picot,

    /// <summary>What cannot be told from the stitches ("12 petals"): not compared.</summary>
    Other,
}

/// <summary>What a count counts where it is not stitches alone.</summary>
/// <param name="Kind">The kind of thing.</param>
/// <param name="Name">Its name in the pattern's words ("dc", "ch-2 sp").</param>
public sealed record Counted(CountedKind Kind, string Name)
{
    /// <summary>The stitch or group; null for others.</summary>
    public Operation? Stitch { get; init; }

    /// <summary>Chains of the spaces; null for any.</summary>
    public int? Length { get; init; }
}
