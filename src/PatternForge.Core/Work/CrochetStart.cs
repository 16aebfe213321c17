using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>The row below of a starting line that gives stitches and spaces by kind ("Begin with 24 dc and 12 ch-2 sps").</summary>
internal static class CrochetStart
{
    private const int MostTried = 600;
    private const int MostRows = 3;
    private const int MostOfAKind = 100_000;

    /// <summary>
    /// The rows given last, worked over as many stitches or chains as make them come out at the kinds named: so spaces stand where those rows put them.
    /// Null when no number does.
    /// </summary>
    public static CrochetWork? Rework(StartStep start, SizeState state, TurningChainBook book, Dialect terms, Craft craft)
    {
        for (var rows = 1; rows <= Math.Min(MostRows, state.History.Count); rows++)
        {
            if (Rework([.. state.History.TakeLast(rows)], start, state, book, terms, craft) is { } work)
            {
                return work;
            }
        }

        return null;
    }

    private static CrochetWork? Rework(WorkedRow[] rows, StartStep start, SizeState state, TurningChainBook book, Dialect terms, Craft craft)
    {
        if (rows.Any(r => r.Steps.IsEmpty))
        {
            return null;
        }

        var top = CrochetSteps.HasFromHook(rows[0].Steps) ? Top.FoundationChain : Top.Unknown;
        var total = start.Parts.Sum(p => (long)(p.Count[state.Size] ?? 0));
        for (var count = 1; count <= Math.Min(MostTried, (total * 4) + 8); count++)
        {
            var work = new CrochetWork(book, terms, craft);
            var trying = new SizeState(state.Size, work) { IsKnown = true, InTheRound = state.InTheRound };
            work.Put(new RowBelow([.. Enumerable.Repeat(top, count)], [], terms) { IsCountOnly = rows.Length > 1 });
            var outcome = new RowOutcome();
            foreach (var row in rows.TakeWhile(_ => trying.IsKnown))
            {
                work.WorkRow(new RowTask(row.Steps, row.Row.Origin, null, null), new Trial(trying, Choices.First, new Budget(new CompileOptions()), outcome));
            }

            if (trying.IsKnown && outcome.Problems.Count == 0 && CrochetWork.HasParts(work.Below!, start.Parts, state.Size))
            {
                return work;
            }
        }

        return null;
    }

    /// <summary>Stitches by kind with the spaces standing evenly among them; where that does not come out even, or kinds are mixed, it is a guess.</summary>
    public static RowBelow Mixed(ImmutableArray<StartPart> parts, int size, Dialect terms)
    {
        var stitches = Evenly(parts.Where(p => p.Space is null), size, p => Top.Unknown with { Stitch = p.Stitch });
        var spaces = Evenly(parts.Where(p => p.Space is not null), size, p => new Top(TopKind.Space, null, p.Space!.Value, -1, 0));
        var mixed = ImmutableArray.CreateBuilder<Top>(stitches.Count + spaces.Count);
        var between = spaces.Count == stitches.Count - 1 ? 1 : 0;
        var placed = 0;
        for (var i = 0; i < stitches.Count; i++)
        {
            mixed.Add(stitches[i]);

            // n stitches have n gaps behind them in a round, and n - 1 between them in a row.
            var gaps = (long)spaces.Count * (i + 1) / Math.Max(1, stitches.Count - between);
            while (placed < Math.Min(gaps, spaces.Count))
            {
                mixed.Add(spaces[placed++]);
            }
        }

        mixed.AddRange(spaces.Skip(placed));
        var isEven = spaces.Count == 0 || between == 1 || stitches.Count % spaces.Count == 0;
        return new RowBelow(mixed.ToImmutable(), [], terms) { IsTold = true, IsGuess = !isEven || parts.Length > 2 || (spaces.Count == 0 && parts.Length > 1) };
    }

    /// <summary>The tops of several kinds, each kind spread evenly over all.</summary>
    private static List<Top> Evenly(IEnumerable<StartPart> parts, int size, Func<StartPart, Top> make)
    {
        var kinds = parts.Select(p => (Top: make(p), Count: Math.Clamp(p.Count[size] ?? 0, 0, MostOfAKind))).Where(k => k.Count > 0).ToArray();
        var all = kinds.Sum(k => k.Count);
        var made = new int[kinds.Length];
        var tops = new List<Top>(all);
        for (var i = 1; i <= all; i++)
        {
            // The kind that is furthest behind its share comes next.
            var next = 0;
            for (var k = 1; k < kinds.Length; k++)
            {
                next = ((long)kinds[k].Count * i) - ((long)made[k] * all) > ((long)kinds[next].Count * i) - ((long)made[next] * all) ? k : next;
            }

            made[next]++;
            tops.Add(kinds[next].Top);
        }

        return tops;
    }
}
