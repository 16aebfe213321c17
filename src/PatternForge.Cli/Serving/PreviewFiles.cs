using System.Text;

namespace PatternForge.Cli.Serving;

/// <summary>The page that holds the preview, with its style sheet and its script.</summary>
internal static class PreviewFiles
{
    /// <summary>The page.</summary>
    public static string Page { get; } = Read("preview.html");

    /// <summary>The style sheet.</summary>
    public static string Style { get; } = Read("preview.css");

    /// <summary>The script.</summary>
    public static string Script { get; } = Read("preview.js");

    private static string Read(string name)
    {
        using var stream = typeof(PreviewFiles).Assembly.GetManifestResourceStream("serving/" + name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
