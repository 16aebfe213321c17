using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>A circle that is said to be flat and grows much faster than a flat one.</summary>
internal sealed class FlatRoundRuffles : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF631", "flat-round-ruffles", Area.Gauge, Severity.Note,
        "A flat circle grows so fast that it will ruffle.",
        "A flat circle grows by the same number of stitches in every round: about 6 in single crochet, 8 in half double crochet, 12 in double crochet (American names). These are rules of thumb that differ from book to book, so much is allowed, and only pieces that are called a circle, a disc, a base, a coaster or a mandala are looked at. More stitches than the edge has room for stand up in waves.")
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

            Rnd 1: 6 sc in ring. (6 sc)

            Rnd 2: 3 sc in each st around. (18 sc)

            Rnd 3: 2 sc in each st around. (36 sc)
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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

            Rnd 1: 6 sc in ring. (6 sc)

            Rnd 2: 2 sc in each st around. (12 sc)

            Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context) => FlatRounds.Check(context, Rule, ruffles: true);
}
