using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads a gauge that is written as the trade writes it: <c>20 sts and 28 rows = 10 cm in stockinette on 4.5 mm, blocked</c>.</summary>
internal static class GaugeLine
{
    private static readonly string[] StitchWords = ["st", "sts", "stitch", "stitches", "loops"];
    private static readonly string[] RowWords = ["row", "rows", "r", "rs"];
    private static readonly string[] RoundWords = ["rnd", "rnds", "round", "rounds"];
    private static readonly string[] Ands = ["and", "&", ",", "x", "×", "by", "+", "/", ";"];
    private static readonly string[] Joins = ["=", "over", "to", "per", "in", "on", "measure", "measures", "make", "makes", "is", "are", ":", "equal", "equals", "–", "—", "-"];
    private static readonly (string Words, bool Blocked)[] States =
    [
        ("before and after blocking", true), ("before blocking", false), ("without blocking", false), ("unblocked", false), ("not blocked", false), ("unwashed", false),
        ("after wet blocking", true), ("after washing and blocking", true), ("washed and blocked", true), ("wet blocked", true), ("wet-blocked", true), ("lightly blocked", true),
        ("steam blocked", true), ("steam-blocked", true), ("after blocking", true), ("when blocked", true), ("blocked", true), ("after washing", true), ("washed", true),
    ];

    /// <summary>The state that words tell: true for blocked, false for unblocked, null when they tell neither.</summary>
    public static bool? StateOf(string words)
    {
        foreach (var (state, blocked) in States)
        {
            if (words.Contains(state, StringComparison.OrdinalIgnoreCase))
            {
                return blocked;
            }
        }

        return null;
    }

    /// <summary>The gauge that a line tells; null when it counts no stitches or rows.</summary>
    public static Gauge? Read(string line, TextSpan origin)
    {
        var (text, blocked) = WithoutState(line);
        var gauge = new Gauge(origin) { Blocked = blocked };
        var at = 0;
        var before = "";
        var first = FirstCount(text);
        if (first < 0)
        {
            return null;
        }

        if (first > 0)
        {
            before = text[..first].Trim().TrimEnd(':', '-', '–', ',').Trim();
            at = first;
        }

        // Counts with their words, joined by "and" and the like.
        string? stitch = null;
        while (at < text.Length)
        {
            var mark = at;
            Skip(text, ref at, Ands);
            var wordsStart = at;
            if (!NumberReader.TryRead(text, ref at, out var number))
            {
                at = mark;
                break;
            }

            // "20 sts x 28 rows": a number whose words are neither stitches nor rows, after the first, is the measured piece.
            var words = CountWords(text, ref at);
            if (words.Length == 0 || Unit.Find(words) is not null)
            {
                at = wordsStart;
                break;
            }

            if (IsOneOf(words, RowWords) || IsOneOf(words, RoundWords))
            {
                gauge = gauge with { Rows = number, RowsAreRounds = IsOneOf(words, RoundWords) };
            }
            else if (gauge.Stitches is null)
            {
                gauge = gauge with { Stitches = number };
                stitch = StitchNamed(words);
            }
            else
            {
                break;
            }
        }

        if (gauge.Stitches is null && gauge.Rows is null)
        {
            return null;
        }

        Skip(text, ref at, Joins);
        if (Measure(text, ref at) is { } size)
        {
            gauge = gauge with
            {
                Width = gauge.Stitches is null ? null : size.Width,
                Height = gauge.Rows is null ? null : size.Height,
            };
        }

        var (said, tool) = StitchAndTool(text[at..]);
        if (before.Length > 0 && said is null)
        {
            (said, tool) = tool is null && LooksLikeTool(before) ? (null, before) : (TrimmedStitch(before), tool);
        }

        return gauge with { Stitch = said ?? stitch, Tool = tool };
    }

    /// <summary>The measured piece: "10 cm", "4 in", "10 x 10 cm", "4 in square"; null when there is none.</summary>
    public static (Quantity Width, Quantity Height)? Measure(string text, ref int at)
    {
        var start = at;
        SkipBlanks(text, ref at);
        if (text.AsSpan(at).StartsWith("a ", StringComparison.OrdinalIgnoreCase))
        {
            at += 2;
        }

        if (!NumberReader.TryRead(text, ref at, out var width))
        {
            at = start;
            return null;
        }

        var unit = TakeUnit(text, ref at);
        var height = width;
        var heightUnit = unit;
        var mark = at;
        SkipBlanks(text, ref at);
        if (at < text.Length && (text[at] is '×' or 'x' or 'X' || text.AsSpan(at).StartsWith("by ", StringComparison.OrdinalIgnoreCase)))
        {
            at += text[at] is 'b' or 'B' ? 2 : 1;
            SkipBlanks(text, ref at);
            if (NumberReader.TryRead(text, ref at, out var second))
            {
                height = second;
                heightUnit = TakeUnit(text, ref at);
            }
            else
            {
                at = mark;
            }
        }
        else
        {
            at = mark;
        }

        unit ??= heightUnit;
        heightUnit ??= unit;
        if (unit is not { Dimension: Dimension.Length } || heightUnit is not { Dimension: Dimension.Length } || width <= 0 || height <= 0)
        {
            at = start;
            return null;
        }

        SkipSecondSystem(text, ref at);
        foreach (var word in (ReadOnlySpan<string>)["square", "sq.", "sq"])
        {
            var next = at;
            SkipBlanks(text, ref next);
            if (text.AsSpan(next).StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                at = next + word.Length;
                SkipSecondSystem(text, ref at);
                break;
            }
        }

        return (new Quantity(width, unit), new Quantity(height, heightUnit));
    }

    // "10 cm / 4 in", "4 in (10 cm)": the same in other units.
    private static void SkipSecondSystem(string text, ref int at)
    {
        var next = at;
        SkipBlanks(text, ref next);
        if (next >= text.Length || text[next] is not ('(' or '[' or '/' or '='))
        {
            return;
        }

        next++;
        if (Measure(text, ref next) is null)
        {
            return;
        }

        SkipBlanks(text, ref next);
        at = next < text.Length && text[next] is ')' or ']' ? next + 1 : next;
    }

    private static Unit? TakeUnit(string text, ref int at)
    {
        var next = at;
        SkipBlanks(text, ref next);
        if (next < text.Length && text[next] == '-')
        {
            next++;
        }

        var word = ValueListReader.WordAt(text, next);
        if (word.Length == 0 || Unit.Find(word) is not { } unit)
        {
            return null;
        }

        at = next + word.Length;
        if (at < text.Length && text[at] == '.')
        {
            at++;
        }

        return unit;
    }

    private static (string Text, bool? Blocked) WithoutState(string line)
    {
        foreach (var (state, blocked) in States)
        {
            var at = line.IndexOf(state, StringComparison.OrdinalIgnoreCase);
            if (at >= 0 && (at == 0 || !char.IsLetter(line[at - 1])))
            {
                var before = line[..at].TrimEnd().TrimEnd(',', ';', '(').TrimEnd();
                var after = line[(at + state.Length)..].TrimStart(' ', ',', ';', ')', '.');
                return (after.Length > 0 ? $"{before}, {after}" : before, blocked);
            }
        }

        return (line, null);
    }

    // Where the first number stands that is followed by a word that is no unit of measure.
    private static int FirstCount(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if ((i == 0 || !(char.IsLetterOrDigit(text[i - 1]) || text[i - 1] is '.' or '/')) && (char.IsAsciiDigit(text[i]) || NumberReader.Vulgar(text[i]) is not null))
            {
                var at = i;
                if (NumberReader.TryRead(text, ref at, out _) && CountWords(text, ref at) is { Length: > 0 } words && Unit.Find(words.Split(' ')[0]) is null && !LooksLikeTool(words))
                {
                    return i;
                }
            }
        }

        return -1;
    }

    // The words after a count, up to a sign, a number, or a word that joins or equals.
    private static string CountWords(string text, ref int at)
    {
        var next = at;
        SkipBlanks(text, ref next);
        var start = next;
        var end = next;
        while (next < text.Length)
        {
            var word = next;
            while (word < text.Length && (char.IsLetter(text[word]) || (word > next && text[word] is '-' or '.')))
            {
                word++;
            }

            var said = text[next..word];
            if (said.Length == 0 || IsOneOf(said, Ands) || (end > start && IsOneOf(said, Joins)))
            {
                break;
            }

            end = word;
            next = word;
            SkipBlanks(text, ref next);
        }

        at = end;
        return text[start..end].TrimEnd('.');
    }

    // "16 hdc" is measured in hdc; "20 sts" tells no stitch; "24 stitches" neither; "8 mesh squares" in mesh.
    private static string? StitchNamed(string words)
    {
        if (IsOneOf(words, StitchWords))
        {
            return null;
        }

        var last = words.LastIndexOf(' ');
        return last > 0 && IsOneOf(words[(last + 1)..], ["sts", "stitches", "st"]) ? words[..last] : words;
    }

    private static (string? Stitch, string? Tool) StitchAndTool(string rest)
    {
        string? stitch = null;
        string? tool = null;
        foreach (var clause in Clauses(rest))
        {
            var (lead, said) = clause;
            if (said.Length == 0)
            {
                continue;
            }

            if (lead is "on" or "with" or "using" or "w/" || (lead.Length == 0 && tool is null && LooksLikeTool(said)))
            {
                tool = tool is null ? said : $"{tool}, {said}";
            }
            else if (stitch is null)
            {
                stitch = TrimmedStitch(said);
            }
        }

        return (stitch is { Length: > 0 } ? stitch : null, tool);
    }

    // Cuts "in stockinette on 4.5 mm needles, using two strands" at its little words and commas.
    private static IEnumerable<(string Lead, string Said)> Clauses(string rest)
    {
        var words = rest.Replace(",", " , ", StringComparison.Ordinal).Replace(";", " , ", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var lead = "";
        var said = new List<string>();
        foreach (var word in words)
        {
            var small = word.ToLowerInvariant();
            if (small is "," or "on" or "with" or "using" or "over" or "w/" || (small == "in" && said.Count == 0) || (small == "in" && lead is "on" or "with" or "using"))
            {
                yield return (lead, string.Join(' ', said).Trim('.', ' '));
                lead = small == "," ? "" : small;
                said.Clear();
            }
            else
            {
                said.Add(word);
            }
        }

        yield return (lead, string.Join(' ', said).Trim('.', ' '));
    }

    private static string TrimmedStitch(string said) =>
        said.StartsWith("in ", StringComparison.OrdinalIgnoreCase) || said.StartsWith("of ", StringComparison.OrdinalIgnoreCase) ? said[3..].Trim() : said;

    private static bool LooksLikeTool(string words)
    {
        foreach (var word in words.Split(' ', '(', ')', ','))
        {
            if (word.TrimEnd('s').ToLowerInvariant() is "mm" or "needle" or "hook" or "us" or "u" or "uk" || (word.EndsWith("mm", StringComparison.Ordinal) && word.Length > 2 && char.IsAsciiDigit(word[0])))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsOneOf(string word, ReadOnlySpan<string> words)
    {
        foreach (var one in words)
        {
            if (string.Equals(one, word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    private static void Skip(string text, ref int at, ReadOnlySpan<string> words)
    {
        SkipBlanks(text, ref at);
        for (var round = 0; round < 3; round++)
        {
            var moved = false;
            foreach (var word in words)
            {
                var end = at + word.Length;
                if (text.AsSpan(at).StartsWith(word, StringComparison.OrdinalIgnoreCase) && (!char.IsLetter(word[^1]) || end >= text.Length || !char.IsLetter(text[end])))
                {
                    at = end;
                    SkipBlanks(text, ref at);
                    moved = true;
                    break;
                }
            }

            if (!moved)
            {
                return;
            }
        }
    }

    private static void SkipBlanks(string text, ref int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }
    }
}
