namespace PatternForge.Tests;

/// <summary>Finds the project's own files from wherever the tests run.</summary>
internal static class RepositoryRoot
{
    private static readonly string Root = Find();

    /// <summary>The full path of a file or folder named from the root.</summary>
    public static string Path(params ReadOnlySpan<string> parts) => System.IO.Path.Combine([Root, .. parts]);

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "PatternForge.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("PatternForge.sln was not found above the tests.");
    }
}
