using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>Project levels of the Craft Yarn Council (2018 wording, quoted by common practice): they describe the project, not the maker.</summary>
public enum Level
{
    /// <summary>Basic stitches; simple increases and decreases.</summary>
    Basic,

    /// <summary>Simple stitch patterns, colour work and shaping.</summary>
    Easy,

    /// <summary>Involved stitch patterns, colour work and shaping.</summary>
    Intermediate,

    /// <summary>Complex stitch patterns, with several techniques at the same time.</summary>
    Complex,
}

/// <summary>One named measurement ("bust", "foot length"), one value a size; null where a size has none.</summary>
public sealed record Measurement(string Name, PerSize<Quantity?> Values, TextSpan Origin)
{
    /// <summary>How it was worked out; null where it stands as it is.</summary>
    public NumberOrigin? WorkedFrom { get; init; }
}

/// <summary>A gauge: how many stitches and rows over which width and height, in which stitch, with which tool, in which state. Null = not said.</summary>
public sealed record Gauge(TextSpan Origin)
{
    /// <summary>Its name where there are several; null for the only one.</summary>
    public string? Name { get; init; }

    /// <summary>The stitch pattern it is measured in, as written.</summary>
    public string? Stitch { get; init; }

    /// <summary>Stitches over <see cref="Width"/>.</summary>
    public decimal? Stitches { get; init; }

    /// <summary>Rows over <see cref="Height"/>.</summary>
    public decimal? Rows { get; init; }

    /// <summary>True when the designer counts rounds.</summary>
    public bool RowsAreRounds { get; init; }

    /// <summary>What the stitches are measured over.</summary>
    public Quantity? Width { get; init; }

    /// <summary>What the rows are measured over.</summary>
    public Quantity? Height { get; init; }

    /// <summary>The needle or hook, as written ("4 mm", "US 7 (4.5 mm)").</summary>
    public string? Tool { get; init; }

    /// <summary>True when the swatch was blocked, false when not.</summary>
    public bool? Blocked { get; init; }

    /// <summary>Stitches in one centimetre; null when not known.</summary>
    public decimal? StitchesPerCm => Stitches is { } n && Width is { InBase: > 0 } w ? n / w.InBase : null;

    /// <summary>Rows in one centimetre; null when not known.</summary>
    public decimal? RowsPerCm => Rows is { } n && Height is { InBase: > 0 } h ? n / h.InBase : null;

    /// <summary>What stitches measure across, in centimetres; null when not known.</summary>
    public decimal? Across(decimal stitches) => StitchesPerCm is { } perCm and > 0 ? stitches / perCm : null;

    /// <summary>What rows measure along, in centimetres; null when not known.</summary>
    public decimal? Along(decimal rows) => RowsPerCm is { } perCm and > 0 ? rows / perCm : null;
}

/// <summary>Another yarn that will do, and a word on how it differs.</summary>
public sealed record YarnAlternative(string Name, string? Note, Quantity? PutUpMass, Quantity? PutUpLength, TextSpan Origin);

/// <summary>One yarn of the pattern. Null = not said.</summary>
public sealed record Yarn(TextSpan Origin)
{
    /// <summary>The yarn's name.</summary>
    public string? Name { get; init; }

    /// <summary>The letters it goes by in the rows ("A", "MC").</summary>
    public string? Label { get; init; }

    /// <summary>What it is spun from.</summary>
    public string? Fibre { get; init; }

    /// <summary>Weight class of the Craft Yarn Council, 0 (lace) to 7 (jumbo).</summary>
    public int? WeightClass { get; init; }

    /// <summary>The weight as written.</summary>
    public string? Weight { get; init; }

    /// <summary>Mass of one ball or skein.</summary>
    public Quantity? PutUpMass { get; init; }

    /// <summary>Length of one ball or skein.</summary>
    public Quantity? PutUpLength { get; init; }

    /// <summary>How much is needed: a yarn length, a mass, or a number of balls.</summary>
    public PerSize<Quantity?>? Needs { get; init; }

    /// <summary>Where the needed amount stands; null when it does not stand by itself.</summary>
    public TextSpan? NeedsOrigin { get; init; }

    /// <summary>True where the amounts are to be worked out from the stitches.</summary>
    public bool NeedsAreEstimated { get; init; }

    /// <summary>How the amounts were worked out; null where they were not.</summary>
    public AmountMethod? EstimatedBy { get; init; }

    /// <summary>Strands of it that are held together; 1 when not said.</summary>
    public int Strands { get; init; } = 1;

    /// <summary>Colour names.</summary>
    public ImmutableArray<string> Colours { get; init; } = [];

    /// <summary>The shade that drawings show it in, "#rrggbb" in small letters; null for letters and tints alone.</summary>
    public string? Shade { get; init; }

    /// <summary>Other yarns that will do.</summary>
    public ImmutableArray<YarnAlternative> Alternatives { get; init; } = [];

    /// <summary>Grist: metres in one gram; null when the put-up is not known.</summary>
    public decimal? MetresPerGram => PutUpMass is { InBase: > 0 } g && PutUpLength is { } m ? m.InBase / g.InBase : null;
}

/// <summary>A tool or notion: what it is and, perhaps, where to read more.</summary>
public sealed record Item(string Text, string? Link, TextSpan Origin);

/// <summary>A stitch that this pattern defines for itself.</summary>
/// <param name="Name">The abbreviation used in the rows.</param>
/// <param name="How">How it is worked, in the notation or in words.</param>
/// <param name="FullName">The name written out; null when not given.</param>
/// <param name="Takes">Stitches used, where the header says so.</param>
/// <param name="Makes">Stitches made, where the header says so.</param>
/// <param name="Origin">Where it stands.</param>
public sealed record StitchDefinition(string Name, string How, string? FullName, int? Takes, int? Makes, TextSpan Origin);

/// <summary>One entry of the pattern's own list of abbreviations; a null meaning leaves the trade's.</summary>
public sealed record Abbreviation(string Name, string? Meaning, TextSpan Origin)
{
    /// <summary>The words that the entry covers: a part in brackets may stand or fall, so "st(s)" covers st and sts.</summary>
    public ImmutableArray<string> Forms => Name.IndexOf('(', StringComparison.Ordinal) is > 0 and var open && Name.IndexOf(')', open) is > 0 and var close
        ? [Name[..open] + Name[(close + 1)..], Name[..open] + Name[(open + 1)..close] + Name[(close + 1)..]]
        : [Name];
}

/// <summary>A number of the header that rows and prose may call by <c>{name}</c>.</summary>
public sealed record NamedNumber(string Name, PerSize<Quantity?> Values, TextSpan Origin)
{
    /// <summary>How it was worked out; null where it stands as it is.</summary>
    public NumberOrigin? WorkedFrom { get; init; }
}

/// <summary>How a number of the header was worked out.</summary>
/// <param name="Formula">The formula as written.</param>
/// <param name="Kind">What it measures, in words ("stitches").</param>
/// <param name="Exact">What it would be had nothing been rounded, one value a size.</param>
/// <param name="MovedCm">How far rounding moved it, in centimetres, one value a size; null where that cannot be told.</param>
public sealed record NumberOrigin(string Formula, string Kind, ImmutableArray<Quantity?> Exact, ImmutableArray<decimal?> MovedCm);

/// <summary>A picture with its text alternative.</summary>
public sealed record Photo(string File, string? Alt, string? Caption, TextSpan Origin);

/// <summary>A titled address: a video, a shop, a tutorial.</summary>
public sealed record Link(string Title, string Address, TextSpan Origin);

/// <summary>The sample that was worked: which size, and what it weighed.</summary>
public sealed record Sample(string? Size, Quantity? Used, TextSpan Origin)
{
    /// <summary>What it took of each yarn; empty where it is one amount.</summary>
    public ImmutableArray<YarnUsed> UsedBy { get; init; } = [];
}

/// <summary>Everything the header says, typed. What it does not say is null or empty.</summary>
public sealed record PatternFacts
{
    /// <summary>The line that opens the header: the place of whatever the header lacks; null when the file has no header.</summary>
    public TextSpan? HeaderOrigin { get; init; }

    /// <summary>Header keys whose value could not be made out, in their plain form: what seems to be missing there has been reported already.</summary>
    public ImmutableArray<string> Unread { get; init; } = [];

    /// <summary>The title.</summary>
    public Located<string>? Title { get; init; }

    /// <summary>Who designed it.</summary>
    public string? Designer { get; init; }

    /// <summary>The version of this text, as written.</summary>
    public string? Version { get; init; }

    /// <summary>The date, as written (ISO 8601).</summary>
    public string? Date { get; init; }

    /// <summary>The craft; knitting when nothing is said.</summary>
    public Craft Craft { get; init; } = Craft.Knitting;

    /// <summary>The declared terms; null when not declared.</summary>
    public Located<Dialect>? Terms { get; init; }

    /// <summary>The terms that the rows themselves prove where none are declared; null where they do not.</summary>
    public Dialect? ProvedTerms { get; init; }

    /// <summary>The terms to read the rows by: declared, else proved; null where neither.</summary>
    public Dialect? TermsInForce => Terms?.Value ?? ProvedTerms;

    /// <summary>The project level.</summary>
    public Located<Level>? Level { get; init; }

    /// <summary>Why it has that level.</summary>
    public string? LevelReason { get; init; }

    /// <summary>Techniques that the pattern names as needed.</summary>
    public ImmutableArray<Located<string>> Techniques { get; init; } = [];

    /// <summary>A short paragraph to decide by.</summary>
    public string? Summary { get; init; }

    /// <summary>Whom it is for; null when not said.</summary>
    public Located<Audience>? Audience { get; init; }

    /// <summary>The sizes.</summary>
    public SizeSet Sizes { get; init; } = SizeSet.One;

    /// <summary>Where the sizes stand; null when the header has none.</summary>
    public TextSpan? SizesOrigin { get; init; }

    /// <summary>Body measurements that the sizes fit.</summary>
    public ImmutableArray<Measurement> Fits { get; init; } = [];

    /// <summary>Measurements of the finished piece.</summary>
    public ImmutableArray<Measurement> Finished { get; init; } = [];

    /// <summary>The ease it is meant to be worn with, as written.</summary>
    public string? Ease { get; init; }

    /// <summary>The ease as a length, one value a size, negative for negative ease; null where <see cref="Ease"/> tells none.</summary>
    public PerSize<Quantity?>? EaseBy { get; init; }

    /// <summary>Which pieces have which finished measurement.</summary>
    public ImmutableArray<MeasuredPieces> Measured { get; init; } = [];

    /// <summary>Stitches at each edge of a piece that go into a seam; null when not said.</summary>
    public decimal? Seam { get; init; }

    /// <summary>How far the front bands lie over each other; null when not said.</summary>
    public PerSize<Quantity?>? BandOverlap { get; init; }

    /// <summary>The gauges.</summary>
    public ImmutableArray<Gauge> Gauges { get; init; } = [];

    /// <summary>What the header says of the gauge in place of one ("not important"), as written; null otherwise.</summary>
    public string? GaugeRemark { get; init; }

    /// <summary>The yarns.</summary>
    public ImmutableArray<Yarn> Yarns { get; init; } = [];

    /// <summary>Needles and hooks.</summary>
    public ImmutableArray<Item> Tools { get; init; } = [];

    /// <summary>Other things needed.</summary>
    public ImmutableArray<Item> Notions { get; init; } = [];

    /// <summary>Special stitches of this pattern.</summary>
    public ImmutableArray<StitchDefinition> Stitches { get; init; } = [];

    /// <summary>The pattern's own list of abbreviations; null when the header has none.</summary>
    public ImmutableArray<Abbreviation>? Abbreviations { get; init; }

    /// <summary>Named numbers.</summary>
    public ImmutableArray<NamedNumber> Numbers { get; init; } = [];

    /// <summary>Notes in force for every row ("Ch 3 counts as dc throughout").</summary>
    public ImmutableArray<Located<string>> Notes { get; init; } = [];

    /// <summary>What the notes say of turning chains; read from <see cref="Notes"/>.</summary>
    public ImmutableArray<TurningChainNote> TurningChains { get; init; } = [];

    /// <summary>Charts that are not part of this file, with their width in stitches.</summary>
    public ImmutableArray<NamedNumber> Charts { get; init; } = [];

    /// <summary>The sample.</summary>
    public Sample? Sample { get; init; }

    /// <summary>A weighed swatch.</summary>
    public Swatch? Swatch { get; init; }

    /// <summary>What is added to amounts of yarn that are worked out, as a share; null when not said.</summary>
    public decimal? YarnMargin { get; init; }

    /// <summary>What the photos show; null when not said.</summary>
    public Shown? Shown { get; init; }

    /// <summary>The care of the finished piece, by treatment, then free words.</summary>
    public ImmutableArray<CareEntry> Care { get; init; } = [];

    /// <summary>Photos.</summary>
    public ImmutableArray<Photo> Photos { get; init; } = [];

    /// <summary>Videos.</summary>
    public ImmutableArray<Link> Videos { get; init; } = [];

    /// <summary>Links.</summary>
    public ImmutableArray<Link> Links { get; init; } = [];

    /// <summary>Where questions go.</summary>
    public string? Contact { get; init; }

    /// <summary>The running list of corrections, in the order of the header.</summary>
    public ImmutableArray<ReleasedCorrection> Corrections { get; init; } = [];

    /// <summary>Parts left out on purpose.</summary>
    public ImmutableArray<string> Omit { get; init; } = [];

    /// <summary>The paper that documents for print are made for; null when not said.</summary>
    public Located<Paper>? Paper { get; init; }

    /// <summary>Editions wanted.</summary>
    public ImmutableArray<Located<string>> Release { get; init; } = [];
}
