using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Charts;

/// <summary>Which yarn each line of a motif is worked with, where whole rounds are of one: "With A, …", "Join B with a sl st in any ch-2 sp".</summary>
internal static class DiagramYarns
{
    // What names a yarn so near to a line's beginning speaks for all of it; so near to its end, for the next one.
    private const int Opening = 16;
    private const int Closing = 40;

    private static readonly string[] Verbs = ["with", "join", "to", "attach", "using", "in"];
    private static readonly IReadOnlyDictionary<int, string> None = new Dictionary<int, string>();

    /// <summary>The letter of each line by its number; empty where a line is of several, where it is not said, or where one yarn does it all.</summary>
    public static IReadOnlyDictionary<int, string> Of(List<BoundLine> lines, ImmutableArray<Yarn> yarns)
    {
        string[] labels = [.. yarns.Select(y => y.Label).OfType<string>().Where(l => l.Length > 0)];
        if (labels.Length < 2 || lines.Any(l => l.Rows.Any(r => r.SpeaksForOthers || r.Steps.Any(s => s is RepeatRowsStep))))
        {
            return None;
        }

        var of = new Dictionary<int, string>();
        string? inHand = null;
        foreach (var line in lines)
        {
            var next = inHand;
            if (Label(line.Label, labels) is { } told)
            {
                (inHand, next) = (told, told);
            }

            foreach (var (label, at, end) in Mentions(line.Text, labels))
            {
                if (at <= Opening)
                {
                    (inHand, next) = (label, label);
                }
                else if (label != inHand && line.Text.Length - end <= Closing)
                {
                    next = label;
                }
                else if (label != inHand)
                {
                    return None;
                }
            }

            if (inHand is not null)
            {
                of[line.Index] = inHand;
            }
            else if (line.Rows.Any(r => !r.Numbers.IsEmpty))
            {
                return None;
            }

            inHand = next;
        }

        return of.Values.Distinct(StringComparer.Ordinal).Count() > 1 ? of : None;
    }

    /// <summary>"Rnd 2 (B)".</summary>
    private static string? Label(string label, string[] labels) => Array.Find(labels, l => label.EndsWith($"({l})", StringComparison.Ordinal));

    private static IEnumerable<(string Label, int At, int End)> Mentions(string text, string[] labels)
    {
        var (last, at) = ("", 0);
        while (at < text.Length)
        {
            if (!char.IsLetterOrDigit(text[at]))
            {
                at++;
                continue;
            }

            var end = at;
            while (end < text.Length && char.IsLetterOrDigit(text[end]))
            {
                end++;
            }

            var word = text[at..end];
            if (labels.Contains(word, StringComparer.Ordinal) && Verbs.Contains(last, StringComparer.OrdinalIgnoreCase))
            {
                yield return (word, at, end);
            }

            last = word is "yarn" or "color" or "colour" or "new" ? last : word;
            at = end;
        }
    }
}
