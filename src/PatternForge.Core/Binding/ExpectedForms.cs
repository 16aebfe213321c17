namespace PatternForge.Core.Binding;

/// <summary>What would be understood where reading stopped, in the trade's words: at most three forms.</summary>
internal static class ExpectedForms
{
    private const string ToWhere = "`to end`, `to last 3 sts` or `to marker`";
    private const string HowLong = "`until piece measures 20 cm`, `for 6 rows` or `until there are 40 sts`";
    private const string Shapings = "`dec 1 st each end of every 4th row 6 times`, `inc 1 st at each end of next row` or `inc 8 sts evenly`";
    private const string Places = "`in next st`, `in each st across` or `in next ch-2 sp`";

    /// <summary>A help line; null where nothing can be expected.</summary>
    /// <param name="words">The words that were not understood.</param>
    /// <param name="before">The row up to there.</param>
    /// <param name="isCrochet">True for crochet of either kind.</param>
    public static string? For(List<Lexeme> words, string before, bool isCrochet)
    {
        if (words.Count == 0)
        {
            return null;
        }

        var c = new PhraseCursor(words);
        var last = LastWord(before);
        if (Shaping(c, last) is { } howMany)
        {
            return howMany;
        }

        var forms = First(c, last, isCrochet);
        return forms is null ? null : $"what would be understood here: {forms}; or state the count that the next rows can go on from";
    }

    // "Inc evenly", "dec evenly across": the number is missing.
    private static string? Shaping(PhraseCursor c, string last)
    {
        var verb = c.Is("inc|dec") ? c.Lexemes[0].Norm : last is "inc" or "dec" or "increase" or "decrease" ? last[..3] : null;
        var says = c.Lexemes.Exists(l => l.Is("evenly"));
        return verb is null || !says || c.Lexemes.Exists(l => l.IsNumber) ? null : $"say how many: `{verb} 4 sts evenly across`; without the number it cannot be worked";
    }

    private static string? First(PhraseCursor c, string last, bool isCrochet)
    {
        var hasEach = c.Lexemes.Exists(l => Vocabulary.AlternativesContain("each|every", l.Norm));
        if (c.Is("inc|dec"))
        {
            return hasEach || c.Is("st", 1) || c.Is("st", 2) ? Shapings : null;
        }

        if (!isCrochet && (c.Is("each|every") || (c.Is("at") && hasEach)) && last is "st" or "sts" or "dec" or "inc" or "")
        {
            return Shapings;
        }

        if (c.Is("more") || c.Lexemes[0].Atom.Text.StartsWith("time", StringComparison.OrdinalIgnoreCase))
        {
            return "how often: `3 times` or `3 more times`";
        }

        if (c.Is("rep") && c.Is("from", 1) && c.Is("to|across|around|until", 2))
        {
            return "`rep from * to end`, with a star where the repeat begins";
        }

        if (c.Is("rep"))
        {
            return c.Is("from", 1) ? "`rep from * to end`, `rep from * to last 2 sts` or `rep from * 3 more times`" : c.Is("last", 1) ? "`rep last 2 rows 3 times`" : "`rep Rows 1-4 three more times`, `rep last 2 rows 3 times` or `rep from * to end`";
        }

        if (c.Is("until|for"))
        {
            return c.Is("for") && !c.Lexemes.Exists(l => l.IsNumber) && c.Lexemes.Count > 2 ? null : HowLong;
        }

        if (c.Is("work|cont") && c.Lexemes.Exists(l => Vocabulary.AlternativesContain("even|in-patt|as-set|until", l.Norm)))
        {
            return "`work even until piece measures 20 cm`, `work even for 6 rows` or `work in pattern to end`";
        }

        if (c.Is("as"))
        {
            return "`as Row 3` or `as for Back to **`";
        }

        if (c.Is("bo") || c.Is("co"))
        {
            var name = c.Is("bo") ? "BO" : "CO";
            return c.Is("bo") ? $"`{name} 4 sts at beg of next 2 rows`, `{name} 4, k to end` or `{name} all sts`" : $"`{name} 4 sts`, or `{name} 4 sts at end of row`";
        }

        if (c.Is("pu"))
        {
            return "the number: `pick up and knit 40 sts along edge`";
        }

        if (c.Is("place|pm"))
        {
            return "`place marker`, `place marker A` or `place next 4 sts on holder`";
        }

        if (c.Is("turn"))
        {
            return "`turn` by itself, `turn, leaving rem sts unworked` or `w&t`";
        }

        if (isCrochet)
        {
            return c.Is("in|into|around") || c.Is("next|each|same", 1) || c.Is("in|into|around", 1) ? Places : c.Is("to") ? "`to end`, `to last 2 sts` or `across`" : null;
        }

        if (c.Is("sl"))
        {
            return "`sl 1 wyif`, `sl 4 sts to holder` or `sl 2 sts to cn, hold in front`";
        }

        if (c.Is("to|across"))
        {
            return ToWhere;
        }

        if (c.Is("k|p") && c.Lexemes.Count > 1)
        {
            return "`k3`, `k to end` or `k to last 3 sts`";
        }

        return last is "k" or "p" or "knit" or "purl" && c.Lexemes.Count < 5 ? $"a number, or how far: {ToWhere}" : null;
    }

    private static string LastWord(string before)
    {
        var text = before.TrimEnd();
        var start = text.Length;
        while (start > 0 && char.IsLetter(text[start - 1]))
        {
            start--;
        }

        return text[start..].ToLowerInvariant();
    }
}
