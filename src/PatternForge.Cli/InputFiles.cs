using System.Collections.Immutable;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Cli;

/// <summary>One source to be worked.</summary>
/// <param name="Path">As the user knows it; <c>-</c> for standard input.</param>
/// <param name="FullPath">Where it lies; null for standard input.</param>
/// <param name="Stem">What its outputs are called, without an extension: the path below the folder that was searched, or the file's own name.</param>
/// <param name="IsSearched">True when a search found it, false when the user named it.</param>
internal sealed record InputFile(string Path, string? FullPath, string Stem, bool IsSearched = false);

/// <summary>The sources that a command line names.</summary>
/// <param name="Files">In the order of the command line; those of a folder by path.</param>
/// <param name="Problems">What could not be read as asked, a sentence each: the run ends with <see cref="ExitCode.Usage"/>.</param>
/// <param name="Remarks">What was passed over on purpose, a sentence each.</param>
internal sealed record InputSet(ImmutableArray<InputFile> Files, ImmutableArray<string> Problems, ImmutableArray<string> Remarks)
{
    /// <summary>Project files that are named themselves, by their full paths.</summary>
    public ImmutableArray<string> Houses { get; init; } = [];
}

/// <summary>What came of reading a source: its text, a size that is refused, or a problem in words.</summary>
/// <param name="Source">The text; empty when the file was refused.</param>
/// <param name="Bytes">The size of the file, or the part of it that was seen before it was refused.</param>
/// <param name="TooLarge">True when the file is larger than allowed; it has not been read whole.</param>
/// <param name="Problem">Why it could not be read at all; null when it could.</param>
internal sealed record ReadResult(SourceText Source, long Bytes, bool TooLarge, string? Problem)
{
    /// <summary>True when the file begins with the byte-order mark of UTF-8.</summary>
    public bool HasMark { get; init; }
}

/// <summary>Finds the sources that a command line names, and reads them. Never throws for what it meets on a disk.</summary>
internal static class InputFiles
{
    /// <summary>How pattern files end.</summary>
    public const string Extension = ".pattern.md";

    /// <summary>The path that means standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>Finds every file that the paths name, each once. A project file is no pattern: it is set apart where it can be checked, and a problem elsewhere.</summary>
    public static InputSet Find(IReadOnlyList<string> paths, Surroundings around, bool takesHouses = false)
    {
        var houses = ImmutableArray.CreateBuilder<string>();
        var files = ImmutableArray.CreateBuilder<InputFile>();
        var problems = ImmutableArray.CreateBuilder<string>();
        var remarks = ImmutableArray.CreateBuilder<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            if (string.Equals(path, StandardInput, StringComparison.Ordinal))
            {
                if (seen.Add(StandardInput))
                {
                    files.Add(new(path, null, "pattern"));
                }

                continue;
            }

            var full = FullPathOf(path, around.Folder);
            if (full is not null && Directory.Exists(full))
            {
                var search = FolderSearch.In(path, full, around.Stop);
                problems.AddRange(search.Problems);
                remarks.AddRange(search.Remarks);
                if (search.Files.IsEmpty && search.Problems.IsEmpty)
                {
                    problems.Add($"there is no pattern in `{path}`: no file in it ends in {Extension}");
                }

                files.AddRange(search.Files.Where(f => seen.Add(f.FullPath!)));
            }
            else if (full is not null && File.Exists(full))
            {
                if (string.Equals(Path.GetFileName(full), HouseFile.Name, StringComparison.OrdinalIgnoreCase))
                {
                    if (!takesHouses)
                    {
                        problems.Add($"`{path}` is a project file and no pattern; `lint` checks it");
                    }
                    else if (seen.Add(full))
                    {
                        houses.Add(full);
                    }
                }
                else if (seen.Add(full))
                {
                    files.Add(new(path.Replace(Path.DirectorySeparatorChar, '/'), full, StemOf(full)));
                }
            }
            else
            {
                problems.Add($"there is no file or folder `{path}`");
            }
        }

        return new(files.ToImmutable(), problems.ToImmutable(), remarks.ToImmutable()) { Houses = houses.ToImmutable() };
    }

    /// <summary>Reads a source; at most <paramref name="most"/> bytes of it.</summary>
    public static ReadResult Read(InputFile file, int most, Surroundings around)
    {
        try
        {
            if (file is { IsSearched: true, FullPath: { } found } && new FileInfo(found) is { Length: 0, LinkTarget: null })
            {
                // Nothing in it, or no regular file at all: a pipe that was found by chance would never answer.
                return new(new SourceText(file.Path, ""), 0, TooLarge: false, null);
            }

            using var stream = file.FullPath is null
                ? around.In
                : new FileStream(file.FullPath, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 1);
            if (file.FullPath is not null && stream.CanSeek && stream.Length > most)
            {
                return Refused(file, stream.Length);
            }

            var bytes = ReadUpTo(stream, most + 1, around.Stop);
            return bytes.Count > most
                ? Refused(file, bytes.Count)
                : new(new SourceText(file.Path, TextOf(bytes)), bytes.Count, TooLarge: false, null) { HasMark = HasMark(bytes) };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new(new SourceText(file.Path, ""), 0, TooLarge: false, $"`{file.Path}` cannot be read: {ReasonOf(e)}");
        }
    }

    /// <summary>The name of a file without <see cref="Extension"/>, or without its last extension.</summary>
    public static string StemOf(string path)
    {
        var name = Path.GetFileName(path);
        return name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase) && name.Length > Extension.Length
            ? name[..^Extension.Length]
            : Path.GetFileNameWithoutExtension(name) is { Length: > 0 } stem ? stem : name;
    }

    /// <summary>Why the system refused, in a few words.</summary>
    public static string ReasonOf(Exception e) => e switch
    {
        UnauthorizedAccessException => "permission denied",
        FileNotFoundException or DirectoryNotFoundException => "it is not there",
        PathTooLongException => "its path is too long",
        _ => e.Message.TrimEnd('.'),
    };

    /// <summary>The absolute form of a path; null when no file can be called so.</summary>
    public static string? FullPathOf(string path, string folder)
    {
        try
        {
            return path.Length == 0 ? null : Path.GetFullPath(path, folder);
        }
        catch (Exception e) when (e is ArgumentException or IOException or NotSupportedException)
        {
            return null;
        }
    }

    private static ReadResult Refused(InputFile file, long bytes) => new(new SourceText(file.Path, ""), bytes, TooLarge: true, null);

    // Waits for the stream and for the wish to stop at once: a keyboard may never answer.
    private static ArraySegment<byte> ReadUpTo(Stream stream, int most, CancellationToken stop)
    {
        var known = stream.CanSeek ? (int)Math.Clamp(stream.Length - stream.Position, 0, most) : 0;
        var buffer = new byte[Math.Min(most, Math.Max(known + 1, 4096))];
        var count = 0;
        while (count < most)
        {
            if (count == buffer.Length)
            {
                Array.Resize(ref buffer, (int)Math.Min(most, buffer.Length * 2L));
            }

            var read = stream is FileStream or MemoryStream
                ? stream.Read(buffer, count, buffer.Length - count)
                : Waited(stream.ReadAsync(buffer, count, buffer.Length - count, stop), stop);
            if (read == 0)
            {
                break;
            }

            count += read;
        }

        return new(buffer, 0, count);
    }

    private static int Waited(Task<int> reading, CancellationToken stop)
    {
        reading.Wait(stop);
        return reading.Result;
    }

    // UTF-8, with or without its mark. What is not UTF-8 becomes U+FFFD, which has a finding of its own.
    internal static string TextOf(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(HasMark(bytes) ? bytes[3..] : bytes);

    private static bool HasMark(ReadOnlySpan<byte> bytes) => bytes is [0xEF, 0xBB, 0xBF, ..];
}
