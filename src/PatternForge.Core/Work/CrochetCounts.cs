using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>What a crochet row comes to when it is counted by kind.</summary>
internal static class CrochetCounts
{
    /// <summary>The numbers that a count of a kind may fairly state, the plainest first; empty where the stitches do not tell.</summary>
    public static ImmutableArray<int> Of(Counted counted, RowBelow row)
    {
        switch (counted.Kind)
        {
            case CountedKind.Space:
                var spaces = row.Tops.Count(t => t.Kind == TopKind.Space && (counted.Length is null || t.Length == counted.Length));
                return counted.Length is { } length && row.Tops.Any(t => row.IsClosingSpace(t, length)) ? [spaces + 1, spaces] : [spaces];
            case CountedKind.Picot:
                return row.Picots > 0 ? [row.Picots] : [];
            case CountedKind.Other when counted.Name is "meshes" or "boxes" or "arches" or "eyelets":
                return Meshes(row);
            case CountedKind.Group:
                return row.HasGroup(counted.Name) ? [row.Groups(counted.Name)] : [];
            case CountedKind.Stitch when counted.Stitch is { } stitch:
                if (row.IsFoundation || row.Tops.Any(t => t.Counts && t.Stitch is null or { Id: "st" }))
                {
                    return [];
                }

                // A decrease counts as its plain stitch; post stitches may be counted with the plain ones or apart.
                var name = CrochetNames.Of(stitch, row.Terms);
                var plain = row.Kinds.GetValueOrDefault(name);
                var all = row.Tops.Count(t => t.Counts && (t.Stitch!.Id == stitch.Id || t.Stitch.CountsAs == stitch.Id || CrochetNames.Of(t.Stitch, row.Terms) == name));
                var apart = row.Tops.Count(t => t is { Counts: true, Group: 0 } && CrochetNames.Of(t.Stitch!, row.Terms) == name);
                apart = apart == 0 ? plain : apart;
                return [.. new[] { all, plain, apart }.Distinct()];
            default:
                return [];
        }
    }

    /// <summary>Meshes, boxes, arches: its spaces, in a row that is nothing but spaces of one length with a stitch between.</summary>
    private static ImmutableArray<int> Meshes(RowBelow row)
    {
        var spaces = row.Tops.Where(t => t.Kind == TopKind.Space).ToList();
        if (spaces.Count < 2 || spaces.Exists(s => s.Length != spaces[0].Length) || Math.Abs(row.Count - spaces.Count) > 1)
        {
            return [];
        }

        for (var i = 1; i < row.Tops.Length; i++)
        {
            if (row.Tops[i].Kind == TopKind.Space == (row.Tops[i - 1].Kind == TopKind.Space))
            {
                return [];
            }
        }

        // A tall turning chain, or a tall stitch that closes the round, may hold one more.
        return row.ClosedWithStitch || row.Tops.Any(t => t.Kind is TopKind.TurningChain or TopKind.BareTurningChain && t.Length > 3) ? [spaces.Count, spaces.Count + 1] : [spaces.Count];
    }
}
