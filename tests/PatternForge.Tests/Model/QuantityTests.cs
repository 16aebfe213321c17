using PatternForge.Core.Model;

namespace PatternForge.Tests.Model;

public class QuantityTests
{
    // International yard and pound agreement, 1959.
    [Theory]
    [InlineData("in", "cm", 1, 2.54)]
    [InlineData("yd", "m", 1, 0.9144)]
    [InlineData("oz", "g", 1, 28.349523125)]
    [InlineData("cm", "mm", 1, 10)]
    [InlineData("kg", "g", 1, 1000)]
    public void Units_convert_by_their_exact_definitions(string from, string to, decimal value, decimal expected) =>
        Assert.Equal(expected, new Quantity(value, Unit.Find(from)!).To(Unit.Find(to)!).Value);

    [Theory]
    [InlineData("Inches", "in")]
    [InlineData("\"", "in")]
    [InlineData("CM", "cm")]
    [InlineData("yds", "yd")]
    [InlineData("grams", "g")]
    [InlineData("metres", "m")]
    [InlineData("meters", "m")]
    public void Units_are_known_by_their_spellings(string said, string symbol) => Assert.Equal(symbol, Unit.Find(said)?.Symbol);

    [Fact]
    public void A_range_keeps_its_upper_end_in_other_units()
    {
        var inches = new Quantity(25.4m, Unit.Centimetre) { UpTo = 50.8m }.To(Unit.Inch);
        Assert.Equal("10–20 in", inches.ToString());
    }

    [Fact]
    public void A_bare_number_prints_without_a_unit() => Assert.Equal("12.5", new Quantity(12.50m, Unit.None).ToString());

    [Fact]
    public void A_length_cannot_be_told_in_grams() => Assert.Throws<ArgumentException>(() => new Quantity(1, Unit.Centimetre).To(Unit.Gram));
}
