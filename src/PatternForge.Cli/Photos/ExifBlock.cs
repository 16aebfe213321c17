using System.Buffers.Binary;

namespace PatternForge.Cli.Photos;

/// <summary>
/// What a photo's Exif block says of its turn and of the place where it was taken (Exif 2.32, CIPA DC-008-2019; the block is a TIFF 6.0 file).
/// Never throws: what is out of bounds says nothing.
/// </summary>
/// <param name="Orientation">1 to 8; 1 is upright.</param>
/// <param name="HasLocation">True when a place on earth is given.</param>
internal readonly record struct ExifBlock(int Orientation, bool HasLocation)
{
    private const int OrientationTag = 0x0112;
    private const int GpsPointerTag = 0x8825;
    private const int GpsLatitude = 2;
    private const int GpsLongitude = 4;
    private const int MostEntries = 512;

    /// <summary>Nothing is said: upright, and no place.</summary>
    public static ExifBlock Nothing { get; } = new(1, false);

    /// <summary>Reads a block that begins with the TIFF byte order.</summary>
    public static ExifBlock Read(ReadOnlySpan<byte> tiff)
    {
        bool? big = tiff switch
        {
            [(byte)'M', (byte)'M', 0, 42, ..] => true,
            [(byte)'I', (byte)'I', 42, 0, ..] => false,
            _ => null,
        };
        if (big is not { } isBig || tiff.Length < 8)
        {
            return Nothing;
        }

        var (orientation, gps) = (1, 0u);
        var at = Number(tiff[4..], isBig);
        for (var i = 0; Entry(tiff, at, i, isBig) is var entry && !entry.IsEmpty; i++)
        {
            switch (Short(entry, isBig))
            {
                case OrientationTag:
                    orientation = Short(entry[8..], isBig) is >= 1 and <= 8 and var said ? said : 1;
                    break;
                case GpsPointerTag:
                    gps = Number(entry[8..], isBig);
                    break;
            }
        }

        var hasLocation = false;
        if (gps > 0)
        {
            for (var i = 0; Entry(tiff, gps, i, isBig) is var entry && !entry.IsEmpty; i++)
            {
                hasLocation |= Short(entry, isBig) is GpsLatitude or GpsLongitude;
            }
        }

        return new(orientation, hasLocation);
    }

    /// <summary>A block that says how the photo is turned and nothing else.</summary>
    public static byte[] Turned(int orientation) =>
    [
        (byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8, // byte order and the place of the first directory
        0, 1, // one entry:
        OrientationTag >> 8, OrientationTag & 0xFF, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, // orientation, one short
        0, 0, 0, 0, // no other directory
    ];

    // The twelve bytes of a directory's entry; empty past its last one.
    private static ReadOnlySpan<byte> Entry(ReadOnlySpan<byte> tiff, uint directory, int index, bool big)
    {
        if (directory > (uint)tiff.Length - 2)
        {
            return [];
        }

        var count = Math.Min(MostEntries, Short(tiff[(int)directory..], big));
        var start = (long)directory + 2 + (index * 12L);
        return index < count && start + 12 <= tiff.Length ? tiff.Slice((int)start, 12) : [];
    }

    private static int Short(ReadOnlySpan<byte> at, bool big) => big ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);

    private static uint Number(ReadOnlySpan<byte> at, bool big) => big ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);
}
