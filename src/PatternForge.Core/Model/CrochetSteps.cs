using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>Which loop at the top of a stitch crochet goes into, as the maker sees it.</summary>
public enum StitchLoop
{
    /// <summary>Both, as usual.</summary>
    Both,

    /// <summary>The front one alone.</summary>
    Front,

    /// <summary>The back one alone.</summary>
    Back,
}

/// <summary>Stitches of one kind worked at a place: so many into each.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Operation">The stitch.</param>
/// <param name="Each">How many into each place; null for one.</param>
/// <param name="Place">Where; null when nothing is said, which means the next ones (or the ring).</param>
public sealed record CrochetStep(TextSpan Origin, Operation Operation, Amount? Each, Place? Place) : Step(Origin)
{
    /// <summary>Which loop of the stitch below it goes into.</summary>
    public StitchLoop Loop { get; init; }
}

/// <summary>Several stitches worked as one group at each place: "(2 dc, ch 2, 2 dc) in next ch-2 sp".</summary>
public sealed record ShellStep(TextSpan Origin, ImmutableArray<Step> Body, Place Place) : Step(Origin)
{
    /// <summary>The name the group is counted by ("shell"); null when it has none.</summary>
    public string? Name { get; init; }

    /// <summary>How often at each place; null for once.</summary>
    public Amount? Times { get; init; }
}

/// <summary>"working (sc, ch 2, sc) in each corner sp" behind "in each st around": there the group is worked in place of the stitch.</summary>
public sealed record InsteadStep(TextSpan Origin, ImmutableArray<Step> Body, Thing Thing) : Step(Origin);

/// <summary>Chains: a turning chain at a row's start, a space between stitches, a foundation at the beginning.</summary>
public sealed record ChainStep(TextSpan Origin, Amount Chains) : Step(Origin)
{
    /// <summary>What the words behind it say: counts as a stitch, does not, or nothing.</summary>
    public bool? Counts { get; init; }

    /// <summary>The stitch that it is said to count as; null when none is named.</summary>
    public Operation? As { get; init; }

    /// <summary>Chains beyond the stitch that it counts as ("counts as dc and ch 1"); null when not said.</summary>
    public int? Over { get; init; }

    /// <summary>True when the words speak for the rows to come as well ("counts as dc here and throughout").</summary>
    public bool Throughout { get; init; }
}

/// <summary>Filet: so many meshes, open (two chains and a stitch) or solid (three stitches).</summary>
public sealed record MeshStep(TextSpan Origin, Amount? Meshes, bool IsOpen) : Step(Origin);

/// <summary>Places passed over.</summary>
public sealed record SkipStep(TextSpan Origin, Place Place) : Step(Origin)
{
    /// <summary>False when the words do not tell which ones ("miss 1 st"): at a row's start that may be the one under the turning chain.</summary>
    public bool SaysNext { get; init; } = true;
}

/// <summary>"4 hdc inc": increases (or decreases) in stitches of that kind, or those stitches and one increase; what fits tells.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Stitch">The stitch named.</param>
/// <param name="Change">The increase or decrease.</param>
/// <param name="Number">The number before the words; null for none.</param>
/// <param name="Times">The number behind them; null for none.</param>
public sealed record NamedIncreaseStep(TextSpan Origin, Operation Stitch, Operation Change, Amount? Number, Amount? Times) : Step(Origin);

/// <summary>The round is closed with a slip stitch, which is no stitch of the round.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="TopOf">The length of the chain that is named ("top of ch-3"); null when none is.</param>
public sealed record CloseStep(TextSpan Origin, int? TopOf) : Step(Origin);

/// <summary>The yarn is joined anew at a place, and the row begins there.</summary>
public sealed record BeginAtStep(TextSpan Origin, Place Place) : Step(Origin)
{
    /// <summary>True when only the yarn is joined there: the first stitch goes into that same place, whether the row says so or not.</summary>
    public bool IsJoin { get; init; }
}

/// <summary>The yarn is joined to the foundation chain, and work goes on along its free side.</summary>
public sealed record FreeSideStep(TextSpan Origin) : Step(Origin);

/// <summary>A ring to work into: a magic ring, or the foundation chain closed.</summary>
public sealed record RingStep(TextSpan Origin) : Step(Origin);

/// <summary>The rest of the row is left unworked.</summary>
public sealed record LeaveStep(TextSpan Origin) : Step(Origin)
{
    /// <summary>True when it is the turning chain that is left.</summary>
    public bool IsTurningChain { get; init; }
}

/// <summary>The yarn is fastened off: the piece is done, or its yarn is joined anew.</summary>
public sealed record FastenOffStep(TextSpan Origin) : Step(Origin);

/// <summary>Work goes on along the other side of the foundation chain.</summary>
public sealed record OtherSideStep(TextSpan Origin) : Step(Origin);

/// <summary>Words that say whether the skipped chains of a foundation count as a stitch.</summary>
public sealed record SkippedChainsStep(TextSpan Origin, bool Counts) : Step(Origin);
