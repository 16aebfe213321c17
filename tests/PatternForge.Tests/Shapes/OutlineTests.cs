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

    [Fact]
    public void Body_and_sleeves_of_a_yoke_that_is_divided_are_pieces_of_their_own()
    {
        var made = Outlines.Of("examples", "fairwater-jumper.pattern.md");
        var (body, sleeves) = (Outlines.Named(made, "Body"), Outlines.Named(made, "Sleeves"));

        // M: 208 sts at the underarm and 220 at the hem, half of them in front; a sleeve of 66 sts, 17 rounds of ribbing and 104 above them at 28 to 10 cm.
        Assert.Equal([52m, 55m], new[] { body.Sizes[2].Levels[0], body.Sizes[2].Levels[^1] }.Select(l => decimal.Round(l.RightCm - l.LeftCm, 2)));
        Assert.Equal([16.5m, 10m], new[] { sleeves.Sizes[2].Levels[0], sleeves.Sizes[2].Levels[^1] }.Select(l => decimal.Round(l.RightCm - l.LeftCm, 2)));
        Assert.InRange(sleeves.Sizes[2].TopCm, 121 / 2.8m, 123 / 2.8m);
    }

    [Theory]
    [InlineData("Rep Dec Rnd every 8th (6th) rnd 12 (17) times. (40 (44) sts)", 1, 2, 102)]
    [InlineData("Rep Dec Rnd every 10th (9th, 7th) rnd 8 (5, 11) times, then every 11th (10th, 8th) rnd 1 (5, 3) times.", 2, 3, 101)]
    [InlineData("Rep Inc Row every other row 4 times, then every 4th row twice.", 0, 1, 16)]
    [InlineData("Rep Dec Row as before.", 0, 1, null)]
    public void Rows_of_a_shaping_are_counted_size_by_size(string text, int place, int sizes, int? rows) => Assert.Equal(rows, RowsOfShaping.OfLists(text, place, sizes));
}
