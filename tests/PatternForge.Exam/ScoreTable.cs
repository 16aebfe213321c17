using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace PatternForge.Exam;

/// <summary>One judged case.</summary>
/// <param name="Craft">Its craft.</param>
/// <param name="IsPattern">True for a pattern, false for a row.</param>
/// <param name="Forms">The forms that it shows; empty for a pattern.</param>
/// <param name="IsSound">True when nothing is wrong with it.</param>
/// <param name="Judgement">The verdict.</param>
public sealed record JudgedCase(string Craft, bool IsPattern, ImmutableArray<string> Forms, bool IsSound, Judgement Judgement);

/// <summary>How many cases came to each verdict.</summary>
public sealed record Tally(int Cases, int Agreed, int NotUnderstood, int Wrong, int Missed, int FalseAlarms, int Noisy)
{
    /// <summary>Counts verdicts.</summary>
    public static Tally Of(IEnumerable<JudgedCase> cases)
    {
        JudgedCase[] all = [.. cases];
        int With(Verdict verdict) => all.Count(c => c.Judgement.Verdict == verdict);
        return new(all.Length, With(Verdict.Agreed), With(Verdict.NotUnderstood), With(Verdict.Wrong), With(Verdict.Missed), With(Verdict.FalseAlarm), all.Count(c => c.Judgement.IsNoisy));
    }
}

/// <summary>Prints the score by craft and form.</summary>
public static class ScoreTable
{
    private const int First = 18;

    /// <summary>The table.</summary>
    public static string Write(IReadOnlyList<JudgedCase> cases)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{"",-First}{"cases",6}{"agreed",8}{"",7}{"not understood",16}{"wrong",7}{"missed",8}{"false alarm",13}{"noisy",7}\n");
        foreach (var group in cases.GroupBy(c => (c.IsPattern, c.Craft)).OrderBy(g => g.Key.IsPattern).ThenBy(g => CraftOrder(g.Key.Craft)))
        {
            Line(text, $"{group.Key.Craft} {(group.Key.IsPattern ? "patterns" : "rows")}", Tally.Of(group));
        }

        foreach (var craft in cases.Where(c => !c.IsPattern).GroupBy(c => c.Craft).OrderBy(g => CraftOrder(g.Key)))
        {
            text.Append('\n').Append(craft.Key).Append(" by form\n");
            foreach (var form in craft.SelectMany(c => c.Forms.Select(f => (Form: f, Case: c))).GroupBy(p => p.Form).OrderBy(g => g.Key[0]).ThenBy(g => NumberOf(g.Key)))
            {
                Line(text, "  " + form.Key, Tally.Of(form.Select(p => p.Case)));
            }
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, string name, Tally t) => text.Append(
        CultureInfo.InvariantCulture,
        $"{name,-First}{t.Cases,6}{t.Agreed,8}{(t.Cases == 0 ? 0 : 100.0 * t.Agreed / t.Cases),6:0.0}%{t.NotUnderstood,16}{t.Wrong,7}{t.Missed,8}{t.FalseAlarms,13}{t.Noisy,7}\n");

    private static int CraftOrder(string craft) => craft switch
    {
        "knit" => 0,
        "crochet" => 1,
        _ => 2,
    };

    private static int NumberOf(string form) => int.TryParse(form.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
}
