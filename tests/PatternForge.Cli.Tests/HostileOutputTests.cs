using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PatternForge.Cli.Tests;

/// <summary>What a stranger may have put into a pattern, its templates and its folder, in every file that is made of it.</summary>
public partial class HostileOutputTests
{
    private const string Evil = "</title></style></script><script>alert(1)</script><img src=x onerror=alert(2)>\" onload=\"alert(3)";

    // Every text of the header and the body holds a script; addresses run one.
    private static readonly string Pattern = """
        ---
        title: 'E'
        designer: 'E'
        version: 'E'
        craft: knitting
        terms: us
        level: easy
        level-reason: 'E'
        summary: 'E'
        sizes: {names: [S, 'M E'], finished: {'width E': [20 cm, 22 cm]}, ease: 'E'}
        gauge: {stitch: 'E', over: 10 cm, stitches: 20, rows: 28, tool: 'E'}
        yarn: {label: 'E', name: 'E', fibre: 'E', weight: 'E', colours: ['E'], put-up: 50 g = 100 m, needs: [100 m, 120 m], alternatives: [{name: 'E', note: 'E'}]}
        tools: ['E']
        notions: [{text: 'E', link: 'javascript:alert(4)'}]
        stitches: {'bob E': 'E'}
        abbreviations: ['E = E']
        notes: ['E']
        photos: [{file: '../secret.png', alt: 'E', caption: 'E'}, {file: '/etc/passwd', alt: 'E'}, {file: 'out.png', alt: 'E'}]
        videos: [{title: 'E', address: 'javascript:alert(5)'}]
        links: [{title: 'E', address: 'data:text/html,<script>alert(6)</script>'}]
        corrections: [{version: 'E', date: 'E', rows: 'E', text: 'E'}]
        contact: 'E javascript:alert(7)'
        ---

        ## About E

        E [click](javascript:alert(8)) ![E](../secret.png)

        ## Lace E

        CO 10 (12) sts.

        Row 1 (RS): *K2tog, yo; rep from * to end.

        Row 2: Purl.

        E: knit the E.

        ```chart
        rows: 1-2
        ```
        """.Replace("'E'", "'" + Evil.Replace("'", "''", StringComparison.Ordinal) + "'", StringComparison.Ordinal).Replace(" E", " " + Evil, StringComparison.Ordinal).Replace("E ", Evil + " ", StringComparison.Ordinal);

    [Fact]
    public void Nothing_that_a_pattern_says_runs_in_any_file_that_is_made_of_it()
    {
        using var folder = Folder();
        Outcome.Of(folder, "build", "designs", "--draft", "--format", "html,md,txt,json,listing", "--out", "release");
        Outcome.Of(folder, "test-pack", "designs/evil.pattern.md", "--out", "pack");
        folder.Write("diff.html", Outcome.Of(folder, "diff", "designs/evil.pattern.md", "designs/plain.pattern.md", "--format", "html").Out);
        folder.Write("diff-back.html", Outcome.Of(folder, "diff", "designs/plain.pattern.md", "designs/evil.pattern.md", "--format", "html").Out);
        var made = folder.Files().Where(f => !f.StartsWith("designs", StringComparison.Ordinal)).ToArray();
        Assert.Contains("release/index.html", made);
        Assert.Contains("release/evil.listing.html", made);
        Assert.Contains(made, f => f.StartsWith("release/evil", StringComparison.Ordinal) && f.EndsWith(".svg", StringComparison.Ordinal));
        Assert.Contains(made, f => f.StartsWith("pack/", StringComparison.Ordinal) && f.EndsWith(".html", StringComparison.Ordinal));
        foreach (var file in made.Where(f => f.EndsWith(".html", StringComparison.Ordinal) || f.EndsWith(".svg", StringComparison.Ordinal)))
        {
            Harmless(file, folder.Read(file));
        }

        Assert.DoesNotContain(made, f => f.Contains("secret", StringComparison.Ordinal) || f.Contains("passwd", StringComparison.Ordinal));
    }

    [Fact]
    public void A_link_out_of_the_folder_brings_no_file_into_the_release()
    {
        if (OperatingSystem.IsWindows())
        {
            return; // links need rights there
        }

        using var folder = Folder();
        folder.Write("secret.png", TakenPicture.Png(900, 900));
        File.CreateSymbolicLink(folder.At("designs/out.png"), folder.At("secret.png"));
        Outcome.Of(folder, "build", "designs/evil.pattern.md", "--draft", "--out", "release");

        // The pattern has no picture but those beyond its folder: none comes into the release, nor a copy of one, beside the page or in it.
        Assert.Contains("release/evil.html", folder.Files());
        Assert.DoesNotContain(folder.Files(), f => f.StartsWith("release/", StringComparison.Ordinal) && Path.GetExtension(f) is ".png" or ".jpg" or ".jpeg" or ".webp");
        Assert.DoesNotContain("data:image", folder.Read("release/evil.html"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("html/listing.html", "build", "--format", "listing")]
    [InlineData("text/listing.txt", "build", "--format", "listing")]
    [InlineData("html/shelf.html", "build")]
    [InlineData("html/test-sheet.html", "test-pack")]
    [InlineData("html/pattern.html", "build")]
    public void A_template_that_would_never_end_is_ended_and_told(string template, string command, params string[] more)
    {
        foreach (var bomb in (string[])["{{ for i in 1..2000000000 }}x{{ end }}", "{{ while true }}x{{ end }}", $"{{{{ include '{Path.GetFileName(template)}' }}}}", "{{ x = 'ab'; for i in 1..200; x = x + x; end; x }}"])
        {
            using var folder = Folder();
            folder.Write("own/" + template, bomb);
            var outcome = Outcome.Of(folder, [command, "designs", "--templates", "own", "--out", "release", .. more]);
            Assert.True(outcome.Code is 1 or 2, $"{template}, {bomb}: {outcome.Code} {outcome.Error}");
            Assert.NotEmpty(outcome.Error + outcome.Out);
            Assert.DoesNotContain("a fault of the tool", outcome.Error, StringComparison.Ordinal);
        }
    }

    private static TemporaryFolder Folder()
    {
        var folder = new TemporaryFolder();
        folder.Write("designs/evil.pattern.md", Pattern);
        folder.Write("designs/plain.pattern.md", "---\ntitle: Plain\nversion: 1.0\ncraft: knitting\nsizes: [S, M]\n---\n\n## Lace\n\nCO 10 (12) sts.\n\nRow 1: *K2tog, yo; rep from * to end.\n");
        return folder;
    }

    private static void Harmless(string name, string text)
    {
        // The form's own script, which its policy names by its hash, is the last thing on it and is no XML.
        if (name.Contains(".test-", StringComparison.Ordinal) && text.LastIndexOf("<script", StringComparison.Ordinal) is > 0 and var own)
        {
            Assert.DoesNotContain("alert(", text[own..], StringComparison.Ordinal);
            text = text[..own] + text[(text.LastIndexOf("</script>", StringComparison.Ordinal) + "</script>".Length)..];
        }

        var page = XDocument.Parse(name.EndsWith(".listing.html", StringComparison.Ordinal) ? $"<div>{text}</div>" : text.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
        foreach (var element in page.Descendants())
        {
            Assert.False(element.Name.LocalName is "script" && element.Value.Contains("alert(", StringComparison.Ordinal), $"{name}: a script of the pattern");
            Assert.False(element.Name.LocalName is "iframe" or "object" or "embed" or "base", $"{name}: {element.Name.LocalName}");
            foreach (var attribute in element.Attributes())
            {
                Assert.False(attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase), $"{name}: {attribute}");
                Assert.False(attribute.Name.LocalName is "href" or "src" or "action" && Runs().IsMatch(attribute.Value), $"{name}: {attribute}");
            }
        }
    }

    [GeneratedRegex(@"^\s*(javascript|vbscript|data:text)", RegexOptions.IgnoreCase)]
    private static partial Regex Runs();
}
