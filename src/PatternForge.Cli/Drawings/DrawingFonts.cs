using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace PatternForge.Cli.Drawings;

/// <summary>
/// The font for the words of drawings. Windows and macOS are asked for theirs; on Linux the library knows none (the build of it that needs no other library),
/// and the usual folders (XDG Base Directory Specification 0.8) are looked through for a sans-serif one.
/// </summary>
internal sealed class DrawingFonts : ITypefaceProvider
{
    private const int MostFiles = 20_000;
    private const string Needed = "0123456789ABCXYZabcxyz()*/-";

    // Freely licensed fonts that systems bring, the most usual first.
    private static readonly string[] Preferred =
        ["LiberationSans-Regular", "Arimo-Regular", "DejaVuSans", "NotoSans-Regular", "FreeSans", "OpenSans-Regular", "Roboto-Regular", "Lato-Regular", "Cantarell-Regular", "Ubuntu-R", "Carlito-Regular"];

    private readonly Lazy<(SKTypeface? Plain, SKTypeface? Bold)> _faces = new(Find);

    /// <summary>True when words can be drawn.</summary>
    public bool IsThere => _faces.Value.Plain is not null;

    /// <inheritdoc/>
    public SKTypeface? FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
        fontWeight >= SKFontStyleWeight.SemiBold ? _faces.Value.Bold ?? _faces.Value.Plain : _faces.Value.Plain;

    private static (SKTypeface? Plain, SKTypeface? Bold) Find()
    {
        if (OfSystem(SKFontStyle.Normal) is { } plain)
        {
            return (plain, OfSystem(SKFontStyle.Bold));
        }

        var files = Files();
        var sorted = files.OrderBy(f => Array.IndexOf(Preferred, Path.GetFileNameWithoutExtension(f)) is >= 0 and var rank ? rank : Preferred.Length).ThenBy(f => f, StringComparer.Ordinal);
        foreach (var file in sorted)
        {
            if (Read(file) is { } face)
            {
                var name = Path.GetFileNameWithoutExtension(file);
                var bold = (name.EndsWith("-Regular", StringComparison.Ordinal) ? name[..^8] : name.EndsWith("-R", StringComparison.Ordinal) ? name[..^2] : name) + "-Bold";
                var beside = Path.Combine(Path.GetDirectoryName(file)!, bold + Path.GetExtension(file));
                return (face, File.Exists(beside) ? Read(beside) : null);
            }
        }

        return (null, null);
    }

    private static SKTypeface? OfSystem(SKFontStyle style)
    {
        foreach (var family in (string[])["Helvetica", "Arial", "Liberation Sans", "DejaVu Sans"])
        {
            if (SKFontManager.Default.MatchFamily(family, style) is { } face)
            {
                if (IsFit(face))
                {
                    return face;
                }

                face.Dispose();
            }
        }

        return null;
    }

    private static SKTypeface? Read(string file)
    {
        if (SKTypeface.FromFile(file) is not { } face)
        {
            return null;
        }

        if (IsFit(face))
        {
            return face;
        }

        face.Dispose();
        return null;
    }

    private static bool IsFit(SKTypeface face)
    {
        using var font = new SKFont(face);
        return !face.IsEmpty && !face.IsItalic && font.ContainsGlyphs(Needed);
    }

    private static List<string> Files()
    {
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        var data = Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } said ? said : Path.Combine(home, ".local", "share");
        var shared = Environment.GetEnvironmentVariable("XDG_DATA_DIRS") is { Length: > 0 } dirs ? dirs : "/usr/local/share:/usr/share";
        string[] folders = [Path.Combine(data, "fonts"), Path.Combine(home, ".fonts"), .. shared.Split(':', StringSplitOptions.RemoveEmptyEntries).Select(d => Path.Combine(d, "fonts"))];
        var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 8, IgnoreInaccessible = true };
        var files = new List<string>();
        foreach (var folder in folders.Where(f => Path.IsPathRooted(f) && Directory.Exists(f)))
        {
            try
            {
                files.AddRange(Directory.EnumerateFiles(folder, "*", options).Take(MostFiles).Where(f => Path.GetExtension(f).ToLowerInvariant() is ".ttf" or ".otf" or ".ttc"));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // A folder that cannot be read holds no font for us.
            }
        }

        return files;
    }
}
