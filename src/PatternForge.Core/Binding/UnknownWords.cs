using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What to say about a word that no list knows.</summary>
internal static class UnknownWords
{
    private static readonly HashSet<string> Plain = new[]
    {
        "a", "an", "the", "and", "of", "to", "on", "in", "it", "is", "at", "by", "for", "from", "then", "next", "off", "up", "all", "each", "end", "now", "with", "your", "you", "this", "that", "as", "or", "so", "not", "do", "if",
        "but", "save", "be", "will", "once", "row", "yarn", "wool", "join", "turn", "cut", "both", "side", "edge", "over", "into", "mc", "cc", "b", "c", "d", "rs", "ws", "rib", "tie", "knot", "back", "here", "gap", "hem", "cuff", "body", "pm", "sm", "rm",
    }.ToHashSet(StringComparer.OrdinalIgnoreCase);

    private static readonly Dictionary<string, string> CrochetOnly = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["sc"] = "a crochet stitch (single crochet)",
        ["hdc"] = "a crochet stitch (half double crochet)",
        ["htr"] = "a crochet stitch (half treble)",
        ["dc"] = "a crochet stitch (double crochet)",
        ["tr"] = "a crochet stitch (treble)",
        ["dtr"] = "a crochet stitch (double treble)",
        ["sc2tog"] = "a crochet decrease",
        ["dc2tog"] = "a crochet decrease",
        ["fpdc"] = "a crochet stitch (front post double crochet)",
        ["bpdc"] = "a crochet stitch (back post double crochet)",
    };

    private static readonly Dictionary<string, string> KnittingOnly = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["knit"] = "knitting",
        ["purl"] = "knitting",
        ["k2tog"] = "a knitting decrease",
        ["p2tog"] = "a knitting decrease",
        ["ssk"] = "a knitting decrease",
        ["skp"] = "a knitting decrease",
        ["psso"] = "knitting",
        ["kfb"] = "a knitting increase",
    };

    /// <summary>Words that read like an abbreviation of a stitch and are no plain English.</summary>
    public static bool LooksLikeStitch(string word, bool alone)
    {
        if (Plain.Contains(word) || word.Length > 10 || TradeWords.Find(Dialect.Any, word) is not null)
        {
            return false;
        }

        var hasDigit = word.Any(char.IsAsciiDigit);
        var hasInnerCapital = word.Skip(1).Any(char.IsUpper) && word.Any(char.IsLower);
        return hasDigit || hasInnerCapital || (alone && word.Length <= 4) || word.Length <= 3;
    }

    /// <summary>True when the letters of a word are those of a stitch in another order: "Icn", "shlel".</summary>
    public static bool IsMisspelt(string word, RowContext context)
    {
        static string Letters(string text) => string.Concat(text.ToLowerInvariant().Order());
        return word.Length is > 2 and <= 12 && !Plain.Contains(word) && Letters(word) is var letters && Suggest.Nearest(word, context.Book.Names).Any(name => Letters(name) == letters);
    }

    /// <summary>True when a word without vowels, or with a figure in it, is one letter off a crochet stitch: "scc", "hdcc", "sc2tg".</summary>
    public static bool IsNearStitch(string word, RowContext context)
    {
        if (word.Length is < 3 or > 8 || Plain.Contains(word) || !word.All(char.IsAsciiLetterOrDigit) || TradeWords.Find(Dialect.Any, word) is not null
            || context.IsYarn(word) || context.Facts.Abbreviations?.Any(a => a.Name.StartsWith(word, StringComparison.OrdinalIgnoreCase)) == true
            || (word.Any(c => char.ToLowerInvariant(c) is 'a' or 'e' or 'i' or 'o' or 'u' or 'y') && !word.Any(char.IsAsciiDigit)))
        {
            return false;
        }

        var lower = word.ToLowerInvariant();
        return context.Book.Names.Any(name => name.Length > 1 && Math.Abs(name.Length - lower.Length) < 2 && name[0] == lower[0] && Suggest.Distance(lower, name) == 1 && (name.Length > 2 || lower.Length > name.Length));
    }

    /// <summary>What the word is in another craft; null when it is nothing there.</summary>
    public static string? OtherCraft(string word, Craft craft)
    {
        var (stem, _) = StitchReader.Split(word);
        return craft == Craft.Knitting ? CrochetOnly.GetValueOrDefault(stem) : KnittingOnly.GetValueOrDefault(stem);
    }

    /// <summary>The craft as an adjective.</summary>
    public static string CraftWord(Craft craft) => craft switch
    {
        Craft.Knitting => "knitting",
        Craft.Crochet => "crochet",
        _ => "Tunisian crochet",
    };

    /// <summary>Reports a stitch that nobody knows, with the nearest names.</summary>
    public static void Report(Atom atom, RowContext context)
    {
        var word = atom.Text;
        var repaired = word.Replace('O', '0').Replace('o', '0').Replace('l', '1').Replace('I', '1');
        string help;
        IReadOnlyList<string> near = [];
        var (stem, digits) = StitchReader.Split(repaired);
        if (repaired != word && digits >= 0 && context.Book.Find(stem) is not null && word.Length <= 5 && char.IsLetter(word[0]))
        {
            help = $"a letter stands where a figure is meant: `{repaired.ToLowerInvariant()}`?";
        }
        else
        {
            near = Near(word, context);
            help = near.Count > 0 ? $"did you mean {string.Join(" or ", near.Select(n => $"`{n}`"))}? Or define `{word}` under `stitches` in the header" : $"define `{word}` under `stitches` in the header, or correct the spelling";
        }

        context.Bag.Add(new Finding(RowRules.UnknownStitch, context.Source, atom.Span, $"`{word}` is neither a stitch that the trade knows nor one that this pattern defines")
        {
            Help = help,
            Fix = near.Count == 1 && word.Length > 2 ? new Fix($"Write `{near[0]}`", [new Edit(new TextSpan(atom.Span.Start, word.Length), KnownWords.LikeCase(near[0], word))]) : null,
        });
    }

    /// <summary>The names nearest to a word, all of the likeliest slip of the keys; up to three.</summary>
    private static IReadOnlyList<string> Near(string word, RowContext context)
    {
        var near = new KnownWords(context.Book).Nearest(word, 8);
        if (near.Count == 0)
        {
            return near;
        }

        var (slip, distance) = (KnownWords.Slip(word, near[0]), Suggest.Distance(word, near[0]));
        return [.. near.Where(n => KnownWords.Slip(word, n) == slip && Suggest.Distance(word, n) == distance).Take(slip == 0 ? 1 : 3)];
    }
}
