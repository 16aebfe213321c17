using System.Collections.Immutable;
using PatternForge.Cli.Photos;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Commands;

/// <summary>What came of releasing one pattern; the compilation itself is not kept, so that thousands of patterns cost no more memory than a few.</summary>
/// <param name="Worked">What was read and found.</param>
/// <param name="Written">The files that were written, below the folder of the release.</param>
/// <param name="Remarks">What is worth knowing of its photos, a sentence each.</param>
/// <param name="Problems">What could not be written, a sentence each.</param>
/// <param name="TemplateFindings">What is wrong with the templates.</param>
internal sealed record Released(
    WorkedFile Worked, ImmutableArray<string> Written, ImmutableArray<string> Remarks, ImmutableArray<string> Problems, ImmutableArray<Finding> TemplateFindings)
{
    /// <summary>True when it was not written because its project file has errors: what it would say of the studio cannot be known.</summary>
    public bool IsRefusedForHouse { get; init; }
}

/// <summary>How the patterns of one run are released: which formats, through which templates, where to.</summary>
internal sealed record ReleasePlan(ImmutableArray<OutputFormat> Formats, TemplateSet Templates, string Folder, bool Draft)
{
    /// <summary>Says why these files cannot be released together: two would be written to one place, or one over a source. Null when they can.</summary>
    public static string? Clash(ImmutableArray<InputFile> files, ImmutableArray<OutputFormat> formats, string folder)
    {
        // Some disks do not tell upper from lower case.
        var sources = files.Where(f => f.FullPath is not null).DistinctBy(f => f.FullPath, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(f => f.FullPath!, f => f.Path, StringComparer.OrdinalIgnoreCase);
        var places = new Dictionary<string, InputFile>(StringComparer.OrdinalIgnoreCase);
        foreach (var file in files)
        {
            foreach (var name in formats.Select(f => file.Stem + f.Extension))
            {
                var place = Path.GetFullPath(name, folder);
                if (sources.TryGetValue(place, out var source))
                {
                    return $"`{file.Path}` would be written over the source `{source}`: choose another folder with --out";
                }

                if (!places.TryAdd(place, file))
                {
                    return $"`{places[place].Path}` and `{file.Path}` would both be written to `{name}`: build them into folders of their own with --out";
                }
            }
        }

        return null;
    }

    /// <summary>Checks one pattern and, unless errors stand, writes its files: all of them or, when a template fails, none.</summary>
    public Released Build(InputFile file, HouseFiles houses, Surroundings around)
    {
        var worked = PatternWork.Compile(file, houses, around);
        if (worked.Compilation is not { } compilation || (worked.HasErrors && !Draft))
        {
            return new(worked with { Compilation = null }, [], [], [], []);
        }

        if (worked.House?.File is { HasErrors: true } && !Draft)
        {
            return new(worked with { Compilation = null }, [], [], [], []) { IsRefusedForHouse = true };
        }

        try
        {
            return Write(worked with { Compilation = null }, compilation, around);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return new(worked with { Compilation = null, Fault = fault }, [], [], [], []);
        }
    }

    private Released Write(WorkedFile worked, Compilation compilation, Surroundings around)
    {
        var file = worked.File;
        var photos = new PhotoFiles(file.FullPath is { } full ? Path.GetDirectoryName(full)! : around.Folder);
        var rendered = new List<(string Place, string Name, RenderedFile File)>();
        var below = Path.GetDirectoryName(file.Stem) is { Length: > 0 } parent ? parent.Replace('\\', '/') + "/" : "";
        var place = Path.GetFullPath(below, Folder);
        var copies = new PhotoCopies(photos, place, Path.GetFileName(file.Stem));
        var view = ViewBuilder.Build(compilation, Draft, name: Path.GetFileName(file.Stem));
        foreach (var format in Formats)
        {
            around.Stop.ThrowIfCancellationRequested();
            var options = new RenderOptions
            {
                Draft = Draft,
                Name = Path.GetFileName(file.Stem),
                PhotoAddress = format == OutputFormat.Html ? photos.Embedded : copies.Address,
            };
            var result = Renderer.Render(compilation, view, format, Templates, options);
            if (result.Files.IsEmpty)
            {
                return new(worked, [], [], [], result.Findings);
            }

            rendered.AddRange(result.Files.Select(f => (Path.GetFullPath(f.Name, place), below + f.Name, f)));
        }

        rendered.AddRange(Renderer.Drawings(view).Select(f => (Path.GetFullPath(f.Name, place), below + f.Name, f)));
        var written = ImmutableArray.CreateBuilder<string>();
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var (at, name, made) in rendered)
        {
            Note(name, OutputFiles.Write(at, made.Text, overwrite: true));
        }

        foreach (var (path, bytes) in copies.Files)
        {
            Note(below + path, OutputFiles.Write(Path.GetFullPath(path, place), bytes.AsSpan(), overwrite: true));
        }

        void Note(string name, string? reason)
        {
            if (reason is null)
            {
                written.Add(name);
            }
            else
            {
                problems.Add($"`{name}` could not be written: {reason}");
            }
        }

        return new(worked, written.ToImmutable(), [.. photos.Remarks.Concat(copies.Remarks).Select(r => $"{file.Path}: {r}")], problems.ToImmutable(), []);
    }
}
