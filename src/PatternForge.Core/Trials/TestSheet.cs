using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Trials;

/// <summary>A gauge that a test maker is asked for.</summary>
/// <param name="Key">What it goes by in the answers: its name, or "gauge".</param>
/// <param name="Stitch">The stitch pattern it is measured in; null when not said.</param>
/// <param name="Stitches">Stitches told; null when not said.</param>
/// <param name="Width">What they are told over; null when not said.</param>
/// <param name="Rows">Rows told; null when not said.</param>
/// <param name="Height">What they are told over; null when not said.</param>
/// <param name="AreRounds">True for rounds.</param>
/// <param name="Tool">The needle or hook told; null when not said.</param>
public sealed record AskedGauge(string Key, string? Stitch, decimal? Stitches, Quantity? Width, decimal? Rows, Quantity? Height, bool AreRounds, string? Tool);

/// <summary>A yarn of which a test maker is asked how much was used.</summary>
/// <param name="Key">What it goes by in the answers: its letters, its name, or "yarn".</param>
/// <param name="Name">Its name.</param>
/// <param name="Needs">The amount told for the size, as written; null when not said.</param>
/// <param name="Grams">The same in grams, by the put-up where it is told as a length or in balls; null where that cannot be told.</param>
public sealed record AskedYarn(string Key, string Name, Quantity? Needs, decimal? Grams);

/// <summary>A measurement of the finished piece that a test maker is asked for.</summary>
/// <param name="Key">Its name.</param>
/// <param name="Told">What the pattern says of the size.</param>
public sealed record AskedMeasure(string Key, Quantity Told);

/// <summary>What a test maker of one size is told and asked.</summary>
public sealed record TestSheet
{
    /// <summary>The pattern's title; "Untitled pattern" when it has none.</summary>
    public required string Title { get; init; }

    /// <summary>Its version; empty when not said.</summary>
    public required string Version { get; init; }

    /// <summary>The size's name; empty where there is one without a name.</summary>
    public required string Size { get; init; }

    /// <summary>The gauges.</summary>
    public required ImmutableArray<AskedGauge> Gauges { get; init; }

    /// <summary>The yarns.</summary>
    public required ImmutableArray<AskedYarn> Yarns { get; init; }

    /// <summary>The finished measurements.</summary>
    public required ImmutableArray<AskedMeasure> Measures { get; init; }

    /// <summary>The headings under which there is something to work.</summary>
    public required ImmutableArray<string> Sections { get; init; }

    /// <summary>The sheet of a size.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="size">The size, by its number from 0.</param>
    public static TestSheet Of(Compilation compilation, int size)
    {
        var facts = compilation.Pattern.Facts;
        return new TestSheet
        {
            Title = facts.Title?.Value.Trim() is { Length: > 0 } title ? title : "Untitled pattern",
            Version = facts.Version?.Trim() ?? "",
            Size = facts.Sizes.Names[size],
            Gauges = [.. facts.Gauges.Where(g => g.Stitches is not null || g.Rows is not null).Select((g, i) => new AskedGauge(g.Name ?? (i == 0 ? "gauge" : string.Create(CultureInfo.InvariantCulture, $"gauge {i + 1}")), g.Stitch, g.Stitches, g.Width, g.Rows, g.Height, g.RowsAreRounds, g.Tool))],
            Yarns = [.. facts.Yarns.Select((y, i) => Asked(y, i, size)).DistinctBy(y => y.Key, StringComparer.OrdinalIgnoreCase)],
            Measures = [.. facts.Finished.Where(m => In(m.Values, size) is not null).Select(m => new AskedMeasure(m.Name, In(m.Values, size)!)).DistinctBy(m => m.Key, StringComparer.OrdinalIgnoreCase)],
            Sections = [.. compilation.Pattern.Sections.Where(s => s.HasInstructions && s.Heading.Length > 0).Select(s => s.Heading.Trim()).Distinct(StringComparer.OrdinalIgnoreCase)],
        };
    }

    private static AskedYarn Asked(Yarn yarn, int place, int size)
    {
        var needs = yarn.Needs is { } all ? In(all, size) : null;
        decimal? grams = needs is null ? null : needs.Unit.Dimension switch
        {
            Dimension.Mass => needs.InBase,
            Dimension.YarnLength => yarn.MetresPerGram is > 0 and var grist ? needs.InBase / grist : null,
            Dimension.Count => yarn.PutUpMass is { } ball ? needs.Value * ball.InBase : null,
            _ => null,
        };
        return new AskedYarn(yarn.Label ?? yarn.Name ?? (place == 0 ? "yarn" : string.Create(CultureInfo.InvariantCulture, $"yarn {place + 1}")), yarn.Name ?? "Yarn", needs, grams is { } g ? decimal.Round(g, 1) : null);
    }

    private static Quantity? In(PerSize<Quantity?> values, int size) => values.IsShared || size < values.Values.Length ? values[size] : null;
}

/// <summary>A question that every test maker is asked.</summary>
/// <param name="Key">What it goes by in the answers.</param>
/// <param name="Text">The question.</param>
/// <param name="Hint">A word on how to answer; null for none.</param>
public sealed record TestQuestion(string Key, string Text, string? Hint)
{
    /// <summary>The key of the question that is answered row by row.</summary>
    public const string Errors = "errors";

    /// <summary>All of them, in the order in which they are asked.</summary>
    public static ImmutableArray<TestQuestion> All { get; } =
    [
        new("unclear", "What was unclear, or had to be read twice?", null),
        new(Errors, "What seemed wrong to you?", "One a line, beginning with the section and the row, such as: Crown, Rnd 3: the count is one stitch too few"),
        new("difficulty", "How did it feel beside the level that the pattern names?", "Easier, as told, or harder; and where"),
        new("fit", "How does the finished piece fit, or lie?", "On whom, with which body measurement, and how much ease there is"),
        new("needed", "What would you have needed that was not there?", "A drawing, a video, a word on a technique, other sizes"),
        new("else", "Anything else?", null),
    ];
}
