using System.Collections.Immutable;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Reporting;

/// <summary>How the counts of a row come about, for other programs.</summary>
internal static class TraceShapes
{
    /// <summary>The parts of a line in one size.</summary>
    public static IReadOnlyList<StretchShape> Of(ImmutableArray<WorkedStretch> stretches, SourceText source) =>
        [.. stretches.Select(s => new StretchShape(TextOf(s.Origin, source), s.Before, s.After, s.Rows, s.Times, [.. s.Clauses.Select(c => Of(c, source))]))];

    private static ClauseShape Of(WorkedClause clause, SourceText source) =>
        new(TextOf(clause.Origin, source), clause.Used, clause.Made, clause.Left, clause.Times, [.. clause.Within.Select(c => Of(c, source))]);

    private static string TextOf(TextSpan origin, SourceText source) => Words.WellFormed(ClauseWords.Of(origin, source, int.MaxValue));
}
