using System.Buffers.Binary;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using PatternForge.Cli.Photos;
using PatternForge.Core.Model;

namespace PatternForge.Cli.Tests;

/// <summary>Photos are looked at and cleaned; what is left in a release is read back with a reader of another make.</summary>
public class PhotoTests
{
    // A TIFF block with orientation 6 and a place: 54°30' N, 8°15' E (the open sea).
    private static byte[] Exif()
    {
        var block = new byte[8 + 2 + (3 * 12) + 4 + 8 + 2 + (4 * 12) + 4 + 48];
        "MM\0*"u8.CopyTo(block);
        BinaryPrimitives.WriteInt32BigEndian(block.AsSpan(4), 8);
        BinaryPrimitives.WriteInt16BigEndian(block.AsSpan(8), 3);
        Entry(block.AsSpan(10), 0x010F, 2, 8, 50); // the camera's maker
        Entry(block.AsSpan(22), 0x0112, 3, 1, 6 << 16);
        Entry(block.AsSpan(34), 0x8825, 4, 1, 58);
        "SeaCams\0"u8.CopyTo(block.AsSpan(50));
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

    private static readonly byte[] Frame = Segment(0xC0, 8, 3, 32, 4, 176, 1, 1, 0x11, 0); // 1200 x 800

    private static readonly byte[] Scan = [.. Segment(0xDA, 1, 1, 0, 0, 63, 0), 0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD0, 0x56];

    private static byte[] Jpeg(params byte[] more) =>
    [
        0xFF, 0xD8,
        .. Segment(0xE0, [.. "JFIF\0"u8, 1, 2, 0, 0, 1, 0, 1, 0, 0]),
        .. Segment(0xE1, [.. "Exif\0\0"u8, .. Exif()]),
        .. Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta exif:GPSLatitude='54,30N'/>"u8]),
        .. Segment(0xE2, [.. "ICC_PROFILE\0"u8, 1, 1, 7, 7]),
        .. Segment(0xED, [.. "Photoshop 3.0\0"u8]),
        .. Segment(0xFE, [.. "taken at home"u8]),
        .. Segment(0xDB, [0, .. new byte[64]]),
        .. Frame, .. Scan, .. more, 0xFF, 0xD9, .. "a second picture with GPSLatitude"u8,
    ];

    private static byte[] Chunk(string name, params byte[] body)
    {
        byte[] chunk = [0, 0, 0, 0, .. System.Text.Encoding.ASCII.GetBytes(name), .. body, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        return chunk;
    }

    private static byte[] Png() =>
    [
        0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", 0, 0, 4, 176, 0, 0, 3, 32, 8, 0, 0, 0, 0), .. Chunk("tEXt", [.. "Comment\0home"u8]), .. Chunk("eXIf", Exif()), .. Chunk("IDAT", 1, 2, 3), .. Chunk("IEND"),
    ];

    private static byte[] Webp()
    {
        byte[] Part(string name, byte[] body) => [.. System.Text.Encoding.ASCII.GetBytes(name), .. BitConverter.GetBytes(body.Length), .. body, .. new byte[body.Length & 1]];
        byte[] all = [.. "RIFF\0\0\0\0WEBP"u8, .. Part("VP8X", [0x0C, 0, 0, 0, 175, 4, 0, 31, 3, 0]), .. Part("VP8 ", [1, 2, 3]), .. Part("EXIF", Exif()), .. Part("XMP ", [.. "<x:xmpmeta/>"u8])];
        BinaryPrimitives.WriteInt32LittleEndian(all.AsSpan(4), all.Length - 8);
        return all;
    }

    public static TheoryData<string> Kinds => ["jpg", "png", "webp"];

    private static byte[] Of(string kind) => kind switch { "jpg" => Jpeg(), "png" => Png(), _ => Webp() };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_size_and_the_place_of_a_photo_are_seen(string kind) =>
        Assert.Equal(new PictureFacts(1200, 800, HasLocation: true), Picture.FactsOf(Of(kind)));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_cleaned_photo_says_nothing_of_its_taking_but_its_turn(string kind)
    {
        var before = ImageMetadataReader.ReadMetadata(new MemoryStream(Of(kind)));
        Assert.Contains(before, d => d is ExifIfd0Directory i && i.GetInt32(ExifDirectoryBase.TagOrientation) == 6 && i.GetString(ExifDirectoryBase.TagMake) == "SeaCams");
        Assert.Equal(54.5, before.OfType<GpsDirectory>().Single().GetGeoLocation()!.Latitude, 5);

        var cleaned = Picture.Cleaned(Of(kind))!;
        var after = ImageMetadataReader.ReadMetadata(new MemoryStream(cleaned));
        Assert.Empty(after.OfType<GpsDirectory>());
        var exif = Assert.Single(after.OfType<ExifIfd0Directory>());
        Assert.Equal((6, 1), (exif.GetInt32(ExifDirectoryBase.TagOrientation), exif.TagCount));
        Assert.DoesNotContain(after, d => d.Name.Contains("XMP", StringComparison.Ordinal) || d.Name.Contains("Comment", StringComparison.Ordinal) || d.Name.Contains("Photoshop", StringComparison.Ordinal));
        Assert.DoesNotContain(after, d => d.HasError && d is not MetadataExtractor.Formats.Icc.IccDirectory);
        Assert.Equal(new PictureFacts(1200, 800, HasLocation: false), Picture.FactsOf(cleaned));
        Assert.Equal(cleaned, Picture.Cleaned(cleaned));
        foreach (var word in new[] { "GPSLatitude", "SeaCams", "home", "xmpmeta", "second picture" })
        {
            Assert.DoesNotContain(word, System.Text.Encoding.Latin1.GetString(cleaned), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Not_a_pixel_and_no_colour_is_changed()
    {
        var cleaned = Picture.Cleaned(Jpeg())!;
        Assert.True(cleaned.AsSpan().IndexOf(Frame) > 0);
        Assert.Equal([.. Scan, 0xFF, 0xD9], cleaned[^(Scan.Length + 2)..]);
        Assert.True(cleaned.AsSpan().IndexOf("ICC_PROFILE"u8) > 0);
        Assert.Equal(6, cleaned.AsSpan().IndexOf("JFIF"u8));
    }

    [Fact]
    public void Damaged_photos_are_never_a_fault_and_never_keep_their_place()
    {
        var random = new Random(3);
        for (var i = 0; i < 3000; i++)
        {
            var bytes = Of(i % 3 == 0 ? "jpg" : i % 3 == 1 ? "png" : "webp");
            for (var n = random.Next(1, 6); n > 0; n--)
            {
                bytes[random.Next(4, bytes.Length)] = (byte)random.Next(256);
            }

            bytes = bytes[..random.Next(1, bytes.Length + 1)];
            Picture.FactsOf(bytes);
            if (Picture.Cleaned(bytes) is { } cleaned)
            {
                Assert.False(Picture.FactsOf(cleaned).HasLocation);
            }
        }
    }

    [Theory]
    [InlineData("GIF89a\u0010\0\u0020\0", 16, 32)]
    public void The_size_of_a_gif_is_seen(string text, int width, int height) =>
        Assert.Equal(new PictureFacts(width, height, false), Picture.FactsOf(System.Text.Encoding.Latin1.GetBytes(text)));

    [Fact]
    public void Lint_says_that_a_photo_tells_its_place_and_no_file_of_the_release_does()
    {
        using var folder = new TemporaryFolder();
        folder.Write("photos/front.jpg", Jpeg());
        folder.Write("photos/small.png", [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", 0, 0, 1, 0, 0, 0, 1, 0, 8, 0, 0, 0, 0), .. Chunk("IEND")]);
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\nphotos:\n  - file: photos/front.jpg\n    alt: From the front\n  - file: photos/small.png\n  - file: gone.jpg\n    alt: Gone\n---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit.\n\nBO all sts.\n");
        var codes = Outcome.Of(folder, "lint", "hat.pattern.md", "--format", "json").Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray()
            .Select(f => (f.GetProperty("code").GetString(), f.GetProperty("severity").GetString(), f.GetProperty("line").GetInt32())).Where(f => f.Item1!.StartsWith("PF9", StringComparison.Ordinal));
        Assert.Equal([("PF908", "warning", 5), ("PF906", "warning", 7), ("PF907", "warning", 7), ("PF905", "warning", 8)], codes);

        var built = Outcome.Of(folder, "build", "hat.pattern.md");
        Assert.Equal((0, "out/hat.html\nout/hat.md\nout/hat.photos/front.jpg\nout/hat.photos/small.png\n"), (built.Code, built.Out));
        Assert.Contains("![From the front](hat.photos/front.jpg)", folder.Read("out/hat.md"), StringComparison.Ordinal);
        var page = folder.Read("out/hat.html");
        const string Begin = "data:image/jpeg;base64,";
        var start = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        byte[][] released = [Convert.FromBase64String(page[start..page.IndexOf('"', start)]), File.ReadAllBytes(folder.At("out/hat.photos/front.jpg"))];
        Assert.All(released, bytes =>
        {
            var said = ImageMetadataReader.ReadMetadata(new MemoryStream(bytes));
            Assert.Empty(said.OfType<GpsDirectory>());
            Assert.Equal(6, said.OfType<ExifIfd0Directory>().Single().GetInt32(ExifDirectoryBase.TagOrientation));
        });
        Assert.Equal(Jpeg(), File.ReadAllBytes(folder.At("photos/front.jpg")));
    }

    [Fact]
    public void A_picture_of_a_kind_that_cannot_be_cleaned_stays_out_of_the_release()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.avif", [0, 0, 0, 24, .. "ftypavif....Exif"u8]);
        folder.Write("b.avif", [0, 0, 0, 24, .. "ftypavif....ispe\0\0\0\0\0\0\u0004\0\0\0\u0003\0"u8]);
        var photos = new PhotoFiles(folder.Path);
        Assert.Null(photos.Embedded("a.avif"));
        Assert.Contains("cannot be taken out", Assert.Single(photos.Remarks), StringComparison.Ordinal);
        Assert.StartsWith("data:image/avif;base64,", photos.Embedded("b.avif"), StringComparison.Ordinal);
        Assert.Equal((PhotoState.There, 1024, 768), (photos.Look("b.avif").State, photos.Look("b.avif").Width, photos.Look("b.avif").Height));
    }

    [Fact]
    public void Two_photos_of_one_name_get_copies_of_their_own_and_a_source_is_never_written_over()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a/x.png", Png());
        folder.Write("b/x.png", Png());
        folder.Write("hat.photos/y.png", Png());
        var copies = new PhotoCopies(new PhotoFiles(folder.Path), folder.Path, "hat");
        Assert.Equal(("hat.photos/x.png", "hat.photos/x-2.png", "hat.photos/x.png"), (copies.Address("a/x.png"), copies.Address("b/x.png"), copies.Address("a/x.png")));
        Assert.Null(copies.Address("hat.photos/y.png"));
        Assert.Contains("lies where its copy for the release would be written", Assert.Single(copies.Remarks), StringComparison.Ordinal);
        Assert.Equal(2, copies.Files.Count);
    }
}
