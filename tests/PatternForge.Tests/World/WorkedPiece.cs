using PatternForge.Exam;

namespace PatternForge.Tests.World;

/// <summary>Works a piece from its cast-on through the compiler's public entry.</summary>
internal static class WorkedPiece
{
    /// <summary>The outcome of each row after the cast-on.</summary>
    public static IReadOnlyList<SeenRow> Work(string title, int start, IReadOnlyList<string> rows, bool inTheRound = false)
    {
        var castOn = $"Cast on {start} sts.{(inTheRound ? " Join to work in the round." : "")}";
        var label = inTheRound ? "Rnd" : "Row";
        return Examiner.Work(new PatternQuestion
        {
            Id = "piece",
            Title = title,
            Craft = "knit",
            Dialect = "US",
            InTheRound = inTheRound,
            Rows = [new PatternRow(0, "Piece", castOn), .. rows.Select((text, i) => new PatternRow(i + 1, "Piece", $"{label} {i + 1}: {text}"))],
        }).Rows.Skip(1).ToArray();
    }

    /// <summary>"checked 34" or, where something is wrong with the row, what.</summary>
    public static string Tell(SeenRow row) =>
        string.Join("; ", row.Findings.Select(f => $"{f.Code} {f.Message}").Prepend($"{row.Status.ToString().ToLowerInvariant()} {row.After[0]?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "?"}"));
}
