using PatternForge.Core.Reference;

namespace PatternForge.Tests.Reference;

public class YarnWeightRangesTests
{
    // Craft Yarn Council, Standard Yarn Weight System: crochet as printed in Crochet World, October 2018, p. 64, knitting as quoted in the trade.
    [Theory]
    [InlineData(1, 27, 32, 21, 32)]
    [InlineData(2, 23, 26, 16, 20)]
    [InlineData(3, 21, 24, 12, 17)]
    [InlineData(4, 16, 20, 11, 14)]
    [InlineData(5, 12, 15, 8, 11)]
    [InlineData(6, 7, 11, 6, 9)]
    [InlineData(7, 1, 6, 1, 5)]
    public void The_published_stitches_are_accepted(int weight, int knitLeast, int knitMost, int crochetLeast, int crochetMost)
    {
        var range = YarnWeightRanges.All[weight];
        Assert.Equal(weight, range.Class);
        Assert.All([knitLeast, knitMost], n => Assert.True(range.KnitStitches.Holds(n)));
        Assert.All([crochetLeast, crochetMost], n => Assert.True(range.CrochetStitches.Holds(n)));
    }

    // Other printings: class 6 as 6 to 11 stitches and crochet 5 to 9 before there was a class 7; class 7 in crochet as 6 or fewer.
    [Fact]
    public void Other_printings_are_accepted_too()
    {
        Assert.True(YarnWeightRanges.All[6].KnitStitches.Holds(6));
        Assert.True(YarnWeightRanges.All[6].CrochetStitches.Holds(5));
        Assert.True(YarnWeightRanges.All[7].CrochetStitches.Holds(6));
        Assert.True(YarnWeightRanges.All[7].Hooks.Holds(15));
        Assert.True(YarnWeightRanges.All[1].KnitStitches.Holds(36));
    }

    [Fact]
    public void A_heavier_class_has_fewer_stitches_thicker_tools_and_less_length()
    {
        foreach (var (lighter, heavier) in YarnWeightRanges.All.Zip(YarnWeightRanges.All.Skip(1)))
        {
            Assert.True(!(lighter.KnitStitches.Most < heavier.KnitStitches.Most) && !(lighter.KnitStitches.Least < heavier.KnitStitches.Least));
            Assert.True(!(lighter.Needles.Least > heavier.Needles.Least) && !(lighter.Needles.Most > heavier.Needles.Most));
            Assert.True(!(lighter.Hooks.Least > heavier.Hooks.Least) && !(lighter.Hooks.Most > heavier.Hooks.Most));
            Assert.True(!(lighter.MetresPer100Grams.Least < heavier.MetresPer100Grams.Least) && !(lighter.MetresPer100Grams.Most < heavier.MetresPer100Grams.Most));
        }
    }
}
