using System.Collections.Immutable;

namespace PatternForge.Core.Work;

/// <summary>Which tops of a row were worked together in one place.</summary>
internal static class TopGroups
{
    /// <summary>The top that stands for its group: its chain space or, where it has none, its middle stitch.</summary>
    /// <param name="tops">The row.</param>
    /// <param name="place">The place of one of the group's tops.</param>
    public static int CentreOf(ImmutableArray<Top> tops, int place)
    {
        var (first, last) = (place, place);
        while (first > 0 && tops[first - 1].Group == tops[place].Group)
        {
            first--;
        }

        while (last + 1 < tops.Length && tops[last + 1].Group == tops[place].Group)
        {
            last++;
        }

        for (var i = first; i <= last; i++)
        {
            if (tops[i].Kind == TopKind.Space)
            {
                return i;
            }
        }

        return (first + last) / 2;
    }

    /// <summary>How many stitches from a place on were worked together in one place; 1 for a stitch by itself.</summary>
    public static int SizeFrom(ImmutableArray<Top> tops, int place)
    {
        var size = 1;
        while (place + size < tops.Length && tops[place].Counts && AreTogether(tops[place], tops[place + size]))
        {
            size++;
        }

        return size;
    }

    /// <summary>True when two stitches that follow each other were worked together in one place.</summary>
    public static bool AreTogether(Top a, Top b) => b.Counts && ((a.Group > 0 && a.Group == b.Group) || (a.Base >= 0 && a.Base == b.Base));
}
