using System.Collections.Concurrent;
using System.Collections.Immutable;
using PatternForge.Cli.Drawings;
using PatternForge.Cli.Photos;
using PatternForge.Cli.Printing;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Releases;

/// <summary>How the patterns of one run are released: which formats, through which templates, where to.</summary>
internal sealed record ReleasePlan(ReleaseFormats Formats, TemplateSet Templates, string Folder, bool Draft)
{
    private const string DrawingExtension = ".svg";

    private readonly ConcurrentDictionary<string, string> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The editions asked for; null for the pattern as it is written and those that its header releases.</summary>
    public ImmutableArray<Edition>? Editions { get; init; }

    /// <summary>The characters that a listing may have; null where none is asked for.</summary>
    public int? ListingLength { get; init; }

    /// <summary>The shelf that the patterns stand on; null where single files are released.</summary>
    public Shelf? Shelf { get; init; }

    /// <summary>The address of the shelf on the web, with a slash at its end; null where none is said.</summary>
    public string? Site { get; init; }

    /// <summary>True to make everything again, whether it has changed or not.</summary>
    public bool Anew { get; init; }

    /// <summary>True where a shelf will be written, so that its files have their places.</summary>
    public bool WritesShelf { get; init; }

    /// <summary>How documents are printed, where they are asked for.</summary>
    public PrintWork Print { get; init; } = new(null, null);

    /// <summary>Says why these files cannot be released together: two would be written to one place, or one over a source. Null when they can.</summary>
    public string? Clash(ImmutableArray<InputFile> files)
    {
        // Some disks do not tell upper from lower case.
        var sources = files.Where(f => f.FullPath is not null).DistinctBy(f => f.FullPath, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(f => f.FullPath!, f => f.Path, StringComparer.OrdinalIgnoreCase);
        var places = new Dictionary<string, InputFile>(StringComparer.OrdinalIgnoreCase);
        string[] extensions = [.. Formats.Extensions];
        foreach (var name in WritesShelf ? Shelf.Names : [])
        {
            places.Add(Path.GetFullPath(name, Folder), new("the page of all patterns", null, "index"));
        }

        foreach (var file in files)
        {
            foreach (var name in Suffixes().SelectMany(s => extensions.Select(e => file.Stem + s + e)).Append(file.Stem + ReleaseManifest.Extension))
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

    /// <summary>Checks one pattern and, unless errors stand, writes its files: all of them or, when a template fails, none.</summary>
    public Released Build(InputFile file, HouseFiles houses, Surroundings around)
    {
        var worked = PatternWork.Compile(file, houses, around, editions: Editions);
        if (worked.Compilation is not { } compilation || (worked.HasErrors && !Draft))
        {
            return Released.Nothing(worked.ForReport);
        }

        if (worked.House?.File is { HasErrors: true } && !Draft)
        {
            return Released.Nothing(worked.ForReport) with { IsRefusedForHouse = true };
        }

        try
        {
            if (Unchanged(worked, compilation) is { } unchanged)
            {
                return unchanged;
            }

            var forms = worked.Editions.Where(e => e.Compilation is not null).Select(e => (Suffix: "." + e.Edition.Name, Compilation: e.Compilation!));
            return Write(worked.ForReport, compilation, [.. worked.Editions.Select(e => e.Edition)], [.. Editions is null ? forms.Prepend(("", compilation)) : forms], worked.Options, around);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return Released.Nothing(worked.ForReport with { Fault = fault });
        }
    }

    // A release of an earlier run that would come out the same. The pattern was read and checked all the same, so that nothing found is kept back.
    private Released? Unchanged(WorkedFile worked, Compilation plain)
    {
        if (Shelf is null || Anew || worked.File.FullPath is not { } source)
        {
            return null;
        }

        var place = Path.GetFullPath(worked.File.Stem + ReleaseManifest.Extension, Folder);
        if (!ReleaseManifest.IsWhole(place, ReleaseStamp.TextOf(this, worked, plain, worked.Editions.Select(e => e.Edition)), Path.GetDirectoryName(source)!, out var picture))
        {
            return null;
        }

        var isDrawing = picture?.EndsWith(DrawingExtension, StringComparison.Ordinal) ?? false;
        var size = picture is null || isDrawing ? null : PictureCopy.SizeOf(File.ReadAllBytes(Path.GetFullPath(picture, Path.GetDirectoryName(place)!)));
        var alt = isDrawing && !picture!.Contains('/', StringComparison.Ordinal) ? $"Drawing of {plain.Pattern.Facts.Title?.Value}" : plain.Pattern.Facts.Photos.FirstOrDefault()?.Alt?.Trim() ?? "";
        return Released.Nothing(worked.ForReport) with { IsUnchanged = true, Picture = picture is null ? null : new(picture, alt, size?.Width, size?.Height) };
    }

    private Released Write(WorkedFile worked, Compilation plain, ImmutableArray<Edition> editions, ImmutableArray<(string Suffix, Compilation Compilation)> forms, CompileOptions? compiled, Surroundings around)
    {
        var file = worked.File;
        var folder = new ReleaseFolder(file, Folder, _taken);
        var photos = new PhotoFiles(file.FullPath is { } full ? Path.GetDirectoryName(full)! : around.Folder);
        var copies = new PhotoCopies(photos, folder.Place, Path.GetFileName(file.Stem));
        var rendered = new List<RenderedFile>();
        var pages = new List<PrintedPage>();
        ShopFiles? shop = null;
        ShelfPicture? picture = null;
        foreach (var (suffix, compilation) in forms)
        {
            var name = Path.GetFileName(file.Stem) + suffix;
            var view = ViewBuilder.Build(compilation, Draft, name, compiled);
            var options = new RenderOptions { Draft = Draft, Name = name, Shelf = Shelf?.View, Site = Site, Stem = Shelf.StemOf(file) };
            picture ??= Shelf is not null && compilation == plain ? ShelfPicture.Of(plain.Pattern.Facts, view, name, photos, copies) : null;
            foreach (var format in Formats.Rendered)
            {
                around.Stop.ThrowIfCancellationRequested();
                var result = Renderer.Render(compilation, view, format, Templates, options with { Picture = format == OutputFormat.Html ? photos.Embedded : copies.Picture });
                if (result.Files.IsEmpty)
                {
                    return Released.Nothing(worked) with { TemplateFindings = result.Findings };
                }

                rendered.AddRange(result.Files);
            }

            foreach (var sheet in Formats.Pdfs ? Print.SheetsOf(compilation) : [])
            {
                var result = Renderer.Render(compilation, view, OutputFormat.Html, Templates, options with { Picture = photos.Embedded, Paper = sheet });
                if (result.Files.IsEmpty)
                {
                    return Released.Nothing(worked) with { TemplateFindings = result.Findings };
                }

                pages.Add(Print.Print(PrintWork.PageOf(name, sheet, result.Files[0], compilation), around));
            }

            if (ListingLength is { } most && forms[0].Compilation == compilation)
            {
                shop = ShopFiles.Of(view, compilation.Pattern.Facts, name, ContentsOf(forms, pages), photos, Templates, most);
                if (!shop.TemplateFindings.IsEmpty)
                {
                    return Released.Nothing(worked) with { TemplateFindings = shop.TemplateFindings };
                }

                rendered.AddRange(shop.Texts);
            }

            rendered.AddRange(Formats.Drawings ? Renderer.Drawings(view) : []);
            if (Formats.Sources)
            {
                rendered.Add(new RenderedFile(name + ReleaseFormats.SourceExtension, compilation.Text.Text.Text));
            }
        }

        foreach (var made in rendered)
        {
            folder.Write(made.Name, made.Text);
            if (Formats.Pngs && made.Name.EndsWith(DrawingExtension, StringComparison.Ordinal))
            {
                around.Stop.ThrowIfCancellationRequested();
                WritePng(made, folder);
            }
        }

        foreach (var (path, bytes) in copies.Files.Select(c => (c.Key, c.Value)).Concat(shop?.Photos ?? []))
        {
            folder.Write(path, bytes);
        }

        foreach (var page in pages)
        {
            page.Write(folder);
        }

        if (picture?.Bytes is { } small)
        {
            folder.Write(picture.Name, small);
        }

        string[] onPngs = !Formats.Pngs ? [] : rendered.Exists(r => r.Name.EndsWith(DrawingExtension, StringComparison.Ordinal)) ? DrawingPng.Remark is { } remark ? [remark] : []
            : ["it has no drawings, and so no PNG"];
        string[] remarks = [.. photos.Remarks.Concat(copies.Remarks).Concat(shop?.Remarks ?? []).Concat(onPngs).Select(r => $"{file.Path}: {r}")];
        var lacksBrowser = pages.Count > 0 && Print.Browser is null;
        if (folder.Files.Count > 0)
        {
            // What was told, or could not be done, must be told and tried again.
            var isAll = remarks.Length == 0 && folder.Problems.IsEmpty && !lacksBrowser && Shelf is not null && file.FullPath is not null;
            var stamp = isAll ? new ReleaseStamp(ReleaseStamp.TextOf(this, worked, plain, editions), ReleaseStamp.BesideOf(worked.Beside.Concat(photos.Asked).Concat(plain.Pattern.Facts.Photos.Select(p => p.File)), Path.GetDirectoryName(file.FullPath)!)) : null;
            folder.Write(Path.GetFileName(file.Stem) + ReleaseManifest.Extension, ReleaseManifest.Of(plain.Pattern.Facts, Draft, folder.Files, stamp, Shelf is null ? null : picture));
        }

        return new(worked, folder.Names, [.. remarks], folder.Problems, []) { LacksBrowser = lacksBrowser, Picture = picture };
    }

    // What a buyer gets: one line of the listing each.
    private ReleaseContents ContentsOf(ImmutableArray<(string Suffix, Compilation Compilation)> all, List<PrintedPage> pages) => new()
    {
        Papers = [.. pages.Where(p => p.Pdf is not null).Select(p => (p.Page.Sheet == "letter" ? "Letter" : p.Page.Sheet, PdfPages.CountOf(p.Pdf)))],
        Files = [.. Formats.Rendered.Select(f => f.ForBuyers)],
        Editions = [.. all.Skip(1).Select(f => f.Compilation.Edition?.Name).OfType<string>().Select(n => Edition.Find(n)?.Title).OfType<string>().Distinct(StringComparer.Ordinal)],
    };

    private static void WritePng(RenderedFile drawing, ReleaseFolder folder)
    {
        var name = Path.ChangeExtension(drawing.Name, ".png");
        var (bytes, problem) = DrawingPng.Of(drawing.Text);
        if (problem is not null)
        {
            folder.Miss(name, $"could not be written: {problem}");
            return;
        }

        folder.Write(name, bytes.AsSpan());
    }
}
