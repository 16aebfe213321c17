using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>Where two short rows turn: stitches left at either edge as the right side shows it.</summary>
/// <param name="Line">The line among those of the slope.</param>
/// <param name="Rows">Rows since the turns before.</param>
/// <param name="Left">Stitches left at the left edge.</param>
/// <param name="Right">Stitches left at the right edge.</param>
internal readonly record struct ShortTurn(int Line, int Rows, int Left, int Right);

/// <summary>Shoulders that slope by short rows at the end of a flat piece.</summary>
/// <param name="Stitches">Stitches of the whole row.</param>
/// <param name="RowsAcross">Rows behind the short ones that go over all stitches, and raise the whole edge.</param>
/// <param name="Neck">Stitches that are left for the neck when the shoulders are bound off; null where all end together.</param>
/// <param name="Turns">Where they turn, two and two, from the outer ones inwards.</param>
internal sealed record ShortRowShoulders(int Stitches, int RowsAcross, int? Neck, ImmutableArray<ShortTurn> Turns)
{
    /// <summary>Reads the lines from the first short row to the end of the piece; null where it cannot be told where they turn, or where more than an end follows.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="size">The size.</param>
    /// <param name="side">The side of the first row; null where not known.</param>
    /// <param name="isShort">Tells a line of short rows.</param>
    public static ShortRowShoulders? Of(ImmutableArray<ShapedLine> lines, int size, FabricSide? side, Func<ShapedLine, bool> isShort)
    {
        if (lines[0].Worked.Before[size] is not (> 0 and var stitches))
        {
            return null;
        }

        var turns = ImmutableArray.CreateBuilder<ShortTurn>();
        var (left, right, rows, at) = (0, 0, 0, 0);
        for (; at < lines.Length && isShort(lines[at]); at++)
        {
            if (lines[at].Worked.After[size] != stitches)
            {
                return null;
            }

            foreach (var row in lines[at].Bound.Rows)
            {
                side = row.Side ?? side;
                var already = side == FabricSide.Right ? left : right;
                if (side is null || row.Numbers.Length > 1 || Left(row, size, already) is not { } leaves || leaves < already || leaves >= stitches / 2)
                {
                    return null;
                }

                (left, right) = side == FabricSide.Right ? (leaves, right) : (left, leaves);
                rows++;
                side = side == FabricSide.Right ? FabricSide.Wrong : FabricSide.Right;
                if (rows % 2 == 0)
                {
                    turns.Add(new ShortTurn(at, 2, left, right));
                }
            }
        }

        if (rows == 0 || rows % 2 != 0)
        {
            return null;
        }

        var (across, count) = (0, stitches);
        for (; at < lines.Length; at++)
        {
            var worked = lines[at].Worked;
            if (worked.After[size] is not { } after || after > count || isShort(lines[at]))
            {
                return null;
            }

            if (after == count && count == stitches && count > 0)
            {
                across += worked.Rows.IsEmpty ? 0 : worked.Rows[size] ?? 0;
            }
            else if (after is > 0 && !lines[at].BindsOff)
            {
                return null;
            }

            count = after > 0 ? after : count;
        }

        return across > 3 ? null : new ShortRowShoulders(stitches, across, count < stitches ? count : null, turns.ToImmutable());
    }

    /// <summary>Stitches left at the end of a short row: "k to last 7 sts, w&amp;t", "k to 7 sts before the gap".</summary>
    private static int? Left(BoundRow row, int size, int already)
    {
        var turn = row.Steps.Select((s, i) => s is TurnStep ? i : -1).FirstOrDefault(i => i >= 0, -1);
        return turn < 1 || row.Steps[..turn].LastOrDefault(s => s is RunStep) is not RunStep { To: { } to } || row.Steps[..turn].Count(Work.StepCounts.IsWork) != 1 ? null
            : to.Extent == Extent.LastStitches ? to.Stitches?[size]
            : to.Extent == Extent.Gap && already > 0 ? already + (to.Stitches?[size] ?? 0)
            : null;
    }
}
