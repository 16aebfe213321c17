using CsCheck;
using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

public class MeasuresTests
{
    // Body sizes as printed in inches and centimetres side by side (Craft Yarn Council, Standard Body Measurements: bust 36 in = 91.5 cm).
    [Theory]
    [InlineData(36, "91.5")]
    [InlineData(40, "101.5")]
    [InlineData(16, "40.5")]
    [InlineData(7.5, "19")]
    public void Inches_are_told_in_centimetres_to_the_nearest_half(double inches, string expected) =>
        Assert.Equal(expected, Measures.Number(HandMade.In((decimal)inches), Unit.Centimetre));

    // Common practice: inches to the nearest quarter.
    [Theory]
    [InlineData(10, "4")]
    [InlineData(91, "35¾")]
    [InlineData(51, "20")]
    [InlineData(12, "4¾")]
    [InlineData(2.5, "1")]
    [InlineData(1, "⅜")]
    [InlineData(0.1, "⅛")]
    [InlineData(0, "0")]
    public void Centimetres_are_told_in_inches_to_the_nearest_quarter(double cm, string expected) =>
        Assert.Equal(expected, Measures.Number(HandMade.Cm((decimal)cm), Unit.Inch));

    [Theory]
    [InlineData(7.5, "7½")]
    [InlineData(7.3, "7.3")]
    [InlineData(7, "7")]
    [InlineData(0.75, "¾")]
    public void Inches_that_were_typed_stay_as_they_were(double inches, string expected) =>
        Assert.Equal(expected, Measures.Number(HandMade.In((decimal)inches), Unit.Inch));

    [Theory]
    [InlineData("-7 cm of ease", "−7 cm of ease")]
    [InlineData("snug (-3 cm)", "snug (−3 cm)")]
    [InlineData("5-8 cm of ease", "5-8 cm of ease")]
    [InlineData(null, null)]
    public void A_minus_is_no_hyphen(string? said, string? printed) => Assert.Equal(printed, Wording.WithMinus(said));

    [Fact]
    public void Centimetres_that_were_typed_stay_as_they_were() =>
        Assert.Equal("53.4", Measures.Number(HandMade.Cm(53.4m), Unit.Centimetre));

    [Fact]
    public void A_range_stays_a_range() =>
        Assert.Equal("54–58 cm (21¼–22¾ in)", Measures.Both(HandMade.Cm(54) with { UpTo = 58 }));

    // 50 g is sold as 1¾ oz, 100 g as 3½ oz (common practice).
    [Theory]
    [InlineData(50, "1¾")]
    [InlineData(100, "3½")]
    [InlineData(25, "⅞")]
    public void Grams_are_told_in_ounces(double grams, string expected) =>
        Assert.Equal(expected, Measures.Number(HandMade.G((decimal)grams), Unit.Ounce));

    [Fact]
    public void The_other_unit_is_never_off_by_more_than_its_step() =>
        Gen.Decimal[0.3m, 500m].Sample(cm =>
        {
            var quantity = HandMade.Cm(cm);
            var inches = Parse(Measures.Number(quantity, Unit.Inch));
            return Math.Abs(inches - (cm / 2.54m)) <= 0.125m;
        });

    [Fact]
    public void No_amount_is_too_large_or_too_small_to_print() =>
        Gen.Decimal.Select(Gen.Int[0, Unit.All.Count - 1]).Sample((value, unit) =>
        {
            var quantity = new Quantity(value, Unit.All[unit]);
            Assert.NotEmpty(Measures.Both(quantity));
            Assert.NotNull(YarnBuilder.Build(new Yarn(default) { PutUpLength = quantity, PutUpMass = quantity, Needs = PerSize.Shared<Quantity?>(quantity) }, 1));
            Assert.NotNull(GaugeBuilder.Build(new Gauge(default) { Stitches = value, Rows = value, Width = quantity, Height = quantity }));
        });

    [Fact]
    public void The_put_up_gives_metres_per_gram_and_yards_per_ounce()
    {
        var yarn = YarnBuilder.Build(new Yarn(default) { PutUpMass = HandMade.G(100), PutUpLength = HandMade.M(200) }, 1);
        Assert.Equal("100 g = 200 m (3½ oz = 219 yd)", yarn.PutUp);
        Assert.Equal("2.0 m per g (62 yd per oz)", yarn.Grist);
    }

    [Fact]
    public void Amounts_are_told_in_every_unit_that_the_put_up_allows_and_rounded_up()
    {
        var yarn = new Yarn(default) { PutUpMass = HandMade.G(50), PutUpLength = HandMade.M(115), Needs = HandMade.Each(HandMade.M, 115, 116) };
        var amounts = YarnBuilder.Amounts(new PatternFacts { Sizes = new SizeSet(["S", "L"]), Yarns = [yarn] })!;
        Assert.Equal(["m", "yd", "g", "balls", "m left"], amounts.Units.ToArray());
        Assert.Equal(["115", "126", "50", "1", "0"], amounts.Rows[0].Cells.ToArray());
        Assert.Equal(["116", "127", "51", "2", "114"], amounts.Rows[1].Cells.ToArray());
    }

    [Fact]
    public void Skeins_are_called_what_the_designer_calls_them()
    {
        var yarn = new Yarn(default) { PutUpMass = HandMade.G(100), PutUpLength = HandMade.M(400), Needs = PerSize.Shared<Quantity?>(new Quantity(1, new Unit("skein", Dimension.Count, 1))) };
        Assert.Equal("400 m, 438 yd, 100 g, 1 skein", YarnBuilder.Build(yarn, 1).Needs);
    }

    [Theory]
    [InlineData(3, "DK", "DK, light (3)")]
    [InlineData(3, "3", "light (3)")]
    [InlineData(3, "light", "light (3)")]
    [InlineData(3, "DK (3)", "DK (3)")]
    [InlineData(3, null, "light (3)")]
    [InlineData(null, "thread", "thread")]
    [InlineData(null, null, null)]
    public void A_weight_is_told_by_the_designers_word_and_its_class(int? weightClass, string? written, string? expected) =>
        Assert.Equal(expected, Wording.Weight(weightClass, written));

    [Fact]
    public void A_gauge_reads_as_the_trade_writes_it()
    {
        var gauge = new Gauge(default) { Stitches = 20, Rows = 28, Width = HandMade.Cm(10), Height = HandMade.Cm(10), Stitch = "stockinette", Tool = "4.5 mm", Blocked = true };
        Assert.Equal("20 sts and 28 rows = 10 × 10 cm (4 × 4 in) in stockinette on 4.5 mm, after blocking", GaugeBuilder.Build(gauge).Sentence);
        Assert.Equal("20 sts = 10 cm (4 in)", GaugeBuilder.Build(new Gauge(default) { Stitches = 20, Width = HandMade.Cm(10) }).Sentence);
        Assert.Equal("28 rounds = 4 in", GaugeBuilder.Build(new Gauge(default) { Rows = 28, RowsAreRounds = true, Height = HandMade.In(4) }).Sentence.Replace("10 cm (4 in)", "4 in", StringComparison.Ordinal));
        Assert.Equal("", GaugeBuilder.Build(new Gauge(default)).Sentence);
    }

    private static decimal Parse(string inches)
    {
        var eighths = inches[^1] switch { '⅛' => 1, '¼' => 2, '⅜' => 3, '½' => 4, '⅝' => 5, '¾' => 6, '⅞' => 7, _ => 0 };
        var whole = eighths == 0 ? inches : inches[..^1];
        return (whole.Length == 0 ? 0 : decimal.Parse(whole, System.Globalization.CultureInfo.InvariantCulture)) + (eighths / 8m);
    }
}
