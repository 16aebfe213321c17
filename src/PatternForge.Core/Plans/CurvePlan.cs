using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Stitches taken off at an edge in one pair of rows.</summary>
/// <param name="Row">The row in which they are taken off: 1, 3, 5 and so on.</param>
/// <param name="Stitches">How many.</param>
public readonly record struct CurveStep(int Row, int Stitches);

/// <summary>A curved edge in steps: several stitches are bound off at the beginning of a row, single ones decreased.</summary>
/// <param name="Stitches">Stitches that the edge loses.</param>
/// <param name="Rows">Rows that it takes.</param>
/// <param name="Steps">The steps in their order; the stitches of all of them are those that the edge loses.</param>
public sealed record CurvePlan(int Stitches, int Rows, ImmutableArray<CurveStep> Steps)
{
    /// <summary>Rows behind the last pair of rows with a step.</summary>
    public int RowsAfter => Steps.IsEmpty ? Rows : Math.Max(0, Rows - Steps[^1].Row - 1);

    /// <summary>The steps of one edge in trade words: "BO 5 sts once, 3 sts twice, dec 1 st every other row 4 times".</summary>
    public string Words()
    {
        var said = new List<string>();
        foreach (var (interval, stitches, times) in Runs())
        {
            said.Add(stitches > 1 && interval <= 2
                ? $"{(said.Count == 0 || said[^1].StartsWith("dec", StringComparison.Ordinal) ? "bind off " : "")}{PlanWords.Sts(stitches)} {PlanWords.Times(times)}"
                : $"{(stitches > 1 ? "bind off" : "dec")} {PlanWords.Sts(stitches)} {PlanWords.Every(interval, inRound: false)} {PlanWords.Times(times)}");
        }

        return said.Count == 0 ? "work even" : string.Join(", ", said);
    }

    /// <summary>Both edges alike, as lines of a pattern: armholes, the top of a sleeve.</summary>
    /// <param name="from">Stitches before.</param>
    public ImmutableArray<string> BothEdges(int from)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var left = from;
        foreach (var (interval, stitches, times) in Runs())
        {
            if (stitches > 1)
            {
                for (var i = 0; i < (interval > 2 ? times : 1); i++)
                {
                    var rows = 2 * (interval > 2 ? 1 : times);
                    left -= stitches * rows;
                    AddPlain(lines, interval - 2);
                    lines.Add(string.Create(CultureInfo.InvariantCulture, $"BO {PlanWords.Sts(stitches)} at beg of next {rows} rows. ({PlanWords.Sts(left)})"));
                }
            }
            else
            {
                left -= 2 * times;
                lines.Add($"Dec 1 st at each end of {PlanWords.Every(interval, inRound: false)} {PlanWords.Times(times)}. ({PlanWords.Sts(left)})");
            }
        }

        AddPlain(lines, RowsAfter);
        return lines.ToImmutable();
    }

    /// <summary>One edge as lines of a pattern: one side of a neck.</summary>
    /// <param name="from">Stitches before.</param>
    /// <param name="edge">The edge's name: "neck edge".</param>
    /// <param name="more">Plain rows more at the end.</param>
    public ImmutableArray<string> OneEdge(int from, string edge = "neck edge", int more = 0)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var left = from;
        foreach (var (interval, stitches, times) in Runs())
        {
            left -= stitches * times;
            lines.Add($"{(stitches > 1 ? "BO" : "Dec")} {PlanWords.Sts(stitches)} at {edge} of {PlanWords.Every(interval, inRound: false)} {PlanWords.Times(times)}. ({PlanWords.Sts(left)})");
        }

        AddPlain(lines, RowsAfter + more);
        return lines.ToImmutable();
    }

    // Steps of the same size at the same distance stand together.
    private List<(int Interval, int Stitches, int Times)> Runs()
    {
        var runs = new List<(int Interval, int Stitches, int Times)>();
        var before = -1;
        foreach (var step in Steps)
        {
            var interval = step.Row - before;
            before = step.Row;
            if (runs.Count > 0 && runs[^1].Interval == interval && runs[^1].Stitches == step.Stitches)
            {
                runs[^1] = runs[^1] with { Times = runs[^1].Times + 1 };
            }
            else
            {
                runs.Add((interval, step.Stitches, 1));
            }
        }

        return runs;
    }

    private static void AddPlain(ImmutableArray<string>.Builder lines, int rows)
    {
        if (rows > 0)
        {
            lines.Add($"Work {PlanWords.Counted(rows, "row")} even.");
        }
    }
}
