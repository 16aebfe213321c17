using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>The rows of a file's stitch patterns, by number, wherever in the file they stand.</summary>
internal sealed class PatternBook
{
    private readonly Dictionary<int, NumberedRows> _patterns = [];

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
                book._patterns[pattern.Section] = rows = new NumberedRows();
            }

            rows.Add(line);
        }

        return book ?? Empty;
    }

    /// <summary>One row of a pattern; null where it has none of that number.</summary>
    public BoundRow? Row(StitchPattern pattern, int number) => _patterns.GetValueOrDefault(pattern.Section)?.Row(number);

    /// <summary>The rows meant, all of the pattern's where no numbers are given; null, with the first number that is missing, where one has not been given.</summary>
    public List<WorkedRow>? Rows(StitchPattern pattern, ImmutableArray<int> numbers, out int? missing)
    {
        missing = null;
        if (!_patterns.TryGetValue(pattern.Section, out var given) || given.IsEmpty)
        {
            return null;
        }

        var rows = new List<WorkedRow>();
        foreach (var number in numbers.IsEmpty ? Enumerable.Range(1, given.Last) : numbers)
        {
            if (given.Row(number) is not { } row)
            {
                missing = number;
                return null;
            }

            rows.Add(new WorkedRow(row, RepeatedRows.OwnSteps(row)));
        }

        return rows;
    }
}
