using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>Puts the counts of a worked line into words: stitches alone, or by kind where the line leaves chain spaces and the like.</summary>
internal static class CountWording
{
    /// <summary>All sizes in trade form: "84 (92, 100) sts", "12 dc, 6 ch-1 sps".</summary>
    public static string? Text(WorkedLine line, ImmutableArray<int?> counts)
    {
        if (!HasKinds(line))
        {
            return Wording.Stitches(counts);
        }

        var parts = Kinds(line).Select(kind =>
        {
            var numbers = line.Kinds.Select(k => k.TryGetValue(kind, out var n) ? n : 0).ToArray();
            return $"{Wording.TradeForm([.. numbers.Select(Digits)])} {Plural(kind, numbers)}";
        });
        return string.Join(", ", parts);
    }

    /// <summary>The same, one size at a time, without units where there are only stitches.</summary>
    public static ImmutableArray<string> Each(WorkedLine line, ImmutableArray<int?> counts) => HasKinds(line)
        ? [.. line.Kinds.Select(kinds => string.Join(", ", kinds.Where(k => k.Value > 0).OrderBy(k => IsSpace(k.Key)).Select(k => $"{Digits(k.Value)} {Plural(k.Key, [k.Value])}")))]
        : Wording.Counts(counts);

    /// <summary>Kinds are told when there is more than one of them: "18 sc" alone is 18 stitches.</summary>
    private static bool HasKinds(WorkedLine line) => !line.Kinds.IsDefaultOrEmpty && Kinds(line).Skip(1).Any();

    /// <summary>The kinds there are, stitches before chain spaces.</summary>
    private static IEnumerable<string> Kinds(WorkedLine line) => line.Kinds
        .SelectMany(k => k.Where(p => p.Value > 0).Select(p => p.Key))
        .Distinct(StringComparer.Ordinal)
        .OrderBy(IsSpace).ThenBy(k => k, StringComparer.Ordinal);

    private static bool IsSpace(string kind) => kind.StartsWith("ch", StringComparison.Ordinal) || kind.EndsWith("sp", StringComparison.Ordinal);

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>"ch-1 sp" and "shell" take an s where there are several; abbreviations of stitches do not.</summary>
    private static string Plural(string kind, int[] numbers)
    {
        var many = numbers.Any(n => n != 1);
        return many && (kind.EndsWith(" sp", StringComparison.Ordinal) || kind.EndsWith("shell", StringComparison.Ordinal) || kind.EndsWith("loop", StringComparison.Ordinal)) ? kind + "s" : kind;
    }
}
