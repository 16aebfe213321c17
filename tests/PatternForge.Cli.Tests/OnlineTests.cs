using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PatternForge.Cli.Tests;

/// <summary>Runs by itself: what is timed must not wait for other tests.</summary>
[CollectionDefinition(nameof(Network), DisableParallelization = true)]
public sealed class Network;

/// <summary><c>lint --online</c> against a server of this machine: what is asked, how often, and what is told.</summary>
[Collection(nameof(Network))]
public sealed class OnlineTests : IDisposable
{
    private static readonly LinkLimits Patient = new(TimeSpan.FromSeconds(30), TimeSpan.FromMinutes(2), 2, 20, 3);
    private static readonly LinkLimits Hasty = Patient with { Each = TimeSpan.FromSeconds(1) };

    private readonly TemporaryFolder _folder = new();
    private readonly LoopbackServer _server = new();

    public void Dispose()
    {
        _server.Dispose();
        _folder.Dispose();
    }

    private Outcome Lint(LinkLimits limits, string links, params string[] options)
    {
        _folder.Write("one.pattern.md", $"---\ntitle: One\nlinks:\n{links}---\n");
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(["lint", "one.pattern.md", .. options], new Surroundings { In = Stream.Null, Out = output, Error = error, Folder = _folder.Path, Links = limits });
        return new(code, output.ToString(), error.ToString());
    }

    private string Link(string path) => $"  - {path}: {At(path)}\n";

    private string At(string path) => At(_server.Port, path);

    private static string At(int port, string path) => new UriBuilder(Uri.UriSchemeHttp, "127.0.0.1", port, path).Uri.AbsoluteUri;

    private static string Said(Outcome outcome) =>
        string.Join('\n', outcome.Out.Split('\n').Where(l => l.Contains("[PF90", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    [Fact]
    public void Nothing_is_asked_for_unless_it_is_wished()
    {
        Assert.Equal("", Said(Lint(Patient, Link("gone") + Link("well"))));
        Assert.Empty(_server.Requests);
    }

    [Fact]
    public void A_page_that_is_there_is_asked_for_once_without_its_body()
    {
        Assert.Equal("", Said(Lint(Patient, Link("well") + $"  - part: {At("well")}#part\n" + Link("well"), "--online")));
        Assert.Equal(["HEAD /well"], _server.Requests);
    }

    [Fact]
    public void A_page_that_is_not_there_is_told_at_its_link()
    {
        var outcome = Lint(Patient, Link("well") + Link("gone"), "--online");
        Assert.Equal($"warning[PF902] `{At("gone")}` answers 404: there is no such page", Said(outcome));
        Assert.Contains("one.pattern.md:5:", outcome.Out, StringComparison.Ordinal);
        Assert.Equal(0, outcome.Code);
        Assert.Equal(1, Lint(Patient, Link("gone"), "--online", "--warnings-as-errors").Code);
    }

    [Fact]
    public void A_server_that_does_not_know_head_is_asked_with_get()
    {
        Assert.Equal("", Said(Lint(Patient, Link("get-only"), "--online")));
        Assert.Equal(["HEAD /get-only", "GET /get-only"], _server.Requests);
    }

    [Fact]
    public void Redirects_are_followed_so_many_times_and_no_more()
    {
        Assert.Equal("", Said(Lint(Patient, Link("moved"), "--online")));
        Assert.Equal($"warning[PF902] `{At("round")}` sends its readers on more than 3 times", Said(Lint(Patient, Link("round"), "--online")));
        Assert.Equal(4, _server.Requests.Count(r => r == "HEAD /round"));
        Assert.Contains("none of the web", Said(Lint(Patient, Link("to-mail"), "--online")), StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_does_not_answer_in_time_is_a_note()
    {
        Assert.Equal($"note[PF903] `{At("slow")}` gave no answer within 1 seconds", Said(Lint(Hasty, Link("slow"), "--online")));
        Assert.Contains("PF903", Said(Lint(Patient, Link("broken"), "--online")), StringComparison.Ordinal);
        Assert.Contains("its server is in trouble", Said(Lint(Patient, Link("trouble"), "--online")), StringComparison.Ordinal);
        Assert.Contains("it turns programs away", Said(Lint(Patient, Link("guarded"), "--online")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_door_that_nobody_opens_is_told()
    {
        using var closed = new TcpListener(IPAddress.Loopback, 0);
        closed.Start();
        var port = ((IPEndPoint)closed.LocalEndpoint).Port;
        closed.Stop();
        Assert.Equal($"warning[PF902] `{At(port, "x")}` has nobody at its door: the connection is refused", Said(Lint(Patient, $"  - x: {At(port, "x")}\n", "--online")));
    }

    [Fact]
    public void So_many_are_asked_at_a_time_and_in_one_run()
    {
        var links = string.Concat(Enumerable.Range(1, 30).Select(i => Link($"wait-{i}")));
        var outcome = Lint(Patient, links, "--online");
        Assert.Equal(20, _server.Requests.Count);
        Assert.InRange(_server.MostAtOnce, 1, 2);
        Assert.Contains("20 of 30 addresses were asked for", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void When_the_time_for_all_is_up_the_rest_stays_unasked()
    {
        var outcome = Lint(Hasty with { All = TimeSpan.FromMilliseconds(300), AtOnce = 1 }, Link("slow") + Link("slow-2") + Link("well"), "--online");
        Assert.Equal(3, Said(outcome).Split('\n').Count(l => l.Contains("PF903", StringComparison.Ordinal)));
        Assert.DoesNotContain("HEAD /well", _server.Requests);
    }

    [Fact]
    public void Links_in_the_text_are_asked_for_and_a_finding_can_be_accepted()
    {
        _folder.Write("two.pattern.md", $"---\ntitle: Two\n---\n\nSee {At("gone")} for more.\n\n<!-- accept PF902: it comes back in spring -->\n\nAnd {At("gone-too")} again.\n");
        using var output = new StringWriter { NewLine = "\n" };
        CommandLine.Run(["lint", "two.pattern.md", "--online"], new Surroundings { In = Stream.Null, Out = output, Error = TextWriter.Null, Folder = _folder.Path, Links = Patient });
        Assert.Contains("/gone` answers 404", output.ToString(), StringComparison.Ordinal);
        Assert.Contains("1 accepted", output.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("PF142", Outcome.Of(_folder, "lint", "two.pattern.md").Out, StringComparison.Ordinal);
    }

    /// <summary>A small HTTP server: the first word of the path says how it answers.</summary>
    private sealed class LoopbackServer : IDisposable
    {
        private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
        private readonly ManualResetEventSlim _stop = new();
        private readonly List<string> _requests = [];
        private int _now;

        public LoopbackServer()
        {
            _listener.Start();
            new Thread(Serve) { IsBackground = true }.Start();
        }

        public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

        public int MostAtOnce { get; private set; }

        public IReadOnlyList<string> Requests
        {
            get
            {
                lock (_requests)
                {
                    return [.. _requests];
                }
            }
        }

        public void Dispose()
        {
            _stop.Set();
            _listener.Dispose();
        }

        private void Serve()
        {
            try
            {
                while (true)
                {
                    var client = _listener.AcceptTcpClient();
                    new Thread(() => Answer(client)) { IsBackground = true }.Start();
                }
            }
            catch (Exception e) when (e is SocketException or ObjectDisposedException or InvalidOperationException)
            {
                // The test is over.
            }
        }

        private void Answer(TcpClient client)
        {
            using var _ = client;
            try
            {
                using var stream = client.GetStream();
                using var reader = new StreamReader(stream, Encoding.ASCII, leaveOpen: true);
                var first = reader.ReadLine() ?? "";
                while (reader.ReadLine() is { Length: > 0 })
                {
                }

                var (method, path) = (first.Split(' ')[0], first.Split(' ').ElementAtOrDefault(1) ?? "");
                lock (_requests)
                {
                    _requests.Add($"{method} {path}");
                    MostAtOnce = Math.Max(MostAtOnce, ++_now);
                }

                var name = path.TrimStart('/').Split('-')[0];
                if (name is "slow" or "wait")
                {
                    _stop.Wait(name == "slow" ? TimeSpan.FromSeconds(60) : TimeSpan.FromMilliseconds(50));
                }

                var status = name switch
                {
                    "gone" => "404 Not Found",
                    "get" => method == "HEAD" ? "405 Method Not Allowed" : "200 OK",
                    "moved" => "301 Moved Permanently\r\nLocation: /well",
                    "round" => "302 Found\r\nLocation: /round",
                    "to" => "302 Found\r\nLocation: mailto:anselm@example.com",
                    "trouble" => "503 Service Unavailable",
                    "guarded" => "403 Forbidden",
                    _ => "200 OK",
                };
                lock (_requests)
                {
                    _now--;
                }

                if (name != "broken")
                {
                    stream.Write(Encoding.ASCII.GetBytes($"HTTP/1.1 {status}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"));
                }
            }
            catch (Exception e) when (e is IOException or ObjectDisposedException)
            {
                // The other side has gone, or the test is over.
            }
        }
    }
}
