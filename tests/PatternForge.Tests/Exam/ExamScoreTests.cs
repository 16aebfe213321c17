using PatternForge.Exam;
using Xunit.Abstractions;

namespace PatternForge.Tests.Exam;

public class ExamScoreTests(ITestOutputHelper output)
{
    private const string ToRaise = "dotnet run --project tests/PatternForge.Exam -c Release -- --raise tests/exam/score.json tests/exam/rows.jsonl tests/exam/patterns.jsonl";
    private const string ToSee = "dotnet run --project tests/PatternForge.Exam -c Release -- --list-bad --craft all tests/exam/rows.jsonl tests/exam/patterns.jsonl";

    private static readonly Lazy<Sitting> Sat = new(() => Sitting.Of(CaseReader.ReadFiles([RepositoryRoot.Path("tests", "exam", "rows.jsonl"), RepositoryRoot.Path("tests", "exam", "patterns.jsonl")])));

    [Fact]
    public void The_score_never_falls()
    {
        var kept = ScoreFile.Read(RepositoryRoot.Path("tests", "exam", "score.json"));
        var now = ScoreFile.Of(Sat.Value.Judged);

        var lower = now.LowerThan(kept).ToArray();
        Assert.True(lower.Length == 0, $"The score has fallen: {string.Join("; ", lower)}. To see which cases disagree: {ToSee}");

        var higher = now.HigherThan(kept).ToArray();
        if (higher.Length > 0)
        {
            output.WriteLine($"The score has risen: {string.Join("; ", higher)}. To keep it: {ToRaise}");
        }
    }

    [Fact]
    public void No_sound_row_or_pattern_gets_an_error()
    {
        var alarms = Sat.Value.Rows.Where(r => r.Judgement.Verdict == Verdict.FalseAlarm)
            .Select(r => $"{r.Case.Question.Id}: {string.Join("; ", r.Outcome.Findings.Select(f => $"{f.Code} {f.Message}"))}")
            .Concat(Sat.Value.Patterns.Where(p => p.Judgement.Verdict == Verdict.FalseAlarm).Select(p => $"{p.Case.Question.Id} {p.Judgement.Why}"));
        Assert.Empty(alarms);
    }

    [Fact]
    public void Warnings_on_sound_rows_are_rarer_than_one_in_twenty()
    {
        var sound = Sat.Value.Judged.Where(c => c.IsSound).ToArray();
        Assert.InRange(sound.Count(c => c.Judgement.IsNoisy), 0, sound.Length / 20);
    }

    [Fact]
    public void Every_public_case_is_read()
    {
        Assert.Equal(479, Sat.Value.Rows.Length);
        Assert.Equal(15, Sat.Value.Patterns.Length);
        Assert.Equal(Sat.Value.Rows.Length, Sat.Value.Rows.Select(r => r.Case.Question.Id).Distinct(StringComparer.Ordinal).Count());
    }
}
