using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>One entry of the running list of corrections that a released pattern carries. Null = not said.</summary>
/// <param name="Origin">Where it stands.</param>
public sealed record ReleasedCorrection(TextSpan Origin)
{
    /// <summary>The version that has it, as written.</summary>
    public Located<string>? Version { get; init; }

    /// <summary>The date, as written (ISO 8601).</summary>
    public Located<string>? Date { get; init; }

    /// <summary>What was corrected.</summary>
    public string? Text { get; init; }

    /// <summary>Which rows it is about, in words ("Body, Row 14").</summary>
    public string? Rows { get; init; }

    /// <summary>The sizes that it is about; empty for all.</summary>
    public ImmutableArray<Located<string>> Sizes { get; init; } = [];

    /// <summary>"Body, Row 14, size L"; empty where nothing is said.</summary>
    public string Place => string.Join(", ", new[]
    {
        Rows,
        Sizes.IsEmpty ? null : Sizes.Length == 1 ? $"size {Sizes[0].Value}" : $"sizes {string.Join(", ", Sizes[..^1].Select(s => s.Value))} and {Sizes[^1].Value}",
    }.Where(p => !string.IsNullOrWhiteSpace(p)));

    /// <summary>
    /// Which of two versions is the later one: more than 0 where the first is, 0 where both are the same; null where one of them is not made of numbers with full stops
    /// between them ("1.2", "v2.0.1").
    /// </summary>
    public static int? CompareVersions(string? first, string? second)
    {
        if (Parts(first) is not { } a || Parts(second) is not { } b)
        {
            return null;
        }

        for (var i = 0; i < Math.Max(a.Length, b.Length); i++)
        {
            var compared = (i < a.Length ? a[i] : 0).CompareTo(i < b.Length ? b[i] : 0);
            if (compared != 0)
            {
                return compared;
            }
        }

        return 0;
    }

    /// <summary>The day of a date as it is written; null for what is none.</summary>
    public static DateOnly? DayOf(string? date) =>
        DateOnly.TryParseExact(date?.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static int[]? Parts(string? version)
    {
        if (version?.Trim() is not { Length: > 0 and < 40 } said)
        {
            return null;
        }

        var parts = said.TrimStart('v', 'V').Split('.');
        var numbers = new int[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (!int.TryParse(parts[i], NumberStyles.None, CultureInfo.InvariantCulture, out numbers[i]))
            {
                return null;
            }
        }

        return numbers;
    }
}
