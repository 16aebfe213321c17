namespace PatternForge.Cli;

/// <summary>Writes files so that nobody ever sees half of one: into a temporary file beside the place, then moved there in one step.</summary>
internal static class OutputFiles
{
    /// <summary>Writes a file and the folders that it needs.</summary>
    /// <param name="path">The absolute path.</param>
    /// <param name="content">All of it.</param>
    /// <param name="overwrite">True to replace a file that is there.</param>
    /// <returns>Null, or in a few words why it could not be written; then nothing was changed.</returns>
    public static string? Write(string path, ReadOnlySpan<byte> content, bool overwrite)
    {
        var folder = Path.GetDirectoryName(path)!;
        var temporary = Path.Combine(folder, $".patternforge-{Guid.NewGuid():N}.tmp");
        try
        {
            Directory.CreateDirectory(folder);
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                stream.Write(content);
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
