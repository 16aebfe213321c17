using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Binding;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Corrections;

/// <summary>A word or number of a text, in the spelling that all its variants share.</summary>
/// <param name="Key">What it is compared by.</param>
/// <param name="Said">As it stands.</param>
/// <param name="Number">Its value where it is a number that this size has; null otherwise.</param>
internal readonly record struct Word(string Key, string Said, decimal? Number)
{
    /// <summary>True for a number, and for a list of them that is not one of the sizes.</summary>
    public bool IsNumber => Number is not null || (Key.Length > 0 && char.IsAsciiDigit(Key[0]));
}

/// <summary>The words of a text as one size reads them: blanks, line breaks, capitals, punctuation and spelling variants are nothing.</summary>
internal static class Words
{
    private const int Most = 20_000;

    // Words that tell which stitches, which side or which fabric: where they change, the work changes.
    private static readonly HashSet<string> Telling = new(StringComparer.Ordinal)
    {
        "k", "p", "stst", "garter", "rib", "moss", "seed", "rs", "ws", "left", "right", "front", "back", "cm", "in", "mm", "rnd", "row", "st", "inc", "dec", "bo", "co", "chart", "reverse", "reversing", "every", "alt", "each",
    };

    // What a number counts, behind it.
    private static readonly HashSet<string> Counted = new(StringComparer.Ordinal)
    {
        "cm", "mm", "in", "m", "g", "yd", "oz", "st", "row", "rnd", "time", "times", "sp", "lp", "ch", "sc", "hdc", "htr", "dc", "tr", "dtr", "ball", "balls", "strand", "strands", "minutes", "hours", "°c",
    };

    // What stands before the number that it has.
    private static readonly HashSet<string> Leading = new(StringComparer.Ordinal) { "ch", "k", "p", "co", "bo", "sk", "sl", "row", "rnd", "chart" };

    /// <summary>The words of a stretch of a text.</summary>
    /// <param name="source">The text.</param>
    /// <param name="span">The stretch.</param>
    /// <param name="size">The size that reads it.</param>
    /// <param name="sizes">How many sizes there are.</param>
    public static List<Word> Of(SourceText source, TextSpan span, int size, int sizes)
    {
        var folder = NumberFolder.Fold(source, Lexer.Lex(source, new TextSpan(span.Start, Math.Min(span.Length, Most))));
        ImmutableArray<Atom> atoms = [.. folder.Atoms];
        folder.Release();
        var words = new List<Word>(atoms.Length);
        foreach (var lexeme in Vocabulary.Normalise(atoms))
        {
            if (lexeme.Number is { } number)
            {
                var value = number.Values.Length == sizes ? number.Values[size] : number.Values.Length == 1 ? number.Values[0] : null;
                var said = number.Values.Length == sizes || number.Values.Length == 1 ? value is { } v ? Told(v) : "-" : Words.OneLine(source.ToString(number.Span));
                var key = number.Values.Length == sizes || number.Values.Length == 1 ? said : string.Join('/', number.Values.Select(n => n is { } one ? Told(one) : "-"));
                words.Add(new(number.IsOrdinal ? key + "th" : key, said, value));
            }
            else if (lexeme.Atom.Kind is TokenKind.Word)
            {
                // "k2 (3, 4)": a list may stand behind the letters of a word.
                if (lexeme.Atom.Number is { } trailing && trailing.Values.Length == sizes)
                {
                    var letters = lexeme.Norm.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9');
                    words.Add(new(letters, letters, null));
                    words.Add(trailing.Values[size] is { } n ? new(Told(n), Told(n), n) : new("-", "-", null));
                }
                else
                {
                    words.Add(new(lexeme.Norm, source.ToString(lexeme.Span), null));
                }
            }
            else if (lexeme.Atom.Kind is TokenKind.Inch)
            {
                words.Add(new("in", "in", null));
            }
            else if (lexeme.Atom.Kind is TokenKind.Placeholder)
            {
                words.Add(new(lexeme.Atom.Text, lexeme.Atom.Text, null));
            }
        }

        return words;
    }

    /// <summary>The words of a whole text.</summary>
    public static List<Word> Of(string text, int size = 0, int sizes = 1)
    {
        var source = new SourceText("", text);
        return Of(source, new TextSpan(0, text.Length), size, sizes);
    }

    /// <summary>What texts are compared by.</summary>
    public static string Key(IEnumerable<Word> words) => string.Join(' ', words.Select(w => w.Key));

    /// <summary>The numbers, and the words that tell which stitches or which side: what remains when the wording is left aside.</summary>
    public static string TellingKey(IEnumerable<Word> words) => string.Join(' ', words.Where(w => w.IsNumber || Telling.Contains(w.Key)).Select(w => w.Key));

    /// <summary>"20 cm, not 18 cm" where two texts differ in one or two numbers alone; null otherwise.</summary>
    public static string? NumbersOnly(List<Word> old, List<Word> now)
    {
        if (old.Count != now.Count)
        {
            return null;
        }

        var told = new List<string>();
        for (var i = 0; i < old.Count; i++)
        {
            if (old[i].Key == now[i].Key)
            {
                continue;
            }

            if (!old[i].IsNumber || !now[i].IsNumber || told.Count == 2)
            {
                return null;
            }

            var unit = i + 1 < now.Count && old[i + 1].Key == now[i + 1].Key && Counted.Contains(now[i + 1].Key) ? " " + now[i + 1].Said : "";
            var lead = unit.Length == 0 && i > 0 && old[i - 1].Key == now[i - 1].Key && Leading.Contains(now[i - 1].Key) ? now[i - 1].Said + " " : "";
            told.Add($"{lead}{now[i].Said}{unit}, not {old[i].Said}");
        }

        return told.Count == 0 ? null : string.Join("; ", told);
    }

    /// <summary>The part of two texts that differs, with a few words around it.</summary>
    public static (string Was, string Now) Changed(string old, string now)
    {
        var (a, b) = (Split(old), Split(now));
        var head = 0;
        while (head < a.Length && head < b.Length && a[head] == b[head])
        {
            head++;
        }

        var tail = 0;
        while (tail < a.Length - head && tail < b.Length - head && a[^(tail + 1)] == b[^(tail + 1)])
        {
            tail++;
        }

        return (Part(a, head, tail), Part(b, head, tail));

        static string Part(string[] words, int head, int tail)
        {
            const int around = 4;
            const int most = 40;
            var from = Math.Max(0, head - around);
            var to = Math.Min(words.Length, words.Length - tail + around);
            var cut = to - from > most;
            return (from > 0 ? "… " : "") + string.Join(' ', words[from..(cut ? from + most : to)]) + (cut || to < words.Length ? " …" : "");
        }
    }

    /// <summary>A text on one line.</summary>
    public static string OneLine(string text) => string.Join(' ', Split(text));

    /// <summary>A number as makers write it.</summary>
    public static string Told(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string[] Split(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
}
