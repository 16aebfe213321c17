using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Formulas;
using PatternForge.Core.Model;

namespace PatternForge.Core.Planning;

/// <summary>The numbers of a plan in one size, by their keys.</summary>
internal sealed class PlanNumbers
{
    private readonly Dictionary<string, PerSize<Quantity?>> _values;
    private readonly Dictionary<string, string> _words;
    private readonly FormulaGauge? _gauge;
    private readonly int _size;

    /// <summary>Holds them.</summary>
    public PlanNumbers(Dictionary<string, PerSize<Quantity?>> values, Dictionary<string, string> words, FormulaGauge? gauge, int size)
    {
        _values = values;
        _words = words;
        _gauge = gauge;
        _size = size;
    }

    /// <summary>Why a number cannot be had; null while all can.</summary>
    public string? Problem { get; private set; }

    /// <summary>True where the size has no value for a key that is given: it is then not planned for.</summary>
    public bool IsLeftOut => _values.Values.Any(v => v[_size] is null);

    /// <summary>A number of stitches, or how often something is done.</summary>
    public int Count(string key, int? usual = null)
    {
        if (!_values.TryGetValue(key, out var said))
        {
            return usual ?? Missing(key);
        }

        var value = said[_size]!;
        return value.Unit.Dimension == Dimension.Length
            ? Whole(key, FromGauge(key, value, _gauge?.StitchesPerCm, "stitches"), Math.Round)
            : Whole(key, value.Value, null);
    }

    /// <summary>A number of rows; a length becomes as many as the gauge gives, in flat work an even number.</summary>
    public int Rows(string key, bool inRound = true, int? usual = null)
    {
        if (!_values.TryGetValue(key, out var said))
        {
            return usual ?? Missing(key);
        }

        var value = said[_size]!;
        return value.Unit.Dimension == Dimension.Length
            ? Whole(key, FromGauge(key, value, _gauge?.RowsPerCm, "rows"), rows => inRound ? Math.Round(rows, MidpointRounding.AwayFromZero) : 2 * Math.Round(rows / 2, MidpointRounding.AwayFromZero))
            : Whole(key, value.Value, null);
    }

    /// <summary>A length in centimetres.</summary>
    public decimal Length(string key)
    {
        if (_values.TryGetValue(key, out var said) && said[_size] is { Unit.Dimension: Dimension.Length } length)
        {
            return length.InBase;
        }

        Problem ??= $"`{key}` should be a length";
        return 1;
    }

    /// <summary>Measured points in centimetres, from the first on as far as they go: "up-1" with "width-1", "up-2" with "width-2" and so on.</summary>
    public ImmutableArray<(decimal First, decimal Second)> Points(string first, string second)
    {
        var points = ImmutableArray.CreateBuilder<(decimal, decimal)>();
        for (var i = 1; i <= PlanKind.MostPoints && (_values.ContainsKey(PlanKind.Numbered(first, i)) || _values.ContainsKey(PlanKind.Numbered(second, i))); i++)
        {
            points.Add((Length(PlanKind.Numbered(first, i)), Length(PlanKind.Numbered(second, i))));
        }

        if (points.Count < 2)
        {
            Problem ??= $"this plan wants two points at least: `{PlanKind.Numbered(first, 1)}` with `{PlanKind.Numbered(second, 1)}`, `{PlanKind.Numbered(first, 2)}` with `{PlanKind.Numbered(second, 2)}`";
        }

        return points.ToImmutable();
    }

    /// <summary>True where the gauge of stitches and of rows is known.</summary>
    public bool HasGauge => _gauge is { StitchesPerCm: not null, RowsPerCm: not null };

    /// <summary>Stitches and rows in ten centimetres.</summary>
    public (decimal Stitches, decimal Rows) Gauge()
    {
        if (_gauge is { StitchesPerCm: { } sts, RowsPerCm: { } rows })
        {
            return (sts * 10, rows * 10);
        }

        Problem ??= "this plan needs the gauge, in stitches and in rows";
        return (1, 1);
    }

    /// <summary>A word; the usual one where none is given.</summary>
    public string Word(string key, string usual) => _words.GetValueOrDefault(key, usual);

    /// <summary>One of several words; the first where none is given.</summary>
    public string Choice(string key, params ReadOnlySpan<string> words)
    {
        if (!_words.TryGetValue(key, out var said))
        {
            return words[0];
        }

        foreach (var word in words)
        {
            if (string.Equals(word, said, StringComparison.OrdinalIgnoreCase))
            {
                return word;
            }
        }

        Problem ??= $"`{key}` is {HeaderContext.Listed(words.ToArray(), "or")}, not `{HeaderContext.Short(said)}`";
        return words[0];
    }

    private int Missing(string key)
    {
        Problem ??= $"this plan wants `{key}`";
        return 0;
    }

    private decimal FromGauge(string key, Quantity length, decimal? perCm, string what)
    {
        if (perCm is { } by)
        {
            return length.InBase * by;
        }

        Problem ??= $"`{key}` is a length, and the header has no gauge of {what} to reckon by";
        return 0;
    }

    private int Whole(string key, decimal value, Func<decimal, decimal>? round)
    {
        value = round is null ? value : round(value);
        if (value != decimal.Truncate(value) || Math.Abs(value) > 1_000_000)
        {
            Problem ??= string.Create(System.Globalization.CultureInfo.InvariantCulture, $"`{key}` is {value:0.##}, and should be a whole number");
            return 0;
        }

        return (int)value;
    }
}
