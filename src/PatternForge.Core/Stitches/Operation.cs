using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>The crafts.</summary>
public enum Craft
{
    /// <summary>Hand knitting on two needles.</summary>
    Knitting,

    /// <summary>Crochet.</summary>
    Crochet,

    /// <summary>Tunisian crochet.</summary>
    Tunisian,
}

/// <summary>Whose names a word belongs to.</summary>
public enum Dialect
{
    /// <summary>American names.</summary>
    Us,

    /// <summary>British names.</summary>
    Uk,

    /// <summary>The same word in both.</summary>
    Any,
}

/// <summary>What a stitch is and looks like on the needle, seen from the side it was worked on.</summary>
public enum StitchKind
{
    /// <summary>A knit stitch.</summary>
    Knit,

    /// <summary>A purl stitch.</summary>
    Purl,

    /// <summary>A slipped stitch.</summary>
    Slipped,

    /// <summary>A yarn over.</summary>
    YarnOver,

    /// <summary>Made by an increase.</summary>
    Increase,

    /// <summary>Left by a decrease.</summary>
    Decrease,

    /// <summary>One of a crossing.</summary>
    Cable,

    /// <summary>Newly cast on or picked up.</summary>
    CastOn,

    /// <summary>In the pattern in force; neither knit nor purl is known.</summary>
    InPattern,

    /// <summary>A bobble or another special stitch.</summary>
    Special,

    /// <summary>A double stitch of a short row.</summary>
    Double,

    /// <summary>A chain of crochet.</summary>
    Chain,

    /// <summary>A crochet stitch of any height.</summary>
    Crochet,
}

/// <summary>The family an operation belongs to: groups tables, feeds the level.</summary>
public enum Family
{
    /// <summary>Knit, purl and the like.</summary>
    Basic,

    /// <summary>Makes more stitches.</summary>
    Increase,

    /// <summary>Makes fewer stitches.</summary>
    Decrease,

    /// <summary>Yarn overs.</summary>
    YarnOver,

    /// <summary>Slipped stitches.</summary>
    Slip,

    /// <summary>Crossings.</summary>
    Cable,

    /// <summary>Short-row turns.</summary>
    ShortRow,

    /// <summary>Casting on and binding off.</summary>
    Edge,

    /// <summary>Brioche and other tucked stitches.</summary>
    Brioche,

    /// <summary>Bobbles and the like.</summary>
    Special,
}

/// <summary>How much a maker must know to work it.</summary>
public enum Difficulty
{
    /// <summary>Everybody's first lessons.</summary>
    Basic,

    /// <summary>After a first project.</summary>
    Easy,

    /// <summary>Needs attention.</summary>
    Intermediate,

    /// <summary>Needs practice.</summary>
    Complex,
}

/// <summary>Which way a decrease, increase or crossing leans on the side it is worked.</summary>
public enum Lean
{
    /// <summary>It does not.</summary>
    None,

    /// <summary>To the left.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,

    /// <summary>Centred.</summary>
    Centre,
}

/// <summary>A name of an operation in a dialect.</summary>
public sealed record OperationName(Dialect Dialect, string Text);

/// <summary>
/// One operation on stitches, declared once as data. Name lookup, row arithmetic, the abbreviations table and the charts all read this record;
/// a stitch that a pattern defines in its header becomes the same record.
/// </summary>
public sealed record Operation
{
    /// <summary>Unique within its craft; also the usual abbreviation.</summary>
    public required string Id { get; init; }

    /// <summary>The craft.</summary>
    public required Craft Craft { get; init; }

    /// <summary>Abbreviations by dialect, the usual one first. A name is known in its dialect only.</summary>
    public required ImmutableArray<OperationName> Names { get; init; }

    /// <summary>Written out: "knit 2 together". Also read in rows.</summary>
    public required string Spoken { get; init; }

    /// <summary>How it is worked, one or two sentences of our own with a full stop.</summary>
    public required string Definition { get; init; }

    /// <summary>Stitches used of the left needle (knitting) or places used of the row below (crochet).</summary>
    public required int Takes { get; init; }

    /// <summary>Stitches put on the right needle (knitting) or made (crochet).</summary>
    public required int Makes { get; init; }

    /// <summary>Stitches already on the right needle that are lifted over and lost (psso).</summary>
    public int PassesOver { get; init; }

    /// <summary>The family.</summary>
    public required Family Family { get; init; }

    /// <summary>What the made stitches are.</summary>
    public required StitchKind Gives { get; init; }

    /// <summary>How hard it is.</summary>
    public Difficulty Difficulty { get; init; }

    /// <summary>Which way it leans.</summary>
    public Lean Lean { get; init; }

    /// <summary>Identifier of its chart symbol; null when charts do not show it.</summary>
    public string? Symbol { get; init; }

    /// <summary>Crochet: how tall it is in chains, as a turning chain replaces it (slip stitch 0, the shortest plain stitch 1); null in other crafts and where it depends.</summary>
    public int? Height { get; init; }

    /// <summary>Crochet: the plain stitch that a decrease or post stitch is made of, by its identifier; null for itself.</summary>
    public string? CountsAs { get; init; }

    /// <summary>True for a stitch that the pattern itself defines.</summary>
    public bool IsSpecial { get; init; }

    /// <summary>The change in the count.</summary>
    public int Change => Makes - Takes - PassesOver;
}
