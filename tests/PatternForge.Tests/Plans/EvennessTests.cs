using CsCheck;
using Google.OrTools.Sat;
using PatternForge.Core.Plans;

namespace PatternForge.Tests.Plans;

/// <summary>Plans against an independent solver: a constraint solver looks for a plan that is more even, or fits where ours says that none does.</summary>
public class EvennessTests
{
    private static readonly Gen<(int Total, int Parts)> Shares = Gen.Select(Gen.Int[0, 400], Gen.Int[1, 24]);

    // The spread of sizes (longest less shortest) is the least that any division in whole stitches has.
    [Fact]
    public void No_division_is_more_even_than_ours() => Shares.Sample(
        share =>
        {
            var least = Solve(share.Parts, share.Total, step: 1, least: 0)!.Value;
            foreach (var order in Enum.GetValues<ShareOrder>())
            {
                var parts = EvenShare.Parts(share.Total, share.Parts, order);
                Assert.Equal((share.Parts, share.Total), (parts.Length, parts.Sum()));
                Assert.Equal(least, parts.Max() - parts.Min());
            }
        },
        iter: 1500,
        threads: 1);

    // Intervals between shaping rows in whole steps: the solver finds none that are nearer to each other, and none at all where there is no plan.
    [Fact]
    public void No_schedule_is_more_even_than_ours() => Gen.Select(Gen.Int[1, 30], Gen.Int[0, 160], Gen.Bool).Sample(
        (times, rows, any) =>
        {
            var step = any ? 1 : 2;
            var planned = ShapingSchedule.Plan(new(200, 200 - (2 * times), rows) { On = any ? ShapedRows.Any : ShapedRows.EveryOther });
            var least = Solve(times, rows / step * step, step, least: step);
            Assert.Equal(least is not null, planned.IsPlanned);
            if (planned.Plan is { } plan)
            {
                int[] intervals = [.. plan.Rows.Zip(plan.Rows.Prepend(0), (row, before) => row - before)];
                Assert.Equal(least, intervals.Max() - intervals.Min());
            }
        },
        iter: 1500,
        threads: 1);

    // Decreases in a round: whatever the solver may do with the plain stitches, its groups differ no less.
    [Fact]
    public void No_round_of_decreases_is_more_even_than_ours() => Gen.Select(Gen.Int[4, 300], Gen.Int[1, 20], Gen.Bool).Sample(
        (stitches, times, together) =>
        {
            var planned = Spread.Plan(stitches, times, Shaper.K2tog, SpreadEnds.Round, together: together);
            var least = Solve(times, stitches, step: 1, least: 2);
            Assert.Equal(least is not null, planned.IsPlanned);
            if (planned.Plan is { } plan)
            {
                Assert.Equal(least, plan.Groups.Max() - plan.Groups.Min());
            }
        },
        iter: 1000,
        threads: 1);

    /// <summary>The least difference of the longest and the shortest of so many multiples of a step that make up a total; null where there are none.</summary>
    private static int? Solve(int parts, int total, int step, int least)
    {
        var model = new CpModel();
        var sizes = Enumerable.Range(0, parts).Select(i => model.NewIntVar((least + step - 1) / step, Math.Max(least, total) / step, $"size{i}")).ToArray();
        var (low, high) = (model.NewIntVar(0, total, "low"), model.NewIntVar(0, total, "high"));
        foreach (var size in sizes)
        {
            model.Add(size >= low);
            model.Add(size <= high);
        }

        model.Add(LinearExpr.Sum(sizes) == total / step);
        model.Minimize(high - low);
        var solver = new CpSolver { StringParameters = "num_workers:1" };
        var status = solver.Solve(model);
        Assert.True(status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible, status.ToString());
        return status == CpSolverStatus.Optimal ? (int)Math.Round(solver.ObjectiveValue) * step : null;
    }
}
