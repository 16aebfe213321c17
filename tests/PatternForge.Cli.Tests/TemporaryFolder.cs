namespace PatternForge.Cli.Tests;

/// <summary>A folder of its own for one test, removed afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public TemporaryFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"patternforge-tests-{Guid.NewGuid():N}");

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text) => Write(name, System.Text.Encoding.UTF8.GetBytes(text));

    public string Write(string name, byte[] bytes)
    {
        var path = At(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public string Read(string name) => File.ReadAllText(At(name));

    /// <summary>Every file below it, with forward slashes, in ordinal order.</summary>
    public string[] Files() =>
    [
        .. Directory.EnumerateFiles(Path, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None })
            .Select(f => System.IO.Path.GetRelativePath(Path, f).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
