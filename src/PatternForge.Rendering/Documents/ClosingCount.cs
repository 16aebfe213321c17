using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Finds the count with which a designer closes a row ("… to end. 72 (80, 88) sts.", "(12 dc, 6 ch-1 sps)"), so that the page can set it at
/// the side instead of printing it twice. Nothing is left out and nothing reworded: what is cut off the row is what stands at the side.
/// </summary>
internal static class ClosingCount
{
    private const int Longest = 160;

    private static readonly string[] Words =
    [
        "st", "sts", "stitch", "stitches", "rem", "remain", "remaining", "left", "total", "in", "all", "on", "needle", "needles", "each", "side", "sides", "and",
        "sc", "hdc", "dc", "tr", "dtr", "htr", "sl", "ch", "sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "shell", "shells", "cluster", "clusters",
        "cl", "cls", "v", "picot", "picots", "puff", "puffs", "corner", "corners", "bobble", "bobbles", "mesh", "meshes",
        "single", "half", "double", "treble", "crochet", "slip", "chain", "chains",
    ];

    /// <summary>Splits a row's text where the words end and the closing count begins; null when it does not close with a count that begins with these numbers.</summary>
    /// <param name="text">The row.</param>
    /// <param name="stated">The count that it states, one a size.</param>
    public static (string Instruction, string Count)? Split(string text, ImmutableArray<int?> stated)
    {
        // A row for some sizes alone tells its count for those, the first of them first.
        if (stated.IsDefaultOrEmpty || stated.FirstOrDefault(n => n is not null) is not { } first)
        {
            return null;
        }

        var body = text.TrimEnd(' ', '.');
        var from = body.Length > 0 && body[^1] is ')' or ']' ? OpenerOf(body) : -1;
        var bracketed = from > 0 && Reads(body[(from + 1)..^1], first);
        if (!bracketed)
        {
            from = Separator(body, first);
        }

        if (from <= 0)
        {
            return null;
        }

        var count = bracketed ? body[(from + 1)..^1] : body[(from + 1)..];
        var instruction = body[..from].TrimEnd(' ', '—', '–', '-', '=', ':');
        return instruction.Length == 0 ? null : (Ends(instruction), count.Trim());
    }

    /// <summary>True when the row says the count anyway, in trade form and with its stitches.</summary>
    public static bool Says(string text, string tradeForm)
    {
        var at = text.IndexOf(tradeForm + " st", StringComparison.OrdinalIgnoreCase);
        return at == 0 || (at > 0 && !char.IsAsciiDigit(text[at - 1]));
    }

    /// <summary>A cut-off row keeps its full stop if it had one, or gets that of the count.</summary>
    private static string Ends(string instruction) => instruction[^1] is '.' or '!' or '?' or ';' or ',' ? instruction.TrimEnd(';', ',') : instruction + ".";

    private static int OpenerOf(string body)
    {
        var (close, depth) = (body[^1], 0);
        var open = close == ')' ? '(' : '[';
        for (var i = body.Length - 1; i >= 0 && body.Length - i < Longest; i--)
        {
            depth += body[i] == close ? 1 : body[i] == open ? -1 : 0;
            if (depth == 0)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The dash, sign or full stop after which nothing but the count stands.</summary>
    private static int Separator(string body, int first)
    {
        for (var i = body.Length - 1; i > 0 && body.Length - i < Longest; i--)
        {
            if (body[i] is '—' or '–' or '=' or '.' or ':' && i + 1 < body.Length && body[i + 1] == ' ')
            {
                return Reads(body[(i + 1)..], first) ? i : -1;
            }
        }

        return -1;
    }

    /// <summary>True when the words are a count that begins with the number: digits, signs between sizes, and nothing but names of stitches.</summary>
    private static bool Reads(string words, int first)
    {
        var text = words.Trim();
        var start = first.ToString(CultureInfo.InvariantCulture);
        if (text.Length > Longest || !text.StartsWith(start, StringComparison.Ordinal) || (text.Length > start.Length && char.IsAsciiDigit(text[start.Length])))
        {
            return false;
        }

        var named = false;
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsLetter(text[i]))
            {
                if (!char.IsAsciiDigit(text[i]) && text[i] is not (' ' or '(' or ')' or '[' or ']' or ',' or '-' or '–'))
                {
                    return false;
                }

                continue;
            }

            var end = i;
            while (end < text.Length && char.IsLetter(text[end]))
            {
                end++;
            }

            if (!Words.Contains(text[i..end], StringComparer.OrdinalIgnoreCase))
            {
                return false;
            }

            named = true;
            i = end - 1;
        }

        return named;
    }
}
