using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>A step that stands for whole rows. It ends the row before it and begins none.</summary>
public abstract record RowsStep(TextSpan Origin) : Step(Origin);

/// <summary>So many rows in which the count stays as it is; null where a length says how many.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Rows">How many rows; null where a length says.</param>
/// <param name="Named">How many stitches the words say there are ("work even on 59 sts"); null when they do not.</param>
public sealed record EvenRowsStep(TextSpan Origin, Amount? Rows, Amount? Named = null) : RowsStep(Origin);

/// <summary>How a repeat of whole rows ends.</summary>
public enum RowsUntil
{
    /// <summary>After a number of times.</summary>
    Times,

    /// <summary>At a length, which is no matter of stitches.</summary>
    Length,

    /// <summary>When so many stitches are there.</summary>
    Count,

    /// <summary>Nothing is said: "Rep Rows 1-4 for patt."</summary>
    Open,

    /// <summary>After a number of rows, wherever that falls among the rows repeated.</summary>
    Rows,
}

/// <summary>Earlier rows worked again.</summary>
public sealed record RepeatRowsStep(TextSpan Origin) : RowsStep(Origin)
{
    /// <summary>The row numbers, in order; empty when the last rows or a name are meant.</summary>
    public ImmutableArray<int> Numbers { get; init; } = [];

    /// <summary>How many of the last rows; null when numbers or a name are meant.</summary>
    public Amount? Last { get; init; }

    /// <summary>The name of the row, in lower case; null otherwise.</summary>
    public string? Name { get; init; }

    /// <summary>The stitch pattern whose rows are meant, all of them where <see cref="Numbers"/> is empty; null for rows of the piece itself.</summary>
    public StitchPattern? Pattern { get; init; }

    /// <summary>How many stitches the words say there are ("over 44 sts"); null when they do not.</summary>
    public Amount? Named { get; init; }

    /// <summary>Where the reference stands.</summary>
    public TextSpan Reference { get; init; }

    /// <summary>How it ends.</summary>
    public RowsUntil Until { get; init; }

    /// <summary>Times or stitches.</summary>
    public Amount? Value { get; init; }

    /// <summary>Worked rows between two of them that change nothing ("every 8th row").</summary>
    public bool WithPlainRows { get; init; }

    /// <summary>True when the numbers of the rows grow from time to time ("with 2 more sts between increases each time"): only their change counts.</summary>
    public bool Grows { get; init; }

    /// <summary>Changes to the last row's end ("ending k1"); empty for none.</summary>
    public ImmutableArray<Step> Ending { get; init; } = [];
}

/// <summary>One stretch of a shaping: what a shaping row changes and how many there are.</summary>
/// <param name="Change">Stitches more (or fewer, negative) in each shaping row.</param>
/// <param name="Rows">How many shaping rows; null when <paramref name="ToCount"/> says where it ends.</param>
/// <param name="ToCount">The count it ends at.</param>
public sealed record ShapingStretch(Amount Change, Amount? Rows, Amount? ToCount)
{
    /// <summary>Every how many rows ("every 4th row" is 4, "every RS row" 2); null when the words do not tell.</summary>
    public Amount? Every { get; init; }

    /// <summary>True when the first shaping row is the next one worked ("next and every foll 4th row").</summary>
    public bool BeginsNow { get; init; }
}

/// <summary>"AT THE SAME TIME": the shaping behind it goes on in the same rows as the shaping before it; their changes add up.</summary>
/// <param name="Origin">Where it stands.</param>
public sealed record TogetherStep(TextSpan Origin) : RowsStep(Origin)
{
    /// <summary>True when it begins later: at a length, or at an event that the words tell.</summary>
    public bool BeginsLater { get; init; }

    /// <summary>The length at which it begins, in centimetres ("when armhole measures 10 (11, 12) cm"); null for at once, or when no length is told.</summary>
    public PerSize<decimal?>? AfterLength { get; init; }
}

/// <summary>Shaping over several rows: "dec 1 st each end of every RS row 6 times", "BO 4 sts at beg of next 2 rows".</summary>
public sealed record ShapingStep(TextSpan Origin, ImmutableArray<ShapingStretch> Stretches) : RowsStep(Origin);

/// <summary>"Cont to dec as est until 20 sts rem": the shaping in force goes on to a count.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Stitches">The count that it ends at.</param>
/// <param name="IsDecrease">True when the words say that stitches are decreased, false for increased.</param>
public sealed record ReachStep(TextSpan Origin, Amount Stitches, bool IsDecrease) : RowsStep(Origin);

/// <summary>A starting line: the state is set here and is never itself wrong.</summary>
public sealed record StartStep(TextSpan Origin, Amount Stitches) : RowsStep(Origin)
{
    /// <summary>Stitches before each marker.</summary>
    public ImmutableArray<Amount> Markers { get; init; } = [];

    /// <summary>Crochet: stitches and spaces by kind; empty when only a number is given.</summary>
    public ImmutableArray<StartPart> Parts { get; init; } = [];

    /// <summary>Stitches on each needle, in order.</summary>
    public ImmutableArray<Amount> Needles { get; init; } = [];

    /// <summary>True when the work is a ring, false when flat, null when not said.</summary>
    public bool? InTheRound { get; init; }
}

/// <summary>A part of a crochet start: so many stitches of a kind, or spaces of a length.</summary>
public sealed record StartPart(Stitches.Operation? Stitch, int? Space, Amount Count);
