using System.Globalization;
using Microsoft.Playwright;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

/// <summary>What a reader can do with a page, in a real browser.</summary>
public class ReaderBrowserTests(Browser browser) : IClassFixture<Browser>
{
    public static TheoryData<string> Examples() => [.. ExamplePageTests.Names];

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task A_chosen_size_shows_just_what_the_edition_of_that_size_says(string example)
    {
        var plain = ExamplePageTests.Compile(example);
        var editions = ReaderPages.SizeEditions(plain);
        var expected = new List<string[]>();
        foreach (var edition in editions)
        {
            await browser.Look(ReaderPages.Sheet(ReaderPages.Edition(plain, edition)), 1280, async (page, _) => expected.Add(await ReaderPages.RowsOf(page)));
        }

        await browser.Look(ReaderPages.Html(plain), 1280, async (page, _) =>
        {
            Assert.Equal(editions.Length > 1 ? editions.Length + 1 : 0, await page.Locator("#reader input[name=size]").CountAsync());
            var whole = await ReaderPages.RowsOf(page);
            for (var i = 0; i < editions.Length; i++)
            {
                await ReaderPages.Choose(page, "size", (i + 1).ToString(CultureInfo.InvariantCulture));
                Assert.Equal(expected[i], await ReaderPages.RowsOf(page));
                foreach (var table in await page.Locator("#sizes table.figures:has([data-of]), #yarn table.amounts:has([data-of])").AllAsync())
                {
                    Assert.Equal(1, await table.Locator("tbody tr:visible").CountAsync());
                }
            }

            if (editions.Length > 1)
            {
                await ReaderPages.Choose(page, "others", "faint");
                Assert.Equal(whole, await ReaderPages.RowsOf(page));
                await ReaderPages.Choose(page, "size", "0");
                Assert.Equal(whole, await ReaderPages.RowsOf(page));
            }
        });
    }

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task Chosen_terms_and_units_show_just_what_their_edition_says(string example)
    {
        var plain = ExamplePageTests.Compile(example);
        await browser.Look(ReaderPages.Html(plain), 1280, async (page, _) =>
        {
            var units = await Choices(page, "units");
            var terms = await Choices(page, "terms");
            Assert.Equal(2, terms.Length); // every example has its other terms
            foreach (var term in terms)
            {
                foreach (var unit in units.DefaultIfEmpty((Value: "0", Name: "as written")))
                {
                    string[] names = [.. term.Value == "0" ? [] : new[] { term.Name.ToLowerInvariant() }, .. unit.Value == "0" ? [] : new[] { unit.Name }];
                    string[] expected = [];
                    await browser.Look(ReaderPages.Sheet(ReaderPages.Edition(plain, names)), 1280, async (sheet, _) => expected = await ReaderPages.WordsOf(sheet));
                    await ReaderPages.Choose(page, "terms", term.Value);
                    if (units.Length > 0)
                    {
                        await ReaderPages.Choose(page, "units", unit.Value);
                    }

                    Assert.Equal(expected, await ReaderPages.WordsOf(page));
                }
            }
        });
    }

    [BrowserFact]
    public async Task Terms_and_size_are_chosen_together()
    {
        var plain = ExamplePageTests.Compile("shingle-bank-vest");
        var sizes = ReaderPages.SizeEditions(plain);
        string[] expected = [];
        await browser.Look(ReaderPages.Html(ReaderPages.Edition(plain, "uk", sizes[4])), 1280, async (page, _) => expected = await ReaderPages.RowsOf(page));
        await browser.Look(ReaderPages.Html(plain), 1280, async (page, _) =>
        {
            await ReaderPages.Choose(page, "terms", "1");
            await ReaderPages.Choose(page, "size", "5");
            Assert.Equal(expected, await ReaderPages.RowsOf(page));
        });
    }

    [BrowserFact]
    public async Task Ticks_counts_and_choices_are_there_again_after_a_reload_until_they_are_forgotten() =>
        await browser.Look(Html("guillemot-hat"), 390, async (page, _) =>
        {
            await ReaderPages.Choose(page, "size", "2");
            await ReaderPages.Choose(page, "light", "dark");
            var row = page.Locator("#crown li.row").Nth(1);
            var id = await row.GetAttributeAsync("id");
            await row.Locator(".tick input").CheckAsync();
            var counter = page.Locator("#crown .counter");
            for (var i = 0; i < 3; i++)
            {
                await counter.GetByRole(AriaRole.Button, new() { Name = "One row more" }).ClickAsync();
            }

            await counter.GetByRole(AriaRole.Button, new() { Name = "One row less" }).ClickAsync();
            await page.ReloadAsync();
            await Assertions.Expect(page.Locator("#size_2")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator($"#{id} .tick input")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("2");
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-light", "dark");
            await Assertions.Expect(page.Locator("#place .where")).ToContainTextAsync("Crown");

            // The row after it is the one to work, and the button leads back to the one that was ticked.
            await Assertions.Expect(page.Locator("#crown li.row").Nth(2)).ToHaveAttributeAsync("aria-current", "step");
            await page.GetByRole(AriaRole.Button, new() { Name = "Show it" }).ClickAsync();
            await Assertions.Expect(page.Locator($"#{id} .tick input")).ToBeFocusedAsync();

            await page.GetByRole(AriaRole.Button, new() { Name = "Forget all of it" }).ClickAsync();
            await Assertions.Expect(page.Locator("#forgotten")).ToHaveTextAsync("Forgotten.");
            Assert.Equal(0, await page.Locator("li.row input:checked").CountAsync());
            await Assertions.Expect(page.Locator("#place")).ToBeHiddenAsync();
            Assert.Equal(0, await page.EvaluateAsync<int>("localStorage.length"));
            await page.ReloadAsync();
            await Assertions.Expect(page.Locator("#size_0")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("0");
        });

    [BrowserFact]
    public async Task A_browser_that_keeps_nothing_is_told_and_everything_else_works() =>
        await browser.Look(Html("guillemot-hat"), 390, async (page, _) =>
        {
            var faults = Faults(page);
            await page.AddInitScriptAsync("Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } });");
            await page.ReloadAsync();
            await Assertions.Expect(page.Locator(".keeps-not")).ToBeVisibleAsync();
            await Assertions.Expect(page.Locator(".keeps")).ToBeHiddenAsync();
            await page.Locator("#crown .tick input").First.CheckAsync();
            await page.Locator("#crown .counter button").Nth(1).ClickAsync();
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("1");
            await Assertions.Expect(page.Locator("#place")).ToBeVisibleAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Forget all of it" }).ClickAsync();
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("0");
            Assert.Empty(faults);
        });

    [BrowserTheory]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"chosen\":{\"size\":\"99\",\"light\":7,\"terms\":\"<b>\",\"__proto__\":{\"x\":1}},\"ticks\":[1,null,\"nowhere\",\"reader\",\"a:b:c\"],\"counts\":{\"crown\":-5,\"body\":\"<img src=x onerror=alert(1)>\",\"brim\":1e99}}")]
    public async Task Whatever_the_device_has_kept_does_no_harm(string kept) =>
        await browser.Look(Html("guillemot-hat"), 390, async (page, _) =>
        {
            var faults = Faults(page);
            await page.EvaluateAsync("kept => localStorage.setItem('pattern: ' + document.getElementById('reader').dataset.key, kept)", kept);
            await page.ReloadAsync();
            await Assertions.Expect(page.Locator("#size_0")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator("#reader input[name=light][value=auto]")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("0");
            Assert.Equal(0, await page.Locator("img[src=x]").CountAsync());
            Assert.Empty(faults);
        });

    [BrowserFact]
    public async Task Without_script_the_page_is_whole_and_offers_nothing_that_would_not_work() =>
        await browser.Look(
            Html("fairwater-jumper"),
            390,
            async (page, _) =>
            {
                Assert.Equal(await page.Locator("li.row").CountAsync(), await page.Locator("li.row:visible").CountAsync());
                Assert.Equal(0, await page.Locator("button:visible, #reader:visible, .counter:visible, #place:visible, [data-only]:visible, [data-f]:not([data-f^=a]):visible").CountAsync());
                await Assertions.Expect(page.Locator("#your-size")).ToBeVisibleAsync();
            },
            script: false);

    [BrowserFact]
    public async Task Nothing_but_the_pages_own_script_runs_and_nothing_is_asked_for() =>
        await browser.Look(Html("guillemot-hat"), 390, async (page, requests) =>
        {
            var refused = new List<string>();
            page.RequestFailed += (_, request) => refused.Add($"{request.Url} {request.Failure}");
            await page.EvaluateAsync("""
                () => {
                  const script = document.createElement('script');
                  script.textContent = 'window.ran = 1';
                  document.body.append(script);
                  document.body.insertAdjacentHTML('beforeend', '<img src="data:," onerror="window.ran = 2"><a id="bad" href="javascript:window.ran = 3">x</a>');
                  document.getElementById('bad').click();
                  const picture = new Image();
                  picture.src = 'https://example.com/x.png';
                }
                """);
            Assert.True(await page.EvaluateAsync<bool>("() => fetch('https://example.com/').then(() => false, () => true)"));
            await page.WaitForTimeoutAsync(200);
            Assert.Null(await page.EvaluateAsync<int?>("() => window.ran || null"));
            foreach (var asked in requests.Where(r => r.Contains("example.com", StringComparison.Ordinal)))
            {
                Assert.Contains(refused, r => r.StartsWith(asked, StringComparison.Ordinal) && r.Contains("csp", StringComparison.OrdinalIgnoreCase));
            }
        });

    [BrowserFact]
    public async Task A_script_of_ones_own_runs_under_its_own_hash()
    {
        var set = TemplateSet.With(new Dictionary<string, string> { ["html/page.js"] = "// mine\n\n\n  var words = '</script> ]]> & é';\n\ndocument.documentElement.setAttribute('data-mine', words);\n" });
        var html = Renderer.Render(ExamplePageTests.Compile("guillemot-hat"), OutputFormat.Html, set).Files.Single().Text;
        await browser.Look(html, 390, async (page, _) => await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-mine", "</script> ]]> & é"));
    }

    [BrowserFact]
    public async Task A_chart_marks_the_row_to_work() =>
        await browser.Look(Html("tidewrack-scarf"), 1280, async (page, _) =>
        {
            var section = page.Locator("section:has(.sheet[data-bands]):has(li.row[data-rows])").First;
            Assert.Equal(0, await page.Locator(".sheet .frame").CountAsync());
            var row = section.Locator("li.row[data-rows=\"2\"]");
            await section.Locator("li.row[data-rows=\"1\"] .tick input").CheckAsync();
            await Assertions.Expect(row).ToHaveAttributeAsync("aria-current", "step");
            var frame = section.Locator(".sheet .frame");
            Assert.Equal(1, await frame.CountAsync());
            var bands = (await section.Locator(".sheet[data-bands]").First.GetAttributeAsync("data-bands"))!.Split(' ').Select(b => b.Split(':')).ToDictionary(b => b[0], b => b[1]);
            Assert.Equal(bands["2"], await frame.GetAttributeAsync("y"));
            await section.Locator("li.row[data-rows=\"1\"] .tick input").UncheckAsync();
            Assert.Equal(0, await page.Locator(".sheet .frame").CountAsync());
        });

    [BrowserFact]
    public async Task Everything_is_reached_and_worked_by_keyboard() =>
        await browser.Look(Html("guillemot-hat"), 1280, async (page, _) =>
        {
            await page.Locator("#size_0").FocusAsync();
            await page.Keyboard.PressAsync("ArrowRight");
            await Assertions.Expect(page.Locator("#size_1")).ToBeCheckedAsync();
            await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-gone", "1");
            string? before = null;
            var met = new HashSet<string>(StringComparer.Ordinal);
            for (var i = 0; i < 400; i++)
            {
                await page.Keyboard.PressAsync("Tab");
                var at = await page.EvaluateAsync<string>("() => { const e = document.activeElement; const s = getComputedStyle(e); return e === document.body ? 'end' : [e.tagName, e.id || e.name || e.value || e.textContent.slice(0, 20), e.closest('[id]').id, s.outlineStyle !== 'none'].join('/'); }");
                if (at == "end")
                {
                    break;
                }

                Assert.True(at.EndsWith("true", StringComparison.Ordinal), $"no focus is to be seen on {at}");
                Assert.NotEqual(before, at + i);
                before = at;
                met.Add(at);
            }

            Assert.Contains(met, m => m.Contains("/forget/", StringComparison.Ordinal));
            var more = page.Locator("#crown .counter button").Nth(1);
            await more.FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await page.Keyboard.PressAsync("Space");
            await Assertions.Expect(page.Locator("#crown .counter output")).ToHaveTextAsync("2");
            Assert.Equal("status", await page.Locator("#crown .counter output").EvaluateAsync<string>("e => e.computedRole || 'status'"));
        });

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task A_page_that_a_reader_has_set_up_passes_the_accessibility_rules_and_never_scrolls_sideways(string example)
    {
        await browser.Look(Html(example), 360, async (page, _) =>
        {
            if (await page.Locator("#size_2").CountAsync() > 0)
            {
                await ReaderPages.Choose(page, "size", "2");
            }

            await ReaderPages.Choose(page, "terms", "1");
            await page.Locator("li.row .tick input >> visible=true").First.CheckAsync();
            await page.Locator(".counter button").Nth(1).ClickAsync();
            foreach (var (width, dark) in new[] { (360, true), (1280, false) })
            {
                await Browser.Turn(page, width, dark);
                Assert.Empty(await Browser.FaultsOf(page));
                Assert.Equal((example, width, 0), (example, width, Math.Max(0, await Browser.TooWide(page))));
                var small = await page.EvaluateAsync<string[]>("""
                    least => Array.from(document.querySelectorAll('#reader button, #reader label, .counter button, #place button, li.row > .tick, .ticks label')).filter(e => e.getClientRects().length)
                      .map(e => [e, e.getBoundingClientRect()]).filter(p => p[1].height < least || p[1].width < 24).map(p => p[0].outerHTML.slice(0, 80) + ' ' + p[1].width + ' by ' + p[1].height)
                    """, width < 500 ? 44 : 24);
                Assert.Empty(small);
            }
        });
    }

    [BrowserFact]
    public async Task Print_gives_the_chosen_size_and_nothing_of_what_a_screen_needs() =>
        await browser.Look(Html("guillemot-hat"), 1280, async (page, _) =>
        {
            await ReaderPages.Choose(page, "size", "2");
            await page.Locator("#crown .tick input").First.CheckAsync();
            var screen = await ReaderPages.RowsOf(page);
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            Assert.Equal(screen, await ReaderPages.RowsOf(page));
            Assert.Equal(0, await page.Locator("#reader:visible, .counter:visible, #place:visible, .choose:visible").CountAsync());
            await Assertions.Expect(page.Locator(".title")).ToContainTextAsync("Size S");
        });

    [BrowserFact]
    public async Task A_pattern_of_one_size_offers_no_size() =>
        await browser.Look(Html("mooring-square-mat"), 390, async (page, _) =>
        {
            await Assertions.Expect(page.Locator("#reader")).ToBeVisibleAsync();
            Assert.Equal(0, await page.Locator("#reader input[name=size], #reader input[name=others]").CountAsync());
        });

    private static string Html(string example) => ReaderPages.Html(ExamplePageTests.Compile(example));

    private static async Task<(string Value, string Name)[]> Choices(IPage page, string name) =>
        [.. (await page.Locator($"#reader input[name={name}]").EvaluateAllAsync<string[][]>("all => all.map(e => [e.value, e.nextElementSibling.innerText])")).Select(c => (c[0], c[1]))];

    private static List<string> Faults(IPage page)
    {
        var faults = new List<string>();
        page.PageError += (_, fault) => faults.Add(fault);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                faults.Add(message.Text);
            }
        };
        return faults;
    }
}
