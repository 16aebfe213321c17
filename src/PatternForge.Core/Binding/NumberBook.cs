using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Formulas;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>What formulas of the header may call by name, read or worked out when it is first asked for: named numbers, measurements, ease, the body of a size table, the gauge.</summary>
internal sealed class NumberBook : IFormulaScope
{
    private readonly HeaderContext _context;
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);
    private readonly NumberBook? _told;
    private readonly Dictionary<HeaderScalar, Worked> _worked = [];
    private readonly List<HeaderNode> _gaugeNodes = [];
    private readonly List<(string Room, HeaderScalar Text)> _unnamed = [];
    private ImmutableArray<Gauge>? _gauges;

    /// <summary>Looks through a header for what can be called; reads nothing yet.</summary>
    public NumberBook(HeaderContext context, IEnumerable<(string Key, HeaderEntry Entry)> entries)
    {
        _context = context;
        foreach (var (key, entry) in entries)
        {
            switch (key)
            {
                case "numbers" or "fits" or "finished" or "ease":
                    Add(key, entry.Value);
                    break;
                case "sizes" when entry.Value is HeaderMap sizes:
                    foreach (var part in sizes.Entries)
                    {
                        if (SizesBinder.PartOf(part.Name) is { } name and ("fits" or "finished" or "ease"))
                        {
                            Add(name, part.Value);
                        }
                    }

                    break;
                case "gauge":
                    _gaugeNodes.Add(entry.Value);
                    break;
            }
        }
    }

    /// <summary>The same names for formulas that stand elsewhere in the file: what is wrong with those is told there.</summary>
    public NumberBook For(HeaderContext context) => new(context, this);

    private NumberBook(HeaderContext context, NumberBook other)
    {
        _context = context;
        _entries = other._entries;
        _gaugeNodes = other._gaugeNodes;
        _unnamed = other._unnamed;
        _told = other;
        Body = other.Body;
    }

    /// <summary>The body measurements of the size table that the header names; none while none is named.</summary>
    public SizeTable? Body { get; set; }

    /// <summary>True for a text that is a formula.</summary>
    public static bool IsFormula(string text) => text.AsSpan().TrimStart() is ['=', ..];

    /// <summary>The values of a formula, one for all sizes or one a size; null where it has none, which is reported.</summary>
    /// <param name="scalar">The formula, its equals sign with it.</param>
    /// <param name="path">The key, for messages.</param>
    /// <param name="wanted">What it may measure.</param>
    public PerSize<Quantity?>? Read(HeaderScalar scalar, string path, ReadOnlySpan<Dimension> wanted)
    {
        var worked = Work(scalar);
        if (worked.HasFailed)
        {
            _context.GiveUp(path);
            return null;
        }

        foreach (var value in worked.Values)
        {
            if (value is { } v && (v.IsAnswer || v.ToQuantity() is not { } quantity || !wanted.Contains(quantity.Unit.Dimension)))
            {
                _context.GiveUp(path);
                if (!worked.IsTold)
                {
                    worked.IsTold = true;
                    var what = v.IsAnswer ? "the answer to a condition" : v.Dimensions.Words();
                    _context.Report(NumberRules.WrongMeasure, scalar.Span, $"`{path}` comes to {what}", $"here {QuantityBinder.Kind(wanted)} is wanted{(v.IsAnswer ? ": use `if(condition, a, b)`" : "")}");
                }

                return null;
            }
        }

        return Collapsed([.. worked.Values.Select(v => v?.ToQuantity())]);
    }

    /// <summary>How a formula came to its values, for those who want to see it; null for what is no formula, or has no values.</summary>
    public NumberOrigin? OriginOf(HeaderNode node)
    {
        return node is not HeaderScalar scalar || !IsFormula(scalar.Text) || Work(scalar) is not { HasFailed: false } worked ? null : new NumberOrigin(
            scalar.Text.Trim().TrimStart('=').Trim(),
            worked.Values.OfType<FormulaValue>().FirstOrDefault() is var first && worked.Values.Any(v => v is not null) ? first.Dimensions.Words() : "",
            [.. worked.Values.Select(v => v?.ToExactQuantity())],
            [.. worked.Values.Select(v => v is { } value ? Moved(value) : null)]);
    }

    /// <summary>Tells of a number of stitches or rows that is not whole in some size.</summary>
    public void CheckWhole(HeaderNode node, string name)
    {
        if (node is not HeaderScalar scalar || !IsFormula(scalar.Text) || Work(scalar) is not { HasFailed: false } worked || !Array.Exists(worked.Values, v => v is { } w && (w.Dimensions == Dimensions.OfStitches || w.Dimensions == Dimensions.OfRows) && decimal.Round(w.Value, 6) % 1 != 0))
        {
            return;
        }

        var sizes = Enumerable.Range(0, worked.Values.Length).Where(i => worked.Values[i] is { } v && decimal.Round(v.Value, 6) % 1 != 0).ToArray();
        var value = worked.Values[sizes[0]]!.Value;
        var where = _context.Sizes.Describe([sizes[0]]) is { Length: > 0 } said ? $" in {said}" : "";
        _context.Bag.Add(new Finding(NumberRules.NotWhole, _context.Source, scalar.Span, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"`{name}` comes to {value.Value:0.##} {value.Dimensions.Words()}{where}, which nobody can work"))
        {
            Sizes = sizes.Length == worked.Values.Length ? [] : [.. sizes],
            Help = "round it: `round(...)`, `round(..., even)` or `round(..., multiple 4 plus 2)`",
        });
    }

    /// <inheritdoc/>
    public int? SizeNumber(string name) => _context.Sizes.IndexOf(name) is >= 0 and var index ? index + 1 : null;

    /// <inheritdoc/>
    public (FormulaGauge? Gauge, FormulaFault? Fault) Gauge(string? name)
    {
        var gauges = Gauges();
        if (gauges.IsEmpty)
        {
            return (null, _gaugeNodes.Count > 0 || _context.HasGivenUp("gauge") || !_context.SizesKnown
                ? new(FaultKind.Told, 0, 0, "")
                : new(FaultKind.NoAnswer, 0, 0, "the header has no gauge to reckon by", "add `gauge: 20 sts and 28 rows = 10 cm in stockinette`"));
        }

        var found = name is null ? gauges[0] : gauges.FirstOrDefault(g => g.Name is { } own && KeySet.Plain(own) == KeySet.Plain(name));
        if (found is null)
        {
            var names = gauges.Select(g => g.Name).OfType<string>().ToArray();
            return (null, new(FaultKind.NameNotFound, 0, 0, $"there is no gauge named `{name}`", names.Length == 0 ? "give the gauge a `name`" : $"there {(names.Length == 1 ? "is" : "are")} {HeaderContext.Listed(names)}"));
        }

        return (new(found.StitchesPerCm, found.RowsPerCm), null);
    }

    /// <inheritdoc/>
    public NamedValue Find(string name, int size)
    {
        NameMeasurements();
        var parts = name.Split('.');
        if (KeySet.Plain(parts[0]) == "gauge" && parts.Length is 2 or 3)
        {
            return GaugeValue(name, parts);
        }

        if (parts is [var place, var own] && KeySet.Plain(place) is { } room and ("fits" or "finished" or "ease" or "numbers" or "body"))
        {
            return room == "body" ? FromBody(own, name, size) : _entries.TryGetValue($"{room}.{KeySet.Plain(own)}", out var entry) ? ValueOf(entry, name, size) : NotFound(name);
        }

        foreach (var prefix in (ReadOnlySpan<string>)["numbers", "finished", "fits"])
        {
            if (parts.Length == 1 && _entries.TryGetValue($"{prefix}.{KeySet.Plain(name)}", out var entry))
            {
                return ValueOf(entry, name, size);
            }
        }

        return parts.Length == 1 && Body?.Find(KeySet.Plain(name)) is not null ? FromBody(name, name, size) : NotFound(name);
    }

    private static PerSize<Quantity?> Collapsed(ImmutableArray<Quantity?> values) =>
        values.Length == 1 || values.All(v => v is not null && v == values[0]) ? PerSize.Shared(values[0]) : PerSize.Each(values);

    private void Add(string room, HeaderNode node)
    {
        if (node is HeaderMap map)
        {
            foreach (var entry in map.Entries)
            {
                _entries.TryAdd($"{room}.{KeySet.Plain(entry.Name)}", new Entry(entry.Name.Trim(), entry.Value));
            }
        }
        else if (room is "fits" or "finished" && node is HeaderScalar { IsBlank: false } scalar && !IsFormula(scalar.Text))
        {
            _unnamed.Add((room, scalar));
        }
    }

    // "20 cm wide, 160 cm long": the names are found when the text is read, and it is read when a formula asks, by when the sizes are known.
    private void NameMeasurements()
    {
        foreach (var (room, scalar) in _unnamed)
        {
            foreach (var measurement in SizesBinder.Measurements(Muted(), scalar, room))
            {
                _entries.TryAdd($"{room}.{KeySet.Plain(measurement.Name)}", new Entry(measurement.Name, scalar) { Values = measurement.Values });
            }
        }

        _unnamed.Clear();
    }

    private NamedValue FromBody(string measure, string name, int size)
    {
        if (Body is null)
        {
            return new(null, _context.HasGivenUp("sizes.from")
                ? new(FaultKind.Told, 0, 0, "")
                : new(FaultKind.NameNotFound, 0, 0, $"`{name}` asks for a size table, and the header names none", "name one under `sizes`: `from: women`"));
        }

        return Body.Find(KeySet.Plain(measure)) is { } values
            ? new(values[size] is { } quantity ? FormulaValue.Of(quantity) : null)
            : new(null, new(FaultKind.NameNotFound, 0, 0, $"the size table has no measurement `{measure}`", Suggest.Nearest(KeySet.Plain(measure), Body.Measures, 1) is [var near] ? $"did you mean `body.{near}`?" : $"it has {HeaderContext.Listed([.. Body.Measures])}"));
    }

    private NamedValue GaugeValue(string name, string[] parts)
    {
        var (gauge, fault) = Gauge(parts.Length == 3 ? parts[1] : null);
        if (gauge is null)
        {
            return new(null, fault);
        }

        return KeySet.Plain(parts[^1]) switch
        {
            "stitches" or "sts" when gauge.StitchesPerCm is { } sts => new(new FormulaValue(sts, Dimensions.OfStitches.Per(Dimensions.OfLength)!.Value)),
            "rows" or "rounds" or "rnds" when gauge.RowsPerCm is { } rows => new(new FormulaValue(rows, Dimensions.OfRows.Per(Dimensions.OfLength)!.Value)),
            "stitches" or "sts" or "rows" or "rounds" or "rnds" => new(null, new(FaultKind.NoAnswer, 0, 0, $"the gauge does not say what `{name}` is")),
            _ => new(null, new(FaultKind.NameNotFound, 0, 0, $"the gauge has no `{parts[^1]}`", "there are `gauge.stitches` and `gauge.rows`")),
        };
    }

    private NamedValue NotFound(string name)
    {
        var own = name.LastIndexOf('.') is >= 0 and var dot ? name[(dot + 1)..] : name;
        var known = _entries.Keys.Select(k => k[(k.IndexOf('.', StringComparison.Ordinal) + 1)..]).Concat(Body?.Measures ?? []).Distinct(StringComparer.Ordinal).ToArray();
        var split = own.IndexOf('-', StringComparison.Ordinal) is > 0 and var hyphen && known.Contains(KeySet.Plain(own[..hyphen]), StringComparer.Ordinal);
        var near = Suggest.Nearest(KeySet.Plain(own), known, 1);
        return new(null, new(FaultKind.NameNotFound, 0, 0, $"nothing in the header is called `{name}`",
            split ? "is the hyphen a minus? write it with blanks around it" : near.Count > 0 ? $"did you mean `{near[0]}`?" : "define it under `numbers`"));
    }

    private NamedValue ValueOf(Entry entry, string name, int size)
    {
        if (entry.Node is HeaderScalar scalar && IsFormula(scalar.Text))
        {
            if (entry.IsOpen)
            {
                return new(null, new(FaultKind.Circle, 0, 0, $"`{entry.Name}` is worked out from itself", "give one of the numbers of the circle a value of its own"));
            }

            entry.IsOpen = true;
            var worked = (_told ?? this).Work(scalar);
            entry.IsOpen = false;
            return worked.HasFailed ? new(null, worked.Circle ?? new(FaultKind.Told, 0, 0, "")) : new(worked.Values[size] is { } value ? value with { Exact = value.Value } : null);
        }

        entry.Values ??= QuantityBinder.Read(Muted(), entry.Node, name, Dimension.Count, Dimension.Length, Dimension.YarnLength, Dimension.Mass);
        return entry.Values is { } values
            ? new(values.IsShared || size < values.Values.Length ? values[size] is { } said ? FormulaValue.Of(said) : null : null)
            : new(null, new(FaultKind.Told, 0, 0, ""));
    }

    private Worked Work(HeaderScalar scalar)
    {
        if (_worked.TryGetValue(scalar, out var known))
        {
            return known;
        }

        if (_worked.Count > 2_000 || _depth > 64)
        {
            return new([]) { HasFailed = true };
        }

        var offset = IsFormula(scalar.Text) ? scalar.Text.IndexOf('=', StringComparison.Ordinal) + 1 : 0;
        var (formula, fault) = FormulaParser.Read(scalar.Text[offset..]);
        var values = new FormulaValue?[_context.Sizes.Count];
        var size = 0;
        _depth++;
        for (; fault is null && size < values.Length; size++)
        {
            var worker = new FormulaWorker(this, size);
            values[size] = worker.Work(formula!);
            fault = worker.Fault;
        }

        _depth--;
        var worked = new Worked(values) { HasFailed = fault is not null };
        if (fault is { Kind: FaultKind.Circle } && _depth > 0)
        {
            // The circle is told once, where it was entered.
            return worked with { Circle = fault };
        }

        if (fault is not null && fault.Kind != FaultKind.Told)
        {
            Tell(scalar, offset, fault, size);
        }

        _worked[scalar] = worked;
        return worked;
    }

    private int _depth;

    private void Tell(HeaderScalar scalar, int offset, FormulaFault fault, int size)
    {
        var rule = fault.Kind switch
        {
            FaultKind.NotUnderstood => NumberRules.NotUnderstood,
            FaultKind.NameNotFound => NumberRules.NameNotFound,
            FaultKind.Circle => NumberRules.Circle,
            FaultKind.UnitsDiffer => NumberRules.UnitsDiffer,
            _ => NumberRules.NoAnswer,
        };
        var where = fault.Kind == FaultKind.NoAnswer && _context.Sizes.Describe([size - 1]) is { Length: > 0 } said ? $" (in {said})" : "";
        _context.Report(rule, scalar.SpanOf(offset + fault.Start, Math.Max(1, fault.Length)), fault.Message + where, fault.Help);
    }

    // How far rounding moved a value, in centimetres: stitches and rows by the first gauge.
    private decimal? Moved(FormulaValue value)
    {
        var by = value.Value - value.Exact;
        var gauge = Gauges() is [var first, ..] ? first : null;
        return value.Dimensions switch
        {
            var d when d == Dimensions.OfLength => by,
            var d when d == Dimensions.OfStitches && gauge?.StitchesPerCm is { } sts and > 0 => by / sts,
            var d when d == Dimensions.OfRows && gauge?.RowsPerCm is { } rows and > 0 => by / rows,
            _ => null,
        };
    }

    private ImmutableArray<Gauge> Gauges()
    {
        if (_gauges is null)
        {
            var facts = new PatternFacts();
            foreach (var node in _gaugeNodes)
            {
                facts = GaugeBinder.Bind(Muted(), node, facts);
            }

            _gauges = facts.Gauges;
        }

        return _gauges.Value;
    }

    /// <summary>The header read without a word: what is wrong in it is told where it is bound.</summary>
    private HeaderContext Muted() => new(_context.Source, new FindingBag(_context.Source)) { Sizes = _context.Sizes, SizesKnown = _context.SizesKnown, Numbers = this };

    private sealed record Entry(string Name, HeaderNode Node)
    {
        public PerSize<Quantity?>? Values { get; set; }

        public bool IsOpen { get; set; }
    }

    private sealed record Worked(FormulaValue?[] Values)
    {
        public bool HasFailed { get; init; }

        public FormulaFault? Circle { get; init; }

        public bool IsTold { get; set; }
    }
}
