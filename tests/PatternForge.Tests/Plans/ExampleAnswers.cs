using System.Globalization;
using PatternForge.Core.Plans;
using PatternForge.Core.Reference;

namespace PatternForge.Tests.Plans;

/// <summary>How each worked example is put to the plans.</summary>
internal static class ExampleAnswers
{
    public static object Of(string id, Given g) => id[0] switch
    {
        'A' => Spreads(id, g),
        'B' => Edges(id, g),
        'C' or 'D' or 'N' => Gauges(id, g),
        'E' => Sleeves(id, g),
        'F' or 'G' => Yokes(id, g),
        'H' => Crowns(id, g),
        'I' => Socks(id, g),
        'J' => Crochet(id, g),
        'K' => Yarns(id, g),
        _ => Bodies(id, g),
    };

    private static SpreadPlan Spread(int stitches, int times, Shaper shaper, SpreadEnds ends, bool together = false) => Core.Plans.Spread.Plan(stitches, times, shaper, ends, together: together).Plan!;

    private static object Spreads(string id, Given g)
    {
        var whole = () => Spread(g.Int("sts"), g.Int("inc"), Shaper.M1, SpreadEnds.Whole);
        var round = () => Spread(g.Int("sts"), g.Int("inc"), Shaper.M1, SpreadEnds.Round);
        var half = () => Spread(g.Int("sts"), g.Int("inc"), Shaper.M1, SpreadEnds.Half);
        var less = (SpreadEnds ends, bool together) => Spread(g.Int("sts"), g.Int("dec"), Shaper.K2tog, ends, together);
        return id switch
        {
            "A01" or "A06" => new { gaps = whole().Gaps.Length, gap_size = whole().Gaps.Distinct().Single(), result = whole().Result },
            "A02" => new { quotient = g.Number("sts") / g.Number("inc"), after_sts = round().Places, intervals = Given.Tally(round().Groups), result = round().Result },
            "A03" => new { after_sts = half().Places, last_gap = half().Gaps[^1], result = half().Result },
            "A04" => new { every = round().Groups.Distinct().Single(), result = round().Result },
            "A07" => new { gaps = whole().Gaps.Length, gap_sizes = Given.Tally(whole().Gaps), result = whole().Result },
            "A08" => new { gap_sizes = Given.Tally(round().Groups), result = round().Result },
            "A09" => new { groups = round().Times, group_size = round().Groups.Distinct().Single(), result = round().Result },
            "A11" => new { quotient = g.Number("sts") / g.Number("dec"), group_sizes = Given.Tally(less(SpreadEnds.Round, true).Groups), result = less(SpreadEnds.Round, true).Result, as_words = less(SpreadEnds.Round, true).Row() },
            "A12" => new { group_sizes = Given.Tally(less(SpreadEnds.Round, false).Groups), result = less(SpreadEnds.Round, false).Result },
            "A13" => new
            {
                every = less(SpreadEnds.Round, false).Groups.Distinct().Single(),
                result = less(SpreadEnds.Round, false).Result,
                then = new[] { 11, 10 }.Select(wedges => HatCrown.Wedges(less(SpreadEnds.Round, false).Result, wedges).Plan!.Rounds[0].Row()),
            },
            "A14" => new { part_sizes = EvenShare.Parts(g.Int("sts"), g.Int("parts")) },
            "A16" => new { M1 = round().Row(), kfb = Spread(g.Int("sts"), g.Int("inc"), Shaper.Kfb, SpreadEnds.Round).Row(), result = round().Result },
            "A17" => new { words = half().Row(), result = half().Result },
            _ => Unknown(id),
        };
    }

    private static object Edges(string id, Given g)
    {
        var holes = () => Buttonholes.Plan(g.Int("sts"), g.Int("holes"), g.Int("hole_sts"), g.Int("edge")).Plan!;
        return id switch
        {
            "B01" => PickUp.Along(g.Int("rows"), g.Int("sts")).Plan is { } p ? new { skip = p.Skipped, rule = p.Words(), sts = p.Groups.Sum(), rows = p.Groups.Sum() + p.Skipped } : Unknown(id),
            "B02" => PickUp.Ratio(g.Number("sts_4in"), g.Number("rows_4in")) is var (s, r) ? new { ratio = $"{s}/{r}", steps = PickUp.Steps(s, r).Select(step => $"{step.Stitches} in {step.Rows}") } : Unknown(id),
            "B04" => PickUp.Along(g.Int("rows"), g.Int("sts"), endsInGroup: false).Plan is { } p ? new { skip = p.Skipped, groups = Given.Tally(p.Groups), sts = p.Groups.Sum() } : Unknown(id),
            "B05" => new { spaces = holes().Spaces.Length, left = holes().Spaces.Sum(), space = holes().Spaces.Distinct().Single() },
            "B06" => new { spaces = holes().Spaces.Length, left = holes().Spaces.Sum(), space_sizes = Given.Tally(holes().Spaces) },
            _ => Unknown(id),
        };
    }

    private static object Gauges(string id, Given g) => id switch
    {
        "C01" => GaugeMath.Convert(g.Int("cast_on"), g.Number("gauge_from"), g.Number("gauge_to"), g.Int("seam")) is { } c
            ? new { width_in = GaugeMath.Measure(g.Int("cast_on") - g.Int("seam"), g.Number("gauge_from"), 1), sts = c - g.Int("seam"), rounded = GaugeMath.Fit(c - g.Int("seam"), 1), with_seam = GaugeMath.Fit(c, 1) }
            : Unknown(id),
        "C03" => new
        {
            difference = g.Int("from") - g.Int("to"),
            even = ShapingSchedule.Plan(new(g.Int("from"), g.Int("to"), 100)).IsPlanned,
            fix = ShapingSchedule.Plan(new(g.Int("from"), g.Int("to"), 100)).Help,
        },
        "C04" => new { @in = GaugeMath.Measure(g.Int("sts"), g.Number("gauge_per_in"), 1) },
        "C05" => new { @in = GaugeMath.Measure(g.Int("sts"), g.Number("gauge_4in"), 4) },
        "C06" or "C10" => new { @in = g.Numbers("gauges").Select(gauge => GaugeMath.Measure(g.Int("sts"), gauge, 1)) },
        "C08" => new { per_in = GaugeMath.Over(g.Number("sts_4in"), 4, 1) },
        "C09" => g.Numbers("gauges") is [var wrong, var right]
            ? new { sts = g.Numbers("gauges").Select(gauge => GaugeMath.Stitches(g.Number("width_in"), gauge, 1)), shortfall_in = g.Number("width_in") - GaugeMath.Measure(GaugeMath.Stitches(g.Number("width_in"), wrong, 1)!.Value, right, 1) }
            : Unknown(id),
        "C11" => new { @in = GaugeMath.Measure(g.Int("sts"), g.Number("sts_4in"), 4) },
        "C13" => new { per_in = new[] { GaugeMath.Over(g.Number("a"), 4, 1), GaugeMath.Over(g.Number("b"), 4, 1) }, ratio = GaugeMath.Convert(1, g.Number("a"), g.Number("b")) },
        "C14" => new { sts = GaugeMath.Stitches(g.Number("width_in"), g.Number("per_in"), 1) },
        "C15" => new { sts_4in = GaugeMath.Over(g.Number("sts_10cm"), 10, 4 * GaugeMath.CmPerInch) },
        "C16" => new { sts = GaugeMath.Stitches(g.Number("around_in"), g.Number("per_in"), 1) },
        "D02" => new { sts = GaugeMath.Fit(g.Int("sts"), g.Int("multiple"), g.Int("plus"), RoundTo.Below) },
        "D03" => new { fits = GaugeMath.Fits(g.Int("multiple"), g.Int("plus"), 11, 101).Where(s => s is 11 or 56 or 101) },
        "N06" => new { fits = GaugeMath.Fits(g.Int("multiple"), g.Int("plus"), 108, 138) },
        "N07" => new { positions = CrochetRound.OverChain(g.Int("chain"), 2), row_sts = CrochetRound.OverChain(g.Int("chain"), 2) },
        "D04" => g.Ints("repeats").Select(n => GaugeMath.Fit((n * g.Int("multiple")) + g.Int("plus"), g.Int("multiple"), g.Int("plus"))!.Value).ToArray() is var fits
            ? new { pattern_sts = fits, cast_on = fits.Select(f => f + g.Int("edge")) }
            : Unknown(id),
        "D05" => new
        {
            below = GaugeMath.Fit(g.Int("target"), g.Int("multiple"), g.Int("plus"), RoundTo.Below),
            above = GaugeMath.Fit(g.Int("target"), g.Int("multiple"), g.Int("plus"), RoundTo.Above),
            nearest = GaugeMath.Fit(g.Int("target"), g.Int("multiple"), g.Int("plus")),
        },
        "D07" => new { sts = GaugeMath.Fit(g.Int("sts") + g.Int("plus"), g.Int("multiple"), g.Int("plus")), tripled = GaugeMath.Fit((3 * g.Int("sts")) + g.Int("plus"), g.Int("multiple"), g.Int("plus")) },
        "D08" => new { cast_on = Counts(18, 4, g.Int("repeats")) },
        "D10" => new { cast_on = Counts(18, 2, g.Int("repeats")) },
        "D09" => new { repeats = GaugeMath.Repeats(g.Int("cast_on"), 18, 6) },
        "D12" => new { repeats = GaugeMath.Repeats(g.Int("cast_on"), 6, 1) },
        "D13" => new { chain = Counts(5, 2, g.Int("repeats")) + 2 },
        "D14" => new { positions = CrochetRound.OverChain(g.Int("chain")), repeats = GaugeMath.Repeats(CrochetRound.OverChain(g.Int("chain")), 4, 1) },
        "D15" => CrochetRound.OverChain(g.Int("chain")) is var sc ? new { sc, repeats = GaugeMath.Repeats(sc, 6, 1), row2 = sc, row3 = sc, row4 = sc } : Unknown(id),
        "N09" or "N10" => Counts(g.Int("multiple"), g.Int("plus"), 4) is var castOn ? new { cast_on = castOn, repeats = GaugeMath.Repeats(castOn, g.Int("multiple"), g.Int("plus")) } : Unknown(id),
        "N11" => new { cm_from_in = g.Numbers("in").Select(inches => inches * GaugeMath.CmPerInch) },
        _ => Unknown(id),
    };

    private static int Counts(int multiple, int plus, int repeats) => GaugeMath.Fits(multiple, plus, 0, 1000)[repeats - 1];

    private static object Sleeves(string id, Given g)
    {
        var counts = () => Sleeve.Counts(g.Number("cuff_in"), g.Number("top_in"), g.Number("per_in"), 1)!.Value;
        var cuff = () => GaugeMath.Stitches(g.Number("cuff_in"), g.Number("per_in"), 1);
        return id switch
        {
            "E01" => new { cuff = cuff(), cuff_rounded = counts().Cuff, top = counts().Top, difference = counts().Top - counts().Cuff, inc_rows = counts().ShapingRows },
            "E02" => new { shaping_in = g.Number("length_in") - g.Number("plain_in"), rows = GaugeMath.Rows(g.Number("length_in") - g.Number("plain_in"), g.Number("rows_per_in"), 1) },
            "E03" => ShapingSchedule.Plan(new(38, 38 + (2 * g.Int("times")), g.Int("rows"))).Plan is { First: { Every: 8 } first, Then: { Every: 10 } then, RowsAfter: 0 } ? new { every_8th = first.Times, every_10th = then.Times } : Unknown(id),
            "E04" => new { cuff = cuff(), cuff_rounded = counts().Cuff, top = GaugeMath.Stitches(g.Number("top_in"), g.Number("per_in"), 1), top_rounded = counts().Top, difference = counts().Top - counts().Cuff, inc_rows = counts().ShapingRows },
            "E06" => new { each_side = (g.Int("start") - g.Int("end")) / 2, sum = Curve.Quarter((g.Int("start") - g.Int("end")) / 2, 40).Plan!.Steps.Sum(s => s.Stitches) },
            "E07" => new { sts = GaugeMath.Stitches(g.Number("cm"), g.Number("sts_10cm"), 10) },
            "E08" => Total(g.Texts("list"), 0),
            "E09" => Total(g.Texts("list"), g.Int("even")),
            "E11" => new { sts = Shawl.Count(g.Int("start"), g.Int("plus_per_rs_row"), g.Int("rs_rows")), then = Enumerable.Range(g.Int("rs_rows") + 1, 4).Select(r => Shawl.Count(g.Int("start"), g.Int("plus_per_rs_row"), r)) },
            _ => Unknown(id),
        };
    }

    private static object Total(string[] list, int even)
    {
        var entries = list.Select(e => e.Split('-').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray()).Select(e => (e[0], e[1], e[2])).ToArray();
        var (rows, sts) = ShapingList.Totals(entries);
        return new { rows = rows + even, sts };
    }

    private static object Yokes(string id, Given g) => id switch
    {
        "F01" => new { K = GaugeMath.Stitches(g.Number("chest_in"), g.Number("per_in"), 1) },
        "F02" => RoundYoke.Percents(g.Number("K")) is var p ? new { sts = p.LowerEdge, for_2x2_rib = GaugeMath.Fit(p.LowerEdge, 4) } : Unknown(id),
        "F03" => new { cuff_20 = RoundYoke.Percents(g.Number("K")).Wrist, cuff_25 = RoundYoke.Percents(g.Number("K"), wrist: 25).Wrist, upper_arm = RoundYoke.Percents(g.Number("K"), upperArm: 35).UpperArm },
        "F05" => new { after_join_percent = RoundYoke.Percents(g.Number("body"), upperArm: g.Number("upper_arm")).Joined },
        "F06" => new { neck_percent = RoundYoke.After(g.Number("start_percent"), [.. g.Of("rounds").EnumerateArray().Select(r => (r[0].GetInt32(), r[1].GetInt32()))]) },
        "F07" => RoundYoke.Percents(g.Number("K")) is var p ? new { wrist = p.Wrist, upper_arm = p.UpperArm, underarm = p.Underarm, neck = p.Neck } : Unknown(id),
        "G01" => GaugeMath.Stitches(g.Number("neck_in"), g.Number("per_in"), 1) is { } neck && Raglan.Neck((int)neck) is { } parts
            ? new { neck, back_33 = neck * 0.33m, back = parts.Back, sleeve_25_of_back = parts.Back * 0.25m, sleeve = parts.Sleeve, seam = parts.Seams, front = parts.Front }
            : Unknown(id),
        "G03" => new { each_quarter = EvenShare.Parts(g.Int("front"), 4).Distinct().Single() },
        "G04" => new { gauge = g.Number("per_in"), neck = Even(g, "neck_in"), chest = Even(g, "chest_in"), sleeve = Even(g, "sleeve_in") },
        "G05" => new { inc_per_round = Raglan.PerRound(g.Int("seams")) },
        "G06" => Raglan.Depths(g.Number("sleeve_cast_on_in"), g.Number("raglan_in")) is var (back, armhole) ? new { back_neck_depth_in = back, armhole_in = armhole } : Unknown(id),
        _ => Unknown(id),
    };

    private static int Even(Given g, string measure) => GaugeMath.SameParity(GaugeMath.Stitches(g.Number(measure), g.Number("per_in"), 1)!.Value, 0);

    private static object Crowns(string id, Given g) => id switch
    {
        "H02" => new { after = HatCrown.Counts(g.Int("start"), 20, 5) },
        "H03" => HatCrown.Wedges(g.Int("start"), 8).Plan is { } crown ? new { first = crown.Rounds[0].Row(), after = crown.Counts } : Unknown(id),
        "H04" => HatCrown.Wedges(g.Int("start"), 9).Plan is { } crown ? new { first = crown.Rounds[0].Row(), after = crown.Counts.Take(3) } : Unknown(id),
        "H05" => new { lines_of_10 = First(g.Int("start"), 7), lines_of_7 = First(g.Int("start"), 10) },
        "H07" => new { diameter_in = HatCrown.Diameter(g.Number("head_in")) },
        "H08" => HatCrown.Flat(g.Int("sts"), g.Number("sts_10cm"), 10, 4) is var (girth, radius, rounds) ? new { circumference_cm = girth, radius_cm = radius, rounds_at_4_per_round = rounds } : Unknown(id),
        "H09" => HatCrown.Fits(g.Int("sts"), g.Int("wanted")) is var (below, above) ? new { fits = new[] { below, above } } : Unknown(id),
        _ => Unknown(id),
    };

    private static string First(int start, int wedges) => HatCrown.Wedges(start, wedges).Plan is { } crown ? $"{crown.Rounds[0].Row()} = {crown.Counts[0]}" : "";

    private static object Socks(string id, Given g)
    {
        var heel = (int past, bool slip) => Sock.RoundHeel(g.Int("heel"), past, slip).Plan!;
        return id switch
        {
            "I01" => heel(2, false) is var h ? new { row1 = h.Rows[0], row2 = h.Rows[1], left = new[] { h.LeftFirst.First, h.LeftFirst.Second }, end = h.End } : Unknown(id),
            "I03" => new { needle_1 = Sock.GussetNeedle(g.Int("heel_left"), g.Int("picked_up")) },
            "I04" => heel(2, true) is var h ? new { row1 = h.Rows[0], left = h.LeftFirst.First, end = h.End } : Unknown(id),
            "I05" => heel(g.Int("past"), true) is var h ? new { left = new[] { h.LeftFirst.First, h.LeftFirst.Second } } : Unknown(id),
            "I06" => Sock.SquareHeel(g.Int("heel"), 10).Plan is { } h ? new { row1 = h.Rows[0], left = new[] { h.LeftFirst.First, h.LeftFirst.Second }, end = h.End } : Unknown(id),
            "I08" => Sock.RoundHeel(g.Int("flap")).Plan is { } h && h.End == g.Int("after") ? new { lost = h.Stitches - h.End } : Unknown(id),
            "I09" => new { full = GaugeMath.Stitches(g.Number("foot_in"), g.Number("sts_2in"), 2), less_10 = GaugeMath.Stitches(GaugeMath.WithEase(g.Number("foot_in"), -10), g.Number("sts_2in"), 2), multiple_of_4 = Sock.CastOn(g.Number("foot_in"), g.Number("sts_2in"), 2, -10) },
            "I10" => Sock.Flap(g.Int("cast_on")) is var (sts, rows) ? new { flap_sts = sts, flap_rows = rows, multiple_of_8 = GaugeMath.Repeats(g.Int("cast_on"), 8, 0) is not null } : Unknown(id),
            "I11" => new { each = EvenShare.Parts(g.Int("sts"), g.Int("needles")).Distinct().Single() },
            _ => Unknown(id),
        };
    }

    private static object Crochet(string id, Given g) => id switch
    {
        "J02" => new { plain = CrochetRound.PlainBetween(g.Int("round")), count = CrochetRound.Circle("sc", g.Int("k"), g.Int("round")).Plan!.Counts[^1] },
        "J03" => new { sc = CrochetRound.UsualPerRound("sc"), hdc = CrochetRound.UsualPerRound("hdc"), dc = CrochetRound.UsualPerRound("dc") },
        "J04" => new { counts = CrochetRound.Circle("dc", CrochetRound.UsualPerRound("dc")!.Value, g.Int("rounds")).Plan!.Counts },
        "J05" => new { tr = CrochetRound.Around(3, g.Int("groups")), ch = CrochetRound.Around(1, g.Int("groups")), printed = CrochetRound.Around(4, g.Int("groups")) },
        "J07" => new { round1_dc = CrochetRound.SolidSquare(1), round2_dc = CrochetRound.SolidSquare(2) },
        "J08" or "J09" => g.Of("per_side").EnumerateObject().ToDictionary(p => p.Name, p => CrochetRound.Around(p.Value.GetInt32())),
        "J10" => CrochetRound.Granny(g.Int("round")) is var (groups, stitches, corners, sides) ? new { groups, dc = stitches, corner_spaces = corners, side_spaces = sides } : Unknown(id),
        "J12" => new { counts = CrochetRound.Ball("sc", g.Int("k"), g.Int("up"), g.Int("even")).Plan!.Counts },
        "J13" => CrochetRound.Filet(g.Int("squares")) is var (positions, solid, open) ? new { positions, chain_first_solid = solid, chain_first_open_ch2 = open } : Unknown(id),
        "J14" => new { chain = CrochetRound.Foundation(g.Int("dc"), 3), alternate = CrochetRound.Foundation(g.Int("dc"), 4) },
        _ => Unknown(id),
    };

    private static object Yarns(string id, Given g) => id switch
    {
        "K01" => g.Numbers("body") is [var wide, var high] && g.Numbers("sleeve") is [var cuff, var top, var length]
            ? new { body_sq_in = 2 * YarnAmount.Area(wide, wide, high), sleeve_sq_in = YarnAmount.Area(cuff, top, length), total_sq_in = (2 * YarnAmount.Area(wide, wide, high)) + (2 * YarnAmount.Area(cuff, top, length)) }
            : Unknown(id),
        "K03" => new { tex = YarnCount.TexOfCotton(g.Number("Ne")) },
        "K04" => new { cotton = YarnCount.TexTimesCotton, worsted = YarnCount.TexTimesWorsted },
        "K05" => new { denier = YarnCount.Denier(g.Number("tex")) },
        "K06" => new { Nm = YarnCount.Metric(g.Number("m_per_100g")), tex = YarnCount.Tex(g.Number("m_per_100g")) },
        "K08" => YarnCount.Resultant(30, 2, g.Int("ends")) is { } count && g.Text("count") == "2/30" && YarnCount.TexOfWorsted(count) is { } tex ? new { resultant = count, tex, m_per_100g = YarnCount.MetresPer100Grams(tex) } : Unknown(id),
        "K09" => new { m_per_100g = YarnCount.OfYardsPerPound(g.Number("yd_per_lb")) },
        "K10" => new { balls = YarnAmount.Balls(g.Number("need_m"), g.Number("ball_m")) },
        _ => Unknown(id),
    };

    private static object Bodies(string id, Given g) => id switch
    {
        "L01" => FitEase.All.Single(f => f.Name == "standard-fitting").Garment(g.Number("chest_in")) is var girth ? new { garment_in = new[] { girth.Least, girth.Most } } : Unknown(id),
        "L03" => new { ease = g.Numbers("to_fit").Zip(g.Numbers("finished")).Select(pair => FitEase.All.Single(f => f.Name == "close-fitting").Inches.Most + pair.First == pair.Second ? pair.Second - pair.First : -1).Distinct().Single() },
        "L04" => new { cm = g.Numbers("in").Select(inches => inches * GaugeMath.CmPerInch) },
        "L05" => Sock.Heel(g.Number("foot_in")) is var (gusset, foot, byGusset) ? new { gusset_in = gusset, heel_diagonal_by_foot = foot, heel_diagonal_by_gusset = byGusset } : Unknown(id),
        "L06" => new { @in = g.Number("cm") / GaugeMath.CmPerInch },
        "M07" => new { after_rs_rows = Enumerable.Range(1, 6).Select(r => Shawl.Count(g.Int("start"), 2, r)) },
        _ => Unknown(id),
    };

    private static object Unknown(string id) => throw new InvalidOperationException($"nobody answers {id}");
}
