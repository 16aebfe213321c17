using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>
/// The stitches of Tunisian crochet that need no definition in the pattern: one forward and one return pass make a row, and each stitch uses and
/// makes one loop ("common practice"). Chains and slip stitches are those of crochet.
/// </summary>
public static class TunisianOperations
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<Operation> All { get; } =
    [
        Of("ch", ["ch", "chain"], "chain", 0, 1, Family.Basic, "chain", "Yarn over and draw through the loop on the hook."),
        Of("sl st", ["sl st", "ss", "slip stitch"], "slip stitch", 1, 1, Family.Basic, "slip-stitch", "Insert the hook and draw the yarn through both the stitch and the loop on the hook."),
        Of("tss", ["tss"], "Tunisian simple stitch", 1, 1, Family.Basic, "tunisian-simple", "Insert the hook from right to left behind the front vertical bar and draw up a loop."),
        Of("tks", ["tks"], "Tunisian knit stitch", 1, 1, Family.Basic, "tunisian-knit", "Insert the hook from front to back between the two vertical bars and draw up a loop."),
        Of("tps", ["tps"], "Tunisian purl stitch", 1, 1, Family.Basic, "tunisian-purl", "Hold the yarn in front, insert the hook behind the front vertical bar and draw up a loop."),
        Of("tfs", ["tfs"], "Tunisian full stitch", 1, 1, Family.Basic, "tunisian-full", "Insert the hook into the space between two stitches and draw up a loop."),
        Of("trs", ["trs"], "Tunisian reverse stitch", 1, 1, Family.Basic, "tunisian-reverse", "Insert the hook behind the back vertical bar and draw up a loop."),
        Of("ttw", ["ttw"], "Tunisian twisted simple stitch", 1, 1, Family.Basic, "tunisian-twisted", "Insert the hook from left to right behind the front vertical bar and draw up a loop."),
        Of("loop", ["pull up a loop", "draw up a loop", "pull up loop", "draw up loop", "pick up a loop", "pull up a lp", "draw up a lp"], "pull up a loop", 1, 1, Family.Basic, "tunisian-simple", "Insert the hook, yarn over, and draw a loop through on to the hook."),
        Of("etss", ["etss", "tes"], "extended Tunisian simple stitch", 1, 1, Family.Basic, "tunisian-extended", "Draw up a loop as for the simple stitch and make a chain of it."),
        Of("tsc", ["tsc"], "Tunisian single crochet", 1, 1, Family.Basic, "tunisian-single", "Draw up a loop as for the simple stitch and work a chain to raise it."),
        Of("thdc", ["thdc"], "Tunisian half double crochet", 1, 1, Family.Basic, "tunisian-half-double", "Yarn over, draw up a loop, and draw the yarn through two loops at once."),
        Of("tdc", ["tdc"], "Tunisian double crochet", 1, 1, Family.Basic, "tunisian-double", "Yarn over, draw up a loop, then draw the yarn through two loops."),
        Of("ttr", ["ttr"], "Tunisian treble", 1, 1, Family.Basic, "tunisian-treble", "Yarn over twice, draw up a loop, then draw the yarn through two loops twice."),
        Of("tsl st", ["tsl st", "tslst"], "Tunisian slip stitch", 1, 1, Family.Slip, "tunisian-slip", "Take the front vertical bar on to the hook without drawing up a loop."),
        Of("end st", ["end st", "end stitch", "edge st", "edge stitch"], "end stitch", 1, 1, Family.Basic, "tunisian-end", "Work the last stitch under both its strands so that the edge stays firm."),
        Of("tss2tog", ["tss2tog"], "Tunisian simple stitch 2 together", 2, 1, Family.Decrease, "tunisian-together-2", "Insert the hook behind two front vertical bars and draw up one loop.") with { CountsAs = "tss" },
        Of("tss3tog", ["tss3tog"], "Tunisian simple stitch 3 together", 3, 1, Family.Decrease, "tunisian-together-3", "Insert the hook behind three front vertical bars and draw up one loop.") with { CountsAs = "tss" },
        Of("tks2tog", ["tks2tog"], "Tunisian knit stitch 2 together", 2, 1, Family.Decrease, "tunisian-knit-together-2", "Insert the hook through two stitches from front to back and draw up one loop.") with { CountsAs = "tks" },
        Of("m1", ["m1"], "make 1", 0, 1, Family.Increase, "make-1", "Draw up a loop in the horizontal bar between two stitches."),
        Of("yo", ["yo"], "yarn over", 0, 1, Family.YarnOver, "over", "Lay the yarn over the hook: a new loop and a hole."),
        Of("inc", ["inc", "increase"], "increase", 1, 2, Family.Increase, "increase", "Draw up two loops from one stitch."),
        Of("dec", ["dec", "decrease"], "decrease", 2, 1, Family.Decrease, "decrease", "Draw up one loop from two stitches."),
    ];

    private static Operation Of(string id, ImmutableArray<string> names, string spoken, int takes, int makes, Family family, string symbol, string definition) => new()
    {
        Id = id,
        Craft = Craft.Tunisian,
        Names = [.. names.Select(n => new OperationName(Dialect.Any, n))],
        Spoken = spoken,
        Definition = definition,
        Takes = takes,
        Makes = makes,
        Family = family,
        Gives = string.Equals(id, "ch", StringComparison.Ordinal) ? StitchKind.Chain : StitchKind.Crochet,
        Difficulty = family == Family.Basic ? Difficulty.Easy : Difficulty.Intermediate,
        Symbol = symbol,
    };
}
