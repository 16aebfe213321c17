using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>Finds the places that a row goes to: its end, markers, gaps, ends of needles.</summary>
internal static class Places
{
    private const int MostNeedles = 8;

    /// <summary>Stitches from here to a place; negative where the place has been passed; null, with a problem, where there is no such place.</summary>
    public static int? Distance(RowRun run, Target target, TextSpan origin)
    {
        var before = run.In(target.Stitches) ?? 0;
        if (Known(run, target, before, origin) is { } distance)
        {
            return distance;
        }

        if (target.Extent == Extent.Gap)
        {
            run.Work.KnowsPlaces = false;
        }

        if (run.Work.KnowsPlaces)
        {
            run.Lose(new Problem(ProblemKind.NoMarker, origin, before));
            run.MayLeave = true;
            return null;
        }

        // Where the marker is does not matter to the count as long as the rest of the row is worked to its end.
        run.Guessed = true;
        return 0;
    }

    private static int? Known(RowRun run, Target target, int before, TextSpan origin)
    {
        var needles = run.Needles;
        return target.Extent switch
        {
            Extent.End => needles.LeftCount,
            Extent.LastStitches => needles.LeftCount - before,
            Extent.OnRightNeedle => before - (before < needles.RightCount ? needles.SinceGap() : needles.RightCount),
            Extent.LastMarker => needles.DistanceToLast(PlaceMark.Marker) - before,
            Extent.Marker => ToMarker(run, target, before, origin) - before,
            Extent.Gap => needles.DistanceTo(PlaceMark.Gap, before, null) - before,
            Extent.Needle => (needles.DistanceTo(PlaceMark.NeedleEnd, before, null) ?? needles.LeftCount) - before,
            _ => null,
        };
    }

    // The named marker, else the next one, else the start of the round, which counts as a marker.
    private static int? ToMarker(RowRun run, Target target, int before, TextSpan origin)
    {
        var needles = run.Needles;
        if (needles.DistanceTo(PlaceMark.Marker, before, target.MarkerName) is { } named)
        {
            return named;
        }

        var next = needles.DistanceTo(PlaceMark.Marker, before, null);
        if (next is not null && target.MarkerName is not null && run.Work.KnowsPlaces && !run.Quiet)
        {
            run.Trial.Outcome.Readings.Add(new Reading(ReadingKind.NextMarker, origin));
        }

        return next
            ?? (run.State.InTheRound && run.Work.KnowsPlaces && needles.LeftCount >= before && (needles.LeftCount > 0 || before == 0) ? needles.LeftCount : null);
    }

    /// <summary>Where the row speaks of needles and their ends are not known, the usual division is set up: the count does not depend on it.</summary>
    public static void DivideNeedles(RowRun run, ImmutableArray<Step> steps)
    {
        var needles = run.Needles;
        if (!needles.Has(PlaceMark.NeedleEnd) && steps.OfType<RepeatStep>().FirstOrDefault(r => r.To is not null && NeedleEnds(run, r.Body, 0) > 0) is { } open)
        {
            run.Lose(new Problem(ProblemKind.Unknown, open.Origin)); // how many needles there are, nobody says
            return;
        }

        var wanted = Math.Max(Needles(steps), NeedleEnds(run, steps, 0));
        if (wanted == 0 || needles.Has(PlaceMark.NeedleEnd) || needles.LeftCount < wanted * 2 || wanted > MostNeedles)
        {
            return;
        }

        var total = needles.LeftCount;
        if (wanted == 3)
        {
            // A sock on three needles: the instep on the second one.
            needles.PlaceAhead(PlaceMark.NeedleEnd, total / 4);
            needles.PlaceAhead(PlaceMark.NeedleEnd, (total / 4) + (total / 2));
            return;
        }

        for (var i = 1; i < wanted; i++)
        {
            needles.PlaceAhead(PlaceMark.NeedleEnd, total * i / wanted);
        }
    }

    private static int Needles(ImmutableArray<Step> steps)
    {
        var count = 0;
        foreach (var step in steps)
        {
            count += step is NeedleStep ? 1 : 0;
        }

        return count;
    }

    private static int NeedleEnds(RowRun run, ImmutableArray<Step> steps, int depth)
    {
        var count = 0;
        foreach (var step in steps)
        {
            count += step switch
            {
                RunStep { To.Extent: Extent.Needle } => 1,
                RepeatStep { Times: { } times } repeat when depth < 4 => NeedleEnds(run, repeat.Body, depth + 1) * Math.Clamp((run.In(times) ?? 1) + (repeat.IsMore || repeat.IsTwoWays ? 1 : 0), 1, MostNeedles),
                GroupStep group when depth < 4 => NeedleEnds(run, group.Body, depth + 1) * Math.Clamp(run.In(group.Times) ?? 1, 1, MostNeedles),
                _ => 0,
            };
        }

        return Math.Min(count, MostNeedles);
    }
}
