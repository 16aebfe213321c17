using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;
using PatternForge.Exam;

namespace PatternForge.Tests.Exam;

/// <summary>The judge must let a reader pass who makes no mistake, in every public case.</summary>
public class PerfectReaderTests
{
    private static readonly CaseSet Cases = CaseReader.ReadFiles([RepositoryRoot.Path("tests", "exam", "rows.jsonl"), RepositoryRoot.Path("tests", "exam", "patterns.jsonl")]);

    [Fact]
    public void A_perfect_reader_agrees_with_every_row()
    {
        var refused = Cases.Rows
            .Select(c => (c.Question.Id, Judgement: Judge.Of(c, Perfect(c.Answer.After, c.Answer.Fault is { } f ? [f] : [], Math.Max(1, c.Question.Sizes.Length)))))
            .Where(j => j.Judgement.Verdict != Verdict.Agreed)
            .Select(j => $"{j.Id} {j.Judgement.Verdict} {j.Judgement.Why}");
        Assert.Empty(refused);
    }

    [Fact]
    public void A_perfect_reader_agrees_with_every_pattern()
    {
        var refused = Cases.Patterns
            .Select(c => (c.Question.Id, Judgement: Judge.Of(c, new SeenPattern(
                [.. c.Question.Rows.Select((row, i) => Perfect(c.Answer.After[i], [.. c.Answer.Faults.Where(f => f.Row == row.Number).Select(f => f.Fault)], Math.Max(1, c.Question.Sizes.Length)))],
                [.. c.Answer.Faults.Where(f => f.Row is null).Select(f => Say(f.Fault, c.Answer.After[0]))]))))
            .Where(j => j.Judgement.Verdict != Verdict.Agreed)
            .Select(j => $"{j.Id} {j.Judgement.Verdict} {j.Judgement.Why}");
        Assert.Empty(refused);
    }

    [Fact]
    public void A_reader_who_says_nothing_agrees_with_no_faulty_row() =>
        Assert.All(Cases.Rows.Where(c => c.Answer.Fault is not null), c =>
            Assert.Equal(Verdict.Missed, Judge.Of(c, Perfect(c.Answer.After, [], Math.Max(1, c.Question.Sizes.Length))).Verdict));

    private static SeenRow Perfect(CaseCount after, ImmutableArray<ExpectedFault> faults, int sizes) => new(
        LineStatus.Checked,
        [.. Enumerable.Range(0, sizes).Select(s => after.PlainIn(s) ?? after.KindsIn(s)?.Where(k => !k.Key.EndsWith(" sp", StringComparison.Ordinal)).Sum(k => k.Value))],
        after.ByKind.IsEmpty ? [] : [.. Enumerable.Range(0, sizes).Select(s => after.KindsIn(s) ?? ImmutableSortedDictionary<string, int>.Empty)],
        [.. faults.Select(f => Say(f, after))]);

    private static SeenFinding Say(ExpectedFault fault, CaseCount after)
    {
        var numbers = string.Join(", ", after.Plain.Select(n => $"{n}").Concat(after.ByKind.SelectMany(k => k ?? ImmutableSortedDictionary<string, int>.Empty).Select(k => $"{k.Value}")));
        var area = fault.Kind switch
        {
            "sizes" or "gauge-mismatch" or "size-sequence" => Area.Gauge,
            "label" or "ref" or "chain-ref" or "unbalanced" or "unknown-abbr" => Area.Notation,
            "dialect" or "term-mix" or "craft" => Area.Terms,
            "undefined-abbr" or "unused-abbr" => Area.Abbreviations,
            _ => Area.Counts,
        };
        return new SeenFinding("PF999", "something", area, Severity.Error, fault.Sizes ?? [], $"{fault.Detail}; {numbers}");
    }
}
