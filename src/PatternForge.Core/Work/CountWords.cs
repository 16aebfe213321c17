using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Work;

/// <summary>Counts in the trade's words.</summary>
public static class CountWords
{
    /// <summary>"12 dc, 6 ch-2 sps": stitches first, then spaces from the shortest, then what else there is.</summary>
    public static string Of(ImmutableSortedDictionary<string, int> kinds) =>
        string.Join(", ", Ordered(kinds.Keys).Select(kind => $"{kinds[kind].ToString(CultureInfo.InvariantCulture)} {Noun(kind, kinds[kind] != 1)}"));

    /// <summary>"84 (92, 100) sts" of what is known, a dash for what is not; where kinds are told apart, "12 (14, 16) dc, 4 ch-2 sps".</summary>
    /// <param name="totals">Stitches, one number a size.</param>
    /// <param name="kinds">Stitches and spaces by kind, one table a size; empty tables where only stitches are known.</param>
    public static string InTradeForm(IReadOnlyList<int?> totals, IReadOnlyList<ImmutableSortedDictionary<string, int>> kinds)
    {
        var names = Ordered(kinds.SelectMany(k => k.Keys).Distinct(StringComparer.Ordinal)).ToArray();
        if (names.Length == 0 || totals.Count != kinds.Count)
        {
            return totals.All(v => v == 1) ? "1 st" : $"{List(totals)} sts";
        }

        return string.Join(", ", names.Select(kind =>
        {
            int?[] each = [.. totals.Select((total, size) => total is null ? null : (int?)kinds[size].GetValueOrDefault(kind))];
            return $"{List(each)} {Noun(kind, each.Any(n => n != 1))}";
        }));
    }

    /// <summary>The kind that is told first; null where none is known.</summary>
    public static string? FirstKind(IReadOnlyList<ImmutableSortedDictionary<string, int>> kinds) => Ordered(kinds.SelectMany(k => k.Keys).Distinct(StringComparer.Ordinal)).FirstOrDefault();

    private static string List(IReadOnlyList<int?> values)
    {
        static string One(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "–";
        return values.Distinct().Count() == 1 ? One(values[0]) : $"{One(values[0])} ({string.Join(", ", values.Skip(1).Select(One))})";
    }

    private static IEnumerable<string> Ordered(IEnumerable<string> kinds) => kinds
        .OrderBy(kind => IsSpace(kind) ? 1 : kind == "picots" ? 2 : 0)
        .ThenBy(kind => kind.Length)
        .ThenBy(kind => kind, StringComparer.Ordinal);

    private static bool IsSpace(string kind) => kind.EndsWith(" sp", StringComparison.Ordinal);

    // Stitches have no plural in the trade's counts ("12 dc"); spaces and picots do.
    private static string Noun(string kind, bool isPlural) => IsSpace(kind) && isPlural ? kind + "s" : kind == "picots" && !isPlural ? "picot" : kind;
}
