using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>A kind of plan that a block may ask for; each is declared once, in <see cref="All"/>.</summary>
/// <param name="Name">Its name behind `work`.</param>
/// <param name="Numbers">The keys that want a number, a length or a formula; those with an equals sign may be left out.</param>
/// <param name="Words">The keys that want a word, with the words there are.</param>
/// <param name="Meaning">What it plans, for the guide.</param>
/// <param name="Make">The lines for one size.</param>
internal sealed record PlanKind(string Name, string Numbers, string Words, string Meaning, Func<PlanNumbers, PlanLines> Make)
{
    /// <summary>Every kind.</summary>
    public static ImmutableArray<PlanKind> All { get; } =
    [
        new("shaping", "from, to, over, each=2, edge=1, markers=4, plain=0", "on: RS rows, every row; at: ends, end, markers; begin: later, now; in: rows, rounds",
            "from one count to another over rows or a length, `each` stitches a time, as evenly as can be", Shaping),
        new("spread", "from, to, edge=0", "label; in: row, round; stitch; spacing: mixed, together", "increases or decreases spread evenly over one row", Spreading),
        new("curve", "from, lose, over", "shape: armhole, slope, cap; at: ends, neck edge, armhole edge", "an edge, or both, that loses stitches along a curve", Curved),
        new("cap", "from, bind-off, top, over", "", "the top of a set-in sleeve", p => Of(Sleeve.Cap(p.Count("from"), p.Count("bind-off"), p.Count("top"), p.Rows("over", inRound: false)), c => c.Lines())),
        new("crown", "from, wedges=8, plain=1, leave=0", "", "the crown of a hat in wedges",
            p => Of(HatCrown.Wedges(p.Count("from"), p.Count("wedges", 8), p.Count("plain", 1), p.Count("leave", 0) is > 0 and var leave ? leave : null), c => c.Lines())),
        new("yoke", "from, to, over, decrease-rounds=3", "", "a circular yoke from the join to the neck", p => Of(RoundYoke.Plan(p.Count("from"), p.Count("to"), p.Rows("over"), p.Count("decrease-rounds", 3)), y => y.Lines())),
        new("heel", "from, past=2", "", "a round heel turned with short rows", p => Of(Sock.RoundHeel(p.Count("from"), p.Count("past", 2)), h => h.Lines())),
        new("square heel", "from, middle", "", "a square heel", p => Of(Sock.SquareHeel(p.Count("from"), p.Count("middle")), h => h.Lines())),
        new("short rows", "from, slope, over", "order: narrowing, widening", "short rows with a slope at both ends: shoulders, or length in the middle",
            p => Of(ShortRows.Slope(p.Count("from"), p.Count("slope"), p.Rows("over", inRound: false), p.Choice("order", "narrowing", "widening") == "narrowing"), s => s.Lines())),
        new("circle", "by, rounds", "stitch", "a flat circle of crochet from a ring", p => Of(CrochetRound.Circle(p.Word("stitch", "sc"), p.Count("by", CrochetRound.UsualPerRound(p.Word("stitch", "sc"))), p.Count("rounds")), c => c.Lines())),
        new("ball", "by, up, even", "stitch", "a ball of crochet as toys have it", p => Of(CrochetRound.Ball(p.Word("stitch", "sc"), p.Count("by", 6), p.Count("up"), p.Count("even")), c => c.Lines())),
        new("sphere", "diameter", "stitch", "a ball of crochet by its geometry", Sphere),
    ];

    /// <summary>The keys that want numbers.</summary>
    public ImmutableArray<string> NumberKeys => [.. Numbers.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split('=')[0])];

    /// <summary>The keys that want words.</summary>
    public ImmutableArray<string> WordKeys => [.. Words.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(k => k.Split(':')[0])];

    /// <summary>The kind of that name; null when there is none.</summary>
    public static PlanKind? Find(string name) => All.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.OrdinalIgnoreCase));

    private static PlanLines Of<T>(Planned<T> planned, Func<T, ImmutableArray<string>> lines)
        where T : class => planned.IsPlanned ? new(lines(planned.Plan), null, null) : new([], planned.Reason, planned.Help);

    private static PlanLines Shaping(PlanNumbers p)
    {
        var inRound = p.Choice("in", "rows", "rounds") == "rounds";
        var place = p.Choice("at", "ends", "end", "markers") switch { "end" => ShapingPlace.OneEnd, "markers" => ShapingPlace.Markers, _ => ShapingPlace.BothEnds };
        var markers = p.Count("markers", 4);
        var each = p.Count("each", place switch { ShapingPlace.OneEnd => 1, ShapingPlace.Markers => 2 * markers, _ => 2 });
        var (from, to) = (p.Count("from"), p.Count("to"));
        var ask = new ShapingAsk(from, to, p.Rows("over", inRound))
        {
            PerTime = each,
            InRound = inRound,
            On = p.Choice("on", "RS rows", "every row", "any row") == "RS rows" && !inRound ? ShapedRows.EveryOther : ShapedRows.Any,
            BeginsNow = p.Choice("begin", "later", "now") == "now",
            PlainAtEnd = p.Count("plain", 0),
        };
        return ShapingWork.For(place, each, markers) is { } work
            ? Of(ShapingSchedule.Plan(ask), s => s.Lines(work with { Edge = p.Count("edge", 1) }))
            : new([], $"{each} sts a time cannot be shared out evenly over the places that are shaped", "give `each` a multiple of the places");
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

    private static PlanLines Curved(PlanNumbers p)
    {
        var (from, lose, rows) = (p.Count("from"), p.Count("lose"), p.Rows("over", inRound: false));
        var planned = p.Choice("shape", "armhole", "slope", "cap") switch
        {
            "slope" => Curve.Slope(lose, rows),
            "cap" => Curve.Bell(lose, rows),
            _ => Curve.Quarter(lose, rows),
        };
        var at = p.Choice("at", "ends", "neck edge", "armhole edge");
        return Of(planned, c => at == "ends" ? c.BothEdges(from) : c.OneEdge(from, at));
    }

    private static PlanLines Sphere(PlanNumbers p)
    {
        var (stitches, rows) = p.Gauge();
        return Of(CrochetRound.Sphere(p.Word("stitch", "sc"), p.Length("diameter"), stitches, rows, 10), c => c.Lines());
    }
}

/// <summary>The lines of a plan in one size, or why there are none.</summary>
internal sealed record PlanLines(ImmutableArray<string> Lines, string? Reason, string? Help);
