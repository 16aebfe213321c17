namespace PatternForge.Cli.Printing;

/// <summary>Where an installed browser of the Chromium family is looked for, and how long one may take over a page. Only such a browser sets page numbers, tags and an outline.</summary>
internal sealed record BrowserSearch
{
    private static readonly string[] Names =
    [
        "chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge", "microsoft-edge-stable", "chrome", "msedge", "chrome-headless-shell",
    ];

    private static readonly string[] OnMac =
    [
        "Chromium.app/Contents/MacOS/Chromium", "Google Chrome.app/Contents/MacOS/Google Chrome", "Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    ];

    private static readonly string[] OnWindows = [@"Google\Chrome\Application\chrome.exe", @"Chromium\Application\chrome.exe", @"Microsoft\Edge\Application\msedge.exe"];

    /// <summary>How to come by one, for whoever has none.</summary>
    public const string HowToInstall =
        "install Chromium (on Debian and Ubuntu `apt install chromium`, on Fedora `dnf install chromium`, on macOS `brew install --cask chromium`; Windows brings Edge along), or name a browser of that family with `--browser PATH`";

    /// <summary>This machine: the folders of PATH, then the usual places of its system.</summary>
    public static BrowserSearch OfMachine { get; } = new() { Places = [.. OnPath(Environment.GetEnvironmentVariable("PATH") ?? ""), .. Usual()] };

    /// <summary>The files that would be a browser, the likeliest first.</summary>
    public IEnumerable<string> Places { get; init; } = [];

    /// <summary>How long a browser may take over one page; then it is ended.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromMinutes(3);

    /// <summary>The first browser that is there; null where there is none.</summary>
    public string? Find() => Places.FirstOrDefault(File.Exists);

    /// <summary>What would be a browser in the folders of a PATH.</summary>
    /// <param name="path">The folders, parted as the system parts them.</param>
    public static IEnumerable<string> OnPath(string path)
    {
        var end = OperatingSystem.IsWindows() ? ".exe" : "";
        var folders = path.Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Where(Path.IsPathFullyQualified).ToArray();
        return Names.SelectMany(name => folders.Select(folder => Path.Combine(folder, name + end)));
    }

    private static IEnumerable<string> Usual()
    {
        if (OperatingSystem.IsMacOS())
        {
            string[] folders = ["/Applications", Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), "Applications")];
            return OnMac.SelectMany(app => folders.Select(folder => Path.Combine(folder, app)));
        }

        if (OperatingSystem.IsWindows())
        {
            string[] folders =
            [
                Environment.GetFolderPath(Environment.SpecialFolder.ProgramFiles), Environment.GetFolderPath(Environment.SpecialFolder.ProgramFilesX86),
                Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData),
            ];
            return OnWindows.SelectMany(file => folders.Where(f => f.Length > 0).Select(folder => Path.Combine(folder, file)));
        }

        return ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/usr/lib/chromium/chromium", "/usr/lib64/chromium-browser/chromium-browser", "/opt/google/chrome/chrome", "/snap/bin/chromium"];
    }
}
