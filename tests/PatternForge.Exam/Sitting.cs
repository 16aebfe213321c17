using System.Collections.Immutable;

namespace PatternForge.Exam;

/// <summary>A row case, what was made of it, and the verdict.</summary>
public sealed record SatRow(RowCase Case, SeenRow Outcome, Judgement Judgement);

/// <summary>A pattern case, what was made of it, and the verdict.</summary>
public sealed record SatPattern(PatternCase Case, SeenPattern Outcome, Judgement Judgement);

/// <summary>One sitting of the exam: every case worked and judged, in order.</summary>
public sealed record Sitting(ImmutableArray<SatRow> Rows, ImmutableArray<SatPattern> Patterns)
{
    /// <summary>All cases as the score sees them.</summary>
    public ImmutableArray<JudgedCase> Judged =>
    [
        .. Rows.Select(r => new JudgedCase(r.Case.Question.Craft, false, r.Case.Forms, r.Case.Answer.Fault is null, r.Judgement)),
        .. Patterns.Select(p => new JudgedCase(p.Case.Question.Craft, true, [], p.Case.Answer.Faults.IsEmpty, p.Judgement)),
    ];

    /// <summary>Works and judges the cases.</summary>
    public static Sitting Of(CaseSet cases) => new(
        [.. cases.Rows.Select(c =>
        {
            var outcome = Examiner.Work(c.Question);
            return new SatRow(c, outcome, Judge.Of(c, outcome));
        })],
        [.. cases.Patterns.Select(c =>
        {
            var outcome = Examiner.Work(c.Question);
            return new SatPattern(c, outcome, Judge.Of(c, outcome));
        })]);
}
