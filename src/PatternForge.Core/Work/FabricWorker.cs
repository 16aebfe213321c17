using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works rows of knitting by themselves and keeps each of their stitches.</summary>
internal sealed class FabricWorker
{
    private readonly CompileOptions _options;
    private readonly PatternBook _patterns;

    public FabricWorker(CompileOptions options, PatternBook patterns)
    {
        _options = options;
        _patterns = patterns;
    }

    /// <summary>The rows from one number to another; null where one is missing, does not come out, or does something that is not a matter of stitches side by side.</summary>
    /// <param name="rows">The rows of the section.</param>
    /// <param name="first">The number of the first.</param>
    /// <param name="last">The number of the last.</param>
    /// <param name="stitches">Stitches on the needle before it.</param>
    /// <param name="size">The size.</param>
    /// <param name="isRound">True for rounds.</param>
    public Fabric? Work(NumberedRows rows, int first, int last, int stitches, int size, bool isRound)
    {
        if (stitches is <= 0 or > StitchNotes.Most || rows.Row(first) is not { } start)
        {
            return null;
        }

        var work = new NeedleWork();
        work.Set(stitches);
        work.KnowsPlaces = true;
        isRound |= start.IsRound == true;
        var state = new SizeState(size, work)
        {
            IsKnown = true,
            InTheRound = isRound,
            NextSide = isRound ? FabricSide.Right : start.Side ?? (first % 2 == 1 ? FabricSide.Right : FabricSide.Wrong), // odd rows are right-side rows unless it is said (common practice)
            Patterns = _patterns,
        };
        var worked = ImmutableArray.CreateBuilder<FabricRow>();
        for (var number = first; number <= last; number++)
        {
            if (rows.Row(number) is not { HasUnread: false } row || Row(row, number, state) is not { } made)
            {
                return null;
            }

            worked.Add(made);
        }

        return new Fabric(worked.ToImmutable(), stitches, isRound);
    }

    /// <summary>A row by itself over so many stitches, and whether it is a round; null where it cannot be followed stitch by stitch.</summary>
    public (FabricRow Row, bool IsRound)? One(BoundRow row, int stitches, int size)
    {
        if (stitches is <= 0 or > StitchNotes.Most || row.HasUnread)
        {
            return null;
        }

        var work = new NeedleWork();
        work.Set(stitches);
        work.KnowsPlaces = true;
        var isRound = row.IsRound == true;
        var state = new SizeState(size, work) { IsKnown = true, InTheRound = isRound, NextSide = FabricSide.Right, Patterns = _patterns };
        return Row(row, row.Numbers.IsEmpty ? 0 : row.Numbers[0], state) is { } made ? (made, isRound) : null;
    }

    /// <summary>One row under the first of its readings that fits; null for none.</summary>
    private FabricRow? Row(BoundRow row, int number, SizeState state)
    {
        var steps = RepeatedRows.OwnSteps(row);
        if (!StepCounts.MakeRow(steps) || steps.Any(s => s is RowsStep))
        {
            return null;
        }

        var side = state.InTheRound ? FabricSide.Right : row.Side ?? state.NextSide ?? FabricSide.Right;
        state.NextSide = side;
        var saved = state.Save();
        var choices = Choices.First;
        for (var tries = 0; tries < Choices.MostTries; tries++)
        {
            var notes = new StitchNotes();
            var outcome = new RowOutcome();
            state.Live.WorkRow(new RowTask(steps, row.Origin, row.StatedIn(state.Size), row.BareGroup), new Trial(state, choices, new Budget(_options), outcome) { Stitches = notes });
            if (notes.IsWhole && outcome.Problems.Count == 0 && state.IsKnown && !notes.Stitches.IsEmpty)
            {
                return new FabricRow(number, side, notes.Stitches, notes.RepeatAt, row.Origin) { Colours = notes.Colours };
            }

            if (choices.Next() is not { } next)
            {
                return null;
            }

            choices = next;
            state.Restore(saved);
        }

        return null;
    }
}
