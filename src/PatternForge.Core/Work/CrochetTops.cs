using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The tops that a row has made so far, chains not yet anchored, and the groups among them.</summary>
internal sealed class CrochetTops
{
    private readonly List<Top> _tops = [];
    private readonly List<string?> _groups = [];
    private readonly int _most;
    private int _group;
    private int _opening;

    public CrochetTops(int most) => _most = most;

    /// <summary>How far a row has come, to go back to.</summary>
    public readonly record struct Mark(int Tops, int Groups, int Chains, int Group, bool HasStitches, int Picots, int Notes);

    /// <summary>Each stitch as it is worked, for a diagram; null where nobody asked.</summary>
    public CrochetNotes? Notes { get; init; }

    public int Count => _tops.Count;

    /// <summary>Stitches made, without spaces.</summary>
    public int Stitches => _tops.Count(t => t.Counts);

    /// <summary>Chains made since the last stitch.</summary>
    public int Chains { get; private set; }

    /// <summary>True when a stitch has been made, or a turning chain that counts as one.</summary>
    public bool HasStitches { get; private set; }

    /// <summary>True when the row has nothing yet but a turning chain that counts.</summary>
    public bool HasOnlyTurningChain => _tops is [{ Kind: TopKind.TurningChain }];

    /// <summary>True when the row began with a turning chain that counts as a stitch.</summary>
    public bool BeganWithStitch => _tops.Count > 0 && _tops[0].Kind == TopKind.TurningChain;

    /// <summary>Picots made.</summary>
    public int Picots { get; private set; }

    /// <summary>True when the row is more than can be worked.</summary>
    public bool IsTooMany => _tops.Count > _most;

    /// <summary>The length of the turning chain that the row began with; null for none.</summary>
    public int? TurningChain => _tops.Count > 0 && _tops[0].Kind is TopKind.TurningChain or TopKind.BareTurningChain ? _tops[0].Length : null;

    public Mark Save() => new(_tops.Count, _groups.Count, Chains, _group, HasStitches, Picots, Notes?.Count ?? 0);

    public void Restore(Mark mark)
    {
        _tops.RemoveRange(mark.Tops, _tops.Count - mark.Tops);
        _groups.RemoveRange(mark.Groups, _groups.Count - mark.Groups);
        (Chains, _group, HasStitches, Picots) = (mark.Chains, mark.Group, mark.HasStitches, mark.Picots);
        Notes?.Restore(mark.Notes);
    }

    /// <summary>Chains that will be a space when the next stitch anchors them.</summary>
    public void Chain(int count)
    {
        Notes?.Chains(NoteKind.Chains, count);
        Chains = (int)Math.Min((long)Chains + Math.Max(0, count), _most);
    }

    /// <summary>Takes the chains made last: they are no space.</summary>
    public int TakeChains()
    {
        var chains = Chains;
        Chains = 0;
        return chains;
    }

    /// <summary>The chains made last become a picot, which adds nothing to the row.</summary>
    public void Picot()
    {
        Notes?.Chains(NoteKind.Picot, Chains);
        Chains = 0;
        Picots++;
    }

    /// <summary>Anchors the chains made last as a space.</summary>
    public void Anchor(int place)
    {
        if (Chains > 0)
        {
            Notes?.Chains(NoteKind.Space, Chains);
            Add(new Top(TopKind.Space, null, Chains, place, _group));
            Chains = 0;
        }
    }

    /// <summary>Makes so many stitches at a place.</summary>
    public void Make(Operation stitch, int count, int place)
    {
        Anchor(place);
        HasStitches = true;
        Notes?.Stitch(stitch, count, place);
        var top = new Top(TopKind.Stitch, stitch, 0, place, _group);
        for (var i = 0; i < count && !IsTooMany; i++)
        {
            Add(top);
        }
    }

    /// <summary>So many stitches fewer, wherever they were worked together; false when there are not so many.</summary>
    public bool TakeBack(int count)
    {
        if (_tops.Count(t => t.Kind == TopKind.Stitch) <= count)
        {
            return false;
        }

        Notes?.Spoil();
        for (var i = _tops.Count - 1; i >= 0 && count > 0; i--)
        {
            if (_tops[i].Kind == TopKind.Stitch)
            {
                _tops.RemoveAt(i);
                count--;
            }
        }

        return true;
    }

    /// <summary>Puts the row's turning chain in its place, where an earlier one has not led to a stitch.</summary>
    /// <param name="stitch">The stitch whose height it has.</param>
    /// <param name="length">Its chains.</param>
    /// <param name="counts">True when it counts as that stitch.</param>
    /// <param name="place">The place that it stands on.</param>
    /// <param name="upright">How many of its chains stand upright; the others are a space, or lie below.</param>
    public void BeginWith(Operation stitch, int length, bool counts, int place, int upright)
    {
        Notes?.Turning(stitch, upright, counts, place);
        _tops.Clear();
        Chains = 0;
        HasStitches = counts;
        Add(new Top(counts ? TopKind.TurningChain : TopKind.BareTurningChain, stitch, length, place, _group));
    }

    /// <summary>What follows is worked as one group in one place.</summary>
    public void BeginGroup(string? name)
    {
        _opening = _group;
        _groups.Add(name);
        _group = _groups.Count;
    }

    public void EndGroup() => _group = _opening;

    private void Add(Top top)
    {
        if (!IsTooMany)
        {
            _tops.Add(top);
        }
    }

    /// <summary>The row as the next one meets it when it is not turned.</summary>
    /// <param name="terms">The pattern's terms.</param>
    /// <param name="closedWithStitch">True when chains and a tall stitch closed the round.</param>
    public RowBelow ToRow(Dialect terms, bool closedWithStitch) => new([.. _tops], [.. _groups], terms) { Picots = Picots, ClosedWithStitch = closedWithStitch };
}
