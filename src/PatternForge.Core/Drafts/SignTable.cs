using System.Buffers;
using System.Collections.Frozen;
using System.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Every single sign that is read as another, each declared once.</summary>
internal static class SignTable
{
    /// <summary>How Windows shows the bytes 80 to 9F (code page 1252, as the WHATWG Encoding Standard lists it); 0 where it has no sign.</summary>
    private const string Windows = "€\0‚ƒ„…†‡ˆ‰Š‹Œ\0Ž\0\0‘’“”•–—˜™š›œ\0žŸ";

    private const int MostSigns = 10;

    /// <summary>Signs that drafts hold and that come out as two or three others when UTF-8 is read as code page 1252.</summary>
    private const string Misread = "–—‘’“”„•…½¼¾⅓⅔⅛⅜⅝⅞×°·±²³†‡™®©′″−∗⁄‐‑‒ \u2009\u202F\u200B\uFEFFàáâãäåæçèéêëìíîïñòóôõöøùúûüýßÀÁÂÄÅÆÇÈÉÊËÎÏÑÓÔÖØÚÛÜ";

    /// <summary>Signs of the same meaning as a plainer one: other asterisks and multiplication signs, ligatures, raised ordinals, odd dashes.</summary>
    public static readonly FrozenDictionary<char, string> Plain = Of(
        "∗* ＊* ⁎* ✱* ✲* ﹡* ٭* ✕× ✖× ⨯× ╳× ﬀff ﬁfi ﬂfl ﬃffi ﬄffl ﬅst ﬆst ˢs ᵗt ⁿn ᵈd ʳr ʰh \u2010- \u2011- ﹣- \u2012– \u2015— \u2028\n \u2029\n\n \v\n");

    /// <summary>Signs of no width, which a maker never sees.</summary>
    public const string Hidden = "\u00AD\u200B\u200C\u200D\u200E\u200F\u2060\uFEFF\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

    /// <summary>Names that web pages use for signs (HTML's named character references). Those of angle brackets are left alone: they mean something to Markdown.</summary>
    private const string Named =
        "amp=& ast=* quot=\" apos=' frac12=½ half=½ frac14=¼ frac34=¾ frac13=⅓ frac23=⅔ times=× deg=° middot=· bull=• ndash=– mdash=— hellip=… lsquo=‘ rsquo=’ ldquo=“ rdquo=” "
        + "prime=′ Prime=″ dagger=† Dagger=‡ lbrack=[ rbrack=] lpar=( rpar=) plus=+ equals== num=# sect=§ nbsp= ensp= emsp= thinsp=";

    private static Dictionary<string, string>? s_named;

    /// <summary>The first signs of what a text read in the wrong encoding shows: the bytes that begin the UTF-8 of the signs above.</summary>
    private const string Leads = "ÂÃâï";

    /// <summary>All signs at which something may have to be mended.</summary>
    public static readonly SearchValues<char> Triggers = SearchValues.Create([.. Plain.Keys, .. Hidden, .. Leads, '&', '′', '´', .. Enumerable.Range(0xFF01, 0x5E).Select(c => (char)c)]);

    // Made when a file shows the first such sign; most show none.
    private static Dictionary<string, string>? s_sequences;

    /// <summary>The sign that web pages call by a name; null for another name.</summary>
    public static string? NamedSign(string name) => (s_named ??= Names()).GetValueOrDefault(name);

    /// <summary>The sign that stood at a place before the text was read in the wrong encoding, and how many signs it has become; null where none did.</summary>
    public static (string Sign, int Length)? MisreadAt(ReadOnlySpan<char> text)
    {
        if (!Leads.Contains(text[0], StringComparison.Ordinal))
        {
            return null;
        }

        var lookup = (s_sequences ??= Sequences()).GetAlternateLookup<ReadOnlySpan<char>>();
        for (var length = Math.Min(MostSigns, text.Length); length > 1; length--)
        {
            if (lookup.TryGetValue(text[..length], out var sign))
            {
                return (sign, length);
            }
        }

        return null;
    }

    private static FrozenDictionary<char, string> Of(string list) => list.Split(' ').ToFrozenDictionary(entry => entry[0], entry => entry[1..]);

    // A name without a sign is one for a blank.
    private static Dictionary<string, string> Names() => Named.Split(' ')
        .Select(entry => (entry, sign: entry.IndexOf('=', StringComparison.Ordinal)))
        .ToDictionary(e => e.entry[..e.sign], e => e.sign + 1 == e.entry.Length ? " " : e.entry[(e.sign + 1)..], StringComparer.Ordinal);

    /// <summary>Each sign as it looks once read in the wrong encoding, and once more where that was done twice.</summary>
    private static Dictionary<string, string> Sequences()
    {
        var all = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var sign in Misread)
        {
            var meant = sign is ' ' or '\u2009' or '\u202F' ? " " : sign is '\u200B' or '\uFEFF' ? "" : Plain.GetValueOrDefault(sign) ?? sign.ToString();
            foreach (var once in (string[])[Shown(sign.ToString(), windows: true), Shown(sign.ToString(), windows: false)])
            {
                all.TryAdd(once, meant);
                all.TryAdd(Shown(once, windows: true), meant);
            }
        }

        return all;
    }

    private static string Shown(string text, bool windows)
    {
        var shown = new StringBuilder();
        foreach (var b in Encoding.UTF8.GetBytes(text))
        {
            var sign = windows && b is >= 0x80 and < 0xA0 ? Windows[b - 0x80] : (char)b;
            shown.Append(sign == '\0' ? (char)b : sign);
        }

        return shown.ToString();
    }
}
