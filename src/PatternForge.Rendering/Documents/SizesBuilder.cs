using System.Collections.Immutable;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the sizes and their measurements.</summary>
internal static class SizesBuilder
{
    /// <summary>The sizes; null when the pattern says nothing of them.</summary>
    public static SizesView? Build(PatternFacts facts, UnitSystem? only = null)
    {
        ImmutableArray<MeasureView> measures =
        [
            .. facts.Fits.Select(m => Measure("To fit", m, facts.Sizes.Count, only)),
            .. facts.Finished.Select(m => Measure("Finished", m, facts.Sizes.Count, only)),
        ];
        var ease = Wording.WithMinus(UnitWords.In(only, Wording.Said(facts.Ease)));
        var sample = string.Join(" ", new[] { Sample(facts.Sample, facts.Sizes, only), Swatch(facts.Swatch, only) }.OfType<string>()) is { Length: > 0 } told ? told : null;
        var list = List(facts.Sizes);
        var shown = Shown(facts.Shown, only);
        var notes = Notes(facts, only);
        if (measures.IsEmpty && ease is null && sample is null && shown is null && notes.IsEmpty && list.Length == 0)
        {
            return null;
        }

        return new SizesView
        {
            Names = facts.Sizes.Names,
            List = list,
            Count = facts.Sizes.Count,
            InOne = only is not null,
            Sentences = [.. facts.Sizes.Names.Select((_, i) => Sentence(facts.Sizes.Count > 1 ? NameOf(facts.Sizes, i) : "", i, measures)).Where(s => s.Length > 0)],
            Measures = measures,
            Rows = [.. facts.Sizes.Names.Select((_, i) => new SizeRowView { Size = NameOf(facts.Sizes, i), Cells = [.. measures.Select(m => m.Cells[i])] })],
            Ease = ease,
            Sample = sample,
            Shown = shown,
            Notes = notes,
        };
    }

    /// <summary>The sizes' names in trade form; empty for one size without a name.</summary>
    public static string List(SizeSet sizes)
    {
        var names = sizes.Count == 1 ? sizes.Names[0] : $"{sizes.Names[0]} ({string.Join(", ", sizes.Names.Skip(1))})";
        return names.Length == 0 || sizes.Word is null ? names : $"{names} {sizes.Word}";
    }

    /// <summary>The name of one size, with the word that all of them share: "4 years".</summary>
    public static string NameOf(SizeSet sizes, int size) =>
        sizes.Word is { } word && sizes.Names[size].Length > 0 ? $"{sizes.Names[size]} {word}" : sizes.Names[size];

    private static string Sentence(string size, int index, ImmutableArray<MeasureView> measures)
    {
        var parts = measures.Where(m => m.Cells[index].Metric != Wording.None)
            .Select(m => $"{m.Kind.ToLowerInvariant()} {m.Name}: {m.Cells[index].Metric} {m.MetricUnit}".TrimEnd() + (m.Cells[index].Imperial is { } other ? $", which is {other} {m.ImperialUnit}" : ""));
        return string.Join("; ", parts) is { Length: > 0 } said ? size.Length > 0 ? $"Size {size}: {said}." : Wording.Capital(said) + "." : "";
    }

    /// <summary>"Bust: measured over Back + Front.", and what seams and bands take.</summary>
    private static ImmutableArray<string> Notes(PatternFacts facts, UnitSystem? only)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        foreach (var measured in facts.Measured)
        {
            var gauge = Wording.Said(measured.Gauge) is { } named ? $", in the gauge of {named}" : "";
            notes.Add($"{Wording.Capital(measured.Name)}: measured over {measured.Said}{gauge}.");
        }

        if (facts.Seam is { } seam)
        {
            notes.Add(seam == 0 ? "No stitches go into seams." : $"{Wording.Number(seam)} {(seam == 1 ? "stitch goes" : "stitches go")} into the seam at each edge.");
        }

        if (facts.BandOverlap is { } overlap && overlap.Values.Any(q => q is not null))
        {
            var values = Enumerable.Range(0, facts.Sizes.Count).Select(i => At(overlap, i) is { } q ? Measures.Both(q, only) : Wording.None).ToArray();
            notes.Add($"The front bands overlap by {(overlap.IsShared ? values[0] : Wording.TradeForm([.. values]))}.");
        }

        return notes.ToImmutable();
    }

    private static MeasureView Measure(string kind, Measurement measurement, int sizes, UnitSystem? only)
    {
        var values = Enumerable.Range(0, sizes).Select(i => At(measurement.Values, i)).ToArray();
        var unit = values.FirstOrDefault(q => q is not null)?.Unit;
        var metric = unit is null ? null : only is { } system ? TradeSteps.In(system, unit) : Measures.Metric(unit);
        var imperial = unit is null || only is not null ? null : Measures.Imperial(unit);
        var cells = values.Select(q => Cell(q, metric, imperial)).ToImmutableArray();
        return new MeasureView
        {
            Kind = kind,
            Name = Wording.Words(measurement.Name),
            MetricUnit = metric?.Symbol ?? "",
            ImperialUnit = imperial?.Symbol,
            Metric = $"{Wording.TradeForm([.. cells.Select(c => c.Metric)])} {metric?.Symbol}".TrimEnd(),
            Imperial = imperial is null ? null : $"{Wording.TradeForm([.. cells.Select(c => c.Imperial ?? Wording.None)])} {imperial.Symbol}",
            Cells = cells,
        };
    }

    /// <summary>A size's value; null where a list is too short (a finding says so elsewhere).</summary>
    internal static T? At<T>(PerSize<T?> values, int size)
        where T : class => values.IsShared || size < values.Values.Length ? values[size] : null;

    private static CellView Cell(Quantity? quantity, Unit? metric, Unit? imperial)
    {
        if (quantity is null || metric is null)
        {
            return new CellView { Metric = Wording.None, Imperial = imperial is null ? null : Wording.None };
        }

        if (quantity.Unit.Dimension != metric.Dimension)
        {
            return new CellView { Metric = quantity.ToString().TrimEnd(), Imperial = imperial is null ? null : Wording.None };
        }

        return new CellView { Metric = Measures.Number(quantity, metric), Imperial = imperial is null ? null : Measures.Number(quantity, imperial) };
    }

    private static string? Shown(Shown? shown, UnitSystem? only)
    {
        var size = Wording.Said(shown?.Size);
        var ease = Wording.WithMinus(UnitWords.In(only, Wording.Said(shown?.Ease))) is not { } said ? null : said.Contains("ease", StringComparison.OrdinalIgnoreCase) ? said : $"{said} of ease";
        return (size, ease) switch
        {
            (null, null) => null,
            ({ } s, null) => $"The photos show size {s}.",
            (null, { } e) => $"In the photos the piece is worn with {e}.",
            ({ } s, { } e) => $"The photos show size {s}, worn with {e}.",
        };
    }

    private static string? Sample(Sample? sample, SizeSet sizes, UnitSystem? only)
    {
        var size = sizes.Count > 1 ? Wording.Said(sample?.Size) : null; // where there is one size, there is nothing to tell apart
        var used = sample?.UsedBy is { IsDefaultOrEmpty: false } by ? Listed(by, only) : sample?.Used is { } q ? Measures.Both(q, only) + " of yarn" : null;
        return (size, used) switch
        {
            (null, null) => null,
            ({ } s, null) => $"The sample shown is size {s}.",
            (null, { } u) => $"The sample took {u}.",
            ({ } s, { } u) => $"The sample shown is size {s} and took {u}.",
        };
    }

    private static string? Swatch(Swatch? swatch, UnitSystem? only)
    {
        var weighs = swatch?.WeighsBy is { IsDefaultOrEmpty: false } by ? Listed(by, only) : swatch?.Weighs is { } q ? Measures.Both(q, only) + " of yarn" : null;
        if (swatch is null || weighs is null)
        {
            return null;
        }

        var size = swatch is { Width: { } width, Height: { } height } ? $" of {Measures.Both(width, only)} by {Measures.Both(height, only)}" : "";
        var stitches = swatch is { Stitches: { } across, Rows: { } along } ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{(size.Length > 0 ? "," : " of")} {across:0.##} stitches and {along:0.##} rows{(size.Length > 0 ? "," : "")}") : "";
        return $"A swatch{size}{stitches} took {weighs}.";
    }

    /// <summary>"300 g (10½ oz) of A and 112 g (4 oz) of B".</summary>
    private static string Listed(ImmutableArray<YarnUsed> used, UnitSystem? only)
    {
        string[] parts = [.. used.Select(u => $"{Measures.Both(u.Amount, only)} of {Wording.Said(u.Label) ?? "yarn"}")];
        return parts.Length == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";
    }
}
