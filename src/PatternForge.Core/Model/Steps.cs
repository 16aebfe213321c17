using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>A whole number that may differ by size; a null value is a size that skips the step.</summary>
public sealed record Amount(PerSize<int?> Values, TextSpan Origin)
{
    /// <summary>The number in a size.</summary>
    public int? this[int size] => Values[size];
}

/// <summary>How far a run of stitches or a repeat goes.</summary>
public enum Extent
{
    /// <summary>Until nothing is left to work.</summary>
    End,

    /// <summary>Until so many stitches are left.</summary>
    LastStitches,

    /// <summary>Until so many chain spaces are left.</summary>
    LastSpaces,

    /// <summary>To the next marker, or so many stitches before it.</summary>
    Marker,

    /// <summary>To the last marker of the row, or so many stitches before it.</summary>
    LastMarker,

    /// <summary>To the gap of a turn, a bind-off or a wrapped stitch, or so many stitches before it.</summary>
    Gap,

    /// <summary>To the end of this needle, or so many stitches before it.</summary>
    Needle,

    /// <summary>Until the stitches on the other needle are used up, the work being turned back and forth (entrelac).</summary>
    OtherNeedle,

    /// <summary>Until so many stitches are on the right needle.</summary>
    OnRightNeedle,

    /// <summary>Until so many stitches have been bound off from here.</summary>
    Unsaid,
}

/// <summary>A place that work goes to.</summary>
/// <param name="Extent">The kind of place.</param>
/// <param name="Stitches">Stitches before that place; null for none.</param>
/// <param name="MarkerName">The marker's name in lower case ("a", "centre"); null for the next one.</param>
public sealed record Target(Extent Extent, Amount? Stitches = null, string? MarkerName = null);

/// <summary>One bound step of a row: what to do, in the pattern's own sizes.</summary>
public abstract record Step(TextSpan Origin)
{
    /// <summary>The letters of the yarn that it is worked with, in a row of several colours; null where the row does not say.</summary>
    public string? Colour { get; init; }

    /// <summary>For a slipped stitch: true with the yarn in front, false behind it; null where nothing is said.</summary>
    public bool? YarnInFront { get; init; }
}

/// <summary>An operation worked so many times; null for once.</summary>
public sealed record OperationStep(TextSpan Origin, Operation Operation, Amount? Times) : Step(Origin);

/// <summary>An operation worked up to a place.</summary>
public sealed record RunStep(TextSpan Origin, Operation Operation, Target To) : Step(Origin);

/// <summary>"inc": kfb or a made stitch, whichever fits (NOTATION, signs that mean two things).</summary>
public sealed record IncreaseStep(TextSpan Origin, Operation Into, Operation Between, Amount? Times) : Step(Origin);

/// <summary>Steps worked so many times in all; null for once, when the bracket says no number.</summary>
public sealed record GroupStep(TextSpan Origin, ImmutableArray<Step> Body, Amount? Times) : Step(Origin);

/// <summary>Steps worked into one stitch or place: "(k1, yo, k1) in next st".</summary>
public sealed record InOneStitchStep(TextSpan Origin, ImmutableArray<Step> Body, Amount? Times) : Step(Origin);

/// <summary>Steps repeated up to a place, or a number of times that has two readings.</summary>
public sealed record RepeatStep(TextSpan Origin, ImmutableArray<Step> Body) : Step(Origin)
{
    /// <summary>Up to where; null when <see cref="Times"/> says how often.</summary>
    public Target? To { get; init; }

    /// <summary>How often; null when <see cref="To"/> says how far.</summary>
    public Amount? Times { get; init; }

    /// <summary>True when <see cref="Times"/> comes on top of the first time through.</summary>
    public bool IsMore { get; init; }

    /// <summary>True when <see cref="Times"/> may mean in all or more.</summary>
    public bool IsTwoWays { get; init; }

    /// <summary>An "ending ..." that either follows whole repeats or replaces the end of the last one; empty for none.</summary>
    public ImmutableArray<Step> Ending { get; init; } = [];

    /// <summary>True when the words call it an ending; false for what merely follows a repeat to the end.</summary>
    public bool SaysEnding { get; init; }

    /// <summary>True when the words say that the ending belongs to the last repeat.</summary>
    public bool EndsLastRepeat { get; init; }
}

/// <summary>What is done with a marker.</summary>
public enum MarkerAction
{
    /// <summary>Placed here.</summary>
    Place,

    /// <summary>Slipped.</summary>
    Slip,

    /// <summary>Taken out.</summary>
    Remove,
}

/// <summary>Something done with a marker.</summary>
public sealed record MarkerStep(TextSpan Origin, MarkerAction Action, string? Name) : Step(Origin);

/// <summary>The work is turned here.</summary>
public sealed record TurnStep(TextSpan Origin, bool Wraps) : Step(Origin);

/// <summary>Stitches are cast on; at the very start of a piece they are its first.</summary>
public sealed record CastOnStep(TextSpan Origin, Amount Stitches, bool AtEnd) : Step(Origin);

/// <summary>Stitches are bound off: so many, or all that are left where <see cref="Stitches"/> is null, or up to a place.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Stitches">How many; null for all.</param>
/// <param name="To">Up to where; null when a number or all.</param>
/// <param name="Claimed">How many the words say there are when all are bound off ("bind off remaining 17 sts").</param>
public sealed record BindOffStep(TextSpan Origin, Amount? Stitches, Target? To, Amount? Claimed) : Step(Origin);

/// <summary>Stitches leave the needles for a holder: the next so many, or all that are left.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Stitches">How many; null for all not yet held.</param>
/// <param name="FromRight">True when they have just been worked ("k16 and place these sts on a holder").</param>
public sealed record HoldStep(TextSpan Origin, Amount? Stitches, bool FromRight) : Step(Origin);

/// <summary>Held stitches come back to the left needle, to be worked: so many, or all.</summary>
public sealed record ReturnStep(TextSpan Origin, Amount? Stitches) : Step(Origin);

/// <summary>Stitches of a piece worked before are worked: those on the needle first, and the others come to it ("k across 30 sts of first sleeve").</summary>
public sealed record AcrossPieceStep(TextSpan Origin, Operation Operation, Amount Stitches) : Step(Origin);

/// <summary>Something after which nobody can say how many stitches there are: "pick up and knit 3 sts for every 4 rows".</summary>
public sealed record UncountedStep(TextSpan Origin) : Step(Origin);

/// <summary>Stitches are picked up (and knit) along an edge.</summary>
public sealed record PickUpStep(TextSpan Origin, Amount Stitches) : Step(Origin);

/// <summary>Stitches go to the cable needle, or are worked from it; null stitches are all that are on it.</summary>
public sealed record CableNeedleStep(TextSpan Origin, Amount? Stitches, Operation? WorkedAs) : Step(Origin)
{
    /// <summary>True when they are held in front of the work, false behind it; null where the words do not say, and for those worked from it.</summary>
    public bool? InFront { get; init; }
}

/// <summary>So many stitches more or fewer, spread over the row or at its ends: the place does not matter to the count.</summary>
public sealed record SpreadStep(TextSpan Origin, Amount Change) : Step(Origin);

/// <summary>The worker does nothing to the stitches here: a colour, a needle, a word to the maker.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="IsSentence">True for a sentence about the work, which by itself is prose.</param>
public sealed record RemarkStep(TextSpan Origin, bool IsSentence = false) : Step(Origin);

/// <summary>The work is joined into a ring, or goes back to rows.</summary>
public sealed record JoinStep(TextSpan Origin, bool IntoRound) : Step(Origin);

/// <summary>The row ends here without turning ("do not turn", "slide").</summary>
public sealed record SlideStep(TextSpan Origin) : Step(Origin);

/// <summary>A stretch that could not be read; its row is taken on trust.</summary>
public sealed record UnreadStep(TextSpan Origin) : Step(Origin);

/// <summary>A count of one needle ("Needle 1: 15 sts"), which adds up to the whole.</summary>
public sealed record NeedleCountStep(TextSpan Origin, Amount Stitches) : Step(Origin);

/// <summary>A full stop between two parts of a line: where nothing is left to work, a new row begins.</summary>
public sealed record SentenceStep(TextSpan Origin) : Step(Origin);

/// <summary>Work goes on with the next needle ("Needle 2:").</summary>
public sealed record NeedleStep(TextSpan Origin) : Step(Origin);

/// <summary>"Work as for Back to **", "Work as for Left Front, reversing all shaping": the rows of another piece.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Piece">The heading of the piece, in lower case; empty where the words do not name one.</param>
public sealed record AsPieceStep(TextSpan Origin, string Piece) : RowsStep(Origin)
{
    /// <summary>True when only the rows up to the place marked with two stars are meant.</summary>
    public bool ToMark { get; init; }

    /// <summary>Words for another place up to which they are meant ("armholes"); null for the whole piece.</summary>
    public string? UpTo { get; init; }

    /// <summary>True when left and right change places.</summary>
    public bool IsReversed { get; init; }
}

/// <summary>"Complete to match first side, reversing shaping": the rows of the side that was worked first.</summary>
public sealed record MatchSideStep(TextSpan Origin) : RowsStep(Origin)
{
    /// <summary>True when left and right change places.</summary>
    public bool IsReversed { get; init; }
}
