using System.Text;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Words of one size in another form of a pattern, from what is known already: the words as they are written, in the other form, and of that size as they are written. What the form
/// changes and what the size leaves out lie apart as a rule, and then both can be done at once; where they touch, nobody knows but the compiler.
/// </summary>
internal static class OneSizeWords
{
    /// <summary>The words of a size in the other form; null where they cannot be told from these three.</summary>
    /// <param name="written">As the pattern is written, for all sizes.</param>
    /// <param name="other">In the other form, for all sizes.</param>
    /// <param name="own">As the pattern is written, for that size.</param>
    /// <param name="size">The size, counted from 1.</param>
    public static string? Of(SizedText written, string other, string own, int size)
    {
        if (written.Text == other)
        {
            return own;
        }

        var lists = Lists(written);
        if (own == Left(written.Text, lists, size))
        {
            var same = Lists(written with { Text = other });
            return lists.Count == same.Count ? Left(other, same, size) : null;
        }

        string[] words = [.. Words(written.Text)];
        string[] others = [.. Words(other)];
        string[] owns = [.. Words(own)];
        return Hunks.Between(words, others) is { } changed && Hunks.Between(words, owns) is { } left ? Both(words, others, changed, owns, left) : null;
    }

    /// <summary>Lists of one number for each size that words are for.</summary>
    public static List<SizeValueList> Lists(SizedText sized)
    {
        var lists = SizeValues.Lists(sized.Text, sized.Sizes);
        return lists.Count == 0 && sized.Only is { IsDefaultOrEmpty: false } only
            ? [.. SizeValues.Lists(sized.Text, only.Length).Select(l => l with { Values = [.. l.Values.Select(v => v with { Size = only[v.Size - 1] + 1 })] })]
            : lists;
    }

    /// <summary>What is left where of each list only the number of one size stays.</summary>
    private static string Left(string text, List<SizeValueList> lists, int size)
    {
        var left = new StringBuilder(text.Length);
        var at = 0;
        foreach (var list in lists)
        {
            left.Append(text, at, list.Start - at);
            foreach (var value in list.Values.Where(v => v.Size == size))
            {
                left.Append(text, value.Start, value.Length);
            }

            at = list.End;
        }

        return left.Append(text, at, text.Length - at).ToString();
    }

    private static string? Both(string[] words, string[] others, List<Hunk> changed, string[] owns, List<Hunk> left)
    {
        var both = new StringBuilder();
        var (at, c, l) = (0, 0, 0);
        while (c < changed.Count || l < left.Count)
        {
            var isChange = l == left.Count || (c < changed.Count && changed[c].Start <= left[l].Start);
            var (next, from) = isChange ? (changed[c++], others) : (left[l++], owns);
            var after = isChange ? l < left.Count ? left[l] : (Hunk?)null : c < changed.Count ? changed[c] : null;
            if (after is { } other && (other.Start < next.End || (other.Start == next.End && (other.Start == other.End || next.Start == next.End))))
            {
                return null;
            }

            both.AppendJoin("", words[at..next.Start]).AppendJoin("", from[next.OtherStart..next.OtherEnd]);
            at = next.End;
        }

        return both.AppendJoin("", words[at..]).ToString();
    }

    /// <summary>Words and single signs.</summary>
    private static IEnumerable<string> Words(string text)
    {
        for (var at = 0; at < text.Length;)
        {
            var end = at + 1;
            while (char.IsLetterOrDigit(text[at]) && end < text.Length && char.IsLetterOrDigit(text[end]))
            {
                end++;
            }

            yield return text[at..end];
            at = end;
        }
    }
}
