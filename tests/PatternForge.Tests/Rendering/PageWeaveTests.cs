using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

public class PageWeaveTests
{
    [Theory]
    [InlineData("<p>work 2 dc</p>", "<p>work 2 tr</p>", "<p>work 2 <span data-f=\"a\">dc</span><span data-f=\"d\" hidden=\"hidden\">tr</span></p>")]
    [InlineData("<p>a <b>dc</b> c</p>", "<p>a <b>tr</b> c</p>", "<p>a <b><span data-f=\"a\">dc</span><span data-f=\"d\" hidden=\"hidden\">tr</span></b> c</p>")]
    [InlineData("<ul>\n<li>x</li>\n</ul>", "<ul>\n<li>x</li>\n<li>y</li>\n</ul>", "<ul>\n<li>x</li>\n<li data-f=\"d\" hidden=\"hidden\">y</li>\n</ul>")]
    [InlineData("<tr><th colspan=\"2\">w</th><td>1</td><td>2</td></tr>", "<tr><th colspan=\"1\">w</th><td>1</td></tr>", "<tr><th colspan=\"2\" data-f=\"a\">w</th><th colspan=\"1\" data-f=\"d\" hidden=\"hidden\">w</th><td>1</td><td data-f=\"a\">2</td></tr>")]
    [InlineData("<p><a id=\"x-dc\" href=\"#x-dc\">q</a></p>", "<p><a id=\"x-tr\" href=\"#x-tr\">q</a> r</p>", "<p><a id=\"x-dc\" href=\"#x-dc\">q</a><span data-f=\"d\" hidden=\"hidden\"> r</span></p>")]
    [InlineData("<p><i aria-label=\"dc\">q</i> a</p>", "<p><i aria-label=\"tr\">q</i> b</p>", "<p><i aria-label=\"dc\" data-aria-label-a=\"dc\" data-aria-label-d=\"tr\">q</i> <span data-f=\"a\">a</span><span data-f=\"d\" hidden=\"hidden\">b</span></p>")]
    [InlineData("<svg aria-labelledby=\"t w\"><title id=\"t\">T</title><desc id=\"w\">dc</desc><g /></svg>", "<svg aria-labelledby=\"t w\"><title id=\"t\">T</title><desc id=\"w\">tr</desc><g /></svg>", "<svg aria-labelledby=\"t w\" data-aria-labelledby-a=\"t w\" data-aria-labelledby-d=\"t w-d\"><title id=\"t\">T</title><desc id=\"w\">dc</desc><desc id=\"w-d\">tr</desc><g /></svg>")]
    [InlineData("<svg aria-labelledby=\"t\"><title id=\"t\">T</title><text>dc</text></svg>", "<svg aria-labelledby=\"t\"><title id=\"t\">T</title><text>tr</text></svg>", "<svg aria-labelledby=\"t\" data-f=\"a\"><title id=\"t\">T</title><text>dc</text></svg><svg aria-labelledby=\"t-d\" data-f=\"d\" hidden=\"hidden\"><title id=\"t-d\">T</title><text>tr</text></svg>")]
    public void What_differs_stands_beside_each_other_and_what_is_the_same_stands_once(string plain, string other, string expected) =>
        Assert.Equal(Page(expected), PageWeave.Of(Page(plain), [new(1, 0, Page(other))]).Html);

    [Fact]
    public void Terms_and_units_that_change_in_different_words_need_no_page_with_both()
    {
        var woven = PageWeave.Of(Page("<p>2 dc for 10 cm</p>"), [new(1, 0, Page("<p>2 tr for 10 cm</p>")), new(0, 2, Page("<p>2 dc for 4 in</p>"))]);
        Assert.False(woven.NeedsBoth);
        Assert.Equal(Page("<p>2 tr for 4 in</p>"), Projected(woven.Html!, 'f'));
    }

    [Fact]
    public void Terms_and_units_that_change_in_the_same_words_need_one()
    {
        PageForm[] forms = [new(1, 0, Page("<p>size UK8</p>")), new(0, 2, Page("<p>size in8</p>"))];
        Assert.True(PageWeave.Of(Page("<p>size US8</p>"), forms).NeedsBoth);
        var woven = PageWeave.Of(Page("<p>size US8</p>"), [.. forms, new(1, 2, Page("<p>size both</p>"))]);
        Assert.Equal(Page("<p>size both</p>"), Projected(woven.Html!, 'f'));
    }

    [Fact]
    public void A_page_that_is_built_otherwise_or_does_not_differ_is_not_offered()
    {
        Assert.Single(PageWeave.Of(Page("<p>a</p>"), [new(1, 0, Page("<p id=\"x\">b</p>"))]).Failed);
        Assert.Single(PageWeave.Of(Page("<p>a</p>"), [new(1, 0, Page("<p>a</p>"))]).Failed);
        Assert.Single(PageWeave.Of("<head>a</head><body>b</body>", [new(1, 0, "<head>c</head><body>b</body>")]).Failed);
    }

    [Fact]
    public void What_one_form_puts_in_beside_what_another_changes_is_there_once()
    {
        var (one, two, three) = ("<p>q</p>\n", "<p>q</p>\n<p>q x</p>\n<p>q</p>\n<p>q</p>\n", "<p>dc r</p>\n<p>q x</p>\n<p>dc r</p>\n<p>dc r</p>\n");
        var html = PageWeave.Of(Page(one), [new(1, 0, Page(two)), new(0, 1, Page(three))]).Html!;
        Assert.Equal([Text(Page(one)), Text(Page(two)), Text(Page(three))], [Text(Projected(html, 'a')), Text(Projected(html, 'd')), Text(Projected(html, 'b'))]);
    }

    [Fact]
    public void Each_form_is_there_whole_whatever_differs()
    {
        string[] words = ["dc", "tr", "2", "<b>x</b>", "<b>y</b>", "<span class=\"sz s1\">3</span>", "<span class=\"or\"> (</span>", "in", "cm", "&amp;", "<br />"];
        var word = Gen.Int[0, words.Length - 1].Select(i => words[i]);
        var line = word.Array[0, 6].Select(w => "<p>" + string.Join(' ', w) + "</p>\n");
        var page = line.Array[1, 6].Select(l => string.Concat(l));
        Gen.Select(page, page, page).Sample(
            (one, two, three) =>
            {
                PageForm[] forms = [new(1, 0, Page(two)), new(0, 1, Page(three))];
                var woven = PageWeave.Of(Page(one), forms);
                if (woven.Html is not { } html)
                {
                    return; // the same, or both at once
                }

                Assert.Equal(Text(Page(one)), Text(Projected(html, 'a')));
                Assert.Equal(Text(Page(two)), Text(Projected(html, 'd')));
                Assert.Equal(Text(Page(three)), Text(Projected(html, 'b')));
            },
            iter: 2_000);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(55)]
    [InlineData(56)]
    [InlineData(64)]
    [InlineData(12_345)]
    public void The_hash_of_a_script_is_the_published_one(int length)
    {
        var bytes = Enumerable.Range(0, length).Select(i => (byte)(i * 31)).ToArray();
        Assert.Equal(SHA256.HashData(bytes), ScriptText.Sha256(bytes));
    }

    [Fact]
    public void The_policy_of_a_page_names_the_hash_of_its_script_and_nothing_else_that_could_run()
    {
        var html = PageTests.Page(ExamplePageTests.Compile("guillemot-hat"), "html").Text;
        var script = html[(html.IndexOf("<script>", StringComparison.Ordinal) + 8)..html.IndexOf("</script>", StringComparison.Ordinal)];
        var hash = "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        Assert.Contains($"content=\"default-src 'none'; script-src '{hash}'; style-src 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; form-action 'none'\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("innerHTML", script, StringComparison.Ordinal);
        Assert.DoesNotContain("insertAdjacent", script, StringComparison.Ordinal);
        Assert.DoesNotContain("eval", script, StringComparison.Ordinal);
    }

    internal static string AsWritten(string html) => Projected(html[html.IndexOf("<html", StringComparison.Ordinal)..], 'a');

    private static string Page(string body) => $"<html><head><title>t</title></head>\n<body>\n{body}\n</body></html>";

    /// <summary>The page as one form has it.</summary>
    private static string Projected(string html, char sign)
    {
        var page = XDocument.Parse(html, LoadOptions.PreserveWhitespace);
        foreach (var marked in page.Descendants().Where(e => e.Attribute("data-f") is not null).ToArray())
        {
            if (!marked.Attribute("data-f")!.Value.Contains(sign, StringComparison.Ordinal))
            {
                marked.Remove();
            }
            else if (marked.Name.LocalName == "span" && marked.Attribute("class") is null)
            {
                marked.ReplaceWith(marked.Nodes());
            }
            else
            {
                marked.Attribute("data-f")!.Remove();
                marked.Attribute("hidden")?.Remove();
            }
        }

        return page.ToString(SaveOptions.DisableFormatting);
    }

    // Where an element came or went, a line end may stand once more.
    private static string Text(string html) => string.Join(' ', XDocument.Parse(html).ToString(SaveOptions.DisableFormatting).Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)).Replace("> <", "><", StringComparison.Ordinal).Replace("<p></p>", "<p />", StringComparison.Ordinal);
}
