using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>Whole garments as a designer drafts them, without a blank line between instructions (common practice).</summary>
public class WholeGarmentTests
{
    private const string Sock =
        """
        ---
        title: Slipway sock
        craft: knitting
        terms: us
        sizes: {names: S (M, L)}
        gauge: 32 sts and 44 rounds = 10 cm in stockinette on 2.5 mm, blocked
        ---
        ## Leg
        CO 56 (64, 72) sts. Divide evenly over 4 dpns and join to work in the round, being careful not to twist.
        Rnd 1: *K2, p2; rep from * around.
        Rep Rnd 1 until cuff measures 5 cm.
        Knit 40 rnds.
        ## Heel flap
        Heel is worked back and forth over the next 28 (32, 36) sts; leave rem 28 (32, 36) sts on hold for instep.
        Row 1 (RS): *Sl 1, k1; rep from * 13 (15, 17) more times, turn.
        Row 2 (WS): Sl 1, p27 (31, 35), turn.
        Rep Rows 1 and 2 13 (15, 17) more times.
        ## Turn heel
        Row 1 (RS): K16 (18, 20), ssk, k1, turn.
        Row 2: Sl 1, p5, p2tog, p1, turn.
        Row 3: Sl 1, k to 1 st before gap, ssk, k1, turn.
        Row 4: Sl 1, p to 1 st before gap, p2tog, p1, turn.
        Rep Rows 3 and 4 until all heel sts have been worked. 16 (18, 20) sts rem.
        ## Gusset
        Next rnd: K16 (18, 20), pick up and knit 14 (16, 18) sts along side of flap, pm, k28 (32, 36) instep sts, pm, pick up and knit 14 (16, 18) sts along other side of flap, k8 (9, 10). 72 (82, 92) sts.
        Rnd 1: K to 3 sts before m, k2tog, k1, sm, k to m, sm, k1, ssk, k to end. 70 (80, 90) sts.
        Rnd 2: Knit.
        Rep Rnds 1 and 2 until 56 (64, 72) sts rem.
        ## Foot
        Knit until foot measures 18 (20, 22) cm from back of heel.
        ## Toe
        Rnd 1: *K to 3 sts before m, k2tog, k1, sm, k1, ssk; rep from * once more, k to end. 52 (60, 68) sts.
        Rnd 2: Knit.
        Rep Rnds 1 and 2 5 (6, 7) more times. 32 (36, 40) sts.
        Rep Rnd 1 only 4 (5, 6) times. 16 sts.
        Graft toe.
        """;

    [Fact]
    public void A_sock_is_worked_from_cuff_to_toe()
    {
        var compiled = Compiler.Compile(new SourceText("sock.pattern.md", Sock));

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error || f.Rule.Code == "PF208");
        Assert.Equal(compiled.Lines.Length - 1, compiled.Lines.Count(l => l.Status == LineStatus.Checked)); // how often the heel is turned is not told
        var gusset = Assert.Single(compiled.Lines, l => l.Stated.Length > 0 && l.Stated[0] == 72);
        Assert.Equal<int?>([72, 82, 92], gusset.After);
    }

    [Fact]
    public void One_stitch_too_few_at_the_gusset_is_found_where_it_is()
    {
        var compiled = Compiler.Compile(new SourceText("sock.pattern.md", Sock.Replace("pick up and knit 14 (16, 18) sts along side", "pick up and knit 14 (15, 18) sts along side", StringComparison.Ordinal)));

        var finding = Assert.Single(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int>([1], finding.Sizes);
        Assert.Contains("states 82 stitches in size M, but makes 81", finding.Message, StringComparison.Ordinal);
    }
}
