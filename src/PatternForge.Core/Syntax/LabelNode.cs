using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Row or round, as the label says.</summary>
public enum RowWord
{
    /// <summary>Neither.</summary>
    None,

    /// <summary>A row.</summary>
    Row,

    /// <summary>A round.</summary>
    Round,
}

/// <summary>The side that faces the maker.</summary>
public enum Side
{
    /// <summary>The right side.</summary>
    Right,

    /// <summary>The wrong side.</summary>
    Wrong,
}

/// <summary>Further rows that a label speaks for.</summary>
public enum RowRule
{
    /// <summary>None.</summary>
    None,

    /// <summary>Every row of the same parity as the number given.</summary>
    SameParity,

    /// <summary>Every row that is not given itself: "All WS rows", "Even-numbered rounds".</summary>
    NotGiven,
}

/// <summary>Numbers from one to another, both included; a single number where <see cref="To"/> is null.</summary>
public sealed record NumberRange(SizedNumber From, SizedNumber? To)
{
    /// <summary>The number of the header that stands for the last one ("Rnds 1-{n}"); null for none.</summary>
    public Atom? ToName { get; init; }
}

/// <summary>What stands before the colon of a row.</summary>
public sealed record LabelNode
{
    /// <summary>Where the label stands, without its colon.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>Row or round.</summary>
    public RowWord Word { get; init; }

    /// <summary>Its numbers; empty for "Next row" and names.</summary>
    public ImmutableArray<NumberRange> Numbers { get; init; } = [];

    /// <summary>How many rows "Next 6 rows" stands for; null otherwise.</summary>
    public SizedNumber? NextCount { get; init; }

    /// <summary>The header's number that "Next {rows} rows" calls by its name; null otherwise.</summary>
    public Atom? NextCountName { get; init; }

    /// <summary>True for "Next row".</summary>
    public bool IsNext { get; init; }

    /// <summary>The row's name in lower case ("dec row", "set-up row"); null when it has none.</summary>
    public string? Name { get; init; }

    /// <summary>The side stated.</summary>
    public Side? Side { get; init; }

    /// <summary>Rows that it speaks for beside its own.</summary>
    public RowRule Rule { get; init; }

    /// <summary>How many rows the label itself says there are ("(3 rounds)"); null when it does not.</summary>
    public SizedNumber? CountOfRows { get; init; }

    /// <summary>The sizes it is for as named: words, <c>#2</c> for "2nd size", <c>S–L</c> for "S to L"; empty for all.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>Where the sizes are named.</summary>
    public TextSpan SizesSpan { get; init; }

    /// <summary>True for a heading inside a line ("Toe:", "Shape shoulders:").</summary>
    public bool IsTitle { get; init; }

    /// <summary>True when a heading inside the line stands before this label ("Toe: Rnd 1:").</summary>
    public bool StartsPart { get; init; }
}
