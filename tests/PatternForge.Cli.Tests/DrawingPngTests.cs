using PatternForge.Cli.Drawings;
using SkiaSharp;

namespace PatternForge.Cli.Tests;

/// <summary>Drawings as PNG on request.</summary>
public class DrawingPngTests
{
    private static int Marked(byte[] png, out int width, out int height)
    {
        using var picture = SKBitmap.Decode(png);
        (width, height) = (picture.Width, picture.Height);
        Assert.All(picture.Pixels, p => Assert.Equal(255, p.Alpha));
        return picture.Pixels.Count(p => p.Red < 128);
    }

    [Fact]
    public void Every_drawing_of_the_examples_is_a_picture_for_print_beside_it()
    {
        using var folder = new TemporaryFolder();
        var built = Outcome.Of(folder, ["build", .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.pattern.md"), "--format", "png"]);
        Assert.Equal(0, built.Code);
        var drawings = folder.Files().Where(f => f.EndsWith(".svg", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(drawings);
        Assert.Equal(drawings.Select(d => Path.ChangeExtension(d, ".png")), folder.Files().Where(f => f.EndsWith(".png", StringComparison.Ordinal)));
        Assert.All(drawings, drawing =>
        {
            var svg = folder.Read(drawing);
            var box = svg[(svg.IndexOf("viewBox=\"0 0 ", StringComparison.Ordinal) + 13)..].Split('"')[0].Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
            var png = File.ReadAllBytes(folder.At(Path.ChangeExtension(drawing, ".png")));
            var marked = Marked(png, out var width, out var height);
            Assert.InRange(width, (box[0] * 300 / 96) - 3, (box[0] * 300 / 96) + 3);
            Assert.InRange(marked, width * height / 5000, width * height * 9 / 10);
            Assert.Equal(png, DrawingPng.Of(svg).Bytes);
        });
    }

    [Fact]
    public void The_words_of_a_drawing_are_drawn_where_a_font_is_found()
    {
        var (bytes, problem) = DrawingPng.Of("""<svg viewBox="0 0 100 40" width="100" height="40" font-family="Helvetica, Arial, sans-serif" xmlns="http://www.w3.org/2000/svg"><text x="10" y="25" font-size="14">Round 12</text></svg>""");
        Assert.Null(problem);
        var marked = Marked(bytes!, out var width, out var height);
        Assert.Equal((312, 125), (width, height));
        Assert.Equal(DrawingPng.Remark is null, marked > 200);
    }

    [Fact]
    public void Paper_hides_what_lies_under_it()
    {
        var (bytes, _) = DrawingPng.Of("""<svg viewBox="0 0 32 32" width="32" height="32" xmlns="http://www.w3.org/2000/svg"><path d="M0 0H32V32H0Z" fill="currentColor" /><path d="M4 4H28V28H4Z" style="fill:var(--paper,#fff)" stroke="currentColor" /></svg>""");
        using var picture = SKBitmap.Decode(bytes);
        Assert.Equal((SKColors.White, SKColors.Black), (picture.GetPixel(50, 50), picture.GetPixel(3, 3)));
    }

    [Fact]
    public void A_drawing_of_any_size_makes_a_picture_of_bounded_size()
    {
        var (bytes, problem) = DrawingPng.Of("""<svg viewBox="0 0 90000 200" width="90000" height="200" xmlns="http://www.w3.org/2000/svg"><path d="M0 0H45000V200H0Z" fill="currentColor" /></svg>""");
        Assert.Null(problem);
        using var picture = SKBitmap.Decode(bytes);
        Assert.Equal(16_000, picture.Width);
    }

    [Fact]
    public void A_pattern_without_drawings_says_so()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit.\n\nBO all sts.\n");
        var built = Outcome.Of(folder, "build", "hat.pattern.md", "--format", "png");
        Assert.Equal((0, ""), (built.Code, built.Out));
        Assert.Contains("it has no drawings, and so no PNG", built.Error, StringComparison.Ordinal);
    }
}
