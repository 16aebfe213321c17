using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Steps at the edges of the work and beside it: stitches cast on and bound off, held and taken up again, crossed on a cable needle; markers.</summary>
internal static class Edges
{
    // A number this near to what was held is a slip; one further off belongs to another piece.
    private const int NearHeld = 5;

    /// <summary>Carries out one step; nothing for steps that change neither stitches nor marks.</summary>
    public static void Work(RowRun run, Step step)
    {
        switch (step)
        {
            case MarkerStep marker:
                Marker(run, marker);
                break;
            case CastOnStep cast:
                CastOn(run, cast);
                break;
            case BindOffStep bindOff:
                BindOff(run, bindOff);
                break;
            case HoldStep hold:
                Hold(run, hold);
                break;
            case ReturnStep back:
                Return(run, back);
                break;
            case AcrossPieceStep across:
                var asked = Math.Min(run.In(across.Stitches) ?? 0, run.Budget.MostStitches + 1);
                var joins = run.Needles.LeftCount > 0 && run.Trial.Choices.Take(across.Origin, ReadingKind.FromAnotherPiece) == 1;
                if (joins)
                {
                    run.Read(ReadingKind.FromAnotherPiece, across);
                }

                var there = joins ? 0 : Math.Min(asked, run.Needles.LeftCount);
                run.Apply(across.Operation, there);
                run.Needles.Put(StitchKind.Knit, asked - there);
                run.Turned = false;
                run.MayGoRound = true;
                break;
            case UncountedStep uncounted:
                run.MayLeave = true;
                run.Lose(new Problem(ProblemKind.Unknown, uncounted.Origin));
                break;
            case PickUpStep pick:
                run.Needles.Put(StitchKind.CastOn, run.In(pick.Stitches) ?? 0);
                run.Turned = false;
                run.MayGoRound = true;
                break;
            case CableNeedleStep cable:
                CableNeedle(run, cable);
                break;
            case SpreadStep spread:
                Spread(run, spread);
                break;
            case NeedleStep:
                run.Needles.SlipMark(PlaceMark.NeedleEnd, keep: true);
                break;
        }
    }

    private static void Marker(RowRun run, MarkerStep step)
    {
        if (step.Action == MarkerAction.Place)
        {
            run.Needles.Place(PlaceMark.Marker, step.Name);
        }
        else
        {
            run.Needles.SlipMark(PlaceMark.Marker, keep: step.Action == MarkerAction.Slip);
            run.MayGoRound |= run.State.InTheRound && run.Needles.LeftCount == 0;
        }
    }

    private static void CastOn(RowRun run, CastOnStep step)
    {
        var count = run.In(step.Stitches) ?? 0;
        run.Trial.Stitches?.Spoil();
        if (step.AtEnd || run.Needles.RightCount > 0 || run.Used > 0)
        {
            run.Needles.Put(StitchKind.CastOn, count);
        }
        else
        {
            run.Needles.PutLeft(StitchKind.CastOn, count);
        }
    }

    private static void BindOff(RowRun run, BindOffStep step)
    {
        var needles = run.Needles;
        run.BoundOff = false;
        if (step.Stitches is null)
        {
            if (run.In(step.Claimed) is { } named && named != needles.Count)
            {
                run.Report(new Problem(ProblemKind.NamedCount, step.Origin, named, needles.Count));
            }

            run.Trial.Stitches?.BindOff(needles.LeftCount);
            needles.Clear();
            return;
        }

        var count = run.In(step.Stitches) ?? 0;
        if (count == 0)
        {
            return;
        }

        var inTheMiddle = needles.RightCount > 0;
        run.Trial.Stitches?.BindOff(count);
        run.Take(count);
        if (needles.LeftCount == 0)
        {
            return;
        }

        if (inTheMiddle)
        {
            needles.Place(PlaceMark.Gap);
        }

        // One stitch more is worked, and the last one to go is lifted over it.
        run.Plain(1);
        run.Used++;
        run.BoundOff = true;
    }

    private static void Hold(RowRun run, HoldStep step)
    {
        var count = run.In(step.Stitches);
        if (step.Stitches is not null && count is null)
        {
            return;
        }

        if ((step.FromRight && (run.Used > 0 || run.Needles.RightCount > 0)) || run.Turned)
        {
            // Just turned: what is left is behind the work now, on the right needle.
            var wanted = Math.Min(count ?? run.Needles.RightCount, run.Budget.MostStitches);
            var dropped = run.Needles.Drop(wanted);
            run.Missing += wanted - dropped;
            run.Work.Held.Add(dropped);
        }
        else
        {
            var wanted = count ?? run.Needles.LeftCount;
            var held = Math.Min(wanted, run.Needles.LeftCount);
            run.Used += held;
            run.Missing += wanted - held;
            run.Needles.Take(held);
            run.Work.Held.Add(held);
        }
    }

    private static void Return(RowRun run, ReturnStep step)
    {
        var said = run.In(step.Stitches);
        var held = run.Work.Held;
        if (held.Count == 0)
        {
            if (said is { } count)
            {
                run.Needles.PutLeft(StitchKind.InPattern, Math.Min(count, run.Budget.MostStitches));
            }
            else
            {
                run.State.IsKnown = false;
            }

            return;
        }

        var at = said is null ? 0 : held.IndexOf(said.Value);
        if (at >= 0)
        {
            run.Needles.PutLeft(StitchKind.InPattern, held[at]);
            held.RemoveAt(at);
            return;
        }

        NotAsHeld(run, step, said!.Value);
    }

    /// <summary>Another number than was held comes back: a part of it, several holders at once, a slip, or stitches of a piece that is not known.</summary>
    private static void NotAsHeld(RowRun run, ReturnStep step, int said)
    {
        var held = run.Work.Held;
        var last = held[^1];
        if (held.Sum() == said)
        {
            held.Clear();
        }
        else if (held.Count == 1 && said > last && said - last <= Math.Max(2, last / NearHeld))
        {
            run.Report(new Problem(ProblemKind.NamedCount, step.Origin, said, last));
            held.Clear();
            run.Needles.PutLeft(StitchKind.InPattern, last);
            return;
        }
        else if (held.FindIndex(h => h > said) is >= 0 and var part)
        {
            held[part] -= said;
        }

        run.Needles.PutLeft(StitchKind.InPattern, Math.Min(said, run.Budget.MostStitches));
    }

    private static void CableNeedle(RowRun run, CableNeedleStep step)
    {
        var count = Math.Min(run.In(step.Stitches) ?? (step.Stitches is null ? run.OnCableNeedle : 0), run.Budget.MostStitches);
        if (step.WorkedAs is null)
        {
            run.Trial.Stitches?.Hold(count, step.InFront);
            run.Take(count);
            run.OnCableNeedle += count;
            return;
        }

        var there = Math.Min(count, run.OnCableNeedle);
        run.OnCableNeedle -= there;
        run.Missing += count - there;
        run.Needles.Put(StitchKind.Cable, count);
        run.Trial.Stitches?.FromHeld(step.WorkedAs, count, run.OnCableNeedle == 0);
    }

    private static void Spread(RowRun run, SpreadStep step)
    {
        var change = run.In(step.Change) ?? 0;
        if (change >= 0)
        {
            run.Needles.Put(StitchKind.Increase, Math.Min(change, run.Budget.MostStitches + 1));
            return;
        }

        var lost = run.Needles.Drop(-change);
        lost += run.Needles.Take(-change - lost);
        run.Missing += -change - lost;
    }
}
