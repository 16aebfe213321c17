using PatternForge.Cli.Photos;
using PatternForge.Core.Model;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Cli.Releases;

/// <summary>The picture by which a shelf shows a pattern: a small copy of its first photo, a photo that is a drawing as it is, else the first drawing of its rows.</summary>
/// <param name="Name">Its file, seen from the pattern's own folder of the release.</param>
/// <param name="Alt">What it shows, in words.</param>
/// <param name="Width">Its width in pixels; null for a drawing.</param>
/// <param name="Height">Its height in pixels; null for a drawing.</param>
internal sealed record ShelfPicture(string Name, string Alt, int? Width, int? Height)
{
    /// <summary>The copy to be written; null for a drawing, which is a file of the release anyway.</summary>
    public byte[]? Bytes { get; init; }

    /// <summary>The picture of a pattern; null where it has neither photo nor drawing.</summary>
    /// <param name="facts">Its header.</param>
    /// <param name="view">Its view.</param>
    /// <param name="name">What its release is called.</param>
    /// <param name="photos">Its photos.</param>
    /// <param name="copies">Their copies in the release.</param>
    public static ShelfPicture? Of(PatternFacts facts, PatternView view, string name, PhotoFiles photos, PhotoCopies copies)
    {
        foreach (var photo in facts.Photos)
        {
            if (photos.Small(photo.File) is { } copy)
            {
                return new($"{name}.shelf{copy.Extension}", photo.Alt?.Trim() ?? "", copy.Width, copy.Height) { Bytes = copy.Bytes };
            }

            if (copies.Picture(photo.File) is { } drawn)
            {
                return new(Uri.UnescapeDataString(drawn.Address), photo.Alt?.Trim() ?? "", drawn.Width, drawn.Height);
            }
        }

        return Renderer.Drawings(view) is [var drawing, ..] ? new(drawing.Name, $"Drawing of {view.Title}", null, null) : null;
    }
}
