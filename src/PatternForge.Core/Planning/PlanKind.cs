using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>A kind of plan that a block may ask for; each is declared once, in <see cref="All"/>.</summary>
/// <param name="Name">Its name behind `work`.</param>
/// <param name="Numbers">The keys that want a number, a length or a formula; those with an equals sign may be left out, and those with a # are numbered from 1.</param>
/// <param name="Words">The keys that want a word, with the words there are.</param>
/// <param name="Meaning">What it plans, for the guide.</param>
/// <param name="Make">The lines for one size.</param>
internal sealed record PlanKind(string Name, string Numbers, string Words, string Meaning, Func<PlanNumbers, PlanLines> Make)
{
    /// <summary>How many numbered keys there are at most.</summary>
    public const int MostPoints = 20;

    /// <summary>Every kind.</summary>
    public static ImmutableArray<PlanKind> All { get; } =
    [
        new("shaping", "from, to, over, each=2, edge=1, markers=4, plain=0", "on: RS rows, every row; at: ends, end, markers, corners; begin: later, now; in: rows, rounds; stitch",
            "from one count to another over rows or a length, `each` stitches a time, as evenly as can be; with `stitch` in that stitch of crochet, where `markers` are places as far apart, which each row counts out, and corners the spaces of 2 chains of a yoke", ShapingRows.Of),
        new("spread", "from, to, edge=0", "label; in: row, round; stitch; spacing: mixed, together", "increases or decreases spread evenly over one row", Spreading),
        new("curve", "from, lose, over", "shape: armhole, slope, cap; at: ends, neck edge, armhole edge", "an edge, or both, that loses stitches along a curve", EdgeRows.Curved),
        new("measured edge", "from, up-#, in-#", "at: ends, neck edge, armhole edge", "an edge, or both, along what was measured on it: how far up each point is, and how far in from where the edge began", OutlineRows.Edge),
        new("outline", "up-#, width-#, from=0, each=8", "in: rows, rounds", "a piece along its measured widths, or in rounds its girths (`each` stitches a time), each with its height: a yoke, a shawl, a toe; it begins with the stitches of the first, or with `from`", OutlineRows.Piece),
        new("neckline", "from, neck, over, centre=0", "end: bind off, hold; stitch", "a round neck and both its sides: a middle that is left at once, the rest along a curve; in crochet stitch by stitch, row by row", NeckRows.Of),
        new("shoulders", "from, shoulder, over", "by: binding off, short rows", "both shoulders of a piece at once, in steps that differ by a stitch at most", EdgeRows.Shoulders),
        new("cap", "from, bind-off, top, over", "", "the top of a set-in sleeve", EdgeRows.Cap),
        new("crown", "from, wedges=8, plain=1, leave=0", "", "the crown of a hat in wedges",
            p => Of(HatCrown.Wedges(p.Count("from"), p.Count("wedges", 8), p.Count("plain", 1), p.Count("leave", 0) is > 0 and var leave ? leave : null), c => c.Lines())),
        new("dome", "girth, depth, each=8, from=0", "", "the crown of a hat, or the end of a toe, as half a ball", OutlineRows.Dome),
        new("yoke", "from, to, over, decrease-rounds=3", "", "a circular yoke from the join to the neck", p => Of(RoundYoke.Plan(p.Count("from"), p.Count("to"), p.Rows("over"), p.Count("decrease-rounds", 3)), y => y.Lines())),
        new("raglan", "body-from, body-to, sleeve-from, sleeve-to, over", "", "a raglan yoke from the neck down in rounds of back, sleeve, front, sleeve, each up to its marker",
            p => RaglanRounds.Of(p.Count("body-from"), p.Count("body-to"), p.Count("sleeve-from"), p.Count("sleeve-to"), p.Rows("over"))),
        new("heel", "from, past=2", "", "a round heel turned with short rows", RoundHeel),
        new("square heel", "from, middle", "", "a square heel", p => Of(Sock.SquareHeel(p.Count("from"), p.Count("middle")), h => h.Lines())),
        new("short rows", "from, slope, over", "order: narrowing, widening", "short rows with a slope at both ends: shoulders, or length in the middle",
            p => Of(ShortRows.Slope(p.Count("from"), p.Count("slope"), p.Rows("over", inRound: false), p.Choice("order", "narrowing", "widening") == "narrowing"), s => s.Lines())),
        new("bust", "from, between, longer", "", "a bust by short rows: `longer` rows or a length more in front, the last turns `between` sts apart",
            p => Of(ShortRows.Bust(p.Count("from"), p.Count("between"), p.Rows("longer", inRound: false)), s => s.Lines())),
        new("buttonholes", "from, holes, size=2, edge=3", "stitch", "buttonholes along a band, spaced evenly: of 2 sts as eyelets in one row, of more bound off and cast on again; with `stitch` as chains", EdgeRows.Buttonholes),
        new("pick up", "along=0, bound-off=0, to=0, multiple=1, plus=0", "edge; in: row, round; stitch", "stitches picked up along the ends of rows at the ratio of the gauge, and one for one along stitches that were bound off or cast on; to a multiple, or to a count", EdgeRows.PickedUp),
        new("gusset", "from, to, every=2", "begin: sole, heel", "the gusset of a sock, from the stitches of all needles down to those of the foot", FootRows.Gusset),
        new("toe", "from, leave=0", "marker: there, to place", "a wedge toe: every other round to the half, then every round; `leave` sts to graft, or about a third", FootRows.Toe),
        new("thumb", "around, before, to, over, from=1, cast-on=1", "marker: there, to place", "the gusset of a mitten's thumb between two markers, `before` sts from the beginning of the round, and its stitches put on a holder", FootRows.Thumb),
        new("circle", "by, rounds", "stitch", "a flat circle of crochet from a ring", p => Of(CrochetRound.Circle(p.Word("stitch", "sc"), p.Count("by", CrochetRound.UsualPerRound(p.Word("stitch", "sc"))), p.Count("rounds")), c => c.Lines())),
        new("ball", "by, up, even", "stitch", "a ball of crochet as toys have it", p => Of(CrochetRound.Ball(p.Word("stitch", "sc"), p.Count("by", 6), p.Count("up"), p.Count("even")), c => c.Lines())),
        new("sphere", "diameter", "stitch", "a ball of crochet by its geometry", Sphere),
    ];

    /// <summary>The keys that want numbers.</summary>
    public ImmutableArray<string> NumberKeys => [.. Numbers.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split('=')[0]).SelectMany(k => k.EndsWith('#') ? Enumerable.Range(1, MostPoints).Select(i => Numbered(k[..^2], i)) : [k])];

    /// <summary>The keys as they are listed for a reader.</summary>
    public ImmutableArray<string> ListedKeys => [.. Numbers.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split('=')[0].Replace('#', '1')), .. WordKeys];

    /// <summary>A numbered key.</summary>
    public static string Numbered(string key, int number) => FormattableString.Invariant($"{key}-{number}");

    /// <summary>The keys that want words.</summary>
    public ImmutableArray<string> WordKeys => [.. Words.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split(':')[0])];

    /// <summary>The kind of that name; null when there is none.</summary>
    public static PlanKind? Find(string name) => All.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.OrdinalIgnoreCase));

    private static PlanLines Of<T>(Planned<T> planned, Func<T, ImmutableArray<string>> lines)
        where T : class => PlanLines.Of(planned, lines);

    private static PlanLines RoundHeel(PlanNumbers p)
    {
        var planned = Sock.RoundHeel(p.Count("from"), p.Count("past", 2));
        return planned.IsPlanned ? HeelRows.Of(planned.Plan) : new([], planned.Reason, planned.Help);
    }

    private static PlanLines Spreading(PlanNumbers p)
    {
        var (from, to) = (p.Count("from"), p.Count("to"));
        var stitch = p.Word("stitch", "");
        var inRound = p.Choice("in", "row", "round") == "round";
        var label = p.Word("label", $"Next {(inRound ? "rnd" : "row")}");
        return from == to
            ? new([stitch.Length > 0 ? $"{label}: {char.ToUpperInvariant(stitch[0])}{stitch[1..]} in each st{(inRound ? " around" : " across")}. ({from} sts)" : $"{label}: Knit. ({from} sts)"], null, null)
            : Of(Spread.FromTo(from, to, inRound ? SpreadEnds.Round : SpreadEnds.Half, p.Count("edge", 0), stitch.Length > 0 ? stitch : null, p.Choice("spacing", "mixed", "together") == "together"), s => [s.Line(label)]);
    }

    private static PlanLines Sphere(PlanNumbers p)
    {
        var (stitches, rows) = p.Gauge();
        return Of(CrochetRound.Sphere(p.Word("stitch", "sc"), p.Length("diameter"), stitches, rows, 10), c => c.Lines());
    }
}
