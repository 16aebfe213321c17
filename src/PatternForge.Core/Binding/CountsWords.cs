using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>What words say of chains: "(counts as dc)", "(does not count as a st)", "(counts as dc + ch 1)", "(first dc)".</summary>
/// <param name="Counts">True when they count as a stitch.</param>
/// <param name="Over">Chains beyond that stitch; null when nothing is said of them.</param>
/// <param name="Throughout">True when the words speak for the rows to come as well.</param>
internal sealed record CountsWords(bool Counts, int? Over, bool Throughout)
{
    /// <summary>The stitch named behind "counts as"; empty when none is.</summary>
    public string As { get; init; } = "";

    /// <summary>Reads them; null for other words.</summary>
    public static CountsWords? Read(List<Lexeme> lexemes)
    {
        bool Has(params ReadOnlySpan<string> words)
        {
            foreach (var word in words)
            {
                if (lexemes.Exists(l => l.Norm == word))
                {
                    return true;
                }
            }

            return false;
        }

        var at = lexemes.FindIndex(l => l.Norm is "counts" or "count" or "counting" or "counted" or "equals" or "equal" or "replaces");
        at = at < 0 && lexemes[0].Atom.Kind == Syntax.TokenKind.EqualsSign ? 0 : at;
        var throughout = Has("throughout", "always", "every", "each", "rows", "rnds") || (Has("on", "of") && Has("row", "rnd") && Has("each", "every", "all"));
        if (Has("not", "doesn't", "don't", "doesn’t", "don’t", "never") && (at >= 0 || Has("include", "included")))
        {
            return new CountsWords(false, null, throughout);
        }

        if (at < 0 && !(lexemes.Count <= 3 && lexemes[0].Is("first") && lexemes.Count > 1))
        {
            return null;
        }

        var ch = lexemes.FindIndex(Math.Max(at, 0), l => l.Is("ch") || l.Is("chain") || l.Norm.StartsWith("ch-", StringComparison.Ordinal));
        var name = NameBehind(lexemes, at);
        if (at < 0 || ch <= at)
        {
            return new CountsWords(true, 0, throughout) { As = name };
        }

        var number = ch + 1 < lexemes.Count && lexemes[ch + 1].Number is { } behind ? behind : lexemes[ch - 1].Number;
        return new CountsWords(true, ThingReader.LengthOf(lexemes[ch]) ?? (number is null ? 1 : (int)Math.Min(number.Values[0] ?? 1, 1000)), throughout) { As = name };
    }

    // "counts as the first dc", "counts as 1tr"
    private static string NameBehind(List<Lexeme> lexemes, int at)
    {
        var c = new PhraseCursor(lexemes) { At = Math.Max(at, 0) };
        var isEqual = c.Peek() is { } verb && (verb.Norm is "equals" or "equal" or "replaces" || verb.Atom.Kind == Syntax.TokenKind.EqualsSign);
        c.At += isEqual ? 1 : 0;
        if (!isEqual && (!c.Eat("counts|count|counting|counted") || !c.Eat("as")))
        {
            return "";
        }

        c.Eat("the|a|an|your");
        c.Eat("first|beg|1st");
        if (!c.EatOrdinal())
        {
            c.EatNumber();
        }

        return c.Peek() is { Atom.Kind: Syntax.TokenKind.Word } word ? word.Atom.Text : "";
    }

    /// <summary>"Ch 3 for first dc", "Ch 3 = first dc": said of the chains just read; false, with the cursor unmoved, for other words.</summary>
    public static bool TryBehindChains(PhraseCursor c, List<Step> steps, RowContext context)
    {
        var start = c.At;
        var isEqual = c.Peek()?.Atom.Kind == Syntax.TokenKind.EqualsSign;
        c.At += isEqual ? 1 : 0;
        if (steps.Count > 0 && steps[^1] is ChainStep chain && (isEqual || c.Eat("for|as")))
        {
            c.Eat("the|a|1|your");
            c.Eat("first|beg");
            c.EatOrdinal();
            c.EatNumber();
            if (CrochetReader.OperationAt(c, context) is { Height: > 0, Takes: 1, Makes: 1 } stitch && (c.IsDone || c.Is("and")))
            {
                steps[^1] = chain with { Counts = true, Over = 0, As = stitch };
                return true;
            }
        }

        c.At = start;
        return false;
    }

    /// <summary>Puts the words to the chains or stitches before them; false when there are none.</summary>
    public bool TryApply(List<Step> steps, Text.TextSpan origin, StitchBook book)
    {
        var at = steps.FindLastIndex(s => s is not (TurnStep or RemarkStep or SentenceStep));
        if (at < 0)
        {
            return false;
        }

        if (steps[at] is ChainStep chain)
        {
            steps[at] = chain with { Counts = Counts, Over = Over, Throughout = Throughout, As = book.Find(As) is { Takes: 1, Makes: 1, Height: > 0 } stitch ? stitch : null };
        }
        else
        {
            steps.Add(new SkippedChainsStep(origin, Counts));
        }

        return true;
    }
}
