using System.Buffers.Binary;
using System.Text;
using SkiaSharp;

namespace PatternForge.Cli.Tests;

/// <summary>Pictures as cameras and programs leave them: four fields of colour, with data on the taking around them.</summary>
internal static class TakenPicture
{
    public const string Maker = "SeaCams";

    private static readonly SKColor[] Fields = [SKColors.Red, SKColors.Lime, SKColors.Blue, SKColors.Yellow];

    /// <summary>The colour of a place as it is seen: red and green above, blue and yellow below.</summary>
    public static SKColor Seen(int x, int y, int width, int height) => Fields[(y * 2 / height * 2) + (x * 2 / width)];

    /// <summary>
    /// A picture of so many dots as it is seen, stored as a camera held in another way stores it. Exif 2.32, 4.6.4, orientation: which sides of what is seen
    /// the first row and the first column are.
    /// </summary>
    public static byte[] Of(SKEncodedImageFormat format, int width, int height, int orientation = 1)
    {
        var (firstRow, firstColumn) = orientation switch
        {
            1 => ("top", "left"),
            2 => ("top", "right"),
            3 => ("bottom", "right"),
            4 => ("bottom", "left"),
            5 => ("left", "top"),
            6 => ("right", "top"),
            7 => ("right", "bottom"),
            _ => ("left", "bottom"),
        };
        var (wide, high) = orientation < 5 ? (width, height) : (height, width);
        var dots = new SKColor[wide * high];
        for (var row = 0; row < high; row++)
        {
            for (var column = 0; column < wide; column++)
            {
                var x = firstRow is "left" || firstColumn is "left" ? (orientation < 5 ? column : row) : width - 1 - (orientation < 5 ? column : row);
                var y = firstRow is "top" || firstColumn is "top" ? (orientation < 5 ? row : column) : height - 1 - (orientation < 5 ? row : column);
                dots[(row * wide) + column] = Seen(x, y, width, height);
            }
        }

        using var bitmap = new SKBitmap(new SKImageInfo(wide, high, SKColorType.Rgba8888, SKAlphaType.Opaque)) { Pixels = dots };
        using var data = bitmap.Encode(format, 100);
        return data.ToArray();
    }

    /// <summary>A JPEG with data of a camera: its turn, its maker, the place (54°30' N, 8°15' E, the open sea), and remarks; behind its end there is more.</summary>
    public static byte[] Jpeg(int width, int height, int orientation = 1) =>
        WithData(Of(SKEncodedImageFormat.Jpeg, width, height, orientation), orientation);

    public static byte[] WithData(byte[] jpeg, int orientation) =>
    [
        .. jpeg[..2],
        .. Segment(0xE1, [.. "Exif\0\0"u8, .. Exif(orientation)]),
        .. Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta exif:GPSLatitude='54,30N'/>"u8]),
        .. Segment(0xED, [.. "Photoshop 3.0\0"u8]),
        .. Segment(0xFE, [.. "taken at home"u8]),
        .. jpeg[2..],
        .. "a second picture with GPSLatitude"u8,
    ];

    /// <summary>The same for PNG.</summary>
    public static byte[] Png(int width, int height)
    {
        var plain = Of(SKEncodedImageFormat.Png, width, height);
        return [.. plain[..33], .. Chunk("tEXt", [.. "Comment\0taken at home"u8]), .. Chunk("eXIf", Exif(1)), .. plain[33..]];
    }

    /// <summary>The same for WebP.</summary>
    public static byte[] Webp(int width, int height, int orientation = 1)
    {
        byte[] Part(string name, byte[] body) => [.. Encoding.ASCII.GetBytes(name), .. BitConverter.GetBytes(body.Length), .. body, .. new byte[body.Length & 1]];
        var (wide, high) = orientation < 5 ? (width, height) : (height, width);
        byte[] all =
        [
            .. "RIFF\0\0\0\0WEBP"u8,
            .. Part("VP8X", [0x0C, 0, 0, 0, (byte)(wide - 1), (byte)((wide - 1) >> 8), 0, (byte)(high - 1), (byte)((high - 1) >> 8), 0]),
            .. Of(SKEncodedImageFormat.Webp, width, height, orientation)[12..],
            .. Part("EXIF", Exif(orientation)),
            .. Part("XMP ", [.. "<x:xmpmeta/>taken at home"u8]),
        ];
        BinaryPrimitives.WriteInt32LittleEndian(all.AsSpan(4), all.Length - 8);
        return all;
    }

    /// <summary>A TIFF block with a turn, a maker and a place.</summary>
    public static byte[] Exif(int orientation)
    {
        var block = new byte[8 + 2 + (3 * 12) + 4 + 8 + 2 + (4 * 12) + 4 + 48];
        "MM\0*"u8.CopyTo(block);
        BinaryPrimitives.WriteInt32BigEndian(block.AsSpan(4), 8);
        BinaryPrimitives.WriteInt16BigEndian(block.AsSpan(8), 3);
        Entry(block.AsSpan(10), 0x010F, 2, 8, 50);
        Entry(block.AsSpan(22), 0x0112, 3, 1, orientation << 16);
        Entry(block.AsSpan(34), 0x8825, 4, 1, 58);
        Encoding.ASCII.GetBytes(Maker + "\0").CopyTo(block.AsSpan(50));
        BinaryPrimitives.WriteInt16BigEndian(block.AsSpan(58), 4);
        Entry(block.AsSpan(60), 1, 2, 2, 'N' << 24);
        Entry(block.AsSpan(72), 2, 5, 3, 112);
        Entry(block.AsSpan(84), 3, 2, 2, 'E' << 24);
        Entry(block.AsSpan(96), 4, 5, 3, 136);
        foreach (var (at, number) in new[] { (112, 54), (120, 30), (128, 0), (136, 8), (144, 15), (152, 0) })
        {
            BinaryPrimitives.WriteInt32BigEndian(block.AsSpan(at), number);
            BinaryPrimitives.WriteInt32BigEndian(block.AsSpan(at + 4), 1);
        }

        return block;

        static void Entry(Span<byte> at, int tag, short type, int count, int value)
        {
            BinaryPrimitives.WriteUInt16BigEndian(at, (ushort)tag);
            BinaryPrimitives.WriteInt16BigEndian(at[2..], type);
            BinaryPrimitives.WriteInt32BigEndian(at[4..], count);
            BinaryPrimitives.WriteInt32BigEndian(at[8..], value);
        }
    }

    private static byte[] Segment(byte marker, params byte[] body) => [0xFF, marker, (byte)((body.Length + 2) >> 8), (byte)(body.Length + 2), .. body];

    private static byte[] Chunk(string name, params byte[] body)
    {
        byte[] named = [.. Encoding.ASCII.GetBytes(name), .. body];
        var chunk = new byte[named.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        named.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(4 + named.Length), Sum(named));
        return chunk;
    }

    // The cyclic redundancy code of PNG (ISO/IEC 15948, annex D).
    private static uint Sum(byte[] bytes)
    {
        var sum = 0xFFFFFFFFu;
        foreach (var one in bytes)
        {
            sum ^= one;
            for (var i = 0; i < 8; i++)
            {
                sum = (sum & 1) == 1 ? 0xEDB88320u ^ (sum >> 1) : sum >> 1;
            }
        }

        return ~sum;
    }
}
