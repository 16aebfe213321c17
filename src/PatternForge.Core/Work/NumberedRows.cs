using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Rows by their numbers, as the lines of a section give them: one by one, several at a time, or once for all that are not given themselves.</summary>
internal sealed class NumberedRows
{
    private readonly SortedDictionary<int, BoundRow> _rows = [];
    private BoundRow? _others;

    /// <summary>True when no row has been given.</summary>
    public bool IsEmpty => _rows.Count == 0;

    /// <summary>The number of the first row.</summary>
    public int First => _rows.First().Key;

    /// <summary>The number of the last row; with "Row 2 and all WS rows", a pattern whose last printed row is 7 has 8 rows.</summary>
    public int Last
    {
        get
        {
            var (last, row) = _rows.Last();
            var speaks = _rows.Any(r => r.Value.IsRule && r.Key <= last && (last + 1 - r.Key) % 2 == 0) || (_others is not null && (last - First) % 2 == 0);
            return speaks && !row.IsRule ? last + 1 : last;
        }
    }

    /// <summary>Adds the rows of a line.</summary>
    public void Add(BoundLine line)
    {
        foreach (var row in line.Rows)
        {
            Add(row);
        }
    }

    /// <summary>Adds one row.</summary>
    public void Add(BoundRow row)
    {
        _others = row.SpeaksForOthers && row.Numbers.IsEmpty ? row : _others;
        foreach (var number in row.Numbers)
        {
            _rows[number] = row;
        }
    }

    /// <summary>The row of a number; null where there is none: given itself, else by the rule nearest before it, else by the one for all others.</summary>
    public BoundRow? Row(int number)
    {
        if (_rows.TryGetValue(number, out var row))
        {
            return row;
        }

        // "Row 2 and all WS rows": the rule nearest before it speaks.
        return IsEmpty || number > _rows.Last().Key + 1 ? null : _rows.LastOrDefault(r => r.Value.IsRule && r.Key < number && (number - r.Key) % 2 == 0).Value ?? _others;
    }
}
