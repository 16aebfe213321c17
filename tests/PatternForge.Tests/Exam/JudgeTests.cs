using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;
using PatternForge.Exam;

namespace PatternForge.Tests.Exam;

public class JudgeTests
{
    private const string Sound = """{"id":"T-1","craft":"knit","dialect":"US","worked":"flat","forms":["A1"],"before":34,"text":"Row 1: K.","after":34,"verdict":"ok"}""";
    private const string WrongCount = """{"id":"T-2","craft":"knit","dialect":"US","worked":"flat","forms":["D1"],"before":48,"text":"Row 1: K2tog, k to last 2 sts, ssk. 44 sts.","stated":44,"after":46,"verdict":"error","error":{"kind":"count","detail":"46, not 44"}}""";
    private const string WrongInOneSize = """{"id":"T-3","craft":"knit","dialect":"US","worked":"flat","forms":["D11"],"sizes":["S","M","L"],"before":[83,93,105],"text":"BO 7 (8, 10) sts at beg of next 2 rows. 69 (77, 86) sts.","stated":[69,77,86],"after":[69,77,85],"verdict":"error","error":{"kind":"count","detail":"L: 85","sizes":[2]}}""";
    private const string Misfit = """{"id":"T-4","craft":"knit","dialect":"US","worked":"flat","forms":["B1"],"before":41,"text":"Row 1: *K2, p2; rep from * to end.","after":null,"verdict":"error","error":{"kind":"misfit","detail":"41"}}""";
    private const string Fair = """{"id":"T-5","craft":"knit","dialect":"US","worked":"round","forms":["B13"],"before":80,"text":"Round 1: Knit 8, K2tog","after":72,"verdict":"ok","also_accept":{"finding":"repeat-implied"}}""";
    private const string ByKind = """{"id":"T-6","craft":"crochet","dialect":"US","worked":"flat","forms":["D9"],"before":41,"text":"Row 2: ...","after":{"dc":21,"ch-1 sp":20},"verdict":"ok"}""";

    [Fact]
    public void A_sound_row_agrees_when_it_is_checked_and_its_count_is_true() => Assert.Equal(Verdict.Agreed, Judged(Sound, Row(34)));

    [Fact]
    public void Another_count_is_wrong() => Assert.Equal(Verdict.Wrong, Judged(Sound, Row(35)));

    [Fact]
    public void A_row_that_was_not_worked_is_not_understood_even_with_the_true_count() =>
        Assert.Equal(Verdict.NotUnderstood, Judged(Sound, Row(34) with { Status = LineStatus.Trusted }));

    [Fact]
    public void An_error_on_a_sound_row_is_a_false_alarm_even_where_the_row_was_not_worked() =>
        Assert.Equal(Verdict.FalseAlarm, Judged(Sound, Row(null, Error("this is unknown", Area.Notation)) with { Status = LineStatus.Unread }));

    [Fact]
    public void A_warning_on_a_sound_row_makes_it_noisy()
    {
        var judgement = Judge.Of(Case(Sound), Row(34, Error("hm", Area.Notation) with { Severity = Severity.Warning }));
        Assert.Equal((Verdict.Agreed, true), (judgement.Verdict, judgement.IsNoisy));
    }

    [Fact]
    public void A_finding_that_is_fair_is_neither_alarm_nor_noise()
    {
        var judgement = Judge.Of(Case(Fair), Row(72, Error("hm", Area.Counts)));
        Assert.Equal((Verdict.Agreed, false), (judgement.Verdict, judgement.IsNoisy));
    }

    [Fact]
    public void A_row_need_not_be_worked_past_an_error_that_is_fair() => Assert.Equal(Verdict.Agreed, Judged(Fair, Row(null, Error("70 are left", Area.Counts))));

    [Fact]
    public void Another_error_that_is_fair_stands_for_the_expected_one()
    {
        var other = WrongCount.Replace("\"verdict\"", "\"also_accept\":{\"finding\":\"overrun\"},\"verdict\"", StringComparison.Ordinal);
        Assert.Equal(Verdict.Agreed, Judged(other, Row(null, Error("needs 50, there are 48", Area.Counts))));
        Assert.Equal(Verdict.Wrong, Judged(other, Row(null, Error("what is this", Area.Notation))));
    }

    [Theory]
    [InlineData("this row makes 46, not 44", Verdict.Agreed)]
    [InlineData("this row makes 45, not 44", Verdict.Wrong)]
    [InlineData("this row makes 446", Verdict.Wrong)]
    public void A_wrong_claim_must_be_met_by_the_true_number(string message, Verdict verdict) =>
        Assert.Equal(verdict, Judged(WrongCount, Row(46, Error(message, Area.Counts))));

    [Fact]
    public void A_warning_does_not_do_for_a_wrong_claim() =>
        Assert.Equal(Verdict.Missed, Judged(WrongCount, Row(46, Error("46", Area.Counts) with { Severity = Severity.Warning })));

    [Fact]
    public void Silence_on_a_faulty_row_is_a_miss() => Assert.Equal(Verdict.Missed, Judged(WrongCount, Row(46)));

    [Fact]
    public void Silence_on_a_faulty_row_that_was_not_worked_is_not_understood() =>
        Assert.Equal(Verdict.NotUnderstood, Judged(WrongCount, Row(44) with { Status = LineStatus.Trusted }));

    [Fact]
    public void An_error_of_another_area_is_wrong() => Assert.Equal(Verdict.Wrong, Judged(Misfit, Row(null, Error("what is this", Area.Terms))));

    [Fact]
    public void A_misfit_is_met_by_any_error_about_counts() => Assert.Equal(Verdict.Agreed, Judged(Misfit, Row(null, Error("1 over", Area.Counts))));

    [Theory]
    [InlineData(new[] { 2 }, Verdict.Agreed)]
    [InlineData(new[] { 1, 2 }, Verdict.Wrong)]
    [InlineData(new int[0], Verdict.Wrong)]
    public void Just_the_sizes_concerned_must_be_named(int[] sizes, Verdict verdict) =>
        Assert.Equal(verdict, Judged(WrongInOneSize, new SeenRow(LineStatus.Checked, [69, 77, 85], [], [Error("makes 85", Area.Counts) with { Sizes = [.. sizes] }])));

    [Fact]
    public void Counts_by_kind_agree_kind_by_kind()
    {
        var made = ImmutableSortedDictionary<string, int>.Empty.Add("dc", 21).Add("ch-1 sp", 20);
        Assert.Equal(Verdict.Agreed, Judged(ByKind, Row(21) with { Kinds = [made] }));
        Assert.Equal(Verdict.Wrong, Judged(ByKind, Row(21) with { Kinds = [made.SetItem("ch-1 sp", 21)] }));
        Assert.Equal(Verdict.Wrong, Judged(ByKind, Row(21)));
    }

    [Fact]
    public void A_pattern_agrees_when_every_row_does_and_just_the_expected_rows_have_errors()
    {
        var given = CaseReader.Read(["""{"id":"P-1","title":"T","craft":"knit","dialect":"US","worked":"flat","sizes":["one size"],"header":{},"rows":[{"n":1,"section":"Main","text":"CO 10 sts.","after":10},{"n":2,"section":"Main","text":"Knit. 11 sts.","after":10,"stated":11}],"findings":[{"kind":"count","row":2,"detail":"10"}]}"""]).Patterns[0];
        var error = Error("makes 10", Area.Counts);
        Assert.Equal(Verdict.Agreed, Judge.Of(given, new SeenPattern([Row(10), Row(10, error)], [])).Verdict);
        Assert.Equal(Verdict.Missed, Judge.Of(given, new SeenPattern([Row(10), Row(10)], [])).Verdict);
        Assert.Equal(Verdict.FalseAlarm, Judge.Of(given, new SeenPattern([Row(10, error), Row(10, error)], [])).Verdict);
        Assert.Equal(Verdict.Wrong, Judge.Of(given, new SeenPattern([Row(9), Row(10, error)], [])).Verdict);
    }

    private static RowCase Case(string json) => CaseReader.Read([json]).Rows[0];

    private static Verdict Judged(string json, SeenRow outcome) => Judge.Of(Case(json), outcome).Verdict;

    private static SeenRow Row(int? after, params SeenFinding[] findings) => new(LineStatus.Checked, [after], [], [.. findings]);

    private static SeenFinding Error(string message, Area area) => new("PF999", "something", area, Severity.Error, [], message);
}
