using System.Buffers;
using System.Globalization;
using System.Text;

namespace PatternForge.Rendering.Templates;

/// <summary>Makes any text harmless in the format it lands in, and keeps it reading the same there.</summary>
internal static class Escaping
{
    private static readonly SearchValues<char> HtmlSpecial = SearchValues.Create("&<>\"'");

    /// <summary>For HTML that is also well-formed XML, as text or in a quoted attribute. What XML cannot hold becomes U+FFFD.</summary>
    public static string Html(string text)
    {
        var clean = Clean(text);
        if (clean.AsSpan().IndexOfAny(HtmlSpecial) < 0)
        {
            return clean;
        }

        var html = new StringBuilder(clean.Length + 16);
        foreach (var c in clean)
        {
            _ = c switch
            {
                '&' => html.Append("&amp;"),
                '<' => html.Append("&lt;"),
                '>' => html.Append("&gt;"),
                '"' => html.Append("&quot;"),
                '\'' => html.Append("&#39;"),
                _ => html.Append(c),
            };
        }

        return html.ToString();
    }

    /// <summary>For one line of plain text: line ends and tabs become blanks, signs that steer a terminal U+FFFD.</summary>
    public static string Line(string text) => Clean(text).Replace('\n', ' ').Replace('\r', ' ').Replace('\t', ' ');

    /// <summary>
    /// For one line of Markdown, in a paragraph, a list item or a table cell. Signs that could mean something are escaped,
    /// those that cannot are left, so that the source reads well too; line ends become blanks.
    /// </summary>
    public static string Markdown(string text)
    {
        var clean = Clean(text);
        var markdown = new StringBuilder(clean.Length + 16);
        for (var i = 0; i < clean.Length; i++)
        {
            var c = clean[i];
            switch (c)
            {
                case '\\' or '`' or '*' or '_' or '[' or ']' or '|' or '~' or '$':
                    markdown.Append('\\').Append(c);
                    break;
                case '<':
                    markdown.Append("&lt;");
                    break;
                case '&' when i + 1 < clean.Length && (char.IsAsciiLetter(clean[i + 1]) || clean[i + 1] == '#'):
                    markdown.Append("&amp;");
                    break;
                case '\n' or '\r' or '\t':
                    markdown.Append(' ');
                    break;
                case '#' or '>' or '+' or '-' or '=' when IsBlank(markdown):
                    markdown.Append('\\').Append(c);
                    break;
                case '.' or ')' when IsNumber(markdown) && (i + 1 == clean.Length || clean[i + 1] is ' ' or '\n' or '\t'):
                    markdown.Append('\\').Append(c);
                    break;
                default:
                    markdown.Append(c);
                    break;
            }
        }

        return markdown.ToString().Trim(' ');
    }

    /// <summary>For the address of a Markdown link: signs that would end it are written as codes of the address.</summary>
    public static string MarkdownTarget(string address)
    {
        var target = new StringBuilder(address.Length);
        var clean = Clean(address);
        for (var i = 0; i < clean.Length; i++)
        {
            var c = clean[i];
            _ = c is '&' && BeginsEntity(clean, i) ? target.Append("&amp;")
                : c is '<' or '>' or '(' or ')' or '\\' or '*' or '_' or '[' or ']' or ' ' or '\n' or '\t' or '|' or '`' ? target.Append(CultureInfo.InvariantCulture, $"%{(int)c:X2}") : target.Append(c);
        }

        return target.ToString();
    }

    /// <summary>True when a reader of Markdown would take "&amp;", letters and a semicolon for a sign of another kind ("&amp;colon;").</summary>
    private static bool BeginsEntity(string text, int at)
    {
        var end = at + 1;
        while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] == '#'))
        {
            end++;
        }

        return end > at + 1 && end < text.Length && text[end] == ';';
    }

    /// <summary>Lines of text as a fenced block of Markdown, its fence longer than any in the text.</summary>
    public static string MarkdownFence(string text)
    {
        var clean = Clean(text);
        var (longest, run) = (2, 0);
        foreach (var c in clean)
        {
            run = c == '`' ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        var fence = new string('`', longest + 1);
        return $"{fence}\n{clean}\n{fence}";
    }

    /// <summary>For a string inside a style sheet: everything but letters, digits and blanks as a code, so that nothing can end it.</summary>
    public static string CssString(string text)
    {
        var css = new StringBuilder(text.Length + 2).Append('"');
        foreach (var rune in Clean(text).EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune) || rune.Value == ' ')
            {
                css.Append(rune.ToString());
            }
            else
            {
                css.Append('\\').Append(rune.Value.ToString("x", CultureInfo.InvariantCulture)).Append(' ');
            }
        }

        return css.Append('"').ToString();
    }

    /// <summary>The text with everything that XML cannot hold (control characters, halves of surrogate pairs) replaced by U+FFFD.</summary>
    public static string Clean(string text)
    {
        var isClean = true;
        for (var i = 0; i < text.Length && isClean; i++)
        {
            isClean = text[i] is '\t' or '\n' or (>= ' ' and < '\ud800') or (> '\udfff' and < '\ufffe') && text[i] is not (>= '\u007f' and <= '\u009f');
        }

        if (isClean)
        {
            return text;
        }

        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                clean.Append(c).Append(text[++i]);
            }
            else if (c == '\r')
            {
                clean.Append(i + 1 < text.Length && text[i + 1] == '\n' ? "" : "\n");
            }
            else
            {
                clean.Append((char.IsControl(c) && c is not ('\t' or '\n')) || char.IsSurrogate(c) || c >= '\ufffe' ? '\ufffd' : c);
            }
        }

        return clean.ToString();
    }

    private static bool IsBlank(StringBuilder text)
    {
        for (var i = text.Length - 1; i >= 0; i--)
        {
            if (text[i] != ' ')
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when all so far is a number at the start of a line, which a dot or a bracket would turn into a list.</summary>
    private static bool IsNumber(StringBuilder text)
    {
        if (text.Length is 0 or > 9)
        {
            return false;
        }

        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsAsciiDigit(text[i]))
            {
                return false;
            }
        }

        return true;
    }
}
