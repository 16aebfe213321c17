using System.Collections.Concurrent;
using System.Collections.Immutable;
using PatternForge.Cli.Reporting;
using PatternForge.Core;
using PatternForge.Core.Model;

namespace PatternForge.Cli;

/// <summary>The project file that holds for a pattern.</summary>
/// <param name="FullPath">Where it lies.</param>
/// <param name="File">What it says; null when it could not be read.</param>
/// <param name="Problem">Why it could not be read; null when it could.</param>
internal sealed record FoundHouse(string FullPath, HouseFile? File, string? Problem)
{
    /// <summary>What it settles.</summary>
    public House House => File?.House ?? House.None;
}

/// <summary>
/// Finds the project file of each pattern: the first one upward from its folder. The search ends at the root of a repository, at the root of the file system,
/// and after so many folders; each file is read once.
/// </summary>
internal sealed class HouseFiles(Surroundings around)
{
    private const int MostFolders = 64;

    // What lies in the outermost folder of a repository.
    private static readonly string[] RepositoryMarks = [".git", ".hg", ".svn"];

    private readonly ConcurrentDictionary<string, Lazy<FoundHouse?>> _byFolder = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<FoundHouse>> _byPath = new(StringComparer.Ordinal);

    /// <summary>The project file of a pattern; that of the current folder for standard input. Null where there is none.</summary>
    public FoundHouse? Of(InputFile file)
    {
        var folder = file.FullPath is { } full ? Path.GetDirectoryName(full) ?? around.Folder : around.Folder;
        return _byFolder.GetOrAdd(folder, f => new(() => Search(f))).Value;
    }

    /// <summary>The project files that a command line names itself.</summary>
    public ImmutableArray<FoundHouse> Named(ImmutableArray<string> paths) => [.. paths.Select(path => _byPath.GetOrAdd(path, p => new(() => Read(p))).Value)];

    /// <summary>What is wrong with the project files of some patterns, each file once; those that were named themselves are told of in any case.</summary>
    public static FileReport[] Reports(IEnumerable<WorkedFile> files, ImmutableArray<FoundHouse> named = default) =>
    [
        .. (named.IsDefault ? [] : named).Concat(files.Select(f => f.House).OfType<FoundHouse>().Where(h => h.File is { Findings.IsEmpty: false })).DistinctBy(h => h.FullPath, StringComparer.Ordinal)
            .Where(h => h.File is not null)
            .Select(h => new FileReport { Path = h.File!.Source.Path, Sizes = [], Coverage = null, Findings = h.File.Findings, IsPattern = false }),
    ];

    /// <summary>Says which project files could not be read; answers with the exit code for it.</summary>
    public static int Complain(IEnumerable<WorkedFile> files, Surroundings around, ImmutableArray<FoundHouse> named = default)
    {
        var problems = (named.IsDefault ? [] : named).Concat(files.Select(f => f.House).OfType<FoundHouse>()).Select(h => h.Problem).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        foreach (var problem in problems)
        {
            around.Say(problem);
        }

        return problems.Length == 0 ? ExitCode.Clean : ExitCode.Usage;
    }

    private FoundHouse? Search(string start)
    {
        var folder = start;
        for (var step = 0; step < MostFolders && folder is not null; step++)
        {
            var path = Path.Combine(folder, HouseFile.Name);
            if (File.Exists(path))
            {
                return _byPath.GetOrAdd(path, p => new(() => Read(p))).Value;
            }

            var here = folder;
            if (Array.Exists(RepositoryMarks, mark => Path.Exists(Path.Combine(here, mark))))
            {
                return null;
            }

            folder = Path.GetDirectoryName(folder);
        }

        return null;
    }

    private FoundHouse Read(string path)
    {
        var shown = Path.GetRelativePath(around.Folder, path).Replace(Path.DirectorySeparatorChar, '/');
        var read = InputFiles.Read(new InputFile(shown, path, HouseFile.Name, IsSearched: true), HouseFile.MaxLength, around);
        return read switch
        {
            { Problem: { } problem } => new(path, null, problem),
            { TooLarge: true } => new(path, HouseFile.TooLarge(read.Source), null),
            _ => new(path, HouseFile.Read(read.Source), null),
        };
    }
}
