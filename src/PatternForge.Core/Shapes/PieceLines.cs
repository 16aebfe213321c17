using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>A line as it is written and as it was worked.</summary>
internal sealed record ShapedLine(BoundLine Bound, WorkedLine Worked)
{
    /// <summary>The first step that is more than a remark; null for none.</summary>
    public Step? First { get; } = Bound.Rows.Select(r => StepCounts.First(r.Steps)).FirstOrDefault(s => s is not null);

    /// <summary>True where a step of the kind is in it.</summary>
    public bool Has<T>()
        where T : Step => Bound.Rows.Any(r => r.Steps.Any(s => s is T));

    /// <summary>True for the round that divides a yoke: the stitches of both sleeves wait, and new ones are cast on beneath them. What it leaves on the needle is the body.</summary>
    public bool DividesYoke => Bound.Rows.Any(r => r.Steps.Count(s => s is HoldStep) > 1 && r.Steps.Any(s => s is CastOnStep));

    /// <summary>True where stitches are bound off, or slipped past, at the beginning of rows.</summary>
    public bool BindsOff => Worked.After.Any(a => a is > 0) && (Bound.Text.StartsWith("BO ", StringComparison.OrdinalIgnoreCase) || Bound.Text.StartsWith("Bind off", StringComparison.OrdinalIgnoreCase) || Bound.Text.StartsWith("Cast off", StringComparison.OrdinalIgnoreCase));
}

/// <summary>Takes the lines of a pattern apart into pieces: each from its first stitches to where the next piece begins.</summary>
internal static class PieceLines
{
    /// <summary>The lines of every piece that begins with stitches of its own.</summary>
    public static ImmutableArray<ImmutableArray<ShapedLine>> Of(Pattern pattern, ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked)
    {
        var pieces = ImmutableArray.CreateBuilder<ImmutableArray<ShapedLine>>();
        var piece = ImmutableArray.CreateBuilder<ShapedLine>();
        var (group, groups) = (-1, GroupsOf(pattern));
        var isDivided = false;
        for (var i = 0; i < bound.Length && i < worked.Length; i++)
        {
            var line = new ShapedLine(bound[i], worked[i]);
            if (line.Bound.Pattern is not null)
            {
                continue;
            }

            var own = bound[i].Section >= 1 && bound[i].Section <= groups.Length ? groups[bound[i].Section - 1] : 0;
            var isFresh = worked[i].Before.All(b => b is null or 0) && worked[i].After.Any(a => a is > 0) && (worked[i].Before.Any(b => b is 0) || line.First is CastOnStep or ChainStep or RingStep);
            if (piece.Count > 0 && line.DividesYoke)
            {
                // The yoke ends here, body and sleeves are pieces of their own.
                piece.Add(line);
                Close();
                (group, isDivided) = (own, true);
                piece.Add(line);
                continue;
            }

            if (isFresh && (line.First is not ReturnStep || isDivided) && (line.First is not HoldStep || own != group))
            {
                Close();
                group = own;
                if (line.First is not (PickUpStep or AsPieceStep or StartStep))
                {
                    piece.Add(line);
                }

                continue;
            }

            if (own != group && (worked[i].Before.All(b => b is null or 0) || (piece.Count > 0 && piece[^1].Has<FastenOffStep>())))
            {
                Close();
                group = own;
            }

            group = own;
            if (piece.Count > 0)
            {
                piece.Add(line);
            }
        }

        Close();
        return pieces.ToImmutable();

        void Close()
        {
            if (piece.Count > 1)
            {
                pieces.Add(piece.ToImmutable());
            }

            piece.Clear();
        }
    }

    /// <summary>For each section the number of the heading of the first or second rank that it belongs to.</summary>
    private static int[] GroupsOf(Pattern pattern)
    {
        var (groups, group) = (new int[pattern.Sections.Length], 0);
        for (var i = 0; i < groups.Length; i++)
        {
            group += pattern.Sections[i].Level <= 2 ? 1 : 0;
            groups[i] = group;
        }

        return groups;
    }
}
