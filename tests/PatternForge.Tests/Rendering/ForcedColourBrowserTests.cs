using Microsoft.Playwright;
using PatternForge.Rendering;

namespace PatternForge.Tests.Rendering;

/// <summary>Pages in colours that the system forces, and enlarged to twice their size, in a real browser.</summary>
public class ForcedColourBrowserTests(Browser browser) : IClassFixture<Browser>
{
    // Buttons and fields that are shown and have neither an edge, nor a shape of their own that the browser draws.
    private const string Invisible = """
        () => [...document.querySelectorAll('button, select, textarea, input:not([type=hidden])')].filter((e) => e.getClientRects().length > 0).filter((e) => {
          const style = getComputedStyle(e);
          const box = e.getBoundingClientRect();
          const isDrawn = ['radio', 'checkbox', 'range'].includes(e.type) ? style.appearance !== 'none' || parseFloat(style.borderTopWidth) > 0 : parseFloat(style.borderBottomWidth) > 0;
          const isClipped = style.opacity === '0' || style.clipPath !== 'none' || style.position === 'absolute';
          return box.width < 1 || box.height < 1 || (!isDrawn && !isClipped);
        }).map((e) => e.outerHTML.slice(0, 120))
        """;

    [BrowserTheory]
    [InlineData("page")]
    [InlineData("form")]
    [InlineData("corrections")]
    [InlineData("shelf")]
    public async Task Nothing_is_lost_in_forced_colours_and_at_twice_the_size(string kind) =>
        await browser.Look(Html(kind), 640, async (page, _) =>
        {
            // 1280 dots of a screen at 200 % are 640 of the page.
            await page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active });
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active, ColorScheme = scheme });
                Assert.True(await page.EvaluateAsync<bool>("() => matchMedia('(forced-colors: active)').matches"));
                Assert.Equal(0, Math.Max(0, await Browser.TooWide(page)));
                Assert.Empty(await page.EvaluateAsync<string[]>(Invisible));
            }
        });

    private static string Html(string kind) => kind switch
    {
        "form" => Renderer.TestSheet(ExamplePageTests.Compile("guillemot-hat"), 0).Files[0].Text,
        "corrections" => File.ReadAllText(RepositoryRoot.Path("tests", "corpus", "versions", "thole-mitts.diff.html")),
        "shelf" => File.ReadAllText(RepositoryRoot.Path("tests", "golden", "shelf", "index.verified.html")),
        _ => ReaderPages.Html(ExamplePageTests.Compile("fairwater-jumper")),
    };
}
