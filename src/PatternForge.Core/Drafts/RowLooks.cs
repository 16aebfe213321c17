using System.Collections.Frozen;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Says by its looks whether a stretch of text is a row, before anybody reads it.</summary>
internal static class RowLooks
{
    private const int MostLooked = 400;

    private static readonly FrozenSet<string> Alone = Words("knit purl rep repeat sc hdc dc htr tr dtr inc dec ch yo ssk kfb sl turn fasten bind cast co bo work fo join skp psso sk2p cdd kb pb tks trs");

    private static readonly FrozenSet<string> Counted = Words("k p sc hdc dc htr tr dtr inc dec ch yo sl m st sts ssk skp kfb ktog ptog sctog dctog cf cb x");

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> AloneBy = Alone.GetAlternateLookup<ReadOnlySpan<char>>();

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> CountedBy = Counted.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>True where a row begins with its number: "Row 3:", "2nd rnd", "R5 (WS)".</summary>
    public static bool BeginsNumbered(SourceText source, TextSpan span) => Label(source, span) is { Numbers.IsEmpty: false, Word: not RowWord.None };

    /// <summary>True where a row begins with any label.</summary>
    public static bool BeginsLabelled(SourceText source, TextSpan span) => Label(source, span) is { IsTitle: false };

    private static LabelNode? Label(SourceText source, TextSpan span)
    {
        var at = 0;
        var folder = NumberFolder.Fold(source, Lexer.Lex(source, new TextSpan(span.Start, Math.Min(span.Length, 120))));
        var label = LabelParser.TryParse(folder.Atoms, ref at);
        folder.Release();
        return label;
    }

    /// <summary>True for words with a stitch, a stitch and its number, or another word of work among them.</summary>
    public static bool Reads(ReadOnlySpan<char> text)
    {
        text = text.Length > MostLooked ? text[..MostLooked] : text;
        Span<char> word = stackalloc char[12];
        var at = 0;
        while (at < text.Length)
        {
            var start = at;
            var (letters, digits) = (0, 0);
            while (at < text.Length && char.IsAsciiLetterOrDigit(text[at]))
            {
                if (char.IsAsciiDigit(text[at]))
                {
                    digits++;
                }
                else if (letters < word.Length)
                {
                    word[letters++] = char.ToLowerInvariant(text[at]);
                }

                at++;
            }

            var isNumbered = digits > 0 || (at + 1 < text.Length && text[at] == ' ' && char.IsAsciiDigit(text[at + 1])) || (start > 1 && text[start - 1] == ' ' && char.IsAsciiDigit(text[start - 2]));
            if (letters > 0 && (AloneBy.Contains(word[..letters]) || (isNumbered && CountedBy.Contains(word[..letters]))))
            {
                return true;
            }

            at += at == start ? 1 : 0;
        }

        return false;
    }

    private static FrozenSet<string> Words(string words) => words.Split(' ').ToFrozenSet(StringComparer.Ordinal);
}
