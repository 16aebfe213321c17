using System.Collections.Immutable;
using CsCheck;
using PatternForge.Core.Plans;

namespace PatternForge.Tests.Plans;

public class OutlineTests
{
    [Fact]
    public void A_measured_piece_is_never_further_from_its_outline_than_one_shaping() => Gen.Select(Gen.Int[20, 90], Gen.Int[4, 90], Gen.Int[5, 60], Gen.Int[1, 8], Gen.Bool).Sample(
        (low, high, up, perTime, any) =>
        {
            ImmutableArray<WidthPoint> points = [new(0, low), new(up / 2m, (low + high) / 2m), new(up, high)];
            var plan = Outline.Plan(points, 22, 30, 10, perTime, any ? ShapedRows.Any : ShapedRows.EveryOther).Plan!;
            var count = plan.From;
            foreach (var step in plan.Steps)
            {
                count += step.Change;
                Assert.Equal(count, step.Count);
                Assert.Equal(0, step.Change % perTime);
                Assert.True(any || step.Row % 2 == 0);
                var line = (low + ((high - low) * (decimal)step.Row / plan.Rows)) * 2.2m;
                Assert.InRange(Math.Abs(count - line), 0, (perTime / 2m) + 0.01m);
            }

            // Rows that may not be shaped leave the end at most two rows behind.
            Assert.InRange(Math.Abs(plan.To - (high * 2.2m)), 0, (perTime / 2m) + 0.5m + (2 * Math.Abs(high - low) * 2.2m / plan.Rows));
        });

    // A hat of 56 cm: a half ball is as high as its radius, 8.9 cm (geometry).
    [Fact]
    public void A_dome_closes_ever_faster_and_its_rounds_are_worked_by_the_compiler()
    {
        var dome = Outline.Dome(56, 8.9m);
        var plan = Outline.Plan(dome, 20, 28, 10, 8, inRound: true).Plan!;
        Assert.Equal((112, 25), (plan.From, plan.Rows));
        Assert.True(plan.Steps[0].Row >= 4 && plan.Steps[^1].Row >= 24, plan.Words());
        Assert.InRange(plan.To, 8, 40);
        var rounds = plan.Rounds()!.Value;
        Assert.Equal(plan.To, WorkedLines.Knit($"CO {plan.From} sts. Join in the round.", rounds)[^1]);
    }

    [Fact]
    public void An_outline_that_does_not_go_up_is_told() =>
        Assert.Equal("point 3 of the outline does not go up, or has no width", Outline.Plan([new(0, 40), new(10, 30), new(10, 20)], 22, 30, 10, 2).Reason);
}
