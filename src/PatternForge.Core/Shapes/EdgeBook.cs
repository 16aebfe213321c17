using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>By how many stitches a line moves the two edges outwards; negative inwards.</summary>
internal readonly record struct EdgeMoves(decimal Left, decimal Right, bool IsParted);

/// <summary>Tells at which edge each line is shaped, and remembers it for rows that are worked again.</summary>
internal sealed class EdgeBook
{
    private readonly List<EdgeMoves> _last = [];
    private readonly Dictionary<int, EdgeMoves> _numbered = [];
    private readonly Dictionary<string, EdgeMoves> _named = new(StringComparer.Ordinal);

    /// <summary>What a line does to the edges; null where that is not plain.</summary>
    /// <param name="line">The line.</param>
    /// <param name="size">The size.</param>
    /// <param name="before">Stitches before it.</param>
    /// <param name="after">Stitches after it.</param>
    /// <param name="side">The side that its first row is worked on; null where not known.</param>
    /// <param name="isLeft">True for the left of two parts, false for the right; null for the whole.</param>
    public EdgeMoves? Of(ShapedLine line, int size, int before, int after, FabricSide? side, bool? isLeft)
    {
        decimal change = after - before;
        if (line.Bound.Rows.Length == 0 || line.Bound.Rows.All(r => r.Steps.IsEmpty))
        {
            return change == 0 ? default(EdgeMoves) : null;
        }

        var (left, right, parted, known) = (0m, 0m, false, true);
        foreach (var row in line.Bound.Rows)
        {
            var at = row.Side ?? side;
            var moves = row.Steps.FirstOrDefault(s => s is RowsStep) switch
            {
                null => ByRow(row, size, before, at, change),
                ShapingStep => ByWords(line.Worked.Text, change, at, isLeft),
                RepeatRowsStep repeat => Again(repeat, size),
                _ => change == 0 ? default(EdgeMoves) : null,
            };
            known &= moves is not null;
            var some = moves ?? default;
            (left, right, parted) = (left + some.Left, right + some.Right, parted || some.IsParted);
            Remember(row, some);
            side = side is null ? null : side == FabricSide.Right ? FabricSide.Wrong : FabricSide.Right;
        }

        if (change == 0)
        {
            return new EdgeMoves(0, 0, false);
        }

        if (!known)
        {
            return null;
        }

        var sum = left + right;
        return parted || sum == change ? new EdgeMoves(left, right, parted)
            : left == right ? new EdgeMoves(change / 2, change / 2, false)
            : sum == 0 ? null
            : new EdgeMoves(change * left / sum, change * right / sum, false);
    }

    private void Remember(BoundRow row, EdgeMoves moves)
    {
        foreach (var number in row.Numbers)
        {
            _numbered[number] = moves;
        }

        if (row.Name is { } name)
        {
            _named[name] = moves;
        }

        // Rows that are worked even by a number count as one each, as far back as a repeat can reach.
        var times = row.Steps.OfType<EvenRowsStep>().FirstOrDefault()?.Rows?.Values.Values.Max() ?? Math.Max(1, row.IsRange ? row.Numbers.Length : 1);
        for (var i = 0; i < Math.Min(times, 100); i++)
        {
            _last.Add(moves);
        }
    }

    private EdgeMoves? Again(RepeatRowsStep repeat, int size)
    {
        if (repeat.Last is { } last)
        {
            var rows = Math.Min(last[size] ?? 0, _last.Count);
            return Sum(_last.GetRange(_last.Count - rows, rows));
        }

        if (repeat.Name is { } name)
        {
            return _named.TryGetValue(name, out var moves) ? moves : null;
        }

        return repeat.Numbers.IsEmpty || repeat.Numbers.Any(n => !_numbered.ContainsKey(n)) ? repeat.Pattern is not null ? default(EdgeMoves) : null : Sum([.. repeat.Numbers.Select(n => _numbered[n])]);
    }

    private static EdgeMoves Sum(List<EdgeMoves> rows) => new(rows.Sum(r => r.Left), rows.Sum(r => r.Right), rows.Exists(r => r.IsParted));

    private static EdgeMoves? ByRow(BoundRow row, int size, int before, FabricSide? side, decimal change)
    {
        if (EdgeShares.Of(row.Steps, size, before) is not { } shares)
        {
            return change == 0 ? default(EdgeMoves) : Crochet(row, size, change) ?? CrochetEnds(row, change, side);
        }

        if (shares.IsParted)
        {
            return new EdgeMoves(0, 0, true);
        }

        // Worked in several rows or on both sides, what one edge loses the other loses in the next row.
        var rows = row.Count is { } count ? count[size] ?? 1 : row.IsRange ? row.Numbers.Length : 1;
        var (start, end) = (shares.Start + (shares.Between / 2), shares.End + (shares.Between / 2));
        if (start == end || (rows > 1 && rows % 2 == 0))
        {
            return new EdgeMoves((start + end) * rows / 2, (start + end) * rows / 2, false);
        }

        return rows > 1 ? null : side switch
        {
            FabricSide.Right => new EdgeMoves(end, start, false),
            FabricSide.Wrong => new EdgeMoves(start, end, false),
            _ => null,
        };
    }

    /// <summary>Crochet that goes past stitches with slip stitches at one end and leaves as many at the other.</summary>
    private static EdgeMoves? Crochet(BoundRow row, int size, decimal change)
    {
        var leaves = row.Steps.Any(s => s is LeaveStep);
        var past = row.Steps.OfType<CrochetStep>().FirstOrDefault(s => s.Operation.Height == 0);
        var passed = past is null ? 0 : past.Place?.Count is { } stitches ? stitches[size] ?? 0 : 1;
        return leaves && passed > 0 && Math.Abs((-change / 2) - passed) <= 1 ? new EdgeMoves(change / 2, change / 2, false) : null;
    }

    /// <summary>A crochet row that is narrower by its first or last stitches alone: those that are worked together there.</summary>
    private static EdgeMoves? CrochetEnds(BoundRow row, decimal change, FabricSide? side)
    {
        CrochetStep[] work = [.. row.Steps.OfType<CrochetStep>().Where(s => s.Operation.Height is null or > 0)];
        if (change >= 0 || work.Length < 2 || work[1..^1].Any(Narrows) || row.Steps.Any(s => s is LeaveStep) || row.Count is not null || row.IsRange)
        {
            return null;
        }

        return (Narrows(work[0]), Narrows(work[^1])) switch
        {
            (true, true) when work.Length > 2 => new EdgeMoves(change / 2, change / 2, false),
            (true, false) when side is { } first => first == FabricSide.Right ? new EdgeMoves(0, change, false) : new EdgeMoves(change, 0, false),
            (false, true) when side is { } last => last == FabricSide.Right ? new EdgeMoves(change, 0, false) : new EdgeMoves(0, change, false),
            _ => null,
        };
    }

    private static bool Narrows(CrochetStep step) => step.Operation.Takes > step.Operation.Makes;

    private static EdgeMoves? ByWords(string text, decimal change, FabricSide? side, bool? isLeft)
    {
        bool Says(string words) => text.Contains(words, StringComparison.OrdinalIgnoreCase);
        if (Says("each end") || Says("each side") || Says("both ends") || Says("both sides") || Says("each edge") || Says("beg and end") || Says("beginning and end") || Says("both edges"))
        {
            return new EdgeMoves(change / 2, change / 2, false);
        }

        if (isLeft is { } part && (Says("neck edge") || Says("armhole edge") || Says("shoulder edge")))
        {
            return Says("neck edge") == part ? new EdgeMoves(0, change, false) : new EdgeMoves(change, 0, false);
        }

        var isStart = Says("at beg") || Says("at the beg");
        if (isStart && Says("rows") && EvenRows(text))
        {
            return new EdgeMoves(change / 2, change / 2, false);
        }

        if (!isStart && !Says("at end") && !Says("at the end"))
        {
            return null;
        }

        side = text.Contains("RS", StringComparison.Ordinal) ? FabricSide.Right : text.Contains("WS", StringComparison.Ordinal) ? FabricSide.Wrong : side;
        return side is not { } known ? null : (known == FabricSide.Right) == isStart ? new EdgeMoves(0, change, false) : new EdgeMoves(change, 0, false);
    }

    /// <summary>"next 2 rows", "next 4 rows": as many begin at one edge as at the other.</summary>
    private static bool EvenRows(string text)
    {
        var words = text.Split([' ', ',', '(', ')', '.'], StringSplitOptions.RemoveEmptyEntries);
        var some = false;
        for (var i = 1; i < words.Length; i++)
        {
            if (words[i] is "rows")
            {
                some = true;
                if (!int.TryParse(words[i - 1], System.Globalization.CultureInfo.InvariantCulture, out var rows) || rows % 2 != 0)
                {
                    return false;
                }
            }
        }

        return some;
    }
}
