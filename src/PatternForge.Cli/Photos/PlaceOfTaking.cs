using System.Buffers.Binary;

namespace PatternForge.Cli.Photos;

/// <summary>
/// Whether a picture's file says where on earth it was taken: in an Exif block (Exif 2.32, CIPA DC-008-2019; the block is a TIFF 6.0 file) or in a packet
/// of XMP (ISO 16684-1), wherever in the file they stand. It only looks: what goes into a release is coded anew from the dots alone. The library that
/// decodes pictures does not hand out such blocks.
/// </summary>
internal static class PlaceOfTaking
{
    private const int GpsPointerTag = 0x8825;
    private const int GpsLatitude = 2;
    private const int GpsLongitude = 4;
    private const int MostEntries = 512;
    private const int MostBlocks = 64;

    /// <summary>True when the file gives a place. Never throws: what is out of bounds says nothing.</summary>
    public static bool IsToldBy(ReadOnlySpan<byte> file) =>
        file.IndexOf("GPSLatitude"u8) >= 0 || file.IndexOf("GPSLongitude"u8) >= 0 || IsToldByBlock(file, "MM\0*"u8, isBig: true) || IsToldByBlock(file, "II*\0"u8, isBig: false);

    // Blocks follow closely on the name that their container gives them: "Exif" in JPEG, "eXIf" in PNG, "EXIF" in WebP.
    private static bool IsToldByBlock(ReadOnlySpan<byte> file, ReadOnlySpan<byte> begin, bool isBig)
    {
        var (from, left) = (0, MostBlocks);
        while (left > 0 && file[from..].IndexOf(begin) is >= 0 and var found)
        {
            var at = from + found;
            from = at + begin.Length;
            if (IsNamed(file[Math.Max(0, at - 16)..at]))
            {
                left--;
                if (HasPlace(file[at..], isBig))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool IsNamed(ReadOnlySpan<byte> before) => before.IndexOf("Exif"u8) >= 0 || before.IndexOf("eXIf"u8) >= 0 || before.IndexOf("EXIF"u8) >= 0;

    private static bool HasPlace(ReadOnlySpan<byte> tiff, bool isBig)
    {
        if (tiff.Length < 8)
        {
            return false;
        }

        var first = Number(tiff[4..], isBig);
        for (var i = 0; Entry(tiff, first, i, isBig) is var entry && !entry.IsEmpty; i++)
        {
            if (Short(entry, isBig) == GpsPointerTag && Number(entry[8..], isBig) is > 0 and var gps)
            {
                for (var j = 0; Entry(tiff, gps, j, isBig) is var said && !said.IsEmpty; j++)
                {
                    if (Short(said, isBig) is GpsLatitude or GpsLongitude)
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    // The twelve bytes of a directory's entry; empty past its last one.
    private static ReadOnlySpan<byte> Entry(ReadOnlySpan<byte> tiff, uint directory, int index, bool isBig)
    {
        if (directory > (uint)tiff.Length - 2)
        {
            return [];
        }

        var count = Math.Min(MostEntries, Short(tiff[(int)directory..], isBig));
        var start = (long)directory + 2 + (index * 12L);
        return index < count && start + 12 <= tiff.Length ? tiff.Slice((int)start, 12) : [];
    }

    private static int Short(ReadOnlySpan<byte> at, bool isBig) => isBig ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);

    private static uint Number(ReadOnlySpan<byte> at, bool isBig) => isBig ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);
}
