using System.Xml.Linq;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

/// <summary>The page with all patterns of a folder, and what each page says of the others.</summary>
public class ShelfTests
{
    private static ShelfView Examples() => ShelfBuilder.Build(ExamplePageTests.Names.Select(n => ShelfBuilder.Design(ExamplePageTests.Compile(n), n, ".html", false)));

    private static string Page(ShelfView shelf) => Renderer.Shelf(shelf).Files[0].Text;

    [Fact]
    public void The_shelf_of_the_examples_is_as_it_was_approved()
    {
        var made = Renderer.Shelf(Examples());
        Assert.Equal(["index.html", "studio.css"], made.Files.Select(f => f.Name));
        Golden.Match(made.Files[0].Text, "shelf/index.html");
        Assert.Contains("--accent", made.Files[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Designs_stand_by_title_and_one_designer_is_named_once()
    {
        var compiled = ExamplePageTests.Compile("hawser-cowl");
        var shelf = ShelfBuilder.Build([ShelfBuilder.Design(compiled, "b", ".html", false), ShelfBuilder.Design(ExamplePageTests.Compile("breakwater-pullover"), "a", ".html", false) with { Designer = compiled.Pattern.Facts.Designer }]);
        Assert.Equal(["Breakwater Pullover", "Hawser Cowl"], shelf.Designs.Select(d => d.Title));
        Assert.Equal($"Designs by {compiled.Pattern.Facts.Designer}", shelf.Title);
        Assert.All(shelf.Designs, d => Assert.Null(d.Designer));
        Assert.Equal("Designs", Examples().Designer is null ? Examples().Title : "Designs");
    }

    [Fact]
    public void Every_design_is_named_by_others_and_none_by_itself()
    {
        var shelf = Examples();
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var design in shelf.Designs)
        {
            var others = ShelfBuilder.Others(shelf, design.Stem!, null, ".html");
            Assert.InRange(others.Length, 1, ShelfBuilder.MostOthers);
            Assert.DoesNotContain(others, o => o.Title == design.Title);
            named.UnionWith(others.Select(o => o.Title));
        }

        Assert.Equal(shelf.Designs.Length, named.Count);
    }

    [Fact]
    public void Others_are_linked_on_the_web_alone_and_drafts_are_not_named()
    {
        var compiled = ExamplePageTests.Compile("hawser-cowl");
        DesignView Design(string stem, bool draft = false) => ShelfBuilder.Design(compiled, stem, ".html", draft) with { Title = stem };
        var shelf = ShelfBuilder.Build([Design("hats/one & two"), Design("socks/deep/three"), Design("four", draft: true), Design("five")]);
        Assert.Equal(["five", "socks/deep/three"], ShelfBuilder.Others(shelf, "hats/one & two", null, ".md").Select(o => o.Title).Order(StringComparer.Ordinal));
        Assert.All(ShelfBuilder.Others(shelf, "hats/one & two", null, ".md"), o => Assert.Null(o.Address));
        Assert.Contains("https://example.com/d/hats/one%20%26%20two.html", ShelfBuilder.Others(shelf, "socks/deep/three", "https://example.com/d/", ".html").Select(o => o.Address));
        Assert.Empty(ShelfBuilder.Others(shelf, "elsewhere", null, ".html"));
    }

    [Theory]
    [InlineData("html", "hats/cowl.html")]
    [InlineData("md", "hats/cowl.md")]
    [InlineData("txt", "hats/cowl.txt")]
    public void A_page_names_other_designs_unless_the_pattern_does_so_itself(string format, string address)
    {
        var other = ExamplePageTests.Compile("hawser-cowl");
        var hat = new HandMade().Compile();
        var shelf = ShelfBuilder.Build([ShelfBuilder.Design(hat, "hat", ".html", false), ShelfBuilder.Design(other, "hats/cowl", ".html", false)]);
        var options = new RenderOptions { Shelf = shelf, Stem = "hat", Site = "https://example.com/designs/" };
        Assert.Contains(address, PageTests.Page(hat, format, options).Text, StringComparison.Ordinal);

        var silent = new HandMade { Facts = new() { Omit = ["designs"] } };
        Assert.DoesNotContain(address, PageTests.Page(silent.Compile(), format, options).Text, StringComparison.Ordinal);
        var own = new HandMade();
        own.Heading("Other designs", "other-designs").Prose("A scarf of mine.");
        Assert.DoesNotContain(address, PageTests.Page(own.Compile(), format, options).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shelf_is_well_formed_and_harmless_whatever_patterns_say()
    {
        foreach (var said in new[] { "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "javascript:alert(1)", "</style>", "" })
        {
            var page = XDocument.Parse(Page(ShelfBuilder.Build([ShelfBuilder.Design(Hostile.Fill(() => said), said + "/x", ".html", true)])).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
            Assert.Empty(page.Descendants("script"));
            Assert.All(page.Descendants().Attributes(), a => Assert.False(a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase)));
            Assert.All(page.Descendants("a"), a => Assert.NotNull(SafeAddress.ForLink((string?)a.Attribute("href"))));
        }
    }
}
