using CsCheck;
using PatternForge.Core.Plans;

namespace PatternForge.Tests.Plans;

/// <summary>What every plan keeps, whatever is asked: counts and rows exactly, spacing within one step, and rows that the compiler works to the planned count.</summary>
public class PlanTests
{
    private static readonly Shaper[] Shapers = [Shaper.M1, Shaper.Kfb, Shaper.K2tog, Shaper.Ssk, Shaper.Yo, Shaper.Cdd];

    [Fact]
    public void A_spread_row_uses_every_stitch_and_its_gaps_differ_by_one() => Gen.Select(Gen.Int[0, 500], Gen.Int[1, 60], Gen.Int[0, Shapers.Length - 1], Gen.Enum<SpreadEnds>(), Gen.Int[0, 6], Gen.Bool).Sample(
        (stitches, times, which, ends, edge, together) =>
        {
            if (Spread.Plan(stitches, times, Shapers[which], ends, edge, together).Plan is not { } plan)
            {
                return;
            }

            Assert.Equal(stitches, plan.Gaps.Sum() + (times * plan.Shaper.Uses));
            Assert.Equal(stitches + (times * plan.Shaper.Change), plan.Result);
            int[] inner = [.. plan.Gaps.Skip(1).Take(times - 1)];
            Assert.True(inner.Length == 0 || inner.Max() - inner.Min() <= 1, plan.Words());
            var (first, last) = (plan.Gaps[0] - edge, plan.Gaps[^1] - edge);
            Assert.True(first >= 0 && last >= 0 && (ends != SpreadEnds.Half || Math.Abs(first - last) <= 1), plan.Words());
            Assert.True(ends != SpreadEnds.Whole || inner.Append(first).Append(last).Max() - inner.Append(first).Append(last).Min() <= 1, plan.Words());
        });

    [Fact]
    public void A_spread_row_is_worked_by_the_compiler_to_its_count() => Gen.Select(Gen.Int[4, 240], Gen.Int[1, 40], Gen.Int[0, Shapers.Length - 1], Gen.Bool, Gen.Int[0, 4], Gen.Bool).Sample(
        (stitches, times, which, round, edge, together) =>
        {
            if (Spread.Plan(stitches, times, Shapers[which], round ? SpreadEnds.Round : SpreadEnds.Half, edge, together).Plan is { Result: > 1 } plan)
            {
                Assert.Equal(plan.Result, WorkedLines.Knit($"CO {stitches} sts.{(round ? " Join in the round." : "")}", [plan.Line(round ? "Rnd 1" : "Row 1")])[^1]);
            }
        },
        iter: 300);

    [Fact]
    public void A_round_of_crochet_is_worked_by_the_compiler_to_its_count() => Gen.Select(Gen.Int[6, 120], Gen.Int[6, 120]).Sample(
        (from, to) =>
        {
            if (CrochetRound.Between("sc", [from, to]).Plan is { } plan)
            {
                Assert.Equal([from, to], WorkedLines.Crochet(plan.Lines()));
            }
        },
        iter: 200);

    [Fact]
    public void A_schedule_meets_both_counts_and_the_rows() => Asks.Sample(
        ask =>
        {
            if (ShapingSchedule.Plan(ask).Plan is not { } plan)
            {
                return;
            }

            Assert.Equal(ask.To, ask.From + (plan.Times * plan.Change));
            Assert.True(plan.Times == 0 || plan.Counts[^1] == ask.To);
            Assert.Equal(ask.Rows, (plan.Rows.IsEmpty ? 0 : plan.Rows[^1]) + plan.RowsAfter);
            Assert.True(plan.RowsAfter >= Math.Min(ask.PlainAtEnd, ask.Rows), plan.Words());
            var step = ask.On == ShapedRows.Any ? 1 : 2;
            int[] intervals = [.. plan.Rows.Skip(1).Zip(plan.Rows, (row, before) => row - before)];
            Assert.True(intervals.Length == 0 || (intervals.Max() - intervals.Min() <= step && intervals.All(i => i >= step && i % step == 0)), plan.Words());
        });

    [Fact]
    public void A_schedule_is_worked_by_the_compiler_to_its_count_in_words_and_in_rows() => Asks.Where(a => a is { PerTime: 2, InRound: false } && a.From is > 8 and < 200 && a.To is > 8 and < 200 && a.Rows < 300).Sample(
        ask =>
        {
            if (ShapingSchedule.Plan(ask).Plan is not { Times: > 0 } plan)
            {
                return;
            }

            Assert.Equal(ask.To, WorkedLines.Knit($"CO {ask.From} sts.", [plan.Sentence(ShapingPlace.BothEnds) + "."])[^1]);
            Assert.Equal(ask.To, WorkedLines.Knit($"CO {ask.From} sts.", plan.Lines(ShapingWork.For(ShapingPlace.BothEnds, 2)!))[^1]);
        },
        iter: 300);

    [Fact]
    public void Without_a_plan_there_is_a_reason() => Asks.Sample(ask =>
    {
        var planned = ShapingSchedule.Plan(ask);
        Assert.True(planned.IsPlanned || planned.Reason.Length > 0);
        Assert.NotEqual(planned.Plan is null, planned.Reason is null);
    });

    [Theory]
    [InlineData(80, 48, 40, "Dec")]
    [InlineData(40, 72, 33, "Inc")]
    public void At_markers_the_rounds_come_out(int from, int to, int rounds, string verb)
    {
        var plan = ShapingSchedule.Plan(new(from, to, rounds) { PerTime = 8, InRound = true, BeginsNow = true }).Plan!;
        var lines = plan.Lines(ShapingWork.For(ShapingPlace.Markers, 8)!);
        var quarter = from / 4;
        Assert.StartsWith(verb + " Rnd: (K to ", lines[0], StringComparison.Ordinal);
        Assert.Equal(to, WorkedLines.Knit($"CO {from} sts. Join in the round.", [$"Rnd 1: K{quarter / 2}, pm, (k{quarter}, pm) 3 times, k{quarter / 2}.", .. lines])[^1]);
    }

    [Fact]
    public void A_curve_takes_all_its_stitches_and_stays_within_one_of_its_line() => Gen.Select(Gen.Int[0, 120], Gen.Int[2, 160], Gen.Int[0, 2]).Sample(
        (stitches, rows, kind) =>
        {
            var plan = (kind == 0 ? Curve.Quarter(stitches, rows) : kind == 1 ? Curve.Bell(stitches, rows) : Curve.Slope(stitches, rows)).Plan!;
            Assert.Equal(stitches, plan.Steps.Sum(s => s.Stitches));
            Assert.All(plan.Steps, s => Assert.True(s.Stitches > 0 && s.Row % 2 == 1 && s.Row < rows));
            var gone = 0;
            foreach (var step in plan.Steps)
            {
                gone += step.Stitches;
                var share = (step.Row + 1.0) / (rows / 2 * 2);
                var line = kind == 0 ? Math.Sqrt(1 - ((1 - share) * (1 - share))) : kind == 1 ? Math.Acos(1 - (2 * share)) / Math.PI : share;
                Assert.InRange(gone - (stitches * line), -1, 1);
            }
        });

    [Theory]
    [InlineData(162, 104, 44)]
    [InlineData(90, 66, 50)]
    [InlineData(60, 20, 24)]
    public void An_armhole_and_a_cap_are_worked_by_the_compiler_to_their_counts(int from, int to, int rows)
    {
        var armhole = Curve.Quarter((from - to) / 2, rows).Plan!;
        Assert.Equal(to, WorkedLines.Knit($"CO {from} sts.", armhole.BothEdges(from))[^1]);
        var cap = Sleeve.Cap(from, 4, to - 4, rows).Plan!;
        var counts = WorkedLines.Knit($"CO {from} sts.", cap.Lines());
        Assert.Equal((to - 4, 0), (counts[^2], counts[^1] ?? 0));
    }

    [Fact]
    public void A_neck_is_worked_by_the_compiler_to_its_count()
    {
        var neck = Neckline.Round(38, 24).Plan!;
        Assert.Equal(38, neck.Centre + (2 * neck.Side.Stitches));
        Assert.Equal(40 - neck.Side.Stitches, WorkedLines.Knit("CO 40 sts.", neck.Lines(40))[^1]);
    }

    [Fact]
    public void A_cap_is_as_long_as_its_armhole()
    {
        // The numbers of the doc comment, worked back by a polygon of another fineness.
        var height = (double)Sleeve.CapHeight(32, 8, 2, 21)!.Value;
        Assert.Equal(10.48, height, 0.005);
        var length = 2.0 + 4.0;
        for (var i = 1; i <= 1000; i++)
        {
            var wide = 10 * ((Math.Acos(1 - (2.0 * i / 1000)) - Math.Acos(1 - (2.0 * (i - 1) / 1000))) / Math.PI);
            length += Math.Sqrt((wide * wide) + (height / 1000 * (height / 1000)));
        }

        Assert.Equal(21, length, 0.05);
        Assert.Null(Sleeve.CapHeight(32, 8, 2, 15));
    }

    [Fact]
    public void Crowns_heels_toes_thumbs_and_yokes_are_worked_by_the_compiler_to_their_counts()
    {
        Assert.Equal(8, WorkedLines.Knit("CO 88 sts. Join in the round.", HatCrown.Wedges(88, 8).Plan!.Lines())[^1]);
        Assert.Equal(11, WorkedLines.Knit("CO 115 sts. Join in the round.", HatCrown.Wedges(115, 11).Plan!.Lines())[^1]);
        for (var stitches = 16; stitches <= 44; stitches += 2)
        {
            var heel = Sock.RoundHeel(stitches, 2, slipFirst: stitches % 4 == 0).Plan!;
            Assert.Equal(heel.Counts.Cast<int?>(), WorkedLines.Knit($"CO {stitches} sts.", heel.Lines()));
        }

        var square = Sock.SquareHeel(30, 10).Plan!;
        Assert.Equal(10, WorkedLines.Knit("CO 30 sts.", square.Lines())[^1]);
        var toe = Sock.Toe(64, 16).Plan!;
        Assert.Equal("every other rnd 8 times, then every rnd 4 times", toe.Words());
        Assert.Equal(60, WorkedLines.Knit("CO 64 sts. Join in the round.", ["Rnd 1: K32, pm, k32.", $"Rnd 2: {Sock.ToeRound()}."])[^1]);
        var gusset = Mitten.Gusset(1, 15, 21).Plan!;
        Assert.Equal("every 3rd rnd 7 times", gusset.Words());
        Assert.Equal(42, WorkedLines.Knit("CO 40 sts. Join in the round.", ["Rnd 1: K20, pm, k1, pm, k19.", $"Rnd 2: {Mitten.GussetRound()}."])[^1]);
        Assert.Equal(80, WorkedLines.Knit("CO 210 sts. Join in the round.", RoundYoke.Plan(210, 80, 50, 4).Plan!.Lines())[^1]);
        Assert.Equal([68, 64, 60], new[] { (true, true), (true, false), (false, true) }.Select(r => WorkedLines.Knit("CO 60 sts. Join in the round.", ["Rnd 1: (K15, pm) 4 times.", $"Rnd 2: {Raglan.Round(r.Item1, r.Item2)}."])[^1]).Select((n, i) => i == 2 ? n - 4 : n).Cast<int?>());
    }

    [Fact]
    public void Short_rows_keep_the_count_and_turn_where_they_should()
    {
        var plan = ShortRows.Shoulders(90, 21, 6).Plan!;
        Assert.Equal([7, 14, 21], plan.Left.ToArray());
        Assert.Equal((6, 14), (plan.RowsGained, ShortRows.BustRows(5, 28, 10)!.Value));
        Assert.All(WorkedLines.Knit("CO 90 sts.", plan.Lines()), count => Assert.Equal(90, count));
        Assert.Equal(90 - 42, WorkedLines.Knit("CO 90 sts.", ShortRows.BoundOff(21, 6).Plan!.BothEdges(90))[^1]);
        Assert.False(ShortRows.Shoulders(40, 20, 6).IsPlanned);
    }

    [Fact]
    public void Buttonholes_and_edges_are_worked_by_the_compiler_to_their_counts()
    {
        var band = Buttonholes.Plan(100, 7, 4, 3).Plan!;
        Assert.Equal([72, 100], WorkedLines.Knit("CO 100 sts.", band.Lines()));
        Assert.Equal("7 holes of 4 sts over 100 sts: 3 before, 11 (6 times) between, 3 after", band.Words());
        var eyelets = Buttonholes.Plan(100, 5, 2, 5).Plan!;
        Assert.Equal(100, WorkedLines.Knit("CO 100 sts.", [$"Row 1: {PlanSentence(eyelets.EyeletRow()!)}"])[^1]);
        var one = Buttonholes.Plan(21, 1, 4, 2).Plan!;
        Assert.Equal((8, 9), (one.Before, one.After));
        Assert.False(Buttonholes.Plan(20, 7, 4, 3).IsPlanned);
    }

    [Fact]
    public void Balls_and_circles_of_crochet_are_worked_by_the_compiler_to_their_counts()
    {
        foreach (var plan in new[] { CrochetRound.Ball("sc", 6, 6, 6), CrochetRound.Circle("hdc", 8, 6), CrochetRound.Sphere("sc", 8, 20, 22, 10) }.Select(p => p.Plan!))
        {
            Assert.Equal(plan.Counts.Cast<int?>(), WorkedLines.Crochet(plan.Lines()));
        }

        // A ball's geometry: its middle is as long as its diameter times pi.
        Assert.Equal(Math.PI * 16, CrochetRound.Sphere("sc", 8, 20, 22, 10).Plan!.Counts.Max(), 1.0);
        Assert.Equal(6.28m, Math.Round(CrochetRound.PerRound(16, 16)!.Value, 2));
        Assert.False(CrochetRound.Between("sc", [6, 20]).IsPlanned);
    }

    [Fact]
    public void A_pick_up_takes_every_row_and_every_stitch() => Gen.Select(Gen.Int[1, 400], Gen.Int[1, 600], Gen.Bool).Sample((rows, stitches, ends) =>
    {
        if (PickUp.Along(rows, stitches, ends).Plan is { } plan)
        {
            Assert.Equal(rows, plan.Groups.Sum() + plan.Skipped + plan.Doubled);
            Assert.Equal(stitches, plan.Groups.Sum() + (2 * plan.Doubled));
            Assert.True(plan.Groups.IsEmpty || plan.Groups.Max() - plan.Groups.Min() <= 1);
        }
    });

    [Fact]
    public void Shaping_at_one_end_and_in_crochet_comes_out()
    {
        Assert.Equal(19, WorkedLines.Knit("CO 20 sts.", [$"Row 1: {PlanSentence(ShapingWork.For(ShapingPlace.OneEnd, 1)!.Row(-1, 20)!)}"])[^1]);
        Assert.Equal(26, WorkedLines.Knit("CO 20 sts.", [$"Row 1: {PlanSentence(ShapingWork.For(ShapingPlace.BothEnds, 6)!.Row(1, 20)!)}"])[^1]);
        Assert.Equal(16, WorkedLines.Knit("CO 20 sts.", [$"Row 1: {PlanSentence(ShapingWork.For(ShapingPlace.BothEnds, 4)!.Row(-1, 20)!)}"])[^1]);
        Assert.Equal([20, 22, 20], WorkedLines.Crochet(
            [
                "Row 1: Sc in 2nd ch from hook and in each ch across. (20 sts)",
                $"Row 2: Ch 1, {ShapingWork.For(ShapingPlace.BothEnds, 2, crochet: "sc")!.Row(1, 20)}. (22 sts)",
                $"Row 3: Ch 1, {ShapingWork.For(ShapingPlace.BothEnds, 2, crochet: "sc")!.Row(-1, 22)}. (20 sts)",
            ],
            "Ch 21.")[1..]);
    }

    private static string PlanSentence(string row) => string.Concat(row[..1].ToUpperInvariant(), row.AsSpan(1), ".");

    private static Gen<ShapingAsk> Asks { get; } = Gen.Select(Gen.Int[0, 260], Gen.Int[0, 260], Gen.Int[0, 400], Gen.Int[1, 8], Gen.Int[0, 15], Gen.Int[0, 12])
        .Select((from, to, rows, perTime, switches, plain) => new ShapingAsk(from, to, rows)
        {
            PerTime = perTime > 4 ? 2 : perTime,
            On = (switches & 1) == 0 ? ShapedRows.EveryOther : ShapedRows.Any,
            BeginsNow = (switches & 2) != 0,
            InRound = (switches & 4) != 0,
            LongerFirst = (switches & 8) != 0,
            PlainAtEnd = plain > 8 ? 0 : plain,
        });
}
