using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering;

/// <summary>Turns a compilation into the files of a release. The same compilation, templates and options always give the same bytes.</summary>
public static class Renderer
{
    /// <summary>Renders one pattern in one format.</summary>
    /// <param name="compilation">The compiled pattern.</param>
    /// <param name="format">The format.</param>
    /// <param name="templates">The templates; the built-in ones when null.</param>
    /// <param name="options">How; the usual ones when null.</param>
    public static RenderResult Render(Compilation compilation, OutputFormat format, TemplateSet? templates = null, RenderOptions? options = null) =>
        Render(compilation, ViewBuilder.Build(compilation, (options ?? RenderOptions.Default).Draft, name: options?.Name, options: options?.Compile), format, templates, options);

    /// <summary>Renders one pattern in one format from a view that may serve several formats.</summary>
    /// <param name="compilation">The compiled pattern.</param>
    /// <param name="shared">Its view, as <see cref="ViewBuilder"/> made it for the same draft or release; the addresses of pictures are those of the options.</param>
    /// <param name="format">The format.</param>
    /// <param name="templates">The templates; the built-in ones when null.</param>
    /// <param name="options">How; the usual ones when null.</param>
    public static RenderResult Render(Compilation compilation, PatternView shared, OutputFormat format, TemplateSet? templates = null, RenderOptions? options = null)
    {
        var how = options ?? RenderOptions.Default;
        var set = templates ?? TemplateSet.Default;
        var view = how.Picture is null ? shared : ViewBuilder.WithPictures(shared, compilation, how.Picture);
        if (how.Shelf is { } shelf && how.Stem is { } stem)
        {
            // A page is sold alone, and then nothing lies beside it: without an address on the web it only names the others.
            view = ViewBuilder.WithDesigns(view, compilation, ShelfBuilder.Others(shelf, stem, how.Site, how.Paper is null ? format.Extension : ".html"), how.Site);
        }

        var written = format.Write(compilation, how.Paper is null ? view : view with { Paper = how.Paper }, set);
        var name = (how.Name ?? ReleaseName.Of(compilation.Source.Path)) + format.Extension;
        return new RenderResult(written.Text is { } text ? [new RenderedFile(name, text)] : [], written.Findings);
    }

    /// <summary>The listing of a pattern in a shop, in each of its forms.</summary>
    /// <param name="view">The pattern.</param>
    /// <param name="name">The files' name without its extension.</param>
    /// <param name="release">What the release holds.</param>
    /// <param name="templates">The templates; the built-in ones when null.</param>
    /// <param name="most">The signs that each form may have.</param>
    /// <returns>The files, or findings about the templates; and for each file what it goes without to stay within its length.</returns>
    public static (RenderResult Result, ImmutableArray<(string Name, ImmutableArray<string> GivenUp)> Shortened) Listing(
        PatternView view, string name, ReleaseContents release, TemplateSet? templates = null, int most = ListingFormat.UsualLength)
    {
        var files = ImmutableArray.CreateBuilder<RenderedFile>();
        var shortened = ImmutableArray.CreateBuilder<(string, ImmutableArray<string>)>();
        foreach (var form in ListingFormat.All)
        {
            var (written, givenUp) = form.Write(view, release, templates ?? TemplateSet.Default, most);
            if (written.Text is { } text)
            {
                files.Add(new(name + form.Extension, text));
            }
            else if (!written.Findings.IsEmpty)
            {
                return (new([], written.Findings), []);
            }

            if (!givenUp.IsEmpty)
            {
                shortened.Add((name + form.Extension, givenUp));
            }
        }

        return (new(files.ToImmutable(), []), shortened.ToImmutable());
    }

    /// <summary>The page with all patterns of a folder, and the style sheet that it shares with theirs.</summary>
    /// <param name="shelf">The patterns.</param>
    /// <param name="templates">The templates; the built-in ones when null.</param>
    public static RenderResult Shelf(ShelfView shelf, TemplateSet? templates = null)
    {
        var made = ShelfFormat.Write(shelf, templates ?? TemplateSet.Default).ToArray();
        return made.All(m => m.Result.Text is not null) ? new([.. made.Select(m => new RenderedFile(m.Name, m.Result.Text!))], []) : new([], [.. made.SelectMany(m => m.Result.Findings)]);
    }

    /// <summary>What a test maker of one size gets: a form, and a blank in YAML.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="size">The size, by its number from 0.</param>
    /// <param name="templates">The templates; the built-in ones when null.</param>
    public static RenderResult TestSheet(Compilation compilation, int size, TemplateSet? templates = null) => TestSheetFormat.Write(compilation, size, templates ?? TemplateSet.Default);

    /// <summary>The drawings of a pattern as files of their own, in the order of the page.</summary>
    /// <param name="view">The view.</param>
    public static ImmutableArray<RenderedFile> Drawings(PatternView view) =>
        [.. view.Drawings.Select(d => new RenderedFile(Uri.UnescapeDataString(d.Address), d.Alone))];
}
