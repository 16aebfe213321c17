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
}
