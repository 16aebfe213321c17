using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using PatternForge.Cli.Photos;
using PatternForge.Cli.Reporting;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Serving;

/// <summary>A pattern as it stands at one moment.</summary>
/// <param name="Version">Which moment: another one where a file has changed.</param>
/// <param name="Path">The source.</param>
/// <param name="Title">What it is called; null when not said.</param>
/// <param name="Report">What was found, as <c>lint --format json</c> tells it; null where it could not be read.</param>
/// <param name="Problem">Why there is no page; null where there is one.</param>
/// <param name="Page">The page, a draft where errors stand; null where there is none.</param>
internal sealed record PreviewState(string Version, string Path, string? Title, string? Report, string? Problem, string? Page);

/// <summary>Patterns that are looked at while they are written. Each is made again when its file, its project file, a template or a file beside it has changed.</summary>
/// <param name="files">The patterns.</param>
/// <param name="templates">The folder of templates; null for the built-in ones.</param>
/// <param name="around">What the program sees of the world.</param>
internal sealed class Preview(ImmutableArray<InputFile> files, string? templates, Surroundings around)
{
    // A folder of more files than this is no folder of patterns and photos: what lies further down is not looked at.
    private const int MostFiles = 2000;

    private readonly Lock[] _gates = [.. files.Select(_ => new Lock())];
    private readonly PreviewState?[] _made = new PreviewState?[files.Length];

    /// <summary>The patterns, as the user knows them.</summary>
    public ImmutableArray<string> Paths => [.. files.Select(f => f.Path)];

    /// <summary>A pattern as it stands now.</summary>
    public PreviewState Now(int at)
    {
        lock (_gates[at])
        {
            var version = VersionOf(files[at]);
            if (_made[at] is { } made && made.Version == version)
            {
                return made;
            }

            try
            {
                return _made[at] = Make(files[at], version);
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                // The pattern is there to be changed again: the preview goes on.
                Faults.Tell(fault, around, files[at].Path);
                return _made[at] = new(version, files[at].Path, null, null, "the tool itself failed on this pattern; the terminal says more", null);
            }
        }
    }

    /// <summary>The moment that a pattern stands at, without making it.</summary>
    public string VersionOf(int at) => VersionOf(files[at]);

    private string VersionOf(InputFile file)
    {
        var seen = new StringBuilder();
        var folder = Path.GetDirectoryName(file.FullPath)!;
        See(folder, 2);
        for (var (upper, most) = (Path.GetDirectoryName(folder), 64); upper is not null && most > 0; (upper, most) = (Path.GetDirectoryName(upper), most - 1))
        {
            SeeFile(new FileInfo(Path.Combine(upper, Core.HouseFile.Name)));
        }

        if (templates is not null)
        {
            See(templates, 2);
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(seen.ToString())))[..16];

        void See(string place, int depth)
        {
            try
            {
                var options = new EnumerationOptions { RecurseSubdirectories = depth > 1, MaxRecursionDepth = depth, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint, IgnoreInaccessible = true };
                foreach (var one in new DirectoryInfo(place).EnumerateFiles("*", options).Take(MostFiles))
                {
                    // Another pattern of the same folder is no matter of this one.
                    if (!one.Name.EndsWith(InputFiles.Extension, StringComparison.OrdinalIgnoreCase) || string.Equals(one.FullName, file.FullPath, StringComparison.Ordinal))
                    {
                        SeeFile(one);
                    }
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                seen.Append("gone ");
            }
        }

        void SeeFile(FileInfo one)
        {
            if (one.Exists)
            {
                seen.Append(one.FullName).Append(' ').Append(one.LastWriteTimeUtc.Ticks).Append(' ').Append(one.Length).Append('\n');
            }
        }
    }

    private PreviewState Make(InputFile file, string version)
    {
        var set = templates is null ? TemplateSet.Default : TemplateSet.FromFolder(templates);
        var worked = PatternWork.Compile(file, new HouseFiles(around), around, editions: []);
        var report = worked.Report is { } told ? JsonReport.Of([told]) : null;
        if (worked.Compilation is not { } compilation)
        {
            return new(version, file.Path, null, report, worked.Problem ?? "this file cannot be read as a pattern", null);
        }

        var photos = new PhotoFiles(Path.GetDirectoryName(file.FullPath)!);
        var made = Renderer.Render(compilation, OutputFormat.Html, set, new() { Draft = worked.HasErrors, Picture = photos.Embedded });
        var problem = set.Findings.Concat(made.Findings).FirstOrDefault() is { } fault ? $"template `{fault.Source.Path}`: {fault.Message}" : null;
        return new(version, file.Path, compilation.Pattern.Facts.Title?.Value, report, problem, made.Files.IsEmpty ? null : made.Files[0].Text);
    }
}
