using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Holds the stitches of the pieces against the finished widths and circumferences.</summary>
internal sealed class WidthDiffers : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF618", "width-differs", Area.Gauge, Severity.Warning,
        "The stitches of a piece do not make the finished measurement at the gauge.",
        "Stitches divided by the gauge are the width. It is looked at where `measured` says which piece has the measurement, and where no other can be meant: a hat or a scarf of one piece, a body worked in the round, a back and a front worked flat, in the stitch that the gauge is counted in. Stitches that go into seams are taken off (`seam`, else none to one at each edge), and bands that lie over each other added (`band-overlap`). Ribbing and other stitches without a gauge of their own are left alone. Five in a hundred are allowed, and a centimetre always.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
              names: S (M)
              finished: {circumference: 48 (62) cm}
                                        ^^^^^^^^^^
            gauge: 20 sts and 28 rounds = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Hat

            CO 96 (104) sts. Join in the round.

            Rnds 1-20: Knit.

            Rnd 21: *K6, k2tog; rep from * around. 84 (91) sts.
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M)
              finished: {circumference: 48 (52) cm}
            gauge: 20 sts and 28 rounds = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Hat

            CO 96 (104) sts. Join in the round.

            Rnds 1-20: Knit.

            Rnd 21: *K6, k2tog; rep from * around. 84 (91) sts.
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context) => PieceDiffers.Check(context, Rule, byRows: false);
}
