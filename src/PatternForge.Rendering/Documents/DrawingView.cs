using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>An SVG element that goes into a page as it is; formats that hold no drawings leave it out.</summary>
/// <param name="Svg">The element.</param>
public readonly record struct PictureText(string Svg);

/// <summary>A drawing in the page: a chart, a schematic.</summary>
public sealed record DrawingView
{
    /// <summary>An identifier to link to, unique on the page; the drawing's file has it in its name.</summary>
    public required string Id { get; init; }

    /// <summary>What it shows.</summary>
    public required string Title { get; init; }

    /// <summary>The same in words, for those who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>The address of the file that holds it alone, beside the page.</summary>
    public required string Address { get; init; }

    /// <summary>The drawing itself: one picture, or several from the top down where it is too long for a sheet of paper.</summary>
    public required ImmutableArray<PictureText> Pictures { get; init; }

    /// <summary>Its key, only with what is used; empty where there is none.</summary>
    public ImmutableArray<KeyView> Key { get; init; } = [];

    /// <summary>What a maker must know to read it, a sentence or two each.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>The sizes that it is for, counted from 1, with blanks between them; empty for all.</summary>
    public string Sizes { get; init; } = "";

    /// <summary>Where the rows of a chart stand, one text a picture: number, top and height of each, "3:142:22 2:164:22", so that a page can mark one; empty texts where a drawing has none.</summary>
    public ImmutableArray<string> Bands { get; init; } = [];

    /// <summary>The text of the file that holds it alone; no matter of the page.</summary>
    internal string Alone { get; init; } = "";

    /// <summary>What kind of drawing it is; no matter of the page.</summary>
    internal DrawingKind Kind { get; init; }
}

/// <summary>The kinds of drawings.</summary>
internal enum DrawingKind
{
    /// <summary>A knitting chart.</summary>
    Chart,

    /// <summary>A crochet diagram.</summary>
    Diagram,

    /// <summary>The outline of a piece with its measurements.</summary>
    Schematic,

    /// <summary>The sequence of stripes.</summary>
    Stripes,
}

/// <summary>A line of a drawing's key.</summary>
public sealed record KeyView
{
    /// <summary>The mark.</summary>
    public required PictureText Picture { get; init; }

    /// <summary>What it is called in the rows.</summary>
    public required string Name { get; init; }

    /// <summary>What to work.</summary>
    public required string Meaning { get; init; }
}
