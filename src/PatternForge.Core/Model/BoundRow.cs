using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>The kinds of stated count.</summary>
public enum ClaimKind
{
    /// <summary>So many stitches after the row.</summary>
    Total,

    /// <summary>So many more (negative: fewer) than before it.</summary>
    Change,
}

/// <summary>A count that a row states.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Kind">Total or change.</param>
/// <param name="Values">The number stated, one a size; null where it says nothing for a size.</param>
/// <param name="IsTrusted">False when its list has the wrong length and it is ignored.</param>
public sealed record Claim(TextSpan Origin, ClaimKind Kind, PerSize<int?> Values, bool IsTrusted = true)
{
    /// <summary>What is counted, in crochet, where it is a kind of stitch, spaces or groups; null for stitches alone.</summary>
    public Counted? Of { get; init; }

    /// <summary>True for a change told of each row ("1 st dec'd each row"), until it has been multiplied by the rows of the label.</summary>
    public bool IsEachRow { get; init; }

    /// <summary>The sections that it is told in ("26 sts each front, 44 back"), in their order, each as often as it is said; empty where it is one number.</summary>
    public ImmutableArray<PerSize<int?>> Sections { get; init; } = [];
}

/// <summary>The side of the fabric that faces the maker.</summary>
public enum FabricSide
{
    /// <summary>The right side.</summary>
    Right,

    /// <summary>The wrong side.</summary>
    Wrong,
}

/// <summary>One row of a line after binding: its label's meaning and its steps.</summary>
public sealed record BoundRow
{
    /// <summary>Label and body, without the counts stated at its end.</summary>
    public required TextSpan Origin { get; init; }

    /// <summary>The label; empty when there is none.</summary>
    public TextSpan LabelOrigin { get; init; }

    /// <summary>Row numbers that the label names, in order; empty for none.</summary>
    public ImmutableArray<int> Numbers { get; init; } = [];

    /// <summary>True when the numbers follow each other and the row is worked for each of them here.</summary>
    public bool IsRange { get; init; }

    /// <summary>True when it also speaks for later rows of the same parity.</summary>
    public bool IsRule { get; init; }

    /// <summary>True when it stands for all rows that are not given themselves ("All WS rows: Purl.").</summary>
    public bool SpeaksForOthers { get; init; }

    /// <summary>How many rows "next 6 rows" stands for, one a size; null for one.</summary>
    public Amount? Count { get; init; }

    /// <summary>How many rows the label itself says there are ("(3 rounds)"); null when it does not.</summary>
    public int? SaidRows { get; init; }

    /// <summary>Its name as a key; null for none.</summary>
    public string? Name { get; init; }

    /// <summary>The side stated; null when not.</summary>
    public FabricSide? Side { get; init; }

    /// <summary>True when it has the label of a row or round.</summary>
    public bool IsLabelled { get; init; }

    /// <summary>True when a heading inside the line begins it ("Toe:").</summary>
    public bool StartsPart { get; init; }

    /// <summary>True for a round, false for a row, null when the label does not say.</summary>
    public bool? IsRound { get; init; }

    /// <summary>Indices of the sizes that work it; empty for all.</summary>
    public ImmutableArray<int> Sizes { get; init; } = [];

    /// <summary>True when it is for sizes that the header does not have.</summary>
    public bool IsForNoSize { get; init; }

    /// <summary>The steps.</summary>
    public ImmutableArray<Step> Steps { get; init; } = [];

    /// <summary>Stated counts.</summary>
    public ImmutableArray<Claim> Claims { get; init; } = [];

    /// <summary>The stitches that it states in a size: the total, or the sum of its stitches by kind; null where it states none.</summary>
    public int? StatedIn(int size)
    {
        int? sum = null;
        foreach (var claim in Claims)
        {
            if (claim is { Kind: ClaimKind.Total, IsTrusted: true, Of: null })
            {
                return Claims.Last(c => c is { Kind: ClaimKind.Total, IsTrusted: true, Of: null }).Values[size];
            }

            if (claim is { Kind: ClaimKind.Total, IsTrusted: true, Of.Kind: CountedKind.Stitch } && claim.Values[size] is { } value)
            {
                sum = (int)Math.Min((long)(sum ?? 0) + value, int.MaxValue);
            }
        }

        return sum;
    }

    /// <summary>What it says of the yarn it is worked with; null where the pattern has not several with letters.</summary>
    public RowYarns? Yarns { get; init; }

    /// <summary>True when something in it was not understood.</summary>
    public bool HasUnread { get; init; }

    /// <summary>True when <c>{count}</c> stands at its end.</summary>
    public bool WantsCount { get; init; }

    /// <summary>The first bracket of the row that has no number of times; null for none.</summary>
    public TextSpan? BareGroup { get; init; }
}

/// <summary>An instruction line after binding: one or more rows, and what to print.</summary>
public sealed record BoundLine
{
    /// <summary>Its number in the file.</summary>
    public required int Index { get; init; }

    /// <summary>Where it stands.</summary>
    public required TextSpan Origin { get; init; }

    /// <summary>The heading it stands under.</summary>
    public required string Piece { get; init; }

    /// <summary>Number of its section; a new one may begin a new piece.</summary>
    public required int Section { get; init; }

    /// <summary>Two stars that mark a place: false before its words, true behind them, null for none.</summary>
    public bool? Mark { get; init; }

    /// <summary>The stitch pattern that it belongs to; null for a line of a piece.</summary>
    public StitchPattern? Pattern { get; init; }

    /// <summary>Its rows.</summary>
    public required ImmutableArray<BoundRow> Rows { get; init; }

    /// <summary>Label to print.</summary>
    public required string Label { get; init; }

    /// <summary>Text to print, with <c>{count}</c> still in it.</summary>
    public required string Text { get; init; }

    /// <summary>Where its label stands; empty for none.</summary>
    public TextSpan LabelPlace { get; init; }

    /// <summary>Where the words after its label begin.</summary>
    public int TextStart { get; init; }

    /// <summary>Operations used, in order of first use.</summary>
    public ImmutableArray<Stitches.Operation> Operations { get; init; } = [];
}
