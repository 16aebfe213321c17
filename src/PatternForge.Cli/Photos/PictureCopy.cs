using SkiaSharp;

namespace PatternForge.Cli.Photos;

/// <summary>A copy of a picture for a release: dots and nothing else.</summary>
/// <param name="Extension">The end of its file's name, with the dot.</param>
/// <param name="Kind">Its media type.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Bytes">The file.</param>
internal sealed record PictureCopy(string Extension, string Kind, int? Width, int? Height, byte[] Bytes)
{
    /// <summary>The longest side of a copy for a page, in pixels: what a column of 800 pixels shows on a screen of two dots a pixel, and 13.5 cm in print at 300 dots to the inch.</summary>
    public const int LongestSide = 1600;

    /// <summary>The longest side of a photo for a shop, in pixels: enough to be looked at closely on any screen.</summary>
    public const int ShopSide = 2000;

    /// <summary>The longest side of a photo on a shelf, in pixels: a card of 320 pixels on a screen of two dots a pixel.</summary>
    public const int ShelfSide = 640;

    /// <summary>The side of the square that shops show in their lists, in pixels.</summary>
    public const int SquareSide = 1000;

    /// <summary>A picture of more pixels is never decoded: four bytes each, they would take more than 256 MB.</summary>
    public const long MostPixels = 64_000_000;

    // Of pictures larger than this, one at a time is decoded, however many patterns are built side by side.
    private const long LargePixels = 16_000_000;
    private const int JpegQuality = 88;
    private const float WebpQuality = 88;

    private static readonly Lock OneLarge = new();

    /// <summary>What a file's opening says of a picture: its size as it is seen, turned upright. Null when the library finds no picture there.</summary>
    public static (int Width, int Height)? SizeOf(byte[] file)
    {
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        return codec is null ? null : Upright(codec.Info.Width, codec.Info.Height, codec.EncodedOrigin);
    }

    /// <summary>True when all of a picture can be read. It must have no more pixels than <see cref="MostPixels"/>.</summary>
    public static bool IsWhole(byte[] file) => Decoded(file, 1, _ => { });

    /// <summary>
    /// The picture turned upright, made smaller where its longest side is longer than allowed (never larger), in the colours of sRGB (IEC 61966-2-1), and coded anew:
    /// JPEG and WebP as they were, all else as PNG. Null when it cannot be decoded whole, or has more pixels than <see cref="MostPixels"/>.
    /// </summary>
    public static PictureCopy? Of(byte[] file, int longestSide = LongestSide)
    {
        PictureCopy? copy = null;
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        return codec is not null && Decode(codec, longestSide, bitmap => copy = Coded(bitmap, codec, longestSide)) ? copy : null;
    }

    /// <summary>
    /// The picture for a shop: like <see cref="Of"/>, but always JPEG, which every shop takes, with white where it was transparent. As a square it is the middle of the picture, as much as there is.
    /// Null when it cannot be decoded whole.
    /// </summary>
    public static PictureCopy? ForShop(byte[] file, bool square)
    {
        PictureCopy? copy = null;
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec is null)
        {
            return null;
        }

        // The shorter side makes the square, so that more of the picture is wanted.
        var (least, most) = (Math.Max(1, Math.Min(codec.Info.Width, codec.Info.Height)), Math.Max(codec.Info.Width, codec.Info.Height));
        var decoded = square ? (int)Math.Min(int.MaxValue, (long)SquareSide * most / least) : ShopSide;
        return Decode(codec, decoded, bitmap => copy = square ? Square(bitmap, codec) : Whole(bitmap, codec)) ? copy : null;

        static PictureCopy? Whole(SKBitmap bitmap, SKCodec codec)
        {
            var (width, height) = Upright(codec.Info.Width, codec.Info.Height, codec.EncodedOrigin);
            var scale = Math.Min(1.0, (double)ShopSide / Math.Max(width, height));
            return Redrawn(bitmap, codec, Math.Max(1, (int)Math.Round(width * scale)), Math.Max(1, (int)Math.Round(height * scale)));
        }

        static PictureCopy? Square(SKBitmap bitmap, SKCodec codec)
        {
            var side = Math.Min(SquareSide, Math.Min(codec.Info.Width, codec.Info.Height));
            return Redrawn(bitmap, codec, side, side);
        }
    }

    // Drawn anew on white, so that it fills the size: what does not fit its shape is left out on both sides alike.
    private static PictureCopy? Redrawn(SKBitmap decoded, SKCodec codec, int width, int height)
    {
        var (seenWidth, seenHeight) = Upright(decoded.Width, decoded.Height, codec.EncodedOrigin);
        using var drawn = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque, decoded.ColorSpace));
        using var canvas = new SKCanvas(drawn);
        canvas.Clear(SKColors.White);
        var scale = Math.Max((float)width / seenWidth, (float)height / seenHeight);
        canvas.Translate((width - (seenWidth * scale)) / 2, (height - (seenHeight * scale)) / 2);
        canvas.Scale(scale);
        canvas.Concat(Turn(codec.EncodedOrigin, seenWidth, seenHeight));
        decoded.SetImmutable();
        using var image = SKImage.FromBitmap(decoded);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        return Coded(drawn, SKEncodedImageFormat.Jpeg);
    }

    private static bool Decoded(byte[] file, int longestSide, Action<SKBitmap> use)
    {
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        return codec is not null && Decode(codec, longestSide, use);
    }

    // Decodes to at least the size that is wanted; JPEG and WebP can be decoded smaller, which costs less memory.
    private static bool Decode(SKCodec codec, int longestSide, Action<SKBitmap> use)
    {
        var info = codec.Info;
        if (info.Width <= 0 || info.Height <= 0 || (long)info.Width * info.Height > MostPixels)
        {
            return false;
        }

        var eighths = Math.Clamp((int)Math.Ceiling(8.0 * longestSide / Math.Max(info.Width, info.Height)), 1, 8);
        var size = eighths < 8 ? codec.GetScaledDimensions(eighths / 8f) : info.Size;
        if ((long)size.Width * size.Height <= LargePixels)
        {
            return Read();
        }

        lock (OneLarge)
        {
            return Read();
        }

        bool Read()
        {
            var alpha = info.AlphaType == SKAlphaType.Opaque ? SKAlphaType.Opaque : SKAlphaType.Premul;
            using var colours = SKColorSpace.CreateSrgb();
            using var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, alpha, colours));
            if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) != SKCodecResult.Success)
            {
                return false;
            }

            use(bitmap);
            return true;
        }
    }

    private static PictureCopy? Coded(SKBitmap decoded, SKCodec codec, int longestSide)
    {
        var origin = codec.EncodedOrigin;
        var (whole, tall) = Upright(codec.Info.Width, codec.Info.Height, origin);
        var scale = Math.Min(1.0, (double)longestSide / Math.Max(whole, tall));
        var (width, height) = (Math.Max(1, (int)Math.Round(whole * scale)), Math.Max(1, (int)Math.Round(tall * scale)));
        var (seenWidth, seenHeight) = Upright(decoded.Width, decoded.Height, origin);
        if (origin is SKEncodedOrigin.TopLeft && (width, height) == (seenWidth, seenHeight))
        {
            return Coded(decoded, codec.EncodedFormat);
        }

        using var turned = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, decoded.AlphaType, decoded.ColorSpace));
        using var canvas = new SKCanvas(turned);
        canvas.Clear(SKColors.Transparent);
        canvas.Scale((float)width / seenWidth, (float)height / seenHeight);
        canvas.Concat(Turn(origin, seenWidth, seenHeight));
        decoded.SetImmutable();
        using var image = SKImage.FromBitmap(decoded);
        using var paint = new SKPaint { BlendMode = SKBlendMode.Src };
        var isSameSize = (width, height) == (seenWidth, seenHeight);
        canvas.DrawImage(image, 0, 0, isSameSize ? SKSamplingOptions.Default : new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear), paint);
        canvas.Flush();
        return Coded(turned, codec.EncodedFormat);
    }

    private static PictureCopy? Coded(SKBitmap bitmap, SKEncodedImageFormat was)
    {
        // Without a colour space no profile is written: pages take such pictures for sRGB, which these are.
        using var dots = new SKPixmap(bitmap.Info.WithColorSpace(null), bitmap.GetPixels(), bitmap.RowBytes);
        var (extension, kind) = was switch
        {
            SKEncodedImageFormat.Jpeg => (".jpg", "image/jpeg"),
            SKEncodedImageFormat.Webp => (".webp", "image/webp"),
            _ => (".png", "image/png"),
        };
        using var coded = was switch
        {
            SKEncodedImageFormat.Jpeg => dots.Encode(new SKJpegEncoderOptions(JpegQuality)),
            SKEncodedImageFormat.Webp => dots.Encode(new SKWebpEncoderOptions(SKWebpEncoderCompression.Lossy, WebpQuality)),
            _ => dots.Encode(SKPngEncoderOptions.Default),
        };
        return coded is null ? null : new(extension, kind, bitmap.Width, bitmap.Height, coded.ToArray());
    }

    private static (int Width, int Height) Upright(int width, int height, SKEncodedOrigin origin) =>
        origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom ? (height, width) : (width, height);

    // Exif 2.32, 4.6.4, orientation: from the picture as it is stored to the one that is seen, whose size is given.
    private static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
