using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Yarns;

/// <summary>How often the rows of each section are worked: "Sleeve (make 2)", "Make two alike", "Make 48 (80, 168) motifs".</summary>
internal sealed class PieceTimes
{
    private const int Most = 10_000;
    private static readonly string[] Numbers = ["", "", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    private static readonly string[] Pairs = ["sleeves", "mittens", "socks", "mitts", "gloves", "cuffs", "ears", "legs", "arms"];
    private static readonly string[] Several = ["motif", "square", "hexagon", "block", "module", "patch", "petal", "leaf", "leaves", "flower", "strip", "triangle", "pentagon", "octagon"];

    private readonly int[][] _times;

    private PieceTimes(int[][] times, bool isSure) => (_times, IsSure) = (times, isSure);

    /// <summary>False where a section is of the kind that is made many times, and does not say how many.</summary>
    public bool IsSure { get; }

    /// <summary>How often a section is worked in a size, by its place among the sections; once where there is none such.</summary>
    public int this[int section, int size] => section >= 0 && section < _times.Length ? _times[section][size] : 1;

    /// <summary>Reads the headings and the prose under them; a section has the number of the heading above it where it says none.</summary>
    public static PieceTimes Of(Pattern pattern)
    {
        var sizes = pattern.Facts.Sizes.Count;
        int[] once = [.. Enumerable.Repeat(1, sizes)];
        var times = new int[pattern.Sections.Length][];
        var above = new int[7][];
        Array.Fill(above, once);
        var isSure = true;
        for (var i = 0; i < times.Length; i++)
        {
            var section = pattern.Sections[i];
            var level = Math.Clamp(section.Level, 0, 6);
            var own = Said(section.Heading, sizes)
                ?? (section.HasInstructions ? section.Blocks.OfType<ProseBlock>().Select(b => Said(b.Markdown, sizes)).FirstOrDefault(n => n is not null) : null)
                ?? (IsPair(section.Heading) ? [.. Enumerable.Repeat(2, sizes)] : null);
            var outer = level == 0 ? once : above[level - 1];
            times[i] = outer.All(t => t == 1) ? own ?? once : outer;
            isSure &= own is not null || outer != once || !section.HasInstructions || !Array.Exists(Several, w => section.Heading.Contains(w, StringComparison.OrdinalIgnoreCase));
            Array.Fill(above, times[i], level, above.Length - level);
        }

        return new(times, isSure);
    }

    private static bool IsPair(string heading) => Array.Exists(Pairs, p => string.Equals(heading.Trim(), p, StringComparison.OrdinalIgnoreCase)) || heading.Contains("both alike", StringComparison.OrdinalIgnoreCase);

    /// <summary>The numbers behind "make", one a size; null for none.</summary>
    private static int[]? Said(string text, int sizes)
    {
        for (var at = text.IndexOf("make ", StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf("make ", at + 5, StringComparison.OrdinalIgnoreCase))
        {
            if (at > 0 && char.IsLetter(text[at - 1]))
            {
                continue;
            }

            var numbers = List(text, at + 5);
            if (numbers.Count > 0 && numbers.TrueForAll(n => n is > 0 and <= Most) && numbers.Exists(n => n > 1) && (numbers.Count == 1 || numbers.Count == sizes))
            {
                return numbers.Count == 1 ? [.. Enumerable.Repeat(numbers[0], sizes)] : [.. numbers];
            }
        }

        return null;
    }

    /// <summary>"48 (80, 168)", "2", "two".</summary>
    private static List<int> List(string text, int at)
    {
        var numbers = new List<int>();
        var word = text[at..].Split([' ', ')', '.', ',', ':', ';', '\n'], 2)[0];
        if (Array.FindIndex(Numbers, w => w.Length > 0 && w.Equals(word, StringComparison.OrdinalIgnoreCase)) is >= 0 and var spelled)
        {
            return [spelled];
        }

        for (var isOpen = false; at < text.Length && numbers.Count <= 64;)
        {
            if (char.IsAsciiDigit(text[at]))
            {
                var start = at;
                while (at < text.Length && char.IsAsciiDigit(text[at]))
                {
                    at++;
                }

                numbers.Add(int.TryParse(text.AsSpan(start, at - start), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0);
                continue;
            }

            isOpen |= text[at] is '(' or '[';
            if (text[at] is ')' or ']' || !(text[at] is ' ' or '(' or '[' || (isOpen && text[at] is ',')))
            {
                break;
            }

            at++;
        }

        return numbers;
    }
}
