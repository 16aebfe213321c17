using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;

namespace PatternForge.Cli.Photos;

/// <summary>A photo as it goes into a release.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Picture">The copy.</param>
internal sealed record ReleasedPhoto(string Name, PictureCopy Picture);

/// <summary>The photos and the pictures of the text of one pattern: read from its own folder alone, looked at for the checks, and given the address that a page needs.</summary>
/// <param name="folder">The folder that the pattern lies in.</param>
internal sealed class PhotoFiles(string folder)
{
    private const int MostMegabytes = 64;

    private readonly SortedSet<string> _remarks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PhotoFacts> _looked = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ReleasedPhoto?> _released = new(StringComparer.Ordinal);

    /// <summary>What keeps photos out of the release and is no finding of the pattern, a sentence each.</summary>
    public IReadOnlyCollection<string> Remarks => _remarks;

    /// <summary>The photos that a release asked for, in order.</summary>
    public IEnumerable<string> Asked => _released.Keys.Order(StringComparer.Ordinal);

    /// <summary>A small copy for a shelf; null when it cannot be had, or is a drawing.</summary>
    public PictureCopy? Small(string photo) => Dots(photo) is { } bytes ? PictureCopy.Of(bytes, PictureCopy.ShelfSide) : null;

    /// <summary>What the checks need to know of a photo.</summary>
    public PhotoFacts Look(string photo)
    {
        if (!_looked.TryGetValue(photo, out var facts))
        {
            _looked[photo] = facts = Facts(photo);
        }

        return facts;
    }

    /// <summary>A <c>data:</c> address that holds the copy; null when the picture cannot be had.</summary>
    public ReleasedPicture? Embedded(string photo) => Released(photo)?.Picture is { } copy ? new($"data:{copy.Kind};base64,{Convert.ToBase64String(copy.Bytes)}", copy.Width, copy.Height) : null;

    /// <summary>The copy for a release; null when it cannot be had, which is a finding of the pattern or a remark.</summary>
    public ReleasedPhoto? Released(string photo)
    {
        if (!_released.TryGetValue(photo, out var released))
        {
            _released[photo] = released = Read(photo);
        }

        return released;
    }

    /// <summary>A photo as shops take them, whole or as a square; null when it cannot be had, or is a drawing.</summary>
    public PictureCopy? ForShop(string photo, bool square) => Dots(photo) is { } bytes ? PictureCopy.ForShop(bytes, square) : null;

    private byte[]? Dots(string photo)
    {
        try
        {
            return PlaceOf(photo, out _) is { } place && new FileInfo(place).Length <= MostMegabytes * 1_000_000L && File.ReadAllBytes(place) is var bytes
                && PictureKinds.Of(bytes) is PictureKind.Dots && PictureLibrary.Problem is null ? bytes : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
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

    private PhotoFacts Facts(string photo)
    {
        try
        {
            if (PlaceOf(photo, out var state) is not { } place)
            {
                return new(state);
            }

            if (new FileInfo(place).Length is var length && length > MostMegabytes * 1_000_000L)
            {
                return new(PhotoState.TooLarge) { Reason = $"it has {length / 1_000_000} MB, and {MostMegabytes} are the most" };
            }

            var bytes = File.ReadAllBytes(place);
            var kind = PictureKinds.Of(bytes);
            return kind switch
            {
                PictureKind.None => new(PhotoState.NoPicture),
                PictureKind.Dots => FactsOfDots(bytes),
                PictureKind.Svg => new(PhotoState.There) { HasLocation = PlaceOfTaking.IsToldBy(bytes) },
                _ => new(PhotoState.OtherKind) { Reason = kind.ToString().ToUpperInvariant(), HasLocation = PlaceOfTaking.IsToldBy(bytes) },
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(PhotoState.Unreadable) { Reason = InputFiles.ReasonOf(e) };
        }
    }

    private static PhotoFacts FactsOfDots(byte[] bytes)
    {
        var hasLocation = PlaceOfTaking.IsToldBy(bytes);
        if (PictureLibrary.Problem is { } problem)
        {
            return new(PhotoState.Unreadable) { Reason = problem, HasLocation = hasLocation };
        }

        if (PictureCopy.SizeOf(bytes) is not var (width, height))
        {
            return new(PhotoState.Damaged) { HasLocation = hasLocation };
        }

        if ((long)width * height > PictureCopy.MostPixels)
        {
            return new(PhotoState.TooLarge) { Reason = $"it has {width} x {height} pixels, and {PictureCopy.MostPixels / 1_000_000} million are the most", HasLocation = hasLocation };
        }

        return PictureCopy.IsWhole(bytes) ? new(PhotoState.There) { Width = width, Height = height, HasLocation = hasLocation } : new(PhotoState.Damaged) { HasLocation = hasLocation };
    }

    private ReleasedPhoto? Read(string photo)
    {
        try
        {
            if (PlaceOf(photo, out _) is not { } place || new FileInfo(place).Length > MostMegabytes * 1_000_000L)
            {
                return null;
            }

            var bytes = File.ReadAllBytes(place);
            switch (PictureKinds.Of(bytes))
            {
                case PictureKind.Dots:
                    return PictureLibrary.Problem is null && PictureCopy.Of(bytes) is { } copy ? new(NameOf(place, copy.Extension), copy) : null;
                case PictureKind.Svg when SvgPicture.Of(bytes) is { } drawing:
                    return new(NameOf(place, drawing.Extension), drawing);
                case PictureKind.Svg:
                    _remarks.Add($"the drawing `{photo}` holds data of the program that made it, or a picture of its own, and is not in the page; save it as plain SVG, or as PNG");
                    return null;
                default:
                    return null;
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // The name that it has, with an end that tells what it is now.
    private static string NameOf(string place, string extension)
    {
        var end = Path.GetExtension(place);
        var isTold = extension.Equals(end, StringComparison.OrdinalIgnoreCase) || (extension == ".jpg" && end.Equals(".jpeg", StringComparison.OrdinalIgnoreCase));
        return isTold ? Path.GetFileName(place) : Path.GetFileNameWithoutExtension(place) + extension;
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
