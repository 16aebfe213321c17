using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.Playwright;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Core.Trials;
using PatternForge.Rendering;
using PatternForge.Rendering.Templates;
using PatternForge.Tests.Rendering;

namespace PatternForge.Tests.Trials;

/// <summary>What a test maker gets: the form in a browser, and the blank.</summary>
public class TestSheetTests(Browser browser) : IClassFixture<Browser>
{
    private static readonly string[] Sheets = ["guillemot-hat", "fairwater-jumper", "mooring-square-mat"];

    public static TheoryData<string> Examples() => [.. Sheets];

    [Fact]
    public void The_form_and_the_blank_of_a_size_are_as_they_were_approved()
    {
        var files = Renderer.TestSheet(Made("guillemot-hat"), 1).Files;
        Assert.Equal(["guillemot-hat.test-s.html", "guillemot-hat.test-s.yaml"], files.Select(f => f.Name));
        Golden.Match(files[0].Text, "trials/guillemot-hat.html");
        Golden.Match(files[1].Text, "trials/guillemot-hat.yaml");
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_blank_that_nobody_filled_in_is_read_without_a_finding(string name)
    {
        var pattern = Made(name);
        for (var size = 0; size < pattern.Pattern.Facts.Sizes.Count; size++)
        {
            var answers = AnswersReader.Read(new SourceText("blank.yaml", Renderer.TestSheet(pattern, size).Files[1].Text), pattern);
            Assert.Empty(answers.Findings.Select(f => f.Message));
            Assert.Equal(size, answers.Size);
            Assert.True(answers is { Gauges.IsEmpty: true, Yarns.IsEmpty: true, Comments.IsEmpty: true, Errors.IsEmpty: true, Questions.IsEmpty: true } || answers.Gauges.All(g => g is { Stitches: null, Rows: null }));
        }
    }

    [Fact]
    public void Only_the_script_of_the_form_may_run_and_nothing_may_be_fetched()
    {
        var page = Renderer.TestSheet(Made("guillemot-hat"), 0).Files[0].Text;
        var script = Regex.Match(page, "<script>(.*?)</script>", RegexOptions.Singleline).Groups[1].Value;
        Assert.Contains($"script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'", page, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_text_in_every_field_gives_a_form_that_is_well_formed_and_a_blank_that_can_be_read()
    {
        var count = 0;
        var made = Hostile.Fill(() => $"</script><script>alert({count++})</script>\"'&\\ : - #{count}\n---");
        foreach (var size in new[] { 0, 1 })
        {
            var files = Renderer.TestSheet(made, size).Files;
            var body = XDocument.Parse(Regex.Replace(files[0].Text.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal), "<script>\n.*?</script>", "", RegexOptions.Singleline));
            Assert.Empty(body.Descendants("script"));
            Assert.DoesNotContain(AnswersReader.Read(new SourceText("blank.yaml", files[1].Text), made).Findings, f => f.Rule.Code.StartsWith("PF10", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_template_of_ones_own_may_replace_the_script_and_is_trusted_by_its_hash()
    {
        var page = Renderer.TestSheet(Made("guillemot-hat"), 0, TemplateSet.With(new Dictionary<string, string>(StringComparer.Ordinal) { ["html/test-sheet.js"] = "var end = '</script>';" })).Files[0].Text;
        Assert.Contains("<script>var end = '<\\/script>';</script>", page, StringComparison.Ordinal);
    }

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task The_form_passes_the_accessibility_rules_and_never_scrolls_sideways(string name)
    {
        await browser.Look(Renderer.TestSheet(Made(name), 0).Files[0].Text, 320, async (page, requests) =>
        {
            foreach (var (width, dark) in new[] { (320, false), (1280, true) })
            {
                await Browser.Turn(page, width, dark);
                Assert.Empty(await Browser.FaultsOf(page));
                Assert.True(await Browser.TooWide(page) <= 0);
            }

            Assert.Single(requests);
        });
    }

    [BrowserFact]
    public async Task What_is_filled_in_is_kept_as_a_draft_and_saved_as_a_file_that_can_be_read_back()
    {
        var pattern = Made("guillemot-hat");
        await browser.Look(Renderer.TestSheet(pattern, 1).Files[0].Text, 390, async (page, _) =>
        {
            await page.GetByLabel("What shall we call you? (optional)").FillAsync("Wren \"the quick\"");
            await page.GetByLabel("MC: Ledge DK").FillAsync("46");
            await page.GetByLabel("Circumference, in cm").FillAsync("44,5");
            await page.GetByLabel("Stitches to 10 cm, plain").FillAsync("23.5");
            await page.GetByLabel("Crown").FillAsync("Clear.\nI liked it.");
            await page.GetByLabel("What seemed wrong to you?").FillAsync("Crown, Rnd 9: one stitch too few\nBrim: which needle?");
            await page.ReloadAsync();
            await Assertions.Expect(page.GetByLabel("MC: Ledge DK")).ToHaveValueAsync("46");

            var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save my answers as a file" }).ClickAsync());
            Assert.Equal("guillemot-hat.test-s.answers.json", download.SuggestedFilename);
            var answers = AnswersReader.Read(new SourceText("answers.json", await File.ReadAllTextAsync(await download.PathAsync())), pattern);
            Assert.Empty(answers.Findings.Select(f => f.Message));
            Assert.Equal((1, "1.0", "Wren \"the quick\""), (answers.Size, answers.Version, answers.Name));
            Assert.Equal(("MC", 46m), Assert.Single(answers.Yarns));
            Assert.Equal(("circumference", 44.5m), Assert.Single(answers.Measures));
            Assert.Equal(new GaugeGot("plain", 23.5m, null), Assert.Single(answers.Gauges));
            Assert.Equal(new SaidOf("Crown", "Clear.\nI liked it."), Assert.Single(answers.Comments));
            Assert.Equal(["Crown, Rnd 9 / one stitch too few", "Brim / which needle?"], answers.Errors.Select(e => $"{e.Key} / {e.Text}"));

            page.Dialog += (_, dialog) => dialog.AcceptAsync();
            await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Clear the form" }).ClickAsync();
            await page.ReloadAsync();
            await Assertions.Expect(page.GetByLabel("MC: Ledge DK")).ToHaveValueAsync("");
        });
    }

    [BrowserFact]
    public async Task Without_script_the_form_says_how_to_answer_and_offers_no_button_that_does_nothing() =>
        await browser.Look(
            Renderer.TestSheet(Made("guillemot-hat"), 0).Files[0].Text,
            390,
            async (page, _) =>
            {
                Assert.Equal(0, await page.GetByRole(AriaRole.Button).CountAsync());
                await Assertions.Expect(page.GetByText("The form cannot save your answers here")).ToBeVisibleAsync();
            },
            script: false);

    private static Compilation Made(string name)
    {
        var file = RepositoryRoot.Path("examples", name + ".pattern.md");
        return Compiler.Compile(new SourceText(file, File.ReadAllText(file)));
    }
}
