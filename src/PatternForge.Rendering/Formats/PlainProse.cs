using System.Globalization;
using System.Text;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>A designer's Markdown as lines for <see cref="TextLayout"/>: marks taken out, links written out, lists and tables kept.</summary>
internal static class PlainProse
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder { MaximumNestingDepth = 64 }.DisableHtml().UsePipeTables().UseAutoLinks().Build();

    /// <summary>The text.</summary>
    public static string Of(string markdown)
    {
        var clean = Escaping.Clean(markdown).Replace('\t', ' ');
        try
        {
            var lines = new StringBuilder(clean.Length);
            Blocks(Markdown.Parse(clean, Pipeline), "", lines);
            return lines.ToString().Trim('\n');
        }
        catch (ArgumentException)
        {
            // Nested deeper than anybody writes: shown as it was typed.
            return string.Join('\n', clean.Split('\n').Select(l => TextLayout.AsItIs + l));
        }
    }

    private static void Blocks(ContainerBlock container, string margin, StringBuilder lines)
    {
        foreach (var block in container)
        {
            switch (block)
            {
                case ListBlock list:
                    Items(list, margin, lines);
                    break;
                case Table table:
                    foreach (var row in table.OfType<TableRow>())
                    {
                        lines.Append(string.Join('\t', row.OfType<TableCell>().Select(c => string.Join(' ', c.OfType<LeafBlock>().Select(WordsOf))).Append(""))).Append('\n');
                    }

                    break;
                case CodeBlock code:
                    foreach (var line in code.Lines.ToString().TrimEnd('\n').Split('\n'))
                    {
                        lines.Append(TextLayout.AsItIs).Append(margin).Append("    ").Append(line).Append('\n');
                    }

                    break;
                case ThematicBreakBlock:
                    lines.Append(TextLayout.AsItIs).Append("* * *\n");
                    break;
                case HeadingBlock heading:
                    lines.Append(margin).Append(WordsOf(heading).ToUpperInvariant()).Append('\n');
                    break;
                case LeafBlock leaf:
                    lines.Append(margin).Append(WordsOf(leaf)).Append('\n');
                    break;
                case ContainerBlock inner:
                    Blocks(inner, margin + "  ", lines);
                    continue;
            }

            lines.Append('\n');
        }
    }

    private static void Items(ListBlock list, string margin, StringBuilder lines)
    {
        var number = int.TryParse(list.OrderedStart, CultureInfo.InvariantCulture, out var first) ? first : 1;
        foreach (var item in list.OfType<ListItemBlock>())
        {
            var mark = list.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"{number++}.") : "-";
            var isFirst = true;
            foreach (var part in item)
            {
                if (part is LeafBlock leaf and not CodeBlock)
                {
                    lines.Append(margin).Append(isFirst ? mark : " ").Append('\t').Append(WordsOf(leaf)).Append('\n');
                    isFirst = false;
                }
                else if (part is ListBlock inner)
                {
                    Items(inner, margin + "  ", lines);
                }
                else if (part is ContainerBlock other)
                {
                    Blocks(other, margin + "  ", lines);
                }
            }
        }
    }

    private static string WordsOf(LeafBlock leaf)
    {
        var text = new StringBuilder();
        Words(leaf.Inline, text);
        return Escaping.Line(text.ToString()).Trim();
    }

    private static void Words(ContainerInline? inlines, StringBuilder text)
    {
        foreach (var inline in inlines ?? [])
        {
            switch (inline)
            {
                case LiteralInline literal:
                    text.Append(literal.Content.AsSpan());
                    break;
                case CodeInline code:
                    text.Append(code.Content);
                    break;
                case LineBreakInline:
                    text.Append(' ');
                    break;
                case AutolinkInline auto:
                    text.Append(auto.Url);
                    break;
                case HtmlEntityInline entity:
                    text.Append(entity.Transcoded.AsSpan());
                    break;
                case LinkInline { IsImage: true } image:
                    text.Append("(picture: ");
                    Words(image, text);
                    text.Append(')');
                    break;
                case LinkInline link:
                    var start = text.Length;
                    Words(link, text);
                    if (SafeAddress.ForLink(link.Url) is { } address && text.ToString(start, text.Length - start) != address)
                    {
                        text.Append(" <").Append(address).Append('>');
                    }

                    break;
                case ContainerInline inner:
                    Words(inner, text);
                    break;
            }
        }
    }
}
