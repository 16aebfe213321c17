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
            Text = Words(row.Text),
            Instruction = instruction,
            MarkedInstruction = row.MarkedInstruction with { Text = instruction, In = null },
            Count = count,
            MarkedCount = count is null ? null : new SizedText(count, 1),
            CountIsLong = count?.Length > 30,
        };
    }

    /// <summary>Words without signs that are left out when they are read aloud: "star" for an asterisk, "to" in a range, brackets by what they hold.</summary>
    public static string Words(string text)
    {
        var said = new StringBuilder(text.Length + 24);
        for (var i = 0; i < text.Length; i++)
        {
            var word = text[i] switch
            {
                '*' when i + 1 < text.Length && text[i + 1] == '*' => "double star",
                '*' => "star",
                '†' => "dagger",
                '‡' => "double dagger",
                '[' => "group:",
                ']' => "end of group",
                '×' => "by",
                '–' when i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]) => "to",
                _ => null,
            };
            if (word is null)
            {
                said.Append(text[i]);
                continue;
            }

            i += word == "double star" ? 1 : 0;
            var isMark = word.EndsWith("star", StringComparison.Ordinal) || word.EndsWith("dagger", StringComparison.Ordinal);
            var comma = isMark && i + 1 < text.Length && char.IsLetterOrDigit(text[i + 1]);
            said.Append(said.Length > 0 && said[^1] is not ' ' and not '(' ? " " : "").Append(word).Append(comma ? "," : "").Append(i + 1 < text.Length && (char.IsLetterOrDigit(text[i + 1]) || text[i + 1] is '(' or '[') ? " " : "");
        }

        return said.ToString();
    }

    // "S 84, M 92, L 100 stitches"
    private static string EachSize(ImmutableArray<string> counts, string count, ImmutableArray<string> sizes)
    {
        var noun = count.AsSpan()[(count.LastIndexOfAny([')', ']', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9']) + 1)..].Trim().ToString();
        var isMixed = counts.Any(c => c.Any(char.IsLetter));
        return string.Join(", ", sizes.Zip(counts, (size, c) => $"{size}: {c}")) + (noun.Length > 0 && !isMixed ? " " + noun : "");
    }
}
