using System.Buffers;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>
/// Looks whether a pattern says anywhere what it means by a word: in its own lists, in a sentence, in brackets, under a heading. In doubt it does: a maker who finds
/// any explanation is helped.
/// </summary>
internal static class Explanations
{
    private static readonly SearchValues<char> Openers = SearchValues.Create("(=:[");
    private static readonly string[] Verbs = ["is", "are", "means", "made", "stands", "consists", "counts", "completed", "formed", "worked", "of"];

    /// <summary>True for a pattern that makers are to work from. Rows under a title alone, with no yarn, tool or gauge, are a sheet out of something larger that may well explain them.</summary>
    public static bool AreExpected(CheckContext context) =>
        context.HeaderPlace is not null && !context.Lines.IsEmpty && context.Facts is var facts && (!facts.Yarns.IsEmpty || !facts.Tools.IsEmpty || !facts.Gauges.IsEmpty);

    /// <summary>True when the pattern explains one of some words.</summary>
    /// <param name="context">The pattern.</param>
    /// <param name="words">The word with its plurals and its other spellings, in small letters.</param>
    public static bool Has(CheckContext context, ReadOnlySpan<string> words)
    {
        foreach (var stitch in context.Facts.Stitches)
        {
            if (Says(stitch.Name, words) || Says(stitch.FullName ?? "", words))
            {
                return true;
            }
        }

        foreach (var own in context.Facts.Abbreviations ?? [])
        {
            if (own.Meaning is { Length: > 0 } meaning && Says(own.Name, words) && !IsNameAlone(meaning, words))
            {
                return true;
            }
        }

        foreach (var note in context.Facts.Notes)
        {
            if (Says(note.Value, words) && Tells(new SourceText("", note.Value), new TextSpan(0, note.Value.Length), words, isRow: false, context.Facts.Craft))
            {
                return true;
            }
        }

        var rows = context.Lines.Select(l => l.Origin).ToHashSet();
        foreach (var section in context.Pattern.Sections)
        {
            if (Says(section.Heading, words) && IsNameAlone(section.Heading, words))
            {
                return true;
            }

            foreach (var block in section.Blocks)
            {
                if (Says(context.Source.ToString(block.Origin), words) && Tells(context.Source, block.Origin, words, rows.Contains(block.Origin), context.Facts.Craft))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>True when a text has one of some words in it, as a word of its own.</summary>
    public static bool Says(string text, ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            for (var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                var end = at + word.Length;
                if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end])))
                {
                    return true;
                }
            }
        }

        return false;
    }

    // "cl = cluster", "MB = make bobble": the long name alone says nothing of how it is worked.
    private static bool IsNameAlone(string meaning, ReadOnlySpan<string> words)
    {
        foreach (var part in meaning.Split([' ', '-', '.', ':', ',', '(', ')', '#', '*'], StringSplitOptions.RemoveEmptyEntries))
        {
            var plain = part.ToLowerInvariant();
            if (!words.Contains(plain) && plain is not ("make" or "work" or "a" or "an" or "one" or "stitch" or "st" or "v" or "puff" or "the" or "knit" or "1" or "stitches" or "special" or "working" or "how" or "to"))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Tells(SourceText source, TextSpan span, ReadOnlySpan<string> words, bool isRow, Craft craft)
    {
        var tokens = Lexer.Lex(source, span);
        for (var i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind != TokenKind.Word || !IsOne(source.Slice(tokens[i].Span), words))
            {
                continue;
            }

            // "shell (5 dc in next st)", "shell: …", "MB = …", "shell made", "(shell)", "5-dc popcorn"
            var next = i + 1 < tokens.Count && source.Slice(tokens[i + 1].Span) is "st" or "sts" or "stitch" or "stitches" ? i + 2 : i + 1;
            var behind = next < tokens.Count ? source.Slice(tokens[next].Span) : default;
            if ((behind.Length == 1 && Openers.Contains(behind[0]) && (isRow || behind[0] != ':' || i < 2 || BeginsSentence(source, tokens, i))) || (behind is "-" or "–" or "—" && tokens[next].SpaceBefore) || IsOne(behind, Verbs)
                || (i > 0 && tokens[i - 1].Kind == TokenKind.Open && behind is ")" or "]")
                || (i > 0 && IsMadeOf(source, tokens, i - 1, craft)))
            {
                return true;
            }
        }

        return !isRow && IsInSentence(source, tokens, words, craft);
    }

    // A colon in the middle of a sentence opens something else: "three meshes carry one shell: there are eight across".
    private static bool BeginsSentence(SourceText source, List<Token> tokens, int at) =>
        tokens[at - 1].Kind is TokenKind.Stop or TokenKind.Mark or TokenKind.Colon || source.Slice(TextSpan.FromBounds(tokens[at - 1].Span.End, tokens[at].Span.Start)).Contains('\n');

    // "For a shell, work 5 dc in one stitch."
    private static bool IsInSentence(SourceText source, List<Token> tokens, ReadOnlySpan<string> words, Craft craft)
    {
        var (isNamed, isTold) = (false, false);
        foreach (var token in tokens)
        {
            if (token.Kind == TokenKind.Stop)
            {
                (isNamed, isTold) = (false, false);
            }
            else if (token.Kind == TokenKind.Word)
            {
                var word = source.Slice(token.Span);
                var isIt = IsOne(word, words);
                isNamed |= isIt;
                isTold |= !isIt && OperationTable.Find(craft, Dialect.Any, word) is not null;
                if (isNamed && isTold)
                {
                    return true;
                }
            }
        }

        return false;
    }

    // "5-dc popcorn", "3 tr cluster", "dc2tog cluster"
    private static bool IsMadeOf(SourceText source, List<Token> tokens, int at, Craft craft)
    {
        var word = source.ToString(tokens[at].Span);
        var stem = word.IndexOf('-', StringComparison.Ordinal) is >= 0 and var dash ? word[(dash + 1)..] : word;
        return tokens[at].Kind == TokenKind.Word && OperationTable.Find(craft, Dialect.Any, stem) is { } stitch && stitch.Id is not ("k" or "p")
            || (tokens[at].Kind == TokenKind.Dash && at > 0 && tokens[at - 1].Kind is TokenKind.Word or TokenKind.Number);
    }

    private static bool IsOne(ReadOnlySpan<char> word, ReadOnlySpan<string> words)
    {
        foreach (var one in words)
        {
            if (word.Equals(one, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
