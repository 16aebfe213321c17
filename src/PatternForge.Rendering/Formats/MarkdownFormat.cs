using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>Markdown that reads well as it is and in any viewer.</summary>
internal sealed class MarkdownFormat : OutputFormat
{
    private static readonly Landing s_landing = new(Escaping.Markdown, prose => Prose.ToMarkdown(prose.Markdown), SizeMarks.ToMarkdown, _ => "");

    /// <inheritdoc/>
    public override string Name => "md";

    /// <inheritdoc/>
    public override string Extension => ".md";

    /// <inheritdoc/>
    public override string Description => "Markdown, for reading anywhere";

    /// <inheritdoc/>
    public override string ForBuyers => "a plain text for any device";

    /// <inheritdoc/>
    internal override TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates)
    {
        var result = templates.Render("markdown/pattern.md", view, view.Picture is { } picture ? s_landing with { Prose = prose => Prose.ToMarkdown(prose.Markdown, picture) } : s_landing);
        return result with { Text = result.Text is { } text ? PipeTables.Align(BlankLines.Single(text)) : null };
    }
}
