using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Tests.Shapes;

/// <summary>
/// Socks with heels and toes of short rows, from the cuff and from the toe, against the arithmetic of gauge: the rows of one half of a heel lie along the leg, those of
/// the other along the sole (common practice). 60 stitches at 2 to a centimeter, rows at 2.8.
/// </summary>
public class ShortRowSockTests
{
    // The heel on 30 stitches: 29, 28, … 12 in 18 rows, then 13, 14, … 30 in another 18.
    private const string Narrower = "Row 1 (RS): K29, w&t.\n\nRow 2 (WS): P28, w&t.\n\nRow 3 (RS): K to 1 st before wrapped st, w&t.\n\nRow 4 (WS): P to 1 st before wrapped st, w&t.\n\nRep Rows 3 and 4 7 more times.\n\n";
    private const string Wider = "Row 5 (RS): K to wrapped st, knit wrapped st with its wrap, turn.\n\nRow 6 (WS): Sl 1, p to wrapped st, purl wrapped st with its wrap, turn.\n\nRep Rows 5 and 6 8 more times.\n\n";
    private const string Heel = "## Heel\n\n" + Narrower + Wider;

    // From 20 stitches to 60: three rounds of increases, then seven times two more, and the round between.
    private const string ToeUp = "## Toe\n\nCO 20 sts. Place marker for the beginning of the round and join to work in the round.\n\nRnd 1: K10, pm, k10.\n\nRnd 2: *K1, m1l, k to 1 st before m, m1r, k1, sm; rep from * once more. 24 sts.\n\nRep Rnd 2 2 more times. 32 sts.\n\nRnd 3: Knit.\n\nRep Rnds 2 and 3 7 more times. 60 sts.\n\n";
    private const string LegUp = "## Leg\n\nKnit 50 rnds.\n\nBO all sts loosely.\n";
    private const string LegDown = "## Leg\n\nCO 60 sts. Place marker for the beginning of the round and join to work in the round.\n\nKnit 56 rnds.\n\n";
    private const string ShortRowToe = "## Toe\n\nUsing a provisional cast-on, CO 30 sts.\n\n" + Narrower + Wider + "Next rnd: K30, pick up and knit 30 sts from the provisional cast-on edge. Place marker for the beginning of the round and join to work in the round. 60 sts.\n\n";

    private static string Foot(string words) => $"## Foot\n\n{words}\n\n";

    private static PieceOutline Sock(string body)
    {
        var made = Outlines.Pieces(body + "\n\n```schematic\n```\n");
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error || f.Rule.Code == "PF630");
        Assert.Equal(made.Lines.Length, made.Lines.Count(l => l.Status == Core.Work.LineStatus.Checked));
        var sock = Outlines.Only(made);
        Assert.Null(sock.Reason);
        Assert.Equal((OutlineView.Sock, "Sock"), (sock.View, sock.Name));
        return sock;
    }

    private static decimal Cm(PieceOutline outline, string name) => outline.Measures.Single(m => m.Name == name).Cm[0];

    private static void Measures(PieceOutline sock, decimal leg, decimal back, decimal foot, decimal toe)
    {
        Assert.Equal((30m, 30m), (Cm(sock, SockShape.AroundLeg), Cm(sock, SockShape.AroundFoot)));
        Assert.Equal(leg / 2.8m, Cm(sock, SockShape.LegToHeel), 6);
        Assert.Equal(back / 2.8m, Cm(sock, SockShape.BackOfHeel), 6);
        Assert.Equal(foot / 2.8m, Cm(sock, SockShape.Foot), 6);
        Assert.Equal(toe / 2.8m, Cm(sock, SockShape.Toe), 6);
        Assert.Equal((foot + toe) / 2.8m, Cm(sock, SockShape.WholeFoot), 6);
    }

    [Fact]
    public void A_sock_from_the_toe_with_a_heel_of_short_rows_measures_what_its_rounds_and_rows_make()
    {
        // The toe takes 1 + 1 + 2 + 1 + 14 rounds, of which the last, plain at 60 stitches, is foot already.
        var sock = Sock(ToeUp + Foot("Knit 28 rnds.") + Heel + LegUp);
        Measures(sock, leg: 50, back: 18, foot: 28 + 18, toe: 19);
        var shape = sock.Sizes[0].Sock!;
        Assert.Equal(20 / 4m, shape.FootPlaces[^1].HalfCm);
        Assert.Equal(12 / 4m, shape.MiddleHalfCm);
        Assert.Equal(30 / 4m, shape.FlapHalfCm);
    }

    [Fact]
    public void A_sock_from_the_cuff_with_a_heel_of_short_rows_is_as_long_as_it_is_said_from_the_back_of_the_heel()
    {
        const string toe = "## Toe\n\nRnd 1: *K1, ssk, k24, k2tog, k1; rep from * once more. 56 sts.\n\nRnd 2: *K1, ssk, k22, k2tog, k1; rep from * once more. 52 sts.\n\nRnd 3: *K2tog; rep from * around. 26 sts.\n\nGraft the rem 26 sts.\n";
        var sock = Sock(LegDown + Heel + Foot("Work even until the foot measures 20 cm from the back of the heel.") + toe);
        Measures(sock, leg: 56, back: 18, foot: 20 * 2.8m, toe: 3);
    }

    [Fact]
    public void A_toe_of_short_rows_is_as_long_as_one_of_its_halves()
    {
        var sock = Sock(ShortRowToe + Foot("Work even until the foot measures 19 cm from the tip of the toe.") + Heel + "## Leg\n\nWork even until the leg measures 18 cm from the top of the heel.\n\nBO all sts loosely.\n");
        Assert.Equal(18m, Cm(sock, SockShape.LegToHeel), 6);
        Assert.Equal(18 / 2.8m, Cm(sock, SockShape.Toe), 6);
        Assert.Equal(19m + (18 / 2.8m), Cm(sock, SockShape.WholeFoot), 6);
        Assert.Equal(2 * 12 / 4m, sock.Sizes[0].Sock!.FootPlaces[^1].HalfCm);
    }

    [Fact]
    public void A_toe_of_short_rows_can_end_a_sock_as_well()
    {
        var sock = Sock(LegDown + Heel + Foot("Knit 40 rnds.") + "## Toe\n\n" + Narrower + Wider + "Graft the toe to the instep.\n");
        Measures(sock, leg: 56, back: 18, foot: 18 + 40, toe: 18);
    }

    [Fact]
    public void What_one_side_takes_in_is_half_of_its_stitches_times_their_size()
    {
        // 20 + 20 in the first two rounds of the toe, then by pairs up to 60, as the slants of an outline run through the middles of its steps.
        decimal St(decimal stitches) => stitches / 2 / 2.8m / 2;
        var heel = 2 * Enumerable.Range(12, 18).Sum();
        int[] slow = [36, 36, 40, 40, 44, 44, 48, 48, 52, 52, 56, 56, 60, 60];
        var toe = 20 + 24 + 28 + 32 + 32 + slow.Sum();
        Assert.InRange(Sock(ToeUp + Foot("Knit 28 rnds.") + Heel + LegUp).Sizes[0].AreaCm2 / St((50 * 60) + (28 * 60) + heel + toe), 0.95m, 1.05m);
    }

    [Theory]
    [InlineData("Work even until the leg measures 18 cm from the bottom of the heel.")]
    [InlineData("Work even until the leg fits.")]
    public void A_leg_whose_rounds_are_not_known_gives_no_sock_and_says_so(string leg)
    {
        var made = Outlines.Pieces(ToeUp + Foot("Knit 28 rnds.") + Heel + $"## Leg\n\n{leg}\n\nBO all sts loosely.\n\n```schematic\n```\n");
        Assert.Contains("how many rows", Outlines.Only(made).Reason, StringComparison.Ordinal);
        Assert.Contains(made.Findings, f => f.Rule.Code == "PF630");
    }

    [Fact]
    public void Each_size_has_its_own_heel()
    {
        const string body = "---\ntitle: Harbour socks\nsizes: {names: S (M)}\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked\n---\n\n## Leg\n\nCO 60 (64) sts. Place marker for the beginning of the round and join to work in the round.\n\nKnit 56 rnds.\n\n"
            + "## Heel\n\nRow 1 (RS): K29 (31), w&t.\n\nRow 2 (WS): P28 (30), w&t.\n\nRow 3 (RS): K to 1 st before wrapped st, w&t.\n\nRow 4 (WS): P to 1 st before wrapped st, w&t.\n\nRep Rows 3 and 4 7 (8) more times.\n\nRow 5 (RS): K to wrapped st, knit wrapped st with its wrap, turn.\n\nRow 6 (WS): Sl 1, p to wrapped st, purl wrapped st with its wrap, turn.\n\nRep Rows 5 and 6 8 (9) more times.\n\n"
            + "## Foot\n\nKnit 40 rnds.\n\n## Toe\n\nRnd 1: *K2tog; rep from * around. 30 (32) sts.\n\nBreak yarn and thread through rem 30 (32) sts.\n";
        var sock = Outlines.Only(Compiler.Compile(new("socks.pattern.md", body)));
        Assert.Null(sock.Reason);
        decimal[] back = [.. sock.Measures.Single(m => m.Name == SockShape.BackOfHeel).Cm];
        Assert.Equal((18 / 2.8m, 20 / 2.8m), (back[0], back[1]));
        decimal[] around = [.. sock.Measures.Single(m => m.Name == SockShape.AroundFoot).Cm];
        Assert.Equal((30m, 32m), (around[0], around[1]));
    }
}
