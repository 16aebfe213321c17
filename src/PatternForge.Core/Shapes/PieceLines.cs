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

    /// <summary>Every step of it, those within repeats as well.</summary>
    public IEnumerable<Step> Deep() => Bound.Rows.SelectMany(r => r.Steps).SelectMany(Deep);

    /// <summary>How often stitches go to a holder in it: what stands in a repeat counts twice.</summary>
    public int Holds => Bound.Rows.SelectMany(r => r.Steps).Sum(HoldsOf);

    /// <summary>What it says, for a message.</summary>
    public string Words
    {
        get
        {
            var text = Worked.Label.Length > 0 ? Worked.Label : Worked.Text;
            return $"`{(text.Length > 40 ? text[..39].TrimEnd() + "…" : text)}`";
        }
    }

    /// <summary>True for a line of other sizes.</summary>
    public bool IsForOthers(int size) => Worked is { Status: LineStatus.Checked } && Worked.Before[size] is null && Worked.After[size] is null && Worked.After.Any(a => a is not null);

    /// <summary>True where stitches are bound off, or slipped past, at the beginning of rows.</summary>
    public bool BindsOff => Worked.After.Any(a => a is > 0) && (Bound.Text.StartsWith("BO ", StringComparison.OrdinalIgnoreCase) || Bound.Text.StartsWith("Bind off", StringComparison.OrdinalIgnoreCase) || Bound.Text.StartsWith("Cast off", StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<Step> Deep(Step step) => step switch
    {
        RepeatStep repeat => repeat.Body.SelectMany(Deep),
        GroupStep group => group.Body.SelectMany(Deep),
        _ => [step],
    };

    private static int HoldsOf(Step step) => step switch
    {
        HoldStep => 1,
        RepeatStep repeat => 2 * repeat.Body.Sum(HoldsOf),
        GroupStep group => 2 * group.Body.Sum(HoldsOf),
        _ => 0,
    };
}

/// <summary>The lines of one piece.</summary>
/// <param name="Lines">Its lines from the first stitches on; those of another piece where it is worked "as for" that one.</param>
internal sealed record ShapedPiece(ImmutableArray<ShapedLine> Lines)
{
    /// <summary>True where left and right change places.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>The line where the sleeves join the body, of a yoke from below; 0 for none.</summary>
    public int Join { get; init; }

    /// <summary>The stitches of one sleeve there, one a size.</summary>
    public ImmutableArray<int> Sleeve { get; init; } = [];

    /// <summary>True for a yoke that joins pieces of which none is a body with stitches for all of it: a back and a front that are worked flat.</summary>
    public bool IsJoined { get; init; }

    /// <summary>True where it begins with stitches of another piece: a sleeve from its underarm, a thumb.</summary>
    public bool IsFromHeld { get; init; }
}

/// <summary>Takes the lines of a pattern apart into pieces: each from its first stitches to where the next piece begins.</summary>
internal static class PieceLines
{
    /// <summary>The lines of every piece that begins with stitches of its own, or with those that another left for it.</summary>
    public static ImmutableArray<ShapedPiece> Of(Pattern pattern, ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked)
    {
        var pieces = ImmutableArray.CreateBuilder<ShapedPiece>();
        var piece = ImmutableArray.CreateBuilder<ShapedLine>();
        var followed = new FollowedPieces(bound, worked);
        var (group, groups) = (-1, GroupsOf(pattern));
        var (isMirrored, isFromHeld, isJoined) = (false, false, false);
        ShapedPiece? body = null;
        for (var i = 0; i < bound.Length && i < worked.Length; i++)
        {
            var line = new ShapedLine(bound[i], worked[i]);
            if (line.Bound.Pattern is not null)
            {
                continue;
            }

            followed.Add(line);
            var own = bound[i].Section >= 1 && bound[i].Section <= groups.Length ? groups[bound[i].Section - 1] : 0;
            var hasNone = worked[i].Before.All(b => b is null or 0);
            var isFresh = hasNone && worked[i].After.Any(a => a is > 0) && (worked[i].Before.Any(b => b is 0) || line.First is CastOnStep or ChainStep or RingStep);
            if (hasNone && worked[i].After.Any(a => a is > 0) && IsFromHeld(line, i + 1 < worked.Length ? worked[i + 1] : null, i > 0 ? worked[i - 1] : null))
            {
                Close();
                (group, isFromHeld) = (own, true);
                piece.Add(line);
                continue;
            }

            if (own != group && piece.Count > 0 && YokeUpWalk.Joins(line, piece[^1]))
            {
                // Body and sleeves have been worked by themselves: from here on they are one.
                var sleeve = piece[^1].Worked;
                Close();
                group = own;
                body = YokeUpWalk.BodyOf(pieces, line, sleeve);
                if (body is not null)
                {
                    pieces.Remove(pieces.First(p => p.Lines == body.Lines));
                    piece.AddRange(body.Lines);
                    piece.Add(line);
                }
                else if (line.Worked.Piece.Contains("yoke", StringComparison.OrdinalIgnoreCase))
                {
                    piece.Add(line);
                    isJoined = true;
                }

                continue;
            }

            if (piece.Count > 0 && SecondSide.Begins(line, [.. piece]))
            {
                // The other side of the neck, beside the one that has just been finished.
                group = own;
                piece.Add(line);
                continue;
            }

            if (isFresh && line.First is not ReturnStep && (line.First is not HoldStep || own != group))
            {
                Close();
                group = own;
                if (line.First is AsPieceStep step && followed.Lines(line, step) is { IsEmpty: false } lines)
                {
                    piece.AddRange(lines);
                    isMirrored = step.IsReversed;
                }
                else if (line.First is not (PickUpStep or AsPieceStep or StartStep))
                {
                    piece.Add(line);
                }

                continue;
            }

            if (own != group && (hasNone || (piece.Count > 0 && piece[^1].Has<FastenOffStep>())))
            {
                // "Work as for Left Front" ends where that does: nothing is left on the needle.
                Close();
                group = own;
                if (line.First is AsPieceStep step && followed.Lines(line, step) is { IsEmpty: false } lines)
                {
                    piece.AddRange(lines);
                    isMirrored = step.IsReversed;
                    continue;
                }
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
                pieces.Add(new ShapedPiece(piece.ToImmutable()) { IsMirrored = isMirrored, IsFromHeld = isFromHeld, IsJoined = isJoined, Join = body?.Join ?? 0, Sleeve = body?.Sleeve ?? [] });
            }

            body = null;

            piece.Clear();
            (isMirrored, isFromHeld, isJoined) = (false, false, false);
        }
    }

    /// <summary>A tube under a heading of its own that goes on with stitches left for it, or a sleeve picked up round its armhole.</summary>
    private static bool IsFromHeld(ShapedLine line, WorkedLine? next, WorkedLine? last) =>
        line.First is ReturnStep ? last?.Piece != line.Worked.Piece && next?.InTheRound == true && next.Piece == line.Worked.Piece
        : line.First is PickUpStep && next?.Piece == line.Worked.Piece && line.Worked.Piece.Contains("sleeve", StringComparison.OrdinalIgnoreCase);

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
