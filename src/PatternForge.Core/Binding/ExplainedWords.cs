using System.Collections.Immutable;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>
/// Joins what only punctuation parts: a word with its own abbreviation in brackets ("chain (ch) 4", "double crochet (dc) in 1st stitch (st)"), and an
/// abbreviation with the full stop that old books put behind it ("ch. 3", "sl. st. in next st").
/// </summary>
internal static class ExplainedWords
{
    private const string Stopped = "ch|sk|sc|dc|hdc|htr|tr|dtr|sl|st|sp|sps|lp|loop|rep|inc|dec|beg|rem|cont|sl st";

    /// <summary>The parts, with such words and what follows them as one phrase.</summary>
    public static ImmutableArray<StepNode> Join(ImmutableArray<StepNode> nodes, RowContext context)
    {
        for (var i = 0; i + 1 < nodes.Length; i++)
        {
            if (nodes[i] is not PhraseNode phrase)
            {
                continue;
            }

            if (nodes[i + 1] is GroupNode { Before: Separator.None, Body: [PhraseNode { Atoms.Length: <= 3 } said] } && Explains(phrase, said, context))
            {
                var follows = i + 2 < nodes.Length && nodes[i + 2] is PhraseNode { Before: Separator.None } rest ? rest : null;
                var joined = follows is null ? phrase : new PhraseNode([.. phrase.Atoms, .. follows.Atoms], phrase.Before);
                nodes = [.. nodes[..i], joined, .. nodes[(i + (follows is null ? 2 : 3))..]];
                i--;
            }
            else if (nodes[i + 1] is PhraseNode { Before: Separator.Stop } next && IsStopped(phrase, next))
            {
                nodes = [.. nodes[..i], new PhraseNode([.. phrase.Atoms, .. next.Atoms], phrase.Before), .. nodes[(i + 2)..]];
                i--;
            }
        }

        return nodes;
    }

    /// <summary>True when the bracket's words and the last words before it mean the same.</summary>
    private static bool Explains(PhraseNode phrase, PhraseNode said, RowContext context)
    {
        if (said.Atoms.Any(a => a.Kind != TokenKind.Word))
        {
            return false;
        }

        var inside = context.Source.ToString(said.Span);
        for (var words = 1; words <= Math.Min(4, phrase.Atoms.Length); words++)
        {
            var before = context.Source.ToString(phrase.Atoms[^words].Span.Cover(phrase.Atoms[^1].Span));
            if (before.Length <= 48 && phrase.Atoms[^words].Kind == TokenKind.Word
                && ((context.Book.FindPlural(before) is { } operation && context.Book.FindPlural(inside)?.Id == operation.Id) || (words == 1 && said.Atoms.Length == 1 && Plain(phrase.Atoms[^1]) == Plain(said.Atoms[0]))))
            {
                return true;
            }
        }

        return false;
    }

    private static string Plain(Atom atom) => Vocabulary.NormOf(atom) switch
    {
        "chain" or "chains" or "chs" => "ch",
        "space" or "spaces" or "sps" => "sp",
        "loops" or "lps" => "loop",
        "skip" or "miss" => "sk",
        var norm => norm,
    };

    /// <summary>"Ch. 3", "d.c. in", "sl. st.": the sentence goes on behind the stop.</summary>
    private static bool IsStopped(PhraseNode phrase, PhraseNode next)
    {
        var last = Vocabulary.NormOf(phrase.Atoms[^1]);
        if (phrase.Atoms[^1].Kind != TokenKind.Word || !Vocabulary.AlternativesContain(Stopped, last))
        {
            return false;
        }

        var first = next.Atoms[0];
        return first.Kind == TokenKind.Number ? phrase.Atoms.Length == 1 && last is "ch" or "sk" && !first.Number!.IsOrdinal : first.Kind == TokenKind.Word && char.IsAsciiLetterLower(first.Text[0]) && !first.Is("turn") && !first.Is("join") && !first.Is("rep");
    }
}
