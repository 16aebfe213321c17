using PatternForge.Rendering.Documents;

namespace PatternForge.Cli.Photos;

/// <summary>The photos that a page names by a path: cleaned copies in a folder beside it, so that the release holds all that it shows.</summary>
/// <param name="photos">The photos of the pattern.</param>
/// <param name="folder">The folder of the page.</param>
/// <param name="name">The page's name without its extension.</param>
internal sealed class PhotoCopies(PhotoFiles photos, string folder, string name)
{
    private readonly Dictionary<string, ReleasedPicture?> _pictures = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.OrdinalIgnoreCase);
    private readonly SortedSet<string> _remarks = new(StringComparer.Ordinal);

    /// <summary>The copies, each by its path below the folder of the page.</summary>
    public IReadOnlyDictionary<string, byte[]> Files => _files;

    /// <summary>What keeps photos from being copied, a sentence each.</summary>
    public IReadOnlyCollection<string> Remarks => _remarks;

    /// <summary>A photo's copy as seen from the page; null when it cannot be had.</summary>
    public ReleasedPicture? Picture(string photo)
    {
        if (!_pictures.TryGetValue(photo, out var picture))
        {
            _pictures[photo] = picture = Copy(photo);
        }

        return picture;
    }

    private ReleasedPicture? Copy(string photo)
    {
        if (photos.Released(photo) is not { } released || photos.PlaceOf(photo) is not { } place)
        {
            return null;
        }

        var stem = Path.GetFileNameWithoutExtension(released.Name);
        var path = $"{name}.photos/{released.Name}";
        for (var i = 2; _files.ContainsKey(path); i++)
        {
            path = $"{name}.photos/{stem}-{i}{Path.GetExtension(released.Name)}";
        }

        if (string.Equals(Path.GetFullPath(path, folder), place, StringComparison.OrdinalIgnoreCase))
        {
            _remarks.Add($"the photo `{photo}` lies where its copy for the release would be written and is not in the page: choose another folder with --out");
            return null;
        }

        _files.Add(path, released.Picture.Bytes);
        return new(string.Join('/', path.Split('/').Select(Uri.EscapeDataString)), released.Picture.Width, released.Picture.Height);
    }
}
