using PatternForge.Core.Reference;

namespace PatternForge.Tests.Model;

public class YarnWeightTests
{
    // Craft Yarn Council, Standard Yarn Weight System, as printed in Crochet World, October 2018, p. 64: classes and kinds of yarn.
    [Theory]
    [InlineData(0, "Lace")]
    [InlineData(1, "Super Fine", "sock", "fingering", "baby")]
    [InlineData(2, "Fine", "sport")]
    [InlineData(3, "Light", "DK", "light worsted")]
    [InlineData(4, "Medium", "worsted", "afghan", "aran")]
    [InlineData(5, "Bulky", "chunky", "craft", "rug")]
    [InlineData(6, "Super Bulky", "super chunky", "roving")]
    [InlineData(7, "Jumbo")]
    public void Classes_have_the_names_and_kinds_of_the_standard(int weight, params string[] names) =>
        Assert.All(names, name => Assert.Equal(weight, YarnWeight.Find(name)?.Class));

    [Fact]
    public void No_name_belongs_to_two_classes()
    {
        var names = YarnWeight.All.SelectMany(w => w.Kinds.Add(w.Name)).ToArray();
        Assert.Equal(names.Length, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Theory]
    [InlineData("worsted weight yarn", true)]
    [InlineData("4", true)]
    [InlineData("DK", true)]
    [InlineData("Quayside DK", false)]
    [InlineData("Quayside Wool", false)]
    public void A_weight_alone_is_told_from_a_name(string said, bool alone) => Assert.Equal(alone, YarnWeight.IsNothingElse(said));

    [Theory]
    [InlineData("thickish")]
    [InlineData("")]
    [InlineData("9")]
    public void What_nobody_knows_is_no_weight(string said) => Assert.Null(YarnWeight.Find(said));
}
