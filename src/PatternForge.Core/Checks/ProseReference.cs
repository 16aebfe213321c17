using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A place of prose where the maker is sent somewhere else: what stands behind "see" and its like.</summary>
/// <param name="Stretch">The prose.</param>
/// <param name="At">Where the words behind it begin.</param>
internal readonly record struct ProseReference(Stretch Stretch, int At)
{
    /// <summary>Every such place.</summary>
    public static IEnumerable<ProseReference> Of(CheckContext context)
    {
        foreach (var stretch in PlainText.Prose(context))
        {
            for (var at = 0; Next(stretch.Text, ref at) is >= 0 and var behind;)
            {
                yield return new(stretch, behind);
            }
        }
    }

    // Where the words behind the next "see" begin; -1 where no more comes.
    private static int Next(ReadOnlySpan<char> text, ref int at)
    {
        for (; at < text.Length; at++)
        {
            if (!char.IsAsciiLetter(text[at]) || (at > 0 && char.IsLetterOrDigit(text[at - 1])))
            {
                continue;
            }

            var word = PlainText.WordAt(text, at);
            var end = at + word.Length;
            var next = PlainText.SkipBlanks(text, end);
            var follows = PlainText.WordAt(text, next);
            var behind = word.Is("see") ? next
                : (word.Is("refer") && follows.Is("to")) || (word.Is("as") && follows.Is("in")) ? PlainText.SkipBlanks(text, next + 2)
                : -1;
            if (behind >= 0)
            {
                at = end;
                return PlainText.WordAt(text, behind).Is("the") ? PlainText.SkipBlanks(text, behind + 3) : behind;
            }

            at = end - 1;
        }

        return -1;
    }

    /// <summary>The words that stand there, of which the first is one of some and the second a number or a short name; null otherwise.</summary>
    public (TextSpan Span, string Name)? Named(params ReadOnlySpan<string> kinds)
    {
        var text = Stretch.Text;
        var word = PlainText.WordAt(text, At);
        if (!word.Is(kinds))
        {
            return null;
        }

        var start = At + word.Length;
        start = start < text.Length && text[start] == '.' ? start + 1 : start;
        var name = PlainText.SkipBlanks(text, start);
        var end = name;
        while (end < text.Length && char.IsLetterOrDigit(text[end]))
        {
            end++;
        }

        return name > start && end > name && end - name <= 4 ? (Stretch.At(At, end - At), text[name..end].ToString()) : null;
    }
}
