using System.Globalization;

namespace PatternForge.Core.Charts;

/// <summary>What a block that asks for a chart says: whose rows, and which of them.</summary>
/// <param name="Of">The heading of the section whose rows are drawn; null for the section that the block stands in.</param>
/// <param name="First">The number of the first row; null for the first that there is.</param>
/// <param name="Last">The number of the last row; null for the last that there is.</param>
public sealed record ChartRequest(string? Of, int? First, int? Last)
{
    /// <summary>Reads the lines "of: Lace panel" and "rows: 1-8"; null where the block holds anything else.</summary>
    public static ChartRequest? Read(string text)
    {
        var request = new ChartRequest(null, null, null);
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var value = colon < 0 ? "" : line[(colon + 1)..].Trim();
            switch (colon < 0 ? "" : line[..colon].Trim().ToLowerInvariant())
            {
                case "of" when value.Length > 0:
                    request = request with { Of = value };
                    break;
                case "rows" or "rounds" or "rnds" when Range(value) is { } range:
                    request = request with { First = range.First, Last = range.Last };
                    break;
                default:
                    return null;
            }
        }

        return request;
    }

    private static (int First, int Last)? Range(string value)
    {
        var parts = value.Replace(" to ", "-", StringComparison.OrdinalIgnoreCase).Split(['-', '–', '—'], StringSplitOptions.TrimEntries);
        return parts.Length is 1 or 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var first) && int.TryParse(parts[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var last)
            && first >= 1 && last >= first ? (first, last) : null;
    }
}
