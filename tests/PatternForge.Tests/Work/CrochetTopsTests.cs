using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>What each top of a crochet row knows of itself: its base, its group, its place after turning. Common practice.</summary>
public class CrochetTopsTests
{
    [Fact]
    public void Every_stitch_records_the_place_that_it_was_worked_into()
    {
        var piece = new CrochetPiece(6, inTheRound: true);

        Assert.Empty(piece.Row("sc in next st, 2 sc in next st, sk next st, sc2tog, sc in next st"));

        Assert.Equal([0, 1, 1, 4, 5], piece.Tops.Select(t => t.Base));
    }

    [Fact]
    public void Stitches_of_a_ring_have_no_base()
    {
        var piece = new CrochetPiece(0, inTheRound: true);

        Assert.Empty(piece.Row("ch 4, join with sl st to form a ring"));
        Assert.Empty(piece.Row("ch 1, 8 sc in ring, join"));

        Assert.Equal(8, piece.Tops.Count(t => t is { Counts: true, Base: -1 }));
    }

    [Fact]
    public void Stitches_of_one_bracket_are_one_group_with_one_base()
    {
        var piece = new CrochetPiece(5, inTheRound: true);

        Assert.Empty(piece.Row("sc in next 2 sts, (2 dc, ch 2, 2 dc) in next st, sc in next 2 sts"));

        var group = piece.Tops.Where(t => t.Group > 0).ToArray();
        Assert.Equal([TopKind.Stitch, TopKind.Stitch, TopKind.Space, TopKind.Stitch, TopKind.Stitch], group.Select(t => t.Kind));
        Assert.Equal([2], group.Select(t => t.Base).Distinct());
        Assert.Equal([1], group.Select(t => t.Group).Distinct());
    }

    [Fact]
    public void A_turned_row_is_met_from_its_other_end()
    {
        var piece = new CrochetPiece(3);

        Assert.Empty(piece.Row("ch 1, sc in next st, hdc in next st, dc in next st, turn"));

        Assert.Equal(["dc", "hdc", "sc"], piece.Tops.Where(t => t.Counts).Select(t => t.Stitch!.Id));
    }

    [Fact]
    public void A_round_is_met_from_its_beginning()
    {
        var piece = new CrochetPiece(3, inTheRound: true);

        Assert.Empty(piece.Row("ch 1, sc in next st, hdc in next st, dc in next st, join"));

        Assert.Equal(["sc", "hdc", "dc"], piece.Tops.Where(t => t.Counts).Select(t => t.Stitch!.Id));
    }

    [Fact]
    public void Slip_stitches_at_the_beginning_move_the_start_of_a_round()
    {
        var piece = new CrochetPiece(4, inTheRound: true);
        Assert.Empty(piece.Row("ch 1, sc in next 2 sts, ch 2, sc in next 2 sts, ch 3, join"));

        Assert.Empty(piece.Row("sl st to next ch-2 sp, ch 3, 2 dc in same sp, 3 dc in next ch-3 sp, join"));

        Assert.Equal(6, piece.Below.Count);
        Assert.Equal([0, 0, 0], piece.Tops.Take(3).Select(t => t.Base));
    }

    [Theory]
    [InlineData("ch 3, dc in next st and in each st across, turn", TopKind.TurningChain)]
    [InlineData("ch 3 (does not count as a st), dc in each st across, turn", TopKind.BareTurningChain)]
    [InlineData("ch 3 (counts as dc), dc in next st and in each st across, turn", TopKind.TurningChain)]
    [InlineData("ch 2, hdc in each st across, turn", TopKind.BareTurningChain)]
    [InlineData("ch 1, sc in each st across, turn", TopKind.BareTurningChain)]
    [InlineData("ch 1 (counts as sc), sc in next st and in each st across, turn", TopKind.TurningChain)]
    public void The_turning_chain_is_the_last_of_a_turned_row(string row, TopKind kind)
    {
        var piece = new CrochetPiece(10);

        Assert.Empty(piece.Row(row));

        Assert.Equal(kind, piece.Tops[^1].Kind);
        Assert.Equal(10, piece.Below.Count);
    }

    [Fact]
    public void Chains_of_a_space_are_worked_one_by_one_where_chains_are_named()
    {
        var piece = new CrochetPiece(6, inTheRound: true);
        Assert.Empty(piece.Row("sc in next 2 sts, ch 3, sk next 2 sts, sc in next 2 sts"));

        Assert.Empty(piece.Row("sc in next 2 sts, sc in each of next 3 chs, sc in next 2 sts"));

        Assert.Equal(7, piece.Below.Count);
    }
}
