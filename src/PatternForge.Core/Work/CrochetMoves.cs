using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What moves along the row without being a stitch of it: slip stitches at its ends, joins, skips, the other side of a chain.</summary>
internal sealed class CrochetMoves
{
    private readonly CrochetRun _run;
    private readonly CrochetPlaces _places;

    public CrochetMoves(CrochetRun run, CrochetPlaces places)
    {
        _run = run;
        _places = places;
    }

    private CrochetCursor Below => _run.Below;

    /// <summary>Slip stitches: before any stitch they move the row's start, at its end they close the round, behind chains they make a picot or a loop, in between they are stitches.</summary>
    public void Slip(CrochetStep step)
    {
        var place = step.Place ?? new Place(PlaceKind.Next, new Thing(ThingKind.Stitch), step.Origin) { Count = _run.In(step.Each) == 1 ? null : step.Each };
        if (place.Kind == PlaceKind.ChainFromHook)
        {
            SlipOnChain(step, place);
        }
        else if (place.Kind == PlaceKind.JustMade)
        {
            _run.Tops.Picot();
        }
        else if (!_run.Tops.HasStitches && _run is { Depth: <= 1, Tops.Chains: 0 } && !Below.IsFoundation && !Below.IsRing)
        {
            Begin(place);
        }
        else if (_run.IsTunisian && _run.Tops.Stitches <= 1 && place.Kind is PlaceKind.Next or PlaceKind.First && Below.StitchesLeft > _run.In(place.Count))
        {
            Begin(place); // bound off at the row's start
        }
        else if (place.Kind is PlaceKind.First or PlaceKind.TurningChain)
        {
            Close(new CloseStep(step.Origin, place.Thing.Length));
        }
        else if (place.Kind is PlaceKind.Same or PlaceKind.Ring)
        {
            _run.Tops.Anchor(Below.Last);
            _run.Tops.Notes?.At(NoteKind.Slip);
        }
        else if (place.Kind == PlaceKind.Next && _run.InTheRound && _run.Tops.HasStitches && Below.StitchesLeft < _run.In(place.Count) && place.Thing.Kind == ThingKind.Stitch)
        {
            _run.MayLeave = true; // past the round's end it only leads into the next one, or on to where the yarn is cut
        }
        else if (Below.StitchesLeft > 0 || !_run.Tops.HasStitches || place.Count is not null)
        {
            _places.At(place, step.Operation, 1, 1); // past the end it only moves into the next round
        }
    }

    private void SlipOnChain(CrochetStep step, Place place)
    {
        if (_run.Tops.Chains > 0 && (_run.Tops.HasStitches || !Below.IsEmpty) && _run.Tops.Chains <= _run.In(place.Count))
        {
            _run.Tops.Picot();
        }
        else if (Below.IsFoundation || _run.Foundation > 0)
        {
            _places.At(place, step.Operation, 1, 1);
        }
        else
        {
            _run.NotKnown = true; // worked back along chains of its own
        }
    }

    /// <summary>The row begins at a place further on: slip stitches lead there, or the yarn is joined there.</summary>
    public void Begin(Place place)
    {
        var count = _run.In(place.Count);
        if (place.Kind == PlaceKind.Each && _run.IsTunisian)
        {
            _run.BoundOff = true;
            return;
        }

        if (place.Kind is PlaceKind.Each or PlaceKind.EachToLast)
        {
            _run.NotKnown = true; // a whole row of slip stitches: an edging
            return;
        }

        var before = Below.StitchesLeft;
        if (place is { Thing.Kind: ThingKind.Chain } && !Below.IsFoundation && (Below.NextChain() || Below.NextSpaceChain()))
        {
            _run.Tops.Notes?.At(NoteKind.Slip);
            return; // "sl st in next 3 chs": on into the space
        }

        for (var i = 0; i < count && _run.Go(); i++)
        {
            if (place.Kind == PlaceKind.First ? !Below.First(place.Thing, i + 1) : place.Kind == PlaceKind.Next && !Below.Next(place))
            {
                if (place.Kind == PlaceKind.First)
                {
                    Below.Lack(place);
                }

                return;
            }

            _run.Tops.Notes?.At(NoteKind.Slip);
        }

        _run.BeganAt += before - Below.StitchesLeft;
    }

    /// <summary>The round is closed.</summary>
    public void Close(CloseStep close)
    {
        if (close.TopOf is > 0 and var said && _run.Tops.TurningChain is { } made and > 0 && made != said)
        {
            _run.Report(new Problem(ProblemKind.NoSuchPlace, close.Origin, said, made) { Text = "beginning chain" });
        }

        if (!_run.Tops.HasStitches && _run.Foundation > 0)
        {
            _run.Tops.Notes?.Chains(NoteKind.Ring, _run.Tops.Chains);
            _run.Tops.TakeChains(); // "Ch 4, join.": a ring
            _run.MadeRing = Below.IsRing = true;
            return;
        }

        _run.Overhang = _run.Tops.Chains > 0 ? _run.Tops.Chains + 1 : 0;
        _run.Tops.Anchor(Below.Last);
        _run.Tops.Notes?.Join();
        _run.Closed = true;
    }

    /// <summary>Places passed over.</summary>
    public void Skip(SkipStep skip)
    {
        if (skip.Place.Thing is { Kind: ThingKind.Named, Named.Id: "sl st" } && !Below.Row.Tops.Any(t => t.Stitch?.Id == "sl st"))
        {
            return; // those that join the row to another piece are no stitches of it
        }

        var count = _run.In(skip.Place.Count);
        var place = skip.Place with { Kind = PlaceKind.Next };
        var byChains = place.Thing.Kind == ThingKind.Chain && !Below.IsFoundation;
        if (byChains)
        {
            place = place with { Thing = new Thing(ThingKind.Any) };
        }

        if (skip.Place.Kind == PlaceKind.First && !Below.IsFoundation)
        {
            if (!Below.First(place.Thing, Math.Max(1, count)))
            {
                Below.Lack(skip.Place);
            }

            return;
        }

        if (skip.Place.Kind is PlaceKind.Each or PlaceKind.EachToLast or PlaceKind.EachToNext)
        {
            _places.Pass(skip.Place);
            return;
        }

        if (skip.Place.Kind == PlaceKind.Same)
        {
            return; // the stitch under the turning chain, which stands on it
        }

        if (Below is { IsFoundation: true, At: 0 } && !_run.Tops.HasStitches && count > 0 && TurningChains.First(_run.Row.Steps) is { } foundation && _run.Depth <= 1)
        {
            // "Skip first 3 chs, dc in next ch" is "dc in 4th ch from hook".
            _places.GoToChain(skip.Place with { Kind = PlaceKind.ChainFromHook, Count = CrochetRun.Number(count + 1, skip.Place) }, foundation.Operation);
            return;
        }

        count -= skip is { SaysNext: false } && IsBase(skip, count) ? 1 : 0;

        if (Below.IsRing)
        {
            return;
        }

        for (var i = 0; i < count && _run.Go(); i++)
        {
            if (!byChains || !Below.NextChain())
            {
                Below.Next(place);
            }
        }
    }

    /// <summary>"3 ch (counts as tr), miss 1 st": the stitch under the turning chain, or the one after it; what fits tells, and each stitch behind it speaks for the first.</summary>
    private bool IsBase(SkipStep skip, int count)
    {
        if (count < 1 || skip.Place.Thing.Kind != ThingKind.Stitch || !_run.Tops.HasOnlyTurningChain || Below.IsRing)
        {
            return false;
        }

        var next = _run.Row.Steps.SkipWhile(s => s != skip).Skip(1).FirstOrDefault();
        var likely = count == 1 && _run.Tops.Chains == 0 && next is CrochetStep { Place.Kind: PlaceKind.Each or PlaceKind.EachToLast };
        return _run.Trial.Choices.Take(skip.Origin, ReadingKind.SkipsBase) == (likely ? 0 : 1);
    }

    /// <summary>Along the other side of the chain: all its chains but the ones skipped at the hook; the one that was turned round in may be worked into again.</summary>
    public void OtherSide()
    {
        Below.OtherSide(Math.Max(_run.Foundation, Below.Length));
        _run.MayLeave = true;
    }
}
