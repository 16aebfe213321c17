namespace PatternForge.Tests.House;

/// <summary>A file of the project: its path from the root with forward slashes, and its text.</summary>
internal sealed record ProjectFile(string Path, string Text)
{
    /// <summary>The name without its folder.</summary>
    public string Name => Path[(Path.LastIndexOf('/') + 1)..];

    /// <summary>The folder, without a slash at its end; empty at the top.</summary>
    public string Folder => Path.LastIndexOf('/') is >= 0 and var cut ? Path[..cut] : "";

    /// <summary>The lines, without their ends.</summary>
    public string[] Lines => Text.Split('\n');
}

/// <summary>The project's own files, as they would be checked in: what builds and runs leave behind is passed over.</summary>
internal static class ProjectFiles
{
    private static readonly string[] LeftBehind = ["bin", "obj", "artifacts", "out", "TestResults", "BenchmarkDotNet.Artifacts", ".git", ".vs", ".idea"];

    /// <summary>Every text file.</summary>
    public static ProjectFile[] All { get; } = [.. Walk("").Where(f => !IsPicture(f)).Select(Read)];

    /// <summary>The C# files of the product.</summary>
    public static ProjectFile[] Source { get; } = [.. All.Where(f => f.Path.StartsWith("src/", StringComparison.Ordinal) && f.Path.EndsWith(".cs", StringComparison.Ordinal))];

    /// <summary>The C# files of the tests.</summary>
    public static ProjectFile[] Tests { get; } = [.. All.Where(f => f.Path.StartsWith("tests/", StringComparison.Ordinal) && f.Path.EndsWith(".cs", StringComparison.Ordinal))];

    /// <summary>The names at the top, without what builds leave behind.</summary>
    public static string[] Top { get; } = [.. Directory.EnumerateFileSystemEntries(RepositoryRoot.Path()).Select(e => Path.GetFileName(e)).Where(n => !LeftBehind.Contains(n, StringComparer.Ordinal))];

    /// <summary>One file by its path from the root.</summary>
    public static ProjectFile Read(string path) => new(path, File.ReadAllText(RepositoryRoot.Path(path)).ReplaceLineEndings("\n"));

    /// <summary>True when a file or folder of that path is there.</summary>
    public static bool Has(string path) => Path.Exists(RepositoryRoot.Path(path));

    private static IEnumerable<string> Walk(string folder)
    {
        foreach (var entry in new DirectoryInfo(RepositoryRoot.Path(folder)).EnumerateFileSystemInfos().OrderBy(e => e.Name, StringComparer.Ordinal))
        {
            var path = folder.Length == 0 ? entry.Name : $"{folder}/{entry.Name}";
            if (entry is FileInfo)
            {
                // In a second working tree .git is a file.
                if (entry.Name != ".git" && !entry.Name.Contains(".received.", StringComparison.Ordinal) && !entry.Name.EndsWith(".user", StringComparison.Ordinal))
                {
                    yield return path;
                }
            }
            else if (!LeftBehind.Contains(entry.Name, StringComparer.Ordinal))
            {
                foreach (var file in Walk(path))
                {
                    yield return file;
                }
            }
        }
    }

    private static bool IsPicture(string path) => Path.GetExtension(path) is ".png" or ".jpg" or ".jpeg" or ".webp" or ".gif" or ".woff2";
}
