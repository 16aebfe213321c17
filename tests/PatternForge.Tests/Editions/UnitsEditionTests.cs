using CsCheck;
using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Editions;

/// <summary>Lengths and amounts in other units, in the steps of the trade.</summary>
public class UnitsEditionTests
{
    private static string Of(string line, string edition) =>
        EditionsOf.Text($"---\ntitle: Vest\nsizes: S (M, L)\nnumbers:\n  toe: [15 cm, 16 cm, 17 cm]\n  tail: 20 cm\n  rib: [12, 14, 16]\n---\n\n## Back\n\n{line}\n", edition).Split("## Back\n\n")[1].Trim();

    [Theory]
    [InlineData("Work even until piece measures 15 cm, ending with a WS row.", "Work even until piece measures 6 in, ending with a WS row.")]
    [InlineData("Work even until piece measures 34 (35, 36) cm from cast-on edge.", "Work even until piece measures 13½ (13¾, 14¼) in from cast-on edge.")]
    [InlineData("Work even until piece measures 20/22/24 cm.", "Work even until piece measures 7¾/8¾/9½ in.")]
    [InlineData("Work even until foot measures {toe} from heel.", "Work even until foot measures 6 (6¼, 6¾) in from heel.")]
    [InlineData("Cut the yarn, leaving a tail of {tail}.", "Cut the yarn, leaving a tail of 7¾ in.")]
    [InlineData("Knit {rib} rows.", "Knit {rib} rows.")]
    [InlineData("Knit every row for 6 cm in garter stitch.", "Knit every row for 2¼ inches in garter stitch.")]
    [InlineData("Work 5 cm (2 in) in rib.", "Work 2 in in rib.")]
    [InlineData("It is 10 to 12 cm deep, or 10-12 cm.", "It is 4 to 4¾ in deep, or 4-4¾ in.")]
    [InlineData("A ball of 100 g has 200 m and 2.6 m of it are left.", "A ball of 3½ oz has 219 yd and 3 yd of it are left.")]
    [InlineData("Leave an 8 cm gap and a 20 cm tail.", "Leave a 3¼ in gap and a 7¾ in tail.")]
    [InlineData("Pin it out to 15 x 20 cm.", "Pin it out to 6 x 7¾ in.")]
    [InlineData("Each is 2-2.2 cm wide.", "Each is ¾-⅞ in wide.")]
    [InlineData("Use a 4 mm needle and two 15 mm buttons.", "Use a 4 mm needle and two 15 mm buttons.")]
    [InlineData("Use a 4 mm circular needle, 80 cm long.", "Use a 4 mm circular needle, 31½ in long.")]
    [InlineData("A circle of 40 cm circular needles.", "A circle of 16 in circular needles.")]
    public void Centimetres_become_inches(string line, string expected) => Assert.Equal(expected, Of(line, "inches"));

    [Theory]
    [InlineData("Work even until piece measures 6 in, ending with a WS row.", "Work even until piece measures 15 cm, ending with a WS row.")]
    [InlineData("Work even until piece measures 6\" from edge.", "Work even until piece measures 15 cm from edge.")]
    [InlineData("Work even until piece measures 13½ (13¾, 14¼) inches.", "Work even until piece measures 34.5 (35, 36) centimetres.")]
    [InlineData("Work even until piece measures 5 1/2 in. from edge.", "Work even until piece measures 14 cm from edge.")]
    [InlineData("Row 1: Sc 2 in next st, 3 in last st.", "Row 1: Sc 2 in next st, 3 in last st.")]
    [InlineData("Row 1: Sl 2 m, k to 3 sts before m.", "Row 1: Sl 2 m, k to 3 sts before m.")]
    [InlineData("Work 5 cm [2 in] in rib.", "Work 5 cm in rib.")]
    [InlineData("Work 2 in (5 cm) in rib.", "Work 5 cm in rib.")]
    [InlineData("It is two inches deep and takes 50 yards of it.", "It is 5 centimetres deep and takes 46 metres of it.")]
    [InlineData("A 16-inch circular needle and a 5-yard end.", "A 40-centimetre circular needle and a 4.5-metre end.")]
    public void Inches_become_centimetres(string line, string expected) => Assert.Equal(expected, Of(line, "metric"));

    [Theory]
    [InlineData("Work even until piece measures 15 cm, ending with a WS row.", "Work even until piece measures 15 cm (6 in), ending with a WS row.")]
    [InlineData("Work even until piece measures 34 (35, 36) cm.", "Work even until piece measures 34 (35, 36) cm / 13½ (13¾, 14¼) in.")]
    [InlineData("Work even until foot measures {toe}.", "Work even until foot measures {toe} / 6 (6¼, 6¾) in.")]
    [InlineData("Work 5 cm (2 in) in rib.", "Work 5 cm (2 in) in rib.")]
    [InlineData("Block it (to 10 cm if it is small).", "Block it (to 10 cm / 4 in if it is small).")]
    public void Both_stand_side_by_side(string line, string expected) => Assert.Equal(expected, Of(line, "both-units"));

    [Fact]
    public void Addresses_and_files_stay() =>
        Assert.Equal("See [the film](https://example.com/10-cm/5 cm) at `5 cm`.", Of("See [the film](https://example.com/10-cm/5 cm) at `5 cm`.", "inches"));

    [Fact]
    public void The_figures_of_the_header_stay_and_the_page_tells_them_in_one_system()
    {
        const string Header = "---\ntitle: Vest\nsizes:\n  names: S (M, L)\n  finished: {bust: 80 (90, 100) cm}\n  ease: 5 cm of positive ease\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked\nyarn: {name: Wool, put-up: 100 g = 200 m, needs: 400 (450, 500) m}\n---\n\n## Back\n\nCO 80 (90, 100) sts.\n";
        var plain = EditionsOf.Compile(Header);
        var made = EditionsOf.In(plain, "inches").Compilation!;
        Assert.Equal(Header, made.Source.Text);
        var view = ViewBuilder.Build(made);
        Assert.Equal("31½ (35½, 39¼) in", view.Sizes!.Measures[0].Metric);
        Assert.Null(view.Sizes.Measures[0].Imperial);
        Assert.Equal("2 in of positive ease", view.Sizes.Ease);
        Assert.Equal("20 sts and 28 rows = 4 × 4 inches in stockinette on 4 mm, after blocking", view.Gauges[0].Sentence);
        Assert.Equal("3½ oz = 219 yd", view.Yarns[0].PutUp);
        Assert.Equal("62 yd per oz", view.Yarns[0].Grist);
        Assert.Equal("yd, oz, balls, yd left", string.Join(", ", view.Amounts!.Units));

        var metric = ViewBuilder.Build(EditionsOf.In(plain, "metric").Compilation!);
        Assert.Equal("100 g = 200 m", metric.Yarns[0].PutUp);
        Assert.Equal("80 (90, 100) cm", metric.Sizes!.Measures[0].Metric);
        Assert.Null(metric.Gauges[0].OverInches);
        Assert.Equal("m, g, balls, m left", string.Join(", ", metric.Amounts!.Units));
    }

    [Fact]
    public void A_length_there_and_back_is_off_by_no_more_than_the_steps() =>
        Gen.Int[2, 4000].Sample(halves =>
        {
            var cm = halves / 20m;
            var inches = TradeSteps.Number(new Quantity(cm, Unit.Centimetre), Unit.Inch);
            var told = Of($"Work even until piece measures {inches} inches.", "metric");
            var back = decimal.Parse(told["Work even until piece measures ".Length..].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
            Assert.InRange(back - cm, cm < 1.2m ? -0.26m : -0.6m, cm < 1.2m ? 0.26m : 0.6m);
        });
}
