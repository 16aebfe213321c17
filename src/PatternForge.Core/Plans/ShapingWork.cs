using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>How a shaping row is worked, so that it can be written out.</summary>
/// <param name="Place">Where.</param>
/// <param name="Each">Stitches that change at each place: at each end, or at each side of a marker.</param>
public sealed record ShapingWork(ShapingPlace Place, int Each = 1)
{
    /// <summary>Plain stitches at the edge, or between a marker and the shaping.</summary>
    public int Edge { get; init; } = 1;

    /// <summary>Markers or corners, where shaped at those.</summary>
    public int Markers { get; init; } = 4;

    /// <summary>The crochet stitch; null in knitting.</summary>
    public string? Crochet { get; init; }

    /// <summary>The shaping row as it is written in this place, in notation; null for the usual form.</summary>
    public string? Written { get; init; }

    /// <summary>True in the round: rounds of crochet are joined, its rows are turned.</summary>
    public bool InRound { get; init; }

    /// <summary>True in crochet.</summary>
    public bool IsCrochet => Crochet is not null;

    /// <summary>True where each shaping row is counted out, so that no two are the same.</summary>
    public bool IsCounted => IsCrochet && Place == ShapingPlace.Markers;

    /// <summary>Stitches that the row changes.</summary>
    public int PerTime => Place switch
    {
        ShapingPlace.BothEnds => 2 * Each,
        ShapingPlace.OneEnd => Each,
        _ => 2 * Each * Markers,
    };

    /// <summary>The usual way to change so many stitches a row at a place; null where they cannot be shared out evenly there.</summary>
    public static ShapingWork? For(ShapingPlace place, int perTime, int markers = 4, string? crochet = null)
    {
        var places = place switch
        {
            ShapingPlace.BothEnds => 2,
            ShapingPlace.OneEnd => 1,
            _ => 2 * markers,
        };
        return places < 1 || perTime < places || perTime % places != 0
            ? null
            : new ShapingWork(place, perTime / places) { Markers = markers, Crochet = crochet };
    }

    /// <summary>The row in notation, without full stop; null where it has no usual form.</summary>
    /// <param name="change">Above 0 for an increase, below for a decrease.</param>
    /// <param name="before">The stitches that it is worked over.</param>
    public string? Row(int change, int before)
    {
        if (change == 0 || Each < 1 || Edge < 0)
        {
            return null;
        }

        if (Written is not null)
        {
            return Written;
        }

        if (Crochet is { } stitch)
        {
            return Crocheted(stitch, change > 0, before);
        }

        // Several increases at a place each need a stitch of their own: kfb has one.
        var lifted = change > 0 && Each == 1 && Edge > 0;
        var (left, right, uses) = lifted ? ("M1L", "M1R", 0) : change > 0 ? ("kfb", "kfb", 1) : ("ssk", "k2tog", 2);
        var edge = Edge == 0 ? "" : Plain(Edge);
        var reach = (Each * uses) + Edge;
        return Place switch
        {
            ShapingPlace.OneEnd => Join(To(reach, "last"), Often(right), edge),
            ShapingPlace.BothEnds => Join(edge, Often(left), To(reach, "last"), Often(right), edge),
            _ => Join($"({Join(ToMarker(reach), Often(right), edge, "sm", edge, Often(left))}) {PlanWords.Times(Markers)}", "k to end"),
        };
    }

    private string? Crocheted(string stitch, bool increase, int before)
    {
        var (begin, join) = InRound ? (CrochetWords.Begin(stitch), "join with sl st in first st") : (CrochetWords.Turn(stitch), "");
        if (Place == ShapingPlace.Markers)
        {
            return Sections(stitch, increase, before) is { } sections ? Join(begin, sections, join) : null;
        }

        if (Place == ShapingPlace.Corners)
        {
            // A corner is a space of 2 chains, which has a stitch at each side more in every row.
            // Narrower it has one less, two being worked together on either side of it.
            return Each != 1 ? null
                : Join(begin, $"[{(increase ? $"{stitch} in each st to next ch-2 sp, ({stitch}, ch 2, {stitch}) in ch-2 sp" : $"{stitch} in each st to 2 sts before next ch-2 sp, {stitch}2tog, ch 2, sk ch-2 sp, {stitch}2tog")}] {PlanWords.Times(Markers)}", $"{stitch} in each st to end", join);
        }

        if (Each > (increase ? 3 : 4))
        {
            return null;
        }

        var one = increase ? string.Create(CultureInfo.InvariantCulture, $"{Each + 1} {stitch} in") : Each == 1 ? $"{stitch}2tog" : $"({stitch}2tog) {PlanWords.Times(Each)}";
        var left = Place == ShapingPlace.OneEnd ? "" : increase ? one + " first st" : one;
        var right = increase ? one + " last st" : one;
        var reach = increase ? 1 : 2 * Each;
        return Join(begin, left, $"{stitch} in each st to last {(reach == 1 ? "st" : PlanWords.Sts(reach))}", right, join);
    }

    // Crochet has no markers between its stitches: each place stands in the middle of its section, so that it comes above the one before, and stitches that no section has are worked plainly at the end.
    private string? Sections(string stitch, bool increase, int before)
    {
        var uses = increase ? 2 : 4 * Each;
        var plain = (before / Markers) - uses;
        if (plain < 0 || (increase && Each > 2))
        {
            return null;
        }

        var shaped = increase ? string.Create(CultureInfo.InvariantCulture, $"{Each + 1} {stitch} in each of next 2 sts") : $"({stitch}2tog) {PlanWords.Times(2 * Each)}";
        return Join($"[{Join(PlainIn(stitch, plain / 2), shaped, PlainIn(stitch, plain - (plain / 2)))}] {PlanWords.Times(Markers)}", before % Markers > 0 ? $"{stitch} in each st to end" : "");
    }

    private static string PlainIn(string stitch, int stitches) => stitches switch
    {
        0 => "",
        1 => $"{stitch} in next st",
        _ => string.Create(CultureInfo.InvariantCulture, $"{stitch} in each of next {stitches} sts"),
    };

    private string Often(string stitch) => Each == 1 ? stitch : $"({stitch}) {PlanWords.Times(Each)}";

    private static string Plain(int stitches) => string.Create(CultureInfo.InvariantCulture, $"k{stitches}");

    private static string To(int reach, string last) => string.Create(CultureInfo.InvariantCulture, $"k to {last} {(reach == 1 ? "st" : $"{reach} sts")}");

    private static string ToMarker(int reach) => reach == 0 ? "k to m" : $"k to {PlanWords.Sts(reach)} before m";

    private static string Join(params ReadOnlySpan<string> clauses)
    {
        var said = new List<string>(clauses.Length);
        foreach (var clause in clauses)
        {
            if (clause.Length > 0)
            {
                said.Add(clause);
            }
        }

        return string.Join(", ", said);
    }
}
