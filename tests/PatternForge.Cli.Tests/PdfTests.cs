using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PatternForge.Cli.Printing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;
using UglyToad.PdfPig.Tokens;

namespace PatternForge.Cli.Tests;

/// <summary>Documents for print, read back with another library than the one that made them.</summary>
public partial class PdfTests
{
    private static readonly string[] Examples = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.pattern.md").Order(StringComparer.Ordinal)];

    // All examples on both papers, printed once for the whole class.
    private static readonly Lazy<Printed> OfExamples = new(() => new Printed(Examples));

    [BrowserFact]
    public void A_document_says_its_title_its_language_and_the_date_of_the_pattern_and_is_tagged()
    {
        foreach (var (name, source, bytes, pdf) in OfExamples.Value.Documents)
        {
            var (title, date) = (Field(source, "title"), Field(source, "date"));
            Assert.StartsWith(title, pdf.Information.Title, StringComparison.Ordinal);
            Assert.Equal($"D:{date.Replace("-", "", StringComparison.Ordinal)}000000+00'00'", pdf.Information.CreationDate);
            Assert.Equal(pdf.Information.CreationDate, pdf.Information.ModifiedDate);
            var catalogue = pdf.Structure.Catalog.CatalogDictionary;
            Assert.Equal("en", Assert.IsType<StringToken>(catalogue.Data["Lang"]).Data);
            Assert.True(catalogue.ContainsKey(NameToken.Create("StructTreeRoot")), $"{name} has no tags");
            Assert.Equal(pdf.NumberOfPages, PdfPages.CountOf(bytes));
        }
    }

    [BrowserFact]
    public void Each_paper_has_its_size()
    {
        foreach (var (name, _, _, pdf) in OfExamples.Value.Documents)
        {
            var (width, height) = name.EndsWith(".a4", StringComparison.Ordinal) ? (595.3, 841.9) : (612.0, 792.0);
            Assert.All(pdf.GetPages(), p => Assert.True(Math.Abs(p.Width - width) < 1 && Math.Abs(p.Height - height) < 1, $"{name}: page {p.Number} is {p.Width} by {p.Height}"));
        }
    }

    [BrowserFact]
    public void Every_page_has_its_number_and_the_title()
    {
        foreach (var (name, source, _, pdf) in OfExamples.Value.Documents)
        {
            foreach (var page in pdf.GetPages())
            {
                var foot = string.Join(' ', page.GetWords().Where(w => w.BoundingBox.Bottom < 50).Select(w => w.Text));
                Assert.Contains($"{page.Number} / {pdf.NumberOfPages}", foot, StringComparison.Ordinal);
                Assert.True(foot.Contains(Field(source, "title"), StringComparison.Ordinal), $"{name}, page {page.Number}: {foot}");
            }
        }
    }

    [BrowserFact]
    public void The_outline_has_every_heading_and_its_entries_lead_to_pages()
    {
        foreach (var (name, source, _, pdf) in OfExamples.Value.Documents)
        {
            Assert.True(pdf.TryGetBookmarks(out var outline), $"{name} has no outline");
            var entries = outline.GetNodes().ToArray();
            Assert.All(entries.OfType<DocumentBookmarkNode>(), e => Assert.InRange(e.PageNumber, 1, pdf.NumberOfPages));
            foreach (Match heading in Heading().Matches(source))
            {
                var words = heading.Groups[1].Value.Trim();
                Assert.True(OwnParts.Contains(words) || entries.Any(e => e.Title.Contains(words, StringComparison.Ordinal)), $"{name}: `{words}` is not in the outline");
            }
        }
    }

    // Headings whose words go to a part that the page makes of the header.
    private static readonly string[] OwnParts = ["Sizes", "Yarn", "Tools", "Gauge", "Tension", "Abbreviations", "Photos", "Videos", "Care", "Contact"];

    [BrowserFact]
    public void Every_row_is_there_whole_and_on_one_page()
    {
        foreach (var (name, source, _, pdf) in OfExamples.Value.Documents)
        {
            // In the order in which the page is drawn: a count beside a row does not come between its lines.
            var pages = pdf.GetPages().Select(p => Plain(string.Concat(p.Letters.Select(l => l.Value)))).ToArray();
            var whole = string.Concat(pages);
            var rows = OfExamples.Value.RowsOf(name);
            Assert.NotEmpty(rows);
            foreach (var row in rows)
            {
                var words = Plain(row);
                Assert.True(pages.Any(p => p.Contains(words, StringComparison.Ordinal)), $"{name}: `{row}` is {(whole.Contains(words, StringComparison.Ordinal) ? "split over two pages" : "not there")}");
            }
        }
    }

    [BrowserFact]
    public void Links_lead_to_the_web_and_within_the_document()
    {
        var (outside, inside) = (0, 0);
        foreach (var (name, _, bytes, pdf) in OfExamples.Value.Documents)
        {
            var links = pdf.GetPages().SelectMany(p => p.GetAnnotations()).Where(a => a.Type == UglyToad.PdfPig.Annotations.AnnotationType.Link).ToArray();
            outside += links.Count(l => l.AnnotationDictionary.ContainsKey(NameToken.A));
            inside += links.Count(l => l.AnnotationDictionary.ContainsKey(NameToken.Dest) || l.AnnotationDictionary.ContainsKey(NameToken.A));
            Assert.True(links.Any(l => l.AnnotationDictionary.ContainsKey(NameToken.Dest)), $"{name} has no link within itself");
            Assert.DoesNotContain("file:", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
        }

        Assert.InRange(outside, 1, inside - 1);
    }

    [BrowserFact]
    public void Every_font_is_in_the_document()
    {
        foreach (var (name, _, bytes, _) in OfExamples.Value.Documents)
        {
            var text = Encoding.Latin1.GetString(bytes);
            var descriptors = Regex.Count(text, "/Type /FontDescriptor");
            Assert.True(descriptors > 0 && Regex.Count(text, "/FontFile[23]? ") >= descriptors - Regex.Count(text, "/Subtype /Type3"), $"{name}: a font is missing");
        }
    }

    [BrowserFact]
    public void The_same_source_gives_the_same_bytes_and_nothing_is_left_behind()
    {
        using var folder = new TemporaryFolder();
        var (temporary, before) = (Path.GetTempPath(), Printed.LeftBehind());
        foreach (var place in (string[])["a", "b/c"])
        {
            Assert.Equal(0, Outcome.Of(folder, "build", Examples[0], "--format", "pdf", "--out", place).Code);
        }

        var name = Path.GetFileName(Examples[0]).Replace(".pattern.md", "", StringComparison.Ordinal);
        Assert.Equal(File.ReadAllBytes(folder.At($"a/{name}.a4.pdf")), File.ReadAllBytes(folder.At($"b/c/{name}.a4.pdf")));
        Assert.Equal(folder.Read($"a/{name}.files.json"), folder.Read($"b/c/{name}.files.json"));
        Assert.True(Directory.Exists(temporary));
        Assert.Empty(Printed.LeftBehind().Except(before));
    }

    [BrowserFact]
    public void A_draft_says_so_on_every_page_and_an_edition_has_its_own_document()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Outcome.Of(folder, "build", Examples[0], "--format", "pdf,listing", "--draft", "--edition", "spelled-out", "--paper", "letter").Code);
        var file = Assert.Single(folder.Files(), f => f.EndsWith(".spelled-out.letter.pdf", StringComparison.Ordinal));
        using var pdf = PdfDocument.Open(folder.At(file));
        Assert.All(pdf.GetPages(), p => Assert.Contains("Draft, not for release", string.Join(' ', p.GetWords().Select(w => w.Text)), StringComparison.Ordinal));
        var listing = folder.Read(Assert.Single(folder.Files(), f => f.EndsWith(".listing.txt", StringComparison.Ordinal)));
        Assert.Contains(pdf.NumberOfPages.ToString(CultureInfo.InvariantCulture), listing, StringComparison.Ordinal);
    }

    private static string Field(string source, string key) => Regex.Match(source, $"^{key}: *\"?(.*?)\"?\\s*$", RegexOptions.Multiline).Groups[1].Value;

    // Blanks are the page's, and so are letters that a font draws as one; the letters themselves must be there.
    private static string Plain(string text) => Joined.Aggregate(string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '\u00ad')), (said, joined) => said.Replace(joined.One, joined.Letters, StringComparison.Ordinal));

    private static readonly (string One, string Letters)[] Joined = [("\ufb00", "ff"), ("\ufb01", "fi"), ("\ufb02", "fl"), ("\ufb03", "ffi"), ("\ufb04", "ffl")];

    [GeneratedRegex(@"^## (.+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    /// <summary>Patterns printed on both papers.</summary>
    private sealed class Printed
    {
        private readonly Dictionary<string, string[]> _rows = new(StringComparer.Ordinal);

        public Printed(string[] files)
        {
            using var folder = new TemporaryFolder();
            var outcome = Outcome.Of(folder, ["build", .. files, "--format", "pdf,json", "--paper", "both"]);
            Assert.True(outcome.Code == 0, outcome.Error);
            foreach (var source in files)
            {
                var stem = Path.GetFileName(source).Replace(".pattern.md", "", StringComparison.Ordinal);
                var rows = RowsIn(folder.Read($"out/{stem}.json"));
                foreach (var name in (string[])[stem + ".a4", stem + ".letter"])
                {
                    var bytes = File.ReadAllBytes(folder.At($"out/{name}.pdf"));
                    Documents.Add((name, File.ReadAllText(source), bytes, PdfDocument.Open(bytes)));
                    _rows[name] = rows;
                }
            }
        }

        public List<(string Name, string Source, byte[] Bytes, PdfDocument Pdf)> Documents { get; } = [];

        public string[] RowsOf(string name) => _rows[name];

        public static string[] LeftBehind() => [.. Directory.EnumerateDirectories(Path.GetTempPath(), "patternforge-*").Where(d => File.Exists(Path.Combine(d, "page.html")))];

        // The instruction as the page sets it, without its label and the count at its side.
        private static string[] RowsIn(string json)
        {
            using var document = System.Text.Json.JsonDocument.Parse(json);
            return [.. document.RootElement.GetProperty("sections").EnumerateArray()
                .SelectMany(s => s.GetProperty("blocks").EnumerateArray())
                .Where(b => b.GetProperty("kind").GetString() == "rows")
                .SelectMany(b => b.GetProperty("rows").EnumerateArray())
                .Select(r => r.GetProperty("instruction").GetString()!)];
        }
    }
}
