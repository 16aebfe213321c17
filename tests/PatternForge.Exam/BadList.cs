using System.Globalization;
using System.Text;

namespace PatternForge.Exam;

/// <summary>Lists the cases that do not agree, or are noisy, two or three lines each.</summary>
public static class BadList
{
    /// <summary>The list.</summary>
    public static string Write(Sitting sitting)
    {
        var text = new StringBuilder();
        foreach (var (given, outcome, judgement) in sitting.Rows.Where(r => IsBad(r.Judgement)))
        {
            var q = given.Question;
            text.Append(CultureInfo.InvariantCulture, $"{q.Id} {Word(judgement)} | {(StartingLine.For(q) ?? "from nothing")}{(q.Setup.IsEmpty ? "" : " (after setup)")} | {q.Text}\n");
            text.Append(CultureInfo.InvariantCulture, $"    want {Want(given.Answer)}\n");
            text.Append(CultureInfo.InvariantCulture, $"    got  {Got(outcome)}{Findings(outcome, q.Sizes.Length)}\n");
        }

        foreach (var (given, outcome, judgement) in sitting.Patterns.Where(p => IsBad(p.Judgement)))
        {
            text.Append(CultureInfo.InvariantCulture, $"{given.Question.Id} {Word(judgement)} | {given.Question.Title} | {judgement.Why}\n");
            for (var i = 0; i < outcome.Rows.Length; i++)
            {
                PatternRow(text, given, outcome.Rows[i], i);
            }

            foreach (var fault in given.Answer.Faults.Where(f => f.Row is null))
            {
                text.Append(CultureInfo.InvariantCulture, $"    header: want {fault.Fault.Kind} ({fault.Fault.Detail})\n");
            }
        }

        return text.ToString();
    }

    // Only the rows that spoil the pattern, and those where something is expected.
    private static void PatternRow(StringBuilder text, PatternCase given, SeenRow outcome, int index)
    {
        var row = given.Question.Rows[index];
        var faults = given.Answer.Faults.Where(f => f.Row == row.Number).ToArray();
        var sizes = Math.Max(1, given.Question.Sizes.Length);
        var agrees = given.Answer.After[index].IsUnknown || Counts.Agree(given.Answer.After[index], outcome, sizes, nullAgrees: true);
        if (agrees && faults.Length == 0 && outcome.IsChecked && !outcome.HasErrors && !outcome.HasWarnings)
        {
            return;
        }

        text.Append(CultureInfo.InvariantCulture, $"    {row.Number} | {row.Text}\n");
        text.Append(CultureInfo.InvariantCulture, $"      want {Count(given.Answer.After[index])}{string.Concat(faults.Select(f => $", {f.Fault.Kind} ({f.Fault.Detail})"))} | got {Got(outcome)}{Findings(outcome, sizes)}\n");
    }

    private static bool IsBad(Judgement judgement) => judgement.Verdict != Verdict.Agreed || judgement.IsNoisy;

    private static string Word(Judgement judgement) => judgement.Verdict switch
    {
        Verdict.NotUnderstood => "NOT UNDERSTOOD",
        Verdict.FalseAlarm => "FALSE ALARM",
        Verdict.Agreed => "NOISY",
        _ => judgement.Verdict.ToString().ToUpperInvariant(),
    };

    private static string Want(RowAnswer answer) => answer.Fault is { } fault
        ? $"error {fault.Kind}{(fault.Sizes is { } s ? $" in [{string.Join(", ", s)}]" : "")}, after {Count(answer.After)}: {fault.Detail}{(answer.FairFinding is { } other ? $", fair: {other}" : "")}"
        : $"after {Count(answer.After)}{(answer.FairFinding is { } fair ? $", fair: {fair}" : "")}";

    private static string Got(SeenRow outcome) =>
        $"{outcome.Status.ToString().ToLowerInvariant()} {List(outcome.After)}{(outcome.Kinds.IsDefaultOrEmpty ? "" : " " + string.Join(" / ", outcome.Kinds.Select(Kinds)))}";

    private static string Findings(SeenRow outcome, int sizes) => string.Concat(outcome.Findings.Select(f =>
        $"; {OutcomeWriter.Word(f.Severity)} {f.Code} {f.Name}{(sizes > 1 && !f.Sizes.IsDefaultOrEmpty ? $" in [{string.Join(", ", f.Sizes)}]" : "")}: {f.Message}"));

    private static string Count(CaseCount count) => count.IsUnknown ? "null"
        : count.ByKind.IsEmpty ? List(count.Plain)
        : string.Join(" / ", count.ByKind.Select(k => k is null ? "null" : Kinds(k)));

    private static string Kinds(IEnumerable<KeyValuePair<string, int>> kinds) => $"{{{string.Join(", ", kinds.Select(k => $"{k.Value} {k.Key}"))}}}";

    private static string List(IReadOnlyCollection<int?> counts)
    {
        var words = counts.Select(n => n?.ToString(CultureInfo.InvariantCulture) ?? "null").ToArray();
        return words.Length == 1 ? words[0] : $"[{string.Join(", ", words)}]";
    }
}
