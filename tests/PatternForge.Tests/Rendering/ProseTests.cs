using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Rendering;

public class ProseTests
{
    [Theory]
    [InlineData("*a* **b** `c`", "<p><em>a</em> <strong>b</strong> <code>c</code></p>")]
    [InlineData("<b>x</b>", "<p>&lt;b&gt;x&lt;/b&gt;</p>")]
    [InlineData("[x](https://example.com)", "<p><a href=\"https://example.com\">x</a></p>")]
    [InlineData("[x](javascript:alert(1))", "<p>x</p>")]
    [InlineData("![x](photos/a.png)", "<p><img src=\"photos/a.png\" alt=\"x\" /></p>")]
    [InlineData("![x](https://example.com/a.png)", "<p>x</p>")]
    [InlineData("<javascript:alert(1)>", "<p>javascript:alert(1)</p>")]
    [InlineData("## Big", "<p class=\"minor\"><strong>Big</strong></p>")]
    [InlineData("a  \nb", "<p>a<br />\nb</p>")]
    [InlineData("&#1;&amp;", "<p>\ufffd&amp;</p>")]
    public void Prose_lands_in_html(string markdown, string expected) => Assert.Equal(expected, Prose.ToHtml(new ProseText(markdown)));

    [Theory]
    [InlineData("*a* **b** `c`", "*a* **b** `c`")]
    [InlineData("a < b", "a &lt; b")]
    [InlineData("\\<b>", "&lt;b>")]
    [InlineData("`<b>`", "`<b>`")]
    [InlineData("<b>x</b>", "&lt;b>x&lt;/b>")]
    [InlineData("[x](https://example.com)", "[x](https://example.com)")]
    [InlineData("[x](javascript:alert(1))", "x")]
    [InlineData("![x](https://example.com/a.png)", "x")]
    [InlineData("<https://example.com>", "<https://example.com>")]
    [InlineData("<javascript:alert(1)>", "javascript:alert(1)")]
    [InlineData("## Big", "**Big**")]
    [InlineData("```\nnever closed", "```\nnever closed\n```")]
    [InlineData("    set", "set")]
    [InlineData("x\n\n    set", "x\n\n```\nset\n```")]
    public void Prose_lands_in_markdown(string markdown, string expected) => Assert.Equal(expected, Prose.ToMarkdown(markdown));

    [Theory]
    [InlineData("> ")]
    [InlineData("- ")]
    [InlineData("*")]
    [InlineData("[")]
    [InlineData("(")]
    [InlineData("`a")]
    public void Deep_nesting_ends_in_text(string piece)
    {
        var deep = string.Concat(Enumerable.Repeat(piece, 20_000)) + "x";
        Assert.Contains("x", Prose.ToHtml(new ProseText(deep)), StringComparison.Ordinal);
        Assert.Contains("x", Prose.ToMarkdown(deep), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://example.com/x", true)]
    [InlineData("HTTP://example.com", true)]
    [InlineData("mailto:a@example.com", true)]
    [InlineData("other.html#part", true)]
    [InlineData("../a/b.html", true)]
    [InlineData("javascript:alert(1)", false)]
    [InlineData("JavaScript:alert(1)", false)]
    [InlineData("java\tscript:alert(1)", false)]
    [InlineData("\u0001javascript:alert(1)", false)]
    [InlineData("data:text/html,x", false)]
    [InlineData("vbscript:x", false)]
    [InlineData("file:///etc/passwd", false)]
    [InlineData("ftp://example.com", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void Links_lead_to_the_web_to_mail_and_to_files_beside_the_page(string? address, bool safe) =>
        Assert.Equal(safe, SafeAddress.ForLink(address) is not null);

    [Theory]
    [InlineData("photos/a b.jpg", true)]
    [InlineData("a.png", true)]
    [InlineData("https://example.com/a.png", false)]
    [InlineData("//example.com/a.png", false)]
    [InlineData("/a.png", false)]
    [InlineData("\\\\host\\a.png", false)]
    [InlineData("data:image/png;base64,AA", false)]
    [InlineData("C:\\a.png", false)]
    public void Pictures_come_from_files_beside_the_page(string address, bool safe) =>
        Assert.Equal(safe, SafeAddress.ForImage(address) is not null);

    [Theory]
    [InlineData("help@example.com", "mailto:help@example.com")]
    [InlineData("https://example.com/help", "https://example.com/help")]
    [InlineData("mailto:help@example.com", "mailto:help@example.com")]
    [InlineData("Write to help@example.com", null)]
    [InlineData("@perrin", null)]
    [InlineData("a@b@c.com", null)]
    [InlineData("javascript:alert(1)", null)]
    public void A_contact_leads_where_it_says(string words, string? address) => Assert.Equal(address, SafeAddress.FromWords(words));
}
