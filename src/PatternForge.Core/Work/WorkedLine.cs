using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>The one of three states that every instruction line ends in; prose is no instruction line.</summary>
public enum LineStatus
{
    /// <summary>Understood and worked in every size that it is for.</summary>
    Checked,

    /// <summary>Understood in part, or its start is not known: its stated count is carried on.</summary>
    Trusted,

    /// <summary>Looks like an instruction and was not understood.</summary>
    Unread,
}

/// <summary>One instruction line of the source after it has been worked in every size.</summary>
public sealed record WorkedLine
{
    /// <summary>Its number among all instruction lines of the file, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Where it stands.</summary>
    public required TextSpan Origin { get; init; }

    /// <summary>The heading it stands under; empty before the first heading.</summary>
    public required string Piece { get; init; }

    /// <summary>The label as the designer wrote it, without its colon ("Rnd 3", "Row 1 (RS)"); empty when it has none.</summary>
    public required string Label { get; init; }

    /// <summary>What stands after the label, remarks taken out, <c>{name}</c> and <c>{count}</c> filled in: what the page prints.</summary>
    public required string Text { get; init; }

    /// <summary>Its state.</summary>
    public required LineStatus Status { get; init; }

    /// <summary>The row or round numbers that the line covers; empty when it has none.</summary>
    public ImmutableArray<int> Numbers { get; init; } = [];

    /// <summary>Physical rows that it works, one a size; null where not known, empty where they come from a length or cannot be told.</summary>
    public ImmutableArray<int?> Rows { get; init; } = [];

    /// <summary>True when it is worked in the round in every size, false when flat in every size; null where they differ.</summary>
    public bool? InTheRound { get; init; }

    /// <summary>Live stitches before it, one a size; null where not known or the size skips it.</summary>
    public required ImmutableArray<int?> Before { get; init; }

    /// <summary>Live stitches after it, one a size; null where not known or the size skips it.</summary>
    public required ImmutableArray<int?> After { get; init; }

    /// <summary>For crochet: stitches and spaces by kind, one table a size; empty where there is nothing but stitches.</summary>
    public ImmutableArray<ImmutableSortedDictionary<string, int>> Kinds { get; init; } = [];

    /// <summary>What its stitches are called where they are all of one kind: "sc", "ch" for a foundation; null for stitches alone.</summary>
    public string? Kind { get; init; }

    /// <summary>The count that the line states, one a size; empty when it states none.</summary>
    public ImmutableArray<int?> Stated { get; init; } = [];

    /// <summary>The number that its stated count begins with, one a size: the count itself, or that of the first kind told; empty when it states none.</summary>
    public ImmutableArray<int?> StatedFirst { get; init; } = [];

    /// <summary>Which of several readings was taken, in words; null when there was only one.</summary>
    public string? Reading { get; init; }

    /// <summary>Its shapings that go on at the same time, row by row; null for none, or where the words do not tell the rows.</summary>
    public ShapingTable? Together { get; init; }

    /// <summary>The sections between markers after it, as the next row meets them, one list a size; empty where no marker stands.</summary>
    public ImmutableArray<ImmutableArray<MarkedSection>> Sections { get; init; } = [];

    /// <summary>The rows that "reversing shaping" stands for, written out; empty for a line that does not say it.</summary>
    public ImmutableArray<MirroredRow> Mirrored { get; init; } = [];

    /// <summary>How its counts come about, one list a size; empty unless it was asked for (<see cref="CompileOptions.Trace"/>).</summary>
    public ImmutableArray<ImmutableArray<WorkedStretch>> Trace { get; init; } = [];

    /// <summary>Its physical rows, one list a size; empty unless the pattern has several yarns with letters.</summary>
    internal ImmutableArray<ImmutableArray<LoggedRow>> Log { get; init; } = [];

    /// <summary>The operations that it uses, each once, in order of first use.</summary>
    public ImmutableArray<Operation> Operations { get; init; } = [];
}
