using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using PatternForge.Cli.Photos;
using SkiaSharp;

namespace PatternForge.Cli.Tests;

/// <summary>The copies of pictures for a release; what is left in them is read back with a reader of another make.</summary>
public class PictureCopyTests
{
    public static TheoryData<string> Kinds => ["jpg", "png", "webp"];

    private static byte[] Of(string kind, int width, int height) => kind switch
    {
        "jpg" => TakenPicture.Jpeg(width, height),
        "png" => TakenPicture.Png(width, height),
        _ => TakenPicture.Webp(width, height),
    };

    private static void LooksUpright(PictureCopy copy, int width, int height)
    {
        using var seen = SKBitmap.Decode(copy.Bytes);
        Assert.Equal((width, height, width, height), (copy.Width, copy.Height, seen.Width, seen.Height));
        foreach (var (x, y) in new[] { (width / 4, height / 4), (width * 3 / 4, height / 4), (width / 4, height * 3 / 4), (width * 3 / 4, height * 3 / 4) })
        {
            var (stands, should) = (seen.GetPixel(x, y), TakenPicture.Seen(x, y, width, height));
            Assert.True(Math.Abs(stands.Red - should.Red) + Math.Abs(stands.Green - should.Green) + Math.Abs(stands.Blue - should.Blue) < 48, $"{stands} stands at {x}, {y} in place of {should}");
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void A_copy_stands_upright_however_the_camera_was_held(int orientation)
    {
        LooksUpright(PictureCopy.Of(TakenPicture.Jpeg(64, 48, orientation))!, 64, 48);
        LooksUpright(PictureCopy.Of(TakenPicture.Jpeg(320, 240, orientation), longestSide: 80)!, 80, 60);
        LooksUpright(PictureCopy.Of(TakenPicture.Webp(64, 48, orientation))!, 64, 48);
        Assert.Equal((64, 48), PictureCopy.SizeOf(TakenPicture.Jpeg(64, 48, orientation)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(8)]
    public void A_photo_for_a_shop_stands_upright_and_its_square_is_the_middle(int orientation)
    {
        LooksUpright(PictureCopy.ForShop(TakenPicture.Jpeg(2400, 1200, orientation), square: false)!, 2000, 1000);
        LooksUpright(PictureCopy.ForShop(TakenPicture.Jpeg(60, 40, orientation), square: false)!, 60, 40);
        var square = PictureCopy.ForShop(TakenPicture.Jpeg(2400, 1200, orientation), square: true)!;
        LooksUpright(square, 1000, 1000);
        Assert.Equal(".jpg", square.Extension);
        Assert.Equal((40, 40), (PictureCopy.ForShop(TakenPicture.Png(60, 40), square: true)!.Width, PictureCopy.ForShop(TakenPicture.Png(60, 40), square: true)!.Height));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_copy_holds_dots_and_nothing_else(string kind)
    {
        var file = Of(kind, 120, 90);
        var before = ImageMetadataReader.ReadMetadata(new MemoryStream(file));
        Assert.Contains(before, d => d is ExifIfd0Directory i && i.GetString(ExifDirectoryBase.TagMake) == TakenPicture.Maker);
        Assert.Equal(54.5, before.OfType<GpsDirectory>().Single().GetGeoLocation()!.Latitude, 5);
        Assert.True(PlaceOfTaking.IsToldBy(file));

        var copy = PictureCopy.Of(file)!;
        Assert.False(PlaceOfTaking.IsToldBy(copy.Bytes));
        string[] ofTheFormatAlone = ["JPEG", "JFIF", "Huffman", "PNG-IHDR", "PNG-sBIT", "WebP", "File Type", "File"];
        Assert.All(ImageMetadataReader.ReadMetadata(new MemoryStream(copy.Bytes)), d => Assert.True(ofTheFormatAlone.Contains(d.Name), d.Name));
        var text = System.Text.Encoding.Latin1.GetString(copy.Bytes);
        Assert.All(["GPSLatitude", TakenPicture.Maker, "home", "xmpmeta", "second picture", "ICC_PROFILE", "iCCP", "Exif", "EXIF", "eXIf"], word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));
        Assert.Equal("." + kind, copy.Extension);
        LooksUpright(copy, 120, 90);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_large_picture_is_made_smaller_and_a_small_one_never_larger(string kind)
    {
        LooksUpright(PictureCopy.Of(Of(kind, 2000, 1500))!, 1600, 1200);
        LooksUpright(PictureCopy.Of(Of(kind, 40, 30))!, 40, 30);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_same_picture_gives_the_same_bytes(string kind) => Assert.Equal(PictureCopy.Of(Of(kind, 1700, 900))!.Bytes, PictureCopy.Of(Of(kind, 1700, 900))!.Bytes);

    [Fact]
    public void Colours_of_a_wider_space_become_those_of_sRGB()
    {
        using var space = SKColorSpace.CreateRgb(SKColorSpaceTransferFn.Srgb, SKColorSpaceXyz.AdobeRgb);
        using var wide = new SKBitmap(new SKImageInfo(8, 8, SKColorType.Rgba8888, SKAlphaType.Opaque, space));
        Enumerable.Repeat<byte[]>([120, 60, 60, 255], 64).SelectMany(p => p).ToArray().CopyTo(wide.GetPixelSpan());
        using var file = wide.Encode(SKEncodedImageFormat.Png, 100);
        Assert.Contains(ImageMetadataReader.ReadMetadata(new MemoryStream(file.ToArray())), d => d.Name.Contains("ICC", StringComparison.Ordinal));
        using var copy = SKBitmap.Decode(PictureCopy.Of(file.ToArray())!.Bytes);
        Assert.InRange(copy.GetPixel(4, 4).Red, 128, 150);
        Assert.InRange(copy.GetPixel(4, 4).Green, 52, 62);
    }

    [Fact]
    public void What_shows_through_stays_so()
    {
        using var bitmap = new SKBitmap(new SKImageInfo(2000, 4, SKColorType.Rgba8888, SKAlphaType.Unpremul));
        bitmap.Erase(new SKColor(200, 0, 0, 128));
        using var file = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        using var copy = SKBitmap.Decode(PictureCopy.Of(file.ToArray())!.Bytes);
        Assert.Equal((1600, (byte)128), (copy.Width, copy.GetPixel(800, 1).Alpha));
    }

    [Fact]
    public void Damaged_pictures_are_never_a_fault_and_never_keep_their_place()
    {
        var random = new Random(3);
        byte[][] files = [TakenPicture.Jpeg(48, 32, 6), TakenPicture.Png(48, 32), TakenPicture.Webp(48, 32)];
        var copies = 0;
        for (var i = 0; i < 900; i++)
        {
            var bytes = (byte[])files[i % files.Length].Clone();
            for (var n = random.Next(1, 6); n > 0; n--)
            {
                bytes[random.Next(4, bytes.Length)] = (byte)random.Next(256);
            }

            bytes = i % 4 == 0 ? bytes[..random.Next(1, bytes.Length + 1)] : bytes;
            PlaceOfTaking.IsToldBy(bytes);
            if (PictureCopy.SizeOf(bytes) is var (width, height) && (long)width * height < 4_000_000 && PictureCopy.Of(bytes) is { } copy)
            {
                Assert.False(PlaceOfTaking.IsToldBy(copy.Bytes));
                copies++;
            }
        }

        Assert.InRange(copies, 50, 850);
    }

    [Fact]
    public void A_picture_of_too_many_dots_is_not_decoded()
    {
        var file = TakenPicture.Of(SKEncodedImageFormat.Jpeg, 64, 48);
        var frame = file.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        (file[frame + 5], file[frame + 6], file[frame + 7], file[frame + 8]) = (0xEA, 0x60, 0xEA, 0x60); // 60000 x 60000
        Assert.Equal((60000, 60000), PictureCopy.SizeOf(file));
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(PictureCopy.Of(file));
        Assert.False(PictureCopy.IsWhole(file));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000);
    }
}
