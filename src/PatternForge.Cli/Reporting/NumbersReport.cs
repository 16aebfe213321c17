using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using PatternForge.Core.Model;

namespace PatternForge.Cli.Reporting;

/// <summary>The named numbers and the measurements of a header: each value, the formula that it comes of, and how far rounding moved it.</summary>
internal static class NumbersReport
{
    /// <summary>For people. A size alone where <paramref name="only"/> names one by its place, from 0; all where it is less.</summary>
    public static string Text(PatternFacts facts, int only, Paint paint)
    {
        var page = new StringBuilder();
        var names = Of(facts.Sizes.Names, only);
        if (names is not [""])
        {
            page.Append($"sizes {DisplayText.OneLine(InTradeForm(names))}\n\n");
        }

        foreach (var number in All(facts))
        {
            var values = Of(Values(number.Values, facts.Sizes.Count), only);
            var unit = UnitOf(values) is { Length: > 0 } said ? " " + said : number.From?.Kind is "stitches" or "rows" ? " " + (number.From.Kind == "stitches" ? "sts" : "rows") : "";
            page.Append($"{paint.Strong(DisplayText.OneLine(number.Name))} = {InTradeForm([.. values.Select(v => Figure(v?.Value))])}{unit}\n");
            if (number.From is not { } from)
            {
                continue;
            }

            page.Append(paint.Faint($"  from {DisplayText.OneLine(from.Formula)}")).Append('\n');
            var exact = Of(from.Exact, only);
            if (!exact.Zip(values).All(pair => pair.First?.Value == pair.Second?.Value))
            {
                var moved = Of(from.MovedCm, only);
                var by = moved.All(m => m is null) ? "" : $"; rounding moves it by {InTradeForm([.. moved.Select(m => m is { } cm ? Signed(cm) : "–")])} cm";
                page.Append(paint.Faint($"  unrounded {InTradeForm([.. exact.Select(v => Figure(v?.Value))])}{by}")).Append('\n');
            }
        }

        return page.Length == 0 || !All(facts).Any() ? page.Append("no numbers in the header\n").ToString() : page.ToString();
    }

    /// <summary>For other programs, on one line.</summary>
    public static string Json(string path, PatternFacts facts, int only) => JsonSerializer.Serialize(
        new NumbersShape(1, Words.WellFormed(path), [.. Of(facts.Sizes.Names, only).Select(Words.WellFormed)],
        [
            .. All(facts).Select(n => new NumberShape(
                Words.WellFormed(n.Room),
                Words.WellFormed(n.Name),
                n.From is null ? null : Words.WellFormed(n.From.Formula),
                n.From?.Kind,
                UnitOf(n.Values.Values),
                [.. Of(Values(n.Values, facts.Sizes.Count), only).Select(v => v?.Value)],
                n.From is null ? null : [.. Of(n.From.Exact, only).Select(v => v?.Value)],
                n.From is null ? null : [.. Of(n.From.MovedCm, only).Select(m => m is { } cm ? (decimal?)Math.Round(cm, 3) : null)])),
        ]),
        JsonReport.Shapes.NumbersShape) + "\n";

    // Measurements that stand as they are would only repeat the header.
    private static IEnumerable<(string Room, string Name, PerSize<Quantity?> Values, NumberOrigin? From)> All(PatternFacts facts) =>
        facts.Numbers.Select(n => ("numbers", n.Name, n.Values, n.WorkedFrom))
            .Concat(facts.Finished.Where(m => m.WorkedFrom is not null).Select(m => ("finished", m.Name, m.Values, m.WorkedFrom)))
            .Concat(facts.Fits.Where(m => m.WorkedFrom is not null).Select(m => ("fits", m.Name, m.Values, m.WorkedFrom)));

    private static ImmutableArray<Quantity?> Values(PerSize<Quantity?> values, int sizes) => [.. Enumerable.Range(0, sizes).Select(i => values[i])];

    private static ImmutableArray<T> Of<T>(ImmutableArray<T> values, int only) => only < 0 || values.Length <= only ? values : [values[only]];

    private static string UnitOf(ImmutableArray<Quantity?> values) => values.FirstOrDefault(v => v is not null)?.Unit.Symbol ?? "";

    private static string Figure(decimal? value) => value?.ToString("0.##", CultureInfo.InvariantCulture) ?? "–";

    private static string Signed(decimal cm) => Math.Round(cm, 1) == 0 ? "0" : cm.ToString("+0.0;−0.0", CultureInfo.InvariantCulture);

    private static string InTradeForm(IReadOnlyList<string> values) => values.Count == 1 || values.Distinct(StringComparer.Ordinal).Count() == 1 ? values[0] : $"{values[0]} ({string.Join(", ", values.Skip(1))})";
}
