using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>A circle that is said to be flat and grows much slower than a flat one.</summary>
internal sealed class FlatRoundCups : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF632", "flat-round-cups", Area.Gauge, Severity.Note,
        "A flat circle grows so slowly that it will cup.",
        "A flat circle grows by the same number of stitches in every round: about 6 in single crochet, 8 in half double crochet, 12 in double crochet (American names). These are rules of thumb that differ from book to book, so much is allowed, and only pieces that are called a circle, a disc, a base, a coaster or a mandala are looked at. With too few stitches the edge draws in and the piece turns into a bowl.")
    {
        Bad = """
            ---
            title: Harbour coaster
            craft: crochet
            terms: us
            sizes: one size
            ---

            ## Circle

            With A, make a magic ring.

            Rnd 1: 8 dc in ring. (8 dc)

            Rnd 2: *Dc in next st, 2 dc in next st; rep from * around. (12 dc)

            Rnd 3: *Dc in next 2 sts, 2 dc in next st; rep from * around. (16 dc)
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Harbour coaster
            craft: crochet
            terms: us
            sizes: one size
            ---

            ## Circle

            With A, make a magic ring.

            Rnd 1: 12 dc in ring. (12 dc)

            Rnd 2: 2 dc in each st around. (24 dc)

            Rnd 3: *Dc in next st, 2 dc in next st; rep from * around. (36 dc)
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context) => FlatRounds.Check(context, Rule, ruffles: false);
}
