using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using PatternForge.Cli.Photos;
using PatternForge.Core.Model;
using SkiaSharp;

namespace PatternForge.Cli.Tests;

/// <summary>Photos and pictures of the text as a pattern names them: looked at, and put into a release.</summary>
public class PhotoTests
{
    private const string Rows = "\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit.\n\nBO all sts.\n";

    private static (string? Code, string? Severity, int Line, string Message)[] Findings(TemporaryFolder folder) =>
    [
        .. Outcome.Of(folder, "lint", "hat.pattern.md", "--format", "json").Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray()
            .Select(f => (f.GetProperty("code").GetString(), f.GetProperty("severity").GetString(), f.GetProperty("line").GetInt32(), f.GetProperty("message").GetString()!))
            .Where(f => f.Item1!.StartsWith("PF9", StringComparison.Ordinal)),
    ];

    [Fact]
    public void Lint_says_that_a_photo_tells_its_place_and_no_file_of_the_release_does()
    {
        using var folder = new TemporaryFolder();
        folder.Write("photos/front.jpg", TakenPicture.Jpeg(1800, 1200, 6));
        folder.Write("photos/small.png", TakenPicture.Of(SKEncodedImageFormat.Png, 256, 256));
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\nphotos:\n  - file: photos/front.jpg\n    alt: From the front\n  - file: photos/small.png\n  - file: gone.jpg\n    alt: Gone\n---" + Rows);
        Assert.Equal([("PF908", "warning", 5), ("PF906", "warning", 7), ("PF907", "warning", 7), ("PF905", "warning", 8)], Findings(folder).Select(f => (f.Code, f.Severity, f.Line)));

        var built = Outcome.Of(folder, "build", "hat.pattern.md");
        Assert.Equal((0, "out/hat.html\nout/hat.md\nout/hat.photos/front.jpg\nout/hat.photos/small.png\nout/hat.files.json\n"), (built.Code, built.Out));
        Assert.Contains("![From the front](hat.photos/front.jpg)", folder.Read("out/hat.md"), StringComparison.Ordinal);
        var page = folder.Read("out/hat.html");
        const string Begin = "data:image/jpeg;base64,";
        var start = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var end = page.IndexOf('"', start);
        Assert.StartsWith("\" width=\"1600\" height=\"1067\" alt=\"From the front\"", page[end..], StringComparison.Ordinal);
        byte[][] released = [Convert.FromBase64String(page[start..end]), File.ReadAllBytes(folder.At("out/hat.photos/front.jpg"))];
        Assert.All(released, bytes =>
        {
            var said = ImageMetadataReader.ReadMetadata(new MemoryStream(bytes));
            Assert.Empty(said.OfType<GpsDirectory>());
            Assert.Empty(said.OfType<ExifIfd0Directory>());
            Assert.Equal((1600, 1067), PictureCopy.SizeOf(bytes));
        });
        Assert.Equal(TakenPicture.Jpeg(1800, 1200, 6), File.ReadAllBytes(folder.At("photos/front.jpg")));
    }

    [Fact]
    public void A_shop_gets_the_listing_and_photos_that_it_takes()
    {
        using var folder = new TemporaryFolder();
        folder.Write("front.jpg", TakenPicture.Jpeg(2400, 1200, 6));
        folder.Write("back.webp", TakenPicture.Webp(900, 800));
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\nrelease: [uk]\nphotos:\n  - {file: front.jpg, alt: From the front}\n  - {file: gone.jpg, alt: Gone}\n  - {file: back.webp, alt: From behind}\n---" + Rows);
        var built = Outcome.Of(folder, "build", "hat.pattern.md", "--format", "html,listing");
        Assert.Equal(0, built.Code);
        Assert.Equal(
            ["out/hat.files.json", "out/hat.html", "out/hat.listing.html", "out/hat.listing.md", "out/hat.listing.txt", "out/hat.shop/photo-1.jpg", "out/hat.shop/photo-2.jpg", "out/hat.shop/square.jpg", "out/hat.uk.html"],
            built.Out.TrimEnd('\n').Split('\n').Order(StringComparer.Ordinal));
        Assert.Equal((2000, 1000), PictureCopy.SizeOf(File.ReadAllBytes(folder.At("out/hat.shop/photo-1.jpg"))));
        Assert.Equal((900, 800), PictureCopy.SizeOf(File.ReadAllBytes(folder.At("out/hat.shop/photo-2.jpg"))));
        Assert.Equal((1000, 1000), PictureCopy.SizeOf(File.ReadAllBytes(folder.At("out/hat.shop/square.jpg"))));
        Assert.All(System.IO.Directory.GetFiles(folder.At("out/hat.shop")), f => Assert.Empty(ImageMetadataReader.ReadMetadata(f).OfType<ExifIfd0Directory>()));
        Assert.Contains("Also in the release: British terms", folder.Read("out/hat.listing.txt"), StringComparison.Ordinal);

        Assert.Equal(2, Outcome.Of(folder, "build", "hat.pattern.md", "--format", "listing", "--listing-length", "10").Code);
    }

    [Fact]
    public void Pictures_of_the_text_are_treated_as_photos_are()
    {
        using var folder = new TemporaryFolder();
        folder.Write("steps/the brim (folded).jpg", TakenPicture.Jpeg(700, 620, 3));
        folder.Write("crown.png", TakenPicture.Of(SKEncodedImageFormat.Png, 200, 150));
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\n---" + Rows + """

            ## Notes

            ![The brim, folded once](steps/the%20brim%20\(folded\).jpg "A title") and `![no picture](code.jpg)`.

            ![](crown.png)

            Not there: ![The back](back.jpg). Elsewhere: ![The sea](https://example.com/sea.jpg).

            [top]: <crown.png>
            By its name: ![The crown][top].
            """);
        Assert.Equal(
            [("PF908", "warning", 16), ("PF907", "warning", 18), ("PF909", "note", 18), ("PF905", "warning", 20), ("PF905", "warning", 20), ("PF909", "note", 23)],
            Findings(folder).Select(f => (f.Code, f.Severity, f.Line)).OrderBy(f => f.Line).ThenBy(f => f.Code, StringComparer.Ordinal));

        var built = Outcome.Of(folder, "build", "hat.pattern.md", "--format", "md,html");
        Assert.Equal((0, "out/hat.md\nout/hat.html\nout/hat.photos/crown.png\nout/hat.photos/the brim (folded).jpg\nout/hat.files.json\n"), (built.Code, built.Out));
        var text = folder.Read("out/hat.md");
        Assert.Contains("![The brim, folded once](hat.photos/the%20brim%20%28folded%29.jpg) and `![no picture](code.jpg)`.", text, StringComparison.Ordinal);
        Assert.Contains("Not there: The back. Elsewhere: The sea.", text, StringComparison.Ordinal);
        Assert.Contains("![The crown](hat.photos/crown.png)", text, StringComparison.Ordinal);
        var page = folder.Read("out/hat.html");
        Assert.Contains("width=\"700\" height=\"620\" alt=\"The brim, folded once\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("crown.png", page, StringComparison.Ordinal);
        Assert.False(PlaceOfTaking.IsToldBy(File.ReadAllBytes(folder.At("out/hat.photos/the brim (folded).jpg"))));
    }

    [Fact]
    public void A_picture_that_no_copy_can_be_made_of_is_a_finding_and_stays_out_of_the_release()
    {
        using var folder = new TemporaryFolder();
        var large = TakenPicture.Jpeg(64, 48);
        var frame = large.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        (large[frame + 5], large[frame + 6], large[frame + 7], large[frame + 8]) = (0xEA, 0x60, 0xEA, 0x60);
        folder.Write("a.avif", [0, 0, 0, 24, .. "ftypavif....Exif"u8]);
        folder.Write("b.heic", [0, 0, 0, 24, .. "ftypheic...."u8]);
        folder.Write("c.jpg", "Dear maker, this is a letter.");
        folder.Write("d.jpg", TakenPicture.Of(SKEncodedImageFormat.Jpeg, 900, 700)[..2000]);
        folder.Write("e.jpg", large);
        folder.Write("f.png", TakenPicture.Of(SKEncodedImageFormat.Png, 900, 700)[..600]);
        string[] names = ["a.avif", "b.heic", "c.jpg", "d.jpg", "e.jpg", "f.png"];
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\nphotos:\n" + string.Concat(names.Select(n => $"  - {{file: {n}, alt: Words for {n}}}\n")) + "---" + Rows);
        Assert.Equal(
            [
                "the photo `a.avif` is a picture of the kind AVIF, of which no cleaned copy can be made",
                "the photo `b.heic` is a picture of the kind HEIC, of which no cleaned copy can be made",
                "the photo `c.jpg` is no picture, whatever its name says",
                "the photo `d.jpg` is cut off or damaged",
                "the photo `e.jpg` is too large to be read: it has 60000 x 60000 pixels, and 64 million are the most",
                "the photo `f.png` is cut off or damaged",
            ],
            Findings(folder).Where(f => f.Code == "PF905").Select(f => f.Message));
        var built = Outcome.Of(folder, "build", "hat.pattern.md");
        Assert.Equal((0, "out/hat.html\nout/hat.md\nout/hat.files.json\n"), (built.Code, built.Out));
        Assert.All(names, n => Assert.Contains($"<p class=\"missing\">Words for {n}</p>", folder.Read("out/hat.html"), StringComparison.Ordinal));
    }

    [Fact]
    public void A_copy_is_named_after_what_it_is()
    {
        using var folder = new TemporaryFolder();
        folder.Write("dot.gif", Convert.FromBase64String("R0lGODlhAQABAIAAAMLCwgAAACH5BAAAAAAALAAAAAABAAEAAAICRAEAOw=="));
        folder.Write("front.jpeg", TakenPicture.Of(SKEncodedImageFormat.Jpeg, 20, 20));
        folder.Write("back.png", TakenPicture.Of(SKEncodedImageFormat.Webp, 20, 20));
        folder.Write("plan.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>");
        var photos = new PhotoFiles(folder.Path);
        Assert.Equal(["dot.png", "front.jpeg", "back.webp", "plan.svg"], new[] { "dot.gif", "front.jpeg", "back.png", "plan.svg" }.Select(n => photos.Released(n)!.Name));
        Assert.StartsWith("data:image/webp;base64,", photos.Embedded("back.png")!.Address, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drawing_that_holds_what_a_program_wrote_stays_out_of_the_release()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><metadata>made at home</metadata></svg>");
        folder.Write("b.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><image href=\"data:image/jpeg;base64,AAAA\"/></svg>");
        var photos = new PhotoFiles(folder.Path);
        Assert.Null(photos.Embedded("a.svg"));
        Assert.Null(photos.Embedded("b.svg"));
        Assert.Equal((2, PhotoState.There), (photos.Remarks.Count, photos.Look("a.svg").State));
    }

    [Fact]
    public void Two_photos_of_one_name_get_copies_of_their_own_and_a_source_is_never_written_over()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a/x.png", TakenPicture.Png(8, 8));
        folder.Write("b/x.png", TakenPicture.Png(9, 9));
        folder.Write("hat.photos/y.png", TakenPicture.Png(8, 8));
        var copies = new PhotoCopies(new PhotoFiles(folder.Path), folder.Path, "hat");
        Assert.Equal(("hat.photos/x.png", "hat.photos/x-2.png", "hat.photos/x.png"), (copies.Picture("a/x.png")!.Address, copies.Picture("b/x.png")!.Address, copies.Picture("a/x.png")!.Address));
        Assert.Null(copies.Picture("hat.photos/y.png"));
        Assert.Contains("lies where its copy for the release would be written", Assert.Single(copies.Remarks), StringComparison.Ordinal);
        Assert.Equal(2, copies.Files.Count);
    }

    [Fact]
    public void Nothing_outside_the_folder_of_the_pattern_is_read()
    {
        using var folder = new TemporaryFolder();
        folder.Write("secret.jpg", TakenPicture.Jpeg(20, 20));
        folder.Write("in/front.jpg", TakenPicture.Jpeg(20, 20));
        var photos = new PhotoFiles(folder.At("in"));
        Assert.Equal(PhotoState.There, photos.Look("front.jpg").State);
        string[] outside = ["../secret.jpg", folder.At("secret.jpg"), "file:///secret.jpg"];
        Assert.All(outside, name => Assert.Equal((PhotoState.Outside, null), (photos.Look(name).State, photos.Released(name))));
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(folder.At("in/link.jpg"), folder.At("secret.jpg"));
            Assert.Equal((PhotoState.Outside, null), (photos.Look("link.jpg").State, photos.Released("link.jpg")));
        }
    }
}
