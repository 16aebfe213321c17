using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What an instruction line takes: its physical rows, one list a size, and the lines that it has worked over again by name.</summary>
/// <param name="Sizes">The rows of each size.</param>
/// <param name="Again">Lines of another piece, or of the side worked first, by their index.</param>
internal sealed record LineTally(ImmutableArray<RowTally[]> Sizes, ImmutableArray<int> Again)
{
    /// <summary>Takes what a line has just left.</summary>
    /// <param name="line">The line.</param>
    /// <param name="states">The sizes after it.</param>
    /// <param name="pieces">The pieces worked so far.</param>
    /// <param name="sidesFrom">The line behind which the first of two sides was worked; -1 for none.</param>
    public static LineTally Of(BoundLine line, SizeState[] states, PieceBook pieces, int sidesFrom)
    {
        var again = ImmutableArray.CreateBuilder<int>();
        foreach (var step in line.Rows.SelectMany(r => r.Steps))
        {
            var lines = step switch
            {
                AsPieceStep piece => pieces.Lines(piece),
                MatchSideStep when sidesFrom >= 0 => pieces.Since(line.Piece, sidesFrom),
                _ => [],
            };
            again.AddRange(lines.Select(l => l.Line.Index).Where(i => i < line.Index));
        }

        return new([.. states.Select(s => s.Tally?.Take() ?? [])], again.ToImmutable());
    }
}
