using System.Buffers;
using System.Text;

namespace PatternForge.Cli;

/// <summary>Writes files so that nobody ever sees half of one: into a temporary file beside the place, then moved there in one step.</summary>
internal static class OutputFiles
{
    private static readonly UTF8Encoding Encoding = new(encoderShouldEmitUTF8Identifier: false);

    // Each run's temporary files have names of their own.
    private static readonly string Run = Guid.NewGuid().ToString("N");
    private static int _made;

    /// <summary>Writes a text in UTF-8 and makes the folders that it needs.</summary>
    /// <param name="path">The absolute path.</param>
    /// <param name="text">All of it.</param>
    /// <param name="overwrite">True to replace a file that is there.</param>
    /// <returns>Null, or in a few words why it could not be written; then nothing was changed.</returns>
    public static string? Write(string path, string text, bool overwrite)
    {
        var bytes = ArrayPool<byte>.Shared.Rent(Encoding.GetByteCount(text));
        try
        {
            return Write(path, bytes.AsSpan(0, Encoding.GetBytes(text, bytes)), overwrite);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(bytes);
        }
    }

    /// <summary>Writes bytes and makes the folders that they need.</summary>
    public static string? Write(string path, ReadOnlySpan<byte> content, bool overwrite)
    {
        var folder = Path.GetDirectoryName(path)!;
        var temporary = Path.Combine(folder, $".patternforge-{Run}-{Interlocked.Increment(ref _made)}.tmp");
        try
        {
            try
            {
                Create(temporary, content);
            }
            catch (Exception e) when (e is DirectoryNotFoundException or FileNotFoundException)
            {
                // Nearly always the folder is there: it is made only when it proves missing. Where another file's turn made it meanwhile, the file is said to be missing.
                Directory.CreateDirectory(folder);
                Create(temporary, content);
            }

            File.Move(temporary, path, overwrite);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Remove(temporary);
            return Directory.Exists(path) ? "a folder of that name is there" : InputFiles.ReasonOf(e);
        }
    }

    /// <summary>Writes a file again that was read before: it keeps its permissions, is on the disk before the old one goes, and is left alone where somebody else has changed it meanwhile.</summary>
    /// <param name="path">The absolute path.</param>
    /// <param name="content">All of it.</param>
    /// <param name="read">The text that was read from it.</param>
    /// <returns>Null, or in a few words why it could not be written; then nothing was changed.</returns>
    public static string? Replace(string path, ReadOnlySpan<byte> content, string read)
    {
        var temporary = Path.Combine(Path.GetDirectoryName(path)!, $".patternforge-{Run}-{Interlocked.Increment(ref _made)}.tmp");
        try
        {
            // Who may not write into a file may not replace it either.
            using (File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite))
            {
            }

            Create(temporary, content, flush: true);
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(temporary, File.GetUnixFileMode(path));
            }

            if (!string.Equals(InputFiles.TextOf(File.ReadAllBytes(path)), read, StringComparison.Ordinal))
            {
                Remove(temporary);
                return "it was changed while it was read";
            }

            File.Move(temporary, path, overwrite: true);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            Remove(temporary);
            return InputFiles.ReasonOf(e);
        }
    }

    private static void Create(string path, ReadOnlySpan<byte> content, bool flush = false)
    {
        using var file = File.OpenHandle(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        RandomAccess.Write(file, content, 0);
        if (flush)
        {
            RandomAccess.FlushToDisk(file);
        }
    }

    private static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It was never made, or the disk is gone: the reason is told by the one who asked.
        }
    }
}
