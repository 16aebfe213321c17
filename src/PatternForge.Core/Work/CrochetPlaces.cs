using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Works stitches of one kind at the places that a step names.</summary>
internal sealed class CrochetPlaces
{
    private readonly CrochetRun _run;
    private readonly TurningChains _chains;
    private readonly CrochetGroups _groups;

    public CrochetPlaces(CrochetRun run, TurningChains chains, CrochetGroups groups)
    {
        _run = run;
        _chains = chains;
        _groups = groups;
    }

    private CrochetCursor Below => _run.Below;

    /// <summary>Works a step's stitches.</summary>
    public void Work(CrochetStep step)
    {
        var stitch = step.Operation;
        _run.Overhang = 0;
        if (stitch.Id is "inc" or "dec" or "invdec")
        {
            stitch = _run.LastStitch with { Takes = stitch.Takes, Makes = stitch.Makes };
        }
        else if (stitch.Id != "st")
        {
            _run.LastStitch = stitch.Takes != 1 ? CrochetNames.Plain(stitch) : stitch;
        }
        else
        {
            stitch = _run.LastStitch;
        }

        var each = _run.In(step.Each);
        if (step.Each is not null && each == 0)
        {
            return;
        }

        if (stitch.Takes == 0)
        {
            Make(stitch, each); // foundation stitches: from nothing
            _run.MayLeave = true;
            return;
        }

        if (Below.IsRing && step.Place is null or { Kind: PlaceKind.Ring or PlaceKind.Next or PlaceKind.Same })
        {
            Make(stitch, (long)each * stitch.Makes * _run.In(step.Place?.Count));
            return;
        }

        // "5 sc" is one in each of the next five, "5 sc in next st" five in one.
        if (step.Place is null)
        {
            _run.WorkedStitches = true;
            Several(new Place(PlaceKind.Next, new Thing(ThingKind.Stitch), step.Origin) { Count = step.Each }, each, stitch, stitch.Makes, stitch.Takes);
            return;
        }

        At(step.Place, stitch, (long)each * stitch.Makes, IsCluster(step) ? 1 : stitch.Takes);
    }

    /// <summary>"dc3tog in next st" is a cluster in one stitch; of the shortest stitch it is likelier a decrease over several. What fits tells.</summary>
    private bool IsCluster(CrochetStep step)
    {
        if (step is not { Operation: { Takes: > 1, Makes: 1, IsSpecial: false, Id: not ("dec" or "invdec") }, Place: { Kind: PlaceKind.Next, Count: null, Thing.Kind: ThingKind.Stitch or ThingKind.Named } })
        {
            return false;
        }

        return _run.Trial.Choices.Take(step.Origin, ReadingKind.ClusterInOne) == (TurningChains.HeightOf(step.Operation) >= 3 ? 0 : 1);
    }

    /// <summary>Makes so many stitches at each place meant.</summary>
    /// <param name="place">Where.</param>
    /// <param name="stitch">What.</param>
    /// <param name="makes">How many at each place.</param>
    /// <param name="takes">Places that each of them uses up.</param>
    public void At(Place place, Operation stitch, long makes, int takes)
    {
        var count = _run.In(place.Count);
        _run.WorkedStitches |= place.Thing.Kind is not (ThingKind.Space or ThingKind.Gap);
        if (place is { Kind: PlaceKind.TurningChain, FromStart: 1 })
        {
            if (Below.IsEmpty && !_run.Tops.HasStitches && _run.Tops.Chains > 1)
            {
                FromHook(place with { Count = CrochetRun.Number(_run.Tops.Chains, place) }, stitch, makes);
                return;
            }

            place = place with { FromStart = null };
        }

        if (place.FromStart is { } nth && !GoFromStart(place.Thing, nth))
        {
            return;
        }

        switch (place.Kind)
        {
            case PlaceKind.Next:
                // "sc2tog over next 2 sts" is one decrease.
                if (takes > 1 && place.Count is not null && (place.Thing.Kind == ThingKind.Space || count % takes != 0))
                {
                    _run.NotKnown = true;
                    break;
                }

                Several(place, takes > 1 && place.Count is not null ? count / takes : count, stitch, makes, takes);
                break;
            case PlaceKind.Each or PlaceKind.EachToLast or PlaceKind.EachToNext or PlaceKind.EachToCentre:
                Each(place, stitch, makes, takes);
                break;
            case PlaceKind.First:
                if (Below.IsEmpty && !(Below.IsRing && _run is { InTheRound: true, Depth: 1, Tops: { HasStitches: true, Chains: > 0 } } && count == 1))
                {
                    Make(stitch, makes * count);
                }
                else if (_run is { InTheRound: true, Tops: { HasStitches: true, Chains: > 0 } } && count == 1)
                {
                    CloseWith(stitch); // into the first stitch of this round
                    _run.Tops.Notes?.IntoFirst();
                    Make(stitch, makes);
                }
                else if (takes > 1 && place.Count is not null && count % takes == 0 && Below.First(place.Thing, 1))
                {
                    Below.StepBack(); // "dec over first 2 sts"
                    Several(place with { Kind = PlaceKind.Next }, count / takes, stitch, makes, takes);
                }
                else if (Below.First(place.Thing, 1))
                {
                    if (_run.InTheRound && !_run.Tops.HasStitches && place.Thing.Kind == ThingKind.Space)
                    {
                        Below.BeginHere(); // "join with sc in any corner sp"
                    }

                    Make(stitch, makes);
                    Several(place with { Kind = PlaceKind.Next }, count - 1, stitch, makes, takes);
                }
                else
                {
                    Below.Lack(place);
                }

                break;
            case PlaceKind.Last:
                Last(place, count, stitch, makes, takes);
                break;
            case PlaceKind.Same:
                Below.StandOnFirst();
                CloseWith(stitch);
                Make(stitch, makes * count);
                break;
            case PlaceKind.TurningChain:
                var isUsed = Below.IsTurningChainUsed || (Below.StitchesLeft == 0 && Below.Row.IsCountOnly && _run.Tops.BeganWithStitch);
                if (isUsed && !_run.Below.WorkedSpaces && !_run.MayLeave && !Below.NotKnown)
                {
                    Below.Missing++; // the stitches told before have gone into it already
                }
                else if (Below.ToTurningChain() || Below.StitchesLeft == 0)
                {
                    Make(stitch, makes); // where the row below is not known it is a place all the same
                }
                else
                {
                    Into(place with { Kind = PlaceKind.Next, Thing = new Thing(ThingKind.Any) }, stitch, makes, 1);
                }

                break;
            case PlaceKind.ChainFromHook:
                FromHook(place, stitch, makes);
                break;
            case PlaceKind.InGroup:
                if (Below.IntoGroup(place.Count is null ? null : count))
                {
                    Make(stitch, makes);
                }
                else
                {
                    _run.NotKnown = true;
                }

                break;
            case PlaceKind.Gap:
                Several(place with { Kind = PlaceKind.Next, Thing = new Thing(ThingKind.Any) }, count, stitch, makes, 1);
                _run.MayLeave = true; // n stitches have n - 1 gaps
                _run.Tops.Notes?.Spoil();
                break;
            case PlaceKind.Unclear or PlaceKind.JustMade:
                _run.NotKnown = true;
                break;
            case PlaceKind.Ring or PlaceKind.Edge:
                if (place.Kind == PlaceKind.Edge && Below.Length == 0)
                {
                    _run.Tops.Notes?.AlongEdge();
                }

                Make(stitch, makes * count);
                _run.MayLeave = true;
                break;
        }
    }

    /// <summary>"dc in 2nd st" at the row's start, before anything but its turning chain has been worked; elsewhere it cannot be known from where to count.</summary>
    private bool GoFromStart(Thing thing, int nth)
    {
        if (_run.Tops.Stitches > (_run.Tops.HasOnlyTurningChain ? 1 : 0) || Below.At >= nth || Below.IsRing || Below.IsFoundation || (nth > 1 && !Below.First(thing, nth - 1)))
        {
            _run.NotKnown = true;
            return false;
        }

        return true;
    }

    /// <summary>"ch 2, dc in first sc to join": chains and a tall stitch close the round, and pass over what they span.</summary>
    private void CloseWith(Operation stitch)
    {
        if (_run is { InTheRound: true, Tops: { HasStitches: true, Chains: > 0 } tops })
        {
            _run.Overhang = tops.Chains + TurningChains.HeightOf(stitch) + 1;
            _run.ClosedWithStitch = true;
        }
    }

    private void Make(Operation stitch, long count) => _run.Tops.Make(stitch, (int)Math.Min(count, _run.Trial.Budget.MostStitches + 1), Below.Last);

    private void Several(Place place, int times, Operation stitch, long makes, int takes)
    {
        for (var i = 0; i < times && _run.Go(); i++)
        {
            Into(place, stitch, makes, takes, mayGoRound: times == 1 && takes == 1);
        }
    }

    private void Into(Place place, Operation stitch, long makes, int takes, bool mayGoRound = false)
    {
        if (Below.IsEmpty && _run.MayLeave)
        {
            Make(stitch, makes); // along edges, where nothing can be counted
            return;
        }

        if (place is { Thing.Kind: ThingKind.Chain, Count: not null } && Below.Row.IsCountOnly)
        {
            Make(stitch, makes); // chains beside the stitches that are known: under an arm, over an opening
            _run.MayLeave = true;
            return;
        }

        if (place.Thing.Kind == ThingKind.Chain && !Below.IsFoundation)
        {
            if (takes == 1 && Below.NextChain())
            {
                Make(stitch, makes); // in the chains of a space, one by one
                return;
            }

            place = place with { Thing = new Thing(ThingKind.Any) }; // stitches called chains
        }

        if (place.Thing.Kind == ThingKind.Space)
        {
            takes = 1; // all legs of a cluster in one space
        }

        // A stitch that closes chains may stand on the first one of the round; it is then that stitch.
        mayGoRound &= _run.InTheRound && _run.Tops.Chains > 0;
        var went = Below.WentRound;
        for (var i = 0; i < takes; i++)
        {
            Below.Next(place, mayGoRound);
            _run.Tops.Notes?.Leg();
        }

        if (Below.WentRound && !went)
        {
            _run.Tops.Anchor(Below.Last);
            return;
        }

        Make(stitch, makes);
    }

    private void Each(Place place, Operation stitch, long makes, int takes)
    {
        if (Below.IsRing || Below.IsEmpty)
        {
            _run.NotKnown = true;
            return;
        }

        var thing = _groups.Meant(place.Thing.Kind == ThingKind.Chain && !Below.IsFoundation && Below.SpacesLeft == 0 ? new Thing(ThingKind.Stitch) : place.Thing);
        if (place.Also is not null && Below.Row.IsCountOnly)
        {
            _run.NotKnown = true;
            return;
        }

        if (Below.SpacesUnseen && place is { Kind: PlaceKind.EachToNext, Until.Kind: ThingKind.Space })
        {
            _run.NotKnown |= makes != 1 || takes != 1 || place.Count is not null || (_run.ToUnseen is { } other && other != stitch);
            _run.ToUnseen = stitch;
            return;
        }

        if (_groups.Places(place with { Thing = thing }) is not { } there)
        {
            return;
        }

        if (place.Kind == PlaceKind.Each && there == 0 && thing.Kind is ThingKind.Space or ThingKind.Named or ThingKind.Gap)
        {
            _groups.LackEach(place with { Thing = thing });
            return;
        }

        var single = place with { Kind = PlaceKind.Next, Thing = thing, Count = CrochetRun.Number(2, place) };
        if (place.Also is not null || _groups.HasInstead)
        {
            _groups.EachWith(single, there, () => Make(stitch, makes));
            return;
        }

        for (var i = 0; i < there / Math.Max(1, takes) && _run.Go(); i++)
        {
            Into(single, stitch, makes, takes);
        }
    }

    /// <summary>Passes over each of what a place names.</summary>
    public void Pass(Place place)
    {
        if (Below.IsRing || Below.Row.IsCountOnly)
        {
            _run.NotKnown = true;
            return;
        }

        var there = _groups.Places(place) ?? 0;
        for (var i = 0; i < there && _run.Go(); i++)
        {
            Below.Next(place with { Kind = PlaceKind.Next, Count = null });
        }
    }

    private void Last(Place place, int count, Operation stitch, long makes, int takes)
    {
        if (place.Thing.Kind == ThingKind.Chain && !Below.IsFoundation)
        {
            place = place with { Thing = new Thing(ThingKind.Any) };
        }

        if (Below.IsEmpty && _run.MayLeave)
        {
            Make(stitch, makes * count);
            return;
        }

        var beyond = count == 1 && place.Thing.Kind != ThingKind.Space && Below.LastCounts(place.Thing) ? _groups.TurningChainLeft : 0; // "dc in last dc, dc in tch"
        if (Below.ToLast(place.Thing, count + beyond) is not { } passed)
        {
            if (place.Thing.Kind == ThingKind.Named && Below.StitchesLeft == 0 && Below.Last >= 0 && !Below.WorkedSpaces)
            {
                Below.Missing++;
            }
            else
            {
                Below.Lack(place);
            }

            return;
        }

        if (passed > 0 && place.Thing.Kind != ThingKind.Space && !Below.WorkedSpaces && !_run.MayLeave)
        {
            _run.Misfit ??= new Problem(ProblemKind.LeftOver, _run.Row.Origin, Below.Length - passed, Below.Length);
        }

        Several(place with { Kind = PlaceKind.Next }, takes > 1 ? count / takes : count, stitch, makes, takes);
    }

    /// <summary>"dc in 4th ch from hook": of the foundation, of chains just made to begin the row, or of nothing that is there.</summary>
    private void FromHook(Place place, Operation stitch, long makes)
    {
        var number = _run.In(place.Count);
        if (Below.IsEmpty && _run.Tops.Chains == 0 && _run.Foundation == 0)
        {
            _run.MayLeave = true; // chains made before the row was told of
            Make(stitch, makes);
            return;
        }

        if (GoToChain(place, stitch))
        {
            Below.Next(place with { Kind = PlaceKind.Next });
            Make(stitch, makes);
        }
    }

    /// <summary>Passes over the chains before the n-th from the hook; false when the row cannot go on there.</summary>
    public bool GoToChain(Place place, Operation stitch)
    {
        var number = _run.In(place.Count);
        if (_run.Tops.HasStitches)
        {
            _run.NotKnown = true; // a stem worked back along chains of its own
            return false;
        }

        if (_run.Tops.Chains > 0 && (Below.IsEmpty || Below.IsFoundation || _run.Tops.Chains >= number))
        {
            _run.Tops.Notes?.Chains(NoteKind.Foundation, _run.Tops.Chains);
            Below.Prepend(_run.Tops.TakeChains());
        }
        else if (_run.Tops.TurningChain is { } made && made >= number)
        {
            Below.Prepend(made);
            _run.Tops.Restore(default); // no turning chain after all
            _run.Tops.Notes?.Chains(NoteKind.Foundation, made);
        }

        if (!Below.IsFoundation)
        {
            Below.NoPlace ??= place;
            return false;
        }

        if (!Below.SkipChains(Math.Max(0, number - 1)))
        {
            return false;
        }

        if (_run.IsTunisian)
        {
            _run.Tops.Make(stitch, (int)Math.Min(number - 1L, _run.Trial.Budget.MostStitches + 1L), 0); // the loop on the hook stands over the first chain
        }
        else
        {
            _chains.Skipped(place, stitch, number - 1);
        }

        return true;
    }
}
