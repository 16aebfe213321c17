using System.Collections.Immutable;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>Puts the counts of a worked line into words: stitches alone, or by kind where the line leaves chain spaces and the like.</summary>
internal static class CountWording
{
    /// <summary>All sizes in trade form: "84 (92, 100) sts", "12 dc, 6 ch-1 sps".</summary>
    public static string? Text(WorkedLine line, ImmutableArray<int?> counts) => HasKinds(line) ? CountWords.InTradeForm(counts, line.Kinds)
        : Wording.Stitches(counts) is { } words && line.Kind is { } kind ? $"{Wording.TradeForm(Wording.Counts(counts))} {kind}" : Wording.Stitches(counts);

    /// <summary>The same, one size at a time, without units where there are only stitches.</summary>
    public static ImmutableArray<string> Each(WorkedLine line, ImmutableArray<int?> counts) => HasKinds(line) ? [.. line.Kinds.Select(CountWords.Of)] : Wording.Counts(counts);

    /// <summary>The number of the kind that is told first, one a size.</summary>
    public static ImmutableArray<int?> FirstKind(WorkedLine line) => CountWords.FirstKind(line.Kinds) is { } kind ? [.. line.Kinds.Select(k => (int?)k.GetValueOrDefault(kind))] : line.After;

    /// <summary>Kinds are told when there is more than one of them: "18 sc" alone is 18 stitches.</summary>
    private static bool HasKinds(WorkedLine line) => !line.Kinds.IsDefaultOrEmpty && line.Kinds.SelectMany(k => k.Keys).Distinct(StringComparer.Ordinal).Skip(1).Any();
}
