using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works brackets and starred repeats of a crochet row.</summary>
internal sealed class CrochetRepeats
{
    private readonly CrochetRun _run;
    private readonly CrochetGroups _groups;
    private readonly Action<ImmutableArray<Step>> _work;

    public CrochetRepeats(CrochetRun run, CrochetGroups groups, Action<ImmutableArray<Step>> work)
    {
        _run = run;
        _groups = groups;
        _work = work;
    }

    private CrochetCursor Below => _run.Below;

    /// <summary>So many times in all.</summary>
    public void Times(ImmutableArray<Step> body, long times)
    {
        for (long i = 0; i < times && _run.Go(); i++)
        {
            _work(body);
        }
    }

    /// <summary>A starred repeat, by number or to a place.</summary>
    public void Repeat(RepeatStep repeat)
    {
        if (repeat.Times is { } times)
        {
            var more = repeat.IsMore;
            if (repeat.IsTwoWays)
            {
                more = _run.Trial.Choices.Take(repeat.Origin, ReadingKind.InAll) == 0;
                _run.Read(more ? ReadingKind.More : ReadingKind.InAll, repeat);
            }

            Times(repeat.Body, _run.In(times) + (more ? 1L : 0));
            _work(repeat.Ending);
            return;
        }

        if (Below.IsRing || Below.IsEmpty)
        {
            _run.NotKnown = true; // a ring has no end to come to
            return;
        }

        if (ToPlace(repeat))
        {
            _work(repeat.Ending);
        }
    }

    /// <summary>Works whole repeats up to a place; false when the ending has already been worked in place of the end of the last one.</summary>
    private bool ToPlace(RepeatStep repeat)
    {
        var to = repeat.To!;
        var bySpaces = to.Extent == Extent.LastSpaces || !UsesStitches(repeat.Body);
        if (bySpaces && Below.Row.IsCountOnly)
        {
            _run.NotKnown = true;
            return true;
        }

        var space = bySpaces ? SpaceIn(repeat.Body) : null;
        int Left() => space is { } named ? Below.Left(named) : bySpaces ? Below.SpacesLeft : to.Extent == Extent.LastStitches ? Below.StitchesLeft : _groups.StitchesLeft;
        var stop = (to.Extent is Extent.LastStitches or Extent.LastSpaces ? _run.In(to.Stitches) : 0) + (repeat.EndsLastRepeat ? 0 : Takes(repeat.Ending, bySpaces));
        if (space is { } wanted && Left() == 0 && Below.SpacesLeft > 0)
        {
            Below.Lack(new Place(PlaceKind.Next, wanted, repeat.Origin));
            return true;
        }

        if (space is { Kind: ThingKind.Gap } && Left() == 0)
        {
            _run.NotKnown = true; // which gaps are meant a maker sees
            return true;
        }

        var available = Left() - stop;
        var (size, passes) = (0, 0);
        while (Left() > stop && _run.Go())
        {
            var (left, at) = (Left(), Below.At);
            var (below, tops) = (Below.Save(), _run.Tops.Save());
            _work(repeat.Body);
            if (Below.WentRound && !below.WentRound && repeat.Ending.FirstOrDefault() is ChainStep)
            {
                // "*ch 1, sk 1, dc in next; rep around, ch 1, join": the last stitch is skipped as well, and the chains close the round.
                Below.Restore(below);
                _run.Tops.Restore(tops);
                _run.Trial.Notes?.RipBack(0);
                _run.MayLeave = true;
                return true;
            }

            if (_run.NotKnown || Below.NotKnown || _run.Misfit is not null)
            {
                return true;
            }

            if (repeat.EndsLastRepeat && Left() == 0 && Below.Missing == below.Missing && Below.NoPlace == below.NoPlace)
            {
                // "..., ending last rep with 2 sc in last st": the last time through ends otherwise.
                Below.Restore(below);
                _run.Tops.Restore(tops);
                _run.Trial.Notes?.RipBack(0);
                if (Cut(repeat))
                {
                    return false;
                }
            }

            if (Below.Missing > below.Missing || (Below.NoPlace is not null && below.NoPlace is null) || Left() < stop)
            {
                if (Below.NoPlace is not null && passes == 0)
                {
                    return true; // there is no such place at all: reported as that
                }

                var needs = left - Left() + Below.Missing - below.Missing;
                Below.Restore(below);
                _run.Tops.Restore(tops);
                _run.Trial.Notes?.RipBack(0);
                if (repeat.SaysEnding && passes > 0 && Cut(repeat))
                {
                    return false;
                }

                _run.Misfit ??= new Problem(ProblemKind.Misfit, repeat.Origin, size > 0 ? size : Math.Max(1, needs), Math.Max(0, available), passes, left - stop);
                return true;
            }

            if (Below.At == at && !Below.WentRound)
            {
                _run.Misfit ??= new Problem(ProblemKind.Endless, repeat.Origin);
                return true;
            }

            size = Math.Max(size, left - Left());
            passes++;
        }

        if (passes > 0 && !bySpaces && to.Extent == Extent.End && repeat.Ending.IsEmpty)
        {
            OverTheStart(repeat);
        }

        return true;
    }

    /// <summary>"*2 sc in next sp, sc in next dc; rep around": the last pass goes on to the stitches that the first one passed over.</summary>
    private void OverTheStart(RepeatStep repeat)
    {
        if (!Below.MayWrap || Below.FirstWorked <= 0 || Below.SpacesLeft == 0 || !repeat.Body.Any(s => s is CrochetStep { Place.Thing.Kind: ThingKind.Space } or ShellStep { Place.Thing.Kind: ThingKind.Space }))
        {
            return;
        }

        var (below, tops, first) = (Below.Save(), _run.Tops.Save(), Below.FirstWorked);
        Below.Wrap();
        _work(repeat.Body);
        if (Below.Missing > below.Missing || Below.NoPlace != below.NoPlace || _run.Misfit is not null || _run.NotKnown)
        {
            Below.Restore(below);
            Below.FirstWorked = first;
            _run.Tops.Restore(tops);
            (_run.Misfit, _run.NotKnown) = (null, false);
        }
    }

    /// <summary>"..., ending with 3 dc in last sc": the ending takes the place of the end of one more repeat, where that uses up the row.</summary>
    private bool Cut(RepeatStep repeat)
    {
        var (below, tops) = (Below.Save(), _run.Tops.Save());
        for (var kept = repeat.Body.Length - 1; kept > 0; kept--)
        {
            _work(repeat.Body[..kept]);
            _work(repeat.Ending);
            if (Below.Missing == below.Missing && Below.NoPlace == below.NoPlace && !_run.NotKnown && !Below.NotKnown && _run.Misfit is null && Below.StitchesLeft == 0)
            {
                _run.Read(ReadingKind.CutRepeat, repeat);
                return true;
            }

            Below.Restore(below);
            _run.Tops.Restore(tops);
            (_run.NotKnown, _run.Misfit) = (false, null);
        }

        return false;
    }

    /// <summary>Stitches, or spaces, that the ending of a repeat takes.</summary>
    private int Takes(ImmutableArray<Step> ending, bool bySpaces)
    {
        var takes = 0L;
        foreach (var step in ending)
        {
            takes += step switch
            {
                CrochetStep { Operation.Id: "sl st" } or CrochetStep { Place.Kind: PlaceKind.TurningChain or PlaceKind.Same or PlaceKind.First } => 0,
                CrochetStep { Place: { Thing.Kind: ThingKind.Space } place } => bySpaces ? _run.In(place.Count) : 0,
                CrochetStep stitch => bySpaces ? 0 : (long)_run.In(stitch.Place is null ? stitch.Each : stitch.Place.Count) * (stitch.Place is null || stitch.Place.Count is null ? stitch.Operation.Takes : 1),
                SkipStep skip => skip.Place.Thing.Kind == ThingKind.Space ? (bySpaces ? _run.In(skip.Place.Count) : 0) : bySpaces ? 0 : _run.In(skip.Place.Count),
                ShellStep { Place.Kind: PlaceKind.Same or PlaceKind.TurningChain } => 0,
                ShellStep { Place.Kind: PlaceKind.Own } own => bySpaces ? 0 : (long)_run.In(own.Place.Count) * _run.In(own.Times),
                ShellStep shell => shell.Place.Thing.Kind == ThingKind.Space == bySpaces ? _run.In(shell.Place.Count) : 0,
                GroupStep group => (long)Takes(group.Body, bySpaces) * _run.In(group.Times),
                _ => 0,
            };
        }

        return (int)Math.Min(takes, int.MaxValue / 4);
    }

    /// <summary>The spaces that a body goes into, where it names their length ("next ch-5 loop"); null where it goes into any.</summary>
    private static Thing? SpaceIn(ImmutableArray<Step> body)
    {
        foreach (var step in body)
        {
            var place = step switch
            {
                CrochetStep stitch => stitch.Place,
                ShellStep shell => shell.Place,
                SkipStep skip => skip.Place,
                _ => null,
            };
            if (place?.Thing.Kind == ThingKind.Gap)
            {
                return place.Thing;
            }

            if (place?.Thing.Kind == ThingKind.Space)
            {
                return place.Thing.Length is null ? null : place.Thing;
            }
        }

        return null;
    }

    private static bool UsesStitches(ImmutableArray<Step> body) => body.Any(step => step switch
    {
        CrochetStep { Operation.Id: "sl st", Place.Kind: PlaceKind.ChainFromHook or PlaceKind.Same } => false,
        CrochetStep { Place: null or { Thing.Kind: not (ThingKind.Space or ThingKind.Gap), Kind: not (PlaceKind.Same or PlaceKind.Ring) } } => true,
        ShellStep { Place: { Thing.Kind: not (ThingKind.Space or ThingKind.Gap), Kind: not (PlaceKind.Same or PlaceKind.Ring) } } => true,
        SkipStep { Place.Thing.Kind: not ThingKind.Space } => true,
        GroupStep group => UsesStitches(group.Body),
        RepeatStep repeat => UsesStitches(repeat.Body),
        OperationStep or IncreaseStep => true,
        _ => false,
    });
}
