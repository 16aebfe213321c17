using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Rendering;

public class PageTests
{
    public static TheoryData<string, string> Pages()
    {
        var pages = new TheoryData<string, string>();
        foreach (var format in OutputFormat.All)
        {
            foreach (var sample in Samples.Keys)
            {
                pages.Add(sample, format.Name);
            }
        }

        return pages;
    }

    internal static ImmutableSortedDictionary<string, Func<Compilation>> Samples { get; } = new Dictionary<string, Func<Compilation>>
    {
        ["saltgrass-hat"] = SampleHat.Compile,
        ["moor-square"] = SampleSquare.Compile,
        ["weir-cardigan"] = SampleCardigan.Compile,
        ["cairn-yoke-pullover"] = () => FromSource("cairn-yoke-pullover"),
        ["tern-basket"] = () => FromSource("tern-basket"),
        ["empty"] = () => new HandMade().Compile("empty.pattern.md"),
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_is_as_it_was_approved(string sample, string format)
    {
        var file = Page(Samples[sample](), format);
        Golden.Match(file.Text, "page/" + file.Name);
    }

    [Fact]
    public void A_draft_says_so_at_its_top_at_its_end_and_on_every_printed_page()
    {
        var html = Page(SampleHat.Compile(), "html", new RenderOptions { Draft = true }).Text;
        Assert.Contains("<aside class=\"draft\" aria-label=\"Draft\"><strong>Draft, not for release", html, StringComparison.Ordinal);
        Assert.Contains("@top-center { content: \"Draft\\2c  not for release", html, StringComparison.Ordinal);
        Assert.Contains("<p><strong>Draft, not for release", html[html.IndexOf("<footer", StringComparison.Ordinal)..], StringComparison.Ordinal);

        var markdown = Page(SampleHat.Compile(), "md", new RenderOptions { Draft = true }).Text;
        Assert.StartsWith("> **Draft, not for release", markdown, StringComparison.Ordinal);
        Assert.EndsWith("still be wrong.**\n", markdown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("html")]
    [InlineData("md")]
    public void A_release_does_not_speak_of_drafts(string format) =>
        Assert.DoesNotContain("not for release", Page(SampleHat.Compile(), format).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("hat.pattern.md", "hat.html")]
    [InlineData("patterns/hat.pattern.md", "hat.html")]
    [InlineData("patterns\\hat.pattern.md", "hat.html")]
    [InlineData("hat.md", "hat.html")]
    [InlineData("-", "pattern.html")]
    public void A_file_is_named_after_its_source(string source, string expected) =>
        Assert.Equal(expected, Page(new HandMade().Compile(source), "html").Name);

    [Fact]
    public void A_name_may_be_given() =>
        Assert.Equal("hat-uk.html", Page(SampleHat.Compile(), "html", new RenderOptions { Name = "hat-uk" }).Name);

    [Fact]
    public void Bytes_are_plain_utf8_with_line_feeds()
    {
        var bytes = Page(SampleHat.Compile(), "html").ToBytes();
        Assert.Equal((byte)'<', bytes[0]);
        Assert.DoesNotContain((byte)'\r', bytes);
    }

    [Fact]
    public async Task The_same_pattern_gives_the_same_bytes_on_any_thread()
    {
        var expected = Page(SampleHat.Compile(), "html").Text;
        var pages = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Task.Run(() => Page(SampleHat.Compile(), i % 4 == 3 ? "md" : "html").Text)));
        Assert.All(pages.Where((_, i) => i % 4 != 3), page => Assert.Equal(expected, page));
    }

    [Fact]
    public void A_photo_can_be_given_another_address()
    {
        var page = Page(SampleHat.Compile(), "html", new RenderOptions { Picture = file => new("data:image/png;base64,AAAA#" + file, 40, 30) });
        Assert.Contains("<img src=\"data:image/png;base64,AAAA#photos/front.jpg\" width=\"40\" height=\"30\" alt=\"", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_that_cannot_be_had_leaves_its_words_and_its_caption()
    {
        var page = Page(SampleHat.Compile(), "html", new RenderOptions { Picture = _ => null }).Text;
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.Contains("<p class=\"missing\">A woman on a sea wall", page, StringComparison.Ordinal);
        Assert.Contains("<figcaption>Adult M in Marram</figcaption>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_special_stitch_says_what_it_uses_and_makes_and_a_chart_how_wide_it_is()
    {
        var page = Page(FromSource("cairn-yoke-pullover"), "html").Text;
        Assert.Contains("<dt>mb <span class=\"full\">(make a stone bobble)</span></dt><dd>(k1, yo, k1) in next st, turn, p3, turn, sl 1, k2tog, psso<span class=\"note\">uses 1 st, makes 1 st</span></dd>", page, StringComparison.Ordinal);
        Assert.Contains("<li>Stones, 8 sts wide</li>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("html")]
    [InlineData("md")]
    public void The_words_of_the_page_are_spelled_as_its_terms_are(string format)
    {
        var american = Page(FromSource("cairn-yoke-pullover"), format).Text;
        american = format == "html" ? PageWeaveTests.AsWritten(american) : american;
        Assert.Contains("Colors", american, StringComparison.Ordinal);
        Assert.DoesNotContain("Colour", american, StringComparison.Ordinal);
        Assert.Contains("Fibre", Page(ExamplePageTests.Compile("tidewrack-scarf"), format).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_page_costs_little_more_than_its_text()
    {
        var hat = SampleHat.Compile();
        Page(hat, "html");
        var before = GC.GetAllocatedBytesForCurrentThread();
        Page(hat, "html");
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_500_000);
    }

    [Fact]
    public void A_file_with_sixty_thousand_rows_is_written_in_full()
    {
        var made = new HandMade().Heading("Rows");
        for (var i = 1; i <= 60_000; i++)
        {
            made.Row($"Row {i}", "K.", [10], [10]);
        }

        Assert.Contains("Row 60000", Page(made.Compile(), "html").Text, StringComparison.Ordinal);
    }

    /// <summary>A pattern of our own with everything that a source can hold, read as any other.</summary>
    internal static Compilation FromSource(string name)
    {
        var file = RepositoryRoot.Path("tests", "PatternForge.Tests", "Rendering", "Sources", name + ".pattern.md");
        return Compiler.Compile(new SourceText($"{name}.pattern.md", File.ReadAllText(file).ReplaceLineEndings("\n")));
    }

    internal static RenderedFile Page(Compilation compilation, string format, RenderOptions? options = null)
    {
        var result = Renderer.Render(compilation, OutputFormat.Find(format)!, null, options);
        Assert.Empty(result.Findings);
        return Assert.Single(result.Files);
    }
}
