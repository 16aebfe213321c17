using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>Plain text that reads well in any editor and in mail: lines of bounded width, rows set in under their labels, tables in columns.</summary>
internal sealed class TextFormat : OutputFormat
{
    private static readonly Landing s_landing = new(Escaping.Line, prose => PlainProse.Of(prose.Markdown), sized => Escaping.Line(sized.Text), _ => "");

    /// <inheritdoc/>
    public override string Name => "txt";

    /// <inheritdoc/>
    public override string Extension => ".txt";

    /// <inheritdoc/>
    public override string Description => "plain text, for mail and any editor";

    /// <inheritdoc/>
    public override string ForBuyers => "a plain text for mail and any editor";

    /// <inheritdoc/>
    internal override TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates)
    {
        var result = templates.Render("text/pattern.txt", view, s_landing);
        return result with { Text = result.Text is { } text ? BlankLines.Single(TextLayout.Of(text)) : null };
    }
}
