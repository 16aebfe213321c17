using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>How many rows a shaping takes that is told by its pace: "every 4th row 5 times".</summary>
internal static class RowsOfShaping
{
    /// <summary>The rows in a size; null where the words do not tell.</summary>
    public static int? Of(ShapingStep shaping, int size, int before, string text)
    {
        var (rows, count) = (0, before);
        foreach (var stretch in shaping.Stretches)
        {
            var change = stretch.Change[size] ?? 0;
            var times = stretch.Rows is { } said ? said[size] ?? 0 : stretch.ToCount?[size] is { } to && change != 0 ? (to - count) / change : 0;
            if (times < 0 || times > 10_000)
            {
                return null;
            }

            count += times * change;
            if (stretch.Every is { } every)
            {
                rows += times == 0 ? 0 : stretch.BeginsNow ? ((times - 1) * (every[size] ?? 1)) + 1 : times * (every[size] ?? 1);
            }
            else if (times <= 1 || text.Contains("next", StringComparison.OrdinalIgnoreCase) || text.Contains("foll", StringComparison.OrdinalIgnoreCase) || text.Contains("every row", StringComparison.OrdinalIgnoreCase))
            {
                rows += times;
            }
            else
            {
                return null;
            }
        }

        return rows;
    }

    /// <summary>Every how many rows the words of a repeat say ("every 4th row", "every RS row"); null where they do not.</summary>
    public static int? Pace(string text)
    {
        var at = text.IndexOf("every ", StringComparison.OrdinalIgnoreCase);
        if (at < 0)
        {
            return null;
        }

        var words = text[(at + 6)..].Split(' ', 4, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length > 1 && words[0].StartsWith("foll", StringComparison.OrdinalIgnoreCase))
        {
            words = words[1..];
        }

        var word = words.Length > 0 ? words[0].ToLowerInvariant() : "";
        var digits = new string([.. word.TakeWhile(char.IsAsciiDigit)]);
        return word is "other" or "rs" or "ws" or "alt" or "alternate" ? 2 : word.StartsWith('r') ? 1 : digits.Length is > 0 and < 4 ? int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture) : null;
    }
}
