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
        Render(compilation, ViewBuilder.Build(compilation, (options ?? RenderOptions.Default).Draft, name: options?.Name), format, templates, options);

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
        var written = format.Write(how.Paper is null ? view : view with { Paper = how.Paper }, set);
        var name = (how.Name ?? ReleaseName.Of(compilation.Source.Path)) + format.Extension;
        return new RenderResult(written.Text is { } text ? [new RenderedFile(name, text)] : [], written.Findings);
    }

    /// <summary>The drawings of a pattern as files of their own, in the order of the page.</summary>
    /// <param name="view">The view.</param>
    public static ImmutableArray<RenderedFile> Drawings(PatternView view) =>
        [.. view.Drawings.Select(d => new RenderedFile(Uri.UnescapeDataString(d.Address), d.Alone))];
}
