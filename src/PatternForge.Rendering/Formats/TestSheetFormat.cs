using PatternForge.Core;
using PatternForge.Core.Trials;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>The sheet of a test maker: a form that works from disk, and a blank for those who prefer a text.</summary>
internal static class TestSheetFormat
{
    private const string Template = "html/test-sheet.html";
    private const string Script = "html/test-sheet.js";

    private static readonly Landing s_landing = new(Escaping.Html, p => Prose.ToHtml(p), s => Escaping.Html(s.Text), p => p.Svg);

    /// <summary>Writes both files of a size.</summary>
    public static RenderResult Write(Compilation compilation, int size, TemplateSet templates)
    {
        var name = TestSheetBuilder.FileName(compilation, size);
        var made = templates.Render(Template, TestSheetBuilder.Build(compilation, size, templates.Plain(Script) ?? ""), s_landing);
        return made.Text is { } text
            ? new([new RenderedFile(name + ".html", text), new RenderedFile(name + ".yaml", BlankAnswers.Write(TestSheet.Of(compilation, size)))], made.Findings)
            : new([], made.Findings);
    }
}
