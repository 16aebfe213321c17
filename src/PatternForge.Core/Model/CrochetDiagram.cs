using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>What one mark of a crochet diagram stands for.</summary>
public enum DiagramMark
{
    /// <summary>Chains between stitches: a chain space, which can be worked into.</summary>
    Chains,

    /// <summary>Chains that stand upright at the beginning of a row.</summary>
    TurningChain,

    /// <summary>Chains that were left out at the hook's end of a foundation and stand upright beside the first stitch.</summary>
    SkippedChains,

    /// <summary>A stitch.</summary>
    Stitch,

    /// <summary>A slip stitch that leads on to a place, or fastens a chain loop there.</summary>
    SlipStitch,

    /// <summary>A few chains closed into a point on top of the stitch before.</summary>
    Picot,

    /// <summary>The slip stitch that closes a round.</summary>
    Join,

    /// <summary>The yarn is joined anew.</summary>
    NewYarn,
}

/// <summary>What a stitch of a diagram is worked into.</summary>
public enum DiagramPlace
{
    /// <summary>A top of the row below, by its number.</summary>
    Below,

    /// <summary>The ring or the one chain in the centre.</summary>
    Centre,

    /// <summary>The first top of its own round.</summary>
    OwnFirst,

    /// <summary>The free side of a foundation chain, by the number of the chain.</summary>
    FreeSide,

    /// <summary>Nothing: a foundation stitch, or a chain that stands at the edge.</summary>
    Nothing,
}

/// <summary>A place that a stitch is worked into.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Top">The number of the top, from 0, in the order in which the row below was made.</param>
public readonly record struct DiagramBase(DiagramPlace Kind, int Top);

/// <summary>One mark of a diagram, in the order of work.</summary>
/// <param name="Mark">What it stands for.</param>
/// <param name="Stitch">The stitch; for a turning chain the one that it counts as; null for chains.</param>
/// <param name="Chains">How many chains; 0 for stitches.</param>
/// <param name="Bases">The places it is worked into: several for stitches worked together.</param>
/// <param name="Top">The number of the top that it makes, from 0; -1 for none.</param>
public sealed record DiagramStitch(DiagramMark Mark, Operation? Stitch, int Chains, ImmutableArray<DiagramBase> Bases, int Top)
{
    /// <summary>True for a turning chain that counts as a stitch.</summary>
    public bool Counts { get; init; }

    /// <summary>Which loop of the stitch below it goes into.</summary>
    public StitchLoop Loop { get; init; }

    /// <summary>True when the place it goes into is a chain space.</summary>
    public bool IntoSpace { get; init; }
}

/// <summary>A row or round of a diagram.</summary>
/// <param name="Number">Its number; null for a row without one.</param>
/// <param name="IsFront">True when the right side faces the maker: worked from right to left, or anticlockwise.</param>
/// <param name="Stitches">Its marks in the order of work.</param>
/// <param name="Tops">How many tops it makes.</param>
public sealed record DiagramRow(int? Number, bool IsFront, ImmutableArray<DiagramStitch> Stitches, int Tops)
{
    /// <summary>The letter of its yarn, where the rows of a diagram are of several; null otherwise.</summary>
    public string? Yarn { get; init; }
}

/// <summary>What the first row of a diagram stands on.</summary>
public enum DiagramStart
{
    /// <summary>A foundation chain.</summary>
    Chain,

    /// <summary>A row that is not shown.</summary>
    EarlierRow,

    /// <summary>An edge of a piece, along which the first row is worked.</summary>
    Edge,

    /// <summary>Nothing: stitches that make their own foundation.</summary>
    Nothing,

    /// <summary>A ring that is drawn tight.</summary>
    Ring,

    /// <summary>A chain closed into a ring.</summary>
    ChainRing,

    /// <summary>A single chain that the whole round goes into.</summary>
    OneChain,

    /// <summary>A foundation chain whose two sides the first round goes along: an oval.</summary>
    BothSides,
}

/// <summary>A crochet diagram: rows or rounds of stitches with the places that they are worked into.</summary>
public sealed record CrochetDiagram
{
    /// <summary>What it shows, as a heading.</summary>
    public required string Name { get; init; }

    /// <summary>The number of the section in the body, from 1, that it is drawn in.</summary>
    public required int Section { get; init; }

    /// <summary>The block that asks for it; null where it stands at the end of its section by itself.</summary>
    public TextSpan? Block { get; init; }

    /// <summary>The size that it shows, where the sizes differ; null where they are the same.</summary>
    public int? Size { get; init; }

    /// <summary>True for Tunisian crochet: each row is a forward and a return pass, and none is turned.</summary>
    public bool IsTunisian { get; init; }

    /// <summary>True when it is worked in rounds from the centre.</summary>
    public required bool IsRound { get; init; }

    /// <summary>What the first row stands on.</summary>
    public required DiagramStart Start { get; init; }

    /// <summary>Chains of the foundation or of the ring; stitches of the row that is not shown.</summary>
    public required int StartCount { get; init; }

    /// <summary>Chains of the foundation, from the hook, that do not lie under the first row but stand at its edge.</summary>
    public int Lifted { get; init; }

    /// <summary>Its rows, the first one first.</summary>
    public required ImmutableArray<DiagramRow> Rows { get; init; }

    /// <summary>How many repeats of a stitch pattern it shows; null for rows of a piece.</summary>
    public int? Repeats { get; init; }

    /// <summary>The lines whose rows it shows, by their number in the file.</summary>
    public ImmutableArray<int> Lines { get; init; } = [];
}
