using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Yarns;

/// <summary>How often the rows of a section are worked: "Sleeves", "Sleeve (make 2)", "Make two alike".</summary>
internal static class PieceTimes
{
    private const int Most = 100;
    private static readonly string[] Numbers = ["", "", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    private static readonly string[] Pairs = ["sleeves", "mittens", "socks", "mitts", "gloves", "cuffs", "ears", "legs", "arms"];

    /// <summary>One number a section: its own, or that of the heading above it.</summary>
    public static int[] Of(Pattern pattern)
    {
        var times = new int[pattern.Sections.Length];
        var above = new int[7];
        Array.Fill(above, 1);
        for (var i = 0; i < times.Length; i++)
        {
            var section = pattern.Sections[i];
            var level = Math.Clamp(section.Level, 0, 6);
            var own = Said(section.Heading) ?? section.Blocks.OfType<ProseBlock>().Select(b => Said(b.Markdown)).FirstOrDefault(n => n is not null) ?? Pair(section.Heading);
            var outer = level == 0 ? 1 : above[level - 1];
            times[i] = own > 1 && outer == 1 ? own.Value : outer;
            Array.Fill(above, times[i], level, above.Length - level);
        }

        return times;
    }

    private static int? Pair(string heading) => Array.Exists(Pairs, p => string.Equals(heading.Trim(), p, StringComparison.OrdinalIgnoreCase)) || heading.Contains("both alike", StringComparison.OrdinalIgnoreCase) ? 2 : null;

    /// <summary>The number behind "make"; null for none.</summary>
    private static int? Said(string text)
    {
        for (var at = text.IndexOf("make ", StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf("make ", at + 5, StringComparison.OrdinalIgnoreCase))
        {
            var word = text[(at + 5)..].Split([' ', ')', '.', ',', ':', ';', '\n'], 2)[0];
            var number = int.TryParse(word, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : Array.FindIndex(Numbers, w => w.Length > 0 && w.Equals(word, StringComparison.OrdinalIgnoreCase));
            if (number is > 1 and <= Most && (at == 0 || !char.IsLetter(text[at - 1])))
            {
                return number;
            }
        }

        return null;
    }
}
