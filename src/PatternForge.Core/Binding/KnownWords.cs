using System.Collections.Frozen;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>The words that rows are written with, to find the one that a misspelt word most likely means.</summary>
internal sealed class KnownWords
{
    // Words that the readers look for and that are spelt in one way only.
    private static readonly FrozenSet<string> Plain = (
        "a across after again all along also and another around as at back before behind below between both by center centre continuing corner each edge end evenly every first for from front gap held hold in inc inside into "
        + "last leave leaving left loop loops loosely loose m made marker middle motif needle neck next of off on once one only onto onwards open or other over pass past picot post previous remaining remove right ring row same second shell "
        + "skip skipping sk slip space spaces sp stitch the then third three through times tip to together top twice two under unless until unworked up using v-st with without work yarn "
        + "knitwise purlwise wyif wyib tbl kwise pwise blo flo bind bound cast chain double treble single half crochet magic fasten join turn increase decrease evenly measures pattern established straight even holder waste "
        + "knit purl stockinette stocking garter seed moss ribbing rib armhole shoulder shaping begin beginning ending following cluster bobble foundation hook tch").Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // Words that are right by themselves and wrong where they stand.
    private static readonly FrozenDictionary<string, string> Slips = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["form"] = "from",
        ["of"] = "off",
        ["tow"] = "two",
        ["too"] = "to",
        ["fro"] = "for",
        ["net"] = "next",
        ["cost"] = "cast",
        ["lost"] = "last",
        ["eat"] = "each",
        ["tun"] = "turn",
        ["int"] = "into",
        ["on"] = "in",
        ["ad"] = "and",
        ["sl"] = "sl st",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private readonly StitchBook _book;
    private string[]? _all;

    public KnownWords(StitchBook book) => _book = book;

    /// <summary>True for a word that rows know, a stitch with its number too.</summary>
    public bool Knows(string word) => Plain.Contains(word) || Vocabulary.IsSpelling(word) || _book.Find(word) is not null || (StitchReader.Split(word) is (var stem, >= 0) && _book.Find(stem) is not null);

    /// <summary>What a word is most likely meant to be, nearest first: the same letters in another order, then one letter more, fewer or other; none where nothing is near.</summary>
    public IReadOnlyList<string> Nearest(string word, int most)
    {
        if (word.Length is < 2 or > 16)
        {
            return [];
        }

        _all ??= [.. Plain.Concat(Vocabulary.Spellings).Concat(_book.Names).Where(w => w.Length > 1).Distinct(StringComparer.OrdinalIgnoreCase)];
        var near = Suggest.Nearest(word, _all, 32)
            .Where(n => !string.Equals(n, word, StringComparison.OrdinalIgnoreCase))
            .Select((name, order) => (name, slip: Slip(word, name), order))
            .Where(n => n.slip < 3 || (word.Length > 3 && Suggest.Distance(word, n.name) <= word.Length / 4 + 1))
            .OrderBy(n => n.slip).ThenBy(n => Suggest.Distance(word, n.name)).ThenBy(n => n.order)
            .Select(n => n.name);
        return [.. Figures(word).Concat(Slips.TryGetValue(word, out var slip) ? near.Prepend(slip) : near).Distinct(StringComparer.OrdinalIgnoreCase).Take(most)];
    }

    /// <summary>Which slip of the keys leads from a name to what is written: 0 letters changed places, 1 a letter doubled or not, 2 a letter left out, 3 another.</summary>
    public static int Slip(string said, string name)
    {
        if (HasSameLetters(said, name))
        {
            return 0;
        }

        return IsDoubled(said, name) || IsDoubled(name, said) ? 1 : name.Length == said.Length + 1 && Suggest.Distance(said, name) == 1 ? 2 : 3;
    }

    /// <summary>True where the longer word is the shorter one with a letter twice.</summary>
    private static bool IsDoubled(string longer, string shorter)
    {
        if (longer.Length != shorter.Length + 1)
        {
            return false;
        }

        for (var i = 1; i < longer.Length; i++)
        {
            if (char.ToLowerInvariant(longer[i]) == char.ToLowerInvariant(longer[i - 1]) && string.Equals(longer.Remove(i, 1), shorter, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"MlL": a stitch's name with a letter where a figure belongs.</summary>
    private IEnumerable<string> Figures(string word)
    {
        for (var i = 1; i < word.Length; i++)
        {
            if (word[i] is 'l' or 'I' or 'L' or 'O' or 'o')
            {
                var figured = string.Concat(word.AsSpan(0, i), word[i] is 'O' or 'o' ? "0" : "1", word.AsSpan(i + 1));
                if (_book.Find(figured) is not null)
                {
                    yield return figured;
                }
            }
        }
    }

    /// <summary>True for a word that is right elsewhere and often typed in place of another.</summary>
    public static bool IsSlip(string word) => Slips.ContainsKey(word);

    /// <summary>True where one word is the other with its letters in another order.</summary>
    public static bool HasSameLetters(string one, string other) => string.Equals(Letters(one), Letters(other), StringComparison.Ordinal);

    /// <summary>A word in the capitals of the one that it takes the place of.</summary>
    public static string LikeCase(string word, string model) =>
        model.Length > 1 && model.All(c => !char.IsLower(c)) ? word.ToUpperInvariant() : char.IsUpper(model[0]) && char.IsLower(word[0]) ? char.ToUpperInvariant(word[0]) + word[1..] : word;

    private static string Letters(string text) => string.Concat(text.ToLowerInvariant().Order());
}
