using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Corrections;

public class CorrectionsListTests
{
    private const string Hat = """
        ---
        title: Harbour hat
        version: 1.2
        date: 2025-06-01
        sizes: S (M, L)
        corrections:
          - {version: 1.1, date: 2025-03-01, rows: "Crown, Rnd 3", sizes: [L], text: Decrease 6 stitches}
          - {version: 1.2, date: 2025-06-01, text: Cast on 96 stitches}
          - {version: 1.2, date: 2025-06-01, rows: Brim, text: The needle is 3.5 mm}
        ---

        ## Corrections

        Found a mistake? Please write.
        """;

    [Fact]
    public void The_page_tells_the_newest_version_first_with_the_words_under_the_heading_behind_it()
    {
        var view = ViewBuilder.Build(Made(Hat));
        Assert.Equal(["Version 1.2, 2025-06-01", "Version 1.1, 2025-03-01"], view.Corrections.Select(c => c.Heading));
        Assert.Equal(["", "Brim"], view.Corrections[0].Items.Select(i => i.Name));
        Assert.Equal("Crown, Rnd 3, size L", view.Corrections[1].Items[0].Name);
        Assert.Single(view.CorrectionNotes);
        Assert.Contains(view.Contents, e => e.Id == "corrections");
        Assert.DoesNotContain(view.Closing, s => s.Role == "corrections");
    }

    [Theory]
    [InlineData("html", "href=\"#corrections\"")]
    [InlineData("md", "[Corrections](#corrections)")]
    public void The_top_of_the_page_leads_to_the_list_which_stands_once(string format, string link)
    {
        var page = Renderer.Render(Made(Hat), OutputFormat.Find(format)!).Files[0].Text;
        Assert.Contains(link, page, StringComparison.Ordinal);
        Assert.Contains("Found a mistake?", page, StringComparison.Ordinal);
        Assert.Contains("\nCorrections\n", Renderer.Render(Made(Hat), OutputFormat.Find("txt")!).Files[0].Text, StringComparison.Ordinal);
        Assert.Equal(1, page.Split(format == "html" ? "id=\"corrections\"" : "\n## Corrections\n").Length - 1);
    }

    [Theory]
    [InlineData("corrections: [None so far.]")]
    [InlineData("corrections: []")]
    [InlineData("corrections: None so far.")]
    public void A_list_that_says_there_are_none_is_no_mistake(string key) =>
        Assert.DoesNotContain(Made($"---\ntitle: Harbour hat\nversion: 1.2\n{key}\n---\n").Findings, f => f.Rule.Code[2] is '1' or '5');

    [Fact]
    public void An_order_from_the_newest_to_the_oldest_is_as_good() =>
        Assert.DoesNotContain(Made("---\ntitle: Harbour hat\nversion: 1.10\ncorrections:\n  - {version: 1.10, text: a}\n  - {version: 1.9, text: b}\n  - {version: 1.2, text: c}\n---\n").Findings, f => f.Rule.Code.StartsWith("PF5", StringComparison.Ordinal));

    private static Compilation Made(string text) => Compiler.Compile(new SourceText("hat.pattern.md", text));
}
