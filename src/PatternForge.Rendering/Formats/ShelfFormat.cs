using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>The page with all patterns of a folder, and the style sheet that it shares with theirs.</summary>
internal static class ShelfFormat
{
    /// <summary>The name of the page.</summary>
    public const string PageName = "index.html";

    /// <summary>The name of the style sheet.</summary>
    public const string SheetName = "studio.css";

    private static readonly Landing s_landing = new(Escaping.Html, p => Prose.ToHtml(p), s => Escaping.Html(s.Text), p => p.Svg);

    /// <summary>Writes both: what came of each template.</summary>
    public static IEnumerable<(string Name, TemplateResult Result)> Write(ShelfView view, TemplateSet templates)
    {
        foreach (var (template, name) in new[] { ("html/shelf.html", PageName), ("html/shelf.css", SheetName) })
        {
            var made = templates.Render(template, view, s_landing);
            yield return (name, made with { Text = made.Text is { } text ? BlankLines.Drop(text, "<pre", "</pre>") : null });
        }
    }
}
