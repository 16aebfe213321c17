using SkiaSharp;
using Svg.Skia;

namespace PatternForge.Cli.Drawings;

/// <summary>Makes a picture of dots from a drawing, for print: 300 dots to the inch of the size that it has on a page, on white ground.</summary>
internal static class DrawingPng
{
    // An inch has 96 pixels of CSS (CSS Values and Units 3, section 6.2).
    private const double DotsPerPixel = 300 / 96.0;
    private const double LongestSide = 16_000;
    private const double MostDots = 40_000_000;

    private static readonly DrawingFonts Fonts = new();
    private static readonly Lock OneAtATime = new();

    /// <summary>What is worth knowing of the pictures, a sentence; null when all is well.</summary>
    public static string? Remark => PictureLibrary.Problem is null && !Fonts.IsThere
        ? "no sans-serif font was found on this system: the PNG pictures have no words; install one such as DejaVu Sans" : null;

    /// <summary>The picture of a drawing, or in a few words why there is none.</summary>
    /// <param name="svg">The drawing, as a file of its own.</param>
    public static (byte[]? Bytes, string? Problem) Of(string svg)
    {
        if (PictureLibrary.Problem is { } problem)
        {
            return (null, problem);
        }

        lock (OneAtATime)
        {
            return Drawn(svg);
        }
    }

    private static (byte[]? Bytes, string? Problem) Drawn(string svg)
    {
        using var drawing = new SKSvg();
        drawing.Settings.TypefaceProviders = [Fonts];
        if (drawing.FromSvg(svg) is not { CullRect: { Width: > 0, Height: > 0 } frame } picture)
        {
            return (null, "the drawing could not be drawn");
        }

        var scale = Math.Min(Math.Min(DotsPerPixel, LongestSide / Math.Max(frame.Width, frame.Height)), Math.Sqrt(MostDots / ((double)frame.Width * frame.Height)));
        var (width, height) = (Math.Max(1, (int)Math.Round(frame.Width * scale)), Math.Max(1, (int)Math.Round(frame.Height * scale)));
        using var dots = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(dots);
        canvas.Clear(SKColors.White);
        canvas.Scale(width / frame.Width, height / frame.Height);
        canvas.Translate(-frame.Left, -frame.Top);
        canvas.DrawPicture(picture);
        canvas.Flush();
        using var pixels = dots.PeekPixels();
        using var coded = pixels.Encode(SKPngEncoderOptions.Default);
        return coded is null ? (null, "the picture could not be coded") : (coded.ToArray(), null);
    }
}
