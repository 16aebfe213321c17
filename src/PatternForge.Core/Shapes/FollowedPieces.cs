using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>The lines that "work as for Back until …" stands for, as if they were written there.</summary>
internal sealed class FollowedPieces
{
    private const int MostDepth = 4;

    private readonly PieceBook _book = new();
    private readonly ImmutableArray<BoundLine> _bound;
    private readonly ImmutableArray<WorkedLine> _worked;

    public FollowedPieces(ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked) => (_bound, _worked) = (bound, worked);

    /// <summary>A line of a piece: others may follow it from now on.</summary>
    public void Add(ShapedLine line) => _book.Add(new PieceLine(line.Bound, line.Worked.Before, line.Worked.After));

    /// <summary>The lines of the other piece; empty where it is not known which are meant.</summary>
    public ImmutableArray<ShapedLine> Lines(ShapedLine line, AsPieceStep step) => Lines(line, step, 0);

    private ImmutableArray<ShapedLine> Lines(ShapedLine line, AsPieceStep step, int depth)
    {
        if (depth > MostDepth || (depth > 0 && step.IsReversed))
        {
            return [];
        }

        var lines = ImmutableArray.CreateBuilder<ShapedLine>();
        foreach (var meant in _book.Lines(step).Where(l => l.Line.Index < line.Bound.Index))
        {
            var one = new ShapedLine(_bound[meant.Line.Index], _worked[meant.Line.Index]);
            if (one.First is AsPieceStep other)
            {
                if (Lines(one, other, depth + 1) is not { IsEmpty: false } further)
                {
                    return [];
                }

                lines.AddRange(further);
                continue;
            }

            lines.Add(one);
        }

        if (lines.Count == 0 || !lines[^1].Worked.After.SequenceEqual(line.Worked.After))
        {
            return [];
        }

        // They stand under the heading of the line that speaks of them; the last of them goes on as long as it says.
        var last = step.UpTo?.Contains("measure", StringComparison.Ordinal) == true ? lines.Count - 1 : -1;
        return [.. lines.Select((l, i) => l with { Worked = l.Worked with { Index = line.Worked.Index, Piece = line.Worked.Piece, Origin = line.Worked.Origin, Text = i == last ? line.Worked.Text : l.Worked.Text } })];
    }
}
