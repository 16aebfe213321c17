using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using PatternForge.Core.Model;

namespace PatternForge.Cli.Reporting;

/// <summary>What each size takes of each yarn: by stitches and by area, with the margin, in balls and in other yarns, and how it was found.</summary>
internal static class YarnReport
{
    private const string None = "–";

    /// <summary>For people. A size alone where <paramref name="only"/> names one by its place, from 0; all where it is less.</summary>
    public static string Text(PatternFacts facts, YarnEstimate estimate, int only, Paint paint)
    {
        var page = new StringBuilder();
        for (var i = 0; i < estimate.Yarns.Length; i++)
        {
            var (yarn, found) = (facts.Yarns[i], estimate.Yarns[i]);
            page.Append(page.Length > 0 ? "\n" : "").Append(paint.Strong(DisplayText.OneLine(NameOf(yarn)))).Append('\n');
            if (found.Method is not { } method)
            {
                page.Append($"  no estimate: {DisplayText.OneLine(found.Reason ?? "nothing is known")}\n");
                continue;
            }

            AppendTable(page, facts, estimate, i, only, paint);
            page.Append(paint.Faint($"  from {DisplayText.OneLine(method.Method)}; likely error {Percent(method.LikelyError)}")).Append('\n');
        }

        if (estimate.NoArea is { } reason && estimate.Yarns.Any(y => y.Method is not null))
        {
            page.Append('\n').Append(paint.Faint($"not by area: {DisplayText.OneLine(reason)}")).Append('\n');
        }

        return page.Length == 0 ? "the header has no yarn\n" : page.ToString();
    }

    /// <summary>For other programs, on one line.</summary>
    public static string Json(string path, PatternFacts facts, YarnEstimate estimate, int only) => JsonSerializer.Serialize(
        new YarnsShape(1, Words.WellFormed(path), [.. Of(facts.Sizes.Names, only).Select(Words.WellFormed)], estimate.Margin, [.. Of(estimate.AreasCm2, only).Select(a => Math.Round(a, 1))],
        [
            .. estimate.Yarns.Select((y, i) => new YarnShape(
                facts.Yarns[i].Name is { } name ? Words.WellFormed(name) : null,
                facts.Yarns[i].Label is { } label ? Words.WellFormed(label) : null,
                y.Method is null ? null : BasisOf(y.Method.Basis),
                y.Method is null ? null : Words.WellFormed(y.Method.Method),
                y.Method?.LikelyError,
                y.Reason is null ? null : Words.WellFormed(y.Reason),
                [.. Of(y.Sizes, only).Select(s => new YarnSizeShape(Whole(s.Stitches), One(s.Weighted), One(s.Grams), One(s.Metres), One(s.GramsByArea), One(s.MetresByArea), One(s.SafeGrams), One(s.SafeMetres), s.Balls,
                    [.. s.Alternatives.Select(a => new AlternativeShape(Words.WellFormed(a.Name), Math.Round(a.Grams, 1), a.Balls))]))])),
        ]),
        JsonReport.Shapes.YarnsShape) + "\n";

    private static void AppendTable(StringBuilder page, PatternFacts facts, YarnEstimate estimate, int yarn, int only, Paint paint)
    {
        var sizes = Of(estimate.Yarns[yarn].Sizes, only);
        var names = Of(facts.Sizes.Names, only);
        var margin = Percent(estimate.Margin);
        var ball = facts.Yarns[yarn] is { PutUpMass: { } mass, PutUpLength: { } length } ? $"balls of {mass} = {length}" : "balls";
        var rows = new List<(string Name, string[] Cells)>();
        if (names is not [""])
        {
            rows.Add(("", [.. names.Select(DisplayText.OneLine)]));
        }

        void Row(string name, Func<SizeAmount, decimal?> read)
        {
            if (sizes.Any(s => read(s) is not null))
            {
                rows.Add((name, [.. sizes.Select(s => read(s) is { } value ? Math.Round(value).ToString("0", CultureInfo.InvariantCulture) : None)]));
            }
        }

        Row("stitches", s => s.Stitches);
        if (sizes.Any(s => s.Weighted != s.Stitches))
        {
            Row("in shortest stitches", s => s.Weighted);
        }

        var main = sizes.Any(s => s.Stitches is not null) ? "by stitches" : "by area";
        Row($"{main}, g", s => s.Grams);
        Row($"{main}, m", s => s.Metres);
        Row("by area, g", s => main == "by area" ? null : s.GramsByArea);
        Row("by area, m", s => main == "by area" ? null : s.MetresByArea);
        Row($"with {margin} more, g", s => Up(s.SafeGrams));
        Row($"with {margin} more, m", s => Up(s.SafeMetres));
        Row(ball, s => s.Balls);
        for (var i = 0; i < facts.Yarns[yarn].Alternatives.Length; i++)
        {
            var other = facts.Yarns[yarn].Alternatives[i];
            Row($"{other.Name}, g", s => Up(s.Alternatives.FirstOrDefault(a => a.Name == other.Name)?.Grams));
            Row($"{other.Name}, balls of {other.PutUpMass} = {other.PutUpLength}", s => s.Alternatives.FirstOrDefault(a => a.Name == other.Name)?.Balls);
        }

        var first = rows.Max(r => DisplayText.Width(r.Name));
        var widths = Enumerable.Range(0, sizes.Length).Select(c => rows.Max(r => DisplayText.Width(r.Cells[c]))).ToArray();
        foreach (var (name, cells) in rows)
        {
            var line = new StringBuilder("  ").Append(name).Append(' ', first - DisplayText.Width(name));
            for (var c = 0; c < cells.Length; c++)
            {
                line.Append(' ', 2 + widths[c] - DisplayText.Width(cells[c])).Append(cells[c]);
            }

            page.Append(name.Length == 0 ? paint.Faint(line.ToString()) : line.ToString()).Append('\n');
        }
    }

    private static string NameOf(Yarn yarn) => (yarn.Name, yarn.Label) switch
    {
        ({ } name, { } label) => $"{label}: {name}",
        ({ } name, null) => name,
        (null, { } label) => label,
        _ => "yarn",
    };

    private static string BasisOf(AmountBasis basis) => basis switch
    {
        AmountBasis.Sample => "sample",
        AmountBasis.Swatch => "swatch",
        _ => "published",
    };

    private static ImmutableArray<T> Of<T>(ImmutableArray<T> values, int only) => only < 0 || values.Length <= only ? values : [values[only]];

    private static string Percent(decimal share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.#} %");

    private static decimal? Up(decimal? value) => value is { } v ? Math.Ceiling(Math.Round(v, 6)) : null;

    private static decimal? Whole(decimal? value) => value is { } v ? Math.Round(v) : null;

    private static decimal? One(decimal? value) => value is { } v ? Math.Round(v, 1) : null;
}
