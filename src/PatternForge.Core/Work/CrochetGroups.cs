using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works several stitches in one place, and finds how many places "each" means.</summary>
internal sealed class CrochetGroups
{
    private const int Deepest = 6;

    private readonly CrochetRun _run;
    private readonly TurningChains _turningChains;
    private readonly ImmutableArray<InsteadStep> _instead;

    /// <summary>Works steps one after the other, each at its own place.</summary>
    public Action<ImmutableArray<Step>> Sequence { get; set; } = _ => { };

    public CrochetGroups(CrochetRun run, TurningChains turningChains)
    {
        _run = run;
        _turningChains = turningChains;
        _instead = [.. run.Row.Steps.OfType<InsteadStep>()];
    }

    private CrochetCursor Below => _run.Below;

    /// <summary>True when some places of the row get a group instead of the stitch ("working (sc, ch 2, sc) in each corner sp").</summary>
    public bool HasInstead => !_instead.IsEmpty;

    /// <summary>What "each sc" means where other stitches stand among them: those alone, or every stitch; as the stated count shows, else it is not known.</summary>
    public Thing Meant(Thing thing)
    {
        if (thing.Kind != ThingKind.Named || Below.Row.IsCountOnly || Below.Left(thing) == Below.StitchesLeft || Below.Left(thing) == 0)
        {
            return thing;
        }

        if (_run.Trial.Choices.Take(_run.Row.Origin, ReadingKind.EachStitch) == 1)
        {
            _run.Trial.Outcome.Readings.Add(new Reading(ReadingKind.EachStitch, _run.Row.Origin));
            return new Thing(ThingKind.Stitch);
        }

        _run.NotKnown |= _run.Row.Stated is null && !Below.Row.Tops.Any(t => t.Kind == TopKind.Space);
        return thing;
    }

    /// <summary>How many places "each" means; null when the end that it names is not there.</summary>
    public int? Places(Place place)
    {
        var stitches = place.Thing.Kind == ThingKind.Stitch && place.Also is null ? StitchesLeft : (int?)null;
        switch (place.Kind)
        {
            case PlaceKind.EachToLast:
                var tail = _run.In(place.Count);
                if (stitches is not null && place.Until.Kind == ThingKind.Stitch)
                {
                    var all = Below.StitchesLeft;
                    if (all < tail)
                    {
                        Below.Missing += tail - all;
                        return null;
                    }

                    return all - tail;
                }

                if (Below.LeftBeforeLast(place.Thing, place.Until, tail) is { } before)
                {
                    return before;
                }

                Below.Lack(place with { Thing = place.Until });
                return null;
            case PlaceKind.EachToCentre:
                var whole = place.Thing.Kind == ThingKind.Space ? Below.SpacesLeft : Below.StitchesLeft;
                return whole / 2 - (whole % 2 == 0 && place.Thing.Kind == ThingKind.Space ? 1 : 0);
            case PlaceKind.EachToNext:
                if (_run.Skipped && place.Count is null && Below.LeftBefore(place.Thing, place.Until) == 0)
                {
                    Below.Next(place with { Kind = PlaceKind.Next, Thing = place.Until, Count = null }); // skipped up to this one: the next is meant
                }

                if (Below.LeftBefore(place.Thing, place.Until) is { } there)
                {
                    _run.BeforeSpaces |= place.Count is not null;
                    var less = place.Count is { } apart ? _run.In(apart) : 0;
                    there += place.Also is { } also ? Below.LeftBefore(also, place.Until) ?? 0 : 0;
                    if (there < less)
                    {
                        Below.Missing += less - there;
                        return null;
                    }

                    return there - less;
                }

                Below.Lack(place with { Thing = place.Until });
                return null;
            default:
                return stitches ?? Math.Max(0, Below.Left(place.Thing, place.Also) - (Below.LastCounts(place.Thing) ? TurningChainLeft : 0));
        }
    }

    /// <summary>Stitches left, without a turning chain that a later step of the row works into.</summary>
    public int StitchesLeft => Below.StitchesLeft - TurningChainLeft;

    /// <summary>One, when the turning chain of the row below is left for a later step of the row; else none.</summary>
    public int TurningChainLeft => Below.EndsInTurningChain && _run.Row.Steps.Any(IntoTurningChain) ? 1 : 0;

    private static bool IntoTurningChain(Step step) => step switch
    {
        CrochetStep { Operation.Id: not "sl st", Place.Kind: PlaceKind.TurningChain } => true,
        ShellStep { Place.Kind: PlaceKind.TurningChain } => true,
        LeaveStep leave => leave.IsTurningChain,
        RepeatStep repeat => repeat.Ending.Any(IntoTurningChain),
        _ => false,
    };

    /// <summary>Each of several things in the order in which they stand; where a group is worked instead of the stitch, that.</summary>
    public void EachWith(Place place, int count, Action stitch)
    {
        var things = new List<Thing> { place.Thing };
        if (place.Also is { } also)
        {
            things.Add(also);
        }

        things.AddRange(_instead.Select(i => i.Thing));
        _run.NotKnown |= _instead.Any(i => i.Thing.IsCorner && Below.Left(i.Thing) == 0); // no corner to be seen
        count += _instead.Where(i => !Covers(place, i.Thing)).Sum(i => Below.Left(i.Thing));
        for (var i = 0; i < count && _run.Go() && Below.NextOf(things); i++)
        {
            if (_instead.FirstOrDefault(w => Below.LastIs(w.Thing)) is { } instead)
            {
                Group(instead.Body, null);
            }
            else
            {
                stitch();
            }
        }
    }

    private static bool Covers(Place place, Thing thing) => place.Thing.Kind == ThingKind.Any || place.Thing == thing || (thing is { Kind: ThingKind.Stitch, IsCorner: true } && place.Thing.Kind is ThingKind.Stitch or ThingKind.Named) || (place.Also is { } also && (also == thing || (also.Kind == thing.Kind && also.Length is null)));

    /// <summary>Works a group at each place meant.</summary>
    public void Work(ShellStep shell)
    {
        var place = shell.Place;
        var count = _run.In(place.Count);
        var times = _run.In(shell.Times);
        if (place.Kind == PlaceKind.Own)
        {
            for (var i = 0; i < times && _run.Go(); i++)
            {
                _run.Tops.Anchor(Below.Last);
                _run.Tops.BeginGroup(shell.Name);
                Sequence(shell.Body);
                _run.Tops.EndGroup();
            }

            return;
        }

        if (place.Kind is PlaceKind.Each or PlaceKind.EachToLast or PlaceKind.EachToNext or PlaceKind.EachToCentre)
        {
            if (Below.IsRing || Below.IsEmpty || Places(place with { Thing = place.Thing }) is not { } there)
            {
                _run.NotKnown |= Below.IsRing || Below.IsEmpty;
                return;
            }

            if (there == 0 && place.Kind == PlaceKind.Each)
            {
                LackEach(place);
            }

            count = there;
        }

        if (place.Kind == PlaceKind.Last)
        {
            if (Below.ToLast(place.Thing, count) is null)
            {
                Below.Lack(place);
                return;
            }

            place = place with { Kind = PlaceKind.Next };
        }

        _run.WorkedStitches |= place.Thing.Kind is not (ThingKind.Space or ThingKind.Gap);
        for (var i = 0; i < count && _run.Go(); i++)
        {
            if (!Reach(place, i))
            {
                return;
            }

            for (var time = 0; time < times && _run.Go(); time++)
            {
                Group(shell.Body, shell.Name);
            }
        }
    }

    /// <summary>None is left of what "each" names: it is not there, or the words before have passed it.</summary>
    public void LackEach(Place place)
    {
        if (Below.WasThere(place.Thing))
        {
            _run.NotKnown = true;
        }
        else
        {
            Below.Lack(place);
        }
    }

    /// <summary>Goes to the place of the n-th group; false when the row cannot go on.</summary>
    private bool Reach(Place place, int number)
    {
        switch (place.Kind)
        {
            case PlaceKind.Same:
                Below.StandOnFirst();
                return true;
            case PlaceKind.First when number == 0 && !Below.IsEmpty:
                if (!Below.First(place.Thing, 1))
                {
                    Below.Lack(place);
                }

                return true;
            case PlaceKind.Unclear or PlaceKind.JustMade:
                _run.NotKnown = true;
                return false;
            case PlaceKind.Gap:
                _run.MayLeave = true; // n stitches have n - 1 gaps
                _run.Tops.Notes?.Spoil();
                Below.Next(place with { Thing = new Thing(ThingKind.Any) });
                return true;
            case PlaceKind.Ring or PlaceKind.Edge or PlaceKind.First:
                _run.MayLeave |= place.Kind == PlaceKind.Edge;
                return true;
            case PlaceKind.TurningChain:
                Below.ToTurningChain();
                return true;
            case PlaceKind.InGroup:
                if (!Below.IntoGroup(place.Count is null ? null : _run.In(place.Count)))
                {
                    _run.NotKnown = true;
                    return false;
                }

                return true;
            case PlaceKind.ChainFromHook:
                if (Below.IsEmpty)
                {
                    return true;
                }

                _run.NotKnown |= !Below.IsFoundation;
                return Below.SkipChains(Math.Max(0, _run.In(place.Count) - 1)) && Below.Next(place with { Kind = PlaceKind.Next, Count = null });
            default:
                if (Below.IsRing)
                {
                    return true;
                }

                Below.Next(place.Thing.Kind == ThingKind.Chain && !Below.IsFoundation ? place with { Thing = new Thing(ThingKind.Any) } : place);
                return true;
        }
    }

    /// <summary>One group, in the place found last.</summary>
    public void Group(ImmutableArray<Step> body, string? name)
    {
        _run.Tops.Anchor(Below.Last);
        _run.Tops.BeginGroup(name);
        InPlace(body, 0);
        _run.Tops.EndGroup();
    }

    private void InPlace(ImmutableArray<Step> body, int depth)
    {
        foreach (var step in body)
        {
            if (!_run.Go() || depth > Deepest)
            {
                return;
            }

            switch (step)
            {
                case CrochetStep { Operation.Id: "sl st", Place.Kind: PlaceKind.ChainFromHook or PlaceKind.JustMade }:
                    _run.Tops.Picot();
                    break;
                case CrochetStep { Operation.Id: "sl st" }:
                    _run.Tops.Anchor(Below.Last);
                    _run.Tops.Notes?.At(NoteKind.Slip);
                    break;
                case CrochetStep stitch:
                    _run.LastStitch = stitch.Operation;
                    _run.Tops.Make(stitch.Operation, Math.Min(stitch.Each is not null ? _run.In(stitch.Each) : _run.In(stitch.Place?.Count), _run.Trial.Budget.MostStitches + 1), Below.Last);
                    break;
                case ChainStep chain when depth == 0 && _turningChains.IsDue:
                    _turningChains.Make(chain); // "(ch 3, 2 dc, ch 2, 3 dc) in same sp"
                    break;
                case ChainStep chain:
                    _run.Tops.Chain(_run.In(chain.Chains));
                    break;
                case GroupStep group:
                    for (var i = 0; i < _run.In(group.Times) && _run.Go(); i++)
                    {
                        InPlace(group.Body, depth + 1);
                    }

                    break;
                case ShellStep shell:
                    InPlace(shell.Body, depth + 1);
                    break;
            }
        }
    }
}
