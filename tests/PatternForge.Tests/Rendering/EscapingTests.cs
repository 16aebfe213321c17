using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using CsCheck;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

public class EscapingTests
{
    private static readonly string[] Texts =
    [
        "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onmouseover='alert(1)", "</style></title></textarea><b>", "{{ title }} %>", "<!-- -->", "]]>",
        "a & b &amp; &#x3c;b&gt;", "javascript:alert(1)", "JaVaScRiPt:alert(1)", "java\nscript:alert(1)", " data:text/html,<b>", "vbscript:x", "//example.com/x", "https://example.com/?a=1&b=\"2\"",
        "[x](javascript:alert(1))", "![x](https://example.com/x.png)", "<javascript:alert(1)>", "[x]: javascript:alert(1)\n\n[x]", "| a | b |\n| - | - |\n| `|` | <i> |", "a | b || c",
        "# h\n## h", "- x\n- y", "1. x", "> q", "```\n<b>\n````", "~~~", "***", "---", "= x", "\\", "\\<b>", "\\\\<b>", "`<b>`", "``<b>", "*k2, p2; rep from * to end", "_x_ __y__", "[^1]", "$x$",
        "tab\there", "nul\0bell\a\u001b[31m", "\ud800 lone", "lone \udc00", "\ufffe\uffff", "line\rline\r\nline\u2028line", "\u202e right to left", "é 日本 🧶", "", "   ", "    indented", "&nbsp;&lt;script&gt;",
        "<https://example.com/<b>>", "javascript&colon;alert(1)", "[x](javascript&colon;alert(1))", "java&Tab;script:alert(1)", "x\"; } body { display: none } @import 'http://example.com'; a { content: \"", "</style>", "file.png\" onload=\"x", "<svg/onload=alert(1)>", "www.example.com/<b>", "a@example.com",
    ];

    private static readonly string s_script = ScriptText.Of(File.ReadAllText(RepositoryRoot.Path("templates", "html", "page.js")));

    [Fact]
    public void Nothing_that_a_designer_writes_becomes_a_tag_a_script_or_a_dangerous_link()
    {
        foreach (var text in Texts)
        {
            CheckHtml(PageTests.Page(Hostile.Fill(() => text), "html").Text);
            CheckMarkdown(PageTests.Page(Hostile.Fill(() => text), "md").Text);
        }
    }

    [Fact]
    public void Any_text_in_every_field_gives_a_page_that_is_well_formed_and_harmless()
    {
        var piece = Gen.OneOf(Gen.Int[0, Texts.Length - 1].Select(i => Texts[i]), Gen.String, Gen.String[Gen.Char["<>&\"'`*_[]()!|\\#-+.~={}:/ \n\tabjs01"], 0, 12]);
        piece.Array[1, 24].Sample(
            pieces =>
            {
                var at = 0;
                string Next() => pieces[at++ % pieces.Length] + pieces[(at * 7) % pieces.Length];
                CheckHtml(PageTests.Page(Hostile.Fill(Next), "html").Text);
                at = 0;
                CheckMarkdown(PageTests.Page(Hostile.Fill(Next), "md").Text);
            },
            iter: 200);
    }

    [Fact]
    public void A_text_reads_on_the_page_as_it_was_written()
    {
        const string Title = "Knit & <script>purl</script> \"both\" 'ways' | *here*";
        var made = new HandMade { Facts = new() { Title = new(Title, default), Designer = Title } };
        made.Heading(Title).Row("Row 1", Title);
        var html = Parse(PageTests.Page(made.Compile(), "html").Text);
        Assert.Equal(Title, html.Descendants("h1").Single().Value);
        Assert.Equal(Title, html.Descendants("h2").Single(h => (string?)h.Attribute("id") != "reader_h").Value);
        Assert.Equal(Title, html.Descendants("div").Single(d => (string?)d.Attribute("class") == "text").Value.Trim());

        var markdown = Markdown.Parse(PageTests.Page(made.Compile(), "md").Text);
        Assert.Equal(Title, Plain(markdown.Descendants<HeadingBlock>().First().Inline!));
        Assert.EndsWith(Title, Plain(markdown.Descendants<ListItemBlock>().Single().Descendants<ParagraphBlock>().Single().Inline!), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pipe_does_not_split_a_cell_of_a_table()
    {
        var made = new HandMade { Facts = new() { Sizes = new(["S | M", "L`|`"]), Finished = [new("a | b", HandMade.Each(HandMade.Cm, 1, 2), default)] } };
        var page = Markdown.Parse(PageTests.Page(made.Compile(), "md").Text, new MarkdownPipelineBuilder().UsePipeTables().Build());
        var table = page.Descendants<Table>().Single();
        Assert.All(table.OfType<TableRow>(), row => Assert.Equal(3, row.Count));
    }

    [Theory]
    [InlineData("Knit 5 & purl", "Knit 5 &amp; purl")]
    [InlineData("a\0b", "a\ufffdb")]
    [InlineData("<b class=\"x\">", "&lt;b class=&quot;x&quot;&gt;")]
    [InlineData("it's", "it&#39;s")]
    public void Html_is_escaped(string text, string expected) => Assert.Equal(expected, Escaping.Html(text));

    [Theory]
    [InlineData("*k2, p2; rep from * to end", "\\*k2, p2; rep from \\* to end")]
    [InlineData("84 (92, 100) sts.", "84 (92, 100) sts.")]
    [InlineData("3.5 mm", "3.5 mm")]
    [InlineData("1. row", "1\\. row")]
    [InlineData("1) row", "1\\) row")]
    [InlineData("- row", "\\- row")]
    [InlineData("k2-tog", "k2-tog")]
    [InlineData("# 4", "\\# 4")]
    [InlineData("yarn #4", "yarn #4")]
    [InlineData("a < b & c > d", "a &lt; b & c > d")]
    [InlineData("&lt;", "&amp;lt;")]
    [InlineData("two\nlines", "two lines")]
    public void Markdown_is_escaped_no_more_than_it_must_be(string text, string expected) => Assert.Equal(expected, Escaping.Markdown(text));

    [Fact]
    public void A_string_of_a_style_sheet_cannot_be_ended_from_inside() =>
        Assert.Equal("\"a\\22 \\3b  \\7d  \\3c \\2f style\\3e \"", Escaping.CssString("a\"; } </style>"));

    [Fact]
    public void A_fence_is_longer_than_any_in_its_text() =>
        Assert.Equal("`````\na ```` b\n`````", Escaping.MarkdownFence("a ```` b"));

    private static XDocument Parse(string html)
    {
        using var reader = XmlReader.Create(new StringReader(html), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null });
        return XDocument.Load(reader, LoadOptions.PreserveWhitespace);
    }

    private static void CheckHtml(string html)
    {
        var page = Parse(html);
        string[] known =
        [
            "html", "aside", "head", "meta", "title", "style", "body", "a", "p", "strong", "header", "h1", "h2", "h3", "h4", "h5", "h6", "svg", "defs", "pattern", "path", "rect", "main", "section", "nav", "ul", "li", "ol",
            "div", "dl", "dt", "dd", "span", "figure", "img", "figcaption", "table", "caption", "colgroup", "col", "thead", "tbody", "tr", "th", "td", "b", "em", "label", "input", "fieldset", "legend", "pre", "code", "blockquote", "hr", "br", "footer", "script", "button", "output",
        ];
        foreach (var element in page.Descendants())
        {
            Assert.Contains(element.Name.LocalName, known);
            foreach (var attribute in element.Attributes())
            {
                Assert.False(attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase), attribute.ToString());
                if (attribute.Name.LocalName is "href" or "src")
                {
                    var safe = element.Name.LocalName == "img" ? SafeAddress.ForImage(attribute.Value) : SafeAddress.ForLink(attribute.Value);
                    Assert.True(safe is not null, attribute.ToString());
                }
            }
        }

        var ids = page.Descendants().Select(e => (string?)e.Attribute("id")).OfType<string>().ToArray();
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Single(page.Descendants("style"));
        Assert.Equal(s_script.Replace("<![CDATA[", "", StringComparison.Ordinal).Replace("]]>", "", StringComparison.Ordinal), Assert.Single(page.Descendants("script")).Value);
        Assert.Empty(page.Descendants("script").Single().Attributes());
        Assert.Single(page.Descendants("meta"), m => (string?)m.Attribute("http-equiv") == "Content-Security-Policy" && ((string?)m.Attribute("content"))!.Contains($"script-src '{ScriptText.Hash(s_script)}';", StringComparison.Ordinal));
        var levels = page.Descendants().Where(e => e.Name.LocalName.Length == 2 && e.Name.LocalName[0] == 'h' && char.IsAsciiDigit(e.Name.LocalName[1]))
            .Select(e => int.Parse(e.Name.LocalName[1..], CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(1, levels[0]);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.InRange(pair.Second, 2, pair.First + 1));
    }

    private static void CheckMarkdown(string markdown)
    {
        var page = Markdown.Parse(markdown, new MarkdownPipelineBuilder().UsePipeTables().UseAutoLinks().Build());
        Assert.DoesNotContain(page.Descendants(), n => n is HtmlBlock or HtmlInline);
        foreach (var link in page.Descendants<LinkInline>())
        {
            Assert.True((link.IsImage ? SafeAddress.ForImage(link.Url) : SafeAddress.ForLink(link.Url)) is not null, link.Url);
        }

        Assert.All(page.Descendants<AutolinkInline>(), auto => Assert.NotNull(SafeAddress.ForLink(auto.IsEmail ? "mailto:" + auto.Url : auto.Url)));
    }

    private static string Plain(ContainerInline inline) => string.Concat(inline.Descendants().Select(n => n switch
    {
        LiteralInline literal => literal.Content.ToString(),
        HtmlEntityInline entity => entity.Transcoded.ToString(),
        _ => "",
    }));
}
