using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Exam;

/// <summary>The line that sets the state from which a row starts, in the words a designer would use.</summary>
internal static class StartingLine
{
    private static readonly string[] OwnStarts = ["cast on", "CO ", "in ring", "into ring", "in the ring", "magic ring", "in a ring"];

    /// <summary>The line; null where the row or the rows before it start from nothing.</summary>
    public static string? For(RowQuestion question)
    {
        if (StartsFromNothing(question) || question.Setup.Any(HasOwnStart))
        {
            return null;
        }

        var sizes = Math.Max(1, question.Sizes.Length);
        if (IsWorkedIntoChain(question))
        {
            return $"Ch {SourceWriter.Sized([.. Enumerable.Range(0, sizes).Select(question.Before.PlainIn)])}.";
        }

        var count = question.Before.ByKind.IsEmpty
            ? SourceWriter.Sized([.. Enumerable.Range(0, sizes).Select(question.Before.PlainIn)]) + " sts"
            : And([.. ByKind(question.Before, sizes)]);
        return $"Begin with {count}{Needles(question)}{(question.InTheRound ? ", in the round" : "")}{Markers(question, sizes)}.";
    }

    private static bool StartsFromNothing(RowQuestion question) =>
        question.Before.ByKind.IsEmpty && question.Before.Plain.All(n => n is null or 0);

    private static bool HasOwnStart(string row) =>
        OwnStarts.Any(words => row.Contains(words, StringComparison.OrdinalIgnoreCase)) || IsFoundation(row);

    private static bool IsFoundation(string row) =>
        row.StartsWith("Ch ", StringComparison.OrdinalIgnoreCase) && row.Length > 3 && char.IsAsciiDigit(row[3]);

    // "in 2nd ch from hook" under no row: the count is that of a foundation chain.
    private static bool IsWorkedIntoChain(RowQuestion question) =>
        question.Craft != "knit" && question.Setup.IsEmpty && question.Before.ByKind.IsEmpty && question.Text.Contains("from hook", StringComparison.OrdinalIgnoreCase)
        && !question.Text.Contains("picot", StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<string> ByKind(CaseCount before, int sizes)
    {
        var kinds = before.ByKind.Where(k => k is not null).SelectMany(k => k!.Keys).Distinct(StringComparer.Ordinal);
        foreach (var kind in kinds.OrderBy(k => k.EndsWith(" sp", StringComparison.Ordinal)))
        {
            int?[] each = [.. Enumerable.Range(0, sizes).Select(s => before.KindsIn(s)?.TryGetValue(kind, out var n) == true ? n : (int?)null)];
            yield return $"{SourceWriter.Sized(each)} {(kind.EndsWith(" sp", StringComparison.Ordinal) && each.Any(n => n != 1) ? kind + "s" : kind)}";
        }
    }

    private static string Needles(RowQuestion question)
    {
        if (question.Needles.IsEmpty)
        {
            return "";
        }

        var each = question.Needles;
        return each.Distinct().Count() == 1
            ? string.Create(CultureInfo.InvariantCulture, $", with {each[0]} sts on each of {each.Length} needles")
            : $", with {And([.. each.Select(n => n.ToString(CultureInfo.InvariantCulture))])} sts on needles {And([.. Enumerable.Range(1, each.Length).Select(n => n.ToString(CultureInfo.InvariantCulture))])}";
    }

    private static string Markers(RowQuestion question, int sizes)
    {
        if (question.Markers.IsEmpty || question.Markers.All(m => m.IsEmpty))
        {
            return "";
        }

        var most = question.Markers.Max(m => m.Length);
        var places = Enumerable.Range(0, most).Select(i => SourceWriter.Sized([.. Enumerable.Range(0, sizes).Select(s => PlaceOf(question.Markers, s, i))])).ToArray();
        return most == 1 ? $", with a marker after st {places[0]}" : $", with markers after sts {And(places)}";
    }

    private static int? PlaceOf(ImmutableArray<ImmutableArray<int>> markers, int size, int index)
    {
        var own = markers[markers.Length == 1 ? 0 : Math.Min(size, markers.Length - 1)];
        return index < own.Length ? own[index] : null;
    }

    private static string And(string[] words) => words.Length == 1 ? words[0] : $"{string.Join(", ", words[..^1])} and {words[^1]}";
}
