using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Reference;

/// <summary>Finds the sizes of needles and hooks in what a designer writes of a tool: "4 mm circular needle, 40 cm long", "US 7 (4.5 mm)", "size H-8 hook".</summary>
public static class ToolText
{
    private static readonly string[] ToolWords = ["needle", "hook", "dpn", "circular", "straight", "double-pointed", "double pointed", "tool"];
    private static readonly string[] OtherThings = ["pompom", "pom-pom", "loom", "eye", "bead", "button", "stitch marker", "board", "cable needle", "tapestry", "darning", "sewing needle"];

    /// <summary>True when a text speaks of a needle or hook for the stitches, so that its sizes are those of the tables.</summary>
    public static bool IsTool(string text)
    {
        if (Array.Exists(OtherThings, w => text.Contains(w, StringComparison.OrdinalIgnoreCase)))
        {
            return false;
        }

        return Array.Exists(ToolWords, w => text.Contains(w, StringComparison.OrdinalIgnoreCase)) || Read(text).Any(t => t.Marks[0].Start == 0);
    }

    /// <summary>True when the tool is a hook: the text says so, or says nothing and the craft is crochet.</summary>
    public static bool IsHook(string text, bool isCrochet) =>
        text.Contains("hook", StringComparison.OrdinalIgnoreCase) || (isCrochet && !text.Contains("needle", StringComparison.OrdinalIgnoreCase));

    /// <summary>The sizes in a text, those that stand together as one; no more than so many.</summary>
    public static ImmutableArray<ToolTold> Read(string text, int most = 8)
    {
        var told = ImmutableArray.CreateBuilder<ToolTold>();
        var together = ImmutableArray.CreateBuilder<ToolMark>();
        for (var at = 0; at < text.Length && told.Count < most; at++)
        {
            if ((at > 0 && (char.IsLetterOrDigit(text[at - 1]) || text[at - 1] is '.' or ',')) || MarkAt(text, at) is not { } mark)
            {
                continue;
            }

            if (together.Count > 0 && !IsOneTool(text, together, mark))
            {
                told.Add(new ToolTold(together.ToImmutable()));
                together.Clear();
            }

            together.Add(mark);
            at = mark.End - 1;
        }

        if (together.Count > 0)
        {
            told.Add(new ToolTold(together.ToImmutable()));
        }

        return told.ToImmutable();
    }

    private static bool IsOneTool(string text, ImmutableArray<ToolMark>.Builder together, ToolMark mark)
    {
        var between = text.AsSpan(together[^1].End, mark.Start - together[^1].End);
        if (together.Any(m => m.Scale == mark.Scale) || between.Length > 4)
        {
            return false;
        }

        foreach (var c in between)
        {
            if (!(char.IsWhiteSpace(c) || c is '(' or ')' or '[' or ']' or '/' or '=' or '-' or '–' || (c is ',' or ';' && mark.Scale != ToolScale.Millimetres)))
            {
                return false;
            }
        }

        return true;
    }

    private static ToolMark? MarkAt(string text, int at)
    {
        if (char.IsAsciiDigit(text[at]))
        {
            var end = at;
            if (Number(text, ref end) is not { } value)
            {
                return null;
            }

            Blanks(text, ref end);
            return Word(text, end) is "mm" or "MM" or "Mm" && decimal.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm)
                ? new ToolMark(ToolScale.Millimetres, value, mm, at, end + 2)
                : null;
        }

        if (!char.IsAsciiLetter(text[at]))
        {
            return null;
        }

        var word = Word(text, at);
        var next = at + word.Length;
        switch (word.ToUpperInvariant())
        {
            case "US" or "USA" or "U":
                if (word.Length == 1 && !text.AsSpan(at).StartsWith("U.S.", StringComparison.OrdinalIgnoreCase))
                {
                    return null;
                }

                next = word.Length == 1 ? at + 4 : next;
                return Named(text, at, next, ToolScale.Us);
            case "UK":
                return Named(text, at, next, ToolScale.Uk);
            case "JP" or "JAPANESE":
                return Named(text, at, next, ToolScale.Japanese);
            case "STEEL":
                return Named(text, at, next, ToolScale.Steel);
            case "SIZE" or "NO" or "NUMBER":
                return Named(text, at, next, ToolScale.Bare);
            default:
                return LetterAt(text, at, at);
        }
    }

    // "US 7", "US size H-8", "size 8", "No. 10½".
    private static ToolMark? Named(string text, int start, int at, ToolScale scale)
    {
        for (var words = 0; words < 3; words++)
        {
            while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] is '.' or '-' or '#' or ':'))
            {
                at++;
            }

            var word = Word(text, at);
            if (word.ToUpperInvariant() is not ("SIZE" or "NO" or "HOOK" or "US" or "UK" or "STEEL" or "NUMBER"))
            {
                break;
            }

            scale = (word.ToUpperInvariant(), scale) switch
            {
                ("US", ToolScale.Bare) => ToolScale.Us,
                ("UK", ToolScale.Bare) => ToolScale.Uk,
                ("STEEL", _) => ToolScale.Steel,
                _ => scale,
            };
            at += word.Length;
        }

        var end = at;
        if (at < text.Length && char.IsAsciiDigit(text[at]) && Number(text, ref end) is { } number)
        {
            var after = end;
            Blanks(text, ref after);
            return Word(text, after).ToUpperInvariant() is "MM" or "CM" or "IN" or "INCH" or "INCHES" or "M" ? null : new ToolMark(scale, number, null, start, end);
        }

        return scale is ToolScale.Us or ToolScale.Bare ? LetterAt(text, start, at) : null;
    }

    // "H-8", "H/8", "H", "K-10½": a capital letter from B to S alone, or with its number.
    private static ToolMark? LetterAt(string text, int start, int at)
    {
        if (at >= text.Length || text[at] is < 'B' or > 'S' || Word(text, at).Length != 1)
        {
            return null;
        }

        var letter = text[at].ToString();
        var end = at + 1;
        if (end + 1 < text.Length && text[end] is '-' or '/' && char.IsAsciiDigit(text[end + 1]))
        {
            var numberEnd = end + 1;
            _ = Number(text, ref numberEnd);
            return new ToolMark(ToolScale.Letter, letter, null, start, numberEnd);
        }

        // A letter alone is a size only beside the word that says so.
        var after = end;
        Blanks(text, ref after);
        return start < at || Word(text, after).StartsWith("hook", StringComparison.OrdinalIgnoreCase) ? new ToolMark(ToolScale.Letter, letter, null, start, end) : null;
    }

    // 4, 4.5, 4,5, 10½, 10 1/2, 000: in plain form with a point.
    private static string? Number(string text, ref int at)
    {
        var start = at;
        while (at < text.Length && at - start < 6 && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        if (at == start)
        {
            return null;
        }

        var whole = text[start..at];
        if (at + 1 < text.Length && text[at] is '.' or ',' && char.IsAsciiDigit(text[at + 1]))
        {
            var from = ++at;
            while (at < text.Length && at - from < 4 && char.IsAsciiDigit(text[at]))
            {
                at++;
            }

            var part = text[from..at].TrimEnd('0');
            return part.Length == 0 ? whole : $"{whole}.{part}";
        }

        foreach (var (sign, part) in ((string, string)[])[("½", ".5"), ("¼", ".25"), ("¾", ".75"), (" 1/2", ".5"), (" 1/4", ".25"), (" 3/4", ".75"), ("-1/2", ".5"), (" ½", ".5"), (" ¾", ".75"), (" ¼", ".25")])
        {
            if (text.AsSpan(at).StartsWith(sign, StringComparison.Ordinal))
            {
                at += sign.Length;
                return whole + part;
            }
        }

        return whole;
    }

    private static void Blanks(string text, ref int at)
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] == '-'))
        {
            at++;
        }
    }

    private static string Word(string text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
        {
            end++;
        }

        return text[at..end];
    }
}
