using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Planning;

/// <summary>Each kind of plan as a block of a pattern in several sizes: its rows are understood, checked, and come to their counts.</summary>
public class PlanKindTests
{
    private const string Knitted = "gauge: 20 sts and 28 rows = 10 cm in stockinette";
    private const string Crocheted = "craft: crochet\nterms: us\ngauge: 15 sts and 11 rows = 10 cm in half double crochet";

    private static Compilation Compile(string head, string before, string block, string sizes = "S (M, L)") => Compiler.Compile(new SourceText("x.pattern.md", $"""
        ---
        title: Harbour pullover
        sizes: {sizes}
        {head}
        ---

        ## Piece

        {before}

        ```plan
        {block}
        ```
        """));

    private static string[] Rows(Compilation made) => [.. made.Lines.Select(l => l.Label.Length > 0 ? $"{l.Label}: {l.Text}" : l.Text)];

    private static int[] Last(Compilation made) => [.. Enumerable.Range(0, made.Pattern.Facts.Sizes.Count).Select(i => made.Lines.Select(l => l.After[i]).Last(c => c is not null)!.Value)];

    private static void IsChecked(Compilation made)
    {
        var said = made.Findings.Where(f => f.Severity != Severity.Note && string.CompareOrdinal(f.Rule.Code, "PF600") < 0).Select(f => $"{f.Rule.Code} {f.Message}");
        Assert.Equal("", string.Join('\n', said));
        Assert.All(made.Lines, l => Assert.True(l.Status == LineStatus.Checked, $"{l.Status}: {l.Label}: {l.Text}"));
    }

    // 100 sts, 3 at each edge, 7 holes of 4 sts: 6 spaces of 11 (common practice).
    [Fact]
    public void Buttonholes_are_spaced_evenly_along_a_band()
    {
        var made = Compile(Knitted, "CO 100 (106, 112) sts.", "work: buttonholes\nfrom: 100 (106, 112)\nholes: 7\nsize: 4\nedge: 3");

        IsChecked(made);
        Assert.Equal([100, 106, 112], Last(made));
        Assert.Equal("Buttonhole Row 1 (RS): K3, (BO 4 sts, k11 (12, 13)) 6 times, BO 4 sts, k3. (72 (78, 84) sts)", Rows(made)[1]);
    }

    [Fact]
    public void Sizes_with_other_remainders_share_a_row_of_buttonholes()
    {
        var made = Compile(Knitted, "CO 100 (107, 111) sts.", "work: buttonholes\nfrom: 100 (107, 111)\nholes: 6 (6, 7)");

        IsChecked(made);
        Assert.Equal([100, 107, 111], Last(made));
        Assert.Equal("Buttonhole Row (RS): K3, (yo, k2tog, k17 (18, 16)) 2 (4, 1) times, (yo, k2tog, k16 (17, 15)) 3 (1, 5) times, yo, k2tog, k3. (100 (107, 111) sts)", Rows(made)[1]);
    }

    [Fact]
    public void Buttonholes_of_crochet_are_chains()
    {
        var made = Compile(Crocheted, "Ch 41 (47, 53).\n\nRow 1: Hdc in 2nd ch from hook and in each ch across. (40 (46, 52) sts)", "work: buttonholes\nstitch: hdc\nfrom: 40 (46, 52)\nholes: 4\nedge: 4");

        IsChecked(made);
        Assert.Equal([40, 46, 52], Last(made));
        Assert.Contains("ch 2, skip next 2 sts", Rows(made)[2], StringComparison.Ordinal);
    }

    // 20 sts and 28 rows are 5 sts in 7 rows; 112 rows give 80 sts (arithmetic), and what was bound off is picked up one for one (common practice).
    [Theory]
    [InlineData("along: 40 cm", "Pick-up Row (RS): Pick up and k 80 sts evenly along the edge at about 5 sts for every 7 rows. (80 sts)", 80)]
    [InlineData("along: 112 rows\nbound-off: 13", "Pick-up Row (RS): Pick up and k 93 sts evenly along the edge at about 5 sts for every 7 rows and 1 st in each bound-off st. (93 sts)", 93)]
    [InlineData("bound-off: 13", "Pick-up Row (RS): Pick up and k 13 sts evenly along the edge at 1 st in each bound-off st. (13 sts)", 13)]
    [InlineData("along: 40 cm\nmultiple: 4\nplus: 2\nedge: left front", "Pick-up Row (RS): Pick up and k 78 sts evenly along the left front at about 5 sts for every 7 rows. (78 sts)", 78)]
    [InlineData("along: 100 rows\nto: 75\nin: round", "Pick-up Rnd: Pick up and k 75 sts evenly around the neck at about 3 sts for every 4 rows. Place marker and join in the round. (75 sts)", 75)]
    public void Stitches_are_picked_up_at_the_ratio_of_the_gauge(string block, string row, int count)
    {
        var made = Compile(Knitted, "", "work: pick up\n" + block);

        IsChecked(made);
        Assert.Equal([count, count, count], Last(made));
        Assert.Equal(row, Rows(made)[0]);
    }

    [Fact]
    public void An_edge_of_crochet_is_begun_in_its_stitch()
    {
        var made = Compile(Crocheted, "", "work: pick up\nstitch: sc\nalong: 40 (42, 44) cm\nbound-off: 10");

        IsChecked(made);
        Assert.Equal([70, 73, 75], Last(made));
    }

    // A neck of 41 sts with 17 in its middle: 12 at each side (common practice: a third to a half at once).
    [Fact]
    public void A_neckline_has_two_sides_that_end_with_their_shoulders()
    {
        var made = Compile(Knitted, "CO 81 (87, 95) sts.", "work: neckline\nfrom: 81 (87, 95)\nneck: 41 (43, 45)\nover: 8 cm\ncentre: 17\nend: hold");

        IsChecked(made);
        var shoulders = made.Lines.Where(l => l.Text.StartsWith("Place rem", StringComparison.Ordinal)).Select(l => (l.Before[0], l.Before[1], l.Before[2])).ToArray();
        Assert.Equal([(20, 22, 25), (20, 22, 25)], shoulders);
    }

    [Fact]
    public void A_neckline_of_crochet_loses_a_stitch_a_row()
    {
        var made = Compile(Crocheted, "Ch 41 (45, 49).\n\nRow 1: Hdc in 2nd ch from hook and in each ch across. (40 (44, 48) sts)", "work: neckline\nstitch: hdc\nfrom: 40 (44, 48)\nneck: 18 (20, 22)\nover: 8 rows");

        IsChecked(made);
        Assert.Equal([11, 12, 13], Last(made));
    }

    // Shoulders of 21 sts over 6 rows are bound off, or turned, by 7, 7 and 7 (common practice).
    [Theory]
    [InlineData("binding off", "BO 7 (8, 8) sts at beg of next 6 (2, 4) rows. (38 (66, 54) sts)")]
    [InlineData("short rows", "Short Row 1 (RS): K to last 7 (8, 8) sts, w&t.")]
    public void Shoulders_go_up_in_equal_steps(string by, string row)
    {
        var made = Compile(Knitted, "CO 80 (82, 86) sts.", $"work: shoulders\nby: {by}\nfrom: 80 (82, 86)\nshoulder: 21 (22, 23)\nover: 6 rows");

        IsChecked(made);
        Assert.Equal(by == "short rows" ? [80, 82, 86] : [38, 38, 40], Last(made));
        Assert.Equal(row.Split(". (")[0].TrimEnd('.'), Rows(made)[1].Split(". (")[0].TrimEnd('.'));
    }

    // 5 cm more in front at 28 rows in 10 cm are 14 rows, 7 pairs (common practice).
    [Fact]
    public void A_bust_is_lengthened_by_short_rows()
    {
        var made = Compile(Knitted, "CO 90 (96, 102) sts.", "work: bust\nfrom: 90 (96, 102)\nbetween: 34 (36, 38)\nlonger: 5 cm");

        IsChecked(made);
        Assert.Equal([90, 96, 102], Last(made));
        Assert.Equal(14, Rows(made).Count(r => r.StartsWith("Short Row", StringComparison.Ordinal)));
        Assert.Contains("Short Row 14 (WS): P to last 28 (30, 32) sts, w&t.", Rows(made));
    }

    [Theory]
    [InlineData("sole", "Rnd 1: K48 (54, 54), pm, k to end.")]
    [InlineData("heel", "Rnd 1: K24 (27, 27), pm, k32 (34, 36), pm, k to end.")]
    public void A_gusset_goes_down_to_the_foot(string begin, string markers)
    {
        var made = Compile(Knitted, "CO 80 (88, 90) sts. Join in the round.\n\n" + markers, $"work: gusset\nbegin: {begin}\nfrom: 80 (88, 90)\nto: 64 (68, 72)");

        IsChecked(made);
        Assert.Equal([64, 68, 72], Last(made));
    }

    // 64 sts to 16: 8 times every other round to 32, then 4 times every round (common practice).
    [Theory]
    [InlineData("there", "Rnd 1: K32 (34, 36), pm, k to end.")]
    [InlineData("to place", "")]
    public void A_toe_goes_to_the_half_every_other_round_and_then_every_round(string marker, string before)
    {
        var made = Compile(Knitted, "CO 64 (68, 72) sts. Join in the round.\n\n" + before, $"work: toe\nmarker: {marker}\nfrom: 64 (68, 72)\nleave: 16 (20, 20)");

        IsChecked(made);
        Assert.Equal([16, 20, 20], Last(made));
        Assert.Contains("Rep Dec Rnd every other rnd 7 (7, 8) times, then every rnd 4 times. (16 (20, 20) sts)", Rows(made));
    }

    // From 1 to 15 sts in 21 rounds: every 3rd round 7 times (common practice).
    [Fact]
    public void A_thumb_grows_between_two_markers_and_is_held()
    {
        var made = Compile(Knitted, "CO 40 (44, 48) sts. Join in the round.\n\nRnd 1: K20 (22, 24), pm, k1, pm, k to end.", "work: thumb\naround: 40 (44, 48)\nbefore: 20 (22, 24)\nto: 15\nover: 21 rows");

        IsChecked(made);
        Assert.Equal([40, 44, 48], Last(made));
        Assert.Contains("Rep Inc Rnd every 3rd rnd 6 times. (54 (58, 62) sts)", Rows(made));
    }

    [Theory]
    [InlineData("from: 40 (44, 48)\nto: 56 (60, 66)\nover: 30 cm\nstitch: hdc", new[] { 56, 60, 66 })]
    [InlineData("from: 40 (44, 48)\nto: 28 (32, 36)\nover: 20 rows\nstitch: hdc\nat: end", new[] { 28, 32, 36 })]
    [InlineData("from: 40 (44, 48)\nto: 28 (32, 36)\nover: 20 rows\nstitch: dc\neach: 4", new[] { 28, 32, 36 })]
    [InlineData("from: 40 (44, 48)\nto: 60 (60, 64)\nover: 20 rows\nstitch: dc\neach: 4\nbegin: now", new[] { 60, 60, 64 })]
    public void Rows_of_crochet_are_shaped_in_their_stitch(string block, int[] counts)
    {
        var made = Compile(Crocheted, "Ch 41 (45, 49).\n\nRow 1: Hdc in 2nd ch from hook and in each ch across. (40 (44, 48) sts)", "work: shaping\n" + block);

        IsChecked(made);
        Assert.Equal(counts, Last(made));
    }

    [Fact]
    public void A_yoke_of_crochet_grows_at_its_corners()
    {
        var ring = "Ch 40 (44, 48), join with sl st to form a ring.\n\nRnd 1: Ch 1, *sc in next 9 (10, 11) ch, (sc, ch 2, sc) in next ch; rep from * around, join with sl st in first sc. (44 (48, 52) sts)";
        var made = Compile(Crocheted, ring, "work: shaping\nstitch: sc\nfrom: 44 (48, 52)\nto: 108 (112, 132)\nover: 20 (20, 24) rows\nat: corners\nin: rounds");

        IsChecked(made);
        Assert.Equal([108, 112, 132], Last(made));
    }

    [Theory]
    [InlineData("sc")]
    [InlineData("dc")]
    public void A_yoke_of_crochet_narrows_at_its_corners_as_it_grows(string stitch)
    {
        var ring = $"Ch 84 (92, 100), join with sl st to form a ring.\n\nRnd 1: Ch 1, *{stitch} in next 10 (11, 12) ch, ({stitch}, ch 2, {stitch}) in next ch, {stitch} in next 10 (11, 12) ch; rep from * around, join with sl st in first {stitch}. (88 (96, 104) sts)";
        var made = Compile(Crocheted, ring, $"work: shaping\nstitch: {stitch}\nfrom: 88 (96, 104)\nto: 48 (48, 56)\neach: 8\nover: 20 (20, 24) rows\nat: corners\nin: rounds");

        IsChecked(made);
        Assert.Equal([48, 48, 56], Last(made));
        Assert.Contains($"[{stitch} in each st to 2 sts before next ch-2 sp, {stitch}2tog, ch 2, sk ch-2 sp, {stitch}2tog] 4 times, {stitch} in each st to end", string.Join('\n', made.Lines.Select(l => l.Text)), StringComparison.Ordinal);
    }

    // At 20 sts and 28 rows in 10 cm: 3 cm in at once are 6 sts, 5 cm in all are 10; 2 (4, 6) cm further in over 10 cm more (arithmetic of the gauge).
    [Fact]
    public void An_edge_follows_the_points_that_were_measured_on_it()
    {
        var made = Compile(Knitted, "CO 100 (108, 116) sts.", "work: measured edge\nfrom: 100 (108, 116)\nup-1: 0 cm\nin-1: 3 cm\nup-2: 5 cm\nin-2: 5 cm\nup-3: 15 cm\nin-3: 7 (9, 11) cm");

        IsChecked(made);
        Assert.Equal([100 - 28, 108 - 36, 116 - 44], Last(made));
        Assert.Contains("BO 6 sts at beg of next 2 rows.", Rows(made)[1], StringComparison.Ordinal);
    }

    // 6 cm in over 10 cm, half of it in the first centimetre: 6 sts in 2 rows, 6 more in 26 (arithmetic of the gauge).
    [Fact]
    public void What_is_flatter_than_a_stitch_in_two_rows_is_bound_off_and_what_is_steeper_decreased()
    {
        var made = Compile(Knitted, "CO 60 sts.", "work: measured edge\nfrom: 60\nat: neck edge\nup-1: 1 cm\nin-1: 3 cm\nup-2: 10 cm\nin-2: 6 cm", "S");

        IsChecked(made);
        Assert.Equal([48], Last(made));
        Assert.Equal(["BO 6 sts at neck edge of every other row once. (54 sts)", "Dec 1 st at neck edge of every 4th row 5 times, then every 6th row once. (48 sts)"], Rows(made)[1..]);
    }

    // 40 cm are 80 sts, 60 cm 120, 50 cm 100; 20 cm are 56 rows, in which 20 increases at each end are 12 every other row and 8 every 4th (arithmetic of the gauge); the third size is 10 cm wider all the way.
    [Fact]
    public void A_piece_follows_the_widths_that_were_measured_on_it()
    {
        var made = Compile(Knitted, "CO 80 (80, 100) sts.", "work: outline\nup-1: 0 cm\nwidth-1: 40 (40, 50) cm\nup-2: 20 cm\nwidth-2: 60 (64, 70) cm\nup-3: 30 cm\nwidth-3: 50 (54, 60) cm");

        IsChecked(made);
        Assert.Equal([100, 108, 120], Last(made));
        Assert.Equal("Inc 1 st at each end of every other row 12 (20, 12) times, then every 4th row 8 (4, 8) times. (120 (128, 140) sts)", Rows(made)[1]);
    }

    // Steeper than a stitch or two at each end: 20 cm in over 2 cm are 20 sts at each end in 6 rows, 7 in each pair but the last (arithmetic of the gauge).
    [Fact]
    public void Where_it_turns_in_steeply_stitches_are_bound_off()
    {
        var made = Compile(Knitted, "CO 80 sts.", "work: outline\nup-1: 0 cm\nwidth-1: 40 cm\nup-2: 2 cm\nwidth-2: 20 cm\nup-3: 4 cm\nwidth-3: 30 cm", "S");

        IsChecked(made);
        Assert.Equal([60], Last(made));
        Assert.Contains(Rows(made), r => r.StartsWith("BO 7 sts at beg of next 2 rows.", StringComparison.Ordinal));
        Assert.Contains(Rows(made), r => r.StartsWith("CO ", StringComparison.Ordinal) && r.Contains("at end of next 2 rows", StringComparison.Ordinal));
    }

    // A half ball on 56 cm is as high as its radius, 8.9 cm (geometry).
    [Fact]
    public void A_crown_is_half_a_ball()
    {
        var made = Compile(Knitted, "CO 112 (120, 128) sts. Join in the round.", "work: dome\ngirth: 56 (60, 64) cm\ndepth: 8.9 (9.5, 10.2) cm");

        IsChecked(made);
        Assert.All(Last(made), l => Assert.InRange(l, 8, 40));
    }

    // 8 stitches fewer a time at 4 places, from 64 to 32: 4 times (arithmetic). A place stands in the middle of its section, so that 16 stitches are 6, the two pairs and 6, and the next 14 are 5, the pairs and 5.
    [Fact]
    public void Crochet_is_shaped_at_places_that_are_counted_out()
    {
        var made = Compile(Crocheted, "Ch 64 (72, 84), join with sl st to form a ring.\n\nRnd 1: Ch 1, sc in each ch around, join with sl st in first sc. (64 (72, 84) sts)", "work: shaping\nstitch: sc\nfrom: 64 (72, 84)\nto: 32 (40, 52)\nover: 20 rows\nat: markers\nin: rounds");

        IsChecked(made);
        Assert.Equal([32, 40, 52], Last(made));
        var lines = string.Join('\n', made.Lines.Select(l => l.Text));
        Assert.Contains("[sc in each of next 6 (7, 8) sts, (sc2tog) twice, sc in each of next 6 (7, 9) sts] 4 times", lines, StringComparison.Ordinal);
        Assert.Contains("[sc in each of next 5 (6, 7) sts, (sc2tog) twice, sc in each of next 5 (6, 8) sts] 4 times", lines, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dc", "from: 40 (44, 48)\nto: 72 (76, 96)\nover: 12 rows\nat: markers\nin: rounds", new[] { 72, 76, 96 })]
    [InlineData("hdc", "from: 40 (44, 48)\nto: 72 (76, 80)\neach: 16\nover: 6 rows\nat: markers\nbegin: now\nin: rounds", new[] { 72, 76, 80 })]
    [InlineData("hdc", "from: 40 (44, 48)\nto: 52 (62, 60)\neach: 6\nover: 12 rows\nat: markers\nmarkers: 3", new[] { 52, 62, 60 })]
    public void And_grows_at_them(string stitch, string block, int[] counts)
    {
        var begin = block.Contains("rounds", StringComparison.Ordinal)
            ? $"Ch 40 (44, 48), join with sl st to form a ring.\n\nRnd 1: Ch 1, {stitch} in each ch around, join with sl st in first st. (40 (44, 48) sts)"
            : "Ch 41 (45, 49).\n\nRow 1: Hdc in 2nd ch from hook and in each ch across. (40 (44, 48) sts)";
        var made = Compile(Crocheted, begin, $"work: shaping\nstitch: {stitch}\n{block}");

        IsChecked(made);
        Assert.Equal(counts, Last(made));
    }

    [Fact]
    public void Where_a_starting_line_has_its_spaces_is_not_known_so_that_nothing_is_wrong()
    {
        var made = Compile(Crocheted, "Begin with 64 (72, 80) sc and 4 ch-2 sps.", "work: shaping\nstitch: sc\nfrom: 64 (72, 80)\nto: 32 (40, 40)\neach: 8\nover: 20 rows\nat: corners\nin: rounds");

        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.Equal([32, 40, 40], Last(made));
    }

    [Fact]
    public void Short_rows_whose_pairs_differ_by_size_are_told_as_one_set()
    {
        var made = Compile(Knitted, "CO 80 (90, 100) sts.", "work: shoulders\nby: short rows\nfrom: 80 (90, 100)\nshoulder: 21 (24, 31)\nover: 6 (8, 10) rows");

        IsChecked(made);
        Assert.Equal(
            [
                "K to last 7 (6, 7) sts, w&t.", "P to last 7 (6, 7) sts, w&t.", "K to 7 (6, 6) sts before wrapped st, w&t.", "P to 7 (6, 6) sts before wrapped st, w&t.", "Rep last 2 rows 1 (2, 3) times more.", "Knit.",
            ],
            made.Lines.Skip(1).Select(l => l.Text));
    }

    // 22 sts in 4 steps are 6, 6, 5 and 5, 27 in 5 are 6, 6, 5, 5 and 5: never more than a stitch apart.
    [Fact]
    public void Steps_of_two_widths_have_a_second_pair_that_is_repeated()
    {
        var made = Compile(Knitted, "CO 80 (90, 100) sts.", "work: shoulders\nby: short rows\nfrom: 80 (90, 100)\nshoulder: 22 (27, 32)\nover: 8 (10, 12) rows");

        IsChecked(made);
        Assert.Equal(
            [
                "K to last 6 sts, w&t.", "P to last 6 sts, w&t.", "K to 6 sts before wrapped st, w&t.", "P to 6 sts before wrapped st, w&t.",
                "K to 5 sts before wrapped st, w&t.", "P to 5 sts before wrapped st, w&t.", "Rep last 2 rows 1 (2, 3) times more.", "Knit.",
            ],
            made.Lines.Skip(1).Select(l => l.Text));
    }

    [Theory]
    [InlineData("work: shaping\nstitch: sc\nfrom: 20\nto: 8\nover: 30 rows\nat: markers\nmarkers: 6")]
    [InlineData("work: shaping\nfrom: 40\nto: 80\nover: 30 rows\nat: corners")]
    [InlineData("work: shaping\nstitch: sc\nfrom: 40\nto: 80\nover: 30 rows\neach: 20")]
    [InlineData("work: neckline\nfrom: 80\nneck: 41\nover: 20 rows")]
    [InlineData("work: neckline\nfrom: 80\nneck: 40\nover: 20 rows\ncentre: 17")]
    [InlineData("work: neckline\nstitch: sc\nfrom: 80\nneck: 40\nover: 6 rows")]
    [InlineData("work: bust\nfrom: 80\nbetween: 31\nlonger: 14 rows")]
    [InlineData("work: gusset\nfrom: 64\nto: 80")]
    [InlineData("work: toe\nfrom: 62")]
    [InlineData("work: measured edge\nfrom: 20\nup-1: 2 cm\nin-1: 3 cm\nup-2: 5 cm\nin-2: 8 cm")]
    [InlineData("work: measured edge\nfrom: 80\nup-1: 2 cm\nin-1: 3 cm\nup-2: 5 cm\nin-2: 2 cm")]
    [InlineData("work: outline\nfrom: = 2 - 7\nup-1: 0 cm\nwidth-1: 40 cm\nup-2: 10 cm\nwidth-2: 50 cm")]
    [InlineData("work: measured edge\nfrom: = 0 - 9\nup-1: 0 cm\nin-1: 0 cm\nup-2: 10 cm\nin-2: 0 cm")]
    [InlineData("work: outline\nup-1: 2 cm\nwidth-1: 30 cm\nup-2: 1 cm\nwidth-2: 20 cm")]
    [InlineData("work: outline\nup-1: 2 cm\nwidth-1: 30 cm\nup-2: 8 cm\nwidth-2: 0 cm")]
    [InlineData("work: thumb\naround: 40\nbefore: 40\nto: 15\nover: 21 rows")]
    [InlineData("work: pick up")]
    [InlineData("work: pick up\nbound-off: 12\nto: 14")]
    [InlineData("work: pick up\nalong: 10 rows\nto: 40")]
    [InlineData("work: shoulders\nfrom: 80\nshoulder: 41\nover: 6 rows")]
    [InlineData("work: buttonholes\nfrom: 20\nholes: 7")]
    public void What_cannot_be_planned_is_said_with_its_reason(string block)
    {
        var made = Compile(Knitted, "CO 80 sts.", block, "S");

        var finding = Assert.Single(made.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF229", finding.Rule.Code);
    }

    [Fact]
    public void A_curve_of_several_sizes_is_told_once_with_the_steps_that_all_share()
    {
        var made = Compile(Knitted, "CO 100 (106, 112) sts.", "work: curve\nfrom: 100 (106, 112)\nlose: 10 (12, 15)\nover: 24 (26, 30) rows");

        IsChecked(made);
        Assert.Equal([80, 82, 82], Last(made));
        Assert.DoesNotContain(Rows(made), r => r.Contains("only", StringComparison.Ordinal));
        Assert.StartsWith("BO 4 (5, 5) sts at beg of next 2 rows.", Rows(made)[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Any_curve_comes_to_its_counts_in_every_size() =>
        Gen.Select(Gen.Int[2, 40].Array[4], Gen.Int[1, 40].Array[4], Gen.Int[0, 2], Gen.Bool).Sample((lose, extra, curve, isNeck) =>
        {
            var (shape, at) = (curve switch { 0 => "armhole", 1 => "slope", _ => "cap" }, isNeck ? "neck edge" : "ends");
            lose = [.. lose.Order()];
            var rows = extra.Order().Select((e, i) => 2 * (e + (lose[i] / 6) + 1)).ToArray();
            var from = lose.Select((l, i) => (2 * l) + 20 + (2 * i)).ToArray();
            string List(int[] values) => $"{values[0]} ({string.Join(", ", values[1..])})";
            var made = Compile(Knitted, $"CO {List(from)} sts.", $"work: curve\nshape: {shape}\nat: {at}\nfrom: {List(from)}\nlose: {List(lose)}\nover: {List(rows)}", "S (M, L, XL)");

            Assert.Equal("", string.Join('\n', made.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message)));
            Assert.Equal([.. from.Zip(lose, (f, l) => f - ((at == "ends" ? 2 : 1) * l))], Last(made));
            Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
        }, iter: 150);
}
