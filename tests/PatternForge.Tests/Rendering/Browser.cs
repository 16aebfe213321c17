using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace PatternForge.Tests.Rendering;

/// <summary>
/// A fact about pages in a real browser. Where no Chromium is found it is skipped and says so; PATTERNFORGE_REQUIRE_BROWSER=1 makes a missing
/// browser a failure. PATTERNFORGE_BROWSER names one that is not in a usual place.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Browser.ReasonToSkip;
}

/// <summary>The same for a theory.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Browser.ReasonToSkip;
}

/// <summary>One Chromium for a class of tests, started without a network and without anything of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Places =
    [
        "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/usr/lib/chromium/chromium", "/snap/bin/chromium",
        "/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ProgramFiles), "Google", "Chrome", "Application", "chrome.exe"), Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ProgramFilesX86), "Microsoft", "Edge", "Application", "msedge.exe"),
    ];

    // How long a page may take over what is asked of it, in milliseconds.
    private const float Patience = 120_000;

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    internal static string? ReasonToSkip => Executable is null && Environment.GetEnvironmentVariable("PATTERNFORGE_REQUIRE_BROWSER") != "1"
        ? "no Chromium was found on this machine: pages were not looked at in a browser"
        : null;

    private static string? Executable =>
        Environment.GetEnvironmentVariable("PATTERNFORGE_BROWSER") is { Length: > 0 } named ? named : Places.FirstOrDefault(File.Exists);

    public async Task InitializeAsync()
    {
        if (ReasonToSkip is not null)
        {
            return;
        }

        // A busy machine is no fault of a page.
        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            Timeout = Patience,
            ExecutablePath = Executable ?? throw new InvalidOperationException("PATTERNFORGE_REQUIRE_BROWSER is set, but no Chromium was found"),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }

    /// <summary>Opens a page and gives it to the work; the requests that it makes are told.</summary>
    internal async Task Look(string html, int width, Func<IPage, IReadOnlyCollection<string>, Task> work, bool dark = false, bool script = true)
    {
        var folder = Directory.CreateTempSubdirectory("patternforge-page-");
        try
        {
            var file = Path.Combine(folder.FullName, "page.html");
            await File.WriteAllTextAsync(file, html);
            await using var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = 800 },
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
                JavaScriptEnabled = script,
                Offline = true,
            });
            context.SetDefaultTimeout(Patience);
            var page = await context.NewPageAsync();
            var requests = new List<string>();
            page.Request += (_, request) => requests.Add(request.Url);
            await page.GotoAsync(new Uri(file).AbsoluteUri);
            await work(page, requests);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The faults that the accessibility engine finds in a page: WCAG 2.2 AA and good practice.</summary>
    /// <param name="page">The page.</param>
    /// <param name="coloursAlone">Whether only what depends on colours is looked at, for a page that was looked at in other colours.</param>
    internal static async Task<string[]> FaultsOf(IPage page, bool coloursAlone = false)
    {
        var rules = coloursAlone ? RunOnlyOptions.Rules("color-contrast", "link-in-text-block") : RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
        var result = await page.RunAxe(new AxeRunOptions { RunOnly = rules, ResultTypes = [ResultType.Violations] });
        return [.. result.Violations.Select(v => $"{v.Id}: {v.Help}: {v.Nodes[0].Html}")];
    }

    /// <summary>How many px a page is wider than its window.</summary>
    internal static Task<int> TooWide(IPage page) => page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");

    /// <summary>Makes the window of an open page so wide, and its colours those of the evening or of the day.</summary>
    internal static async Task Turn(IPage page, int width, bool dark)
    {
        await page.SetViewportSizeAsync(width, 800);
        await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
    }

    /// <summary>Visits an address of this machine and gives the page to the work.</summary>
    internal async Task Visit(string address, int width, Func<IPage, Task> work)
    {
        await using var context = await _browser!.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 800 } });
        context.SetDefaultTimeout(Patience);
        var page = await context.NewPageAsync();
        await page.GotoAsync(address);
        await work(page);
    }
}
