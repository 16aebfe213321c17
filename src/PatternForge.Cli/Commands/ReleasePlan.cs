using System.Collections.Concurrent;
using System.Collections.Immutable;
using PatternForge.Cli.Drawings;
using PatternForge.Cli.Photos;
using PatternForge.Core;
using PatternForge.Core.Editions;
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
    /// <summary>The name by which the source of an edition is asked for.</summary>
    public const string SourceFormat = "source";

    /// <summary>The name by which drawings are asked for as pictures of dots.</summary>
    public const string PngFormat = "png";

    private const string SourceExtension = ".pattern.md";
    private const string DrawingExtension = ".svg";

    // Editions that a header asks for are known only once it has been read: their places are taken then.
    private readonly ConcurrentDictionary<string, string> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The editions asked for; null for the pattern as it is written and those that its header releases.</summary>
    public ImmutableArray<Edition>? Editions { get; init; }

    /// <summary>True to write the sources as well.</summary>
    public bool WritesSources { get; init; }

    /// <summary>True to write each drawing also as PNG beside its SVG.</summary>
    public bool WritesPngs { get; init; }

    /// <summary>The characters that a listing may have; null where none is asked for.</summary>
    public int? ListingLength { get; init; }

    /// <summary>Says why these files cannot be released together: two would be written to one place, or one over a source. Null when they can.</summary>
    public string? Clash(ImmutableArray<InputFile> files)
    {
        // Some disks do not tell upper from lower case.
        var sources = files.Where(f => f.FullPath is not null).DistinctBy(f => f.FullPath, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(f => f.FullPath!, f => f.Path, StringComparer.OrdinalIgnoreCase);
        var places = new Dictionary<string, InputFile>(StringComparer.OrdinalIgnoreCase);
        foreach (var file in files)
        {
            foreach (var name in Suffixes().SelectMany(s => Extensions().Select(e => file.Stem + s + e)))
            {
                var place = Path.GetFullPath(name, Folder);
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

    private IEnumerable<string> Suffixes() => Editions is { } asked ? asked.Select(e => "." + e.Name) : [""];

    private IEnumerable<string> Extensions() => Formats.Select(f => f.Extension).Concat(WritesSources ? [SourceExtension] : []).Concat(ListingLength is null ? [] : ListingFormat.All.Select(f => f.Extension));

    /// <summary>Checks one pattern and, unless errors stand, writes its files: all of them or, when a template fails, none.</summary>
    public Released Build(InputFile file, HouseFiles houses, Surroundings around)
    {
        var worked = PatternWork.Compile(file, houses, around, editions: Editions);
        if (worked.Compilation is not { } compilation || (worked.HasErrors && !Draft))
        {
            return new(worked.ForReport, [], [], [], []);
        }

        if (worked.House?.File is { HasErrors: true } && !Draft)
        {
            return new(worked.ForReport, [], [], [], []) { IsRefusedForHouse = true };
        }

        try
        {
            var forms = worked.Editions.Where(e => e.Compilation is not null).Select(e => (Suffix: "." + e.Edition.Name, Compilation: e.Compilation!));
            return Write(worked.ForReport, [.. Editions is null ? forms.Prepend(("", compilation)) : forms], around);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return new(worked.ForReport with { Fault = fault }, [], [], [], []);
        }
    }

    private Released Write(WorkedFile worked, ImmutableArray<(string Suffix, Compilation Compilation)> forms, Surroundings around)
    {
        var file = worked.File;
        var photos = new PhotoFiles(file.FullPath is { } full ? Path.GetDirectoryName(full)! : around.Folder);
        var rendered = new List<(string Place, string Name, RenderedFile File)>();
        var below = Path.GetDirectoryName(file.Stem) is { Length: > 0 } parent ? parent.Replace('\\', '/') + "/" : "";
        var place = Path.GetFullPath(below, Folder);
        ShopFiles? shop = null;
        var copies = new PhotoCopies(photos, place, Path.GetFileName(file.Stem));
        foreach (var (suffix, compilation) in forms)
        {
            var name = Path.GetFileName(file.Stem) + suffix;
            var view = ViewBuilder.Build(compilation, Draft, name: name);
            foreach (var format in Formats)
            {
                around.Stop.ThrowIfCancellationRequested();
                var options = new RenderOptions
                {
                    Draft = Draft,
                    Name = name,
                    Picture = format == OutputFormat.Html ? photos.Embedded : copies.Picture,
                };
                var result = Renderer.Render(compilation, view, format, Templates, options);
                if (result.Files.IsEmpty)
                {
                    return new(worked, [], [], [], result.Findings);
                }

                rendered.AddRange(result.Files.Select(f => (Path.GetFullPath(f.Name, place), below + f.Name, f)));
            }

            if (ListingLength is { } most && forms[0].Compilation == compilation)
            {
                shop = ShopFiles.Of(view, compilation.Pattern.Facts, name, ContentsOf(forms), photos, Templates, most);
                if (!shop.TemplateFindings.IsEmpty)
                {
                    return new(worked, [], [], [], shop.TemplateFindings);
                }

                rendered.AddRange(shop.Texts.Select(f => (Path.GetFullPath(f.Name, place), below + f.Name, f)));
            }

            rendered.AddRange((Formats.IsEmpty && !WritesPngs ? [] : Renderer.Drawings(view)).Select(f => (Path.GetFullPath(f.Name, place), below + f.Name, f)));
            if (WritesSources)
            {
                var made = new RenderedFile(name + SourceExtension, compilation.Text.Text.Text);
                rendered.Add((Path.GetFullPath(made.Name, place), below + made.Name, made));
            }
        }

        var written = ImmutableArray.CreateBuilder<string>();
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var (target, name, made) in rendered)
        {
            Note(name, Taken(target) ?? OutputFiles.Write(target, made.Text, overwrite: true));
            if (WritesPngs && name.EndsWith(DrawingExtension, StringComparison.Ordinal))
            {
                around.Stop.ThrowIfCancellationRequested();
                var beside = Path.ChangeExtension(target, ".png");
                var (bytes, problem) = DrawingPng.Of(made.Text);
                Note(Path.ChangeExtension(name, ".png"), problem ?? Taken(beside) ?? OutputFiles.Write(beside, bytes.AsSpan(), overwrite: true));
            }
        }

        foreach (var (path, bytes) in copies.Files.Select(c => (c.Key, c.Value)).Concat(shop?.Photos ?? []))
        {
            var target = Path.GetFullPath(path, place);
            Note(below + path, Taken(target) ?? OutputFiles.Write(target, bytes.AsSpan(), overwrite: true));
        }

        string[] onPngs = !WritesPngs ? [] : rendered.Exists(r => r.Name.EndsWith(DrawingExtension, StringComparison.Ordinal)) ? DrawingPng.Remark is { } remark ? [remark] : []
            : ["it has no drawings, and so no PNG"];
        return new(worked, written.ToImmutable(), [.. photos.Remarks.Concat(copies.Remarks).Concat(shop?.Remarks ?? []).Concat(onPngs).Select(r => $"{file.Path}: {r}")], problems.ToImmutable(), []);

        // What a buyer gets: one line of the listing each.
        ReleaseContents ContentsOf(ImmutableArray<(string Suffix, Compilation Compilation)> all) => new()
        {
            Files = [.. Formats.Select(f => f.ForBuyers)],
            Editions = [.. all.Skip(1).Select(f => f.Compilation.Edition?.Name).OfType<string>().Select(n => Edition.Find(n)?.Title).OfType<string>().Distinct(StringComparer.Ordinal)],
        };

        // Why nothing may be written there; null where it may.
        string? Taken(string target) => _taken.GetOrAdd(target, file.Path) is var owner && owner != file.Path
            ? $"`{owner}` was written there in this run"
            : file.FullPath is { } self && string.Equals(self, target, StringComparison.OrdinalIgnoreCase) ? "it is the source itself" : null;

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
    }
}
