using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Commands;

/// <summary>Finds the row that `--trace` means: by the number of its line in the file, or by its label.</summary>
internal static class TracedRow
{
    private const int MostNamed = 6;

    /// <summary>The row; null after telling why there is none, or which of several could be meant.</summary>
    public static WorkedLine? Find(Compilation compilation, string said, Surroundings around)
    {
        (int First, int Last) Place(WorkedLine line) => (compilation.LineOf(line.Origin), compilation.LineOf(new TextSpan(Math.Max(line.Origin.Start, line.Origin.End - 1), 1)));

        if (int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            if (compilation.Lines.FirstOrDefault(l => Place(l) is var (first, last) && first <= number && number <= last) is { } there)
            {
                return there;
            }

            CommandLine.Refuse($"line {number} holds no instruction", around, "counts");
            return null;
        }

        var key = Key(said);
        WorkedLine[] meant = [.. compilation.Lines.Where(l => string.Equals(Key(l.Label), key, StringComparison.OrdinalIgnoreCase))];
        if (meant.Length == 0)
        {
            meant = [.. compilation.Lines.Where(l => key.Length > 0 && Key(l.Label).StartsWith(key + " ", StringComparison.OrdinalIgnoreCase))];
        }

        if (meant.Length == 1)
        {
            return meant[0];
        }

        if (meant.Length > 1)
        {
            var places = string.Join(", ", meant.Take(MostNamed).Select(l => Place(l).First)) + (meant.Length > MostNamed ? " ..." : "");
            CommandLine.Refuse($"`{said}` stands on {meant.Length} lines ({places}): say the number of the line", around, "counts");
            return null;
        }

        var nearest = Suggest.Nearest(said, compilation.Lines.Select(l => l.Label).Where(l => l.Length > 0).Distinct(StringComparer.Ordinal), 1);
        var hint = nearest.Count > 0 ? $"did you mean `{nearest[0]}`?" : "say the number of its line in the file";
        CommandLine.Refuse($"no row is called `{said}`: {hint}", around, "counts");
        return null;
    }

    private static string Key(string label) => string.Join(' ', label.Split([' ', '(', ')', ':', '[', ']', '.', ','], StringSplitOptions.RemoveEmptyEntries));
}
