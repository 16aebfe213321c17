using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Tests.Syntax;

namespace PatternForge.Tests.Binding;

public class HeaderBinderTests
{
    private static (PatternFacts Facts, FindingBag Bag, SourceText Source) Bind(string file)
    {
        var (source, header, bag) = HeaderText.Read(file.StartsWith("---", StringComparison.Ordinal) ? file : HeaderText.Fenced(file));
        return (HeaderBinder.Bind(header, source, bag), bag, source);
    }

    private static string Values(PerSize<Quantity?>? values) => values is null ? "none" : string.Join(" | ", values.Values.Select(v => v?.ToString() ?? "–"));

    /// <summary>Every finding as "code: marked text: message".</summary>
    private static string Said(FindingBag bag) => string.Join('\n', bag.ToSorted().Select(f => $"{f.Rule.Code} «{f.Source.ToString(f.Span)}» {f.Message}"));

    [Fact]
    public void A_complete_header_binds_without_a_finding()
    {
        var (facts, bag, _) = Bind(Headers.Pullover);

        Assert.Equal("", Said(bag));
        Assert.Equal("Harbour pullover", facts.Title?.Value);
        Assert.Equal("Ida Example", facts.Designer);
        Assert.Equal("1.2", facts.Version);
        Assert.Equal("2025-03-01", facts.Date);
        Assert.Equal(Craft.Knitting, facts.Craft);
        Assert.Equal(Level.Intermediate, facts.Level?.Value);
        Assert.Equal("cables on every right-side row", facts.LevelReason);
        Assert.Equal("A boxy pullover, knitted from the top down.", facts.Summary);
        Assert.Equal("XS S M L XL", string.Join(" ", facts.Sizes.Names));
        Assert.Equal("76–81 cm | 86–91 cm | 96–101 cm | 106–111 cm | 117–122 cm", Values(facts.Fits.Single().Values));
        Assert.Equal(["bust", "length"], facts.Finished.Select(m => m.Name));
        Assert.Equal("22.5 in | 23 in | 23.5 in | 24 in | 24.5 in", Values(facts.Finished[1].Values));
        Assert.Equal("10 to 15 cm", facts.Ease);
        Assert.Equal(2, facts.Gauges.Length);
        Assert.Equal("950 m | 1050 m | 1150 m | 1250 m | 1350 m", Values(facts.Yarns.Single().Needs));
        Assert.Equal(["4 mm circular needle, 80 cm", "cable needle"], facts.Tools.Select(t => t.Text));
        Assert.Equal("https://example.com/cn", facts.Tools[1].Link);
        Assert.Equal(["4 markers"], facts.Notions.Select(t => t.Text));
        Assert.Equal(["C6F", "MB"], facts.Stitches.Select(s => s.Name));
        Assert.Equal(("make a bobble", 1, 1), (facts.Stitches[1].FullName, facts.Stitches[1].Takes, facts.Stitches[1].Makes));
        Assert.Equal(["k", "p", "k2tog", "st", "sts", "RS", "WS"], facts.Abbreviations!.Value.SelectMany(a => a.Forms));
        Assert.Equal("92 | 100 | 108 | 116 | 124", Values(facts.Numbers[0].Values));
        Assert.Equal("20 cm | 21 cm | 22 cm | 23 cm | 24 cm", Values(facts.Numbers[1].Values));
        Assert.Equal(("Chart A", "12"), (facts.Charts.Single().Name, Values(facts.Charts.Single().Values)));
        Assert.Equal(["Slip the first stitch of every row."], facts.Notes.Select(n => n.Value));
        Assert.Equal(("M", "430 g"), (facts.Sample?.Size, facts.Sample?.Used?.ToString()));
        Assert.Equal(("front.jpg", "The pullover from the front"), (facts.Photos.Single().File, facts.Photos.Single().Alt));
        Assert.Equal("https://example.com/bobble", facts.Videos.Single().Address);
        Assert.Equal(("Blocking", "https://example.com/blocking"), (facts.Links.Single().Title, facts.Links.Single().Address));
        Assert.Equal("hello@example.com", facts.Contact);
        Assert.Equal("thanks commissions", string.Join(" ", facts.Omit));
        Assert.Equal("us|large print", string.Join("|", facts.Release.Select(r => r.Value)));
        Assert.Empty(facts.Unread);
    }

    [Fact]
    public void A_gauge_of_keys_and_a_gauge_of_one_line_say_the_same_things()
    {
        var (facts, _, _) = Bind(Headers.Pullover);

        var main = facts.Gauges[0];
        Assert.Equal(("main", "stockinette", "4 mm", true), (main.Name, main.Stitch, main.Tool, main.Blocked));
        Assert.Equal((20m, 28.5m, "10 cm", "10 cm"), (main.Stitches, main.Rows, main.Width?.ToString(), main.Height?.ToString()));
        Assert.Equal((2m, 2.85m), (main.StitchesPerCm, main.RowsPerCm));
        var cable = facts.Gauges[1];
        Assert.Equal(("cable pattern", "4 mm", true, 24m, 26m), (cable.Stitch, cable.Tool, cable.Blocked, cable.Stitches, cable.Rows));
    }

    [Fact]
    public void A_yarn_knows_its_weight_class_grist_colours_and_alternatives()
    {
        var yarn = Bind(Headers.Pullover).Facts.Yarns.Single();

        Assert.Equal(("Quayside Wool", "wool", 3, "MC"), (yarn.Name, yarn.Fibre, yarn.WeightClass, yarn.Label));
        Assert.Equal(2.2m, yarn.MetresPerGram);
        Assert.Equal("slate|foam", string.Join("|", yarn.Colours));
        Assert.Equal(("Quayside Cotton", "cooler to wear"), (yarn.Alternatives[0].Name, yarn.Alternatives[0].Note));
        Assert.Equal(("Quayside Blend", "machine washable", "50 g", "110 m"), (yarn.Alternatives[1].Name, yarn.Alternatives[1].Note, yarn.Alternatives[1].PutUpMass?.ToString(), yarn.Alternatives[1].PutUpLength?.ToString()));
    }

    [Theory]
    [InlineData("XS (S, M, L)", "XS S M L")]
    [InlineData("XS (S, M) (L, XL)", "XS S M L XL")]
    [InlineData("1 (2, 3) [4, 5] {6, 7}", "1 2 3 4 5 6 7")]
    [InlineData("S [M, L]", "S M L")]
    [InlineData("S (M: L)", "S M L")]
    [InlineData("S, M, L", "S M L")]
    [InlineData("S/M/L", "S M L")]
    [InlineData("S/M (L/XL)", "S/M L/XL")]
    [InlineData("S/M", "S/M")]
    [InlineData("[S, M, L]", "S M L")]
    [InlineData("one size", "one_size")]
    [InlineData("One size (adult)", "One_size_(adult)")]
    [InlineData("2 (4, 6) years", "2 4 6")]
    [InlineData("0-3 (3-6, 6-12) months", "0-3 3-6 6-12")]
    public void Names_of_sizes_are_read_in_every_form_of_the_trade(string said, string names)
    {
        foreach (var header in new[] { $"sizes: {said}", $"sizes:\n  names: {said}" })
        {
            var (facts, bag, _) = Bind(header);
            Assert.Equal("", Said(bag));
            Assert.Equal(names, string.Join(' ', facts.Sizes.Names.Select(n => n.Replace(' ', '_'))));
        }
    }

    [Fact]
    public void A_word_after_the_names_of_the_sizes_stays_with_them() => Assert.Equal("years", Bind("sizes: 2 (4, 6) years").Facts.Sizes.Word);

    [Theory]
    [InlineData("91 (102, 112) cm", "91 cm | 102 cm | 112 cm")]
    [InlineData("91[102, 112]cm", "91 cm | 102 cm | 112 cm")]
    [InlineData("82 (90: 94) cm", "82 cm | 90 cm | 94 cm")]
    [InlineData("82(86-90) cm", "82 cm | 86 cm | 90 cm")]
    [InlineData("82 [86:90] cm", "82 cm | 86 cm | 90 cm")]
    [InlineData("82/86/90 cm", "82 cm | 86 cm | 90 cm")]
    [InlineData("82-86-90 cm", "82 cm | 86 cm | 90 cm")]
    [InlineData("82, 86, 90 cm", "82 cm | 86 cm | 90 cm")]
    [InlineData("91 cm (102 cm, 112 cm)", "91 cm | 102 cm | 112 cm")]
    [InlineData("6½ (7, 7 1/2) in", "6.5 in | 7 in | 7.5 in")]
    [InlineData("36 (40, 44)\"", "36 in | 40 in | 44 in")]
    [InlineData("36 (40, 44) in.", "36 in | 40 in | 44 in")]
    [InlineData("36 (40, 44) inches", "36 in | 40 in | 44 in")]
    [InlineData("15 (15½, 16)\" [38 (39.5, 40.5) cm]", "15 in | 15.5 in | 16 in")]
    [InlineData("38 (39.5, 40.5) cm / 15 (15½, 16) in", "38 cm | 39.5 cm | 40.5 cm")]
    [InlineData("10 cm", "10 cm")]
    [InlineData("10 cm (4 in)", "10 cm")]
    [InlineData("10 cm / 4 in", "10 cm")]
    [InlineData("about 10 cm", "10 cm")]
    [InlineData("3 [4, -] cm", "3 cm | 4 cm | –")]
    [InlineData("– (4, 5) cm", "– | 4 cm | 5 cm")]
    [InlineData("\"- (4, 5) cm\"", "– | 4 cm | 5 cm")]
    [InlineData("3 (-:6) cm", "3 cm | – | 6 cm")]
    [InlineData("3 (, 6) cm", "3 cm | – | 6 cm")]
    [InlineData("51-54 (54-57, 57-60) cm", "51–54 cm | 54–57 cm | 57–60 cm")]
    [InlineData("54–58 cm", "54–58 cm")]
    [InlineData("1.5 (1.6, 1.7) m", "150 cm | 160 cm | 170 cm")]
    [InlineData("[91 cm, 102 cm, 112 cm]", "91 cm | 102 cm | 112 cm")]
    [InlineData("[91, 102, 112] cm", "91 cm | 102 cm | 112 cm")]
    [InlineData("{S: 91 cm, M: 102 cm, L: 112 cm}", "91 cm | 102 cm | 112 cm")]
    [InlineData("{S: 91 cm, L: 112 cm}", "91 cm | – | 112 cm")]
    [InlineData("91 (102, 112) mm", "91 mm | 102 mm | 112 mm")]
    public void Measured_values_are_read_in_every_form_of_the_trade(string said, string values)
    {
        var (facts, bag, _) = Bind($"sizes:\n  finished:\n    bust: {said}\n  names: S (M, L)");

        Assert.Equal("", Said(bag));
        Assert.Equal(values, Values(facts.Finished.Single().Values));
    }

    [Theory]
    [InlineData("91 (102) cm", "PF601 «91 (102) cm» `bust` has 2 values, but the pattern has 3 sizes: S, M and L")]
    [InlineData("\"91 (102) cm\"", "PF601 «91 (102) cm» `bust` has 2 values, but the pattern has 3 sizes: S, M and L")]
    [InlineData("91 (102, 112) cn", "PF125 «cn» `cn` is no unit for `bust`")]
    [InlineData("91 (102, 112)", "PF125 «91» `bust` has no unit")]
    [InlineData("91 (102, 112) g", "PF125 «g» `bust` wants a length; `g` does not measure that")]
    [InlineData("roomy", "PF124 «roomy» `bust` wants a length, but says `roomy`")]
    [InlineData("91 (102, 112) cm plus ease", "PF127 «plus ease» `plus ease` after the value of `bust` is not kept")]
    [InlineData("{S: 91 cm, XL: 102 cm}", "PF613 «XL» `XL` under `bust` is none of the pattern's sizes")]
    [InlineData("99999999999999999999 cm", "PF124 «99999999999999999999 cm» `bust` wants a length, but says `99999999999999999999 cm`")]
    public void A_value_that_cannot_be_made_out_is_found_at_its_place(string said, string expected)
    {
        var (facts, bag, _) = Bind($"sizes:\n  finished:\n    bust: {said}\n    length: 60 cm\n  names: S (M, L)");

        Assert.Equal(expected, Said(bag));
        Assert.Contains(facts.Finished, m => m.Name == "length");
    }

    [Theory]
    [InlineData("20 sts and 28 rows = 10 cm in stockinette on 4.5 mm, blocked", "20 28 rows 10 cm×10 cm stockinette|4.5 mm|True")]
    [InlineData("20 sts and 28 rows = 4 in in stockinette", "20 28 rows 4 in×4 in stockinette||")]
    [InlineData("22 sts and 30 rows = 10 cm over st st", "22 30 rows 10 cm×10 cm st st||")]
    [InlineData("20 sts and 28 rnds = 4 in", "20 28 rnds 4 in×4 in ||")]
    [InlineData("20 sts and 28 rnds = 4 in in St st", "20 28 rnds 4 in×4 in St st||")]
    [InlineData("16 sts = 4 in in garter st", "16  rows 4 in× garter st||")]
    [InlineData("16 hdc and 10½ rnds = 10 cm", "16 10.5 rnds 10 cm×10 cm hdc||")]
    [InlineData("8 mesh squares = 4 in", "8  rows 4 in× mesh squares||")]
    [InlineData("18 sts and 30 rows = 4\" in garter st", "18 30 rows 4 in×4 in garter st||")]
    [InlineData("20 sts x 28 rows to 10 cm on 4 mm needles", "20 28 rows 10 cm×10 cm |4 mm needles|")]
    [InlineData("20 sts, 28 rows = 10 x 12 cm using 4 mm hook, unblocked", "20 28 rows 10 cm×12 cm |4 mm hook|False")]
    [InlineData("20 sts and 28 rows over 10 cm (4 in) in stockinette stitch with US 7 (4.5 mm) needles after blocking", "20 28 rows 10 cm×10 cm stockinette stitch|US 7 (4.5 mm) needles|True")]
    [InlineData("20 sts and 28 rows = 4 in / 10 cm square in pattern, before blocking", "20 28 rows 4 in×4 in pattern||False")]
    [InlineData("20 sts and 28 rows", "20 28 rows × ||")]
    [InlineData("28 rows = 10 cm", " 28 rows ×10 cm ||")]
    [InlineData("Stockinette: 20 sts and 28 rows = 10 cm", "20 28 rows 10 cm×10 cm Stockinette||")]
    [InlineData("With 4 mm needles, 20 sts and 28 rows = 10 cm in rib", "20 28 rows 10 cm×10 cm rib||")]
    [InlineData("24 sts and 36 rnds per 10 cm in stranded colourwork on larger needles, after blocking", "24 36 rnds 10 cm×10 cm stranded colourwork|larger needles|True")]
    public void A_gauge_line_is_read_as_the_trade_writes_it(string line, string expected)
    {
        var (facts, bag, _) = Bind($"gauge: \"{line.Replace("\"", "\\\"", StringComparison.Ordinal)}\"");

        Assert.Equal("", Said(bag));
        var g = facts.Gauges.Single();
        Assert.Equal(expected, FormattableString.Invariant($"{g.Stitches} {g.Rows} {(g.RowsAreRounds ? "rnds" : "rows")} {g.Width}×{g.Height} {g.Stitch}|{g.Tool}|{g.Blocked}"));
    }

    [Fact]
    public void The_british_word_for_gauge_is_read_and_both_together_are_found()
    {
        Assert.Equal(22m, Bind("tension: 22 sts and 30 rows = 10 cm over st st").Facts.Gauges.Single().Stitches);
        Assert.Equal("PF104 «tension» `tension` says the same as `gauge`", Said(Bind("gauge: 22 sts = 10 cm\ntension: 22 sts = 10 cm").Bag));
    }

    [Fact]
    public void A_gauge_may_be_said_to_be_of_no_importance()
    {
        var (facts, bag, _) = Bind("gauge: not important");
        Assert.Equal(("not important", 0, ""), (facts.GaugeRemark, facts.Gauges.Length, Said(bag)));
    }

    [Theory]
    [InlineData("4", 4)]
    [InlineData("worsted", 4)]
    [InlineData("DK (3)", 3)]
    [InlineData("3 light", 3)]
    [InlineData("Light worsted", 3)]
    [InlineData("super bulky", 6)]
    [InlineData("4-ply", 1)]
    [InlineData("4ply", 1)]
    [InlineData("aran weight", 4)]
    [InlineData("lace", 0)]
    [InlineData("fingering / 4 ply", 1)]
    public void Yarn_weights_are_known_by_number_and_by_the_names_of_the_trade(string said, int weight) =>
        Assert.Equal(weight, Bind($"yarn:\n  name: x\n  weight: {said}").Facts.Yarns.Single().WeightClass);

    [Theory]
    [InlineData("100 g = 200 m")]
    [InlineData("200 m per 100 g")]
    [InlineData("100g/200m")]
    [InlineData("100 g (200 m / 219 yd)")]
    [InlineData("200 m, 100 g")]
    public void A_put_up_is_read_in_either_order(string said)
    {
        var yarn = Bind($"yarn:\n  name: x\n  put-up: {said}").Facts.Yarns.Single();
        Assert.Equal(("100 g", "200 m"), (yarn.PutUpMass?.ToString(), yarn.PutUpLength?.ToString()));
    }

    [Theory]
    [InlineData("3 (4, 4) balls", "3 balls | 4 balls | 4 balls")]
    [InlineData("350 (400, 450) m", "350 m | 400 m | 450 m")]
    [InlineData("383 (437, 492) yds", "383 yd | 437 yd | 492 yd")]
    [InlineData("150 (200, 200) g", "150 g | 200 g | 200 g")]
    [InlineData("350 (400, 450) m / 383 (437, 492) yd", "350 m | 400 m | 450 m")]
    [InlineData("approx. 350 m", "350 m")]
    public void Amounts_of_yarn_may_be_lengths_masses_or_balls(string said, string values)
    {
        var (facts, bag, _) = Bind($"sizes: S (M, L)\nyarn:\n  name: x\n  needs: {said}");
        Assert.Equal("", Said(bag));
        Assert.Equal(values, Values(facts.Yarns.Single().Needs));
    }

    [Fact]
    public void Needles_and_hook_are_tools()
    {
        var (facts, bag, _) = Bind("needles: US 7 (4.5 mm)\nhook: 4 mm\ntools:\n  - circular: 80 cm\n  - tapestry needle");
        Assert.Equal("", Said(bag));
        Assert.Equal(["US 7 (4.5 mm)", "4 mm", "circular: 80 cm", "tapestry needle"], facts.Tools.Select(t => t.Text));
    }

    [Theory]
    [InlineData("[k, p, \"st(s)\"]", "k p st sts")]
    [InlineData("k, p, st(s)", "k p st sts")]
    [InlineData("\n  k: knit\n  k2tog: knit 2 together", "k k2tog")]
    [InlineData("\n  - k = knit\n  - p - purl\n  - w&t: wrap and turn", "k p w&t")]
    public void An_abbreviation_list_may_name_or_explain(string said, string forms) =>
        Assert.Equal(forms, string.Join(' ', Bind($"abbreviations: {said}").Facts.Abbreviations!.Value.SelectMany(a => a.Forms)));

    [Theory]
    [InlineData("titel: x", "PF120 «titel» `titel` is no key of the header", "title")]
    [InlineData("gauge: {stich: garter, stitches: 20}", "PF120 «stich» `stich` is no key of `gauge`", "gauge.stitch")]
    [InlineData("yarn: [{name: x, wieght: 4}]", "PF120 «wieght» `wieght` is no key of `yarn`", "yarn.weight")]
    [InlineData("sizes: {names: S, finishd: {a: 1 cm}}", "PF120 «finishd» `finishd` is no key of `sizes`", "sizes.finished")]
    [InlineData("sample: {size: S, useed: 1 g}", "PF120 «useed» `useed` is no key of `sample`", "sample.used")]
    [InlineData("stitches: {MB: {how: x, makse: 1}}", "PF120 «makse» `makse` is no key of `stitches`", "stitches.makes")]
    public void An_unknown_key_is_found_at_every_level_with_the_nearest_known_one(string header, string said, string unread)
    {
        var (facts, bag, _) = Bind(header);
        Assert.Equal(said, Said(bag));
        Assert.Contains(unread, facts.Unread);
        Assert.NotNull(bag.ToSorted()[0].Fix);
    }

    [Fact]
    public void One_bad_value_does_not_hide_the_others()
    {
        var (facts, bag, _) = Bind("title: [a]\ncraft: weaving\nterms: french\nlevel: hard\nsizes: S (M)\nneeds: 3\nnumbers: {a: x, b: 2}\ndesigner: Ida Example");

        Assert.Equal(
            """
            PF121 «[a]» `title` wants one text, but here stands a list
            PF122 «weaving» `weaving` is no `craft` that is known here
            PF122 «french» `french` is no `terms` that is known here
            PF123 «hard» `hard` is no `level` that is known here
            PF120 «needs» `needs` is no key of the header
            PF124 «x» `a` wants a number, but says `x`
            """,
            Said(bag));
        Assert.Equal(("Ida Example", "b", 2), (facts.Designer, facts.Numbers.Single().Name, facts.Sizes.Count));
    }

    [Fact]
    public void Places_hold_with_windows_line_ends_and_signs_outside_the_basic_plane()
    {
        var text = "---\r\ntitle: \"🧶🧶 hat\"\r\n# 🧶 a remark\r\nsizes:\r\n  names: S (M)\r\n  finished:\r\n    🧶 brim: 48 (52, 56) cm\r\n---\r\n";
        var (facts, bag, source) = Bind(text);

        Assert.Equal("🧶🧶 hat", facts.Title?.Value);
        Assert.Equal("\"🧶🧶 hat\"", source.ToString(facts.Title!.Origin));
        Assert.Equal("PF601 «48 (52, 56) cm» `🧶 brim` has 3 values, but the pattern has 2 sizes: S and M", Said(bag));
        Assert.Equal(new LinePosition(7, 14), source.Lines.PositionOf(bag.ToSorted()[0].Span.Start));
    }

    [Fact]
    public void Keys_are_read_whatever_their_letters_case_and_with_blanks_for_hyphens()
    {
        var (facts, bag, _) = Bind("Title: Harbour hat\nLevel: Easy\nLevel reason: one cable\nTerms: US");
        Assert.Equal("", Said(bag));
        Assert.Equal(("Harbour hat", Level.Easy, "one cable", Dialect.Us), (facts.Title?.Value, facts.Level?.Value, facts.LevelReason, facts.Terms?.Value));
    }

    [Theory]
    [InlineData("6.4 in wide (unstretched), 60 in long", "wide (unstretched=6.4 in; long=60 in")]
    [InlineData("20 cm wide and tall", "wide and tall=20 cm")]
    [InlineData("17½ (19¼, 20¾) in", "finished=17.5 in | 19.25 in | 20.75 in")]
    public void Finished_measurements_may_stand_in_one_line(string said, string expected)
    {
        var (facts, bag, _) = Bind($"sizes: S (M, L)\nfinished: {said}");
        Assert.Equal("", Said(bag));
        Assert.Equal(expected, string.Join("; ", facts.Finished.Select(m => $"{m.Name}={Values(m.Values)}")));
    }

    [Fact]
    public void Two_sizes_of_one_name_are_found() => Assert.Equal("PF610 «m» two sizes are called `m`", Said(Bind("sizes: S (M, m)").Bag));

    [Fact]
    public void A_yarn_in_one_line_is_read_by_what_its_parts_look_like()
    {
        var (facts, bag, source) = Bind("sizes: S (M, L)\nyarn: Quayside Wool, DK, 80% wool, 20% silk, 50 g = 120 m, 2 (2, 3) balls");
        var yarn = facts.Yarns.Single();
        Assert.Equal("", Said(bag));
        Assert.Equal(("Quayside Wool", 3, "80% wool, 20% silk", "50 g", "120 m", "2 balls | 2 balls | 3 balls"), (yarn.Name, yarn.WeightClass, yarn.Fibre, yarn.PutUpMass?.ToString(), yarn.PutUpLength?.ToString(), Values(yarn.Needs)));
        Assert.Equal("2 (2, 3) balls", source.ToString(yarn.NeedsOrigin!.Value));
        Assert.Equal("PF127 «or more» `or more` after the amount of yarn is not kept", Said(Bind("yarn: Quayside Wool, 2 balls or more").Bag));
    }

    [Theory]
    [InlineData("10 cm (4 in)", "")]
    [InlineData("38 cm / 15 in", "")]
    [InlineData("1 cm (½ in)", "")]
    [InlineData("91 cm / 32 in", "PF614 «32 in» `bust` is 91 cm, but 32 in is 81.3 cm")]
    public void A_value_in_two_units_must_agree_with_itself_but_for_rounding(string said, string expected) =>
        Assert.Equal(expected, Said(Bind($"finished:\n  bust: {said}").Bag));

    [Theory]
    [InlineData("babies", Audience.Babies)]
    [InlineData("Baby", Audience.Babies)]
    [InlineData("men and women", Audience.Adults)]
    [InlineData("unisex", Audience.Anyone)]
    public void Whom_a_piece_is_for_may_be_said_as_makers_say_it(string said, Audience meant) =>
        Assert.Equal(meant, Bind($"audience: {said}").Facts.Audience!.Value);
}
