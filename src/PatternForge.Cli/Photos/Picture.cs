namespace PatternForge.Cli.Photos;

/// <summary>What is known of a picture from its bytes.</summary>
/// <param name="Width">In pixels, as stored; null when not known.</param>
/// <param name="Height">In pixels, as stored; null when not known.</param>
/// <param name="HasLocation">True when it says where it was taken.</param>
internal sealed record PictureFacts(int? Width, int? Height, bool HasLocation);

/// <summary>A picture's bytes: what kind it is, what it says, and the same picture without what it says of its taking. Never throws, whatever the bytes.</summary>
internal static class Picture
{
    /// <summary>The media type, by the first bytes, as the formats' own standards give them: a name proves nothing. Null for what pages do not show.</summary>
    public static string? KindOf(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => "image/jpeg",
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => "image/png",
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => "image/gif",
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => "image/webp",
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'a', (byte)'v', (byte)'i', (byte)'f' or (byte)'s', ..] => "image/avif",
        [(byte)'<', ..] when bytes[..Math.Min(bytes.Length, 1024)].IndexOf("<svg"u8) >= 0 => "image/svg+xml",
        _ => null,
    };

    /// <summary>What a picture says.</summary>
    public static PictureFacts FactsOf(ReadOnlySpan<byte> bytes) => KindOf(bytes) switch
    {
        "image/jpeg" => JpegFile.FactsOf(bytes),
        "image/png" => PngFile.FactsOf(bytes),
        "image/webp" => WebpFile.FactsOf(bytes),
        "image/gif" when bytes.Length >= 10 => new(bytes[6] | (bytes[7] << 8), bytes[8] | (bytes[9] << 8), TellsPlace(bytes)),
        "image/avif" => AvifFacts(bytes),
        _ => new(null, null, TellsPlace(bytes)),
    };

    /// <summary>
    /// The same picture, not a pixel changed, without what cameras and programs write into it; how it is turned stays. Null where that cannot be taken
    /// out of this kind of picture, or the file is damaged.
    /// </summary>
    public static byte[]? Cleaned(ReadOnlySpan<byte> bytes) => KindOf(bytes) switch
    {
        "image/jpeg" => JpegFile.Cleaned(bytes),
        "image/png" => PngFile.Cleaned(bytes),
        "image/webp" => WebpFile.Cleaned(bytes),
        _ => bytes.IndexOf("Exif"u8) >= 0 || bytes.IndexOf("xmpmeta"u8) >= 0 || bytes.IndexOf("application/rdf+xml"u8) >= 0 || TellsPlace(bytes) ? null : bytes.ToArray(),
    };

    /// <summary>True when a packet of XMP (ISO 16684-1) among the bytes gives a place.</summary>
    public static bool TellsPlace(ReadOnlySpan<byte> bytes) => bytes.IndexOf("GPSLatitude"u8) >= 0 || bytes.IndexOf("GPSLongitude"u8) >= 0;

    // The image spatial extents property of ISO/IEC 23008-12: version and flags, then width and height.
    private static PictureFacts AvifFacts(ReadOnlySpan<byte> bytes)
    {
        var at = bytes.IndexOf("ispe"u8);
        var hasSize = at >= 0 && at + 16 <= bytes.Length;
        return new(hasSize ? Number(bytes[(at + 8)..]) : null, hasSize ? Number(bytes[(at + 12)..]) : null, TellsPlace(bytes));

        static int Number(ReadOnlySpan<byte> four) => (int)Math.Min(int.MaxValue, System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(four));
    }
}
