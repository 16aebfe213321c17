using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace PatternForge.Cli.Tests;

/// <summary>What a printed document keeps together on one page, read back from where it stands.</summary>
public class PdfSplitTests
{
    private const string Many = "---\ntitle: Quay throw\ndesigner: Ása Øye & Söhne\nversion: 1.0\ndate: 2026-01-02\ncraft: knitting\nterms: us\nphotos:\n{0}\n---\n\n## Throw\n\nCO 20 sts.\n\nRows 1-4: Knit. (20 sts)\n\n{1}\n";

    [BrowserFact]
    public void A_line_of_a_table_stands_on_one_page()
    {
        using var folder = new TemporaryFolder();
        var name = "fairwater-jumper";
        Assert.Equal(0, Outcome.Of(folder, "build", Path.Combine(Repository.Root, "examples", name + ".pattern.md"), "--format", "pdf,md", "--paper", "both").Code);
        var lines = folder.Read($"out/{name}.md").Split('\n').SkipWhile(l => !l.StartsWith("| Yarn needed", StringComparison.Ordinal)).Skip(2).TakeWhile(l => l.StartsWith('|')).Select(Plain).ToArray();
        Assert.Equal(9, lines.Length);
        foreach (var sheet in (string[])["a4", "letter"])
        {
            using var pdf = PdfDocument.Open(folder.At($"out/{name}.{sheet}.pdf"));
            var pages = pdf.GetPages().Select(p => Plain(string.Concat(p.Letters.Select(l => l.Value)))).ToArray();
            Assert.All(lines, line => Assert.Contains(pages, p => p.Contains(line, StringComparison.Ordinal)));
        }
    }

    [BrowserFact]
    public void A_photo_stands_whole_on_one_page()
    {
        using var folder = new TemporaryFolder();
        var photos = Enumerable.Range(1, 5).Select(i => $"photo-{i}.jpg").ToArray();
        foreach (var photo in photos)
        {
            folder.Write(photo, TakenPicture.Jpeg(900, 1400));
        }

        folder.Write("throw.pattern.md", Text(string.Join('\n', photos.Select((p, i) => $"  - {{file: {p}, alt: Corner {i + 1}}}")), string.Join("\n\n", photos.Select(p => $"![Again]({p})"))));
        Assert.Equal(0, Outcome.Of(folder, "build", "throw.pattern.md", "--format", "pdf", "--paper", "letter", "--draft").Code);
        using var pdf = PdfDocument.Open(folder.At("out/throw.letter.pdf"));
        var placed = pdf.GetPages().SelectMany(p => p.GetImages().Select(i => (Page: p, i.BoundingBox))).ToArray();
        Assert.Equal(2 * photos.Length, placed.Length); // one that is split would stand on two pages
        Assert.All(placed, i => Assert.True(i.BoundingBox.Bottom >= 0 && i.BoundingBox.Top <= i.Page.Height, $"page {i.Page.Number}: {i.BoundingBox}"));
        Assert.True(pdf.NumberOfPages > 2);
    }

    [BrowserFact]
    public void The_rows_of_a_chart_stand_whole_on_their_pages()
    {
        using var folder = new TemporaryFolder();
        foreach (var name in (string[])["tidewrack-scarf", "guillemot-hat"])
        {
            Assert.Equal(0, Outcome.Of(folder, "build", Path.Combine(Repository.Root, "examples", name + ".pattern.md"), "--format", "pdf", "--paper", "letter").Code);
            using var pdf = PdfDocument.Open(folder.At($"out/{name}.letter.pdf"));
            var paths = pdf.GetPages().SelectMany(p => p.Paths.Select(path => (Page: p, Box: path.GetBoundingRectangle()))).Where(p => p.Box is not null).ToArray();
            Assert.True(paths.Length > 100, name);
            Assert.All(paths, p => Assert.True(p.Box!.Value.Bottom >= -1 && p.Box.Value.Top <= p.Page.Height + 1, $"{name}, page {p.Page.Number}: {p.Box}"));
        }
    }

    [BrowserFact]
    public void A_document_names_its_author_in_any_letters_and_is_still_the_same_each_time()
    {
        using var folder = new TemporaryFolder();
        folder.Write("throw.pattern.md", Text("  - {file: gone.jpg, alt: None}", "Purl it."));
        foreach (var place in (string[])["a", "b"])
        {
            Assert.Equal(0, Outcome.Of(folder, "build", "throw.pattern.md", "--format", "pdf", "--draft", "--out", place).Code);
        }

        Assert.Equal(File.ReadAllBytes(folder.At("a/throw.a4.pdf")), File.ReadAllBytes(folder.At("b/throw.a4.pdf")));
        using var pdf = PdfDocument.Open(folder.At("a/throw.a4.pdf"));
        Assert.Equal("Ása Øye & Söhne", pdf.Information.Author);
        Assert.StartsWith("Quay throw", pdf.Information.Title, StringComparison.Ordinal);
        Assert.Equal("D:20260102000000+00'00'", pdf.Information.CreationDate);
        Assert.True(pdf.Structure.Catalog.CatalogDictionary.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.True(pdf.GetPage(1).Letters.Count > 10);
    }

    private static string Text(string photos, string rest) => Many.Replace("{0}", photos, StringComparison.Ordinal).Replace("{1}", rest, StringComparison.Ordinal);

    private static string Plain(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c is not ('|' or '*' or '\\')));
}
