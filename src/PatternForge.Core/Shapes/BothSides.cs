using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>The two sides of a neck worked at the same time, each with its own yarn.</summary>
internal static class BothSides
{
    private static readonly string[] Signs = ["both sides", "second ball", "2nd ball", "separate ball", "another ball", "new ball", "two balls", "each neck edge"];

    /// <summary>True for a line whose middle stitches are bound off or held, and whose sides go on together.</summary>
    public static bool PartsIn(ImmutableArray<ShapedLine> lines, int at) =>
        lines[at].Bound.Rows is [var row]
        && row.Steps.Count(s => s is BindOffStep { Stitches: not null } or HoldStep { Stitches: not null }) == 1
        && row.Steps.FirstOrDefault(s => s is BindOffStep or HoldStep) is { } middle
        && row.Steps.Take(row.Steps.IndexOf(middle)).Any(StepCounts.IsWork) && row.Steps.Skip(row.Steps.IndexOf(middle)).Any(StepCounts.IsWork)
        && !row.Steps.Any(s => s is TurnStep)
        && lines.Skip(at).Any(l => Array.Exists(Signs, s => l.Bound.Text.Contains(s, StringComparison.OrdinalIgnoreCase)));

    /// <summary>The stitches that the first side has; null where the row does not begin with a number of them.</summary>
    public static int? FirstOf(ShapedLine line, int size)
    {
        var first = line.Bound.Rows[0].Steps.FirstOrDefault(StepCounts.IsWork);
        return first is OperationStep { Operation: { Change: 0, Takes: var takes }, Times: { } times } ? times[size] * takes : null;
    }

    /// <summary>How far a line moves the outer and the inner edge of each side; null where that is not plain.</summary>
    /// <param name="line">The line.</param>
    /// <param name="change">Stitches that one side gains.</param>
    public static (decimal Outer, decimal Inner)? Moves(ShapedLine line, int change)
    {
        bool Says(string words) => line.Worked.Text.Contains(words, StringComparison.OrdinalIgnoreCase);
        var (neck, outer) = (Says("neck edge"), Says("armhole edge") || Says("shoulder edge") || (line.BindsOff && (Says("at beg") || Says("at the beg"))));
        return change == 0 ? (0, 0) : neck == outer ? null : neck ? (0, change) : (change, 0);
    }
}
