using System.Collections.Immutable;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The tops of one crochet row, in the order in which the next row meets them.</summary>
public sealed class RowBelow
{
    /// <summary>No row yet.</summary>
    public static RowBelow Empty { get; } = new([], [], Dialect.Us);

    private readonly ImmutableArray<string?> _groups;
    private readonly int _longest;
    private readonly int _longestInGroups;
    private ImmutableSortedDictionary<string, int>? _kinds;

    /// <summary>Holds a row.</summary>
    /// <param name="tops">The tops.</param>
    /// <param name="groups">The name of each group worked in it, null for one without a name; a top's group number less one is its place here.</param>
    /// <param name="terms">The pattern's terms, for the names of the stitches.</param>
    public RowBelow(ImmutableArray<Top> tops, ImmutableArray<string?> groups, Dialect terms)
    {
        Tops = tops;
        _groups = groups;
        Terms = terms;
        IsFoundation = tops.Length > 0 && tops[0].Kind == TopKind.Chain && tops.All(t => t.Kind == TopKind.Chain);
        foreach (var top in tops)
        {
            Count += top.Counts || IsFoundation ? 1 : 0;
            if (top.Kind == TopKind.Space)
            {
                ChainsInSpaces += top.Length;
                _longest = Math.Max(_longest, top.Length);
                _longestInGroups = Math.Max(_longestInGroups, top.Group > 0 ? top.Length : 0);
            }
        }
    }

    /// <summary>The tops.</summary>
    public ImmutableArray<Top> Tops { get; }

    /// <summary>The pattern's terms.</summary>
    public Dialect Terms { get; }

    /// <summary>True for a ring that is worked into, not over: a magic ring or a closed chain.</summary>
    public bool IsRing { get; init; }

    /// <summary>Picots made in it.</summary>
    public int Picots { get; init; }

    /// <summary>True when only a number of stitches is known: there may be spaces among them.</summary>
    public bool IsCountOnly { get; init; }

    /// <summary>True when it was told by kind, not worked: its last stitch may be a turning chain.</summary>
    public bool IsTold { get; init; }

    /// <summary>True when its kinds are known and their order is only the likeliest one.</summary>
    public bool IsGuess { get; init; }

    /// <summary>True when it is a foundation chain.</summary>
    public bool IsFoundation { get; }

    /// <summary>Stitches alone; for a foundation, its chains.</summary>
    public int Count { get; }

    /// <summary>Chains in all its spaces.</summary>
    public int ChainsInSpaces { get; }

    /// <summary>True when it is met in the other order than it was made in.</summary>
    public bool IsTurned { get; init; }

    /// <summary>The same row seen from the other side, after turning.</summary>
    public RowBelow Turned() => new([.. Tops.Reverse()], _groups, Terms) { IsTurned = !IsTurned, IsRing = IsRing, IsCountOnly = IsCountOnly, IsGuess = IsGuess, IsTold = IsTold, Picots = Picots, ClosedWithStitch = ClosedWithStitch };

    /// <summary>True for a corner among the spaces: the longest of those worked within a group, else the longest.</summary>
    public bool IsCorner(Top space) => (_longestInGroups == 0 || space.Group > 0) && space.Length == (_longestInGroups > 0 ? _longestInGroups : _longest);

    /// <summary>"Ch 1, hdc in first sc" closes a round with a space as long as its chain and its stitch are together: true for that space, where it is so long.</summary>
    public bool IsClosingSpace(Top space, int length)
    {
        if (Tops.Length < 3 || space.Kind != TopKind.Space)
        {
            return false;
        }

        var (last, stitch) = Tops[^1].Kind == TopKind.Stitch && Tops[^2].Kind == TopKind.Space ? (Tops[^2], Tops[^1].Stitch) : Tops[0].Kind == TopKind.Stitch && Tops[1].Kind == TopKind.Space ? (Tops[1], Tops[0].Stitch) : (default, null);
        return ClosedWithStitch && last == space && stitch is { Height: { } height and > 1 } && last.Length < length && last.Length + height == length;
    }

    /// <summary>True when the round was closed with chains and a tall stitch.</summary>
    public bool ClosedWithStitch { get; init; }

    /// <summary>The name of the group that a top was worked in; null for none.</summary>
    public string? GroupOf(Top top) => top.Group > 0 && top.Group <= _groups.Length ? _groups[top.Group - 1] : null;

    /// <summary>How many groups of a name ("shell") were worked in it.</summary>
    public int Groups(string name) => _groups.Count(g => string.Equals(g, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>True when a group of that name was worked in it.</summary>
    public bool HasGroup(string name) => Groups(name) > 0;

    /// <summary>Stitches and spaces by kind ("dc", "ch-2 sp"); empty for foundations and rings, and where no kind is known. Decreases count as the stitch that they are made of.</summary>
    public ImmutableSortedDictionary<string, int> Kinds => _kinds ??= CountKinds();

    private ImmutableSortedDictionary<string, int> CountKinds()
    {
        var kinds = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        foreach (var top in Tops)
        {
            var name = top.Kind == TopKind.Space ? SpaceName(top.Length) : top.Counts && top.Stitch is { } stitch ? CrochetNames.Of(stitch, Terms) : null;
            if (name is not null)
            {
                kinds[name] = kinds.GetValueOrDefault(name) + 1;
            }
        }

        if (Picots > 0)
        {
            kinds["picots"] = Picots;
        }

        return kinds.ToImmutable();
    }

    /// <summary>What spaces of a length are called.</summary>
    public static string SpaceName(int length) => $"ch-{length} sp";
}
