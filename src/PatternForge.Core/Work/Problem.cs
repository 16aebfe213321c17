using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>What can go wrong while a row is worked in one size.</summary>
internal enum ProblemKind
{
    /// <summary>More stitches asked for than there are. A = needed, B = there, C = missing.</summary>
    TooFew,

    /// <summary>Stitches left unworked. A = used, B = there.</summary>
    LeftOver,

    /// <summary>A repeat does not fit. A = stitches of the repeat, B = stitches available, C = whole repeats, D = stitches over.</summary>
    Misfit,

    /// <summary>No marker where one is needed. A = markers there are in the row.</summary>
    NoMarker,

    /// <summary>A repeat that takes no stitch would never end.</summary>
    Endless,

    /// <summary>Too much work for one line. A = 0 stitches, 1 rows, 2 steps.</summary>
    TooLarge,

    /// <summary>The words name another number of stitches than are there. A = named, B = there.</summary>
    NamedCount,

    /// <summary>A stitch pattern does not fit. A = stitches there are.</summary>
    PatternMisfit,

    /// <summary>The second side begins with other stitches than the first did. A = this one, B = the first.</summary>
    SideDiffers,

    /// <summary>Shaping cannot end at the count named. A = target, B = start, C = change a time.</summary>
    TargetMissed,

    /// <summary>Counts of the needles do not add up. A = sum, B = there.</summary>
    NeedleSum,

    /// <summary>More decreases than stitches. A = asked, B = there.</summary>
    Exhausted,

    /// <summary>A row that was referred to has not been given. Text names it.</summary>
    NoSuchRow,

    /// <summary>A chain, chain space or turning chain that is not there. A = its length (0: any), B = the length there is (0: none). Text names it.</summary>
    NoSuchPlace,

    /// <summary>What follows cannot be known from here; nothing is wrong.</summary>
    Unknown,

    /// <summary>Stated count differs. A = stated, B = worked.</summary>
    StatedTotal,

    /// <summary>Stated change differs. A = stated, B = worked.</summary>
    StatedChange,
}

/// <summary>One problem of one size.</summary>
internal sealed record Problem(ProblemKind Kind, TextSpan Span, int A = 0, int B = 0, int C = 0, int D = 0)
{
    /// <summary>Words for the message: the row that was referred to, the row in which a repeated row failed.</summary>
    public string? Text { get; init; }

    /// <summary>Which time through a repeat of rows it happened; 0 when the row itself is meant.</summary>
    public int Pass { get; init; }

    /// <summary>The stitch pattern that does not fit; null for other problems.</summary>
    public StitchPattern? Pattern { get; init; }

    /// <summary>The earlier row that failed when it was worked again.</summary>
    public BoundRow? Inner { get; init; }
}

/// <summary>Which reading of a line was taken, when it was not the plain one.</summary>
internal enum ReadingKind
{
    /// <summary>"rep n times" read as n more.</summary>
    More,

    /// <summary>"rep n times" read as n in all.</summary>
    InAll,

    /// <summary>The row is repeated to the end without saying so.</summary>
    Implied,

    /// <summary>The rest of the row is worked plain.</summary>
    RestPlain,

    /// <summary>One stitch left over is worked plain.</summary>
    OnePlain,

    /// <summary>All that stands before "k2tog around" is repeated with it.</summary>
    WholeRepeated,

    /// <summary>The ending takes the place of the last repeat's end.</summary>
    CutRepeat,

    /// <summary>"inc" read as a made stitch.</summary>
    IncreaseBetween,

    /// <summary>"Each sc" taken as each stitch, of whatever kind.</summary>
    EachStitch,

    /// <summary>The turning chain is taken not to count.</summary>
    TurningChain,

    /// <summary>The turning chain is taken to count.</summary>
    TurningChainCounts,

    /// <summary>The turning chain does not count, as the counts of an earlier row have shown.</summary>
    TurningChainShown,

    /// <summary>The turning chain counts, as the counts of an earlier row have shown.</summary>
    TurningChainCountsShown,

    /// <summary>The turning chain does not count, as the notes or an earlier row say for all.</summary>
    TurningChainSaid,

    /// <summary>The turning chain counts, as the notes or an earlier row say for all.</summary>
    TurningChainCountsSaid,

    /// <summary>A skipped stitch is the one that the turning chain stands on.</summary>
    SkipsBase,

    /// <summary>"dc3tog in next st": all legs in one stitch, or over so many.</summary>
    ClusterInOne,

    /// <summary>"hdc inc" is one increase in that stitch, not a stitch and an increase.</summary>
    NamedIncrease,

    /// <summary>A marker of that name is not ahead; the next one is taken.</summary>
    NextMarker,

    /// <summary>Stitches told of another piece come to those on the needle.</summary>
    FromAnotherPiece,

    /// <summary>The stitch after binding off is not part of the next number.</summary>
    AfterBindOff,
}

/// <summary>A reading and where it was taken.</summary>
internal sealed record Reading(ReadingKind Kind, TextSpan Span);
