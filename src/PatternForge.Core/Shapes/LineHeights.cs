using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>How high a piece is after each of its lines, in one size: by its rows and the gauge, or by a length that the line tells.</summary>
internal sealed class LineHeights
{
    private readonly Gauge _gauge;
    private readonly int _size;
    private readonly int _sizes;

    public LineHeights(Gauge gauge, int size, int sizes) => (_gauge, _size, _sizes) = (gauge, size, sizes);

    /// <summary>True for the foot of a sock, which is measured from the back of its heel.</summary>
    public bool IsFoot { get; init; }

    /// <summary>The height after a line, in centimetres; null where that is not known.</summary>
    /// <param name="line">The line.</param>
    /// <param name="height">The height before it.</param>
    /// <param name="section">Where its heading begins.</param>
    /// <param name="armhole">Where the armhole or the underarm is; null where there is none yet.</param>
    public decimal? After(ShapedLine line, decimal height, decimal section, decimal? armhole)
    {
        var worked = line.Worked;
        if (!worked.Rows.IsEmpty && worked.Rows[_size] is { } rows)
        {
            return ByRows(height, rows);
        }

        var steps = line.Bound.Rows.SelectMany(r => r.Steps).OfType<RowsStep>().ToArray();
        var before = worked.Before[_size] ?? 0;
        if (steps is [ShapingStep shaping] && line.Bound.Rows.Length == 1)
        {
            return RowsOfShaping.Of(shaping, _size, before, worked.Text) is { } some ? ByRows(height, some) : null;
        }

        int[] told = [.. Enumerable.Range(0, worked.After.Length).Where(i => worked.After[i] is not null)];
        if (steps.Length > 0 && steps.All(s => s is RepeatRowsStep { WithPlainRows: true }) && RowsOfShaping.OfLists(worked.Text, Array.IndexOf(told, _size), told.Length) is { } inAll)
        {
            return ByRows(height, inAll);
        }

        if (steps is [RepeatRowsStep { WithPlainRows: true, Until: RowsUntil.Times } repeat] && RowsOfShaping.Pace(worked.Text) is { } pace && repeat.Value?[_size] is { } times)
        {
            return ByRows(height, pace * times);
        }

        if (steps.Length == 0 || LengthWords.Read(worked.Text) is not { } length || length.In(_size, _sizes) is not { } cm)
        {
            return null;
        }

        return length.From switch
        {
            LengthFrom.Armhole => armhole + cm,
            LengthFrom.Section => section + cm,
            LengthFrom.Here => height + cm,
            LengthFrom.Heel => IsFoot ? cm : null,
            LengthFrom.Sole => null,
            _ => cm,
        };
    }

    private decimal? ByRows(decimal height, int rows) => rows == 0 ? height : height + _gauge.Along(rows);
}
