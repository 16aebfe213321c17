using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;

namespace PatternForge.Cli.Serving;

/// <summary>
/// Shows the preview to a browser on this machine and to nobody else: it listens on the loopback address alone, answers only to that name (so that no page of the web can ask in another's name), reads no file that a
/// request names, and changes nothing.
/// </summary>
internal sealed class PreviewServer(Preview preview, Surroundings around) : IDisposable
{
    private const string Policy = "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; frame-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    // A page holds one question open; a few pages may be open at once.
    private readonly SemaphoreSlim _places = new(32);

    /// <summary>The address for a port.</summary>
    public static string AddressOf(int port) => string.Create(CultureInfo.InvariantCulture, $"http://{(OperatingSystem.IsWindows() ? "localhost" : "127.0.0.1")}:{port}/");

    /// <summary>Answers until the user asks to stop.</summary>
    /// <param name="listener">What listens; it is started.</param>
    /// <param name="port">The port it listens on.</param>
    public void Run(HttpListener listener, int port)
    {
        using var stopping = around.Stop.Register(listener.Stop);
        while (!around.Stop.IsCancellationRequested)
        {
            HttpListenerContext context;
            try
            {
                context = listener.GetContext();
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }

            _ = Task.Run(() => AnswerAsync(context, port));
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _places.Dispose();

    private async Task AnswerAsync(HttpListenerContext context, int port)
    {
        await _places.WaitAsync().ConfigureAwait(false);
        try
        {
            var response = context.Response;
            response.Headers["Cache-Control"] = "no-store";
            response.Headers["X-Content-Type-Options"] = "nosniff";
            response.Headers["Referrer-Policy"] = "no-referrer";
            response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
            var (status, kind, text) = await MadeAsync(context.Request, port).ConfigureAwait(false);
            response.StatusCode = status;
            response.Headers["Content-Security-Policy"] = context.Request.Url?.AbsolutePath is "/page" ? "frame-ancestors 'self'" : Policy;
            if (text is not null)
            {
                response.ContentType = kind + "; charset=utf-8";
                var bytes = Encoding.UTF8.GetBytes(text);
                response.ContentLength64 = bytes.Length;
                await response.OutputStream.WriteAsync(bytes, around.Stop).ConfigureAwait(false);
            }

            response.Close();
        }
        catch (Exception e) when (e is HttpListenerException or IOException or ObjectDisposedException or OperationCanceledException or InvalidOperationException)
        {
            // The browser has gone away, or the program ends: nobody waits for the answer.
            context.Response.Abort();
        }
        finally
        {
            _places.Release();
        }
    }

    private async Task<(int Status, string Kind, string? Text)> MadeAsync(HttpListenerRequest request, int port)
    {
        if (!IsOurName(request.UserHostName, port))
        {
            return (403, "text/plain", "This preview is for this machine alone.\n");
        }

        if (request.HttpMethod is not "GET")
        {
            return (405, "text/plain", "Nothing can be changed here.\n");
        }

        var at = int.TryParse(request.QueryString["at"], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number < preview.Paths.Length ? number : 0;
        switch (request.Url?.AbsolutePath)
        {
            case "/":
                return (200, "text/html", PreviewFiles.Page);
            case "/preview.css":
                return (200, "text/css", PreviewFiles.Style);
            case "/preview.js":
                return (200, "text/javascript", PreviewFiles.Script);
            case "/patterns":
                return (200, "application/json", Json(w =>
                {
                    w.WriteStartArray();
                    foreach (var path in preview.Paths)
                    {
                        w.WriteStringValue(path);
                    }

                    w.WriteEndArray();
                }));
            case "/state":
                return await StateAsync(at, request.QueryString["since"]).ConfigureAwait(false);
            case "/page":
                var now = preview.Now(at);
                return now.Page is { } page ? (200, "text/html", page) : (200, "text/plain", now.Problem ?? "There is no page yet.\n");
            default:
                return (404, "text/plain", "There is nothing here.\n");
        }
    }

    // Waits for the next moment, so that the page need not ask again and again; nothing new after a while is an answer too.
    private async Task<(int Status, string Kind, string? Text)> StateAsync(int at, string? since)
    {
        for (var waited = TimeSpan.Zero; preview.VersionOf(at) == since; waited += Look)
        {
            if (waited > Longest)
            {
                return (204, "", null);
            }

            await Task.Delay(Look, around.Stop).ConfigureAwait(false);
        }

        var now = preview.Now(at);
        return (200, "application/json", Json(w =>
        {
            w.WriteStartObject();
            w.WriteString("version", now.Version);
            w.WriteString("path", now.Path);
            w.WriteString("title", now.Title);
            w.WriteString("problem", now.Problem);
            w.WritePropertyName("report");
            w.WriteRawValue(now.Report?.TrimEnd() ?? "null");
            w.WriteEndObject();
        }));
    }

    private static bool IsOurName(string? host, int port)
    {
        var end = string.Create(CultureInfo.InvariantCulture, $":{port}");
        return host is not null && (host == "127.0.0.1" + end || string.Equals(host, "localhost" + end, StringComparison.OrdinalIgnoreCase));
    }

    private static string Json(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            write(json);
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }
}
