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

    /// <summary>
    /// Gives the address that a photo has in the release, from its file as the header names it: a path beside the page, or a <c>data:</c>
    /// address that holds the picture itself; null for a picture that cannot be had, whose words then stand alone. Without it the header's
    /// relative paths are kept.
    /// </summary>
    public Func<string, string?>? PhotoAddress { get; init; }
}
