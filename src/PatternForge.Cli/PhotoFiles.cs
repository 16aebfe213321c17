
namespace PatternForge.Cli;

/// <summary>The photos of one pattern: read from its own folder alone, and given the address that a page needs.</summary>
/// <param name="folder">The folder that the pattern lies in.</param>
internal sealed class PhotoFiles(string folder)
{
    private const int LargestPhoto = 16 * 1024 * 1024;

    private readonly SortedSet<string> _remarks = new(StringComparer.Ordinal);

    /// <summary>What was wrong with photos, a sentence each.</summary>
    public IReadOnlyCollection<string> Remarks => _remarks;

    /// <summary>A <c>data:</c> address that holds the picture; null when the picture cannot be had.</summary>
    public string? Embedded(string photo)
    {
        if (PlaceOf(photo) is not { } place)
        {
            return null;
        }

        try
        {
            if (new FileInfo(place).Length > LargestPhoto)
            {
                _remarks.Add($"the photo `{photo}` is larger than {LargestPhoto / (1024 * 1024)} MB and is not in the page");
                return null;
            }

            var bytes = File.ReadAllBytes(place);
            if (KindOf(bytes) is not { } kind)
            {
                _remarks.Add($"the photo `{photo}` is no picture that pages show (JPEG, PNG, WebP, AVIF, GIF, SVG) and is not in the page");
                return null;
            }

            return $"data:{kind};base64,{Convert.ToBase64String(bytes)}";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _remarks.Add($"the photo `{photo}` cannot be read: {InputFiles.ReasonOf(e)}");
            return null;
        }
    }

    /// <summary>The address of the picture as seen from a folder; null when the picture cannot be had.</summary>
    public string? From(string place, string photo) =>
        PlaceOf(photo) is { } full
            ? string.Join('/', Path.GetRelativePath(place, full).Split(Path.DirectorySeparatorChar).Select(part => part is ".." ? part : Uri.EscapeDataString(part)))
            : null;

    // Never outside the pattern's folder, also not through a link.
    private string? PlaceOf(string photo)
    {
        if (photo.Contains(':', StringComparison.Ordinal) || InputFiles.FullPathOf(photo, folder) is not { } full)
        {
            _remarks.Add($"the photo `{photo}` is no file beside the pattern and is not in the page");
            return null;
        }

        try
        {
            if (!File.Exists(full))
            {
                _remarks.Add($"the photo `{photo}` is not there");
                return null;
            }

            var target = File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
            if (!IsInside(full) || !IsInside(target))
            {
                _remarks.Add($"the photo `{photo}` lies outside the pattern's folder and is not in the page");
                return null;
            }

            return full;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _remarks.Add($"the photo `{photo}` cannot be read: {InputFiles.ReasonOf(e)}");
            return null;
        }
    }

    private bool IsInside(string path)
    {
        var root = folder.EndsWith(Path.DirectorySeparatorChar) ? folder : folder + Path.DirectorySeparatorChar;
        return path.StartsWith(root, StringComparison.Ordinal);
    }

    // By the first bytes, as the formats' own standards give them: a name proves nothing.
    private static string? KindOf(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => "image/jpeg",
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => "image/png",
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => "image/gif",
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => "image/webp",
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'a', (byte)'v', (byte)'i', (byte)'f' or (byte)'s', ..] => "image/avif",
        [(byte)'<', ..] when bytes[..Math.Min(bytes.Length, 1024)].IndexOf("<svg"u8) >= 0 => "image/svg+xml",
        _ => null,
    };
}
