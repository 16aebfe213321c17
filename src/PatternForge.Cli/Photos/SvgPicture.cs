namespace PatternForge.Cli.Photos;

/// <summary>A drawing that a pattern shows as a photo: it goes into a release as it is, unless programs have written into it what a release does not tell.</summary>
internal static class SvgPicture
{
    /// <summary>The drawing for a release; null where it holds data of other programs, or a picture of its own in which more may be hidden.</summary>
    public static PictureCopy? Of(byte[] file) => Tells(file) ? null : new(".svg", "image/svg+xml", null, null, file);

    private static bool Tells(ReadOnlySpan<byte> file) =>
        file.IndexOf("Exif"u8) >= 0 || file.IndexOf("xmpmeta"u8) >= 0 || file.IndexOf("<metadata"u8) >= 0 || file.IndexOf(";base64,"u8) >= 0 || PlaceOfTaking.IsToldBy(file);
}
