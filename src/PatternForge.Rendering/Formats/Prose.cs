using System.Globalization;
using System.Text;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Renderers.Html.Inlines;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>
/// Brings a designer's Markdown into each format. Raw HTML is never let through, links lead only to the web, to mail and to files beside
/// the page, pictures only to files beside it, and headings inside prose stay below those of the page.
/// </summary>
internal static class Prose
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder { MaximumNestingDepth = 64 }.DisableHtml().UsePipeTables().UseAutoLinks().UsePreciseSourceLocation().Build();

    /// <summary>As HTML that is well-formed XML; numbers that stand for the sizes are marked.</summary>
    /// <param name="prose">The text.</param>
    /// <param name="picture">Gives a picture as it stands in the release; null to keep relative paths.</param>
    public static string ToHtml(ProseText prose, Func<string, ReleasedPicture?>? picture = null)
    {
        var html = AsHtml(prose, picture);
        return prose.In is not { } own || prose.Sizes < 2 ? html
            : SizeMarks.WithOwnWords(html, prose.Sizes, size => own(size) is { } words ? words == prose.Markdown && !html.Contains("<span class=\"sz ", StringComparison.Ordinal) ? html : AsHtml(new ProseText(words), picture) : null, "div");
    }

    private static string AsHtml(ProseText prose, Func<string, ReleasedPicture?>? picture)
    {
        var clean = Escaping.Clean(prose.Markdown);
        try
        {
            using var writer = new StringWriter { NewLine = "\n" };
            var renderer = new HtmlRenderer(writer);
            Pipeline.Setup(renderer);
            renderer.ObjectRenderers.Replace<LinkInlineRenderer>(new SafeLinks(picture));
            renderer.ObjectRenderers.Replace<AutolinkInlineRenderer>(new SafeAutolinks());
            renderer.ObjectRenderers.Replace<HeadingRenderer>(new LowHeadings());
            renderer.ObjectRenderers.Replace<CodeBlockRenderer>(new PlainCode());
            if (prose.Sizes > 1)
            {
                renderer.ObjectRenderers.Replace<LiteralInlineRenderer>(new MarkedWords(prose.Sizes));
            }

            var document = Markdown.Parse(clean, Pipeline);
            foreach (var cell in document.Descendants<TableRow>().Where(r => r.IsHeader).SelectMany(r => r.OfType<TableCell>()))
            {
                cell.GetAttributes().AddProperty("scope", "col");
            }

            renderer.Render(document);
            writer.Flush();
            return Escaping.Clean(writer.ToString().TrimEnd('\n'));
        }
        catch (ArgumentException)
        {
            // Nested deeper than anybody writes: shown as it was typed.
            return $"<p>{Escaping.Html(clean)}</p>";
        }
    }

    /// <summary>As plain text, the words alone.</summary>
    /// <param name="markdown">The text.</param>
    public static string ToText(string markdown)
    {
        var clean = Escaping.Clean(markdown);
        try
        {
            return Escaping.Clean(Markdown.ToPlainText(clean, Pipeline)).Trim('\n', ' ');
        }
        catch (ArgumentException)
        {
            return clean.Trim('\n', ' ');
        }
    }

    /// <summary>As Markdown: the designer's own text, with what another reader of Markdown might run or fetch made harmless.</summary>
    /// <param name="markdown">The text.</param>
    /// <param name="picture">Gives a picture as it stands in the release; null to keep relative paths.</param>
    public static string ToMarkdown(string markdown, Func<string, ReleasedPicture?>? picture = null)
    {
        var clean = Escaping.Clean(markdown).Trim('\n', ' ');
        try
        {
            var changes = new SortedDictionary<int, (int End, string? Text)>();
            foreach (var node in Markdown.Parse(clean, Pipeline).Descendants())
            {
                if (node.Span.IsEmpty || node.Span.Start < 0 || node.Span.Start >= clean.Length)
                {
                    continue;
                }

                var (known, text) = Change(node, picture);
                if (known)
                {
                    changes[StartOf(node, clean)] = (EndOf(node, clean), text);
                }
            }

            return Apply(clean, changes);
        }
        catch (ArgumentException)
        {
            return Escaping.Markdown(clean);
        }
    }

    /// <summary>What becomes of a node in Markdown: kept to the letter (null), or put in other words.</summary>
    private static (bool Known, string? Text) Change(MarkdownObject node, Func<string, ReleasedPicture?>? picture) => node switch
    {
        CodeBlock { Parent: MarkdownDocument } code => (true, Escaping.MarkdownFence(code.Lines.ToString().TrimEnd('\n'))),
        CodeInline or CodeBlock => (true, null),
        LinkInline { IsImage: true } image when Shown(image.Url, picture) is var shown && (shown is null || picture is not null) =>
            (true, shown is null ? Escaping.Markdown(Plain(image)) : $"![{Escaping.Markdown(Plain(image))}]({Escaping.MarkdownTarget(shown.Address)})"),
        LinkInline { IsImage: false } link when SafeAddress.ForLink(link.Url) is null => (true, Escaping.Markdown(Plain(link))),
        AutolinkInline auto when SafeAddress.ForLink(auto.IsEmail ? "mailto:" + auto.Url : auto.Url) is null => (true, Escaping.Markdown(auto.Url)),
        AutolinkInline => (true, null),
        LinkReferenceDefinition definition when SafeAddress.ForLink(definition.Url) is null => (true, ""),
        HeadingBlock heading => (true, $"**{Escaping.Markdown(heading.Inline is { } words ? Plain(words) : "")}**"),
        _ => (false, null),
    };

    // A picture of the text: its words alone stand there where it cannot be had.
    private static ReleasedPicture? Shown(string? address, Func<string, ReleasedPicture?>? picture) =>
        SafeAddress.ForImage(address) is not { } safe ? null : picture is null ? new(safe) : picture(Uri.UnescapeDataString(safe));

    /// <summary>Set text is fenced anew, so that it ends where it ends and no list before it takes it in; its indent goes with it.</summary>
    private static int StartOf(MarkdownObject node, string source)
    {
        var start = node.Span.Start;
        while (node is CodeBlock { Parent: MarkdownDocument } && start > 0 && source[start - 1] is ' ' or '\t')
        {
            start--;
        }

        return start;
    }

    /// <summary>The end of a node; of set text, the end of its last line, also when its fence is never closed.</summary>
    private static int EndOf(MarkdownObject node, string source)
    {
        var end = node.Span.End;
        if (node is not CodeBlock { Parent: MarkdownDocument } code)
        {
            return Math.Min(end + 1, source.Length);
        }

        end = code.Lines.Count > 0 ? Math.Max(end, code.Lines.Lines[code.Lines.Count - 1].Slice.End) : end;
        var line = source.IndexOf('\n', Math.Clamp(end, 0, source.Length - 1));
        return line < 0 ? source.Length : line;
    }

    private static string Plain(ContainerInline inline)
    {
        var text = new StringBuilder();
        foreach (var part in inline.Descendants())
        {
            _ = part switch
            {
                LiteralInline literal => text.Append(literal.Content.AsSpan()),
                CodeInline code => text.Append(code.Content),
                LineBreakInline => text.Append(' '),
                AutolinkInline auto => text.Append(auto.Url),
                HtmlEntityInline entity => text.Append(entity.Transcoded.AsSpan()),
                _ => text,
            };
        }

        return text.ToString();
    }

    private static string Apply(string source, SortedDictionary<int, (int End, string? Text)> changes)
    {
        var result = new StringBuilder(source.Length + 32);
        var at = 0;
        foreach (var (start, (end, text)) in changes)
        {
            if (start < at)
            {
                continue;
            }

            Harmless(source, at, start, result);
            result.Append(text ?? source[start..end]);
            at = end;
        }

        Harmless(source, at, source.Length, result);
        return result.ToString();
    }

    /// <summary>Copies text, with every sign that could begin a tag written as an entity.</summary>
    private static void Harmless(string source, int start, int end, StringBuilder result)
    {
        for (var i = start; i < end; i++)
        {
            if (source[i] != '<')
            {
                result.Append(source[i]);
                continue;
            }

            if (result.Length > 0 && result[^1] == '\\' && Slashes(result) % 2 == 1)
            {
                result.Length--;
            }

            result.Append("&lt;");
        }
    }

    private static int Slashes(StringBuilder text)
    {
        var count = 0;
        while (count < text.Length && text[text.Length - 1 - count] == '\\')
        {
            count++;
        }

        return count;
    }

    /// <summary>Words with the numbers for each size marked.</summary>
    private sealed class MarkedWords(int sizes) : HtmlObjectRenderer<LiteralInline>
    {
        protected override void Write(HtmlRenderer renderer, LiteralInline obj)
        {
            var at = 0;
            var text = obj.Content.ToString();
            foreach (var list in renderer.EnableHtmlForInline ? SizeValues.Lists(text, sizes) : [])
            {
                renderer.WriteEscape(text.AsSpan(at, list.Start - at));
                at = list.Start;
                foreach (var value in list.Values)
                {
                    renderer.Write(SizeMarks.Gap(text[at..value.Start])); // brackets, commas and blanks
                    renderer.Write(SizeMarks.Open(value.Size));
                    at = value.Start + value.Length;
                    renderer.WriteEscape(text.AsSpan(value.Start, value.Length));
                    renderer.Write(SizeMarks.Close);
                }

                renderer.Write(SizeMarks.Gap(text[at..list.End]));
                at = list.End;
            }

            renderer.WriteEscape(text.AsSpan(at));
        }
    }

    private sealed class SafeLinks(Func<string, ReleasedPicture?>? picture) : LinkInlineRenderer
    {
        protected override void Write(HtmlRenderer renderer, LinkInline link)
        {
            var url = link.GetDynamicUrl?.Invoke() ?? link.Url;
            var shown = link.IsImage ? Shown(url, picture) : null;
            if ((link.IsImage ? shown?.Address : SafeAddress.ForLink(url)) is null)
            {
                renderer.WriteChildren(link);
                return;
            }

            if (shown is not null)
            {
                (link.Url, link.GetDynamicUrl) = (shown.Address, null);
                if (shown is { Width: { } width, Height: { } height })
                {
                    link.GetAttributes().AddProperty("width", width.ToString(CultureInfo.InvariantCulture));
                    link.GetAttributes().AddProperty("height", height.ToString(CultureInfo.InvariantCulture));
                }
            }

            base.Write(renderer, link);
        }
    }

    private sealed class SafeAutolinks : AutolinkInlineRenderer
    {
        protected override void Write(HtmlRenderer renderer, AutolinkInline obj)
        {
            if (SafeAddress.ForLink(obj.IsEmail ? "mailto:" + obj.Url : obj.Url) is null)
            {
                renderer.WriteEscape(obj.Url);
                return;
            }

            base.Write(renderer, obj);
        }
    }

    private sealed class LowHeadings : HtmlObjectRenderer<HeadingBlock>
    {
        protected override void Write(HtmlRenderer renderer, HeadingBlock obj)
        {
            renderer.Write("<p class=\"minor\"><strong>");
            renderer.WriteLeafInline(obj);
            renderer.Write("</strong></p>");
            renderer.EnsureLine();
        }
    }

    /// <summary>Set text without the word after its fence, which is of no use on the page; reachable by keyboard, since it may scroll.</summary>
    private sealed class PlainCode : HtmlObjectRenderer<CodeBlock>
    {
        protected override void Write(HtmlRenderer renderer, CodeBlock obj)
        {
            renderer.EnsureLine();
            renderer.Write("<pre tabindex=\"0\">");
            renderer.WriteLeafRawLines(obj, true, true);
            renderer.Write("</pre>");
            renderer.EnsureLine();
        }
    }
}
