using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>Short rows that make a heel or a toe: narrower from row to row, then wider again, so that the two halves meet in a slant at either side.</summary>
/// <param name="From">The first line of it.</param>
/// <param name="To">The line behind the last.</param>
/// <param name="Stitches">Stitches of its widest row, with those that wait at its edges.</param>
/// <param name="Middle">Stitches of its narrowest row.</param>
/// <param name="RowsIn">Rows up to the narrowest.</param>
/// <param name="RowsOut">Rows behind it.</param>
internal sealed record ShortRowCup(int From, int To, int Stitches, int Middle, int RowsIn, int RowsOut)
{
    // A heel or a toe has about half of the stitches, and loses a third of them at the least (common practice).
    private const decimal MostShare = 0.65m;
    private const decimal LeastShare = 0.35m;
    private const decimal MostMiddle = 0.67m;

    // A stitch that was wrapped or turned waits at either edge of the widest row.
    private const int Waiting = 2;

    // Rounds between the halves that still belong to a heel (common practice: two).
    private const int MostBetween = 4;

    /// <summary>True for a line with rows over no more than half of the stitches.</summary>
    public static bool IsShort(ShapedLine line, ImmutableArray<LineTally> tallies, int size, int around) =>
        (line.Worked.InTheRound != true || line.Has<TurnStep>()) && !line.Has<PickUpStep>() && line.First is not CastOnStep && RowsOf(line, tallies, size) is { Length: > 0 } rows && rows.All(r => r.Stitches <= MostShare * around);

    /// <summary>Every stretch of short rows of a sock, in the order of work; null, where one of them is no heel and no toe.</summary>
    /// <param name="lines">The lines of the sock.</param>
    /// <param name="tallies">What each line takes.</param>
    /// <param name="size">The size.</param>
    /// <param name="around">The stitches of its leg or foot.</param>
    public static ImmutableArray<ShortRowCup>? In(ImmutableArray<ShapedLine> lines, ImmutableArray<LineTally> tallies, int size, int around)
    {
        var cups = ImmutableArray.CreateBuilder<ShortRowCup>();
        for (var i = 1; i < lines.Length; i++)
        {
            if (!IsShort(lines[i], tallies, size, around))
            {
                continue;
            }

            var from = i;
            var to = i + 1;
            for (; i < lines.Length; i++)
            {
                if (IsShort(lines[i], tallies, size, around))
                {
                    to = i + 1;
                }
                else if (!lines[i].IsForOthers(size) && (RowsOf(lines[i], tallies, size).Length == 0 || RowsOf(lines[to..(i + 1)], tallies, size).Length > MostBetween))
                {
                    break;
                }
            }

            if (Of(from, to, lines[from..to], tallies, size, around) is not { } cup)
            {
                return null;
            }

            cups.Add(cup);
            i = to - 1;
        }

        return cups.ToImmutable();
    }

    private static ShortRowCup? Of(int from, int to, ImmutableArray<ShapedLine> lines, ImmutableArray<LineTally> tallies, int size, int around)
    {
        decimal[] rows = [.. RowsOf(lines, tallies, size).Select(r => r.Stitches).Where(s => s <= MostShare * around)];
        if (rows.Length < 4)
        {
            return null;
        }

        var (most, least) = (rows.Max(), rows.Min());
        var last = Array.LastIndexOf(rows, least);
        var isEven = Enumerable.Range(1, rows.Length - 1).All(r => r <= last ? rows[r] <= rows[r - 1] + Waiting : rows[r] >= rows[r - 1] - Waiting);
        return isEven && most >= LeastShare * around && least <= MostMiddle * most && rows[0] >= most - Waiting && rows[^1] >= most - (2 * Waiting)
            ? new(from, to, most < around / 2m && most + Waiting >= around / 2m ? around / 2 : (int)most, (int)least, last + 1, rows.Length - last - 1)
            : null;
    }

    private static RowTally[] RowsOf(ImmutableArray<ShapedLine> lines, ImmutableArray<LineTally> tallies, int size) => [.. lines.SelectMany(l => RowsOf(l, tallies, size))];

    private static RowTally[] RowsOf(ShapedLine line, ImmutableArray<LineTally> tallies, int size) =>
        line.Worked.Index < tallies.Length && tallies[line.Worked.Index].Sizes is { } sizes && size < sizes.Length ? sizes[size] : [];
}
