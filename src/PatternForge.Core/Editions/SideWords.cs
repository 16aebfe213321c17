using System.Collections.Frozen;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>
/// Left and right in words: the sides of a piece and of its wearer, the needles, the way of the work. "The right side" of the fabric, stitches that are left, and the names of
/// stitches are none of these and stay.
/// </summary>
/// <param name="clockwise">The word for the way against the clock: "counterclockwise", or "anticlockwise" in British terms.</param>
internal sealed class SideWords(string clockwise)
{
    private static readonly FrozenSet<string> Things = Set(
        "front fronts back sleeve sleeves shoulder shoulders edge edges hand needle needles armhole armholes neck neckline border band bands buttonband leg legs foot feet arm arms seam half halves panel panels mitten mittens glove gloves sock socks slipper slippers thumb flipper flippers end ends corner corners underarm ear eye wing paw cuff hip flap strap pocket collar lapel raglan bust breast cheek gusset selvedge selvage margin piece pieces bank");

    private static readonly FrozenSet<string> BesideSide = Set("seam seams edge edges neck");
    private static readonly FrozenSet<string> Parts = Set("body neck front back hat sock heel sole opening gusset sleeve foot instep neckline panel cable motif armhole garment");
    private static readonly FrozenSet<string> NotASide = Set("side sides away after before now size number way amount angle angles tension gauge length up next there here above below into through at on in stitch stitches count place order time");
    private static readonly FrozenSet<string> Remaining = Set("sts st stitches stitch loops are is was were be been being rem remain remaining have has yarn tail rows rounds chains ch m yd g ball balls nothing what sp sps meters metres yards is/are get where");
    private static readonly FrozenSet<string> BehindRemaining = Set("flat over unworked alone as open long live for out aside behind unsewn unused hanging free from by undone loose");
    private static readonly FrozenSet<string> Leaning = Set("leans lean leaning slants slant slanting facing faces face towards toward point points pointing turned");
    private static readonly FrozenSet<string> Names = Set("twist cable increase inc cross decrease dec make m1 lifted rib raised");
    private static readonly FrozenSet<string> Joined = Set("side sides handed angle angled cross crossing twist click minded");
    private static readonly FrozenSet<string> BehindThe = Set("one ones of and or then with as in when edge where until to is are again from side");

    /// <summary>What takes the place of a word: null with a number of words where it may be a side and cannot be decided; nothing where it is none.</summary>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        var word = run.Word(at).ToLowerInvariant();
        switch (word)
        {
            case "left":
                return Left(run, at);
            case "right":
                return Right(run, at);
            case "lh" or "rh" or "lhn" or "rhn":
                return word.Length == 3 || run.Is(at + 1, "needle", "needles", "n", "side", "edge") ? (1, Exchanged(word)) : default;
            case "clockwise":
                return (1, clockwise);
            case "anticlockwise" or "anti-clockwise" or "counterclockwise" or "counter-clockwise":
                return (1, "clockwise");
            case "leftmost" or "rightmost" or "leftwards" or "rightwards":
                return (1, Exchanged(word));
        }

        var joint = word.IndexOf('-', StringComparison.Ordinal);
        return joint > 0 && word[..joint] is "left" or "right" && !Joined.Contains(word[(joint + 1)..]) ? (1, Exchanged(word)) : default;
    }

    private static (int Tokens, string? Words) Left(WordRun run, int at)
    {
        var next = run.Word(at + 1).ToLowerInvariant();
        var before = run.Word(at - 1).ToLowerInvariant();
        if (next is "side")
        {
            return BesideSide.Contains(run.Word(at + 2).ToLowerInvariant()) || OfPart(run, at + 2) ? (1, "right") : (1, "right-hand");
        }

        return IsSide(run, at, before, next) ? (1, (string?)"right")
            : Names.Contains(before) || IsOne(run, at - 1) || Remaining.Contains(before) || BehindRemaining.Contains(next) || run.KindOf(at - 1) == TokenKind.Number || (at == 0 && next.Length == 0 && run.Kind != StretchKind.Heading) ? default
            : (1, (string?)null);
    }

    private static (int Tokens, string? Words) Right(WordRun run, int at)
    {
        var next = run.Word(at + 1).ToLowerInvariant();
        var before = run.Word(at - 1).ToLowerInvariant();
        if (next is "side")
        {
            return BesideSide.Contains(run.Word(at + 2).ToLowerInvariant()) || OfPart(run, at + 2) ? (1, "left") : default;
        }

        return IsSide(run, at, before, next) ? (1, (string?)"left")
            : Names.Contains(before) || IsOne(run, at - 1) || NotASide.Contains(next) || before is "all" or "just" or "is" or "feels" or "looks" or "comes" ? default
            : (1, (string?)null);
    }

    private static bool IsSide(WordRun run, int at, string before, string next) =>
        (Things.Contains(next) && !(next is "end" or "ends" && Remaining.Contains(before)))
        || Leaning.Contains(before)
        || (before is "the" && (next.Length == 0 || BehindThe.Contains(next)) && !run.Is(at - 2, "all"))
        || (next is "to" or "and" or "or" && run.Is(at + 2, "left", "right"))
        || (before is "to" or "and" or "or" && run.Is(at - 2, "left", "right"))
        || (run.KindOf(at + 1) == TokenKind.Open && run.Is(at + 2, "left", "right"))
        || (run.KindOf(at - 1) == TokenKind.Open && run.Is(at - 2, "left", "right") && run.KindOf(at + 1) == TokenKind.Close)
        || (before is "upper" or "lower" or "top" or "bottom" && next.Length == 0)
        || (run.Kind == StretchKind.Heading && next.Length == 0);

    private static bool OfPart(WordRun run, int at) => run.Is(at, "of") && (Parts.Contains(run.Word(at + 1).ToLowerInvariant()) || (run.Is(at + 1, "the", "your", "each") && Parts.Contains(run.Word(at + 2).ToLowerInvariant())));

    // "make 1 left"
    private static bool IsOne(WordRun run, int at) => run.Is(at, "one") || (run.Said(at) is "1" && run.Is(at - 1, "make", "m", "increase", "inc", "lift"));

    private static string Exchanged(string word) => word switch
    {
        "lh" => "RH",
        "rh" => "LH",
        "lhn" => "RHN",
        "rhn" => "LHN",
        _ => word.StartsWith("left", StringComparison.Ordinal) ? "right" + word[4..] : "left" + word[5..],
    };

    private static FrozenSet<string> Set(string words) => words.Split(' ').ToFrozenSet(StringComparer.Ordinal);
}
