using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>
/// Walks over the tops of the row below. What is asked for and not there is remembered rather than thrown: how many stitches are missing, or the
/// place that does not exist.
/// </summary>
internal sealed class CrochetCursor
{
    private ImmutableArray<Top> _tops;
    private ImmutableArray<int> _order; // where each top stood in the row below; default where nobody asked
    private int[] _stitches = [];
    private int[] _spaces = [];
    private int _within;
    private GroupPoints? _points;

    // A turning chain serves as a space only where the row has come near it.
    private const int NearTurningChain = 3;

    public CrochetCursor(RowBelow below, bool keepsOrder = false)
    {
        Row = below;
        IsRing = below.IsRing;
        _tops = IsRing ? [] : below.Tops;
        _order = keepsOrder ? [.. Enumerable.Range(0, _tops.Length)] : default;
        Count();
    }

    /// <summary>Where a cursor stands, to go back to.</summary>
    public readonly record struct Mark(ImmutableArray<Top> Tops, ImmutableArray<int> Order, int[] Stitches, int[] Spaces, int At, int Last, int Missing, Place? NoPlace, bool NotKnown, bool WorkedSpaces, bool WentRound, int Within);

    /// <summary>The row below as it was made.</summary>
    public RowBelow Row { get; }

    /// <summary>True when work goes into a ring: there are no places to count.</summary>
    public bool IsRing { get; set; }

    public bool IsFoundation => _tops.Length > 0 && _tops[0].Kind == TopKind.Chain;

    public bool IsEmpty => _tops.IsEmpty;

    /// <summary>The next place, from 0.</summary>
    public int At { get; private set; }

    /// <summary>The place worked into last; -1 for none.</summary>
    public int Last { get; private set; } = -1;

    /// <summary>The first place worked into; -1 while there is none.</summary>
    public int FirstWorked { get; set; } = -1;

    /// <summary>Stitches asked for beyond those there are.</summary>
    public int Missing { get; set; }

    /// <summary>The first place that is not there; null when all are.</summary>
    public Place? NoPlace { get; set; }

    /// <summary>True when a place was asked for of which the row below does not tell.</summary>
    public bool NotKnown { get; set; }

    /// <summary>True when a chain space has been worked into.</summary>
    public bool WorkedSpaces { get; private set; }

    /// <summary>True when only stitches are known and the row goes from space to space among them: the spaces are there, wherever they are.</summary>
    public bool SpacesUnseen { get; init; }

    /// <summary>True in a round: what its first stitches passed over is met at its end.</summary>
    public bool MayWrap { get; init; }

    /// <summary>True when the last stitch went on to the first one of the round.</summary>
    public bool WentRound { get; private set; }

    /// <summary>True when the next place is a chain space.</summary>
    public bool IsAtSpace => At < Length && _tops[At].Kind == TopKind.Space;

    public int Length => _tops.Length;

    private GroupPoints Points => _points?.Tops == _tops ? _points : _points = new GroupPoints(_tops, MayWrap);

    /// <summary>Stitches (or chains) not yet worked.</summary>
    public int StitchesLeft => _stitches[^1] - _stitches[Math.Min(At, _tops.Length)];

    /// <summary>Chain spaces not yet worked.</summary>
    public int SpacesLeft => _spaces[^1] - _spaces[Math.Min(At, _tops.Length)];

    /// <summary>True when the row's last stitch is a turning chain that is still to be worked, or may be one.</summary>
    public bool EndsInTurningChain => _tops.Length > At && (_tops[^1].Kind == TopKind.TurningChain || MayEndInTurningChain);

    /// <summary>True when the row below does not tell whether its last stitch is a turning chain.</summary>
    public bool MayEndInTurningChain => (Row.IsCountOnly && _tops[^1].Stitch is null) || Row.IsTold;

    /// <summary>Where a place stood in the row below, or the sign of <see cref="CrochetNotes"/> for one that is not of it.</summary>
    public int SourceOf(int place) => place < 0 || place >= _order.Length ? CrochetNotes.Nowhere : _order[place];

    public Mark Save() => new(_tops, _order, _stitches, _spaces, At, Last, Missing, NoPlace, NotKnown, WorkedSpaces, WentRound, _within);

    public void Restore(Mark mark) =>
        (_tops, _order, _stitches, _spaces, At, Last, Missing, NoPlace, NotKnown, WorkedSpaces, WentRound, _within) = (mark.Tops, mark.Order, mark.Stitches, mark.Spaces, mark.At, mark.Last, mark.Missing, mark.NoPlace, mark.NotKnown, mark.WorkedSpaces, mark.WentRound, mark.Within);

    /// <summary>The next place that fits is worked into; false, with a note of what is missing, when there is none.</summary>
    /// <param name="place">What is asked for.</param>
    /// <param name="mayGoRound">True when the last stitch of a round may go on to its first: chains before it are closed by it.</param>
    public bool Next(Place place, bool mayGoRound = false)
    {
        LeaveSpace();
        if (SpacesUnseen && place.Thing.Kind == ThingKind.Space)
        {
            return true;
        }

        for (var i = At; i < _tops.Length; i++)
        {
            if (Fits(i, place.Thing))
            {
                Work(i);
                WorkedSpaces |= place.Thing.Kind == ThingKind.Gap;
                return true;
            }
        }

        if (MayWrap && FirstWorked > 0 && !WentRound && Enumerable.Range(0, FirstWorked).Any(i => Fits(i, place.Thing)))
        {
            Wrap(); // what was passed over at the round's start comes last
            return Next(place, mayGoRound);
        }

        if (place.Thing.Kind == ThingKind.Space)
        {
            for (var i = At; i < _tops.Length; i++)
            {
                // The loop of a tall turning chain is as good as a space.
                if ((_tops[i].Kind == TopKind.BareTurningChain || (_tops[i].Kind == TopKind.TurningChain && i == _tops.Length - 1)) && _tops[i].Length > 2 && _stitches[i] - _stitches[At] <= NearTurningChain)
                {
                    Work(i);
                    return true;
                }
            }
        }

        if (mayGoRound && !WentRound && !IsFoundation && _tops.Length > 0 && Fits(0, place.Thing))
        {
            WentRound = true;
            Last = 0;
            return true;
        }

        Lack(place);
        return false;
    }

    /// <summary>The next chain of the chain space ahead is worked into, each of its chains by itself; false when no space is ahead.</summary>
    public bool NextChain()
    {
        if (!IsAtSpace)
        {
            return false;
        }

        Last = At;
        _within++;
        if (_within >= _tops[At].Length)
        {
            LeaveSpace();
        }

        return true;
    }

    /// <summary>Slip stitches in chains lead over the stitch joined to and into the space behind it, which is then still to be worked; false when no space follows.</summary>
    public bool NextSpaceChain()
    {
        var space = At;
        while (space < _tops.Length && _tops[space].Kind == TopKind.BareTurningChain)
        {
            space++;
        }

        space++;
        if (FirstWorked >= 0 || space >= _tops.Length || _tops[space].Kind != TopKind.Space)
        {
            return false;
        }

        (At, Last) = (space, space);
        return true;
    }

    // What is left of a space whose chains were worked into is passed over.
    private void LeaveSpace()
    {
        (At, _within) = (At + (_within > 0 ? 1 : 0), 0);
    }

    /// <summary>Notes that a place is not there.</summary>
    public void Lack(Place place)
    {
        if (place.Thing.Kind == ThingKind.Gap || IsCornerStitch(place.Thing) || (place.Thing is { Kind: ThingKind.Space, Length: null } && _spaces[^1] == 0 && Points.HasGroups))
        {
            NotKnown = true; // gaps between groups may be called spaces
        }
        else if (place.Thing.IsCorner && Row.Tops.Any(t => t.Kind == TopKind.Space))
        {
            NotKnown = true; // which spaces are corners is a maker's eye, not a count
        }
        else if (Row.IsCountOnly && place.Thing.Kind is ThingKind.Space or ThingKind.Any)
        {
            NotKnown = true;
        }
        else if (place.Thing.Kind == ThingKind.Space || (place.Thing.Kind == ThingKind.Chain && !IsFoundation) || (place.Thing is { Kind: ThingKind.Named } thing && !Row.Tops.Any(t => t.Is(thing)) && Row.Tops.Any(t => t.Counts)))
        {
            NoPlace ??= place;
        }
        else
        {
            Missing++;
        }
    }

    /// <summary>True when a top is what is asked for; a named group stands for its chain space or, where it has none, its middle stitch.</summary>
    private bool Fits(int place, Thing thing) =>
        thing.Kind == ThingKind.Gap ? Points.IsGap(place) : IsCornerStitch(thing) ? Points.IsCorner(place) : thing.IsCorner ? _tops[place].Is(thing) && Row.IsCorner(_tops[place]) : thing is { Kind: ThingKind.Named, Named.IsSpecial: true } && Row.GroupOf(_tops[place]) is { } group && string.Equals(group, thing.Named.Id, StringComparison.OrdinalIgnoreCase)
            ? place == TopGroups.CentreOf(_tops, place)
            : _tops[place].Is(thing) || (thing is { Kind: ThingKind.Space, Length: { } length } && Row.IsClosingSpace(_tops[place], length));

    /// <summary>True for the stitch at a corner's point; "in corner" means it where the row below has no spaces.</summary>
    private bool IsCornerStitch(Thing thing) => thing.IsCorner && (thing.Kind == ThingKind.Stitch || (thing is { Kind: ThingKind.Space, Length: null } && _spaces[^1] == 0));

    private void Work(int place)
    {
        (At, Last) = (place + 1, place);
        FirstWorked = FirstWorked < 0 ? place : FirstWorked;
        WorkedSpaces |= _tops[place].Kind == TopKind.Space;
    }

    /// <summary>The next place that fits any of several things is worked into; false when there is none.</summary>
    public bool NextOf(List<Thing> things)
    {
        for (var i = At; i < _tops.Length; i++)
        {
            if (_tops[i].Kind == TopKind.Space && things.Exists(thing => thing.Kind == ThingKind.Chain))
            {
                LeaveSpaceBefore(i);
                return NextChain();
            }

            if (things.Exists(thing => Fits(i, thing)))
            {
                Work(i);
                return true;
            }
        }

        return false;
    }

    private void LeaveSpaceBefore(int place)
    {
        (At, _within) = (place, At == place ? _within : 0);
    }

    /// <summary>True when such a place has been passed: it was there.</summary>
    public bool WasThere(Thing thing)
    {
        for (var i = 0; i < Math.Min(At, _tops.Length); i++)
        {
            if (Fits(i, thing))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when the place worked into last is such a thing.</summary>
    public bool LastIs(Thing thing) => Last >= 0 && Last < _tops.Length && Fits(Last, thing);

    /// <summary>True when the row's last place is such a thing.</summary>
    public bool LastCounts(Thing thing) => _tops.Length > 0 && Fits(_tops.Length - 1, thing);

    /// <summary>How many places that fit are still there.</summary>
    public int Left(Thing thing, Thing? also = null)
    {
        var count = 0;
        for (var i = At; i < _tops.Length; i++)
        {
            if (_tops[i].Kind == TopKind.Space && (thing.Kind == ThingKind.Chain || also is { Kind: ThingKind.Chain }))
            {
                count += _tops[i].Length - (i == At ? _within : 0);
                continue;
            }

            count += Fits(i, thing) || (also is { } other && Fits(i, other)) ? 1 : 0;
        }

        return count;
    }

    /// <summary>How many places that fit stand before the next thing of a kind; null when there is none.</summary>
    public int? LeftBefore(Thing thing, Thing until)
    {
        var count = 0;
        for (var i = At; i < _tops.Length; i++)
        {
            if (Fits(i, until))
            {
                return count;
            }

            count += Fits(i, thing) ? 1 : 0;
        }

        return null;
    }

    /// <summary>How many places that fit stand before the last n things of a kind; null when there are not so many.</summary>
    public int? LeftBeforeLast(Thing thing, Thing until, int number)
    {
        var stop = _tops.Length;
        for (var seen = 0; seen < number; seen++)
        {
            do
            {
                stop--;
            }
            while (stop >= At && !Fits(stop, until));

            if (stop < At)
            {
                return null;
            }
        }

        var count = 0;
        for (var i = At; i < stop; i++)
        {
            count += Fits(i, thing) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Goes to the n-th place that fits from the row's start; false when there is none.</summary>
    public bool First(Thing thing, int number)
    {
        var seen = 0;
        for (var i = 0; i < _tops.Length; i++)
        {
            if (Fits(i, thing) && ++seen >= number)
            {
                FirstWorked = FirstWorked < 0 ? i : FirstWorked;
                At = Math.Max(At, i + 1);
                Last = i;
                WorkedSpaces |= _tops[i].Kind == TopKind.Space;
                return true;
            }
        }

        return false;
    }

    /// <summary>"In same st" before anything has been worked is the first of the row; a space that slip stitches led into is then worked.</summary>
    public void StandOnFirst()
    {
        At += Last >= 0 && Last == At && _within == 0 && IsAtSpace ? 1 : 0;
        if (Last < 0 && !IsRing && !IsEmpty)
        {
            First(new Thing(ThingKind.Any), 1);
        }
    }

    /// <summary>Goes to just before the last n places that fit. Returns how many stitches were passed over; null when there are not so many.</summary>
    public int? ToLast(Thing thing, int number)
    {
        var seen = 0;
        for (var i = _tops.Length - 1; i >= At; i--)
        {
            if (Fits(i, thing) && ++seen == number)
            {
                var passed = _stitches[i] - _stitches[At];
                At = i;
                return passed;
            }
        }

        return null;
    }

    /// <summary>True when the row below ends in a turning chain that counts, and a stitch of this row has gone into it.</summary>
    public bool IsTurningChainUsed => _tops.Length > 0 && _tops[^1].Kind == TopKind.TurningChain && Last == _tops.Length - 1;

    /// <summary>Goes to the turning chain of the row below; false when there is none.</summary>
    public bool ToTurningChain()
    {
        for (var i = _tops.Length - 1; i >= 0; i--)
        {
            if (_tops[i].Kind is TopKind.TurningChain or TopKind.BareTurningChain)
            {
                (At, Last) = (Math.Max(At, i + 1), i);
                return true;
            }
        }

        return false;
    }

    /// <summary>Goes to a stitch of the next group worked in one place: the n-th, or the middle one where <paramref name="number"/> is null. False when there is no such group.</summary>
    public bool IntoGroup(int? number)
    {
        for (var i = At; i < _tops.Length; i++)
        {
            var size = TopGroups.SizeFrom(_tops, i);
            if (size >= Math.Max(2, number ?? 3) && _tops[i].Counts)
            {
                Work(i + (number is { } n ? n - 1 : size / 2));
                WorkedSpaces = true; // the rest of the group is passed over
                return true;
            }

            i += size - 1;
        }

        return false;
    }

    /// <summary>Steps over so many chains of the foundation, counted from the hook; false when there are not so many.</summary>
    public bool SkipChains(int number)
    {
        if (number > _tops.Length)
        {
            Missing += number - _tops.Length;
            return false;
        }

        At = number;
        return true;
    }

    /// <summary>A round begins at the place worked into last: what lies before it comes last.</summary>
    public void BeginHere()
    {
        if (Last <= 0)
        {
            return;
        }

        Rotate(Last);
        FirstWorked = FirstWorked < 0 ? FirstWorked : 0;
    }

    /// <summary>The round is seen to begin at the first place that was worked into.</summary>
    public void Wrap()
    {
        Rotate(FirstWorked);
        FirstWorked = 0;
    }

    private void Rotate(int first)
    {
        _tops = [.. _tops[first..], .. _tops[..first]];
        _order = _order.IsDefault ? _order : [.. _order[first..], .. _order[..first]];
        At -= first;
        Last -= first;
        Count();
    }

    /// <summary>The place gone to last is still to be worked.</summary>
    public void StepBack() => At = Last >= 0 ? Last : At;

    /// <summary>Chains made just now are worked into before anything else: an increase at the row's start, or the foundation itself.</summary>
    public void Prepend(int chains)
    {
        _tops = [.. Enumerable.Repeat(Top.FoundationChain, chains), .. _tops];
        _order = _order.IsDefault ? _order : [.. Enumerable.Range(0, chains).Select(i => CrochetNotes.OwnChain - i), .. _order];
        At = 0;
        Count();
    }

    /// <summary>Work goes on over so many places along the other side of the chain.</summary>
    public void OtherSide(int places)
    {
        _order = _order.IsDefault ? _order : CrochetNotes.FreeSideOf(_order, Math.Max(0, FirstWorked), Math.Max(0, places));
        _tops = [.. Enumerable.Repeat(Top.FoundationChain, Math.Max(0, places))];
        At = 0;
        Last = -1;
        Count();
    }

    private void Count()
    {
        _stitches = new int[_tops.Length + 1];
        _spaces = new int[_tops.Length + 1];
        for (var i = 0; i < _tops.Length; i++)
        {
            _stitches[i + 1] = _stitches[i] + (_tops[i].Counts || _tops[i].Kind == TopKind.Chain ? 1 : 0);
            _spaces[i + 1] = _spaces[i] + (_tops[i].Kind == TopKind.Space ? 1 : 0);
        }
    }
}
