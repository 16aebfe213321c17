using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The row below of a starting line that gives stitches and spaces by kind ("Begin with 24 dc and 12 ch-2 sps").</summary>
internal static class CrochetStart
{
    private const int MostTried = 600;

    /// <summary>
    /// The row given last, worked over as many stitches or chains as make it come out at the kinds named: so spaces stand where that row puts them.
    /// Null when no number does.
    /// </summary>
    public static CrochetWork? Rework(StartStep start, SizeState state, TurningChainBook book, Dialect terms, Craft craft)
    {
        if (state.History.Count == 0 || state.History[^1] is not { Steps: { IsEmpty: false } steps } worked)
        {
            return null;
        }

        var top = CrochetSteps.HasFromHook(steps) ? Top.FoundationChain : Top.Unknown;
        var total = start.Parts.Sum(p => p.Count[state.Size] ?? 0);
        for (var count = 1; count <= Math.Min(MostTried, (total * 4) + 8); count++)
        {
            var work = new CrochetWork(book, terms, craft);
            var trying = new SizeState(state.Size, work) { IsKnown = true, InTheRound = state.InTheRound };
            var below = new RowBelow([.. Enumerable.Repeat(top, count)], [], terms);
            work.Put(below);
            var outcome = new RowOutcome();
            var options = new CompileOptions();
            work.WorkRow(new RowTask(steps, worked.Row.Origin, null, null), new Trial(trying, Choices.First, new Budget(options), outcome));
            if (trying.IsKnown && outcome.Problems.Count == 0 && CrochetWork.HasParts(work.Below!, start.Parts, state.Size))
            {
                return work;
            }
        }

        return null;
    }

    /// <summary>Stitches by kind with the spaces standing evenly among them.</summary>
    public static RowBelow Mixed(ImmutableArray<StartPart> parts, int size, Dialect terms)
    {
        var stitches = new List<Top>();
        var spaces = new List<Top>();
        foreach (var part in parts)
        {
            var top = part.Space is { } length ? new Top(TopKind.Space, null, length, -1, 0) : Top.Unknown with { Stitch = part.Stitch };
            (part.Space is null ? stitches : spaces).AddRange(Enumerable.Repeat(top, Math.Clamp(part.Count[size] ?? 0, 0, 100_000)));
        }

        var mixed = ImmutableArray.CreateBuilder<Top>(stitches.Count + spaces.Count);
        var placed = 0;
        for (var i = 0; i < stitches.Count; i++)
        {
            mixed.Add(stitches[i]);

            // n stitches have n gaps behind them in a round, and n - 1 between them in a row.
            var gaps = (long)spaces.Count * (i + 1) / Math.Max(1, stitches.Count - (spaces.Count == stitches.Count - 1 ? 1 : 0));
            while (placed < Math.Min(gaps, spaces.Count))
            {
                mixed.Add(spaces[placed++]);
            }
        }

        mixed.AddRange(spaces.Skip(placed));
        return new RowBelow(mixed.ToImmutable(), [], terms);
    }
}
