using System.Globalization;
using Microsoft.Playwright;
using PatternForge.Rendering;
using UglyToad.PdfPig;

namespace PatternForge.Tests.Rendering;

public class BrowserTests(Browser browser) : IClassFixture<Browser>
{
    // A grey square of one dot, so that pages hold their pictures themselves.
    private const string Dot = "data:image/gif;base64,R0lGODlhAQABAIAAAMLCwgAAACH5BAAAAAAALAAAAAABAAEAAAICRAEAOw==";

    // A grey picture that stands high on its page.
    private const string Tall = "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAZAAAAJYCAMAAAB7MkC6AAAAA1BMVEV3d3dY20ihAAABAElEQVR42u3BMQEAAADCoPVPbQ0PoAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAvgysBQABQtQeEgAAAABJRU5ErkJggg==";

    public static TheoryData<string> Pages() => [.. PageTests.Samples.Keys, "draft", .. ExamplePageTests.Names];

    [BrowserTheory]
    [MemberData(nameof(Pages))]
    public async Task A_page_passes_the_accessibility_rules_of_WCAG_2_2_AA_never_scrolls_sideways_and_asks_for_nothing_but_itself(string sample) =>
        await browser.Look(Html(sample), 320, async (page, requests) =>
        {
            foreach (var width in new[] { 320, 360, 390, 768, 1280 })
            {
                await Browser.Turn(page, width, dark: false);
                Assert.Equal((sample, width, 0), (sample, width, Math.Max(0, await Browser.TooWide(page))));
                if (width is 360 or 1280)
                {
                    Assert.Empty(await Browser.FaultsOf(page));
                    await Browser.Turn(page, width, dark: true);
                    Assert.Empty(await Browser.FaultsOf(page, coloursAlone: true));
                }
            }

            Assert.All(requests.Skip(1), r => Assert.StartsWith("data:", r, StringComparison.Ordinal));
        });

    [BrowserTheory]
    [InlineData("guillemot-hat", "large-print")]
    [InlineData("breakwater-pullover", "large-print")]
    [InlineData("mooring-square-mat", "large-print")]
    [InlineData("guillemot-hat", "low-ink")]
    [InlineData("tidewrack-scarf", "screen-reader")]
    [InlineData("tidewrack-scarf", "left-handed")]
    [InlineData("tidewrack-scarf", "charts-only")]
    [InlineData("hawser-cowl", "words-only")]
    [InlineData("fairwater-jumper", "uk+size-5x")]
    [InlineData("mooring-square-mat", "both-terms+inches")]
    [InlineData("breakwater-pullover", "marked-m+spelled-out")]
    public async Task An_edition_passes_them_too_and_never_scrolls_sideways(string name, string edition)
    {
        var html = ReaderPages.Html(ReaderPages.Edition(ExamplePageTests.Compile(name), edition));
        await browser.Look(html, 320, async (page, _) =>
        {
            Assert.Equal((name, edition, 0), (name, edition, Math.Max(0, await Browser.TooWide(page))));
            Assert.Empty(await Browser.FaultsOf(page));
            await Browser.Turn(page, 1280, dark: true);
            Assert.Equal((name, edition, 0), (name, edition, Math.Max(0, await Browser.TooWide(page))));
            Assert.Empty(await Browser.FaultsOf(page));
        });
    }

    [BrowserFact]
    public async Task The_page_passes_them_too_while_one_size_stands_out() =>
        await browser.Look(Html("cairn-yoke-pullover"), 390, async (page, _) =>
        {
            await page.Locator("#size_4").CheckAsync();
            Assert.Empty(await Browser.FaultsOf(page));
            await Browser.Turn(page, 1280, dark: true);
            Assert.Empty(await Browser.FaultsOf(page));
        });

    [BrowserFact]
    public async Task Neighbouring_sizes_differ_in_colour_and_in_their_line_and_so_do_the_names_in_the_tables() =>
        await browser.Look(
            Html("cairn-yoke-pullover"),
            1280,
            async (page, _) =>
            {
                var looks = await page.Locator(".row .text").First.Locator(".sz").EvaluateAllAsync<string[][]>("all => all.map(v => [v.innerText, getComputedStyle(v).color, getComputedStyle(v).textDecorationLine + ' ' + getComputedStyle(v).textDecorationStyle])");
                Assert.Equal(["88", "92", "96", "96", "100", "104", "104", "108", "112"], looks.Select(l => l[0]));
                Assert.Equal(9, looks.Select(l => l[1]).Distinct().Count());
                Assert.All(looks.Zip(looks.Skip(1)), pair => Assert.NotEqual(pair.First[2], pair.Second[2]));
                var names = await page.Locator("#sizes tbody th .sz").EvaluateAllAsync<string[]>("all => all.map(v => getComputedStyle(v).color)");
                Assert.Equal(looks.Select(l => l[1]), names);
            });

    [BrowserFact]
    public async Task One_size_can_stand_out_without_a_script() =>
        await browser.Look(
            Html("saltgrass-hat"),
            390,
            async (page, _) =>
            {
                var chosen = page.Locator(".row .text .s4").First;
                var other = page.Locator(".row .text .s1").First;
                await Assertions.Expect(chosen).ToHaveCSSAsync("font-weight", "400");
                await page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "Adult M" }).CheckAsync();
                await Assertions.Expect(chosen).ToHaveCSSAsync("font-weight", "700");
                await Assertions.Expect(other).ToHaveCSSAsync("font-weight", "400");
            },
            script: false);

    [BrowserTheory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task A_printed_line_of_a_table_and_a_photo_are_never_split_over_two_pages(string paper)
    {
        string Words(int i) => string.Join(' ', Enumerable.Repeat("so many words", 1 + (i * 7 % 30)));
        var sizes = Enumerable.Range(1, 60).Select(i => $"size{i}e").ToArray();
        decimal[] values = [.. sizes.Select((_, i) => 1000m + i)];
        var made = new HandMade
        {
            Facts = new()
            {
                Title = new("Tables", default),
                Sizes = new([.. sizes]),
                Finished = [new("width", HandMade.Each(HandMade.Cm, values), default)],
                Photos = [.. Enumerable.Range(1, 30).Select(i => new Core.Model.Photo($"{i}.png", "alt", $"caption{i}e {Words(i)} ends{i}e", default))],
            },
        };
        made.Heading("Colours", "notes").Prose("| Colour | Words |\n| --- | --- |\n" + string.Join('\n', Enumerable.Range(1, 60).Select(i => $"| line{i}e | {Words(i)} close{i}e |")));
        var html = PageTests.Page(made.Compile(), "html", new RenderOptions { Picture = _ => new(Tall) }).Text;
        await browser.Look(html, 1280, async (page, _) =>
        {
            using var pdf = PdfDocument.Open(await page.PdfAsync(new PagePdfOptions { Format = paper, PreferCSSPageSize = false }));
            var pages = pdf.GetPages().ToArray();
            var texts = Array.ConvertAll(pages, p => string.Concat(p.Letters.Select(l => l.Value)).Replace(" ", "", StringComparison.Ordinal));
            bool Together(string one, string other) => texts.Any(t => t.Contains(one, StringComparison.Ordinal) && t.Contains(other, StringComparison.Ordinal));
            Assert.All(Enumerable.Range(1, 60), i => Assert.True(Together($"line{i}e", $"close{i}e"), $"line {i} of the table in prose is split"));
            Assert.All(Enumerable.Range(1, 60), i => Assert.True(Together($"size{i}e", $"size{i}e{999 + i}"), $"size {i} is split"));
            Assert.All(Enumerable.Range(1, 30), i => Assert.True(Together($"caption{i}e", $"ends{i}e"), $"the words under photo {i} are split"));

            // A picture that is split is drawn on both pages, and so would be counted twice.
            Assert.Equal(30, pages.Sum(p => p.GetImages().Count()));
            for (var i = 0; i < pages.Length; i++)
            {
                Assert.Equal(texts[i].Split("caption", StringSplitOptions.None).Length - 1, pages[i].GetImages().Count());
            }
        });
    }

    [BrowserFact]
    public async Task A_page_needs_no_script() =>
        await browser.Look(
            Html("saltgrass-hat"),
            390,
            async (page, _) =>
            {
                var box = page.GetByRole(AriaRole.Checkbox, new PageGetByRoleOptions { Name = "Rnd 12" });
                await page.GetByText("Rnd 12").ClickAsync();
                await Assertions.Expect(box).ToBeCheckedAsync();
            },
            script: false);

    [BrowserFact]
    public async Task The_first_key_leads_to_a_link_that_skips_to_the_instructions() =>
        await browser.Look(Html("saltgrass-hat"), 390, async (page, _) =>
        {
            await page.Keyboard.PressAsync("Tab");
            await Assertions.Expect(page.GetByText("Skip to the instructions")).ToBeFocusedAsync();
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page.Locator("#work")).ToBeFocusedAsync();
        });

    [BrowserTheory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task A_printed_row_is_never_split_over_two_pages(string paper)
    {
        var made = new HandMade { Facts = new() { Title = new("Rows", default) } }.Heading("Body", "body");
        for (var i = 1; i <= 150; i++)
        {
            var words = string.Join(' ', Enumerable.Repeat("k2, p2,", 1 + (i * 7 % 60)));
            made.Row($"label{i}e", $"begin{i}e {words} end{i}e.", [10], [1000 + i], numbers: i % 9 == 0 ? [.. Enumerable.Range(1, i % 40 + 2)] : null);
        }

        await browser.Look(PageTests.Page(made.Compile(), "html").Text, 1280, async (page, _) =>
        {
            using var pdf = PdfDocument.Open(await page.PdfAsync(new PagePdfOptions { Format = paper, PreferCSSPageSize = false }));
            var pages = pdf.GetPages().Select(p => string.Concat(p.Letters.Select(l => l.Value))).ToArray();
            Assert.InRange(pages.Length, 5, 60);
            for (var i = 1; i <= 150; i++)
            {
                var at = new[] { $"label{i}e", $"begin{i}e", $"end{i}e.", $"{1000 + i}sts" }
                    .Select(word => Array.FindIndex(pages, text => text.Replace(" ", "", StringComparison.Ordinal).Contains(word, StringComparison.Ordinal))).ToArray();
                Assert.True(at.All(n => n >= 0 && n == at[0]), $"row {i} stands on pages {string.Join(", ", at)}");
            }
        });
    }

    [BrowserFact]
    public async Task Every_printed_page_is_numbered_and_a_draft_says_so_on_each() =>
        await browser.Look(Html("draft"), 1280, async (page, _) =>
        {
            using var pdf = PdfDocument.Open(await page.PdfAsync(new PagePdfOptions { Format = "A4" }));
            foreach (var printed in pdf.GetPages())
            {
                var text = string.Concat(printed.Letters.Select(l => l.Value)).Replace(" ", "", StringComparison.Ordinal);
                Assert.Contains("Draft,notforrelease", text, StringComparison.Ordinal);
                Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{printed.Number}/{pdf.NumberOfPages}"), text, StringComparison.Ordinal);
                Assert.Contains("SaltgrassHat", text, StringComparison.Ordinal);
            }
        });

    private static string Html(string sample)
    {
        var options = new RenderOptions { Draft = sample == "draft", Picture = _ => new(Dot) };
        var compile = PageTests.Samples.GetValueOrDefault(sample == "draft" ? "saltgrass-hat" : sample) ?? (() => ExamplePageTests.Compile(sample));
        return PageTests.Page(compile(), "html", options).Text;
    }
}
