using System.Globalization;
using PatternForge.Core.Sizing;

namespace PatternForge.Tests.Sizing;

public class InterpolationTests
{
    [Theory]
    [InlineData("80 88 96", 3, "104", "one step on, a multiple of 8")]
    [InlineData("82 90 98", 3, "106", "one step on, a multiple of 8 plus 2")]
    [InlineData("82 90 98", 0, "74", "one step on, a multiple of 8 plus 2")]
    [InlineData("11 13 13 15 15", 5, "15", "as its neighbour, odd")]
    [InlineData("20 20 20", 2, "20", "the same in all sizes")]
    [InlineData("80 96 112", 1, "88", "halfway, a multiple of 8; all values so far are a multiple of 16")]
    [InlineData("11 12 13", 1, "12", "as its neighbour: no number between the two is a whole number")]
    [InlineData("3 2 1", 3, "1", "one step on")]
    [InlineData("2 – –", 3, "–", "neither neighbour works this")]
    [InlineData("2 4 –", 3, "–", "the neighbour works none of this")]
    public void Whole_numbers_keep_what_all_have_in_common(string values, int index, string expected, string why)
    {
        var list = List(values);
        var value = Interpolation.Of(list, NewPlace.At(index, list.Length), "", isYarn: false, keepsAll: false);
        Assert.Equal((expected, why), (Figure(value.Number), value.Why));
    }

    [Theory]
    [InlineData("19 20.5 23 24.5", 4, "cm", false, "26")]
    [InlineData("22.75 23.25 23.5", 3, "in", false, "23.75")]
    [InlineData("90 105 125", 3, "m", true, "145")]
    [InlineData("90 105 125", 1, "m", true, "100")]
    [InlineData("91 102", 1, "cm", false, "97")]
    public void Measurements_keep_the_steps_they_are_told_in(string values, int index, string unit, bool isYarn, string expected)
    {
        var list = List(values);
        Assert.Equal(expected, Figure(Interpolation.Of(list, NewPlace.At(index, list.Length), unit, isYarn, keepsAll: false).Number));
    }

    [Fact]
    public void All_that_the_values_share_can_be_kept_even_where_the_value_is_then_a_neighbours()
    {
        var value = Interpolation.Of(List("80 88 96"), NewPlace.At(1, 3), "", isYarn: false, keepsAll: true);
        Assert.Equal(("88", true), (Figure(value.Number), value.IsOpen));
    }

    private static SizeListValue[] List(string values) =>
        [.. values.Split(' ').Select((v, i) => new SizeListValue(i, default, default, v == "–" ? null : decimal.Parse(v, CultureInfo.InvariantCulture), null))];

    private static string Figure(decimal? value) => value?.ToString("0.##", CultureInfo.InvariantCulture) ?? "–";

    [Theory]
    [InlineData("0 2 0 2", 4, 0)]
    [InlineData("0 2 0 2 0", 5, 2)]
    [InlineData("0 2 0 2", 0, 2)]
    public void What_goes_to_and_fro_goes_on_so(string values, int index, int expected)
    {
        var list = List(values);
        var value = Interpolation.Of(list, NewPlace.At(index, list.Length), "", isYarn: false, keepsAll: false);

        Assert.Equal(expected, value.Number);
        Assert.True(value.IsOpen);
    }
}
