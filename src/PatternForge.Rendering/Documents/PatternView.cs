using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// One pattern as a page shows it: everything worded and formatted, so that a template does layout and never arithmetic.
/// This is what templates see, and a promise to them: names are only ever added.
/// </summary>
public sealed record PatternView
{
    /// <summary>The model version that this program speaks.</summary>
    public const int CurrentModelVersion = 1;

    /// <summary>Version of this model; it goes up when a name is taken away.</summary>
    public int ModelVersion { get; init; } = CurrentModelVersion;

    /// <summary>The pattern's title; "Untitled pattern" when it has none.</summary>
    public required string Title { get; init; }

    /// <summary>Who designed it; null when not said.</summary>
    public string? Designer { get; init; }

    /// <summary>The kind of pattern in words: "Knitting pattern".</summary>
    public required string Kind { get; init; }

    /// <summary>Version as the designer wrote it; null when not said.</summary>
    public string? Version { get; init; }

    /// <summary>Date as the designer wrote it; null when not said.</summary>
    public string? Date { get; init; }

    /// <summary>Version and date in one line ("Version 1.2, 2025-03-01"); null when neither is said.</summary>
    public string? Edition { get; init; }

    /// <summary>Sentences on what this edition does otherwise than the pattern as it is written; empty for that.</summary>
    public ImmutableArray<string> EditionNotes { get; init; } = [];

    /// <summary>True in an edition in large print.</summary>
    public bool LargePrint { get; init; }

    /// <summary>True in an edition that spares ink.</summary>
    public bool LowInk { get; init; }

    /// <summary>True in an edition that is made to be read out: tables and drawings are told in words.</summary>
    public bool ReadOut { get; init; }

    /// <summary>True when the pattern is not for release: every page must then say so.</summary>
    public bool Draft { get; init; }

    /// <summary>The words of the draft mark; null unless <see cref="Draft"/>.</summary>
    public string? DraftNotice { get; init; }

    /// <summary>The paper that the page is made for, "A4" or "letter" as a style sheet names it; null where the maker's own printer says.</summary>
    public string? Paper { get; init; }

    /// <summary>A short paragraph to decide by; null when there is none.</summary>
    public ProseText? Summary { get; init; }

    /// <summary>Text that stands before the first heading of the body.</summary>
    public ImmutableArray<BlockView> Opening { get; init; } = [];

    /// <summary>The facts to decide by, a few words each: level, sizes, yarn, gauge, terms.</summary>
    public ImmutableArray<FactView> Facts { get; init; } = [];

    /// <summary>The project level in a word; null when not said.</summary>
    public string? Level { get; init; }

    /// <summary>Why it has that level; null when not said.</summary>
    public string? LevelReason { get; init; }

    /// <summary>Whose terms are in use, "US" or "UK"; null when not said.</summary>
    public string? Terms { get; init; }

    /// <summary>The other terms, "UK" or "US", where the abbreviations give both; null where they do not.</summary>
    public string? OtherTerms { get; init; }

    /// <summary>What the page holds, in the order of the built-in page.</summary>
    public ImmutableArray<EntryView> Contents { get; init; } = [];

    /// <summary>Photos, the main one first.</summary>
    public ImmutableArray<PhotoView> Photos { get; init; } = [];

    /// <summary>Gives a picture of the text as it stands in the release; null to keep the text's own relative paths. No matter of templates.</summary>
    internal Func<string, ReleasedPicture?>? Picture { get; init; }

    /// <summary>What each size alone has; null where the view was made without. No matter of templates.</summary>
    internal OwnSizes? Own { get; init; }

    /// <summary>The other forms of the pattern; null for an edition, which is one already. No matter of templates.</summary>
    internal OtherForms? Others { get; init; }

    /// <summary>What the reader may choose on the page.</summary>
    public required ReaderView Reader { get; init; }

    /// <summary>Sizes and their measurements; null when the pattern says nothing of either.</summary>
    public SizesView? Sizes { get; init; }

    /// <summary>The yarns.</summary>
    public ImmutableArray<YarnView> Yarns { get; init; } = [];

    /// <summary>How much yarn each size takes; null when no amount is known.</summary>
    public AmountsView? Amounts { get; init; }

    /// <summary>How the stitches of each part are shared out among the yarns; empty where there is one yarn, or where it is not known.</summary>
    public ImmutableArray<SharesView> Shares { get; init; } = [];

    /// <summary>What the pattern's terms call the gauge: "Gauge", or "Tension" in UK terms.</summary>
    public required string GaugeName { get; init; }

    /// <summary>The gauges.</summary>
    public ImmutableArray<GaugeView> Gauges { get; init; } = [];

    /// <summary>What the designer says of the gauge in place of one; null when there is nothing.</summary>
    public string? GaugeRemark { get; init; }

    /// <summary>Needles and hooks.</summary>
    public ImmutableArray<LinkView> Tools { get; init; } = [];

    /// <summary>Other things needed.</summary>
    public ImmutableArray<LinkView> Notions { get; init; } = [];

    /// <summary>Abbreviations that the rows use, without the special stitches.</summary>
    public ImmutableArray<AbbreviationView> Abbreviations { get; init; } = [];

    /// <summary>Stitches that this pattern defines for itself.</summary>
    public ImmutableArray<SpecialStitchView> SpecialStitches { get; init; } = [];

    /// <summary>Charts that the rows call by their names.</summary>
    public ImmutableArray<ChartView> Charts { get; init; } = [];

    /// <summary>Other designs of the same shelf; empty where there is none, or where the pattern tells of them itself.</summary>
    public ImmutableArray<DesignView> OtherDesigns { get; init; } = [];

    /// <summary>The address of the page with all designs; null where there is none, or where <see cref="OtherDesigns"/> is empty.</summary>
    public string? AllDesigns { get; init; }

    /// <summary>What a buyer must know; null on the pages of the pattern itself.</summary>
    public ListingView? Listing { get; init; }

    /// <summary>Every drawing of the page, in its order; no matter of the templates, which meet each at its place.</summary>
    internal IEnumerable<DrawingView> Drawings => About.Concat(Before).Concat(Instructions).Concat(After).Concat(Closing)
        .SelectMany(s => s.Parts).SelectMany(p => p.Blocks).Concat(Opening).Concat(ContactNotes)
        .Select(b => b.Drawing).OfType<DrawingView>();

    /// <summary>Notes in force for every row.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>What the designer wrote under a heading of its own about the sizes, the yarn, the tools, the gauge or the abbreviations.</summary>
    public RemarksView Remarks { get; init; } = new();

    /// <summary>Sections that introduce the pattern.</summary>
    public ImmutableArray<SectionView> About { get; init; } = [];

    /// <summary>Sections to read before the work begins: construction first, then notes.</summary>
    public ImmutableArray<SectionView> Before { get; init; } = [];

    /// <summary>Instruction sections, and others that stand among them, in the order of the source.</summary>
    public ImmutableArray<SectionView> Instructions { get; init; } = [];

    /// <summary>Sections for when the work is done: care, styling.</summary>
    public ImmutableArray<SectionView> After { get; init; } = [];

    /// <summary>Sections around the pattern: corrections, terms of use, makers who work to order, other designs, and thanks last.</summary>
    public ImmutableArray<SectionView> Closing { get; init; } = [];

    /// <summary>The care that the header gives, a treatment each; a name is empty where the words name none.</summary>
    public ImmutableArray<FactView> Care { get; init; } = [];

    /// <summary>What the designer wrote under "Care", where the header gives care as well.</summary>
    public ImmutableArray<BlockView> CareNotes { get; init; } = [];

    /// <summary>Cautions for things that can hurt; empty where nothing calls for them.</summary>
    public ImmutableArray<CautionView> Cautions { get; init; } = [];

    /// <summary>The running list of corrections, the newest version first.</summary>
    public ImmutableArray<CorrectionsView> Corrections { get; init; } = [];

    /// <summary>What the designer wrote under "Corrections", where the header lists corrections as well.</summary>
    public ImmutableArray<BlockView> CorrectionNotes { get; init; } = [];

    /// <summary>Videos.</summary>
    public ImmutableArray<LinkView> Videos { get; init; } = [];

    /// <summary>Other links.</summary>
    public ImmutableArray<LinkView> Links { get; init; } = [];

    /// <summary>Where questions go; null when not said.</summary>
    public LinkView? Contact { get; init; }

    /// <summary>What the designer wrote under "Contact".</summary>
    public ImmutableArray<BlockView> ContactNotes { get; init; } = [];
}

/// <summary>What one version corrected.</summary>
public sealed record CorrectionsView
{
    /// <summary>The version and the date: "Version 1.2, 2025-03-01"; empty where neither is said.</summary>
    public required string Heading { get; init; }

    /// <summary>The corrections: the name is the rows and sizes that one is about, empty where none are named; the value what was corrected.</summary>
    public ImmutableArray<FactView> Items { get; init; } = [];
}

/// <summary>A few words on one fact.</summary>
public sealed record FactView
{
    /// <summary>What it is about ("Level").</summary>
    public required string Name { get; init; }

    /// <summary>What it is ("Easy").</summary>
    public required string Value { get; init; }

    /// <summary>A word more on it, such as the reason for the level; null where there is none.</summary>
    public string? Note { get; init; }
}

/// <summary>One entry of the contents.</summary>
public sealed record EntryView
{
    /// <summary>The heading.</summary>
    public required string Text { get; init; }

    /// <summary>The identifier of its section.</summary>
    public required string Id { get; init; }

    /// <summary>True when it leads to rows.</summary>
    public bool HasRows { get; init; }
}

/// <summary>A photo.</summary>
public sealed record PhotoView
{
    /// <summary>Address for an image: relative, or what the release put in its place; null when the page must not fetch it.</summary>
    public string? Address { get; init; }

    /// <summary>Its width in pixels, so that the page keeps its place; null when not known.</summary>
    public int? Width { get; init; }

    /// <summary>Its height in pixels; null when not known.</summary>
    public int? Height { get; init; }

    /// <summary>The text alternative; empty when the designer gave none.</summary>
    public required string Alt { get; init; }

    /// <summary>The caption; null when there is none.</summary>
    public string? Caption { get; init; }
}

/// <summary>Some words that may lead somewhere.</summary>
public sealed record LinkView
{
    /// <summary>The words.</summary>
    public required string Text { get; init; }

    /// <summary>Where they lead; null when nowhere, or when the address is not one that a page should follow.</summary>
    public string? Address { get; init; }
}

/// <summary>One abbreviation.</summary>
public sealed record AbbreviationView
{
    /// <summary>As the rows write it.</summary>
    public required string Name { get; init; }

    /// <summary>What it means.</summary>
    public required string Meaning { get; init; }

    /// <summary>The same in the other terms; null unless the edition gives both.</summary>
    public string? OtherName { get; init; }

    /// <summary>What it means in the other terms; null unless the edition gives both.</summary>
    public string? OtherMeaning { get; init; }
}

/// <summary>A stitch that the pattern defines.</summary>
public sealed record SpecialStitchView
{
    /// <summary>As the rows write it.</summary>
    public required string Name { get; init; }

    /// <summary>Its name written out; null when not said.</summary>
    public string? FullName { get; init; }

    /// <summary>How it is worked.</summary>
    public required string How { get; init; }

    /// <summary>How many stitches it uses and makes, "uses 1 st, makes 5 sts"; null when the pattern does not say.</summary>
    public string? Counts { get; init; }
}

/// <summary>A chart that the rows call by its name.</summary>
public sealed record ChartView
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>How wide it is, "8 sts wide"; null when not said.</summary>
    public string? Width { get; init; }
}

/// <summary>One caution.</summary>
public sealed record CautionView
{
    /// <summary>What it is about, in a few words ("Small parts").</summary>
    public required string Name { get; init; }

    /// <summary>The caution itself, in one or two sentences.</summary>
    public required string Text { get; init; }
}
