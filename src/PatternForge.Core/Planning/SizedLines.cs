using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace PatternForge.Core.Planning;

/// <summary>
/// Lines of a pattern that were written for each size by itself, told once for all: where they differ by their numbers alone these become lists in the trade's form, and
/// a line that some sizes do not have is told for those that do.
/// </summary>
internal static class SizedLines
{
    private const int MostLines = 400;

    /// <summary>The lines for all sizes; those of a size without any are not told for it.</summary>
    /// <param name="lines">For each size its lines in order.</param>
    /// <param name="names">The names of the sizes.</param>
    /// <param name="ranks">For each size and line the stretch of the work that it belongs to (<see cref="PlanLines.Ranks"/>); none where the work is one stretch.</param>
    public static ImmutableArray<string> Of(IReadOnlyList<ImmutableArray<string>> lines, ImmutableArray<string> names, IReadOnlyList<ImmutableArray<int>>? ranks = null)
    {
        if (lines.Count == 1)
        {
            return lines[0];
        }

        if (ranks is not null && ranks.Any(r => !r.IsEmpty))
        {
            return InStretches(lines, names, ranks);
        }

        var numbered = lines.Select(own => own.Take(MostLines).Select(NumberedText.Of).ToImmutableArray()).ToArray();
        if (numbered.Where(n => !n.IsEmpty).Select(n => n.Length).Distinct().Count() > 1)
        {
            // Rows of one number would not be the same row in every size.
            numbered = [.. numbered.Select(own => own.Select(WithoutNumber).ToImmutableArray())];
        }

        var entries = Aligned(numbered, [.. Enumerable.Range(0, numbered.Length)]);
        if (entries.Count(e => e.Texts.Where((_, i) => !lines[i].IsEmpty).Any(t => t is null)) * 2 > entries.Count || entries.Exists(TurnsBack))
        {
            // Too little in common: each size, or those that differ by numbers alone, reads better by itself.
            entries = [.. numbered.Index().Where(n => !n.Item.IsEmpty).GroupBy(n => string.Join('\n', n.Item.Select(t => t.Shape)), StringComparer.Ordinal).SelectMany(g => Aligned(numbered, [.. g.Select(n => n.Index)]))];
        }

        return [.. entries.Select(e => Told(e, names))];
    }

    /// <summary>Lines that all sizes share, each of a rank of its own; what does nothing in any size is left out, and a count that would rise and fall again from size to size is not told.</summary>
    public static ImmutableArray<string> Shared(IReadOnlyList<PlanLines> plans, ImmutableArray<string> names)
    {
        var needed = plans.SelectMany(p => p.Ranks.Where((_, i) => !p.Idle.Contains(i))).ToHashSet();
        var lines = plans.Select(p => p.Lines.Index().Where(l => needed.Contains(p.Ranks[l.Index])).Select(l => NumberedText.Of(l.Item)).Take(MostLines).ToImmutableArray()).ToArray();
        return [.. Aligned(lines, [.. plans.Index().Where(p => !p.Item.Lines.IsEmpty).Select(p => p.Index)]).Select(e => Told(e, names, evenCounts: true))];
    }

    // What belongs to one stretch stands together, whatever the sizes have of it. Sizes whose rows differ are told one after the other: "rep last 4 rnds" means those that stand before it.
    private static ImmutableArray<string> InStretches(IReadOnlyList<ImmutableArray<string>> lines, ImmutableArray<string> names, IReadOnlyList<ImmutableArray<int>> ranks)
    {
        var told = new List<Entry>();
        foreach (var rank in ranks.SelectMany(r => r).Distinct().Order())
        {
            ImmutableArray<NumberedText>[] own = [.. lines.Select((l, s) => l.Where((_, i) => ranks[s][i] == rank).Select(NumberedText.Of).ToImmutableArray())];
            var groups = own.Index().Where(s => !s.Item.IsEmpty).GroupBy(s => string.Join('\n', s.Item.Where(t => !t.Original.StartsWith("Rep ", StringComparison.Ordinal)).Select(t => t.Shape)), StringComparer.Ordinal);
            told.AddRange(groups.SelectMany(g => Aligned(own, [.. g.Select(s => s.Index)])));
        }

        return [.. told.Take(MostLines).Select(e => Told(e, names))];
    }

    // From the end, because plans come to the same end more often than they begin alike.
    private static List<Entry> Aligned(ImmutableArray<NumberedText>[] lines, int[] sizes)
    {
        var entries = new List<Entry>();
        foreach (var size in sizes)
        {
            Align(entries, [.. lines[size].Reverse()], size, lines.Length);
        }

        entries.Reverse();
        return entries;
    }

    // Counts that rise from size to size and fall again are those of rows that do not belong together.
    private static bool TurnsBack(Entry entry)
    {
        var counts = entry.Texts.Where(t => t is not null).Select(t => t!.Parts.LastOrDefault(p => p.Number is not null)?.Number ?? 0).ToArray();
        return counts.Zip(counts.Skip(1)).Any(p => p.Second > p.First) && counts.Zip(counts.Skip(1)).Any(p => p.Second < p.First);
    }

    private static NumberedText WithoutNumber(NumberedText text)
    {
        var line = text.Original;
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        foreach (var (name, next) in (ReadOnlySpan<(string, string)>)[("Rnd ", "Next rnd"), ("Row ", "Next row"), ("Short Row ", "Short Row")])
        {
            if (colon > name.Length && line.StartsWith(name, StringComparison.Ordinal) && char.IsAsciiDigit(line[name.Length]))
            {
                var end = name.Length;
                while (char.IsAsciiDigit(line[end]))
                {
                    end++;
                }

                return NumberedText.Of(next + line[end..]);
            }
        }

        return text;
    }

    // Lines of one shape stand for each other, in their order: as many as can be (a longest common sequence).
    private static void Align(List<Entry> entries, ImmutableArray<NumberedText> lines, int size, int sizes)
    {
        var common = new int[entries.Count + 1, lines.Length + 1];
        for (var i = entries.Count - 1; i >= 0; i--)
        {
            for (var j = lines.Length - 1; j >= 0; j--)
            {
                common[i, j] = entries[i].Shape == lines[j].Shape ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var (at, line, old) = (0, 0, 0);
        var count = entries.Count;
        while (line < lines.Length)
        {
            if (old < count && entries[at].Shape == lines[line].Shape && common[old, line] == common[old + 1, line + 1] + 1)
            {
                entries[at++].Texts[size] = lines[line++];
                old++;
            }
            else if (old < count && common[old + 1, line] >= common[old, line + 1])
            {
                at++;
                old++;
            }
            else
            {
                var entry = new Entry(lines[line].Shape, new NumberedText?[sizes]);
                entry.Texts[size] = lines[line++];
                entries.Insert(at++, entry);
            }
        }
    }

    private static string Told(Entry entry, ImmutableArray<string> names, bool evenCounts = false)
    {
        var present = Enumerable.Range(0, names.Length).Where(i => entry.Texts[i] is not null).ToArray();
        var first = entry.Texts[present[0]]!;
        var text = present.All(i => entry.Texts[i]!.Original == first.Original) ? first.Original : Listed(entry, present);
        if (evenCounts && TurnsBack(entry) && text.EndsWith(" sts)", StringComparison.Ordinal) && text.IndexOf(". (", StringComparison.Ordinal) is > 0 and var count)
        {
            text = text[..(count + 1)];
        }

        return present.Length == names.Length ? text : $"{For(present, names)} only: {text}";
    }

    // "Sizes M to 5X", "Sizes S, L and 2X".
    private static string For(int[] sizes, ImmutableArray<string> names) =>
        sizes.Length == 1 ? $"Size {names[sizes[0]]}"
        : sizes.Length > 2 && sizes[^1] - sizes[0] == sizes.Length - 1 ? $"Sizes {names[sizes[0]]} to {names[sizes[^1]]}"
        : $"Sizes {string.Join(", ", sizes[..^1].Select(i => names[i]))} and {names[sizes[^1]]}";

    private static string Listed(Entry entry, int[] present)
    {
        var parts = entry.Texts[present[0]]!.Parts;
        var line = new StringBuilder();
        for (var i = 0; i < parts.Length; i++)
        {
            var part = parts[i];
            if (part.Number is null)
            {
                line.Append(part.Text);
                continue;
            }

            var values = entry.Texts.Select(t => t?.Parts[i]).ToArray();
            var same = present.All(s => values[s]!.Number == part.Number);
            if (same && part.Number == 1 && parts.Length > i + 1 && parts[i + 1].Text is { } after && NumberedText.Singular(after) is { } single)
            {
                line.Append(part.Said).Append(single);
                i++;
            }
            else
            {
                var said = present.Select(p => values[p]!.Said).ToArray();
                line.Append(same ? part.Said : $"{said[0]} ({string.Join(", ", said[1..])})");
            }
        }

        return line.ToString().Replace(" 1 times", " once", StringComparison.Ordinal).Replace(" 2 times", " twice", StringComparison.Ordinal)
            .Replace("every 2nd row", "every other row", StringComparison.Ordinal).Replace("every 2nd rnd", "every other rnd", StringComparison.Ordinal);
    }

    private sealed record Entry(string Shape, NumberedText?[] Texts);
}

/// <summary>A line with its numbers apart.</summary>
/// <param name="Original">The line as it was written.</param>
/// <param name="Parts">Texts and numbers in turn.</param>
/// <param name="Shape">The line without its numbers: lines of one shape can be told as one.</param>
internal sealed record NumberedText(string Original, ImmutableArray<NumberedPart> Parts, string Shape)
{
    private static readonly (string Many, string One)[] Units = [(" sts", " st"), (" rows", " row"), (" rnds", " rnd"), (" times", " time")];

    /// <summary>Takes a line apart. Numbers inside names of stitches are letters: k2tog, M1L.</summary>
    public static NumberedText Of(string line)
    {
        var text = line.Replace(" once", " 1 times", StringComparison.Ordinal).Replace(" twice", " 2 times", StringComparison.Ordinal)
            .Replace("every other ", "every 2nd ", StringComparison.Ordinal);
        var parts = ImmutableArray.CreateBuilder<NumberedPart>();
        var said = new StringBuilder();
        var at = 0;
        while (at < text.Length)
        {
            if (!char.IsAsciiDigit(text[at]))
            {
                said.Append(text[at++]);
                continue;
            }

            var end = at;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
            {
                end++;
            }

            var ending = end + 2 <= text.Length && text.AsSpan(end, 2) is "st" or "nd" or "rd" or "th" && (end + 2 == text.Length || !char.IsLetter(text[end + 2]));
            if ((end < text.Length && char.IsLetter(text[end]) && !ending) || end - at > 7)
            {
                said.Append(text, at, end - at);
                at = end;
                continue;
            }

            parts.Add(new(said.ToString(), null, ""));
            said.Clear();
            parts.Add(new("", int.Parse(text.AsSpan(at, end - at), CultureInfo.InvariantCulture), ending ? text.Substring(at, end + 2 - at) : text[at..end]));
            at = ending ? end + 2 : end;
            foreach (var (many, one) in ending ? [] : Units)
            {
                if (text.AsSpan(at).StartsWith(one, StringComparison.Ordinal) && (at + one.Length == text.Length || !char.IsLetter(text[at + one.Length])))
                {
                    said.Append(many);
                    at += one.Length;
                }
            }
        }

        parts.Add(new(said.ToString(), null, ""));
        return new(line, parts.ToImmutable(), string.Concat(parts.Select(p => p.Number is null ? p.Text : p.Said.Length > 0 && char.IsLetter(p.Said[^1]) ? "#th" : "#")));
    }

    /// <summary>A text behind the number 1 with its first word in the singular; null where it has no such word.</summary>
    public static string? Singular(string text)
    {
        foreach (var (many, one) in Units)
        {
            if (text.StartsWith(many, StringComparison.Ordinal) && many != " times")
            {
                return one + text[many.Length..];
            }
        }

        return null;
    }
}

/// <summary>A text, or a number as it is said ("4", "4th").</summary>
internal sealed record NumberedPart(string Text, int? Number, string Said);
