using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

/// <summary>What a buyer must know before paying, in a bounded length.</summary>
public class ListingTests
{
    private static readonly ReleaseContents Release = new() { Papers = [("A4", 9), ("Letter", 9)], Files = ["a web page"], Editions = ["British terms"] };

    public static TheoryData<string> Examples => [.. ExamplePageTests.Names];

    private static (string Text, string Markdown, string Html) Of(Compilation compilation, int most = 4000, TemplateSet? templates = null)
    {
        var made = Renderer.Listing(ViewBuilder.Build(compilation), "it", Release, templates, most).Result;
        Assert.Equal(["it.listing.txt", "it.listing.md", "it.listing.html"], made.Files.Select(f => f.Name));
        return (made.Files[0].Text, made.Files[1].Text, made.Files[2].Text);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_listing_tells_what_it_is_and_keeps_to_every_length_that_may_be_asked_for(string name)
    {
        var compilation = ExamplePageTests.Compile(name);
        var title = compilation.Pattern.Facts.Title!.Value;
        foreach (var most in new[] { 1000, 1500, 2500, 4000, 100_000 })
        {
            var (text, markdown, html) = Of(compilation, most);
            Assert.All([text, markdown, html], t => Assert.InRange(t.Length, 50, most));
            Assert.All([text, markdown, html], t => Assert.Contains(title, t, StringComparison.Ordinal));
            Assert.All([text, markdown, html], t => Assert.Contains(compilation.Pattern.Facts.Level!.Value.ToString(), t, StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("fairwater-jumper")]
    [InlineData("mooring-square-mat")]
    public void A_listing_is_as_it_was_approved(string name)
    {
        var (text, markdown, html) = Of(ExamplePageTests.Compile(name));
        Golden.Match(text, $"listing/{name}.txt");
        Golden.Match(markdown, $"listing/{name}.md");
        Golden.Match(html, $"listing/{name}.html");
    }

    [Fact]
    public void The_whole_of_it_has_sizes_yarn_gauge_tools_language_and_what_is_in_the_release()
    {
        var text = Of(ExamplePageTests.Compile("fairwater-jumper")).Text;
        string[] told =
        [
            "XS (S, M, L, 1X, 2X, 3X, 4X, 5X)", "Finished bust: 84 (94, ", "1.9 m per g", "Needed: 800 (860, ", "20 sts and 28 rounds = 10 × 10 cm", "4.5 mm (US 7, UK 7)",
            "English, US terms", "Also in the release: British terms", "PDF for A4 and Letter, 9 pages", "A web page", "2 schematics",
        ];
        Assert.All(told, t => Assert.Contains(t, text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_shorter_it_must_be_the_less_it_tells_and_that_is_said()
    {
        var view = ViewBuilder.Build(ExamplePageTests.Compile("fairwater-jumper"));
        var lengths = new[] { 4000, 2500, 2000, 1600, 1300, 1000 }.Select(most => Renderer.Listing(view, "it", Release, most: most)).ToArray();
        var givenUp = lengths.Select(l => l.Shortened.FirstOrDefault(s => s.Name == "it.listing.txt").GivenUp is { IsDefault: false } g ? g.Length : 0).ToArray();
        Assert.Equal(givenUp.Order(), givenUp);
        Assert.Equal(0, givenUp[0]);
        Assert.True(givenUp[^1] > givenUp[2]);
        Assert.All(lengths, l => Assert.Contains("84 (94, ", l.Result.Files[0].Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_fragment_is_harmless_and_within_its_length_whatever_the_pattern_says()
    {
        foreach (var said in new[] { "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "[x](javascript:alert(1))", "&&&& " + new string('&', 5000), new string('W', 3000), "" })
        {
            var (text, markdown, html) = Of(Hostile.Fill(() => said), 1000);
            Assert.All([text, markdown, html], t => Assert.InRange(t.Length, 1, 1000));
            var parsed = XDocument.Parse($"<div>{html}</div>");
            Assert.All(parsed.Descendants(), e => Assert.Contains(e.Name.LocalName, new[] { "div", "h2", "h3", "p", "ul", "li", "a", "em", "strong", "code" }));
            Assert.All(parsed.Descendants("a"), a => Assert.NotNull(SafeAddress.ForLink((string?)a.Attribute("href"))));
        }
    }

    [Fact]
    public void A_template_that_says_too_much_itself_gives_no_file_and_that_is_told()
    {
        var templates = TemplateSet.With(new Dictionary<string, string> { ["text/listing.txt"] = new string('x', 2000) });
        var (result, shortened) = Renderer.Listing(ViewBuilder.Build(SampleHat.Compile()), "it", Release, templates, 1000);
        Assert.Equal(["it.listing.md", "it.listing.html"], result.Files.Select(f => f.Name));
        Assert.Contains(shortened, s => s.Name == "it.listing.txt");
    }
}
