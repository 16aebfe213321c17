using PatternForge.Core.Model;

namespace PatternForge.Cli.Photos;

/// <summary>A photo as it goes into a release: without what cameras write into it.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Kind">Its media type.</param>
/// <param name="Bytes">The cleaned picture.</param>
internal sealed record ReleasedPhoto(string Name, string Kind, byte[] Bytes);

/// <summary>The photos of one pattern: read from its own folder alone, looked at for the checks, and given the address that a page needs.</summary>
/// <param name="folder">The folder that the pattern lies in.</param>
internal sealed class PhotoFiles(string folder)
{
    private const int LargestPhoto = 16 * 1024 * 1024;

    private readonly SortedSet<string> _remarks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ReleasedPhoto?> _released = new(StringComparer.Ordinal);

    /// <summary>What keeps photos out of the release and is no finding of the pattern, a sentence each.</summary>
    public IReadOnlyCollection<string> Remarks => _remarks;

    /// <summary>What the checks need to know of a photo.</summary>
    public PhotoFacts Look(string photo)
    {
        try
        {
            if (PlaceOf(photo, out var state) is not { } place)
            {
                return new(state);
            }

            using var file = File.OpenRead(place);
            var bytes = new byte[(int)Math.Min(file.Length, LargestPhoto)];
            file.ReadExactly(bytes);
            return Picture.KindOf(bytes) is null || Picture.FactsOf(bytes) is not { } facts
                ? new(PhotoState.NoPicture)
                : new(PhotoState.There) { Width = facts.Width, Height = facts.Height, HasLocation = facts.HasLocation };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(PhotoState.Unreadable) { Reason = InputFiles.ReasonOf(e) };
        }
    }

    /// <summary>A <c>data:</c> address that holds the cleaned picture; null when the picture cannot be had.</summary>
    public string? Embedded(string photo) => Released(photo) is { } released ? $"data:{released.Kind};base64,{Convert.ToBase64String(released.Bytes)}" : null;

    /// <summary>The cleaned picture; null when it cannot be had, which is a finding of the pattern or a remark.</summary>
    public ReleasedPhoto? Released(string photo)
    {
        if (!_released.TryGetValue(photo, out var released))
        {
            _released[photo] = released = Read(photo);
        }

        return released;
    }

    /// <summary>Where a photo lies; null when it cannot be had.</summary>
    public string? PlaceOf(string photo)
    {
        try
        {
            return PlaceOf(photo, out _);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private ReleasedPhoto? Read(string photo)
    {
        try
        {
            if (PlaceOf(photo, out _) is not { } place)
            {
                return null;
            }

            if (new FileInfo(place).Length > LargestPhoto)
            {
                _remarks.Add($"the photo `{photo}` is larger than {LargestPhoto / (1024 * 1024)} MB and is not in the page");
                return null;
            }

            var bytes = File.ReadAllBytes(place);
            if (Picture.KindOf(bytes) is not { } kind)
            {
                return null;
            }

            if (Picture.Cleaned(bytes) is not { } cleaned)
            {
                _remarks.Add($"the photo `{photo}` holds data on its taking that cannot be taken out, or is damaged, and is not in the page; save it again as JPEG or PNG");
                return null;
            }

            return new(Path.GetFileName(place), kind, cleaned);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // Never outside the pattern's folder, also not through a link.
    private string? PlaceOf(string photo, out PhotoState state)
    {
        state = PhotoState.Outside;
        if (photo.Contains(':', StringComparison.Ordinal) || InputFiles.FullPathOf(photo, folder) is not { } full || !IsInside(full))
        {
            return null;
        }

        if (!File.Exists(full))
        {
            state = PhotoState.Missing;
            return null;
        }

        var target = File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
        if (!IsInside(target))
        {
            return null;
        }

        state = PhotoState.There;
        return full;
    }

    private bool IsInside(string path)
    {
        var root = folder.EndsWith(Path.DirectorySeparatorChar) ? folder : folder + Path.DirectorySeparatorChar;
        return path.StartsWith(root, StringComparison.Ordinal);
    }
}
