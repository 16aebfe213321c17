namespace PatternForge.Core.Stitches;

/// <summary>The ways in which makers write one stitch out in words, and the one spelling under which all of them are looked up.</summary>
public static class SpokenForms
{
    /// <summary>No name of a stitch is longer than this once blanks are gone.</summary>
    public const int LongestName = 64;

    private static readonly string[] NumberWords = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    private static readonly string[] Plurals = [" sts together", " stitches together"];

    /// <summary>The spelling for lookups: without blanks, hyphens and full stops, so "k 2 tog." and "k2tog" are one. -1 when longer than the room given.</summary>
    public static int Squeeze(ReadOnlySpan<char> name, Span<char> room)
    {
        var length = 0;
        foreach (var c in name)
        {
            if (c is '-' or '\u2010' or '\u2011' or '\u2013' or '.' || char.IsWhiteSpace(c))
            {
                continue;
            }

            if (length == room.Length)
            {
                return -1;
            }

            room[length++] = c;
        }

        return length;
    }

    /// <summary>The same as a string; empty when the name is too long to be one.</summary>
    public static string Squeeze(string name)
    {
        Span<char> room = stackalloc char[LongestName];
        var length = Squeeze(name, room);
        return length <= 0 ? "" : new string(room[..length]);
    }

    /// <summary>"knit 2 together" and what else is written for it: "knit two together", "knit 2 sts tog", "k 2 together".</summary>
    public static IEnumerable<string> Of(string spoken)
    {
        yield return spoken;
        foreach (var numbered in Numbered(spoken))
        {
            yield return numbered;
            if (!numbered.Contains(" together", StringComparison.Ordinal))
            {
                continue;
            }

            string[] plural = [numbered, .. Plurals.Select(words => numbered.Replace(" together", words, StringComparison.Ordinal))];
            foreach (var form in plural)
            {
                yield return form;
                yield return form.Replace(" together", " tog", StringComparison.Ordinal);
                if (form.StartsWith("knit ", StringComparison.Ordinal) || form.StartsWith("purl ", StringComparison.Ordinal))
                {
                    var initial = string.Concat(form.AsSpan(0, 1), form.AsSpan(4));
                    yield return initial;
                    yield return initial.Replace(" together", " tog", StringComparison.Ordinal);
                }
            }
        }
    }

    private static IEnumerable<string> Numbered(string spoken)
    {
        yield return spoken;
        for (var n = 1; n < NumberWords.Length; n++)
        {
            var digit = $" {n}";
            var at = spoken.IndexOf(digit, StringComparison.Ordinal);
            if (at >= 0 && (at + 2 == spoken.Length || spoken[at + 2] is ' ' or ','))
            {
                yield return spoken.Replace(digit, " " + NumberWords[n], StringComparison.Ordinal);
            }
        }
    }
}
