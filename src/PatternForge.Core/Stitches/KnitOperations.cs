using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>
/// Every operation of hand knitting that needs no definition in the pattern, except crossings, which <see cref="CableNames"/> reads for any numbers.
/// Stitches taken and made are those of the usual abbreviation lists ("common practice"); a brioche stitch with its over counts as one.
/// Casting on makes and binding off takes one stitch for each one told; which stitch of a bind-off stays on the needle is the worker's business.
/// </summary>
public static class KnitOperations
{
    /// <summary>All of them, grouped by family, the plainest first.</summary>
    public static ImmutableArray<Operation> All { get; } =
    [
        // Plain stitches.
        Of("k", Any("k", "knit"), "knit", 1, 1, Family.Basic, StitchKind.Knit, Difficulty.Basic, "knit",
            "Work a knit stitch: yarn at the back, needle in from the front."),
        Of("p", Any("p", "purl"), "purl", 1, 1, Family.Basic, StitchKind.Purl, Difficulty.Basic, "purl",
            "Work a purl stitch: yarn at the front, needle in from the back."),
        Of("ktbl", Any("ktbl", "k tbl", "k1 tbl"), "knit through the back loop", 1, 1, Family.Basic, StitchKind.Knit, Difficulty.Easy, "knit-twisted",
            "Knit into the back leg of the stitch, which twists it."),
        Of("ptbl", Any("ptbl", "p tbl", "p1 tbl"), "purl through the back loop", 1, 1, Family.Basic, StitchKind.Purl, Difficulty.Intermediate, "purl-twisted",
            "Purl into the back leg of the stitch, which twists it."),
        Of("k1b", Any("k1b", "k1-b", "kb"), "knit into the back", 1, 1, Family.Basic, StitchKind.Knit, Difficulty.Easy, "knit-twisted",
            "Knit into the back leg of the stitch; a pattern that means the row below says so in its own list."),
        Of("p1b", Any("p1b", "p1-b", "pb"), "purl into the back", 1, 1, Family.Basic, StitchKind.Purl, Difficulty.Intermediate, "purl-twisted",
            "Purl into the back leg of the stitch; a pattern that means the row below says so in its own list."),
        Of("k1-below", Any("k1 below", "k below", "knit 1 below", "knit in row below", "knit in the row below"), "knit 1 in the row below", 1, 1, Family.Basic, StitchKind.Knit, Difficulty.Intermediate, "knit-below",
            "Knit into the stitch under the next one and let both come off together."),
        Of("p1-below", Any("p1 below", "p below", "purl 1 below", "purl in row below", "purl in the row below"), "purl 1 in the row below", 1, 1, Family.Basic, StitchKind.Purl, Difficulty.Intermediate, "purl-below",
            "Purl into the stitch under the next one and let both come off together."),
        Of("yb", Any("yb", "ybk", "ytb", "yarn back", "yarn to back", "wool back"), "take the yarn to the back", 0, 0, Family.Basic, StitchKind.Knit, Difficulty.Basic, null,
            "Take the yarn between the needles to the back; no stitch is made."),
        Of("ytf", Any("ytf", "yarn to front", "bring yarn to front"), "bring the yarn to the front", 0, 0, Family.Basic, StitchKind.Knit, Difficulty.Basic, null,
            "Bring the yarn between the needles to the front; no stitch is made."),

        // Slipped stitches.
        Of("sl", Any("sl", "slip", "s", "sl st", "slip st", "slip stitch"), "slip", 1, 1, Family.Slip, StitchKind.Slipped, Difficulty.Basic, "slip",
            "Pass the stitch to the right needle unworked, purlwise unless told otherwise."),
        Of("sl1k", Any("sl1k", "sl-k", "slk", "sl kwise", "sl1 kwise"), "slip knitwise", 1, 1, Family.Slip, StitchKind.Slipped, Difficulty.Easy, "slip-knitwise",
            "Pass the stitch to the right needle unworked, going in as if to knit."),
        Of("sl1p", Any("sl1p", "sl-p", "slp", "sl pwise", "sl1 pwise"), "slip purlwise", 1, 1, Family.Slip, StitchKind.Slipped, Difficulty.Easy, "slip",
            "Pass the stitch to the right needle unworked, going in as if to purl."),
        Of("psso", Any("psso", "pass slip stitch over", "pass slip st over", "pass sl st over", "pass the slipped stitch over", "pass slipped st over"), "pass slipped stitch over", 0, 0, Family.Decrease, StitchKind.Decrease, Difficulty.Easy, null,
            "Lift the slipped stitch over the one just worked and off the needle.", passesOver: 1),
        Of("p2sso", Any("p2sso", "pass 2 slipped sts over", "pass both slipped stitches over", "pass both slipped sts over"), "pass 2 slipped stitches over", 0, 0, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, null,
            "Lift both slipped stitches over the one just worked and off the needle.", passesOver: 2),
        Of("pnso", Any("pnso", "pass next st over"), "pass next stitch over", 1, 0, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, null,
            "Lift the next stitch of the left needle over the one just worked and let it go."),

        // Decreases of one.
        Of("k2tog", Any("k2tog", "k2t", "narrow"), "knit 2 together", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Basic, "lean-right-2",
            "Knit two stitches as one; the decrease leans right.", Lean.Right),
        Of("p2tog", Any("p2tog", "p2t"), "purl 2 together", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Basic, "purl-lean-right-2",
            "Purl two stitches as one; seen from the knit side the decrease leans right.", Lean.Right),
        Of("k2tog-tbl", Any("k2tog tbl", "k2togtbl", "k2tog-b", "k2togb"), "knit 2 together through the back loops", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Easy, "lean-left-2",
            "Knit two stitches as one through their back legs; the decrease leans left.", Lean.Left),
        Of("p2tog-tbl", Any("p2tog tbl", "p2togtbl", "p2tog-b", "p2togb"), "purl 2 together through the back loops", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "purl-lean-left-2",
            "Purl two stitches as one through their back legs; seen from the knit side the decrease leans left.", Lean.Left),
        Of("ssk", Any("ssk", "slip-slip-knit"), "slip, slip, knit", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Easy, "lean-left-2",
            "Slip two stitches knitwise, one by one, and knit them as one through their back legs; the decrease leans left.", Lean.Left),
        Of("ssp", Any("ssp", "slip-slip-purl"), "slip, slip, purl", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "purl-lean-left-2",
            "Slip two stitches knitwise, one by one, give them back and purl them as one through their back legs.", Lean.Left),
        Of("skp", Any("skp", "skpo", "sl1-k1-psso", "s1-k1-psso", "slip-knit-pass"), "slip 1, knit 1, pass slipped stitch over", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Easy, "lean-left-2",
            "Slip a stitch, knit the next and lift the slipped one over it; the decrease leans left.", Lean.Left),
        Of("spp", Any("spp", "sl1-p1-psso"), "slip 1, purl 1, pass slipped stitch over", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "purl-lean-left-2",
            "Slip a stitch, purl the next and lift the slipped one over it.", Lean.Left),
        Of("ksp", Any("ksp"), "knit 1, slip back, pass", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "lean-right-2",
            "Knit a stitch, give it back, lift the next one over it and slip it to the right needle; the decrease leans right.", Lean.Right),
        Of("dec", Any("dec", "decrease"), "decrease", 2, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Basic, "decrease",
            "Make one stitch of two by any plain decrease; knit two together where the pattern names none."),

        // Decreases of two and more.
        Together('k', 3), Together('k', 4), Together('k', 5), Together('k', 6), Together('k', 7), Together('k', 8), Together('k', 9),
        Together('p', 3), Together('p', 4), Together('p', 5), Together('p', 6), Together('p', 7), Together('p', 8), Together('p', 9),
        TogetherBehind('k', 3), TogetherBehind('k', 4), TogetherBehind('k', 5),
        TogetherBehind('p', 3), TogetherBehind('p', 4), TogetherBehind('p', 5),
        Of("sssk", Any("sssk", "slip-slip-slip-knit", "sl3-k3tog"), "slip, slip, slip, knit", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "lean-left-3",
            "Slip three stitches knitwise, one by one, and knit them as one through their back legs; the decrease leans left.", Lean.Left),
        Of("sssp", Any("sssp", "slip-slip-slip-purl"), "slip, slip, slip, purl", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "purl-lean-left-3",
            "Slip three stitches knitwise, one by one, give them back and purl them as one through their back legs.", Lean.Left),
        Of("sk2p", Any("sk2p", "sk2po", "sk2togpo", "sl1-k2tog-psso", "s1-k2tog-psso"), "slip 1, knit 2 together, pass slipped stitch over", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Easy, "lean-left-3",
            "Slip a stitch, knit the next two as one and lift the slipped one over; the left one lies on top.", Lean.Left),
        Of("sp2p", Any("sp2p", "sp2po", "sl1-p2tog-psso"), "slip 1, purl 2 together, pass slipped stitch over", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "purl-lean-left-3",
            "Slip a stitch, purl the next two as one and lift the slipped one over.", Lean.Left),
        Of("s2kp", Any("s2kp", "s2kp2", "s2kpo", "s2k1p", "cdd", "sl2-k1-p2sso", "s2-k1-p2sso", "sl2tog-k1-p2sso", "sl2tog-k1-psso", "sl2-k1-psso"), "slip 2 together, knit 1, pass 2 slipped stitches over", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Intermediate, "centre-3",
            "Slip two stitches together knitwise, knit the next and lift both over it; the middle stitch lies on top.", Lean.Centre),
        Of("sspp2", Any("sspp2", "ssp1p2", "cddp"), "slip, slip, purl 1, pass 2 slipped stitches over", 3, 1, Family.Decrease, StitchKind.Decrease, Difficulty.Complex, "purl-centre-3",
            "Turn two stitches round by slipping them knitwise, purl the third and lift both over it: a centred double decrease for the wrong side.", Lean.Centre),

        // Increases into a stitch.
        Of("kfb", Any("kfb", "kf&b", "k1f&b", "k f/b", "k1 f/b", "kf/b", "k1fb", "kfab", "k in front and back", "k into front and back", "k into the front and back", "knit in front and back", "knit front and back", "knit into front and back"), "knit into the front and back", 1, 2, Family.Increase, StitchKind.Increase, Difficulty.Basic, "increase-bar",
            "Knit into the front and then the back leg of the same stitch; a small bar shows."),
        Of("pfb", Any("pfb", "pf&b", "p1f&b", "p f/b", "pf/b", "p1fb", "purl in front and back", "purl front and back"), "purl into the front and back", 1, 2, Family.Increase, StitchKind.Increase, Difficulty.Easy, "purl-increase-bar",
            "Purl into the front and then the back leg of the same stitch."),
        Of("kfbf", Any("kfbf", "kf&b&f", "k1f&b&f"), "knit into the front, back and front", 1, 3, Family.Increase, StitchKind.Increase, Difficulty.Easy, "increase-1-3",
            "Knit into the front, the back and again the front leg of the same stitch."),
        Of("kpk", Any("kpk", "k1p1k1"), "knit, purl, knit into one stitch", 1, 3, Family.Increase, StitchKind.Increase, Difficulty.Easy, "increase-1-3",
            "Knit, purl and knit into the same stitch before letting it go."),
        Of("pkp", Any("pkp", "p1k1p1"), "purl, knit, purl into one stitch", 1, 3, Family.Increase, StitchKind.Increase, Difficulty.Easy, "purl-increase-1-3",
            "Purl, knit and purl into the same stitch before letting it go."),
        Of("kyok", Any("kyok", "k1yok1"), "knit, yarn over, knit into one stitch", 1, 3, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "increase-1-3-over",
            "Knit, bring the yarn over and knit again, all into the same stitch."),
        Of("inc", Any("inc", "increase"), "increase", 1, 2, Family.Increase, StitchKind.Increase, Difficulty.Basic, "increase",
            "Make two stitches of one; by knitting into the front and back where the pattern names no other way."),

        // Increases between stitches.
        Of("m1", Any("m1"), "make 1", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Easy, "make-1",
            "Lift the bar between two stitches on to the left needle and knit it twisted."),
        Of("m1l", Any("m1l", "m1-l", "ml", "m1 left", "make 1 left-leaning"), "make 1 left", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Easy, "make-1-left",
            "Lift the bar between two stitches from front to back and knit its back leg; the increase leans left.", Lean.Left),
        Of("m1r", Any("m1r", "m1-r", "mr", "m1 right", "make 1 right-leaning"), "make 1 right", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Easy, "make-1-right",
            "Lift the bar between two stitches from back to front and knit its front leg; the increase leans right.", Lean.Right),
        Of("m1p", Any("m1p", "m1p-st", "m1 pwise", "make 1 purl"), "make 1 purlwise", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Easy, "make-1-purl",
            "Lift the bar between two stitches on to the left needle and purl it twisted."),
        Of("m1pl", Any("m1pl", "m1lp", "m1l pwise"), "make 1 purlwise left", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "make-1-purl-left",
            "Lift the bar between two stitches from front to back and purl its back leg.", Lean.Left),
        Of("m1pr", Any("m1pr", "m1rp", "m1r pwise"), "make 1 purlwise right", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "make-1-purl-right",
            "Lift the bar between two stitches from back to front and purl its front leg.", Lean.Right),
        Of("m2", Any("m2"), "make 2", 0, 2, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "make-2",
            "Lift the bar between two stitches and work two stitches into it."),
        Of("lli", Any("lli", "lki", "kll", "left lifted increase"), "lift left increase", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "lifted-left",
            "Lift the leg two rows under the stitch just worked on to the left needle and knit it; the increase leans left.", Lean.Left),
        Of("rli", Any("rli", "rki", "krl", "right lifted increase"), "lift right increase", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "lifted-right",
            "Lift the leg under the next stitch on to the left needle and knit it; the increase leans right.", Lean.Right),
        Of("llpi", Any("llpi", "left lifted purl increase"), "lift left purl increase", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "lifted-purl-left",
            "Lift the leg two rows under the stitch just worked on to the left needle and purl it.", Lean.Left),
        Of("rlpi", Any("rlpi", "right lifted purl increase"), "lift right purl increase", 0, 1, Family.Increase, StitchKind.Increase, Difficulty.Intermediate, "lifted-purl-right",
            "Lift the leg under the next stitch on to the left needle and purl it.", Lean.Right),

        // Yarn overs. The four British names tell which stitches stand on either side; American patterns say yo for all of them.
        Of("yo", Any("yo", "thread over", "cotton over", "yarnover"), "yarn over", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Basic, "over",
            "Lay the yarn over the right needle from front to back: a new stitch and a hole."),
        Of("yfwd", Uk("yfwd", "yfd", "y fwd", "yf", "wfwd", "wl fwd", "wool forward"), "yarn forward", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Basic, "over",
            "Bring the yarn to the front between the needles and over the right one as the next stitch is knitted: a new stitch between two knit ones."),
        Of("yrn", Uk("yrn", "wrn", "wool round needle"), "yarn round needle", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Easy, "over",
            "Take the yarn once round the right needle: a new stitch between two purl ones."),
        Of("yon", Uk("yon", "won", "wool over needle"), "yarn over needle", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Easy, "over",
            "Take the yarn over the right needle to the back: a new stitch between a purl and a knit one."),
        Of("yfrn", Uk("yfrn", "yfwd-rn", "wfrn"), "yarn forward and round needle", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Easy, "over",
            "Bring the yarn to the front and once round the right needle: a new stitch between a knit and a purl one."),
        Of("yo2", Any("yo2", "yo twice", "dyo", "2yo", "yo x 2", "double yo", "yarn over twice"), "double yarn over", 0, 2, Family.YarnOver, StitchKind.YarnOver, Difficulty.Easy, "over-double",
            "Lay the yarn twice over the right needle: two new stitches, worked as told in the next row."),
        Of("byo", Any("byo", "backward yo", "backwards yo", "reverse yo", "ryo"), "backward yarn over", 0, 1, Family.YarnOver, StitchKind.YarnOver, Difficulty.Intermediate, "over-backward",
            "Lay the yarn over the right needle from back to front: a new stitch that sits the other way round."),

        // Brioche: a stitch and its over are one.
        Of("sl1yo", Any("sl1yo", "sl1yof", "sl1-yo", "yfsl1yo", "yf-sl1-yo", "sl1yob"), "slip 1 with yarn over", 1, 1, Family.Brioche, StitchKind.Slipped, Difficulty.Intermediate, "brioche-slip",
            "Slip the stitch purlwise while the yarn goes over the needle with it; the two count as one stitch."),
        Of("brk", Any("brk", "brk1", "bk"), "brioche knit", 1, 1, Family.Brioche, StitchKind.Knit, Difficulty.Intermediate, "brioche-knit",
            "Knit the stitch together with its yarn over."),
        Of("brp", Any("brp", "brp1", "bp"), "brioche purl", 1, 1, Family.Brioche, StitchKind.Purl, Difficulty.Intermediate, "brioche-purl",
            "Purl the stitch together with its yarn over."),
        Of("brkyobrk", Any("brkyobrk", "brk-yo-brk", "brk1-yo-brk1"), "brioche knit, yarn over, brioche knit", 1, 3, Family.Brioche, StitchKind.Increase, Difficulty.Complex, "brioche-increase",
            "Knit the stitch with its over, yarn over, and knit into the same place again: two stitches more."),
        Of("brpyobrp", Any("brpyobrp", "brp-yo-brp"), "brioche purl, yarn over, brioche purl", 1, 3, Family.Brioche, StitchKind.Increase, Difficulty.Complex, "brioche-purl-increase",
            "Purl the stitch with its over, yarn over, and purl into the same place again: two stitches more."),
        Of("brlsl-dec", Any("brlsl dec", "brlsl", "brlsld"), "brioche left-slanting decrease", 3, 1, Family.Brioche, StitchKind.Decrease, Difficulty.Complex, "brioche-lean-left",
            "Make one brioche stitch of three, the first lying on top and leaning left.", Lean.Left),
        Of("brrsl-dec", Any("brrsl dec", "brrsl", "brrsld"), "brioche right-slanting decrease", 3, 1, Family.Brioche, StitchKind.Decrease, Difficulty.Complex, "brioche-lean-right",
            "Make one brioche stitch of three, the last lying on top and leaning right.", Lean.Right),

        // Short rows.
        Of("w&t", Any("w&t", "w+t", "w/t", "w & t", "wrap & turn", "wrap next st and turn", "wrap next stitch and turn", "wrap 1 and turn"), "wrap and turn", 0, 0, Family.ShortRow, StitchKind.Slipped, Difficulty.Intermediate, null,
            "Take the yarn round the next stitch without working it and turn; the count stays."),
        Of("mds", Any("mds", "make ds", "make 1 ds", "ds", "german short row turn"), "make double stitch", 1, 1, Family.ShortRow, StitchKind.Double, Difficulty.Intermediate, "double-stitch",
            "After turning, slip the first stitch with the yarn in front and pull it up over the needle so that the stitch shows two legs; it counts as one."),

        // Edges.
        Of("co", Any("co", "cast on"), "cast on", 0, 1, Family.Edge, StitchKind.CastOn, Difficulty.Basic, null,
            "Make a new stitch on the needle by any method that suits."),
        Of("bo", [.. Us("bo", "bind off"), .. Uk("cast off")], "bind off", 1, 0, Family.Edge, StitchKind.Knit, Difficulty.Basic, null,
            "Work two stitches and lift the first over the second; go on so for each stitch to be closed."),
        Of("puk", [.. Any("pick up and knit", "pick up & knit", "pick up and k", "pick up & k", "puk", "pu&k", "pu & k", "pu and k"), .. Uk("knit up")], "pick up and knit", 0, 1, Family.Edge, StitchKind.CastOn, Difficulty.Easy, null,
            "Put the needle through the edge, draw the yarn through and keep it as a stitch."),
        Of("pup", Any("pick up and purl", "pick up & purl", "pick up and p", "pick up & p", "pu&p", "pu & p"), "pick up and purl", 0, 1, Family.Edge, StitchKind.CastOn, Difficulty.Intermediate, null,
            "Put the needle through the edge from behind, draw the yarn through purlwise and keep it as a stitch."),
        Of("pu", Any("pu", "pick up"), "pick up", 0, 1, Family.Edge, StitchKind.CastOn, Difficulty.Easy, null,
            "Bring a loop of the edge on to the needle as a stitch."),
    ];

    private static Operation Together(char stitch, int many)
    {
        var purl = stitch == 'p';
        return Of($"{stitch}{many}tog", Any($"{stitch}{many}tog", $"{stitch}{many}t"), $"{(purl ? "purl" : "knit")} {many} together", many, 1, Family.Decrease, StitchKind.Decrease,
            many == 3 ? Difficulty.Easy : Difficulty.Intermediate, $"{(purl ? "purl-" : "")}lean-right-{many}",
            $"{(purl ? "Purl" : "Knit")} {many} stitches as one; {(purl ? "seen from the knit side " : "")}the decrease leans right.", Lean.Right);
    }

    private static Operation TogetherBehind(char stitch, int many)
    {
        var purl = stitch == 'p';
        return Of($"{stitch}{many}tog-tbl", Any($"{stitch}{many}tog tbl", $"{stitch}{many}tog-b"), $"{(purl ? "purl" : "knit")} {many} together through the back loops", many, 1, Family.Decrease, StitchKind.Decrease,
            Difficulty.Intermediate, $"{(purl ? "purl-" : "")}lean-left-{many}",
            $"{(purl ? "Purl" : "Knit")} {many} stitches as one through their back legs; {(purl ? "seen from the knit side " : "")}the decrease leans left.", Lean.Left);
    }

    private static Operation Of(
        string id, ImmutableArray<OperationName> names, string spoken, int takes, int makes, Family family, StitchKind gives, Difficulty difficulty, string? symbol,
        string definition, Lean lean = Lean.None, int passesOver = 0) => new()
        {
            Id = id,
            Craft = Craft.Knitting,
            Names = names,
            Spoken = spoken,
            Definition = definition,
            Takes = takes,
            Makes = makes,
            PassesOver = passesOver,
            Family = family,
            Gives = gives,
            Difficulty = difficulty,
            Lean = lean,
            Symbol = symbol,
        };

    private static ImmutableArray<OperationName> Any(params ReadOnlySpan<string> names) => Named(Dialect.Any, names);

    private static ImmutableArray<OperationName> Us(params ReadOnlySpan<string> names) => Named(Dialect.Us, names);

    private static ImmutableArray<OperationName> Uk(params ReadOnlySpan<string> names) => Named(Dialect.Uk, names);

    private static ImmutableArray<OperationName> Named(Dialect dialect, ReadOnlySpan<string> names)
    {
        var all = ImmutableArray.CreateBuilder<OperationName>(names.Length);
        foreach (var name in names)
        {
            all.Add(new OperationName(dialect, name));
        }

        return all.MoveToImmutable();
    }
}
