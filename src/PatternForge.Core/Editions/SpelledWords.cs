using System.Collections.Frozen;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>The words that stand for the abbreviations of a pattern, in its own terms.</summary>
internal sealed class SpelledWords : ITermWords
{
    private const int LongestName = 5;

    // Common practice: the published lists' own words, without what they add to explain them.
    private static readonly FrozenDictionary<string, string> Words = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["st"] = "stitch",
        ["sts"] = "stitches",
        ["st(s)"] = "stitch(es)",
        ["rnd"] = "round",
        ["rnds"] = "rounds",
        ["rnd(s)"] = "round(s)",
        ["rd"] = "round",
        ["rds"] = "rounds",
        ["rep"] = "repeat",
        ["reps"] = "repeats",
        ["beg"] = "beginning",
        ["foll"] = "following",
        ["rem"] = "remaining",
        ["alt"] = "alternate",
        ["cont"] = "continue",
        ["patt"] = "pattern",
        ["pat"] = "pattern",
        ["tog"] = "together",
        ["prev"] = "previous",
        ["bet"] = "between",
        ["btw"] = "between",
        ["btwn"] = "between",
        ["approx"] = "approximately",
        ["est"] = "established",
        ["incl"] = "including",
        ["meas"] = "measures",
        ["tbl"] = "through the back loop",
        ["tfl"] = "through the front loop",
        ["BLO"] = "back loop only",
        ["FLO"] = "front loop only",
        ["BL"] = "back loop",
        ["FL"] = "front loop",
        ["sp"] = "space",
        ["sps"] = "spaces",
        ["sp(s)"] = "space(s)",
        ["pm"] = "place marker",
        ["sm"] = "slip marker",
        ["rm"] = "remove marker",
        ["mkr"] = "marker",
        ["mkrs"] = "markers",
        ["dpn"] = "double-pointed needle",
        ["dpns"] = "double-pointed needles",
        ["cn"] = "cable needle",
        ["tch"] = "turning chain",
        ["t-ch"] = "turning chain",
        ["lp"] = "loop",
        ["lps"] = "loops",
        ["dec'd"] = "decreased",
        ["inc'd"] = "increased",
        ["decs"] = "decreases",
        ["incs"] = "increases",
        ["kwise"] = "knitwise",
        ["pwise"] = "purlwise",
        ["wyif"] = "with yarn in front",
        ["wyib"] = "with yarn in back",
        ["BOR"] = "beginning of round",
        ["ea"] = "each",
        ["yoh"] = "yarn over hook",
        ["yrh"] = "yarn round hook",
        ["chs"] = "chains",
        ["ch(s)"] = "chain(s)",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenDictionary<string, string> Capitals = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["RS"] = "right side",
        ["WS"] = "wrong side",
        ["RH"] = "right-hand",
        ["LH"] = "left-hand",
        ["CO"] = "cast on",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private readonly Craft _craft;
    private readonly Dialect _terms;
    private readonly HashSet<string> _own;
    private readonly HashSet<string> _labels;
    private readonly int _longestOwn;

    /// <summary>The words of one pattern.</summary>
    public SpelledWords(PatternFacts facts)
    {
        _craft = facts.Craft;
        _terms = facts.TermsInForce ?? Dialect.Us;
        _own = facts.Stitches.Select(s => SpokenForms.Squeeze(s.Name).ToLowerInvariant()).Where(n => n.Length > 0).ToHashSet(StringComparer.Ordinal);
        _longestOwn = Math.Min(8, facts.Stitches.Select(s => (2 * s.Name.Count(c => c is ' ' or '/' or '-')) + 1).DefaultIfEmpty(0).Max());
        _labels = facts.Yarns.Select(y => y.Label).OfType<string>().Where(l => l is not ("MC" or "CC")).Concat(facts.Sizes.Count > 1 ? facts.Sizes.Names : []).ToHashSet(StringComparer.Ordinal);
    }

    /// <inheritdoc/>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        var word = run.Word(at);
        if (word.Length == 0 || run.Kind is StretchKind.Weight)
        {
            return Own(run, at) is { Tokens: > 0 } named ? named : Crossing(run, at);
        }

        if (!run.IsApart(at) && Wordings.IsNumber(run, at - 1) && word.ToLowerInvariant() is "st" or "nd" or "rd" or "th")
        {
            return default; // the end of "3rd"
        }

        if (word is "MC" or "CC")
        {
            return (1, (word == "MC" ? "main " : "contrasting ") + (_terms == Dialect.Uk ? "colour" : "color"));
        }

        if (run.Kind == StretchKind.YarnLabel || _labels.Contains(word))
        {
            return default;
        }

        if (Own(run, at) is { Tokens: > 0 } own)
        {
            return own;
        }

        if (Fabric(run, at) is { Tokens: > 0 } fabric)
        {
            return fabric;
        }

        var isRow = run.Kind is StretchKind.Row or StretchKind.Definition;
        if (!isRow && !ProseWords.IsAbbreviation(_craft, word, run.Word(at + 1)))
        {
            return default;
        }

        if (isRow && word is "m" && !Wordings.IsNumber(run, at - 1))
        {
            return (1, "marker");
        }

        if (word is "sk")
        {
            return (1, _terms == Dialect.Uk ? "miss" : "skip");
        }

        return Stitch(run, at) is { Tokens: > 0 } stitch ? stitch : Plain(word) is { } plain ? (1, plain) : default;
    }

    private static string? Plain(string word)
    {
        if (Capitals.TryGetValue(word, out var words))
        {
            return words;
        }

        return Words.TryGetValue(word.Replace('’', '\''), out words) || Words.TryGetValue(word.TrimEnd('.'), out words) ? words : null;
    }

    /// <summary>"St st", "g st", "rev St st".</summary>
    private (int Tokens, string? Words) Fabric(WordRun run, int at)
    {
        if (_craft != Craft.Knitting || !run.Is(at + 1, "st") || (run.IsRow && run.KindOf(at - 1) == TokenKind.Number))
        {
            return run.Is(at, "rev") && run.Is(at + 1, "st") && run.Is(at + 2, "st") ? (1, "reverse") : default;
        }

        return run.Is(at, "st") ? (2, (_terms == Dialect.Uk ? "stocking" : "stockinette") + " stitch") : run.Is(at, "g", "gar") ? (2, "garter stitch") : default;
    }

    /// <summary>A stitch of the pattern's own keeps its name.</summary>
    private (int Tokens, string? Words) Own(WordRun run, int at)
    {
        for (var many = _longestOwn; many > 0; many--)
        {
            if (at + many > run.Count)
            {
                continue;
            }

            var said = string.Concat(Enumerable.Range(at, many).Select(run.Said)).ToLowerInvariant();
            if (_own.Contains(SpokenForms.Squeeze(said)) || (many == 1 && said.EndsWith('s') && _own.Contains(SpokenForms.Squeeze(said[..^1]))))
            {
                return (many, null);
            }
        }

        return default;
    }

    /// <summary>"2/2 LC", "2/1/2 RPC": a crossing told by its groups.</summary>
    private (int Tokens, string? Words) Crossing(WordRun run, int at)
    {
        if (_craft != Craft.Knitting || run.KindOf(at) != TokenKind.Number || run.KindOf(at + 1) != TokenKind.Slash)
        {
            return default;
        }

        for (var many = 6; many > 3; many -= 2)
        {
            if (run.KindOf(at + many - 1) == TokenKind.Word || run.KindOf(at + many - 2) == TokenKind.Number)
            {
                var said = string.Concat(Enumerable.Range(at, many).Select(run.Said));
                if (CableNames.InWords(said) is { } words)
                {
                    return (many, words);
                }
            }
        }

        return default;
    }

    private (int Tokens, string? Words) Stitch(WordRun run, int at)
    {
        var word = run.Word(at);
        if (_craft == Craft.Knitting && CableNames.InWords(word) is { } crossing && !string.Equals(word, crossing, StringComparison.OrdinalIgnoreCase))
        {
            return (1, crossing);
        }

        if (Named(word) is { } one)
        {
            return (1, one);
        }

        for (var many = LongestName; many > 1; many--)
        {
            if (run.KindOf(at + many - 1) == TokenKind.Word && Enumerable.Range(at, many).All(i => run.KindOf(i) is TokenKind.Word or TokenKind.Number or TokenKind.Slash))
            {
                var said = string.Join(' ', Enumerable.Range(at, many).Select(run.Said));
                if (Find(said) is { } operation && !IsInFull(said, Spoken(operation)) && !IsPlainAhead(run, at))
                {
                    return (many, Spoken(operation));
                }
            }
        }

        if (word.IndexOf('-', StringComparison.Ordinal) is > 0)
        {
            // "ch-2", "ch-sp", "dc-blo"
            if (word.EndsWith("-st", StringComparison.OrdinalIgnoreCase) && Find(word) is { } joined)
            {
                return (1, Spoken(joined)); // "sl-st"
            }

            var parts = word.Split('-');
            var words = parts.Select(p => p.All(char.IsAsciiDigit) ? p : Named(p) ?? Plain(p) ?? p).ToArray();
            return words.SequenceEqual(parts) || words.Any(w => w.Contains(' ', StringComparison.Ordinal)) ? default : (1, string.Join('-', words));
        }

        return default;
    }

    // "sl 1, k2tog": the word is a stitch by itself with its number behind it.
    private bool IsPlainAhead(WordRun run, int at) => Find(run.Word(at)) is not null;

    private string? Named(string word)
    {
        if (word.IndexOf('-', StringComparison.Ordinal) < 0 && Find(word) is { } operation)
        {
            return IsInFull(word, Spoken(operation)) ? null : Spoken(operation);
        }

        var digits = word.AsSpan().TrimEnd("0123456789").Length;
        if (digits < word.Length && digits > 0 && word[digits - 1] is not '-' and not '\u2011' && Find(word[..digits]) is { } counted)
        {
            return IsInFull(word[..digits], Spoken(counted)) ? null : $"{Spoken(counted)} {word[digits..]}";
        }

        return _craft != Craft.Knitting && word.Length > 2 && word.EndsWith('s') && Find(word[..^1]) is { } plural && !IsInFull(word[..^1], Spoken(plural)) ? Spoken(plural) + "s" : null;
    }

    private Operation? Find(string name) => name.Length is 0 or > 40 ? null
        : OperationTable.Find(_craft, _terms, name) ?? OperationTable.Find(_craft, Dialect.Any, name) ?? (_craft == Craft.Tunisian ? OperationTable.Find(Craft.Crochet, _terms, name) : null);

    // "slip, slip, knit" would be read as three stitches.
    private string Spoken(Operation operation) => operation.Craft == Craft.Knitting && operation.Id == "bo" && _terms == Dialect.Uk ? "cast off"
        : operation.Id is "ssk" or "ssp" or "sssk" or "sssp" ? operation.Spoken.Replace(", ", "-", StringComparison.Ordinal)
        : OperationTable.SpokenIn(operation, _terms);

    private static bool IsInFull(string said, string meaning) =>
        string.Equals(said, meaning, StringComparison.OrdinalIgnoreCase) || (said.Length >= 4 && meaning.Contains(said, StringComparison.OrdinalIgnoreCase)) || said.Contains(' ', StringComparison.Ordinal) && said.Split(' ').All(w => w.Length > 3);
}
