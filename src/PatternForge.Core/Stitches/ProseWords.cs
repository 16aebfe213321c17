using System.Collections.Frozen;

namespace PatternForge.Core.Stitches;

/// <summary>Which abbreviations can be told from words in prose. In rows every short word is one; in a sentence "beg", "rep", "alt" and "in" are words of the language.</summary>
public static class ProseWords
{
    private static readonly FrozenSet<string> Both = Set("sts rnd rnds tog tbl dpn dpns foll yo sl");

    private static readonly FrozenSet<string> Knitting = Set("kwise pwise wyif wyib ssk ssp sssk kfb pfb skp skpo spp psso yfwd yrn yfrn cdd kpk w&t lli rli");

    private static readonly FrozenSet<string> Crochet = Set("tch yrh yoh blo flo ch chs sc hdc dc tr dtr trtr htr esc ehdc edc fsc fdc ss sp sps sk");

    private static readonly string[] WithFigures = ["M1", "M1L", "M1R", "M1P", "p2sso", "s2kp", "sk2p"];

    private static readonly FrozenSet<string> InCapitals = new[] { "RS", "WS", "CO", "BO", "MC", "CC", "LH", "RH" }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>True for a word of prose that is surely an abbreviation of the trade.</summary>
    /// <param name="craft">The pattern's craft.</param>
    /// <param name="word">The word as it is written.</param>
    /// <param name="next">The word behind it; empty where none stands.</param>
    public static bool IsAbbreviation(Craft craft, string word, string next)
    {
        if (word is "st" or "St")
        {
            return word == "st" || next == "st"; // "St Ives" is a place
        }

        if (word.Length is 0 or > 9 || InCapitals.Contains(word) || WithFigures.Contains(word, StringComparer.Ordinal))
        {
            return word.Length is > 0 and < 10;
        }

        if (word.AsSpan(1).IndexOfAnyInRange('A', 'Z') >= 0 && !(word.Length is 4 or 5 && word[1] == 'P' && word[0] is 'F' or 'B'))
        {
            return word is "BLO" or "FLO"; // in prose, capitals are somebody's initials
        }

        var plain = word.Length is 4 or 5 && word[1] == 'P' ? word[2..] : word;
        return Both.Contains(plain) || (craft == Craft.Knitting ? Knitting : Crochet).Contains(plain) || IsWithFigure(craft, word);
    }

    // "k2", "p1", "k2tog", "dc2tog", "ch-1"
    private static bool IsWithFigure(Craft craft, string word)
    {
        var figure = word.AsSpan().IndexOfAnyInRange('0', '9');
        return figure > 0 && (craft == Craft.Knitting
            ? figure == 1 && word[0] is 'k' or 'K' or 'p' or 'P' && (word.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0 || word.EndsWith("tog", StringComparison.Ordinal))
            : word.EndsWith("tog", StringComparison.Ordinal) || word.StartsWith("ch-", StringComparison.OrdinalIgnoreCase));
    }

    private static FrozenSet<string> Set(string words) => words.Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);
}
