using System.Buffers.Binary;
using System.Collections.Frozen;

namespace PatternForge.Cli.Photos;

/// <summary>The chunks of a WebP file (RFC 9649).</summary>
internal static class WebpFile
{
    private const int Header = 12;
    private const byte ExifFlag = 0x08;
    private const byte XmpFlag = 0x04;

    private static readonly FrozenSet<string> Kept = new[] { "VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP" }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>What the file says of itself.</summary>
    public static PictureFacts FactsOf(ReadOnlySpan<byte> file)
    {
        var (width, height, hasLocation) = ((int?)null, (int?)null, false);
        foreach (var (name, start, length) in Chunks(file, out _))
        {
            var body = file.Slice(start + 8, length);
            switch (name)
            {
                case "VP8X" when length >= 10:
                    (width, height) = (1 + (body[4] | (body[5] << 8) | (body[6] << 16)), 1 + (body[7] | (body[8] << 8) | (body[9] << 16)));
                    break;
                case "VP8L" when length >= 5 && width is null:
                    var bits = BinaryPrimitives.ReadUInt32LittleEndian(body[1..]);
                    (width, height) = ((int)(bits & 0x3FFF) + 1, (int)((bits >> 14) & 0x3FFF) + 1);
                    break;
                case "VP8 " when length >= 10 && width is null:
                    (width, height) = (BinaryPrimitives.ReadUInt16LittleEndian(body[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(body[8..]) & 0x3FFF);
                    break;
                case "EXIF":
                    hasLocation |= Exif(body).HasLocation;
                    break;
                case "XMP ":
                    hasLocation |= Picture.TellsPlace(body);
                    break;
            }
        }

        return new(width, height, hasLocation);
    }

    /// <summary>The file without Exif and XMP, but with its turn; null where its chunks do not follow each other as they should.</summary>
    public static byte[]? Cleaned(ReadOnlySpan<byte> file)
    {
        var chunks = Chunks(file, out var isSound);
        if (!isSound)
        {
            return null;
        }

        var kept = new MemoryStream(file.Length);
        kept.Write(file[..Header]);
        var turn = 1;
        foreach (var (name, start, length) in chunks)
        {
            if (name == "EXIF")
            {
                turn = Exif(file.Slice(start + 8, length)).Orientation;
            }
            else if (Kept.Contains(name))
            {
                kept.Write(file.Slice(start, Math.Min(8 + length + (length & 1), file.Length - start)));
            }
        }

        if (turn > 1)
        {
            var block = ExifBlock.Turned(turn);
            kept.Write([.. "EXIF"u8, (byte)block.Length, 0, 0, 0, .. block]);
        }

        var bytes = kept.ToArray();
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4), bytes.Length - 8);
        if (bytes.AsSpan(Header).StartsWith("VP8X"u8) && bytes.Length > Header + 8)
        {
            bytes[Header + 8] = (byte)((bytes[Header + 8] & ~(ExifFlag | XmpFlag)) | (turn > 1 ? ExifFlag : 0));
        }

        return bytes;
    }

    // Some programs write the name of JPEG's segment before the block.
    private static ExifBlock Exif(ReadOnlySpan<byte> body) => ExifBlock.Read(body.StartsWith("Exif\0\0"u8) ? body[6..] : body);

    private static List<(string Name, int Start, int Length)> Chunks(ReadOnlySpan<byte> file, out bool isSound)
    {
        var chunks = new List<(string Name, int Start, int Length)>();
        var said = file.Length >= Header ? BinaryPrimitives.ReadUInt32LittleEndian(file[4..]) + 8L : 0;
        var end = (int)Math.Min(file.Length, said);
        var at = Header;
        while (at + 8 <= end)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            if (length > end - at - 8)
            {
                break;
            }

            chunks.Add((System.Text.Encoding.Latin1.GetString(file.Slice(at, 4)), at, (int)length));
            at += 8 + (int)length + (int)(length & 1);
        }

        isSound = chunks.Count > 0 && at >= end;
        return chunks;
    }
}
