using System.Text;
using PatternForge.Core;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// How the page writes the words that are its own, its counts above all: "84 sts" as the trade does, or "84 stitches" in an edition without abbreviations.
/// </summary>
internal sealed class PageWords
{
    private static readonly (string Short, string Full)[] Plain = [("sts", "stitches"), ("st", "stitch"), ("sps", "spaces"), ("sp", "space"), ("chs", "chains"), ("rnds", "rounds"), ("rnd", "round"), ("rem", "remain")];

    private readonly bool _isInFull;
    private readonly Craft _craft;
    private readonly Dialect _terms;
    private readonly HashSet<string> _own = [];

    private PageWords(Compilation compilation)
    {
        var facts = compilation.Pattern.Facts;
        _isInFull = compilation.Edition is { IsInFull: true };
        _craft = facts.Craft;
        _terms = facts.TermsInForce ?? Dialect.Us;
        if (_isInFull)
        {
            _own = facts.Stitches.Select(s => s.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        }
    }

    /// <summary>The words of one pattern's page.</summary>
    public static PageWords Of(Compilation compilation) => new(compilation);

    /// <summary>A count as the page prints it: "12 dc, 6 ch-2 sps", in full "12 double crochet, 6 chain-2 spaces". A stitch of the pattern's own keeps its name.</summary>
    public string Count(string words)
    {
        if (!_isInFull)
        {
            return words;
        }

        var full = new StringBuilder(words.Length + 16);
        for (var i = 0; i < words.Length; i++)
        {
            if (!char.IsAsciiLetter(words[i]))
            {
                full.Append(words[i]);
                continue;
            }

            var end = EndOf(words, i);
            if (words[i..end] is "sl" && words.AsSpan(end) is [' ', 's', 't', ..])
            {
                end = EndOf(words, end + 1); // "sl sts" is one name
            }

            full.Append(Word(words[i..end]));
            i = end - 1;
        }

        return full.ToString();
    }

    private static int EndOf(string words, int from)
    {
        while (from < words.Length && char.IsAsciiLetterOrDigit(words[from]))
        {
            from++;
        }

        return from;
    }

    private string Word(string word)
    {
        if (_own.Contains(word))
        {
            return word;
        }

        foreach (var (brief, full) in Plain)
        {
            if (word == brief)
            {
                return full;
            }
        }

        if (word is "sl sts")
        {
            return "slip stitches";
        }

        var stitch = OperationTable.Find(_craft, _terms, word) ?? OperationTable.Find(_craft, Dialect.Any, word);
        return stitch is null || word.Length > 8 ? word : OperationTable.SpokenIn(stitch, _terms);
    }
}
