using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Trials;

/// <summary>What a comparison is of.</summary>
public enum ResultKind
{
    /// <summary>Stitches or rows of a gauge.</summary>
    Gauge,

    /// <summary>Yarn used.</summary>
    Yarn,

    /// <summary>A measurement of the finished piece.</summary>
    Measurement,
}

/// <summary>One number that a test maker sent, beside the pattern's.</summary>
/// <param name="Size">The size's name.</param>
/// <param name="Maker">What the maker is called.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Which one ("MC", "bust", "stitches to 10 cm, plain").</param>
/// <param name="Told">What the pattern says, in <paramref name="Unit"/>; null where it says none.</param>
/// <param name="Got">What the maker got.</param>
/// <param name="Unit">The unit of both; empty for a count.</param>
public sealed record TestResult(string Size, string Maker, ResultKind Kind, string Name, decimal? Told, decimal Got, string Unit)
{
    /// <summary>How far it is from what the pattern says, as a share of that; null where the pattern says nothing.</summary>
    public decimal? Off => Told is > 0 and var told ? (Got - told) / told : null;

    /// <summary>What to look at, in a few words; null where it is within the tolerances.</summary>
    public string? Flag { get; init; }
}

/// <summary>A comment with its size and maker.</summary>
public sealed record TestComment(string Size, string Maker, string About, string Text);

/// <summary>What came back of a test, held against the pattern's claims.</summary>
public sealed record TestResults
{
    /// <summary>The pattern's title.</summary>
    public required string Title { get; init; }

    /// <summary>Its version; empty when not said.</summary>
    public required string Version { get; init; }

    /// <summary>How many answers there are of each size, in the order of the sizes.</summary>
    public required ImmutableArray<(string Size, int Answers)> Sizes { get; init; }

    /// <summary>The numbers, by size, kind and name.</summary>
    public required ImmutableArray<TestResult> Numbers { get; init; }

    /// <summary>Hours from the fewest to the most, by size; sizes of which nothing is said are left out.</summary>
    public required ImmutableArray<(string Size, decimal From, decimal To)> Hours { get; init; }

    /// <summary>Mistakes that were found, by the row as it is named, in the order of the pattern where it can be found there.</summary>
    public required ImmutableArray<TestComment> Errors { get; init; }

    /// <summary>Comments by section, in the order of the pattern.</summary>
    public required ImmutableArray<TestComment> Comments { get; init; }

    /// <summary>Answers to the questions, in their order.</summary>
    public required ImmutableArray<TestComment> Questions { get; init; }

    /// <summary>Holds answers against a pattern. Those with an error are left out.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="answers">What came back.</param>
    /// <param name="tolerances">How far figures may stand apart.</param>
    public static TestResults Of(Compilation pattern, IReadOnlyList<TestAnswers> answers, Tolerances? tolerances = null)
    {
        var limits = tolerances ?? Tolerances.Default;
        var names = pattern.Pattern.Facts.Sizes.Names;
        var sheets = names.Select((_, i) => TestSheet.Of(pattern, i)).ToArray();
        var read = answers.Where(a => a is { HasErrors: false, Size: not null }).Select((a, i) => (Answers: a, Maker: a.Name ?? $"maker {i + 1}", Size: a.Size!.Value)).OrderBy(a => a.Size).ToArray();
        var order = sheets[0].Sections.Select((s, i) => (s, i)).ToDictionary(p => p.s, p => p.i, StringComparer.OrdinalIgnoreCase);
        int PlaceOf(string about) => order.Where(o => about.StartsWith(o.Key, StringComparison.OrdinalIgnoreCase)).Select(o => o.Value).DefaultIfEmpty(int.MaxValue).Min();
        return new TestResults
        {
            Title = sheets[0].Title,
            Version = sheets[0].Version,
            Sizes = [.. names.Select((name, i) => (name, read.Count(r => r.Size == i)))],
            Numbers = [.. read.SelectMany(r => NumbersOf(r.Answers, r.Maker, sheets[r.Size], limits).Select(n => (r.Size, Number: n))).OrderBy(n => n.Size).ThenBy(n => n.Number.Kind).ThenBy(n => n.Number.Name, StringComparer.OrdinalIgnoreCase).Select(n => n.Number)],
            Hours = [.. read.Where(r => r.Answers.Hours is not null).GroupBy(r => r.Size).Select(g => (names[g.Key], g.Min(r => r.Answers.Hours!.Value), g.Max(r => r.Answers.Hours!.Value)))],
            Errors = [.. read.SelectMany(r => r.Answers.Errors.Select(e => new TestComment(names[r.Size], r.Maker, e.Key, e.Text))).OrderBy(e => PlaceOf(e.About)).ThenBy(e => e.About, StringComparer.OrdinalIgnoreCase)],
            Comments = [.. read.SelectMany(r => r.Answers.Comments.Select(c => new TestComment(names[r.Size], r.Maker, c.Key, c.Text))).OrderBy(c => PlaceOf(c.About))],
            Questions = [.. TestQuestion.All.SelectMany(q => read.SelectMany(r => r.Answers.Questions.Where(a => a.Key == q.Key).Select(a => new TestComment(names[r.Size], r.Maker, q.Text, a.Text))))],
        };
    }

    private static IEnumerable<TestResult> NumbersOf(TestAnswers answers, string maker, TestSheet sheet, Tolerances limits)
    {
        foreach (var got in answers.Gauges)
        {
            if (sheet.Gauges.FirstOrDefault(g => g.Key == got.Key) is not { } told)
            {
                continue;
            }

            var name = sheet.Gauges.Length > 1 ? $", {told.Key}" : "";
            if (got.Stitches is { } stitches)
            {
                yield return Flagged(new(sheet.Size, maker, ResultKind.Gauge, $"stitches{(told.Width is { } width ? $" to {width}" : "")}{name}", told.Stitches, stitches, ""), limits);
            }

            if (got.Rows is { } rows)
            {
                yield return Flagged(new(sheet.Size, maker, ResultKind.Gauge, $"{(told.AreRounds ? "rounds" : "rows")}{(told.Height is { } height ? $" to {height}" : "")}{name}", told.Rows, rows, ""), limits);
            }
        }

        foreach (var (key, grams) in answers.Yarns)
        {
            yield return Flagged(new(sheet.Size, maker, ResultKind.Yarn, key, sheet.Yarns.FirstOrDefault(y => y.Key == key)?.Grams, grams, "g"), limits);
        }

        foreach (var (key, cm) in answers.Measures)
        {
            if (sheet.Measures.FirstOrDefault(m => m.Key == key)?.Told is { } told)
            {
                yield return Flagged(new(sheet.Size, maker, ResultKind.Measurement, key, told.Value, decimal.Round(cm / told.Unit.InBase, 2), told.Unit.Symbol), limits);
            }
        }
    }

    private static TestResult Flagged(TestResult result, Tolerances limits) => result with
    {
        Flag = (result.Kind, result.Off) switch
        {
            (_, null) => null,
            (ResultKind.Yarn, > 0) when result.Got * (1 - limits.YarnShort) > result.Told => "takes more than is told",
            (ResultKind.Yarn, < 0) when result.Told > result.Got * (1 + limits.YarnOver) => "takes far less than is told",
            (ResultKind.Yarn, _) => null,
            (ResultKind.Gauge, var off) when Math.Abs(off.Value) > limits.Measurement => off > 0 ? "tighter" : "looser",
            (ResultKind.Measurement, var off) when Math.Abs(off.Value) > limits.Measurement => off > 0 ? "larger" : "smaller",
            _ => null,
        },
    };
}
