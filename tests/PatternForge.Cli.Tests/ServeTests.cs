using System.Globalization;
using System.Net;
using System.Text.Json;
using Deque.AxeCore.Playwright;
using PatternForge.Tests.Rendering;

namespace PatternForge.Cli.Tests;

/// <summary>The preview on this machine.</summary>
public sealed class ServeTests(Browser browser) : IClassFixture<Browser>
{
    private const string Clean = "---\ntitle: Harbour hat\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit. 12 sts.\n\nBO all sts.\n";

    /// <summary>A preview that runs until it is disposed of.</summary>
    private sealed class Running : IAsyncDisposable
    {
        private readonly CancellationTokenSource _stop = new();
        private readonly StringWriter _out = new() { NewLine = "\n" };
        private readonly StringWriter _error = new() { NewLine = "\n" };
        private readonly Task<int> _run;

        private Running(TemporaryFolder folder, string[] arguments) => _run = Task.Run(() => CommandLine.Run(arguments, new Surroundings
        {
            In = Stream.Null,
            Out = TextWriter.Synchronized(_out),
            Error = TextWriter.Synchronized(_error),
            Folder = folder.Path,
            Trace = true,
            Stop = _stop.Token,
        }));

        public string Address { get; private set; } = "";

        public HttpClient Client { get; } = new();

        public static async Task<Running> Start(TemporaryFolder folder, params string[] arguments)
        {
            var running = new Running(folder, ["serve", .. arguments]);
            for (var i = 0; i < 600 && running.Address.Length == 0; i++)
            {
                await Task.Delay(50);
                Assert.False(running._run.IsCompleted, running._error.ToString());
                running.Address = running._out.ToString().Trim();
            }

            Assert.StartsWith("http://", running.Address, StringComparison.Ordinal);
            return running;
        }

        public async Task<string> Get(string path) => await Client.GetStringAsync(new Uri(Address + path));

        public async Task<JsonElement> State(string since = "") => JsonDocument.Parse(await Get("state?at=0&since=" + since)).RootElement;

        public async Task<HttpStatusCode> Status(HttpMethod method, string path, string? host = null)
        {
            using var request = new HttpRequestMessage(method, Address + path);
            request.Headers.Host = host;

            // Where .NET listens without the system's own help, it ends a connection twice after a wrong name, and what is asked next on it may be answered with an empty 200.
            request.Headers.ConnectionClose = host is not null;
            using var answer = await Client.SendAsync(request);
            return answer.StatusCode;
        }

        public async ValueTask DisposeAsync()
        {
            await _stop.CancelAsync();
            Assert.Equal(0, await _run.WaitAsync(TimeSpan.FromMinutes(1)));
            Client.Dispose();
            _stop.Dispose();
        }
    }

    [Fact]
    public async Task The_page_and_the_findings_follow_the_file()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Clean);
        await using var preview = await Running.Start(folder, "hat.pattern.md");
        var first = await preview.State();
        Assert.Equal("Harbour hat", first.GetProperty("title").GetString());
        Assert.Equal(0, first.GetProperty("report").GetProperty("summary").GetProperty("errors").GetInt32());
        Assert.DoesNotContain("not for release", await preview.Get("page"), StringComparison.Ordinal);

        var waiting = preview.State(first.GetProperty("version").GetString()!);
        Save(folder, Clean.Replace("Knit. 12 sts", "K5, k2tog. 12 sts", StringComparison.Ordinal));
        var second = await waiting;
        Assert.True(second.GetProperty("report").GetProperty("summary").GetProperty("errors").GetInt32() > 0);
        Assert.Contains("not for release", await preview.Get("page"), StringComparison.Ordinal);

        waiting = preview.State(second.GetProperty("version").GetString()!);
        File.Delete(folder.At("hat.pattern.md"));
        Assert.NotNull((await waiting).GetProperty("problem").GetString());
    }

    // In one piece, so that the preview never meets half a file.
    private static void Save(TemporaryFolder folder, string text)
    {
        folder.Write("new", text);
        File.Move(folder.At("new"), folder.At("hat.pattern.md"), overwrite: true);
    }

    [Fact]
    public async Task Only_this_machine_is_answered_and_nothing_but_the_preview()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Clean);
        folder.Write("secret.txt", "secret");
        await using var preview = await Running.Start(folder, "hat.pattern.md");
        Assert.Equal(HttpStatusCode.OK, await preview.Status(HttpMethod.Get, ""));
        Assert.Contains(await preview.Status(HttpMethod.Get, "", "evil.example"), new[] { HttpStatusCode.Forbidden, HttpStatusCode.NotFound, HttpStatusCode.BadRequest });
        Assert.Equal(HttpStatusCode.MethodNotAllowed, await preview.Status(HttpMethod.Post, "page"));
        foreach (var path in new[] { "secret.txt", "../secret.txt", "%2e%2e/secret.txt", "hat.pattern.md", "page/x" })
        {
            Assert.Equal(HttpStatusCode.NotFound, await preview.Status(HttpMethod.Get, path));
        }

        Assert.Equal(HttpStatusCode.OK, await preview.Status(HttpMethod.Get, "page?at=99999999999999"));
        Assert.Equal(HttpStatusCode.OK, await preview.Status(HttpMethod.Get, "page?at=-1"));
    }

    [Fact]
    public void What_cannot_be_shown_is_said()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Clean);
        Assert.Equal(2, Outcome.Of(folder, "serve").Code);
        Assert.Equal(2, Outcome.Of(folder, "serve", "-").Code);
        Assert.Equal(2, Outcome.Of(folder, "serve", "gone.pattern.md").Code);
        Assert.Equal(2, Outcome.Of(folder, "serve", "hat.pattern.md", "--port", "70000").Code);
        Assert.Equal(2, Outcome.Of(folder, "serve", "hat.pattern.md", "--templates", "gone").Code);
    }

    [BrowserTheory]
    [InlineData(1200)]
    [InlineData(390)]
    public async Task A_browser_shows_the_page_beside_the_findings_and_follows_the_file(int width)
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Clean.Replace("Knit. 12 sts", "K5, k2tog. 12 sts", StringComparison.Ordinal));
        folder.Write("cowl.pattern.md", Clean.Replace("hat", "cowl", StringComparison.Ordinal));
        await using var preview = await Running.Start(folder, "hat.pattern.md", "cowl.pattern.md");
        await browser.Visit(preview.Address, width, async page =>
        {
            await page.Locator("#list li").First.WaitForAsync();
            Assert.Contains("PF3", await page.Locator("#list").InnerTextAsync(), StringComparison.Ordinal);
            Assert.Equal("Harbour hat", await page.FrameLocator("#page").Locator("h1").InnerTextAsync());
            var found = await page.RunAxe();
            Assert.True(found.Violations.Length == 0, string.Create(CultureInfo.InvariantCulture, $"{string.Join("; ", found.Violations.Select(v => v.Id + ": " + string.Join(", ", v.Nodes.Select(n => n.Html))))}"));
            Save(folder, Clean);
            await page.Locator("#list:not(:has(.error))").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
            Assert.DoesNotContain("error", await page.Locator("#found").InnerTextAsync(), StringComparison.Ordinal);
            await page.SelectOptionAsync("#patterns", "1");
            await page.FrameLocator("#page").GetByText("Harbour cowl").First.WaitForAsync();
        });
    }
}
