using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Rendering.Templates;

/// <summary>The texts of the templates by name, own ones in front of the built-in ones.</summary>
internal sealed class TemplateFiles
{
    private const int LargestFile = 256 * 1024;
    private const int MostFiles = 200;

    private static readonly FrozenDictionary<string, string> Resources = typeof(TemplateFiles).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith("templates", StringComparison.Ordinal))
        .ToFrozenDictionary(n => n.Replace('\\', '/')["templates/".Length..], n => n, StringComparer.Ordinal);

    private readonly Dictionary<string, SourceText> _own;

    private TemplateFiles(Dictionary<string, SourceText> own, ImmutableArray<Finding> findings) => (_own, Findings) = (own, findings);

    /// <summary>The built-in ones alone.</summary>
    public static TemplateFiles BuiltIn { get; } = new([], []);

    /// <summary>The names of the built-in templates.</summary>
    public static IReadOnlyCollection<string> BuiltInNames => Resources.Keys;

    /// <summary>What is wrong with the files.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The own files, name and text after each other, in the order of the names.</summary>
    public string Own => string.Concat(_own.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key}\0{f.Value.Text}\0"));

    /// <summary>Texts by name in front of the built-in ones.</summary>
    public static TemplateFiles With(IReadOnlyDictionary<string, string> files)
    {
        var own = files.ToDictionary(f => f.Key, f => new SourceText(f.Key, f.Value), StringComparer.Ordinal);
        return new TemplateFiles(own, Unused(own));
    }

    /// <summary>The files of a folder in front of the built-in ones. A folder or file that cannot be read is a finding.</summary>
    public static TemplateFiles FromFolder(string folder)
    {
        var own = new Dictionary<string, SourceText>(StringComparer.Ordinal);
        var findings = new List<Finding>();
        try
        {
            var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 2, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint };
            foreach (var path in Directory.EnumerateFiles(folder, "*", options).Order(StringComparer.Ordinal))
            {
                var name = Path.GetRelativePath(folder, path).Replace('\\', '/');
                if (!name.Contains('/', StringComparison.Ordinal))
                {
                    continue;
                }

                if (own.Count == MostFiles)
                {
                    findings.Add(Problem(folder, $"there are more than {MostFiles} files among the templates"));
                    break;
                }

                if (Read(path) is { } text)
                {
                    own[name] = new SourceText(path, text);
                }
                else
                {
                    findings.Add(Problem(path, "this template is not UTF-8 text, or is larger than 256 KiB"));
                }
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or System.Security.SecurityException or ArgumentException)
        {
            findings.Add(Problem(folder, "the folder of templates cannot be read"));
        }

        return new TemplateFiles(own, [.. findings, .. Unused(own)]);
    }

    /// <summary>The text of a template; null when the set has none of that name.</summary>
    public SourceText? Find(string name)
    {
        if (_own.TryGetValue(name, out var own))
        {
            return own;
        }

        if (!Resources.TryGetValue(name, out var resource))
        {
            return null;
        }

        using var stream = typeof(TemplateFiles).Assembly.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return new SourceText(name, reader.ReadToEnd().ReplaceLineEndings("\n"));
    }

    /// <summary>All names in a folder (with its slash), in order.</summary>
    public IEnumerable<string> NamesIn(string folder) =>
        Resources.Keys.Concat(_own.Keys).Where(n => n.StartsWith(folder, StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    private static string? Read(string path)
    {
        if (new FileInfo(path).Length > LargestFile)
        {
            return null;
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(File.ReadAllBytes(path)).TrimStart('\ufeff').ReplaceLineEndings("\n");
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Own files that neither replace a built-in one nor are named by another of one's own.</summary>
    private static ImmutableArray<Finding> Unused(Dictionary<string, SourceText> own) =>
    [
        .. own
            .Where(file => !Resources.ContainsKey(file.Key) && !own.Any(other => !string.Equals(other.Key, file.Key, StringComparison.Ordinal) && Names(other.Value, file.Key)))
            .OrderBy(file => file.Key, StringComparer.Ordinal)
            .Select(file => new Finding(TemplateRules.NotUsed, file.Value, default, $"no page uses the template `{file.Key}`")
            {
                Help = Suggest.Nearest(file.Key, Resources.Keys) is [var near, ..] ? $"did you mean `{near}`?" : "include it from another template, or take it away",
            }),
    ];

    private static bool Names(SourceText template, string file) => template.Text.Contains(file[(file.LastIndexOf('/') + 1)..], StringComparison.Ordinal);

    private static Finding Problem(string path, string message) => new(TemplateRules.Unreadable, new SourceText(path, ""), default, message);
}
