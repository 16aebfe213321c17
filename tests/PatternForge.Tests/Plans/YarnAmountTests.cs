using PatternForge.Core.Plans;

namespace PatternForge.Tests.Plans;

public class YarnAmountTests
{
    // The worked examples of the doc comments; arithmetic where they say so.
    [Fact]
    public void Amounts_follow_the_swatch()
    {
        Assert.Equal(480, YarnAmount.ByStitches(40_000, 2_000, 24, null)!.Metres);
        Assert.Equal(255.67m, Math.Round(YarnAmount.ByArea(1534, 6, null, 1)!.Grams!.Value, 2));
        Assert.Equal(400, YarnAmount.Stitches(90, 110, 4));
        Assert.Null(YarnAmount.ByArea(0, 6, 1, 1));
        Assert.Null(YarnAmount.ByStitches(100, 10, null, null));
    }

    [Fact]
    public void A_margin_balls_and_a_substitute_follow_from_the_metres()
    {
        var need = YarnAmount.ByStitches(40_000, 2_000, 24, null)!.WithMargin(10);
        Assert.Equal((528m, YarnAmount.ErrorByStitches), (need.Metres!.Value, need.LikelyError));
        Assert.Equal(264, need.Filled(200).Grams);
        Assert.Equal((6, 6, 5), (YarnAmount.Balls(1150, 200), YarnAmount.Balls(1001, 200), YarnAmount.Balls(1000, 200)));
        Assert.Equal(500, YarnAmount.SubstituteGrams(1150, 230));
        Assert.Equal(200, Math.Round(YarnAmount.HeldTogether(400, 400)!.Value, 6));
        Assert.Equal(2300, YarnAmount.MetresOfStrands(1150, 2));
        Assert.Null(YarnAmount.Balls(1150, 0));
        Assert.Null(YarnAmount.HeldTogether(400, 0));
    }

    // A medium sweater of 9900 sq cm in double knitting takes 1000 to 1400 m: common practice.
    [Fact]
    public void A_rough_amount_is_near_what_the_trade_takes_and_says_how_far_it_may_be_out()
    {
        var rough = YarnAmount.Rough(9900, 22, 30)!;
        Assert.Equal(1217.7m, Math.Round(rough.Metres!.Value, 1));
        Assert.InRange(rough.Metres.Value, 1000, 1400);
        Assert.Equal(YarnAmount.ErrorRough, rough.LikelyError);
        Assert.True(rough.Source.IsFromMemory);
        Assert.InRange(YarnAmount.Rough(9900, yarnClass: 3)!.Metres!.Value, 1000, 1400);
        Assert.InRange(YarnAmount.Rough(9900, yarnClass: 3)!.Grams!.Value, 400, 560);
        Assert.Equal([false, true, true, true, true, true, true, false], Enumerable.Range(0, 8).Select(c => YarnAmount.Rough(9900, c) is not null));
    }

    // The finer the yarn the more metres and the fewer grams.
    [Fact]
    public void A_finer_class_takes_more_metres()
    {
        var needs = Enumerable.Range(1, 6).Select(c => YarnAmount.Rough(9900, c)!).ToArray();
        Assert.Equal(needs.OrderByDescending(n => n.Metres), needs);
        Assert.Equal(needs.OrderBy(n => n.Grams), needs);
    }

    [Fact]
    public void Factors_say_from_memory_and_hold_their_usual_value() => Assert.All(YarnAmount.Factors, f =>
    {
        Assert.InRange(f.Usual, f.Least, f.Most);
        Assert.True(f.Source.IsFromMemory || f.Usual == 1);
    });
}
