using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Counts the physical rows that one line works in each size.</summary>
internal sealed class RowsOfLine
{
    private readonly SizeState[] _states;
    private readonly int[] _before;

    /// <summary>Notes where the work stands before the line.</summary>
    public RowsOfLine(SizeState[] states)
    {
        _states = states;
        _before = [.. states.Select(s => s.History.Count)];
    }

    /// <summary>The rows of a line that has been worked; null in sizes where they are not known, or come from a length.</summary>
    public ImmutableArray<int?> Of(BoundLine line, LineStatus status, IReadOnlyList<int?> before) =>
        status != LineStatus.Checked || line.Pattern is not null || line.Rows.Any(r => r.IsForNoSize || r.Steps.Any(IsOpen))
            ? []
            : [.. _states.Select((s, i) => s.IsKnown && s.History.Count >= _before[i] ? before[i] is 0 && line.Label.Length == 0 ? 0 : s.History.Count - _before[i] : (int?)null)];

    /// <summary>True when the line is worked in the round in every size, false when in none; null otherwise.</summary>
    public bool? InTheRound => _states.All(s => s.InTheRound) ? true : _states.Any(s => s.InTheRound) ? null : false;

    private static bool IsOpen(Step step) => step switch
    {
        EvenRowsStep even => even.Rows is null,
        RepeatRowsStep repeat => repeat.Until is not (RowsUntil.Times or RowsUntil.Rows or RowsUntil.Count) || repeat.WithPlainRows || repeat.Grows,
        AsPieceStep or MatchSideStep or ReachStep or TogetherStep or StartStep or ShapingStep => true,
        _ => false,
    };
}
