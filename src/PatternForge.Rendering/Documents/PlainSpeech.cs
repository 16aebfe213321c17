using System.Collections.Immutable;
using System.Text;

namespace PatternForge.Rendering.Documents;

/// <summary>Rows and counts as they are read out: signs by their names, the count of each size by its name.</summary>
internal static class PlainSpeech
{
    /// <summary>A row whose words can be read out.</summary>
    public static RowView Row(RowView row, ImmutableArray<string> sizes)
    {
        var instruction = Words(row.Instruction);
        var count = row.Count is null ? null : row.Counts.Length == sizes.Length && sizes.Length > 1 && row.Counts.Distinct(StringComparer.Ordinal).Count() > 1 ? EachSize(row.Counts, row.Count, sizes) : Words(row.Count);
        return row with
        {
            Text = count is null ? Words(row.Text) : instruction,
            CountIsSaid = count is null && row.CountIsSaid,
            Instruction = instruction,
            MarkedInstruction = row.MarkedInstruction with { Text = instruction, In = null },
            Count = count,
            MarkedCount = count is null ? null : new SizedText(count, 1),
            CountIsLong = RowBuilder.IsLong(count),
        };
    }

    /// <summary>A page whose own figures can be read out: "20 stitches and 28 rounds are 10 by 10 cm".</summary>
    public static PatternView Page(PatternView view) => view with
    {
        Facts = [.. view.Facts.Select(f => f with { Value = Words(f.Value) })],
        Sizes = view.Sizes is { } sizes ? sizes with { Sentences = [.. sizes.Sentences.Select(Words)] } : null,
        Gauges = [.. view.Gauges.Select(g => g with { Sentence = Equal(g.Sentence, "are") })],
        Yarns = [.. view.Yarns.Select(y => y with { PutUp = y.PutUp is { } ball ? Equal(ball, "is") : null, Alternatives = [.. y.Alternatives.Select(a => a with { PutUp = a.PutUp is { } other ? Equal(other, "is") : null })] })],
    };

    private static string Equal(string words, string verb) => Words(words.Replace(" = ", $" {verb} ", StringComparison.Ordinal));

    /// <summary>Words without signs that are left out when they are read aloud: "star" for an asterisk, "to" in a range, brackets by what they hold.</summary>
    public static string Words(string text)
    {
        var said = new StringBuilder(text.Length + 24);
        for (var i = 0; i < text.Length; i++)
        {
            var (word, length) = Named(text, i);
            if (word is null)
            {
                said.Append(text[i]);
                continue;
            }

            var behind = i + length;
            var (isMark, isEnd) = (text[i] is '*' or '†' or '‡', text[i] is ']');
            var isClosing = isEnd || (isMark && i > 0 && (char.IsLetterOrDigit(text[i - 1]) || text[i - 1] is ')' or ']'));
            if (said.Length > 0 && said[^1] is not (' ' or '('))
            {
                said.Append(isClosing && said[^1] is not ',' ? ", " : " ");
            }

            var opens = behind < text.Length && (char.IsLetterOrDigit(text[behind]) || text[behind] is '(' or '[');
            var goesOn = isEnd && behind + 1 < text.Length && text[behind] == ' ' && char.IsLetterOrDigit(text[behind + 1]);
            var isFirst = isMark && said.Length == 0 && opens;
            said.Append(isFirst ? Wording.Capital(word) : word).Append(isMark && opens || goesOn ? "," : "").Append(opens ? " " : "");
            if (isFirst && behind + 1 < text.Length && char.IsUpper(text[behind]) && char.IsLower(text[behind + 1]))
            {
                said.Append(char.ToLowerInvariant(text[behind])); // the sentence begins with the star
                length++;
            }

            i += length - 1;
        }

        return said.ToString();
    }

    private static (string? Word, int Length) Named(string text, int at) => text[at] switch
    {
        '*' when at + 1 < text.Length && text[at + 1] == '*' => ("double star", 2),
        '*' => ("star", 1),
        '†' => ("dagger", 1),
        '‡' => ("double dagger", 1),
        '[' => ("group:", 1),
        ']' => ("end of group", 1),
        '×' => ("by", 1),
        '–' when at > 0 && at + 1 < text.Length && char.IsAsciiDigit(text[at - 1]) && char.IsAsciiDigit(text[at + 1]) => ("to", 1),
        _ => (null, 1),
    };

    // "S: 84, M: 92, L: 100 stitches", "S: 12 double crochet, 6 chain-1 spaces; M: …"; a size that the row is not for has none.
    private static string EachSize(ImmutableArray<string> counts, string count, ImmutableArray<string> sizes)
    {
        var noun = count.AsSpan()[(count.LastIndexOfAny([')', ']', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9']) + 1)..].Trim().ToString();
        var isMixed = counts.Any(c => c.Any(char.IsLetter));
        return string.Join(isMixed ? "; " : ", ", sizes.Zip(counts).Where(c => c.Second != Wording.None).Select(c => $"{c.First}: {c.Second}")) + (noun.Length > 0 && !isMixed ? " " + noun : "");
    }
}
