using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>One web page that needs nothing but itself: no network, no script.</summary>
internal sealed class HtmlFormat : OutputFormat
{
    private static readonly Landing s_landing = new(Escaping.Html, prose => Prose.ToHtml(prose), SizeMarks.ToHtml, picture => picture.Svg);

    /// <inheritdoc/>
    public override string Name => "html";

    /// <inheritdoc/>
    public override string Extension => ".html";

    /// <inheritdoc/>
    public override string Description => "one web page, complete in itself";

    /// <inheritdoc/>
    public override string ForBuyers => "a web page that needs no network";

    /// <inheritdoc/>
    internal override TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates)
    {
        var result = templates.Render("html/pattern.html", view, view.Picture is { } picture ? s_landing with { Prose = prose => Prose.ToHtml(prose, picture) } : s_landing);
        return result with { Text = result.Text is { } text ? BlankLines.Drop(text, "<pre", "</pre>") : null };
    }
}
