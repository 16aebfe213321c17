using System.Collections.Immutable;

namespace PatternForge.Core.Work;

/// <summary>What makers see between and in groups of stitches worked in one place: gaps to work into, and the points of corners.</summary>
internal sealed class GroupPoints
{
    private const int MostCorners = 8;

    private readonly HashSet<int> _gaps = [];
    private readonly HashSet<int> _corners = [];

    /// <summary>Looks a row over.</summary>
    /// <param name="tops">The row, in the order in which it is met.</param>
    /// <param name="isRound">True in a round, whose groups may lie across its start.</param>
    public GroupPoints(ImmutableArray<Top> tops, bool isRound)
    {
        Tops = tops;
        if (tops.IsEmpty || tops.Any(t => t.Kind == TopKind.Space))
        {
            return;
        }

        var groups = new List<(int First, int Size)>();
        for (var i = 0; i < tops.Length;)
        {
            var size = TopGroups.SizeFrom(tops, i);
            if (size > 1)
            {
                groups.Add((i, size));
            }

            i += size;
        }

        HasGroups = groups.Count(g => g.Size > 2) > 1;
        if (groups.Count < 2 || (isRound && TopGroups.AreTogether(tops[0], tops[^1])))
        {
            return;
        }

        // With a lone stitch at an edge makers differ on whether the gap beside it is one of those between groups.
        if (!isRound && groups.Sum(g => g.Size) == tops.Length)
        {
            _gaps.UnionWith(groups.Skip(1).Select(g => g.First));
        }

        if (groups.Count <= MostCorners && groups[0].Size % 2 == 1 && groups.TrueForAll(g => g.Size == groups[0].Size) && groups.Sum(g => g.Size) < tops.Length)
        {
            _corners.UnionWith(groups.Select(g => g.First + (g.Size / 2)));
        }
    }

    /// <summary>The row looked over.</summary>
    public ImmutableArray<Top> Tops { get; }

    /// <summary>True when the row has several groups of three or more stitches, and no spaces.</summary>
    public bool HasGroups { get; }

    /// <summary>True when the gap before a top lies between two groups, in a row that is nothing but groups.</summary>
    public bool IsGap(int place) => _gaps.Contains(place);

    /// <summary>True for the middle stitch of a corner: a group of three or five in a row of single stitches.</summary>
    public bool IsCorner(int place) => _corners.Contains(place);
}
