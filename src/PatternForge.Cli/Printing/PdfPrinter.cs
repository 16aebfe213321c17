namespace PatternForge.Cli.Printing;

/// <summary>Has a browser print a page as PDF: in a new profile and a folder of its own among the system's temporary ones, with the network off.</summary>
internal static class PdfPrinter
{
    private const int MostBytes = 512 * 1024 * 1024;

    // Each browser takes some hundred megabytes and a core.
    private static readonly SemaphoreSlim Turns = new(Math.Clamp(Environment.ProcessorCount / 2, 1, 4));

    // Names resolve to nothing, and a proxy that is not there answers what would be asked by number.
    private static readonly string[] Always =
    [
        "--headless", "--disable-gpu", "--disable-quic", "--no-first-run", "--no-default-browser-check", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--disable-extensions", "--disable-default-apps", "--disable-breakpad", "--disable-crash-reporter", "--disable-dev-shm-usage", "--metrics-recording-only", "--mute-audio", "--hide-scrollbars", "--lang=en",
        "--host-resolver-rules=MAP * ~NOTFOUND", "--proxy-server=127.0.0.1:9", "--proxy-bypass-list=<-loopback>", "--user-agent=PatternForge",
        "--generate-pdf-document-outline", "--no-pdf-header-footer",
    ];

    /// <summary>Prints a page.</summary>
    /// <param name="browser">The browser's file.</param>
    /// <param name="html">The page, complete in itself.</param>
    /// <param name="date">The date that the document bears.</param>
    /// <param name="author">Its author; null for none.</param>
    /// <param name="patience">How long the browser may take.</param>
    /// <param name="stop">Ends it early.</param>
    /// <returns>The document, or in a few words why there is none.</returns>
    public static (byte[]? Pdf, string? Problem) Print(string browser, string html, DateOnly date, string? author, TimeSpan patience, CancellationToken stop)
    {
        Turns.Wait(stop);
        DirectoryInfo? room = null;
        try
        {
            room = Directory.CreateTempSubdirectory("patternforge-");
            var (page, made) = (Path.Combine(room.FullName, "page.html"), Path.Combine(room.FullName, "page.pdf"));
            File.WriteAllText(page, html);
            string[] arguments =
            [
                .. Always,
                // On Linux the sandbox needs rights that containers and many servers do not give; the page runs nothing and fetches nothing.
                .. OperatingSystem.IsLinux() ? ["--no-sandbox"] : Array.Empty<string>(),
                $"--user-data-dir={Path.Combine(room.FullName, "profile")}",
                $"--print-to-pdf={made}",
                new Uri(page).AbsoluteUri,
            ];
            if (BrowserRun.Run(browser, arguments, patience, stop) is { } problem)
            {
                return (null, problem);
            }

            var file = new FileInfo(made);
            if (!file.Exists || file.Length is 0 or > MostBytes)
            {
                return (null, file.Exists ? "it wrote no document of a usable size" : "it ended without a document (a browser in a closed package may see no temporary files)");
            }

            var pdf = File.ReadAllBytes(made);
            return PdfDates.Set(pdf, date) ? (PdfAuthor.Add(pdf, author), null) : (null, "what it wrote is not the PDF that is expected here");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, InputFiles.ReasonOf(e));
        }
        finally
        {
            if (room is not null)
            {
                Remove(room);
            }

            Turns.Release();
        }
    }

    private static void Remove(DirectoryInfo room)
    {
        for (var tries = 0; tries < 20; tries++)
        {
            try
            {
                room.Delete(recursive: true);
                return;
            }
            catch (DirectoryNotFoundException)
            {
                return;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The last child of the browser still holds a file.
                Thread.Sleep(50);
            }
        }
    }
}
