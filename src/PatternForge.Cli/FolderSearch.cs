using System.Collections.Immutable;

namespace PatternForge.Cli;

/// <summary>
/// Searches a folder and the folders in it for pattern files. Links to folders are not followed (a loop cannot arise), folders whose
/// names begin with a dot are passed over, and depth and number are bounded.
/// </summary>
internal static class FolderSearch
{
    private const int MostDepth = 64;
    private const int MostFolders = 100_000;

    /// <summary>All patterns below a folder, by path in ordinal order.</summary>
    /// <param name="path">The folder as the user knows it.</param>
    /// <param name="full">Where it lies.</param>
    /// <param name="stop">Set when the user asks to stop.</param>
    public static InputSet In(string path, string full, CancellationToken stop)
    {
        var files = new List<(string Below, string Full)>();
        var problems = ImmutableArray.CreateBuilder<string>();
        var remarks = ImmutableArray.CreateBuilder<string>();
        var root = ShownRoot(path);
        var waiting = new Stack<(string Full, string Below, int Depth)>();
        waiting.Push((full, "", 0));
        var folders = 0;
        while (waiting.TryPop(out var folder))
        {
            stop.ThrowIfCancellationRequested();
            if (++folders > MostFolders)
            {
                problems.Add($"`{path}` holds more than {MostFolders} folders: name the ones that are meant");
                break;
            }

            foreach (var entry in Entries(folder.Full, root + folder.Below, problems))
            {
                var below = folder.Below + entry.Name;
                if (entry is not DirectoryInfo)
                {
                    if (entry.Name.EndsWith(InputFiles.Extension, StringComparison.OrdinalIgnoreCase))
                    {
                        files.Add((below, entry.FullName));
                    }
                }
                else if (entry.Name.StartsWith('.'))
                {
                    continue;
                }
                else if (entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
                {
                    remarks.Add($"`{root}{below}` is a link to a folder and was not followed");
                }
                else if (folder.Depth + 1 > MostDepth)
                {
                    problems.Add($"`{root}{below}` lies more than {MostDepth} folders deep and was not searched");
                }
                else
                {
                    waiting.Push((entry.FullName, below + "/", folder.Depth + 1));
                }
            }
        }

        files.Sort((a, b) => string.CompareOrdinal(a.Below, b.Below));
        remarks.Sort(StringComparer.Ordinal);
        problems.Sort(StringComparer.Ordinal);
        return new(
            [.. files.Select(f => new InputFile(root + f.Below, f.Full, f.Below[..^InputFiles.Extension.Length], IsSearched: true))],
            problems.ToImmutable(),
            remarks.ToImmutable());
    }

    // A file called only `.pattern.md` has no name: its stem would be empty.
    private static List<FileSystemInfo> Entries(string folder, string shown, ImmutableArray<string>.Builder problems)
    {
        try
        {
            var options = new EnumerationOptions { AttributesToSkip = FileAttributes.None, IgnoreInaccessible = false };
            return [.. new DirectoryInfo(folder).EnumerateFileSystemInfos("*", options)
                .Where(e => !string.Equals(e.Name, InputFiles.Extension, StringComparison.OrdinalIgnoreCase))];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Add($"the folder `{(shown.Length == 0 ? "." : shown.TrimEnd('/'))}` cannot be read: {InputFiles.ReasonOf(e)}");
            return [];
        }
    }

    private static string ShownRoot(string path)
    {
        var root = path.Replace(Path.DirectorySeparatorChar, '/');
        if (root is "." or "./")
        {
            return "";
        }

        return root.EndsWith('/') ? root : root + "/";
    }
}
