namespace PatternForge.Rendering.Documents;

/// <summary>What the files of a release are called.</summary>
public static class ReleaseName
{
    /// <summary>The source's name without its folder and <c>.pattern.md</c>; "pattern" for standard input.</summary>
    public static string Of(string path)
    {
        var name = path[(path.LastIndexOfAny(['/', '\\']) + 1)..];
        var end = name.EndsWith(".pattern.md", StringComparison.OrdinalIgnoreCase) ? ".pattern.md".Length
            : name.EndsWith(".md", StringComparison.OrdinalIgnoreCase) ? ".md".Length
            : 0;
        var bare = name[..^end];
        return bare.Length == 0 || bare is "-" ? "pattern" : bare;
    }

    /// <summary>The file of a drawing.</summary>
    /// <param name="name">The release's name.</param>
    /// <param name="id">The drawing's identifier.</param>
    public static string OfDrawing(string name, string id) => $"{name}.{id}.svg";
}
