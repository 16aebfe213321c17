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
        Alone = Mirror(drawing.Alone, told),
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

        return mirrored.Append("</g>").Append(svg, end, svg.Length - end).ToString();
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
