using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Finds the single signs of a draft that are read as another: hidden ones, those of web pages, those of another encoding, and mere typography.</summary>
internal static class SignMender
{
    private const int LongestName = 8;

    /// <summary>The mends of the whole file, in order.</summary>
    public static List<Mend> Find(SourceText source)
    {
        var mends = new List<Mend>();
        var text = source.Text;
        var at = 0;
        while (at < text.Length && text.AsSpan(at).IndexOfAny(SignTable.Triggers) is var ahead and >= 0)
        {
            at += ahead;
            var mend = MendAt(text, at);
            if (mend is { } found)
            {
                mends.Add(found);
            }

            at = mend is { Span.Length: > 0 } ? mend.Value.Span.End : at + 1;
        }

        return mends;
    }

    private static Mend? MendAt(string text, int at)
    {
        var c = text[at];
        if (SignTable.Plain.TryGetValue(c, out var plain))
        {
            return c is >= 'ʰ' and <= 'ˢ' or 'ᵗ' or 'ᵈ' or 'ⁿ' && !IsRaisedOrdinal(text, at) ? null : new Mend(new TextSpan(at, 1), plain);
        }

        if (SignTable.Hidden.Contains(c, StringComparison.Ordinal))
        {
            return at > 0 && IsPlainWriting(text, at - 1) && IsPlainWriting(text, at + 1) ? new Mend(new TextSpan(at, 1), "") : null;
        }

        if (c is >= '\uFF01' and <= '\uFF5E')
        {
            return IsInForeignLine(text, at) ? null : new Mend(new TextSpan(at, 1), ((char)(c - 0xFEE0)).ToString());
        }

        if (c is '′' or '´')
        {
            return Apostrophe(text, at);
        }

        return c == '&' ? Named(text, at) : Misread(text, at);
    }

    /// <summary>"dec′d", "DEC′D", "m´s": a mark between letters is an apostrophe; two marks behind a number are an inch mark.</summary>
    private static Mend? Apostrophe(string text, int at)
    {
        if (at == 0 || at + 1 >= text.Length)
        {
            return null;
        }

        if (text[at] == '′' && text[at + 1] == '′' && char.IsAsciiDigit(text[at - 1]))
        {
            return new Mend(new TextSpan(at, 2), "″");
        }

        return char.IsLetter(text[at - 1]) && (char.IsLower(text[at + 1]) || (char.IsUpper(text[at - 1]) && char.IsUpper(text[at + 1]))) && (at + 2 == text.Length || !char.IsLetter(text[at + 2])) ? new Mend(new TextSpan(at, 1), "’") : null;
    }

    /// <summary>"&amp;frac12;", "&amp;#42;": a sign by its name or number in web pages.</summary>
    private static Mend? Named(string text, int at)
    {
        var end = text.IndexOf(';', at, Math.Min(LongestName + 2, text.Length - at));
        if (end < 0)
        {
            return null;
        }

        var name = text[(at + 1)..end];
        var sign = name.StartsWith('#') ? Numbered(name) : SignTable.NamedSign(name);
        if (sign is null || (sign == "&" && BeginsName(text, end + 1)))
        {
            return null;
        }

        return new Mend(TextSpan.FromBounds(at, end + 1), sign);
    }

    // "&amp;lt;" keeps its meaning only as it is.
    private static bool BeginsName(string text, int at)
    {
        var start = at;
        while (at < text.Length && at - start < LongestName && (char.IsAsciiLetterOrDigit(text[at]) || text[at] == '#'))
        {
            at++;
        }

        return at > start && at < text.Length && text[at] == ';';
    }

    private static string? Numbered(string name)
    {
        var isHex = name.Length > 1 && name[1] is 'x' or 'X';
        var digits = name.AsSpan(isHex ? 2 : 1);
        return int.TryParse(digits, isHex ? NumberStyles.AllowHexSpecifier : NumberStyles.None, CultureInfo.InvariantCulture, out var code) && code is >= 0x20 and < 0xD800 and not ('<' or '>' or '&') && code is < 0x7F or > 0x9F
            ? code is 0xA0 or 0x2009 or 0x202F ? " " : ((char)code).ToString()
            : null;
    }

    private static Mend? Misread(string text, int at)
    {
        if (SignTable.MisreadAt(text.AsSpan(at)) is var (sign, length))
        {
            var span = new TextSpan(at, length);
            return new Mend(span, sign, DraftRules.MisreadSigns, span);
        }

        // A blank that keeps words together has left only its first half: "end.Â (24 sts)".
        var isLeft = text[at] == 'Â' && at > 0 && !char.IsLetter(text[at - 1]) && (at + 1 == text.Length || text[at + 1] is ' ' or '\r' or '\n');
        return isLeft ? new Mend(new TextSpan(at, 1), "", DraftRules.MisreadSigns, new TextSpan(at, 1)) : null;
    }

    private static bool IsRaisedOrdinal(string text, int at)
    {
        var start = at;
        while (start > 0 && at - start < 2 && SignTable.Plain.ContainsKey(text[start - 1]))
        {
            start--;
        }

        return start > 0 && char.IsAsciiDigit(text[start - 1]);
    }

    /// <summary>True for writing in which a sign of no width says nothing: Latin letters, figures and signs, and the ends of the file.</summary>
    private static bool IsPlainWriting(string text, int at) =>
        at < 0 || at >= text.Length || text[at] is < '\u0250' or (>= '\u2000' and < '\u2200') or (>= '\uFB00' and <= '\uFB06') or '\uFEFF';

    private static bool IsInForeignLine(string text, int at)
    {
        var start = text.LastIndexOf('\n', at) + 1;
        var end = text.IndexOf('\n', at);
        foreach (var c in text.AsSpan(start, (end < 0 ? text.Length : end) - start))
        {
            if (c is >= '\u3041' and <= '\u9FFF' or (>= '\uAC00' and <= '\uD7A3'))
            {
                return true;
            }
        }

        return false;
    }
}
