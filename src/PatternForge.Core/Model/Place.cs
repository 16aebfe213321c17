using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>What kind of thing crochet is worked into.</summary>
public enum ThingKind
{
    /// <summary>A stitch of any kind.</summary>
    Stitch,

    /// <summary>A stitch of the kind named.</summary>
    Named,

    /// <summary>A chain of the foundation.</summary>
    Chain,

    /// <summary>A chain space.</summary>
    Space,

    /// <summary>A stitch or a chain space.</summary>
    Any,

    /// <summary>The gap between two groups of stitches worked in one place, as in a granny stripe.</summary>
    Gap,
}

/// <summary>A thing of the row below that can be worked into or passed over.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Named">The stitch named; null for others.</param>
/// <param name="Length">Chains of the space that is named ("ch-2 sp"); null for any.</param>
/// <param name="IsCorner">True for a space at a corner ("in corner sp"), or for the stitch at a corner's point ("center sc of corner").</param>
public readonly record struct Thing(ThingKind Kind, Operation? Named = null, int? Length = null, bool IsCorner = false);

/// <summary>Where crochet stitches go.</summary>
public enum PlaceKind
{
    /// <summary>The next one, or each of the next n.</summary>
    Next,

    /// <summary>The one just worked into.</summary>
    Same,

    /// <summary>The first of the row, or each of the first n.</summary>
    First,

    /// <summary>The last of the row, or each of the last n.</summary>
    Last,

    /// <summary>Each one that is left.</summary>
    Each,

    /// <summary>Each one until the last n of <see cref="Place.Until"/> are left.</summary>
    EachToLast,

    /// <summary>Each one up to the next of <see cref="Place.Until"/>.</summary>
    EachToNext,

    /// <summary>Each one up to the middle of the row.</summary>
    EachToCentre,

    /// <summary>The ring.</summary>
    Ring,

    /// <summary>The n-th chain from the hook.</summary>
    ChainFromHook,

    /// <summary>The top of the turning chain below.</summary>
    TurningChain,

    /// <summary>The n-th stitch of the next group worked in one place, or its centre.</summary>
    InGroup,

    /// <summary>The stitch made last, of the row itself: where a picot is closed.</summary>
    JustMade,

    /// <summary>The gap between the next two stitches.</summary>
    Gap,

    /// <summary>A place that the words tell a maker and the counts do not: the row is taken on trust.</summary>
    Unclear,

    /// <summary>Where the stitch's own words say: one that the header defines over several places ("skip next st, dc in next st, dc in skipped st").</summary>
    Own,

    /// <summary>Along an edge or into a new place, where the number is given and nothing can be checked.</summary>
    Edge,
}

/// <summary>A place of the row below.</summary>
/// <param name="Kind">Which one.</param>
/// <param name="Thing">What it is.</param>
/// <param name="Origin">Where the words stand.</param>
public sealed record Place(PlaceKind Kind, Thing Thing, TextSpan Origin)
{
    /// <summary>How many, which chain from the hook, or which stitch of a group; null for one, or a group's centre.</summary>
    public Amount? Count { get; init; }

    /// <summary>Which one from the row's start ("in 2nd st"), where nothing has been worked yet; null where the words do not count from there.</summary>
    public int? FromStart { get; init; }

    /// <summary>What else is worked into ("in each st and ch-1 sp"); null for nothing.</summary>
    public Thing? Also { get; init; }

    /// <summary>Up to what: see <see cref="PlaceKind.EachToLast"/> and <see cref="PlaceKind.EachToNext"/>.</summary>
    public Thing Until { get; init; }
}
