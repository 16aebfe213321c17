using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads words that stand for the rows of another piece, or of the side worked first: "Work as for Left Front, reversing all shaping", "Complete to match first side".</summary>
internal static class PieceReader
{
    private static readonly string[] Openings = ["work", "make", "knit", "complete", "finish", "crochet"];

    /// <summary>Adds the step that a phrase says, or the words about reversing to the step before; false, with nothing done, for other words.</summary>
    public static bool TryBind(PhraseNode phrase, List<Step> steps, RowContext context)
    {
        if (!MayBegin(phrase.Atoms[0]))
        {
            return false; // most phrases: no words are made for them
        }

        var words = context.Source.ToString(phrase.Span).ToLowerInvariant();
        if (IsReversing(words) && steps.Count > 0)
        {
            Step? reversed = steps[^1] switch
            {
                AsPieceStep piece => piece with { IsReversed = true, Origin = piece.Origin.Cover(phrase.Span) },
                MatchSideStep side => side with { IsReversed = true, Origin = side.Origin.Cover(phrase.Span) },
                _ => null,
            };
            steps[^1] = reversed ?? steps[^1];
            return reversed is not null;
        }

        if (!Array.Exists(Openings, phrase.Atoms[0].Is))
        {
            return false;
        }

        if (words.Contains(" to match", StringComparison.Ordinal) || words.Contains(" to correspond", StringComparison.Ordinal))
        {
            if (!words.Contains("side", StringComparison.Ordinal) && !words.Contains("shoulder", StringComparison.Ordinal) && !words.Contains("half", StringComparison.Ordinal))
            {
                return false;
            }

            steps.Add(new MatchSideStep(phrase.Span) { IsReversed = IsReversing(words) });
            return true;
        }

        if (NameIn(words, context) is not { } name)
        {
            return false;
        }

        var behind = words[(words.LastIndexOf(name, StringComparison.Ordinal) + name.Length)..].Trim();
        var upTo = behind.StartsWith("to ", StringComparison.Ordinal) ? behind[3..] : behind.StartsWith("until ", StringComparison.Ordinal) ? behind[6..] : null;
        if (upTo is null && behind.Length > 0 && !IsReversing(behind))
        {
            return false;
        }

        steps.Add(new AsPieceStep(phrase.Span, name) { UpTo = upTo, IsReversed = IsReversing(behind) });
        return true;
    }

    private static bool MayBegin(Atom first) => Array.Exists(Openings, first.Is) || first.Is("reversing") || first.Is("reverse") || first.Is("but") || first.Is("and") || first.Is("with");

    /// <summary>The piece that "as for ...", "as given for ..." or "same as ..." names; null where no heading has that name.</summary>
    public static string? NameIn(string words, RowContext context)
    {
        foreach (var opening in (ReadOnlySpan<string>)["as given for ", "as for ", "same as for ", "same as ", "as "])
        {
            var at = words.IndexOf(opening, StringComparison.Ordinal);
            if (at < 0)
            {
                continue;
            }

            var named = words.AsSpan(at + opening.Length);
            named = named.StartsWith("the ") ? named[4..] : named;
            string? longest = null;
            foreach (var piece in context.Pieces)
            {
                if (named.StartsWith(piece) && (named.Length == piece.Length || !char.IsLetterOrDigit(named[piece.Length])) && piece.Length > (longest?.Length ?? 0))
                {
                    longest = piece;
                }
            }

            return longest;
        }

        return null;
    }

    private static bool IsReversing(string words) =>
        (words.Contains("reversing", StringComparison.Ordinal) || words.Contains("reverse", StringComparison.Ordinal)) && words.Contains("shaping", StringComparison.Ordinal);
}
