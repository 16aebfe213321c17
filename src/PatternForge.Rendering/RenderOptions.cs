using PatternForge.Core;
using PatternForge.Rendering.Documents;

namespace PatternForge.Rendering;

/// <summary>How a pattern is rendered.</summary>
public sealed record RenderOptions
{
    /// <summary>The usual ones.</summary>
    public static RenderOptions Default { get; } = new();

    /// <summary>Marks every page as a draft that is not for release.</summary>
    public bool Draft { get; init; }

    /// <summary>The files' name without its extension; null takes that of the source without <c>.pattern.md</c>.</summary>
    public string? Name { get; init; }

    /// <summary>How the pattern was compiled, for the other forms that a page may change to; the defaults when null.</summary>
    public CompileOptions? Compile { get; init; }

    /// <summary>The shelf that the pattern stands on, whose other designs its pages name; null where it stands alone.</summary>
    public ShelfView? Shelf { get; init; }

    /// <summary>The address of the shelf on the web, with a slash at its end; null where pages only name the others.</summary>
    public string? Site { get; init; }

    /// <summary>The pattern's files as a path below the shelf, without extension; null where it stands alone.</summary>
    public string? Stem { get; init; }

    /// <summary>The paper that the page is made for, "A4" or "letter"; null where the maker's own printer says.</summary>
    public string? Paper { get; init; }

    /// <summary>
    /// Gives a photo, or a picture of the text, as it stands in the release, from its file as the pattern names it: by a path beside the page, or by a
    /// <c>data:</c> address that holds the picture itself; null for a picture that cannot be had, whose words then stand alone. Without it the
    /// pattern's relative paths are kept.
    /// </summary>
    public Func<string, ReleasedPicture?>? Picture { get; init; }
}
