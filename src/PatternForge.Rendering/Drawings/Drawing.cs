using System.Collections.Immutable;

namespace PatternForge.Rendering.Drawings;

/// <summary>A line of a drawing's key: a mark, and what it stands for.</summary>
/// <param name="Svg">The mark as an SVG element of its own, for a page; drawn for the eye only.</param>
/// <param name="Name">What it is called in the rows ("k2tog", "k on RS, p on WS").</param>
/// <param name="Meaning">What to work, in words.</param>
public sealed record KeyEntry(string Svg, string Name, string Meaning);

/// <summary>One drawing: an SVG element to stand in a page, and a file that stands alone.</summary>
public sealed record Drawing
{
    /// <summary>A short name for the drawing's file and its identifiers: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What it shows, as a heading.</summary>
    public required string Title { get; init; }

    /// <summary>The same in words, for those who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>The SVG elements for a page, in the page's own colours, without the key: one, or several that follow each other from the top where it is too long for a sheet of paper.</summary>
    public required ImmutableArray<string> Sheets { get; init; }

    /// <summary>The file that stands alone, its key drawn in it.</summary>
    public required string Alone { get; init; }

    /// <summary>Its width on a page in pixels of CSS, before it is made to fit.</summary>
    public required int Width { get; init; }

    /// <summary>The key, only with what is used.</summary>
    public ImmutableArray<KeyEntry> Key { get; init; } = [];

    /// <summary>The sizes that it is for, from 0; empty for all.</summary>
    public ImmutableArray<int> Sizes { get; init; } = [];

    /// <summary>The rows of each sheet of a chart: number, top and height ("3:142:22"), with blanks between them; empty where a drawing has no rows to mark.</summary>
    public ImmutableArray<string> Bands { get; init; } = [];

    /// <summary>What a maker must know to read it, in a sentence or two.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
