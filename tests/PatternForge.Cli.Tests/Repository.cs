namespace PatternForge.Cli.Tests;

/// <summary>Where the project's own files lie.</summary>
internal static class Repository
{
    /// <summary>The folder of the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The example patterns, the faulty ones among them.</summary>
    public static string[] Examples()
    {
        var folder = Path.Combine(Root, "examples");
        return Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder, "*.pattern.md", SearchOption.AllDirectories).Order(StringComparer.Ordinal)]
            : [];
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "PatternForge.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("The solution's folder lies above the tests.");
    }
}
