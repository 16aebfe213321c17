namespace PatternForge.Cli;

/// <summary>Small text files that a pattern's header names, such as a size table: beside the pattern or in a folder below it, nowhere else.</summary>
/// <param name="folder">The pattern's folder.</param>
internal sealed class BesideFiles(string folder)
{
    private const int MostBytes = 256 * 1024;

    private readonly SortedSet<string> _asked = new(StringComparer.Ordinal);

    /// <summary>The names that were asked for.</summary>
    public IReadOnlyCollection<string> Asked => _asked;

    /// <summary>The text of a file; null where there is none, where it is too large, or where it lies outside the folder.</summary>
    public string? Read(string name)
    {
        _asked.Add(name);
        try
        {
            if (Path.IsPathRooted(name) || name.Split('/', '\\').Contains("..", StringComparer.Ordinal))
            {
                return null;
            }

            var file = new FileInfo(Path.Combine(folder, name));
            var isLink = file.LinkTarget is not null || (file.Directory is { } home && !string.Equals(Path.GetFullPath(home.FullName), Path.GetFullPath(folder), StringComparison.Ordinal) && home.LinkTarget is not null);
            return file.Exists && !isLink && file.Length <= MostBytes ? File.ReadAllText(file.FullName) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }
}
