namespace PatternForge.Rendering.Documents;

/// <summary>One number of a list, and the size that it is for.</summary>
/// <param name="Start">Where it begins in the text.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Size">The size, counted from 1.</param>
internal readonly record struct SizeValue(int Start, int Length, int Size);

/// <summary>A list with one number a size.</summary>
/// <param name="Start">Where it begins in the text.</param>
/// <param name="End">Where it ends, its brackets counted in.</param>
/// <param name="Values">Its numbers.</param>
internal readonly record struct SizeValueList(int Start, int End, SizeValue[] Values);

/// <summary>
/// Finds the numbers that stand for the sizes in a text: "88 (96, 104)", "88 (96, 104) [112, 120]", "60/66/72", "- (12, 13)". Only a list with
/// just one number a size counts; a shorter one may be for some sizes alone, and a wrong colour is worse than none.
/// </summary>
internal static class SizeValues
{
    /// <summary>The numbers in the order of the text; none where there is one size.</summary>
    public static List<SizeValue> Find(string text, int sizes) => [.. Lists(text, sizes).SelectMany(l => l.Values)];

    /// <summary>The lists in the order of the text, each with its numbers; none where there is one size.</summary>
    public static List<SizeValueList> Lists(string text, int sizes)
    {
        List<SizeValueList> found = [];
        if (sizes < 2)
        {
            return found;
        }

        List<(int Start, int End)> list = [];
        var at = 0;
        while (at < text.Length)
        {
            list.Clear();
            if (!Begins(text, at) || ValueEnd(text, at) is not (> 0 and var first))
            {
                at++;
                continue;
            }

            list.Add((at, first));
            var end = Groups(text, first, list, sizes);
            end = list.Count == 1 && sizes > 2 ? Chain(text, first, list, sizes) : end;
            if (list.Count == sizes)
            {
                found.Add(new(at, end, [.. list.Select((v, i) => new SizeValue(v.Start, v.End - v.Start, i + 1))]));
                at = end;
            }
            else
            {
                at = first;
            }
        }

        return found;
    }

    /// <summary>True where a first value can stand: a number that is not the rest of another, or the dash of a size that skips the step.</summary>
    private static bool Begins(string text, int at)
    {
        var before = at == 0 ? ' ' : text[at - 1];
        return IsDash(text[at])
            ? before == ' ' && at + 2 < text.Length && text[(at + 1)..(at + 3)].TrimStart() is ['(' or '[', ..]
            : IsNumeral(text[at]) && !IsNumeral(before) && before is not ('.' or '/') && !(before == ',' && at > 1 && IsNumeral(text[at - 2]));
    }

    /// <summary>Reads bracketed groups after a first value; returns where the last of them ends.</summary>
    private static int Groups(string text, int at, List<(int Start, int End)> list, int sizes)
    {
        var end = at;
        while (list.Count < sizes)
        {
            var open = Blanks(text, end);
            if (open >= text.Length || text[open] is not ('(' or '['))
            {
                break;
            }

            var (count, close) = (list.Count, text[open] == '(' ? ')' : ']');
            end = Inside(text, open + 1, close, list, sizes);
            if (end < 0)
            {
                list.RemoveRange(count, list.Count - count);
                return at;
            }

            at = end;
        }

        return end;
    }

    /// <summary>Reads a bracket that holds nothing but values; returns the place after it, or -1.</summary>
    private static int Inside(string text, int at, char close, List<(int Start, int End)> list, int sizes)
    {
        while (list.Count < sizes)
        {
            var start = Blanks(text, at);
            var end = ValueEnd(text, start);
            if (end < 0)
            {
                return -1;
            }

            list.Add((start, end));
            at = Blanks(text, end);
            if (at < text.Length && text[at] == close)
            {
                return at + 1;
            }

            if (at >= text.Length || text[at] is not (',' or ':' or ';' or '/' or '-' or '–'))
            {
                return -1;
            }

            at++;
        }

        return -1;
    }

    /// <summary>Reads "/66/72" after a first value. Two numbers alone may be a crossing or a fraction, and are left.</summary>
    private static int Chain(string text, int at, List<(int Start, int End)> list, int sizes)
    {
        while (list.Count <= sizes && at + 1 < text.Length && text[at] == '/' && ValueEnd(text, at + 1) is > 0 and var end)
        {
            list.Add((at + 1, end));
            at = end;
        }

        return at;
    }

    /// <summary>Where a value ends: "12", "4.5", "6½", "6 1/2", "4th", or the dash of a size that has none; -1 when none begins here.</summary>
    private static int ValueEnd(string text, int at)
    {
        if (at >= text.Length)
        {
            return -1;
        }

        if (IsDash(text[at]))
        {
            return at + 1;
        }

        var end = at;
        while (end < text.Length && (IsNumeral(text[end]) || (text[end] == '.' && end > at && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1]))))
        {
            end++;
        }

        if (end == at)
        {
            return -1;
        }

        return end + 3 < text.Length && text[end] == ' ' && text[end + 2] == '/' && text[end + 1] is '1' or '3' or '5' or '7' && text[end + 3] is '2' or '4' or '8' && text[end + 1] < text[end + 3]
            ? end + 4
            : end + 2 <= text.Length && text[end..Math.Min(end + 2, text.Length)] is "st" or "nd" or "rd" or "th" && (end + 2 == text.Length || !char.IsLetter(text[end + 2])) ? end + 2
            : end;
    }

    private static int Blanks(string text, int at) => at < text.Length && text[at] == ' ' ? at + 1 : at;

    private static bool IsNumeral(char c) => char.IsAsciiDigit(c) || c is >= '¼' and <= '¾' or >= '⅐' and <= '⅞';

    private static bool IsDash(char c) => c is '-' or '–' or '—';
}
