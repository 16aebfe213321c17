using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>What one top of a crochet row is.</summary>
public enum TopKind
{
    /// <summary>A stitch.</summary>
    Stitch,

    /// <summary>A chain space.</summary>
    Space,

    /// <summary>A chain of the foundation.</summary>
    Chain,

    /// <summary>A turning chain that counts as a stitch.</summary>
    TurningChain,

    /// <summary>A turning chain that does not count; it can be worked into when a row says so.</summary>
    BareTurningChain,
}

/// <summary>What the next row can be worked into: a stitch, a space or a chain, with what it was itself worked into.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Stitch">The stitch, or the one that a turning chain stands for; null for spaces and chains, and where the kind is not known.</param>
/// <param name="Length">Chains of a space or turning chain; 0 for stitches.</param>
/// <param name="Base">The place in the row below that it was worked into, from 0 in the order in which that row was worked over; -1 for the ring, an edge, or nothing.</param>
/// <param name="Group">The group it was worked in, from 1; 0 for none.</param>
public readonly record struct Top(TopKind Kind, Operation? Stitch, int Length, int Base, int Group)
{
    /// <summary>A stitch of which only the count is known.</summary>
    public static Top Unknown { get; } = new(TopKind.Stitch, null, 0, -1, 0);

    /// <summary>A chain of a foundation.</summary>
    public static Top FoundationChain { get; } = new(TopKind.Chain, null, 0, -1, 0);

    /// <summary>True when it is one of the stitches that a count counts.</summary>
    public bool Counts => Kind is TopKind.Stitch or TopKind.TurningChain;

    /// <summary>True when it is what is asked for. A stitch of unknown kind may be any; the name of a plain stitch also means its decreases and posts.</summary>
    public bool Is(Thing thing) => thing.Kind switch
    {
        ThingKind.Space => Kind == TopKind.Space && (thing.Length is null || Length == thing.Length),
        ThingKind.Chain => Kind == TopKind.Chain,
        ThingKind.Gap => false, // nothing by itself: it is seen from the stitches beside it
        ThingKind.Any => Kind != TopKind.BareTurningChain,
        ThingKind.Named => Counts && (Stitch is null || Stitch.Id == thing.Named!.Id || Stitch.CountsAs == thing.Named.Id),
        _ => Counts || Kind == TopKind.Chain,
    };
}
