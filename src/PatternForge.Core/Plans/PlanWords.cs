using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>The trade's words for numbers, and rows that say a repeated stretch once.</summary>
internal static class PlanWords
{
    private const int LongestPeriod = 60;
    private const int MostDepth = 4;

    /// <summary>"once", "twice", "3 times".</summary>
    public static string Times(int times) => times switch
    {
        1 => "once",
        2 => "twice",
        _ => string.Create(CultureInfo.InvariantCulture, $"{times} times"),
    };

    /// <summary>"1 st", "2 sts".</summary>
    public static string Sts(int stitches) => Counted(stitches, "st");

    /// <summary>"1 row", "2 rows".</summary>
    public static string Counted(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    /// <summary>"every row", "every 4th row", "every other rnd".</summary>
    public static string Every(int rows, bool inRound) => rows switch
    {
        1 => $"every {Row(inRound)}",
        2 => $"every other {Row(inRound)}",
        _ => string.Create(CultureInfo.InvariantCulture, $"every {rows}{Ending(rows)} {Row(inRound)}"),
    };

    /// <summary>"row" or "rnd".</summary>
    public static string Row(bool inRound) => inRound ? "rnd" : "row";

    /// <summary>A row as a sentence: its first letter large, a full stop behind.</summary>
    public static string Sentence(string row) => Capital(row) + ".";

    /// <summary>The first letter large, behind a bracket too.</summary>
    public static string Capital(string text)
    {
        var first = text.AsSpan().IndexOfAnyExcept("([");
        return first < 0 ? text : string.Concat(text.AsSpan(0, first), text[first..(first + 1)].ToUpperInvariant(), text.AsSpan(first + 1));
    }

    /// <summary>A measure or an amount, two decimals at most.</summary>
    public static string Figure(decimal figure) => figure.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>"12 (3 times), 13": sizes with how often they come, in the order in which they first come.</summary>
    public static string Sizes(IEnumerable<int> sizes) =>
        string.Join(", ", sizes.GroupBy(s => s).Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Key}{(g.Count() > 1 ? $" ({Times(g.Count())})" : "")}")));

    /// <summary>Clauses one after the other, each repeated stretch in brackets with its number: <c>k6, M1, (k13, M1) 3 times, k6</c>.</summary>
    public static string Row(ImmutableArray<string> clauses) => Write(clauses.AsSpan(), 0);

    private static string Write(ReadOnlySpan<string> clauses, int depth)
    {
        var (start, period, times) = depth >= MostDepth ? (0, 0, 1) : Best(clauses);
        if (times < 2)
        {
            return string.Join(", ", clauses.ToArray().Where(c => c.Length > 0));
        }

        var group = Write(clauses.Slice(start, period), depth + 1);
        var (open, close) = group.Contains('(', StringComparison.Ordinal) ? ('[', ']') : ('(', ')');
        string[] parts = [Write(clauses[..start], depth + 1), $"{open}{group}{close} {Times(times)}", Write(clauses[(start + (period * times))..], depth + 1)];
        return string.Join(", ", parts.Where(p => p.Length > 0));
    }

    // The repeat that saves the most words.
    private static (int Start, int Period, int Times) Best(ReadOnlySpan<string> clauses)
    {
        var (best, saved) = ((Start: 0, Period: 0, Times: 1), 0);
        for (var period = 1; period <= Math.Min(LongestPeriod, clauses.Length / 2); period++)
        {
            var run = 0;
            for (var i = 0; i + period < clauses.Length; i++)
            {
                run = clauses[i] == clauses[i + period] ? run + 1 : 0;
                var times = (run / period) + 1;
                if (period * (times - 1) > saved && run % period == 0)
                {
                    (best, saved) = ((i + 1 - run, period, times), period * (times - 1));
                }
            }
        }

        return best;
    }

    private static string Ending(int number) => (number % 100) is >= 11 and <= 13 ? "th" : (number % 10) switch
    {
        1 => "st",
        2 => "nd",
        3 => "rd",
        _ => "th",
    };
}
