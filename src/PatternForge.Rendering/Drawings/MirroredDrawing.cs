using System.Globalization;
using System.Text;

namespace PatternForge.Rendering.Drawings;

/// <summary>A drawing in mirror image, its letters and numbers still to be read.</summary>
internal static class MirroredDrawing
{
    /// <summary>The mirror image.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="told">What words about sides become.</param>
    public static Drawing Of(Drawing drawing, Func<string, string> told) => drawing with
    {
        Description = told(drawing.Description),
        Sheets = [.. drawing.Sheets.Select(s => Mirror(s, told))],
        Alone = MirrorAlone(drawing, told),
        Key = [.. drawing.Key.Select(k => k with { Svg = Mirror(k.Svg, told), Meaning = told(k.Meaning) })],
        Notes = [.. drawing.Notes.Select(n => told(n.Replace("; left-handed makers go clockwise", "", StringComparison.Ordinal)))],
    };

    // What SvgPage writes is regular: one outer element with its width, its words first, then the shapes.
    private static string Mirror(string svg, Func<string, string> told)
    {
        var open = svg.IndexOf("<svg", StringComparison.Ordinal);
        var start = open < 0 ? -1 : svg.IndexOf('>', open) + 1;
        var end = svg.LastIndexOf("</svg>", StringComparison.Ordinal);
        if (start <= 0 || end < start || Width(svg) is not { } width)
        {
            return svg;
        }

        const string Words = "</desc>";
        var (from, lead) = (start, "");
        if (svg.IndexOf(Words, start, StringComparison.Ordinal) is >= 0 and var words && svg.AsSpan(start).StartsWith("<title"))
        {
            from = words + Words.Length;
            lead = Described(svg[start..from], told);
        }

        var mirrored = new StringBuilder(svg.Length + 512);
        mirrored.Append(svg, 0, start).Append(lead).Append("<g transform=\"matrix(-1 0 0 1 ").Append(width).Append(" 0)\">");
        Turned(mirrored, svg, from, end);
        return mirrored.Append("</g>").Append(svg, end, svg.Length - end).ToString();
    }

    // A file that stands alone has its title above the drawing and its key below: these stay where they can be read, and only what is drawn is mirrored.
    private static string MirrorAlone(Drawing drawing, Func<string, string> told)
    {
        const string Words = "</desc>";
        var svg = drawing.Alone;
        var from = svg.IndexOf(Words, StringComparison.Ordinal) + Words.Length;
        var end = svg.LastIndexOf("</svg>", StringComparison.Ordinal);
        if (from < Words.Length || end < from || Width(svg) is not { } width)
        {
            return Mirror(svg, told);
        }

        var mirrored = new StringBuilder(svg.Length + 512).Append(Described(svg[..from], told));
        var groups = 0;
        for (var at = from; at < end;)
        {
            var close = svg.IndexOf('>', at) + 1;
            if (IsGroup(svg, at))
            {
                var behind = EndOfGroup(svg, at, end);
                var isDrawing = groups++ == 0;
                var span = isDrawing ? width : groups - 2 < drawing.Key.Length ? Width(drawing.Key[groups - 2].Svg) : null;
                if (isDrawing)
                {
                    mirrored.Append("<g transform=\"matrix(-1 0 0 1 ").Append(span).Append(" 0)\">");
                    Turned(mirrored, svg, at, behind);
                    mirrored.Append("</g>");
                }
                else if (span is null || behind == close)
                {
                    mirrored.Append(svg, at, behind - at);
                }
                else
                {
                    mirrored.Append(svg, at, close - at).Append("<g transform=\"matrix(-1 0 0 1 ").Append(span).Append(" 0)\">");
                    Turned(mirrored, svg, close, behind - "</g>".Length);
                    mirrored.Append("</g></g>");
                }

                at = behind;
            }
            else if (groups > 0 && svg.AsSpan(at).StartsWith("<text ") && svg.IndexOf("</text>", close, StringComparison.Ordinal) is >= 0 and var last)
            {
                mirrored.Append(svg, at, close - at).Append(told(svg[close..last]));
                at = last;
            }
            else
            {
                mirrored.Append(svg, at, Math.Max(1, close - at));
                at = Math.Max(at + 1, close);
            }
        }

        return mirrored.Append(svg, end, svg.Length - end).ToString();
    }

    private static bool IsGroup(string svg, int at) => svg.AsSpan(at).StartsWith("<g ") || svg.AsSpan(at).StartsWith("<g>");

    /// <summary>The place behind a group and all that is in it.</summary>
    private static int EndOfGroup(string svg, int at, int end)
    {
        var depth = 0;
        for (var i = at; i >= 0 && i < end; i = svg.IndexOf('<', i + 1))
        {
            var close = svg.IndexOf('>', i);
            if (IsGroup(svg, i))
            {
                depth += svg[close - 1] == '/' ? 0 : 1;
            }
            else if (svg.AsSpan(i).StartsWith("</g>"))
            {
                depth--;
            }

            if (depth == 0)
            {
                return close + 1;
            }
        }

        return end;
    }

    /// <summary>What stands in a mirrored group, its letters turned back so that they can be read.</summary>
    private static void Turned(StringBuilder mirrored, string svg, int from, int end)
    {
        for (var at = from; at < end;)
        {
            var text = svg.IndexOf("<text ", at, end - at, StringComparison.Ordinal);
            if (text < 0)
            {
                mirrored.Append(svg, at, end - at);
                break;
            }

            var close = svg.IndexOf('>', text);
            mirrored.Append(svg, at, text - at).Append(Upright(svg[text..close]));
            at = close;
        }
    }

    // Letters are turned back at their own place, and begin where they ended.
    private static string Upright(string tag)
    {
        var x = Attribute(tag, "x");
        tag = tag.Contains("text-anchor=\"start\"", StringComparison.Ordinal) ? tag.Replace("text-anchor=\"start\"", "text-anchor=\"end\"", StringComparison.Ordinal) : tag.Replace("text-anchor=\"end\"", "text-anchor=\"start\"", StringComparison.Ordinal);
        return double.TryParse(x, NumberStyles.Float, CultureInfo.InvariantCulture, out var place) ? $"{tag} transform=\"matrix(-1 0 0 1 {SvgPage.Number(2 * place)} 0)\"" : tag;
    }

    private static string Described(string words, Func<string, string> told)
    {
        var start = words.IndexOf("<desc", StringComparison.Ordinal);
        var text = start < 0 ? -1 : words.IndexOf('>', start) + 1;
        var end = words.LastIndexOf("</desc>", StringComparison.Ordinal);
        return text > 0 && end >= text ? string.Concat(words.AsSpan(0, text), told(words[text..end]), words.AsSpan(end)) : words;
    }

    private static string? Width(string svg) => Attribute(svg[..svg.IndexOf('>', svg.IndexOf("<svg", StringComparison.Ordinal))], "width");

    private static string? Attribute(string tag, string name)
    {
        var at = tag.IndexOf($" {name}=\"", StringComparison.Ordinal);
        if (at < 0)
        {
            return null;
        }

        at += name.Length + 3;
        return tag[at..tag.IndexOf('"', at)];
    }
}
