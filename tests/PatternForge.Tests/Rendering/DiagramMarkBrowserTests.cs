using Microsoft.Playwright;
using PatternForge.Core;
using PatternForge.Tests.Charts;

namespace PatternForge.Tests.Rendering;

/// <summary>The row or round to work stands out in a crochet diagram, in a real browser.</summary>
public class DiagramMarkBrowserTests(Browser browser) : IClassFixture<Browser>
{
    [BrowserTheory]
    [InlineData("rounds")]
    [InlineData("filet")]
    [InlineData("Tunisian")]
    public async Task A_diagram_marks_the_row_to_work(string kind) =>
        await browser.Look(ReaderPages.Html(Source(kind)), 1280, async (page, _) =>
        {
            Assert.True(await page.Locator(".sheet g[data-row]").CountAsync() > 2);
            Assert.Equal(0, await page.Locator(".sheet [data-now]").CountAsync());
            var section = page.Locator("section:has(.sheet g[data-row]):has(li.row[data-rows])").First;
            var first = section.Locator("li.row[data-rows=\"1\"] .tick input");
            await first.CheckAsync();
            await Assertions.Expect(section.Locator("li.row[data-rows=\"2\"]")).ToHaveAttributeAsync("aria-current", "step");
            Assert.Equal(["2"], await NumbersOf(section, "yes"));
            Assert.DoesNotContain("2", await NumbersOf(section, "no"));
            Assert.Contains("1", await NumbersOf(section, "no"));
            Assert.True(await OpacityOf(section, "no") < 0.5);
            Assert.Equal(1, await OpacityOf(section, "yes"));
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            Assert.Equal(1, await OpacityOf(section, "no"));
            await page.EmulateMediaAsync(new() { Media = Media.Screen });
            await first.UncheckAsync();
            Assert.Equal(0, await page.Locator(".sheet [data-now]").CountAsync());
        });

    private static Compilation Source(string kind) => kind switch
    {
        "filet" => TunisianDrawingTests.Compile(TunisianDrawingTests.Filet, "crochet"),
        "Tunisian" => TunisianDrawingTests.Compile(TunisianDrawingTests.Cloth, "tunisian"),
        _ => ExamplePageTests.Compile("mooring-square-mat"),
    };

    private static async Task<string[]> NumbersOf(ILocator section, string now) =>
        await section.EvaluateAsync<string[]>("(e, now) => [...new Set([...e.querySelectorAll('.sheet [data-now=\"' + now + '\"]')].map((g) => g.getAttribute('data-row')))]", now);

    private static async Task<double> OpacityOf(ILocator section, string now) =>
        await section.Locator($".sheet [data-now={now}]").First.EvaluateAsync<double>("(e) => Number(getComputedStyle(e).opacity)");
}
