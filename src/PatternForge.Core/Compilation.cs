using System.Collections.Immutable;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Sizing;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core;

/// <summary>How many instruction lines there are and how many ended in each state.</summary>
public sealed record Coverage(int Instructions, int Checked, int Trusted, int Unread);

/// <summary>The waist of the compiler: one pattern read, worked in every size, and checked. Linting, counting and rendering start here.</summary>
public sealed record Compilation
{
    /// <summary>The file.</summary>
    public required SourceText Source { get; init; }

    /// <summary>The file as it was read, a pasted draft mended: places of <see cref="Pattern"/> and <see cref="Lines"/> are places of this text, and it knows where they stand in the file.</summary>
    public required MendedText Text { get; init; }

    /// <summary>The header's facts and the body's sections.</summary>
    public required Pattern Pattern { get; init; }

    /// <summary>Every instruction line, worked, in the order of the source; found by its index.</summary>
    public required ImmutableArray<WorkedLine> Lines { get; init; }

    /// <summary>The same lines as they were read, before they were worked.</summary>
    internal ImmutableArray<BoundLine> BoundLines { get; init; } = [];

    /// <summary>The charts of its rows, in the order of the source; drawn up when somebody asks for the first time.</summary>
    public ImmutableArray<Chart> Charts => LazyCharts.Value;

    /// <summary>Draws up the charts; a compilation that is only linted never does, unless a block asks for one.</summary>
    internal Lazy<ImmutableArray<Chart>> LazyCharts { get; init; } = new([]);

    /// <summary>The sequences of its stripes, in the order of the source.</summary>
    public ImmutableArray<StripeSequence> Stripes => LazyStripes.Value;

    /// <summary>Finds the stripes; a compilation that is only linted never does, unless a block asks for them.</summary>
    internal Lazy<ImmutableArray<StripeSequence>> LazyStripes { get; init; } = new([]);

    /// <summary>How the stitches of its parts are shared out among the yarns; empty where the yarns have no letters or are in doubt.</summary>
    public ImmutableArray<YarnShares> Shares { get; init; } = [];

    /// <summary>The outlines of its pieces, in the order of the source; made when they are first wanted.</summary>
    public ImmutableArray<PieceOutline> Outlines => LazyOutlines.Value;

    /// <summary>Makes the outlines.</summary>
    internal Lazy<ImmutableArray<PieceOutline>> LazyOutlines { get; init; } = new([]);

    /// <summary>What it takes of each yarn, worked out from its stitches when it is first wanted.</summary>
    public YarnEstimate Yarn => LazyYarn.Value;

    /// <summary>Works out the yarn.</summary>
    internal Lazy<YarnEstimate> LazyYarn { get; init; } = new(() => new YarnEstimate([], YarnEstimate.UsualMargin, [], null));

    /// <summary>Its crochet diagrams, in the order of the source; drawn up when somebody asks for the first time.</summary>
    public ImmutableArray<CrochetDiagram> Diagrams => LazyDiagrams.Value;

    /// <summary>Draws up the diagrams; a compilation that is only linted never does, unless a block asks for one.</summary>
    internal Lazy<ImmutableArray<CrochetDiagram>> LazyDiagrams { get; init; } = new(() => []);

    /// <summary>Abbreviations used by the rows, sorted as the table prints them.</summary>
    public required ImmutableArray<AbbreviationUse> Abbreviations { get; init; }

    /// <summary>Everything found, by place; accepted ones are in it with their reason.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>The places that hang on the sizes, found when somebody asks for the first time: the edition of each size does.</summary>
    internal SizeLists SizeLists => field ??= SizeLists.Find(Text.Text, Pattern.Facts.Sizes);

    /// <summary>Which edition of a pattern it is; null for the pattern as it is written.</summary>
    public EditionForm? Edition { get; init; }

    /// <summary>How much of the file was understood.</summary>
    public required Coverage Coverage { get; init; }

    /// <summary>True when an error stands that was not accepted.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error && f.Accepted is null);

    /// <summary>The line of the file, from 1, on which a place of the pattern or of a worked line begins.</summary>
    public int LineOf(TextSpan place) => Source.Lines.PositionOf(Text.ToSource(place).Start).Line;
}
