using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>How a count comes about, in words that a maker understands.</summary>
public static class ClauseWords
{
    private const int MostWords = 48;
    private const int MostClauses = 9;

    /// <summary>What a clause says, on one line, cut where it is long.</summary>
    /// <param name="origin">Where it stands.</param>
    /// <param name="source">The file.</param>
    /// <param name="most">The most characters to give.</param>
    public static string Of(TextSpan origin, SourceText source, int most = MostWords)
    {
        var words = string.Join(' ', source.Text.Substring(origin.Start, origin.Length).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Trim(',', ';', ':', '.', ' ');
        return words.Length <= most ? words : words[..(most - 1)].TrimEnd() + "…";
    }

    /// <summary>What a clause does: "2", "2 to 1", "makes 3", empty for nothing.</summary>
    public static string Effect(WorkedClause clause) => clause switch
    {
        { Used: null } or { Used: 0, Made: 0 } => "",
        { Used: 0 } => $"makes {clause.Made}",
        { Made: 0 } => $"uses {clause.Used}",
        _ => clause.Used == clause.Made ? $"{clause.Used}" : $"{clause.Used} to {clause.Made}",
    };

    /// <summary>The short form, one line: "k2 (2), ssk (2 to 1), k to last 4 sts (72) ..."; empty where there is nothing to tell.</summary>
    public static string Short(ImmutableArray<WorkedStretch> stretches, SourceText source)
    {
        var row = stretches.LastOrDefault(s => !s.Clauses.IsEmpty);
        if (row is null || stretches.Length > 1)
        {
            return string.Join(", ", Middle([.. stretches.Where(s => s.Before is not null || s.After is not null).Select(s => $"{Of(s.Origin, source)} ({s.Before ?? 0} to {Count(s.After)})")]));
        }

        var parts = new List<string>();
        foreach (var clause in row.Clauses)
        {
            var effect = Effect(clause);
            var times = clause.Times is 0 or 1 ? "" : $"{clause.Times} times{(effect.Length > 0 ? ": " : "")}";
            parts.Add(times.Length + effect.Length == 0 ? Of(clause.Origin, source) : $"{Of(clause.Origin, source)} ({times}{effect})");
        }

        return string.Join(", ", Middle(parts));
    }

    private static string Count(int? count) => count is { } known ? $"{known}" : "not known";

    private static List<string> Middle(List<string> parts) =>
        parts.Count <= MostClauses ? parts : [.. parts[..(MostClauses - 4)], "…", .. parts[^3..]];
}
