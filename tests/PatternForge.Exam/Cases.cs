using System.Collections.Immutable;

namespace PatternForge.Exam;

/// <summary>A count as a case writes it: one plain number a size, or one table by kind a size. Null = the size skips it or it is not known.</summary>
/// <param name="Plain">Stitches, one a size; empty when the case counts by kind.</param>
/// <param name="ByKind">Stitches and spaces by kind, one a size; empty when the case counts stitches alone.</param>
public sealed record CaseCount(ImmutableArray<int?> Plain, ImmutableArray<ImmutableSortedDictionary<string, int>?> ByKind)
{
    /// <summary>No count in any size: the row cannot be worked, or the result depends on a length.</summary>
    public static CaseCount Unknown { get; } = new([], []);

    /// <summary>True when nothing at all is said.</summary>
    public bool IsUnknown => Plain.IsEmpty && ByKind.IsEmpty;

    /// <summary>The plain number of a size, one number standing for every size.</summary>
    public int? PlainIn(int size) => Plain.IsEmpty ? null : Plain[Plain.Length == 1 ? 0 : Math.Min(size, Plain.Length - 1)];

    /// <summary>The table of a size, one table standing for every size.</summary>
    public ImmutableSortedDictionary<string, int>? KindsIn(int size) => ByKind.IsEmpty ? null : ByKind[ByKind.Length == 1 ? 0 : Math.Min(size, ByKind.Length - 1)];
}

/// <summary>What a row case gives to the reader: everything from which its source is written, and nothing of the answer.</summary>
public sealed record RowQuestion
{
    /// <summary>The case.</summary>
    public required string Id { get; init; }

    /// <summary>knit, crochet or tunisian.</summary>
    public required string Craft { get; init; }

    /// <summary>US or UK.</summary>
    public required string Dialect { get; init; }

    /// <summary>True when it is worked in the round.</summary>
    public required bool InTheRound { get; init; }

    /// <summary>The sizes' names; empty for a single size.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>The count when the row starts.</summary>
    public required CaseCount Before { get; init; }

    /// <summary>The row as written.</summary>
    public required string Text { get; init; }

    /// <summary>The rows before it.</summary>
    public ImmutableArray<string> Setup { get; init; } = [];

    /// <summary>Stitches and abbreviations that the pattern defines: name and how.</summary>
    public ImmutableArray<(string Name, string How)> Defs { get; init; } = [];

    /// <summary>Stitches before each marker: one list for all sizes, or one a size.</summary>
    public ImmutableArray<ImmutableArray<int>> Markers { get; init; } = [];

    /// <summary>Notes in force.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Charts and their widths.</summary>
    public ImmutableArray<(string Name, int Width)> Charts { get; init; } = [];

    /// <summary>Stitches on each needle; empty when not said.</summary>
    public ImmutableArray<int> Needles { get; init; } = [];

    /// <summary>The gauge line; null when not said.</summary>
    public string? Gauge { get; init; }
}

/// <summary>What is wrong with a row, as the case says it.</summary>
/// <param name="Kind">The kind of the exam's list.</param>
/// <param name="Detail">In words.</param>
/// <param name="Sizes">Indices of the sizes concerned; null when the case does not tell.</param>
public sealed record ExpectedFault(string Kind, string Detail, ImmutableArray<int>? Sizes);

/// <summary>The true answer of a row case.</summary>
public sealed record RowAnswer
{
    /// <summary>The true count after the row.</summary>
    public required CaseCount After { get; init; }

    /// <summary>The count that the row claims; unknown when it claims none.</summary>
    public required CaseCount Stated { get; init; }

    /// <summary>What is wrong; null for a sound row.</summary>
    public ExpectedFault? Fault { get; init; }

    /// <summary>The kind of a warning or an error that is fair on the row too; null when none is.</summary>
    public string? FairFinding { get; init; }

    /// <summary>Another count that a fair reader may take.</summary>
    public CaseCount? AlsoAfter { get; init; }
}

/// <summary>One row case.</summary>
public sealed record RowCase(RowQuestion Question, ImmutableArray<string> Forms, RowAnswer Answer);

/// <summary>One row of a pattern case.</summary>
/// <param name="Number">Its number in the case.</param>
/// <param name="Section">The heading it stands under.</param>
/// <param name="Text">As written.</param>
public sealed record PatternRow(int Number, string Section, string Text);

/// <summary>What a pattern case gives to the reader.</summary>
public sealed record PatternQuestion
{
    /// <summary>The case.</summary>
    public required string Id { get; init; }

    /// <summary>The pattern's title.</summary>
    public required string Title { get; init; }

    /// <summary>knit, crochet or tunisian.</summary>
    public required string Craft { get; init; }

    /// <summary>US or UK.</summary>
    public required string Dialect { get; init; }

    /// <summary>True when it is worked in the round.</summary>
    public required bool InTheRound { get; init; }

    /// <summary>The sizes' names; empty for a single size.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>The gauge line; null when not said.</summary>
    public string? Gauge { get; init; }

    /// <summary>The needles or the hook; null when not said.</summary>
    public string? Tool { get; init; }

    /// <summary>Finished measurements: name and values as written.</summary>
    public ImmutableArray<(string Name, string Values)> Finished { get; init; } = [];

    /// <summary>The pattern's own list of abbreviations; null when it has none.</summary>
    public ImmutableArray<string>? Abbreviations { get; init; }

    /// <summary>Special stitches: name and how; null where the case gives the name alone.</summary>
    public ImmutableArray<(string Name, string? How)> Special { get; init; } = [];

    /// <summary>Notes in force.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>The rows in order.</summary>
    public required ImmutableArray<PatternRow> Rows { get; init; }
}

/// <summary>A finding that a pattern case expects.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Row">The row's number; null when it lies in the header.</param>
/// <param name="IsOptional">True when the cause was named before, so silence is fair.</param>
public sealed record ExpectedPatternFault(ExpectedFault Fault, int? Row, bool IsOptional);

/// <summary>The true answer of a pattern case: the count and the claim of each row in order, and what is wrong.</summary>
public sealed record PatternAnswer(ImmutableArray<CaseCount> After, ImmutableArray<CaseCount> Stated, ImmutableArray<ExpectedPatternFault> Faults);

/// <summary>One pattern case.</summary>
public sealed record PatternCase(PatternQuestion Question, PatternAnswer Answer);

/// <summary>The cases of one or more files, in order.</summary>
public sealed record CaseSet(ImmutableArray<RowCase> Rows, ImmutableArray<PatternCase> Patterns);
