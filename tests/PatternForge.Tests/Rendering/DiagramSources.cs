namespace PatternForge.Tests.Rendering;

/// <summary>Traditional motifs and stitch patterns to draw.</summary>
internal static class DiagramSources
{
    public static IReadOnlyDictionary<string, string> Motifs { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["granny"] = """
            ## Granny square

            Ch 4, join with a sl st to form a ring.

            Rnd 1: Ch 3 (counts as dc throughout), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, sl st in top of ch-3 to join. (12 dc, 4 ch-2 sps)

            Rnd 2: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more, sl st in top of ch-3 to join. (24 dc, 4 ch-1 sps, 4 ch-2 sps)

            Rnd 3: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * twice more, sl st in top of ch-3 to join. (36 dc, 8 ch-1 sps, 4 ch-2 sps)

            Rnd 4: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] twice, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] twice; rep from * twice more, sl st in top of ch-3 to join. (48 dc, 12 ch-1 sps, 4 ch-2 sps)
            """,
        ["solid square"] = """
            ## Solid square

            Ch 4, join with a sl st to form a ring.

            Rnd 1: Ch 3 (counts as dc throughout), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, sl st in top of ch-3 to join. (12 dc, 4 ch-2 sps)

            Rnd 2: Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * twice more, sl st in top of ch-3 to join. (28 dc, 4 ch-2 sps)

            Rnd 3: Ch 3, dc in next 4 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 7 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * twice more, dc in next 2 dc, sl st in top of ch-3 to join. (44 dc, 4 ch-2 sps)

            Rnd 4: Ch 1, sc in same st, sc in next 6 dc, 3 sc in next ch-2 sp, *sc in next 11 dc, 3 sc in next ch-2 sp; rep from * twice more, sc in next 4 dc, sl st in first sc to join. (56 sc)
            """,
        ["circle squared"] = """
            ## Circle in a square

            Ch 5, join with a sl st to form a ring.

            Rnd 1: Ch 3 (counts as dc throughout), 15 dc in ring, sl st in top of ch-3 to join. (16 dc)

            Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around, sl st in 3rd ch of ch-4 to join. (16 dc, 16 ch-1 sps)

            Rnd 3: Sl st in next ch-1 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *2 hdc in next ch-1 sp, 2 sc in next ch-1 sp, 2 hdc in next ch-1 sp, (3 dc, ch 2, 3 dc) in next ch-1 sp; rep from * twice more, 2 hdc in next ch-1 sp, 2 sc in next ch-1 sp, 2 hdc in next ch-1 sp, sl st in top of ch-3 to join. (24 dc, 16 hdc, 8 sc, 4 ch-2 sps)
            """,
        ["hexagon"] = """
            ## Hexagon

            Make a magic ring.

            Rnd 1: Ch 3 (counts as dc throughout), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times, sl st in top of ch-3 to join. (12 dc, 6 ch-2 sps)

            Rnd 2: Sl st in next dc and in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, *(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1; rep from * 4 more times, sl st in top of ch-3 to join. (24 dc, 6 ch-1 sps, 6 ch-2 sps)

            Rnd 3: Sl st in next dc and in next ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, 2 dc in next ch-1 sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp, 2 dc in next ch-1 sp; rep from * 4 more times, sl st in top of ch-3 to join. (36 dc, 6 ch-2 sps)
            """,
        ["flower"] = """
            ## Flower

            Ch 6, join with a sl st to form a ring.

            Rnd 1: Ch 1, 12 sc in ring, sl st in first sc to join. (12 sc)

            Rnd 2: Ch 1, sc in same st, ch 5, sk 1 st, *sc in next st, ch 5, sk 1 st; rep from * around, sl st in first sc to join. (6 sc, 6 ch-5 sps)

            Rnd 3: *(Sc, hdc, 3 dc, hdc, sc) in next ch-5 sp; rep from * around, sl st in first sc to join. (18 dc, 12 hdc, 12 sc)
            """,
        ["doily"] = """
            ## Doily

            Ch 8, join with a sl st to form a ring.

            Rnd 1: Ch 3 (counts as dc throughout), 23 dc in ring, sl st in top of ch-3 to join. (24 dc)

            Rnd 2: Ch 5 (counts as dc and ch 2), sk 1 dc, *dc in next dc, ch 2, sk 1 dc; rep from * around, sl st in 3rd ch of ch-5 to join. (12 dc, 12 ch-2 sps)

            Rnd 3: Ch 1, sc in same st, ch 5, *sc in next dc, ch 5; rep from * around, sl st in first sc to join. (12 sc, 12 ch-5 sps)

            Rnd 4: Sl st in next ch-5 sp, ch 3, 4 dc in same sp, ch 1, *5 dc in next ch-5 sp, ch 1; rep from * around, sl st in top of ch-3 to join. (60 dc, 12 ch-1 sps)
            """,
    };

    public static IReadOnlyDictionary<string, string> Patterns { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["shells"] = """
            ## Shells (multiple of 6 + 1, add 1 for base chain)

            Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end, turn.

            Row 2: Ch 3 (counts as dc), 2 dc in same st, sk 2 dc, sc in next dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to last 3 sts, sk 2 dc, 3 dc in last sc, turn.

            Row 3: Ch 1, sc in same st, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to end, turn.
            """,
        ["mesh"] = """
            ## Mesh (multiple of 2, add 4 for base chain)

            Row 1: Dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end, turn.

            Row 2: Ch 4 (counts as dc and ch 1), sk next ch-1 sp, dc in next dc, *ch 1, sk next ch-1 sp, dc in next dc; rep from * to end, turn.
            """,
        ["loops"] = """
            ## Loops (multiple of 4 + 1, add 1 for base chain)

            Row 1: Sc in 2nd ch from hook, sc in each ch to end, turn.

            Row 2: Ch 1, sc in first sc, *ch 5, sk 3 sc, sc in next sc; rep from * to end, turn.

            Row 3: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * to end, ch 2, dc in last sc, turn.
            """,
        ["waves"] = """
            ## Waves (multiple of 12, add 3 for base chain)

            Row 1: Dc in 4th ch from hook, dc in next 3 ch, [dc2tog over next 2 ch] twice, dc in next 3 ch, *2 dc in each of next 2 ch, dc in next 3 ch, [dc2tog over next 2 ch] twice, dc in next 3 ch; rep from * to last ch, 2 dc in last ch, turn.

            Row 2: Ch 3 (counts as dc), dc in same st, dc in next 3 sts, [dc2tog over next 2 sts] twice, dc in next 3 sts, *2 dc in each of next 2 sts, dc in next 3 sts, [dc2tog over next 2 sts] twice, dc in next 3 sts; rep from * to last st, 2 dc in last st, turn.
            """,
        ["ribs"] = """
            ## Ribs (multiple of 2, add 1 for base chain)

            Row 1: Hdc in 2nd ch from hook and in each ch to end, turn.

            Row 2: Ch 2, *FPdc around next st, BPdc around next st; rep from * to end, turn.

            Row 3: Ch 1, sc in each st to end, turn.
            """,
    };
}
