using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>Makes edits of words: each word keeps its capitals, and words that stay are not touched, nor the blanks and line ends between them.</summary>
internal static class Wordings
{
    /// <summary>The edits that put words in the place of so many tokens.</summary>
    public static void Replace(WordRun run, int at, int count, string words, List<Edit> edits)
    {
        var parts = words.Split(' ');
        if (parts.Length == count)
        {
            for (var i = 0; i < count; i++)
            {
                var said = run.Said(at + i);
                var now = i == 0 ? LikeCase(parts[i], said) : IsShouted(said) ? parts[i].ToUpperInvariant() : parts[i];
                if (!string.Equals(said, now, StringComparison.Ordinal) && !(i > 0 && string.Equals(said, now, StringComparison.OrdinalIgnoreCase)))
                {
                    edits.Add(new Edit(run.SpanOf(at + i), now));
                }
            }

            return;
        }

        var span = run.SpanOf(at).Cover(run.SpanOf(at + count - 1));
        edits.Add(new Edit(span, LikeCase(words, run.Said(at))));
    }

    /// <summary>"an sc" is "a dc": the article before a word that now begins with another sound.</summary>
    public static void Article(WordRun run, int at, string words, List<Edit> edits)
    {
        var vowel = SoundsLikeVowel(words);
        if (run.Is(at - 1, "an") && !vowel)
        {
            edits.Add(new Edit(run.SpanOf(at - 1), run.Said(at - 1)[..1]));
        }
        else if (run.Is(at - 1, "a") && vowel && run.Said(at - 1) != "A" && !run.IsRow)
        {
            edits.Add(new Edit(run.SpanOf(at - 1), "an"));
        }
    }

    /// <summary>Words with the capitals of what they take the place of.</summary>
    public static string LikeCase(string words, string said)
    {
        if (words.Length == 0 || said.Length == 0 || !char.IsUpper(said[0]) || !char.IsLower(words[0]))
        {
            return words;
        }

        return IsShouted(said) && words.Length > 1 ? words.ToUpperInvariant() : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>True for a word all in capitals.</summary>
    public static bool IsShouted(string word) => word.Length > 1 && word.Any(char.IsUpper) && !word.Any(char.IsLower);

    /// <summary>The place before the first character of a line that holds an offset.</summary>
    public static int LineStart(SourceText text, int offset) => text.Lines.StartOf(text.Lines.PositionOf(offset).Line);

    /// <summary>True for a token that counts.</summary>
    public static bool IsNumber(WordRun run, int at) => run.KindOf(at) == TokenKind.Number;

    private static bool SoundsLikeVowel(string words)
    {
        var first = words.Split(' ')[0];
        var isSpelled = first.Length <= 4 && !first.Any(c => c is 'a' or 'e' or 'i' or 'o' or 'u');
        return first.Length > 0 && (isSpelled ? char.ToLowerInvariant(first[0]) is 's' or 'h' or 'f' or 'r' or 'm' : char.ToLowerInvariant(first[0]) is 'a' or 'e' or 'i' or 'o');
    }
}
