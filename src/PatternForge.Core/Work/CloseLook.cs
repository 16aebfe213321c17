using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// The second look at the rows that do not add up, once all of them are known: how the count comes about, and which change of one number would
/// mend the row in every size. Only a pattern with mistakes pays for it.
/// </summary>
internal sealed class CloseLook
{
    private const int MostLines = 40;
    private const int MostChange = 4;
    private const int MostChangeWithin = 2;
    private const int MostTries = 96;

    private readonly Dictionary<int, List<int>> _findings = [];
    private readonly Dictionary<BoundRow, Seen> _seen = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<int, BoundLine> _lines = [];

    /// <summary>What was seen of a row.</summary>
    private sealed record Seen(ImmutableArray<(int Size, ImmutableArray<WorkedStretch> Stretches)> Sizes, string? Repair);

    /// <summary>The number of the last line to look at.</summary>
    public int LastLine { get; private set; }

    /// <summary>True while the line in hand is one to look at.</summary>
    public bool Looks { get; private set; }

    /// <summary>The lines that findings about counts stand in; null where there are none.</summary>
    /// <param name="lines">All lines, in the order of the source.</param>
    /// <param name="bag">The findings.</param>
    /// <param name="first">How many findings there were before the rows were worked.</param>
    public static CloseLook? At(ImmutableArray<BoundLine> lines, FindingBag bag, int first)
    {
        CloseLook? look = null;
        foreach (var (at, finding) in bag.From(first))
        {
            if (finding.Rule.Area != Area.Counts || finding.Severity == Severity.Note || LineOf(lines, finding.Span) is not { } line)
            {
                continue;
            }

            look ??= new CloseLook();
            if (look._lines.Count == MostLines && !look._lines.ContainsKey(line))
            {
                break;
            }

            look._lines[line] = lines[line];
            look.LastLine = Math.Max(look.LastLine, line);
            if (!look._findings.TryGetValue(line, out var there))
            {
                look._findings[line] = there = [];
            }

            there.Add(at);
        }

        return look;
    }

    /// <summary>A line begins; true when it is one to look at.</summary>
    public bool Begins(BoundLine line) => Looks = _findings.ContainsKey(line.Index);

    /// <summary>Works a row of such a line, and looks for what would mend it.</summary>
    public RowOutcome[] Work(BoundRow row, int[] active, RowReadings readings, SizeState[] states, SourceText source)
    {
        SizeState.Snapshot[] saved = [.. active.Select(size => states[size].Save())];
        void Back()
        {
            for (var i = 0; i < active.Length; i++)
            {
                states[active[i]].Restore(saved[i]);
            }
        }

        var outcomes = readings.Work(row, active);
        string? repair = null;
        if (!RowReadings.Fits(row, active, outcomes))
        {
            repair = Repair(row, active, readings, source, Back);
            Back();
            outcomes = readings.Work(row, active);
        }

        _seen[row] = new Seen([.. active.Zip(outcomes, (size, outcome) => (size, outcome.Notes?.Stretches ?? []))], repair);
        return outcomes;
    }

    /// <summary>Adds to each finding how its count comes about, and the change that mends its row.</summary>
    public void Explain(FindingBag bag, SizeSet sizes)
    {
        foreach (var (line, findings) in _findings)
        {
            foreach (var at in findings)
            {
                var finding = bag.From(at).First().Finding;
                if (RowOf(_lines[line], finding.Span) is not { } row || !_seen.TryGetValue(row, out var seen))
                {
                    continue;
                }

                var (size, stretches) = seen.Sizes.FirstOrDefault(s => finding.Sizes.IsEmpty || s.Size == finding.Sizes[0]);
                var words = stretches.IsDefaultOrEmpty ? "" : ClauseWords.Short(stretches, bag.Source);
                var name = sizes.Count > 1 ? $"in {sizes.Names[size]}: " : "";
                bag.Amend(at, seen.Repair ?? finding.Help, words.Length == 0 ? null : name + words);
            }
        }
    }

    /// <summary>The change of one number that makes the row fit in every size, edges first; null where there is none, or where too many would do.</summary>
    private static string? Repair(BoundRow row, int[] active, RowReadings readings, SourceText source, Action back)
    {
        var keeps = readings.KeepsNotes;
        readings.KeepsNotes = false;
        var tries = 0;
        var fitting = new List<RowVariant>();
        for (var by = 1; by <= MostChange && fitting.Count == 0; by++)
        {
            foreach (var variant in RowVariants.Of(row.Steps, by).Concat(RowVariants.Of(row.Steps, -by)))
            {
                // Without a second size or a stated count, inside a repeat anything can be made to fit.
                if (++tries > MostTries)
                {
                    break; // each variant of a long row costs its length
                }

                if (!Tells(variant.Number, source) || (variant.Depth > 0 && (by > MostChangeWithin || (active.Length == 1 && row.Claims.IsEmpty))))
                {
                    continue;
                }

                back();
                if (RowReadings.Fits(row, active, readings.Once(row with { Steps = variant.Steps }, active, readings.Beginning)))
                {
                    fitting.Add(variant);
                }
            }
        }

        readings.KeepsNotes = keeps;
        var best = fitting.Where(v => v.Depth == fitting.Min(f => f.Depth)).ToArray();
        return best.Length is 0 or > 2 ? null : $"{string.Join(" or ", best.Select(v => Words(v, source)))} would make it fit{(active.Length > 1 ? " in every size" : "")}";
    }

    /// <summary>True for a number in figures: "twice" cannot be given with one more.</summary>
    private static bool Tells(TextSpan number, SourceText source) => source.Text.AsSpan(number.Start, number.Length).IndexOfAnyInRange('0', '9') >= 0;

    private static string Words(RowVariant variant, SourceText source)
    {
        // The words around the number, from the start of its phrase or a few characters before it.
        var phrase = variant.Phrase.Contains(variant.Number) ? variant.Phrase : variant.Number; // "x 6" may stand away from its words
        var from = phrase.Start;
        if (variant.Number.Start - from > 8)
        {
            from = source.Text.LastIndexOf(' ', Math.Max(from, variant.Number.Start - 2), variant.Number.Start - 2 - from) + 1;
            from = from <= phrase.Start || source.Text.AsSpan(from, variant.Number.Start - from).IndexOfAny("])}*;") >= 0 ? variant.Number.Start : from;
        }

        // And the word after it ("last 4 sts", "3 dc").
        var to = variant.Number.End;
        if (to + 1 < phrase.End && source.Text[to] == ' ' && char.IsLetter(source.Text[to + 1]))
        {
            for (to++; to < phrase.End && char.IsLetterOrDigit(source.Text[to]); to++)
            {
            }
        }

        var (before, number, after) = (source.Text[from..variant.Number.Start], source.Text[variant.Number.Start..variant.Number.End], source.Text[variant.Number.End..to]);
        return $"`{before}{Shifted(number, variant.Change)}{after}` instead of `{before}{number}{after}`";
    }

    /// <summary>The words of a number or a list of them, each so much more.</summary>
    private static string Shifted(string words, int change)
    {
        var result = new System.Text.StringBuilder();
        for (var i = 0; i < words.Length;)
        {
            if (!char.IsAsciiDigit(words[i]))
            {
                result.Append(words[i++]);
                continue;
            }

            var end = i;
            while (end < words.Length && char.IsAsciiDigit(words[end]))
            {
                end++;
            }

            result.Append(int.TryParse(words.AsSpan(i, end - i), out var value) ? value + change : words[i..end]);
            i = end;
        }

        return result.ToString();
    }

    private static int? LineOf(ImmutableArray<BoundLine> lines, TextSpan span)
    {
        var (low, high) = (0, lines.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (lines[middle].Origin.End < span.Start)
            {
                low = middle + 1;
            }
            else if (lines[middle].Origin.Start > span.Start)
            {
                high = middle - 1;
            }
            else
            {
                return middle;
            }
        }

        return null;
    }

    private static BoundRow? RowOf(BoundLine line, TextSpan span) =>
        line.Rows.LastOrDefault(r => r.Origin.Start <= span.Start) ?? line.Rows.FirstOrDefault();
}
