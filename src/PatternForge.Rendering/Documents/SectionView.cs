using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>A heading and all that stands under it up to the next heading of the same rank.</summary>
public sealed record SectionView
{
    /// <summary>An identifier to link to, unique on the page: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>The heading.</summary>
    public required string Heading { get; init; }

    /// <summary>The role in kebab-case ("care", "terms-of-use").</summary>
    public required string Role { get; init; }

    /// <summary>True when it holds rows.</summary>
    public required bool HasRows { get; init; }

    /// <summary>Its parts: the first has no heading of its own, the others have one each.</summary>
    public required ImmutableArray<PartView> Parts { get; init; }
}

/// <summary>A stretch of a section under a lower heading.</summary>
public sealed record PartView
{
    /// <summary>The heading; null for what stands directly under the section's heading.</summary>
    public string? Heading { get; init; }

    /// <summary>The heading's rank on the page, 3 to 6; never more than one below the one before it.</summary>
    public required int Rank { get; init; }

    /// <summary>Prose, rows and set text in order.</summary>
    public required ImmutableArray<BlockView> Blocks { get; init; }
}

/// <summary>One thing under a heading: exactly one of prose, rows, a drawing or set text.</summary>
public sealed record BlockView
{
    /// <summary>"prose", "rows", "drawing" or "text".</summary>
    public required string Kind { get; init; }

    /// <summary>The prose; null in the other kinds.</summary>
    public ProseText? Prose { get; init; }

    /// <summary>Rows that follow one another; empty in the other kinds.</summary>
    public ImmutableArray<RowView> Rows { get; init; } = [];

    /// <summary>The drawing; null in the other kinds.</summary>
    public DrawingView? Drawing { get; init; }

    /// <summary>Lines to print as they stand, blanks kept; null in the other kinds.</summary>
    public string? Text { get; init; }
}

/// <summary>One instruction, in the designer's own words.</summary>
public sealed record RowView
{
    /// <summary>An identifier to link to, unique on the page, "crown-rnd-3"; null for a row that stands outside the sections.</summary>
    public string? Id { get; init; }

    /// <summary>The numbers of the rows that it covers, with blanks between them; empty where it has none.</summary>
    public string Numbers { get; init; } = "";

    /// <summary>The sizes that do not work it, counted from 1, with blanks between them; empty where all do, or where that is not known.</summary>
    public string NotIn => Without?.Invoke() ?? "";

    /// <summary>Finds the sizes that do not work it, when a page asks.</summary>
    internal Func<string>? Without { get; init; }

    /// <summary>Its label ("Rnd 3"); empty when it has none.</summary>
    public required string Label { get; init; }

    /// <summary>What it is called where it needs a name: its label, or "Step 4" counted down the page.</summary>
    public required string Name { get; init; }

    /// <summary>The whole instruction as the designer wrote it, its closing count included.</summary>
    public required string Text { get; init; }

    /// <summary>The instruction without the count that closes it, for pages that set <see cref="Count"/> at the side.</summary>
    public required string Instruction { get; init; }

    /// <summary>
    /// The count to set at the side: the one that closes the row in the designer's words, or the one worked out, "84 (92, 100) sts", where the
    /// row changes it; null where none is known or the row says it anyway.
    /// </summary>
    public string? Count { get; init; }

    /// <summary><see cref="Label"/>, which may name the sizes that the row is for, with what each size alone calls it beside it as the format marks that.</summary>
    public required SizedText MarkedLabel { get; init; }

    /// <summary><see cref="Instruction"/> with the numbers of each size marked as the format marks them.</summary>
    public required SizedText MarkedInstruction { get; init; }

    /// <summary><see cref="Count"/> with the numbers of each size marked as the format marks them; null where there is no count.</summary>
    public SizedText? MarkedCount { get; init; }

    /// <summary>True when <see cref="Text"/> says the count, so that a page that prints the text need not add it.</summary>
    public bool CountIsSaid { get; init; }

    /// <summary>The count worked out, one size at a time; empty where it is not known or does not change.</summary>
    public ImmutableArray<string> Counts { get; init; } = [];

    /// <summary>True when the count is too long to stand beside the row.</summary>
    public bool CountIsLong { get; init; }

    /// <summary>Numbers to tick off one by one where a line covers several rows; empty otherwise.</summary>
    public ImmutableArray<string> Ticks { get; init; } = [];

    /// <summary>What one of those numbers is called ("Round"); empty when there are none.</summary>
    public string TickName { get; init; } = "";
}

/// <summary>The designer's own words on parts that the page makes from the header.</summary>
public sealed record RemarksView
{
    /// <summary>On the sizes.</summary>
    public ImmutableArray<BlockView> Sizes { get; init; } = [];

    /// <summary>On the yarn.</summary>
    public ImmutableArray<BlockView> Yarn { get; init; } = [];

    /// <summary>On tools and notions.</summary>
    public ImmutableArray<BlockView> Tools { get; init; } = [];

    /// <summary>On the gauge.</summary>
    public ImmutableArray<BlockView> Gauge { get; init; } = [];

    /// <summary>On abbreviations and special stitches.</summary>
    public ImmutableArray<BlockView> Abbreviations { get; init; } = [];

    /// <summary>On the photos.</summary>
    public ImmutableArray<BlockView> Photos { get; init; } = [];

    /// <summary>On the videos.</summary>
    public ImmutableArray<BlockView> Videos { get; init; } = [];
}
