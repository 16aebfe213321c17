using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Exam;

/// <summary>Works a case through the compiler's public entry, the one that linting and counting use, and reads off what stands on its rows.</summary>
public static class Examiner
{
    /// <summary>Works a row case.</summary>
    public static SeenRow Work(RowQuestion question)
    {
        var source = SourceBuilder.Of(question);
        return RowOf(Compiler.Compile(source.Source), source.Rows[0], Math.Max(1, question.Sizes.Length));
    }

    /// <summary>Works a pattern case.</summary>
    public static SeenPattern Work(PatternQuestion question)
    {
        var source = SourceBuilder.Of(question);
        var compiled = Compiler.Compile(source.Source);
        var sizes = Math.Max(1, question.Sizes.Length);
        return new SeenPattern(
            [.. source.Rows.Select(row => RowOf(compiled, row, sizes))],
            [.. compiled.Findings.Where(f => !source.Rows.Any(row => IsOn(row, f.Span))).Select(See)]);
    }

    private static SeenRow RowOf(Compilation compiled, TextSpan row, int sizes)
    {
        WorkedLine[] lines = [.. compiled.Lines.Where(l => IsOn(row, l.Origin))];
        ImmutableArray<SeenFinding> findings = [.. compiled.Findings.Where(f => f.Accepted is null && IsOn(row, f.Span)).Select(See)];
        if (lines.Length == 0)
        {
            return new SeenRow(LineStatus.Unread, [.. Enumerable.Repeat((int?)null, sizes)], [], findings);
        }

        var last = lines[^1];
        return new SeenRow(
            lines.Max(l => l.Status),
            [.. Enumerable.Range(0, sizes).Select(s => last.After.Length == 1 ? last.After[0] : s < last.After.Length ? last.After[s] : null)],
            last.Kinds,
            findings);
    }

    private static bool IsOn(TextSpan row, TextSpan place) => place.Start >= row.Start && place.Start < row.End;

    private static SeenFinding See(Finding finding) =>
        new(finding.Rule.Code, finding.Rule.Name, finding.Rule.Area, finding.Severity, finding.Sizes, finding.Message);
}
