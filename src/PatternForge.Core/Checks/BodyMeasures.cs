using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>What the published tables say of a measurement for the audience of a pattern.</summary>
/// <param name="LeastCm">The least value of any size, in centimetres.</param>
/// <param name="MostCm">The greatest.</param>
/// <param name="Source">The table that it comes from; the first of several.</param>
internal sealed record PublishedSpan(decimal LeastCm, decimal MostCm, Source Source);

/// <summary>Looks body measurements up in the published tables.</summary>
internal static class BodyMeasures
{
    /// <summary>The span of all sizes of the audience, every reading taken in; null where no table has the measurement for each part of the audience.</summary>
    public static PublishedSpan? Published(PatternFacts facts, string name)
    {
        if (MeasureNames.Plain(name) is not { } plain)
        {
            return null;
        }

        var spans = new List<PublishedSpan>();
        foreach (var group in Groups(facts))
        {
            var before = spans.Count;
            spans.AddRange(BodySizes.All.Where(t => t.Group == group && IsOf(t.Measure, plain)).Select(t => new PublishedSpan(t.Sizes.Min(s => s.LeastCm), t.Sizes.Max(s => s.MostCm), t.Source)));
            spans.AddRange(BodyReadings.All.Where(r => r.Group == group && IsOf(r.Measure, plain)).Select(r => new PublishedSpan(r.LeastInches * 2.54m, r.MostInches * 2.54m, r.Source)));
            if (spans.Count == before)
            {
                return null;
            }
        }

        // Feet and hands run through more sizes than a span of one reading tells.
        var widened = plain == "foot" ? 0.25m : 0;
        return spans.Count == 0 ? null : new PublishedSpan(spans.Min(s => s.LeastCm) * (1 - widened), spans.Max(s => s.MostCm) * (1 + widened), spans[0].Source);
    }

    /// <summary>The sizes in which a body measurement is far from everything that is published; empty where there is no table.</summary>
    public static int[] Far(CheckContext context, Measurement body)
    {
        if (Published(context.Facts, body.Name) is not { } published)
        {
            return [];
        }

        var slack = context.Tolerances.Body;
        return [.. Enumerable.Range(0, context.Facts.Sizes.Count).Where(size =>
            MeasureNames.Cm(body.Values, size) is var (least, most) && (most < published.LeastCm * (1 - slack) || least > published.MostCm * (1 + slack)))];
    }

    /// <summary>The size of the tables that has the pattern's name for it, one range a table of the audience.</summary>
    public static (BodyTable Table, int Size)? Named(PatternFacts facts, string measure, int size)
    {
        if (Groups(facts) is not [var group] || MeasureNames.Plain(measure) is not { } plain || BodySizes.All.FirstOrDefault(t => t.Group == group && IsOf(t.Measure, plain)) is not { } table)
        {
            return null;
        }

        var at = BodySizes.Names(group).IndexOf(Plain(facts, size, group), StringComparer.OrdinalIgnoreCase);
        return at < 0 ? null : (table, at);
    }

    /// <summary>Whose tables hold for the audience of a pattern: a youth may be in any but the babies'.</summary>
    private static ImmutableArray<BodyGroup> Groups(PatternFacts facts) => facts.Audience?.Value switch
    {
        Audience.Babies => [BodyGroup.Baby],
        Audience.Children => [BodyGroup.Child],
        Audience.Youths => [BodyGroup.Child, BodyGroup.Woman, BodyGroup.Man],
        Audience.Women => [BodyGroup.Woman],
        Audience.Men => [BodyGroup.Man],
        Audience.Adults => [BodyGroup.Woman, BodyGroup.Man],
        Audience.Anyone => [BodyGroup.Baby, BodyGroup.Child, BodyGroup.Woman, BodyGroup.Man],
        _ => [],
    };

    // The same sizes have two names: a woman's 1X is also X-Large or XL, a man's XXL also 2XL.
    private static string Plain(PatternFacts facts, int size, BodyGroup group)
    {
        var name = facts.Sizes.Names[size].Trim().ToUpperInvariant();
        var isWoman = group == BodyGroup.Woman;
        return name switch
        {
            "XL" or "X-LARGE" or "1XL" => isWoman ? "1X" : "XL",
            "2XL" or "XXL" or "2X" => isWoman ? "2X" : "XXL",
            "3XL" or "XXXL" => "3X",
            "4XL" => "4X",
            "5XL" => "5X",
            "X-SMALL" => "XS",
            "SMALL" => "S",
            "MEDIUM" => "M",
            "LARGE" => "L",
            _ => name.Replace(" MONTHS", "", StringComparison.Ordinal).Replace(" YEARS", "", StringComparison.Ordinal),
        };
    }

    private static bool IsOf(string measure, string plain) => measure == plain || (measure == "chest" && plain == "bust");
}
