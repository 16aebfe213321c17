using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>
/// The stitches of crochet that need no definition in the pattern. Each physical stitch is one entry; the two dialects call it by different names, and
/// the same name means a taller stitch in American than in British terms. Takes are places used of the row below, makes are stitches made;
/// figures as in the usual abbreviation lists ("common practice").
/// </summary>
public static class CrochetOperations
{
    // From the shortest to the tallest: the name in each dialect, written out in each, and how it is worked.
    private static readonly Height[] Heights =
    [
        new("sc", ["sc"], ["dc"], "single crochet", "double crochet", Difficulty.Basic,
            "Draw up a loop, then draw the yarn through both loops on the hook."),
        new("hdc", ["hdc"], ["htr"], "half double crochet", "half treble", Difficulty.Basic,
            "Yarn over, draw up a loop, then draw the yarn through all three loops on the hook."),
        new("dc", ["dc"], ["tr"], "double crochet", "treble", Difficulty.Basic,
            "Yarn over, draw up a loop, then draw the yarn through two loops twice."),
        new("tr", ["tr", "trc", "treble"], ["dtr"], "treble crochet", "double treble", Difficulty.Easy,
            "Yarn over twice, draw up a loop, then draw the yarn through two loops three times."),
        new("dtr", ["dtr", "dtrc", "double treble"], ["trtr", "ttr"], "double treble crochet", "triple treble", Difficulty.Easy,
            "Yarn over three times, draw up a loop, then draw the yarn through two loops four times."),
        new("trtr", ["trtr", "triple treble"], ["qtr", "quad tr"], "triple treble crochet", "quadruple treble", Difficulty.Intermediate,
            "Yarn over four times, draw up a loop, then draw the yarn through two loops five times."),
    ];

    /// <summary>All of them: chains and slip stitches, the heights, then what is made of the heights.</summary>
    public static ImmutableArray<Operation> All { get; } =
    [
        Of("ch", Any("ch", "chain", "chain stitch"), "chain", 0, 1, Family.Basic, StitchKind.Chain, Difficulty.Basic, "chain",
            "Yarn over and draw through the loop on the hook."),
        Of("sl st", Any("sl st", "ss", "slip st", "slip stitch"), "slip stitch", 1, 1, Family.Basic, StitchKind.Crochet, Difficulty.Basic, "slip-stitch",
            "Insert the hook and draw the yarn through both the stitch and the loop on the hook.", height: 0),
        .. Heights.Select(h => Of(h.Id, Both(h), h.UsSpoken, 1, 1, Family.Basic, StitchKind.Crochet, h.Difficulty, $"height-{h.Id}", h.Definition, Chains(h))),
        .. Heights.Take(4).Select(Extended),
        .. Heights.Take(5).SelectMany(h => new[] { Post(h, front: true), Post(h, front: false) }),
        .. Heights.Take(5).SelectMany(h => Enumerable.Range(2, 5).Select(many => Together(h, many))),
        .. Heights.Take(3).Select(Foundation),
        .. Heights.Take(3).Select(TwoInOne),
        Of("rsc", [.. Us("rsc", "rev sc", "reverse single crochet"), .. Uk("rdc", "rev dc", "reverse double crochet"), .. Any("crab st", "crab stitch")], "reverse single crochet", 1, 1, Family.Basic, StitchKind.Crochet, Difficulty.Intermediate, "reversed",
            "Work the shortest plain stitch backwards along the edge, without turning.", height: 1),
        Of("inc", Any("inc", "increase"), "increase", 1, 2, Family.Increase, StitchKind.Crochet, Difficulty.Basic, "increase",
            "Work two stitches into the same stitch."),
        Of("dec", Any("dec", "decrease"), "decrease", 2, 1, Family.Decrease, StitchKind.Crochet, Difficulty.Basic, "decrease",
            "Work two stitches together as one."),
        Of("invdec", Any("invdec", "inv dec", "invisible dec"), "invisible decrease", 2, 1, Family.Decrease, StitchKind.Crochet, Difficulty.Easy, "decrease-invisible",
            "Take up the front loops of two stitches and work them as one."),
    ];

    // Turning chains a stitch is tall: one for the shortest plain stitch, one more for each taller one ("common practice", and the lists of the trade's councils).
    private static int Chains(Height h) => Array.IndexOf(Heights, h) + 1;

    // The extended form has one more step; British lists put the same letter before their own names.
    private static Operation Extended(Height h) => Of(
        "e" + h.Id, [.. Us(["e" + h.Us[0], "extended " + h.UsSpoken]), .. Uk(["e" + h.Uk[0], "extended " + h.UkSpoken])], "extended " + h.UsSpoken, 1, 1, Family.Basic, StitchKind.Crochet, Difficulty.Easy, $"extended-{h.Id}",
        "Draw up a loop and make a chain of it, then finish the stitch as usual: a little taller than the plain one.", Chains(h));

    private static Operation Post(Height h, bool front)
    {
        var (letter, side) = front ? ("F", "front") : ("B", "back");
        ImmutableArray<string> raised = h.Id == "dc" ? [$"raised treble {side}"] : [];
        return Of(
            $"{letter}P{h.Id}",
            [
                .. Us([$"{letter}P{h.Us[0]}", $"{side} post {h.UsSpoken}", $"{side} post {h.Us[0]}", $"{h.Us[0]}{letter}P"]),
                .. Uk([$"{letter}P{h.Uk[0]}", $"{side} post {h.UkSpoken}", $"{side} post {h.Uk[0]}", $"{h.Uk[0]}{letter}P", $"{h.Uk[0]}/r{letter}", $"R{h.Uk[0]}{letter}", .. raised]),
            ],
            $"{side} post {h.UsSpoken}", 1, 1, Family.Basic, StitchKind.Crochet, Difficulty.Intermediate, $"post-{side}-{h.Id}",
            front
                ? "Insert the hook from the front round the post of the stitch and back to the front, then finish as usual."
                : "Insert the hook from the back round the post of the stitch and back to the back, then finish as usual.", Chains(h), h.Id);
    }

    private static Operation Together(Height h, int many) => Of(
        $"{h.Id}{many}tog",
        [.. Us([$"{h.Us[0]}{many}tog", $"{h.UsSpoken} {many} together"]), .. Uk([$"{h.Uk[0]}{many}tog", $"{h.UkSpoken} {many} together"])],
        $"{h.UsSpoken} {many} together", many, 1, Family.Decrease, StitchKind.Crochet, many == 2 ? Difficulty.Easy : Difficulty.Intermediate, $"together-{h.Id}-{many}",
        $"Work {many} stitches but leave the last loop of each on the hook, then draw the yarn through all of them.", Chains(h), h.Id);

    private static Operation Foundation(Height h) => Of(
        "f" + h.Id, [.. Us(["f" + h.Us[0], "foundation " + h.UsSpoken, "foundation " + h.Us[0]]), .. Uk(["f" + h.Uk[0], "foundation " + h.UkSpoken, "foundation " + h.Uk[0]])], "foundation " + h.UsSpoken, 0, 1, Family.Edge, StitchKind.Crochet, Difficulty.Intermediate, null,
        "Work the chain and the first row at once: each stitch begins with a chain of its own.", Chains(h), h.Id);

    private static Operation TwoInOne(Height h) => Of(
        $"{h.Id}2inc", [.. Us([$"{h.Us[0]}2inc", $"{h.Us[0]}inc"]), .. Uk([$"{h.Uk[0]}2inc", $"{h.Uk[0]}inc"])], $"{h.UsSpoken} increase", 1, 2, Family.Increase, StitchKind.Crochet, Difficulty.Basic, $"increase-{h.Id}",
        "Work two stitches of this kind into the same stitch.", Chains(h), h.Id);

    private static ImmutableArray<OperationName> Both(Height h) => [.. Us([.. h.Us, h.UsSpoken]), .. Uk([.. h.Uk, h.UkSpoken])];

    private static Operation Of(
        string id, ImmutableArray<OperationName> names, string spoken, int takes, int makes, Family family, StitchKind gives, Difficulty difficulty, string? symbol, string definition,
        int? height = null, string? countsAs = null) => new()
        {
            Id = id,
            Craft = Craft.Crochet,
            Names = names,
            Spoken = spoken,
            Definition = definition,
            Takes = takes,
            Makes = makes,
            Family = family,
            Gives = gives,
            Difficulty = difficulty,
            Symbol = symbol,
            Height = height,
            CountsAs = countsAs,
        };

    private static ImmutableArray<OperationName> Any(params string[] names) => [.. names.Select(n => new OperationName(Dialect.Any, n))];

    private static ImmutableArray<OperationName> Us(params string[] names) => [.. names.Select(n => new OperationName(Dialect.Us, n))];

    private static ImmutableArray<OperationName> Uk(params string[] names) => [.. names.Select(n => new OperationName(Dialect.Uk, n))];

    private sealed record Height(string Id, string[] Us, string[] Uk, string UsSpoken, string UkSpoken, Difficulty Difficulty, string Definition);
}
