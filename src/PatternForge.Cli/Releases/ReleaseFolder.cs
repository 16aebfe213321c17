using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace PatternForge.Cli.Releases;

/// <summary>One file of a release as it was written.</summary>
/// <param name="Name">Its name seen from the pattern's own folder of the release, with forward slashes.</param>
/// <param name="Bytes">How long it is.</param>
/// <param name="Sha256">Its SHA-256 in small hexadecimal digits (FIPS 180-4).</param>
internal sealed record WrittenFile(string Name, int Bytes, string Sha256);

/// <summary>Writes the files of one pattern, and keeps what was written and what could not be.</summary>
/// <param name="file">The source.</param>
/// <param name="root">The folder of the release.</param>
/// <param name="taken">Whose every place of this run is: the first pattern that is written to one keeps it.</param>
internal sealed class ReleaseFolder(InputFile file, string root, ConcurrentDictionary<string, string> taken)
{
    private static readonly UTF8Encoding Encoding = new(encoderShouldEmitUTF8Identifier: false);

    private readonly string _below = Path.GetDirectoryName(file.Stem) is { Length: > 0 } parent ? parent.Replace('\\', '/') + "/" : "";
    private readonly ImmutableArray<WrittenFile>.Builder _written = ImmutableArray.CreateBuilder<WrittenFile>();
    private readonly ImmutableArray<string>.Builder _problems = ImmutableArray.CreateBuilder<string>();

    /// <summary>The pattern's own folder.</summary>
    public string Place => Path.GetFullPath(_below, root);

    /// <summary>What was written, in that order.</summary>
    public IReadOnlyList<WrittenFile> Files => _written;

    /// <summary>The names of what was written, seen from the folder of the release.</summary>
    public ImmutableArray<string> Names => [.. _written.Select(w => _below + w.Name)];

    /// <summary>What could not be written, a sentence each.</summary>
    public ImmutableArray<string> Problems => _problems.ToImmutable();

    /// <summary>Writes a text.</summary>
    /// <param name="name">The file's name seen from the pattern's own folder.</param>
    /// <param name="text">All of it.</param>
    public void Write(string name, string text) => Write(name, Encoding.GetBytes(text));

    /// <summary>Writes bytes.</summary>
    public void Write(string name, ReadOnlySpan<byte> bytes)
    {
        var target = Path.GetFullPath(name, Place);
        if ((Taken(target) ?? OutputFiles.Write(target, bytes, overwrite: true)) is { } reason)
        {
            Miss(name, $"could not be written: {reason}");
            return;
        }

        _written.Add(new(name, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes))));
    }

    /// <summary>Notes that a file is missing.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="reason">Why, as the end of a sentence that begins with the name.</param>
    public void Miss(string name, string reason) => _problems.Add($"`{_below + name}` {reason}");

    // Why nothing may be written there; null where it may. Editions that a header asks for are known only once it has been read: their places are taken then.
    private string? Taken(string target) => taken.GetOrAdd(target, file.Path) is var owner && owner != file.Path
        ? $"`{owner}` was written there in this run"
        : file.FullPath is { } self && string.Equals(self, target, StringComparison.OrdinalIgnoreCase) ? "it is the source itself" : null;
}
