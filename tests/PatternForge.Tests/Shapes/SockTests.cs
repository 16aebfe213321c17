using PatternForge.Core.Model;

namespace PatternForge.Tests.Shapes;

/// <summary>Socks against the arithmetic of gauge: rounds and rows divided by the row gauge are lengths, stitches divided by the gauge what is around.</summary>
public class SockTests
{
    // 60 stitches at 2 to a centimetre, rows at 2.8: the flap 30 rows, the turn 12, the gusset back to 60 stitches.
    private const string Leg = "## Leg\n\nCO 60 sts. Join to work in the round.\n\nKnit 56 rnds.\n\n";
    private const string Flap = "## Heel\n\nNext row (RS): K30, place next 30 sts on a holder for the instep. Turn. 30 sts.\n\nRow 1 (WS): Sl 1, p to end.\n\nRow 2 (RS): *Sl 1, k1; rep from * to end.\n\nRep Rows 1 and 2 13 more times.\n\n";

    private const string Turn = "Row 1 (WS): P17, p2tog, p1, turn. 29 sts.\n\nRow 2 (RS): Sl 1, k5, ssk, k1, turn. 28 sts.\n\nRow 3: Sl 1, p to 1 st before gap, p2tog, p1, turn. 27 sts.\n\nRow 4: Sl 1, k to 1 st before gap, ssk, k1, turn. 26 sts.\n\nRep Rows 3 and 4 4 more times. 18 sts.\n\n";
    private const string Gusset = "## Gusset\n\nNext row (RS): K18, pick up and knit 15 sts along the edge of the flap, pm, k30 held sts. Place marker for the beginning of the round and join. 63 sts.\n\nRnd 1: Pick up and knit 15 sts along the other edge, k to end. 78 sts.\n\nRnd 2: K1, ssk, k to 3 sts before m, k2tog, k1, sm, k to end. 76 sts.\n\nRnd 3: Knit.\n\nRep Rnds 2 and 3 8 more times. 60 sts.\n\n";
    private const string Toe = "## Toe\n\nRnd 1: K1, ssk, k to 3 sts before m, k2tog, k1, sm, k1, ssk, k to last 3 sts, k2tog, k1. 56 sts.\n\nRnd 2: Knit.\n\nRep Rnds 1 and 2 6 more times. 32 sts.\n\nRep Rnd 1 3 more times. 20 sts.\n\nGraft the rem 20 sts.\n";

    private static PieceOutline Sock(string foot) => Outlines.Only(Outlines.Pieces(Leg + Flap + Turn + Gusset + "## Foot\n\n" + foot + "\n\n" + Toe));

    private static decimal Cm(PieceOutline outline, string name) => outline.Measures.Single(m => m.Name == name).Cm[0];

    [Fact]
    public void A_sock_from_the_cuff_measures_what_its_rounds_and_rows_make()
    {
        var sock = Sock("Knit 28 rnds.");
        Assert.Null(sock.Reason);
        Assert.Equal((OutlineView.Sock, "Sock"), (sock.View, sock.Name));
        Assert.Equal(30m, Cm(sock, SockShape.AroundLeg));
        Assert.Equal(30m, Cm(sock, SockShape.AroundFoot));
        Assert.Equal(56 / 2.8m, Cm(sock, SockShape.Leg), 6);

        // The row that parts the stitches, and 28 rows; the turn lies along the sole with its 12 rows, then 20 rounds of gusset, 28 of the foot, 17 of the toe.
        Assert.Equal(29 / 2.8m, Cm(sock, SockShape.Flap), 6);
        Assert.Equal((12 + 20 + 28) / 2.8m, Cm(sock, SockShape.Foot), 6);
        Assert.Equal(17 / 2.8m, Cm(sock, SockShape.Toe), 6);
        Assert.Equal(Cm(sock, SockShape.Foot) + Cm(sock, SockShape.Toe), Cm(sock, SockShape.WholeFoot), 6);
        var shape = sock.Sizes[0].Sock!;
        Assert.Equal((12 + 20) / 2.8m, shape.GussetEndCm, 6);
        Assert.Equal(18 / 4m, shape.CupCm);
        Assert.Equal(20 / 4m, shape.FootPlaces[^1].HalfCm);
    }

    [Fact]
    public void A_foot_that_is_told_from_the_back_of_the_heel_is_as_long_as_it_says()
    {
        var sock = Sock("Work even until the foot measures 19 cm from the back of the heel.");
        Assert.Null(sock.Reason);
        Assert.Equal(19m, Cm(sock, SockShape.Foot));
        Assert.Equal(19m + (17 / 2.8m), Cm(sock, SockShape.WholeFoot), 6);
    }

    [Fact]
    public void A_foot_of_unknown_length_gives_no_sock() => Assert.Contains("how many rows", Sock("Work even until the foot fits.").Reason, StringComparison.Ordinal);

    [Fact]
    public void What_one_side_takes_in_is_near_its_stitches_times_their_size()
    {
        var sock = Sock("Knit 28 rnds.");
        decimal St(decimal stitches) => stitches / 2 / 2.8m; // one stitch takes so many square centimetres
        var leg = St(60 * 56) / 2;
        var foot = St((60 * 28) + (17 * 42)) / 2;
        var heel = (St(29 * 30) + St(12 * 24) + St(20 * 69)) / 2;
        Assert.InRange(sock.Sizes[0].AreaCm2, 0.85m * (leg + foot + heel), 1.15m * (leg + foot + heel));
    }

    [Fact]
    public void The_socks_of_the_example_come_to_what_their_header_declares()
    {
        var made = Outlines.Of("examples", "bilge-keel-socks.pattern.md");
        var sock = Outlines.Named(made, "Sock");
        decimal[] Said(string name) => [.. made.Pattern.Facts.Finished.Single(m => m.Name == name).Values.Values.Select(q => q!.InBase)];
        Assert.All(Said("foot length").Zip(sock.Measures.Single(m => m.Name == SockShape.WholeFoot).Cm), p => Assert.InRange(p.Second, p.First - 0.5m, p.First + 0.5m));
    }
}
