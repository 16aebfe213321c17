using System.Globalization;
using PatternForge.Core.Checks;

namespace PatternForge.Tests.Checks;

public class MeasurementOutOfRunTests
{
    private static int? BreakOf(string values) => MeasurementOutOfRun.BreakOf([.. values.Split(' ').Select(v => decimal.Parse(v, CultureInfo.InvariantCulture))]);

    [Theory]
    [InlineData("91 102 112")]
    [InlineData("91 92 112 113 150")]
    [InlineData("91 91 91 102")]
    [InlineData("112 102 91")]
    [InlineData("91 91")]
    [InlineData("91 80")]
    [InlineData("45 45 46 46 45.5")]
    [InlineData("44 45 45 44 43")]
    [InlineData("86 91 97 71 76 81")]
    [InlineData("3 4 4 5 5")]
    public void Values_that_rise_stand_still_or_fall_steadily_are_normal_and_so_are_two_groups_of_sizes(string values) => Assert.Null(BreakOf(values));

    [Theory]
    [InlineData("91 102 98 122", 2)]
    [InlineData("88 96 140 112", 3)]
    [InlineData("91 120 100", 2)]
    [InlineData("122 98 102 91", 2)]
    [InlineData("20 30 22 24 26", 2)]
    [InlineData("91 102 112 12.2 132", 3)]
    public void A_value_that_turns_against_the_run_is_found(string values, int at) => Assert.Equal(at, BreakOf(values));
}
