using System.Buffers.Binary;
using System.Collections.Frozen;

namespace PatternForge.Cli.Photos;

/// <summary>The chunks of a PNG file (W3C Portable Network Graphics, third edition, 2025).</summary>
internal static class PngFile
{
    private const int Signature = 8;

    // What a decoder needs, and what colours, transparency and animation depend on. Texts, times, Exif and what nobody declared are left out.
    private static readonly FrozenSet<string> Kept =
        "IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI pHYs bKGD hIST sPLT acTL fcTL fdAT".Split(' ').ToFrozenSet(StringComparer.Ordinal);

    /// <summary>What the file says of itself.</summary>
    public static PictureFacts FactsOf(ReadOnlySpan<byte> file)
    {
        var (width, height, hasLocation) = ((int?)null, (int?)null, false);
        foreach (var (name, start, length) in Chunks(file, out _))
        {
            var body = file.Slice(start + 8, length);
            switch (name)
            {
                case "IHDR" when length >= 8:
                    (width, height) = ((int)Math.Min(int.MaxValue, BinaryPrimitives.ReadUInt32BigEndian(body)), (int)Math.Min(int.MaxValue, BinaryPrimitives.ReadUInt32BigEndian(body[4..])));
                    break;
                case "eXIf":
                    hasLocation |= ExifBlock.Read(body).HasLocation;
                    break;
                case "iTXt" or "tEXt":
                    hasLocation |= Picture.TellsPlace(body);
                    break;
            }
        }

        return new(width, height, hasLocation);
    }

    /// <summary>The file without texts, times and Exif, but with its turn; null where its chunks do not follow each other as they should.</summary>
    public static byte[]? Cleaned(ReadOnlySpan<byte> file)
    {
        var chunks = Chunks(file, out var isSound);
        if (!isSound)
        {
            return null;
        }

        var kept = new MemoryStream(file.Length);
        kept.Write(file[..Signature]);
        foreach (var (name, start, length) in chunks)
        {
            if (Kept.Contains(name))
            {
                kept.Write(file.Slice(start, length + 12));
            }

            if (name == "IHDR" && chunks.Find(c => c.Name == "eXIf") is { Name: not null } exif && ExifBlock.Read(file.Slice(exif.Start + 8, exif.Length)).Orientation is > 1 and var turn)
            {
                kept.Write(Chunk("eXIf"u8, ExifBlock.Turned(turn)));
            }
        }

        return kept.ToArray();
    }

    private static byte[] Chunk(ReadOnlySpan<byte> name, ReadOnlySpan<byte> body)
    {
        byte[] chunk = [0, 0, 0, 0, .. name, .. body, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(chunk.Length - 4), Checksum(chunk.AsSpan(4, name.Length + body.Length)));
        return chunk;
    }

    // The cyclic redundancy check of the standard's annex D.
    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var b in bytes)
        {
            sum ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) != 0 ? (sum >> 1) ^ 0xEDB88320 : sum >> 1;
            }
        }

        return ~sum;
    }

    private static List<(string Name, int Start, int Length)> Chunks(ReadOnlySpan<byte> file, out bool isSound)
    {
        var chunks = new List<(string Name, int Start, int Length)>();
        var at = Signature;
        isSound = false;
        while (!isSound && at + 12 <= file.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12)
            {
                break;
            }

            var name = System.Text.Encoding.Latin1.GetString(file.Slice(at + 4, 4));
            chunks.Add((name, at, (int)length));
            at += (int)length + 12;
            isSound = name == "IEND";
        }

        return chunks;
    }
}
