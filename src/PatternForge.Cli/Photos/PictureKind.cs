namespace PatternForge.Cli.Photos;

/// <summary>What kind of picture a file is, by its first bytes, as the formats' own standards give them: a name proves nothing.</summary>
internal enum PictureKind
{
    /// <summary>No picture.</summary>
    None,

    /// <summary>JPEG (ITU-T T.81), PNG (ISO/IEC 15948), GIF89a, WebP (RFC 9649) or BMP: dots that the library reads.</summary>
    Dots,

    /// <summary>SVG: it stays as it is.</summary>
    Svg,

    /// <summary>AVIF, which the library does not read.</summary>
    Avif,

    /// <summary>HEIC, as telephones write it (ISO/IEC 23008-12).</summary>
    Heic,

    /// <summary>TIFF, and what cameras call raw.</summary>
    Tiff,
}

/// <summary>Tells the kinds of pictures apart.</summary>
internal static class PictureKinds
{
    /// <summary>The kind of a file.</summary>
    public static PictureKind Of(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] or [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] or [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => PictureKind.Dots,
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => PictureKind.Dots,
        [(byte)'B', (byte)'M', _, _, _, _, 0, 0, 0, 0, ..] => PictureKind.Dots,
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'a', (byte)'v', (byte)'i', (byte)'f' or (byte)'s', ..] => PictureKind.Avif,
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'h' or (byte)'m', (byte)'e' or (byte)'i', (byte)'i' or (byte)'v' or (byte)'f', _, ..] => PictureKind.Heic,
        [(byte)'I', (byte)'I', 42, 0, ..] or [(byte)'M', (byte)'M', 0, 42, ..] => PictureKind.Tiff,
        _ => IsSvg(bytes) ? PictureKind.Svg : PictureKind.None,
    };

    private static bool IsSvg(ReadOnlySpan<byte> bytes)
    {
        var text = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes;
        return text is [(byte)'<', ..] && text[..Math.Min(text.Length, 1024)].IndexOf("<svg"u8) >= 0;
    }
}
