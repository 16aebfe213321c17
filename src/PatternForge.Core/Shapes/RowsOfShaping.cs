using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>How many rows a shaping takes that is told by its pace: "every 4th row 5 times".</summary>
internal static class RowsOfShaping
{
    /// <summary>The rows in a size; null where the words do not tell.</summary>
    public static int? Of(ShapingStep shaping, int size, int before, string text)
    {
        var (rows, count) = (0, before);
        foreach (var stretch in shaping.Stretches)
        {
            var change = stretch.Change[size] ?? 0;
            var times = stretch.Rows is { } said ? said[size] ?? 0 : stretch.ToCount?[size] is { } to && change != 0 ? (to - count) / change : 0;
            if (times < 0 || times > 10_000)
            {
                return null;
            }

            count += times * change;
            if (stretch.Every is { } every)
            {
                rows += times == 0 ? 0 : stretch.BeginsNow ? ((times - 1) * (every[size] ?? 1)) + 1 : times * (every[size] ?? 1);
            }
            else if (times <= 1 || text.Contains("next", StringComparison.OrdinalIgnoreCase) || text.Contains("foll", StringComparison.OrdinalIgnoreCase) || text.Contains("every row", StringComparison.OrdinalIgnoreCase))
            {
                rows += times;
            }
            else
            {
                return null;
            }
        }

        return rows;
    }

    /// <summary>Every how many rows the words of a repeat say ("every 4th row", "every RS row"); null where they do not.</summary>
    public static int? Pace(string text)
    {
        var at = text.IndexOf("every ", StringComparison.OrdinalIgnoreCase);
        if (at < 0)
        {
            return null;
        }

        var words = text[(at + 6)..].Split(' ', 4, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length > 1 && words[0].StartsWith("foll", StringComparison.OrdinalIgnoreCase))
        {
            words = words[1..];
        }

        var word = words.Length > 0 ? words[0].ToLowerInvariant() : "";
        var digits = new string([.. word.TakeWhile(char.IsAsciiDigit)]);
        return word is "other" or "rs" or "ws" or "alt" or "alternate" ? 2 : word.StartsWith('r') ? 1 : digits.Length is > 0 and < 4 ? int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture) : null;
    }

    /// <summary>The rows of all stretches that a text tells with lists for its sizes: "every 8th (6th) rnd 12 (17) times, then every 10th (8th) rnd 3 (0) times"; null where it does not.</summary>
    /// <param name="text">The line.</param>
    /// <param name="place">Which of the line's sizes, from 0.</param>
    /// <param name="sizes">How many sizes the line is for.</param>
    public static int? OfLists(string text, int place, int sizes)
    {
        int? rows = null;
        for (var at = text.IndexOf("every ", StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf("every ", at, StringComparison.OrdinalIgnoreCase))
        {
            at += "every ".Length;
            int? every = text.AsSpan(at).StartsWith("other ") ? 2 : Listed(text, ref at, place, sizes);
            if (every is null || Noun(text, at - 1) is not { } behindNoun)
            {
                return null;
            }

            at = behindNoun;
            at += at < text.Length && text[at] == 's' ? 1 : 0;
            var behind = text.AsSpan(at).TrimStart(' ');
            int? times = behind.StartsWith("once") ? 1 : behind.StartsWith("twice") ? 2 : Listed(text, ref at, place, sizes);
            if (times is null or > 10_000)
            {
                return null;
            }

            rows = (rows ?? 0) + (every.Value * times.Value);
        }

        return rows;
    }

    /// <summary>Behind the first "row", "rnd" or "round" from a place on; null where there is none.</summary>
    private static int? Noun(string text, int from)
    {
        var (first, behind) = (int.MaxValue, 0);
        foreach (var noun in (string[])[" row", " rnd", " round"])
        {
            if (text.IndexOf(noun, from, StringComparison.Ordinal) is >= 0 and var at && at < first)
            {
                (first, behind) = (at, at + noun.Length);
            }
        }

        return behind > 0 ? behind : null;
    }

    /// <summary>"10th (9th, 7th)", "8 (5, 11)", "12": the number for one of the sizes; one number is for all of them.</summary>
    private static int? Listed(string text, ref int at, int place, int sizes)
    {
        var (numbers, isOpen) = (new List<int>(), false);
        for (; at < text.Length; at++)
        {
            var c = text[at];
            if (char.IsAsciiDigit(c))
            {
                var end = at;
                while (end < text.Length && char.IsAsciiDigit(text[end]))
                {
                    end++;
                }

                if (end - at > 4)
                {
                    return null;
                }

                numbers.Add(int.Parse(text.AsSpan(at, end - at), System.Globalization.CultureInfo.InvariantCulture));
                at = end - 1;
                at += end + 1 < text.Length && text.AsSpan(end, 2) is "st" or "nd" or "rd" or "th" ? 2 : 0;
            }
            else if (c is '(' && !isOpen && numbers.Count == 1)
            {
                isOpen = true;
            }
            else if (c is ')' && isOpen)
            {
                break;
            }
            else if (c is not (' ' or ',') || (c is ',' && !isOpen))
            {
                break;
            }
        }

        return numbers.Count == sizes && place < sizes ? numbers[place] : numbers.Count == 1 ? numbers[0] : null;
    }
}
