using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>The rows of a file's stitch patterns, by number, wherever in the file they stand.</summary>
internal sealed class PatternBook
{
    private readonly Dictionary<int, SortedDictionary<int, BoundRow>> _patterns = [];

    private PatternBook()
    {
    }

    /// <summary>The book of a file without stitch patterns.</summary>
    public static PatternBook Empty { get; } = new();

    /// <summary>The rows of all stitch patterns among the lines.</summary>
    public static PatternBook Of(ImmutableArray<BoundLine> lines)
    {
        PatternBook? book = null;
        foreach (var line in lines)
        {
            if (line.Pattern is not { } pattern)
            {
                continue;
            }

            book ??= new PatternBook();
            if (!book._patterns.TryGetValue(pattern.Section, out var rows))
            {
                book._patterns[pattern.Section] = rows = [];
            }

            foreach (var row in line.Rows)
            {
                foreach (var number in row.Numbers)
                {
                    rows[number] = row;
                }
            }
        }

        return book ?? Empty;
    }

    /// <summary>One row of a pattern; null where it has none of that number.</summary>
    public BoundRow? Row(StitchPattern pattern, int number)
    {
        if (!_patterns.TryGetValue(pattern.Section, out var rows))
        {
            return null;
        }

        if (rows.TryGetValue(number, out var row))
        {
            return row;
        }

        // "Row 2 and all WS rows": the rule nearest before it speaks.
        return number <= rows.LastOrDefault().Key + 1 ? rows.LastOrDefault(r => r.Value.IsRule && r.Key < number && (number - r.Key) % 2 == 0).Value : null;
    }

    /// <summary>The rows meant, all of the pattern's where no numbers are given; null, with the first number that is missing, where one has not been given.</summary>
    public List<WorkedRow>? Rows(StitchPattern pattern, ImmutableArray<int> numbers, out int? missing)
    {
        missing = null;
        if (!_patterns.TryGetValue(pattern.Section, out var given) || given.Count == 0)
        {
            return null;
        }

        var rows = new List<WorkedRow>();
        foreach (var number in numbers.IsEmpty ? Enumerable.Range(1, LastOf(given)) : numbers)
        {
            if (Row(pattern, number) is not { } row)
            {
                missing = number;
                return null;
            }

            rows.Add(new WorkedRow(row, RepeatedRows.OwnSteps(row)));
        }

        return rows;
    }

    // With "Row 2 and all WS rows", a pattern whose last printed row is 7 has 8 rows.
    private static int LastOf(SortedDictionary<int, BoundRow> rows)
    {
        var last = rows.Last().Key;
        return rows.Any(r => r.Value.IsRule && r.Key <= last && (last + 1 - r.Key) % 2 == 0) && !rows[last].IsRule ? last + 1 : last;
    }
}
