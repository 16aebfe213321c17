using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>The second side of a neck where the first one left its stitches unworked: crochet, whose stitches wait without a holder.</summary>
internal static class SecondSide
{
    private static readonly string[] Signs = ["second side", "2nd side", "other side", "second shoulder", "2nd shoulder", "other shoulder"];

    /// <summary>True for a line that begins the second side of the piece so far.</summary>
    /// <param name="line">The line.</param>
    /// <param name="piece">The lines of the piece so far.</param>
    public static bool Begins(ShapedLine line, ImmutableArray<ShapedLine> piece) =>
        line.First is StartStep && Array.Exists(Signs, s => line.Worked.Piece.Contains(s, StringComparison.OrdinalIgnoreCase) || line.Bound.Text.Contains(s, StringComparison.OrdinalIgnoreCase))
        && LeavesIn(piece, piece.Length) > 0;

    /// <summary>The line where the second side begins; -1 for none.</summary>
    public static int In(ImmutableArray<ShapedLine> lines) => Enumerable.Range(1, lines.Length - 1).FirstOrDefault(i => lines[i].First is StartStep, -1);

    /// <summary>The last row before a place that leaves stitches at its end and none at its beginning: there the piece parts. -1 for none.</summary>
    public static int LeavesIn(ImmutableArray<ShapedLine> lines, int before) =>
        Enumerable.Range(1, before - 1).LastOrDefault(i => lines[i].Bound.Rows is [var row] && row.Steps.Any(s => s is LeaveStep { IsTurningChain: false }) && !row.Steps.Any(s => s is CrochetStep { Operation.Height: 0 }), -1);

    /// <summary>The first side turned over, its places given to the lines of the second; null where the two have not the same stitches in row after row.</summary>
    /// <param name="lines">The lines of the piece.</param>
    /// <param name="from">Where the first side begins.</param>
    /// <param name="at">Where the second side begins.</param>
    /// <param name="size">The size.</param>
    /// <param name="first">The places of the first side.</param>
    /// <param name="middleCm">The middle of the piece.</param>
    public static ImmutableArray<OutlineLevel>? Mirrored(ImmutableArray<ShapedLine> lines, int from, int at, int size, ImmutableArray<OutlineLevel> first, decimal middleCm)
    {
        var (one, other) = (lines[from..at], lines[(at + 1)..]);
        if (one.Length != other.Length || Enumerable.Range(0, one.Length).Any(i => one[i].Worked.After[size] is null || one[i].Worked.After[size] != other[i].Worked.After[size] || !one[i].Worked.Rows.SequenceEqual(other[i].Worked.Rows)))
        {
            return null;
        }

        var second = one.Zip(other).GroupBy(p => p.First.Worked.Index).ToDictionary(p => p.Key, p => p.First().Second.Worked.Index);
        return [.. first.Select(l => l.Mirrored(middleCm) with { Line = second.GetValueOrDefault(l.Line, l.Line) })];
    }
}
