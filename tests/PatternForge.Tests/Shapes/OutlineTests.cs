using PatternForge.Core.Model;
using PatternForge.Core.Shapes;

namespace PatternForge.Tests.Shapes;

/// <summary>Outlines against the arithmetic of gauge: stitches divided by stitches to the centimetre are the width, rows likewise the length.</summary>
public class OutlineTests
{
    [Fact]
    public void The_back_of_a_pullover_measures_what_its_stitches_and_rows_make_in_every_size()
    {
        var back = Outlines.Named(Outlines.Pullover, "Back");
        Assert.Null(back.Reason);
        decimal[] Cm(string name) => [.. back.Measures.Single(m => m.Name == name).Cm];
        Assert.Equal([90 / 2m, 102 / 2m, 110 / 2m, 122 / 2m, 130 / 2m], Cm("lower edge"));
        Assert.Equal([74 / 2m, 82 / 2m, 86 / 2m, 94 / 2m, 98 / 2m], Cm("above the armholes"));
        Assert.Equal([30 / 2m, 34 / 2m, 36 / 2m, 40 / 2m, 42 / 2m], Cm("neck"));
        Assert.Equal([39m, 39m, 40m, 41m, 42m], Cm("up to the armholes"));
        Assert.Equal([19m, 20m, 21m, 22m, 23m], Cm("armhole"));

        // Six rows of bound-off stitches at 28 rows to 10 cm.
        Assert.All(Cm("shoulder slope"), v => Assert.Equal(6 / 2.8m, v, 6));
        Assert.Equal([.. Enumerable.Range(0, 5).Select(i => Cm("up to the armholes")[i] + Cm("armhole")[i] + Cm("shoulder slope")[i])], Cm("whole length"));
    }

    [Fact]
    public void The_neck_and_the_shoulders_of_a_front_make_its_width_above_the_armholes()
    {
        var front = Outlines.Named(Outlines.Pullover, "Front");
        decimal[] Cm(string name) => [.. front.Measures.Single(m => m.Name == name).Cm];
        for (var size = 0; size < 5; size++)
        {
            Assert.Equal(Cm("above the armholes")[size], Cm("neck")[size] + (2 * Cm("each shoulder")[size]));
            Assert.Equal(front.Sizes[size].Arms[0][^1].WidthCm, front.Sizes[size].Arms[1][^1].WidthCm);
            Assert.Equal(-front.Sizes[size].Arms[0][^1].LeftCm, front.Sizes[size].Arms[1][^1].RightCm); // the outer edges stay where they are
        }

        // The back and the front of a size have the same neck.
        Assert.Equal(Outlines.Named(Outlines.Pullover, "Back").Measures.Single(m => m.Name == "neck").Cm.AsEnumerable(), Cm("neck"));
    }

    [Fact]
    public void Every_width_is_its_stitches_divided_by_the_gauge()
    {
        var some = 0;
        foreach (var compilation in new[] { Outlines.Pullover, Outlines.Hat, Outlines.Of("examples", "tidewrack-scarf.pattern.md"), Outlines.Of("tests", "catalogue", "sandbar-top.pattern.md") })
        {
            foreach (var outline in compilation.Outlines.Where(o => o is { IsDrawn: true, View: OutlineView.Flat or OutlineView.Tube }))
            {
                var front = outline.View == OutlineView.Tube ? 2 : 1;
                foreach (var level in outline.Sizes.SelectMany(s => s.Levels.Concat(s.Arms.SelectMany(a => a))))
                {
                    Assert.Equal(level.Stitches / outline.Gauge!.StitchesPerCm!.Value / front, level.WidthCm, 6);
                    some++;
                }
            }
        }

        Assert.True(some > 200);
    }

    [Theory]
    [InlineData(40, 100, 20, 28)]
    [InlineData(57, 34, 18, 24)]
    [InlineData(120, 260, 32, 44)]
    [InlineData(3, 2, 9, 11)]
    public void A_straight_piece_is_as_wide_as_its_stitches_and_as_long_as_its_rows(int stitches, int rows, int sts, int rowGauge)
    {
        var outline = Outlines.Only(Outlines.Piece($"CO {stitches} sts.\n\nRow 1 (RS): Knit.\n\nWork {rows - 1} rows even.\n\nWork even in stockinette for 2 cm.", gauge: $"{sts} sts and {rowGauge} rows = 10 cm in stockinette on 4 mm"));
        Assert.Null(outline.Reason);
        Assert.Equal(stitches * 10m / sts, outline.Measures.Single(m => m.Name == "width").Cm[0], 6);
        Assert.Equal((rows * 10m / rowGauge) + 2, outline.Sizes[0].TopCm, 6);
        Assert.Equal(stitches * 10m / sts * ((rows * 10m / rowGauge) + 2), outline.Sizes[0].AreaCm2, 4);
    }

    [Fact]
    public void A_decrease_at_the_beginning_of_a_right_side_row_takes_from_the_right_edge()
    {
        var outline = Outlines.Only(Outlines.Piece("CO 40 sts.\n\nRow 1 (RS): Knit.\n\nRow 2: Purl.\n\nRow 3 (RS): K1, ssk, k to end. 39 sts.\n\nRow 4: Purl.\n\nRep Rows 3 and 4 9 more times. 30 sts.\n\nBO all sts."));
        Assert.Null(outline.Reason);
        var levels = outline.Sizes[0].Levels;
        Assert.All(levels, l => Assert.Equal(-10m, l.LeftCm));
        Assert.Equal(5m, levels[^1].RightCm);
    }

    [Fact]
    public void An_increase_before_the_end_of_a_wrong_side_row_adds_to_the_right_edge()
    {
        var outline = Outlines.Only(Outlines.Piece("CO 40 sts.\n\nRow 1 (RS): Knit.\n\nRow 2 (WS): P to last st, m1p, p1. 41 sts.\n\nRow 3 (RS): Knit.\n\nRow 4 (WS): P to last st, m1p, p1. 42 sts.\n\nBO all sts."));
        Assert.Null(outline.Reason);
        Assert.Equal((-10m, 11m), (outline.Sizes[0].Levels[^1].LeftCm, outline.Sizes[0].Levels[^1].RightCm));
    }

    [Theory]
    [InlineData("CO 40 sts.\n\nRow 1 (RS): Knit.\n\nWork even until the yarn is used up.\n\nBO all sts.", "how many rows")]
    [InlineData("CO 40 sts.\n\nRow 1: Flurble the wozzle 3 times, k to end.\n\nRow 2: Purl.\n\nBO all sts.", "not understood")]
    [InlineData("CO 40 sts.\n\nRow 1: K20, turn.\n\nRow 2: P20.\n\nRow 3: Knit.\n\nBO all sts.", "turns within the row")]
    [InlineData("CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: Purl.\n\nRow 3: K1, ssk, k to end.\n\nRow 4: Purl.\n\nBO all sts.", "at which edge")]
    public void In_doubt_nothing_is_drawn(string rows, string why)
    {
        var outline = Outlines.Only(Outlines.Piece(rows));
        Assert.False(outline.IsDrawn);
        Assert.Contains(why, outline.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ball_in_single_crochet_is_as_wide_as_its_rounds_divided_by_pi()
    {
        var body = Outlines.Named(Outlines.Of("examples", "skerry-seal-pup.pattern.md"), "Body");
        Assert.Null(body.Reason);
        Assert.Equal(OutlineView.Side, body.View);
        var around = body.Measures.Single(m => m.Name == "around the widest part").Cm[0];
        Assert.Equal(36 / body.Gauge!.StitchesPerCm!.Value, around, 6);
        Assert.Equal((double)around / Math.PI, (double)body.Measures.Single(m => m.Name == "across").Cm[0], 4);
    }

    [Fact]
    public void A_circle_that_lies_flat_is_drawn_as_one()
    {
        var rounds = "With A, make a magic ring.\n\nRnd 1: 6 sc in ring. (6 sc)\n\nRnd 2: 2 sc in each st around. (12 sc)\n\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)\n\nRnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)";
        var outline = Outlines.Only(Outlines.Piece(rounds, "sizes: one size\ncraft: crochet\nterms: us", "20 sc and 20 rounds = 10 cm on 4 mm"));
        Assert.Null(outline.Reason);
        Assert.Equal(OutlineView.Circle, outline.View);
        Assert.Equal(4m, outline.Measures.Single(m => m.Name == "across").Cm[0], 6); // four rounds of half a centimetre on either side
    }

    private const string Back = "CO 90 sts.\n\nRow 1 (RS): Knit.\n\nWork even in stockinette until piece measures 38 cm, ending with a WS row.\n\nBO 5 sts at beg of next 2 rows. 80 sts.\n\nWork even until armhole measures 20 cm, ending with a WS row.\n\n";

    /// <summary>A back, and a front whose rows are given.</summary>
    private static PieceOutline Front(string rows)
    {
        var made = Outlines.Pieces($"## Back\n\n{Back}BO all sts.\n\n## Front\n\nWork as for Back until armhole measures 12 cm, ending with a WS row. 80 sts.\n\n{rows}");
        Assert.DoesNotContain(made.Findings, f => f.Rule.Severity == Core.Findings.Severity.Error);
        var front = Outlines.Named(made, "Front");
        Assert.Null(front.Reason);
        return front;
    }

    private static decimal Cm(PieceOutline outline, string name) => outline.Measures.Single(m => m.Name == name).Cm[0];

    [Theory]
    [InlineData("Next row (RS): K30, turn, leaving rem sts on a holder. 30 sts.\n\nNext row: Purl.\n\nDec row (RS): K to last 3 sts, k2tog, k1. 29 sts.\n\nNext row: Purl.\n\nRep last 2 rows 5 more times. 24 sts.\n\nWork even until armhole measures 20 cm, ending with a WS row.\n\nBO all sts.\n\nReturn held sts to needle. With RS facing, join yarn, BO 20 sts, k to end. 30 sts.\n\nComplete to match first side, reversing shaping.\n")]
    [InlineData("Next row (RS): K30, BO 20 sts, k to end. 60 sts.\n\nWorking both sides at the same time with separate balls of yarn, dec 1 st at each neck edge every RS row 6 times. 48 sts.\n\nWork even until armhole measures 20 cm.\n\nBO all sts.\n")]
    [InlineData("Next row (RS): K30, place next 20 sts on a holder, join a second ball of yarn, k to end. 60 sts.\n\nDec 1 st at each neck edge every RS row 6 times. 48 sts.\n\nWork even until armhole measures 20 cm.\n\nBO all sts.\n")]
    public void A_front_that_goes_on_as_the_back_has_the_same_neck_however_its_sides_are_worked(string rows)
    {
        var front = Front(rows);
        var size = front.Sizes[0];

        // 90 stitches at 2 to a centimetre; 80 above the armholes; 30 and 6 decreases leave 24 on each side of 20 + 2 x 6.
        Assert.Equal(45m, Cm(front, "lower edge"));
        Assert.Equal(16m, Cm(front, "neck"));
        Assert.Equal(12m, Cm(front, "each shoulder"));
        Assert.Equal(58m, Cm(front, "whole length"), 6);
        Assert.Equal(12m, size.Levels[^1].HeightCm - 38m, 6);
        Assert.All(size.Arms[0].Zip(size.Arms[1]), p => Assert.Equal(-p.First.LeftCm, p.Second.RightCm, 6));
        Assert.All(size.Arms[0], l => Assert.Equal(-20m, l.LeftCm, 6)); // the armhole edge stays where it is
    }

    [Fact]
    public void A_right_front_worked_as_the_left_one_is_its_mirror_image()
    {
        var made = Outlines.Pieces("## Left Front\n\nCO 45 sts.\n\nRow 1 (RS): Knit.\n\nWork in stockinette until piece measures 38 cm, ending with a WS row.\n\nNext row (RS): BO 5 sts, k to end. 40 sts.\n\nNext row: Purl.\n\nBO all sts.\n\n## Right Front\n\nWork as for Left Front, reversing all shaping.\n");
        var (left, right) = (Outlines.Named(made, "Left").Sizes[0], Outlines.Named(made, "Right").Sizes[0]);
        Assert.Equal(left.AreaCm2, right.AreaCm2);
        Assert.All(left.Levels.Zip(right.Levels), p => Assert.Equal((-p.First.RightCm, -p.First.LeftCm), (p.Second.LeftCm, p.Second.RightCm)));
        Assert.True(left.Levels[^1].RightCm < left.Levels[0].RightCm); // the side seam of the left front is at its right as its right side shows it
    }

    [Fact]
    public void Short_rows_at_the_end_slope_the_shoulders_by_as_many_stitches_and_rows_as_they_have()
    {
        var outline = Outlines.Only(Outlines.Piece(Back + "Next row (RS): K to last 8 sts, w&t.\n\nNext row (WS): P to last 8 sts, w&t.\n\nNext row (RS): K to last 16 sts, w&t.\n\nNext row (WS): P to last 16 sts, w&t.\n\nBO 24 sts at beg of next 2 rows. 32 sts.\n\nBO all sts."));
        Assert.Null(outline.Reason);
        var levels = outline.Sizes[0].Levels;
        Assert.Equal(16m, levels[^1].WidthCm);
        Assert.Equal(16m, Cm(outline, "neck"));
        Assert.Equal(4 / 2.8m, levels[^1].HeightCm - 58m, 6);
        Assert.Equal(new[] { 32m, 24m, 16m }, levels[^3..].Select(l => l.WidthCm));
    }

    [Fact]
    public void A_raglan_yoke_narrows_from_its_front_stitches_to_those_that_the_front_begins_with()
    {
        var made = Outlines.Of("tests", "corpus", "clean", "raglan-yoke.pattern.md");
        var yoke = Outlines.Named(made, "Yoke");
        Assert.Null(yoke.Reason);
        Assert.Equal(OutlineView.Yoke, yoke.View);
        decimal[] All(string name) => [.. yoke.Measures.Single(m => m.Name == name).Cm];
        Assert.Equal([136 / 2m, 148 / 2m, 160 / 2m, 172 / 2m], All("around the body"));
        Assert.Equal([60 / 2m, 66 / 2m, 72 / 2m, 78 / 2m], All("front, between the sleeves"));
        Assert.Equal([70 / 2m, 74 / 2m, 78 / 2m, 82 / 2m], All("around the neck"));
        Assert.Equal([24 / 2m, 26 / 2m, 28 / 2m, 30 / 2m], yoke.Sizes.Select(s => s.Levels[^1].WidthCm));

        // The set-up round, 18 (20, 22, 24) times two rounds, and the dividing round, at 28 to 10 cm.
        Assert.All(All("yoke").Zip([38, 42, 46, 50]), p => Assert.Equal(p.Second / 2.8m, p.First, 6));
    }

    [Fact]
    public void A_sleeve_that_goes_on_from_held_stitches_hangs_from_its_underarm()
    {
        var made = Outlines.Pieces("## Yoke\n\nCO 100 sts. Join to work in the round.\n\nKnit 10 rnds.\n\nDividing rnd: *K30, place next 20 sts on holder, CO 8 sts; rep from * once more. 76 sts.\n\nKnit 10 rnds.\n\nBO all sts.\n\n## Sleeves\n\nReturn 20 held sts to needle, pick up and knit 8 sts at the underarm, join in the round. 28 sts.\n\nKnit 10 rnds.\n\nDec rnd: K1, k2tog, k to last 3 sts, ssk, k1. 26 sts.\n\nWork even until sleeve measures 40 cm from the underarm.\n\nBO all sts.\n");
        var sleeve = Outlines.Named(made, "Sleeves");
        Assert.Null(sleeve.Reason);
        Assert.Equal(13m, Cm(sleeve, "around the lower edge"));
        Assert.Equal(14m, Cm(sleeve, "around the widest part"));
        Assert.Equal(40m, Cm(sleeve, "whole length"), 6);
        Assert.Equal(7m, sleeve.Sizes[0].Levels[^1].WidthCm);
        Assert.Equal(20m, Outlines.Named(made, "Yoke").Sizes[0].Levels.Max(l => l.WidthCm) + 1m); // 76 around: 19 across
    }

    [Fact]
    public void A_front_in_crochet_whose_second_side_is_written_out_has_the_neck_of_its_back()
    {
        var made = Outlines.Of("examples", "shingle-bank-vest.pattern.md");
        var (front, back) = (Outlines.Named(made, "Front"), Outlines.Named(made, "Back"));
        Assert.Null(front.Reason);
        Assert.Equal(2, made.Outlines.Length); // the second side is no piece of its own
        decimal[] All(PieceOutline piece, string name) => [.. piece.Measures.Single(m => m.Name == name).Cm];
        Assert.Equal(All(back, "lower edge"), All(front, "lower edge"));
        Assert.All(All(back, "above the armholes").Zip(All(front, "neck").Zip(All(front, "each shoulder"), (n, s) => n + (2 * s))), p => Assert.Equal(p.First, p.Second, 6));
        Assert.All(All(back, "whole length").Zip(All(front, "whole length")), p => Assert.Equal(p.First, p.Second, 6));
        Assert.All(front.Sizes, s => Assert.Equal(-s.Arms[0][^1].LeftCm, s.Arms[1][^1].RightCm));
        Assert.All(front.Sizes, s => Assert.Empty(s.Arms[0].Skip(1).Select(l => l.Line).Intersect(s.Arms[1].Skip(1).Select(l => l.Line))));
    }

    private static string FlatPieces(string join) => "## Back and front (make 2)\n\nCO 90 sts.\n\nRow 1 (RS): Knit.\n\nWork even in stockinette until piece measures 40 cm.\n\nBO 4 sts at beg of next 2 rows. 82 sts.\n\nLeave on a holder.\n\n"
        + "## Sleeves (make 2)\n\nCO 60 sts.\n\nRow 1 (RS): Knit.\n\nWork even in stockinette until piece measures 45 cm.\n\nBO 4 sts at beg of next 2 rows. 52 sts.\n\nLeave on a holder.\n\n## Yoke\n\n" + join;

    private const string RoundJoin = "Joining rnd: K across 82 back sts, k across 52 sts of first sleeve, k across 82 front sts, k across 52 sts of second sleeve, pm for the beginning of the round. 268 sts.\n\nKnit 20 rnds.\n\nDec rnd: *K2, k2tog; rep from * around. 201 sts.\n\nKnit 14 rnds.\n\nBO all sts.\n\n";
    private const string FlatJoin = "Joining row (RS): K across 82 back sts, k across 52 sts of first sleeve, k across 82 front sts, k across 52 sts of second sleeve. 268 sts.\n\nNext row: Purl.\n\nDec row: *K2, k2tog; rep from * to end. 201 sts.\n\nNext row: Purl.\n\nBO all sts.\n\n";

    [Theory]
    [InlineData(RoundJoin, "")]
    [InlineData(RoundJoin, "of: Yoke\n")]
    [InlineData(FlatJoin, "")]
    [InlineData(FlatJoin, "of: Yoke\n")]
    public void Of_a_yoke_that_joins_flat_pieces_it_is_said_why_it_is_not_drawn(string join, string request)
    {
        var made = Outlines.Pieces(FlatPieces(join) + $"```schematic\n{request}```\n");
        Assert.All(made.Lines, l => Assert.Equal(Core.Work.LineStatus.Checked, l.Status));
        Assert.Contains("lie flat by themselves", Outlines.Named(made, "Yoke").Reason, StringComparison.Ordinal);
        Assert.Null(Outlines.Named(made, "Back").Reason);
        Assert.Contains("Yoke", Assert.Single(made.Findings, f => f.Rule.Code == "PF630").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(made.Findings, f => f.Severity >= Core.Findings.Severity.Warning && f.Rule.Code != "PF702");
    }

    private const string FromBelow = "## Body\n\nCO 188 sts. Join to work in the round.\n\nKnit for 40 cm.\n\nNext rnd: *K86, place next 8 sts on a holder for the underarm; rep from * once more. 172 sts.\n\nSet aside.\n\n"
        + "## Sleeves (make 2)\n\nCO 44 sts. Join to work in the round.\n\nKnit 20 rnds.\n\nInc rnd: K1, m1l, k to last st, m1r, k1. 46 sts.\n\nKnit 5 rnds.\n\nRep last 6 rnds 7 more times. 60 sts.\n\nNext rnd: K52, place next 8 sts on a holder for the underarm. 52 sts.\n\nLeave on a holder.\n\n"
        + "## Yoke\n\nJoining rnd: K across 86 front sts, pm, k across 52 sts of first sleeve, pm, k across 86 back sts, pm, k across 52 sts of second sleeve, pm for the beginning of the round. 276 sts.\n\nKnit 2 rnds.\n\nDec rnd: *K1, ssk, k to 3 sts before m, k2tog, k1, sm; rep from * around. 268 sts.\n\nNext rnd: Knit.\n\nRep last 2 rnds 21 more times. 100 sts.\n\nBO all sts.\n";

    // Counted by hand: 113 rounds of the body, 8 times 6 rounds and 21 of each sleeve, 47 of the yoke make 37,104 stitches, 5.6 to the square centimetre.
    [Fact]
    public void The_area_of_a_yoke_is_that_of_all_its_stitches_and_not_of_the_front_that_is_drawn()
    {
        var made = Outlines.Pieces(FromBelow);
        Assert.InRange(Assert.Single(made.Yarn.AreasCm2), 37_104 / 5.6m * 0.97m, 37_104 / 5.6m * 1.03m);
    }

    [Fact]
    public void A_yoke_from_below_is_drawn_with_its_body_and_the_sleeve_by_itself()
    {
        var made = Outlines.Pieces(FromBelow);
        Assert.Equal(["Body and yoke", "Sleeves (make 2)"], made.Outlines.Select(o => o.Name).Order(StringComparer.Ordinal));
        var yoke = Outlines.Named(made, "Body");
        Assert.Null(yoke.Reason);
        Assert.Equal(OutlineView.Yoke, yoke.View);
        Assert.Equal(188 / 2m, Cm(yoke, "around the body"));
        Assert.Equal(86 / 2m, Cm(yoke, "front, between the sleeves"));
        Assert.Equal(100 / 2m, Cm(yoke, "around the neck"));

        // Each decrease round takes 2 stitches from the front: 86 less 44 are 42. Joining, 2 even, and 22 times two rounds at 28 to 10 cm.
        Assert.Equal(42 / 2m, yoke.Sizes[0].Levels[^1].WidthCm);
        Assert.Equal(47 / 2.8m, Cm(yoke, "yoke"), 6);
        Assert.Equal(40 + (1 / 2.8m), Cm(yoke, "up to the underarms"), 6);
        var sleeve = Outlines.Named(made, "Sleeves");
        Assert.Null(sleeve.Reason);
        Assert.Equal(30m, Cm(sleeve, "around the widest part"));
        Assert.Equal(69 / 2.8m, Cm(sleeve, "whole length"), 6);
    }

    [Fact]
    public void A_body_whose_stitches_are_not_those_of_the_yoke_is_not_joined_to_it()
    {
        var made = Outlines.Pieces(FromBelow.Replace("CO 188", "CO 190", StringComparison.Ordinal).Replace("*K86, place next 8 sts on a holder for the underarm; rep from * once more. 172 sts.", "K190.", StringComparison.Ordinal));
        Assert.DoesNotContain(made.Outlines, o => o.Name == "Body and yoke");
        Assert.DoesNotContain(made.Outlines, o => o.IsDrawn && o.Sizes[0].Levels.Any(l => l.Stitches > 190));
    }

    private const string Open = "## Yoke\n\nCO 54 sts.\n\nSet-up row (WS): P1, pm, p12, pm, p28, pm, p12, pm, p1.\n\nRow 1 (RS): *K to 1 st before m, m1r, k1, sm, k1, m1l; rep from * 3 more times, k to end. 62 sts.\n\nRow 2: Purl.\n\nRep Rows 1 and 2 17 more times. 198 sts.\n\nNext row (RS): CO 9 sts, k to end. 207 sts.\n\nNext row: CO 9 sts, p to end. 216 sts.\n\n"
        + "## Body\n\nDividing row (RS): K28, place next 48 sts on a holder, CO 8 sts, k64, place next 48 sts on a holder, CO 8 sts, k28. 136 sts.\n\nWork even in stockinette until body measures 30 cm from the underarm, ending with a WS row.\n\nBO all sts.\n";

    [Fact]
    public void A_cardigan_from_the_neck_down_is_drawn_as_its_back()
    {
        var back = Outlines.Only(Outlines.Pieces(Open));
        Assert.Null(back.Reason);
        Assert.Equal(OutlineView.OpenYoke, back.View);

        // The back has 28 stitches at the neck and 28 + 2 x 18 at the underarms, where half of each 8 that are cast on goes to it.
        Assert.Equal(28 / 2m, Cm(back, "back of the neck"));
        Assert.Equal(64 / 2m, Cm(back, "back, between the sleeves"));
        Assert.Equal((64 + 8) / 2m, Cm(back, "back, lower edge"));

        // The set-up row, 18 times two rows, two with stitches cast on for the fronts, and the dividing row.
        Assert.Equal(40 / 2.8m, Cm(back, "yoke"), 6);
        Assert.Equal(30m, Cm(back, "up to the underarms"), 6);
    }

    [Fact]
    public void A_cardigan_without_markers_is_not_drawn() =>
        Assert.DoesNotContain(Outlines.Pieces(Open.Replace("P1, pm, p12, pm, p28, pm, p12, pm, p1.", "Purl.", StringComparison.Ordinal).Replace("*K to 1 st before m, m1r, k1, sm, k1, m1l; rep from * 3 more times, k to end.", "*K6, m1r; rep from * 7 more times, k to end.", StringComparison.Ordinal)).Outlines, o => o.IsDrawn);

    [Fact]
    public void A_mitten_goes_on_as_a_tube_where_its_thumb_is_left_on_a_thread()
    {
        var made = Outlines.Pieces("## Mitten\n\nCO 40 sts. Join to work in the round.\n\nKnit 20 rnds.\n\nNext rnd: K20, place next 8 sts on waste yarn, CO 8 sts, k to end. 40 sts.\n\nKnit 30 rnds.\n\nBO all sts.\n\n## Thumb\n\nReturn 8 held sts to needle, pick up 10 sts, join in the round. 18 sts.\n\nKnit 14 rnds.\n\nBO all sts.\n");
        var (hand, thumb) = (Outlines.Named(made, "Mitten"), Outlines.Named(made, "Thumb"));
        Assert.Equal(20m, Cm(hand, "around"));
        Assert.Equal(51 / 2.8m, Cm(hand, "whole length"), 6);
        Assert.Equal(9m, Cm(thumb, "around"));
    }

    [Theory]
    [InlineData("Work as for Back until piece measures 50 cm. 80 sts.\n\nBO all sts.\n")]
    [InlineData("Work as for Back to the pockets. 80 sts.\n\nBO all sts.\n")]
    public void A_place_in_another_piece_that_cannot_be_told_gives_no_outline(string rows) =>
        Assert.DoesNotContain(Outlines.Pieces($"## Back\n\n{Back}BO all sts.\n\n## Front\n\n{rows}").Outlines, o => o.IsDrawn && o.Name == "Front");

    [Fact]
    public void The_schematics_of_the_example_come_to_what_its_header_declares()
    {
        var made = Outlines.Of("examples", "breakwater-pullover.pattern.md");
        Assert.Equal(["Back", "Front", "Sleeve (make 2)"], made.Outlines.Where(o => o.IsDrawn).Select(o => o.Name));
        decimal[] Said(string name) => [.. made.Pattern.Facts.Finished.Single(m => m.Name == name).Values.Values.Select(q => q!.InBase)];
        decimal[] Drawn(string piece, string name) => [.. Outlines.Named(made, piece).Measures.Single(m => m.Name == name).Cm];
        Assert.Equal(Said("bust"), Drawn("Back", "lower edge").Zip(Drawn("Front", "lower edge"), (a, b) => a + b));
        Assert.Equal(Said("sleeve length"), Drawn("Sleeve", "up to the underarm"));
        Assert.All(Said("length").Zip(Drawn("Back", "whole length")), p => Assert.True(Math.Abs(p.First - p.Second) < 0.5m));
        Assert.Equal(Drawn("Back", "neck"), Drawn("Front", "neck"));
    }

    [Theory]
    [InlineData("Rep Dec Rnd every 8th (6th) rnd 12 (17) times. (40 (44) sts)", 1, 2, 102)]
    [InlineData("Rep Dec Rnd every 10th (9th, 7th) rnd 8 (5, 11) times, then every 11th (10th, 8th) rnd 1 (5, 3) times.", 2, 3, 101)]
    [InlineData("Rep Inc Row every other row 4 times, then every 4th row twice.", 0, 1, 16)]
    [InlineData("Rep Dec Row as before.", 0, 1, null)]
    public void Rows_of_a_shaping_are_counted_size_by_size(string text, int place, int sizes, int? rows) => Assert.Equal(rows, RowsOfShaping.OfLists(text, place, sizes));
}
