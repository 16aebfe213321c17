using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using PatternForge.Core.Model;

namespace PatternForge.Cli;

/// <summary>How long and how much <c>lint --online</c> may ask.</summary>
/// <param name="Each">The time for one address, its redirects included.</param>
/// <param name="All">The time for all addresses together; those whose turn has not come then stay unasked.</param>
/// <param name="AtOnce">How many addresses are asked for at a time.</param>
/// <param name="Most">How many different addresses are asked for in one run.</param>
/// <param name="Redirects">How many times an address may send on to another.</param>
internal sealed record LinkLimits(TimeSpan Each, TimeSpan All, int AtOnce, int Most, int Redirects)
{
    /// <summary>What holds where nothing else is set.</summary>
    public static LinkLimits Default { get; } = new(TimeSpan.FromSeconds(10), TimeSpan.FromMinutes(2), 6, 500, 5);
}

/// <summary>Asks for addresses over HTTP, each once. Nothing else of the program touches the network, and this only when it was asked to.</summary>
internal sealed class LinkProber : IDisposable
{
    private readonly LinkLimits _limits;
    private readonly HttpClient _client;

    /// <summary>A prober within limits.</summary>
    public LinkProber(LinkLimits limits)
    {
        _limits = limits;
        _client = new HttpClient(new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseCookies = false,
            ConnectTimeout = limits.Each,
            MaxConnectionsPerServer = 2,
            MaxResponseHeadersLength = 64,
        })
        {
            Timeout = Timeout.InfiniteTimeSpan, // each address has its own clock, redirects included
        };
        _client.DefaultRequestHeaders.UserAgent.ParseAdd("PatternForge");
    }

    /// <summary>Ends the connections.</summary>
    public void Dispose() => _client.Dispose();

    /// <summary>The answers, one for each different address that was asked for.</summary>
    public IReadOnlyDictionary<string, LinkAnswer> Ask(IEnumerable<Uri> addresses, CancellationToken stop)
    {
        var answers = new ConcurrentDictionary<string, LinkAnswer>(StringComparer.Ordinal);
        using var all = CancellationTokenSource.CreateLinkedTokenSource(stop);
        all.CancelAfter(_limits.All);
        Uri[] distinct = [.. addresses.DistinctBy(a => a.AbsoluteUri, StringComparer.Ordinal).Take(_limits.Most)];
        Parallel.ForEach(distinct, new ParallelOptions { MaxDegreeOfParallelism = _limits.AtOnce, CancellationToken = stop }, address =>
        {
            answers[address.AbsoluteUri] = all.IsCancellationRequested ? new LinkAnswer(LinkState.Unanswered, "was not asked for: the time for all links was up") : One(address, all.Token, stop);
        });
        return answers;
    }

    private LinkAnswer One(Uri address, CancellationToken all, CancellationToken stop)
    {
        using var clock = CancellationTokenSource.CreateLinkedTokenSource(all);
        clock.CancelAfter(_limits.Each);
        try
        {
            return Follow(address, clock.Token);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return new LinkAnswer(LinkState.Unanswered, FormattableString.Invariant($"gave no answer within {_limits.Each.TotalSeconds:0.#} seconds"));
        }
        catch (HttpRequestException e)
        {
            return Refused(e);
        }
        catch (IOException)
        {
            return new LinkAnswer(LinkState.Unanswered, "broke off its answer");
        }
    }

    private LinkAnswer Follow(Uri address, CancellationToken clock)
    {
        var at = address;
        for (var sent = 0; sent <= _limits.Redirects; sent++)
        {
            var (status, next) = Request(HttpMethod.Head, at, clock);
            if (next is null && (int)status >= 400)
            {
                // Some servers do not know HEAD, or answer it with anything.
                (status, next) = Request(HttpMethod.Get, at, clock);
            }

            if (next is null)
            {
                return Answer(status);
            }

            if (next.Scheme is not ("http" or "https"))
            {
                return new LinkAnswer(LinkState.Gone, "sends its readers to an address that is none of the web");
            }

            at = next;
        }

        return new LinkAnswer(LinkState.Gone, $"sends its readers on more than {_limits.Redirects} times");
    }

    private (HttpStatusCode Status, Uri? Next) Request(HttpMethod method, Uri address, CancellationToken clock)
    {
        using var request = new HttpRequestMessage(method, address);
        using var response = _client.Send(request, HttpCompletionOption.ResponseHeadersRead, clock);
        var next = (int)response.StatusCode is 301 or 302 or 303 or 307 or 308 && response.Headers.Location is { } location
            ? location.IsAbsoluteUri ? location : new Uri(address, location)
            : null;
        return (response.StatusCode, next);
    }

    private static LinkAnswer Answer(HttpStatusCode status) => (int)status switch
    {
        < 400 => new LinkAnswer(LinkState.Alive, "answers"),
        404 or 410 => new LinkAnswer(LinkState.Gone, $"answers {(int)status}: there is no such page"),
        400 or 414 or 421 => new LinkAnswer(LinkState.Gone, $"answers {(int)status}: the address is not understood"),
        401 or 403 or 405 or 406 or 429 or 451 => new LinkAnswer(LinkState.Unanswered, $"answers {(int)status}: it turns programs away"),
        _ => new LinkAnswer(LinkState.Unanswered, $"answers {(int)status}: its server is in trouble"),
    };

    private static LinkAnswer Refused(HttpRequestException e) => e.HttpRequestError switch
    {
        HttpRequestError.NameResolutionError => new LinkAnswer(LinkState.Gone, "has a host that nobody knows"),
        HttpRequestError.SecureConnectionError => new LinkAnswer(LinkState.Gone, "has no certificate that could be trusted"),
        HttpRequestError.ConnectionError when e.InnerException is SocketException { SocketErrorCode: SocketError.ConnectionRefused } => new LinkAnswer(LinkState.Gone, "has nobody at its door: the connection is refused"),
        _ => new LinkAnswer(LinkState.Unanswered, "gave no answer that could be read"),
    };
}
