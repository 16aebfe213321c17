using System.Collections.Immutable;
using PatternForge.Core.Planning;

namespace PatternForge.Tests.Planning;

public class SizedLinesTests
{
    private static readonly ImmutableArray<string> Names = ["S", "M", "L"];

    private static string Of(params string[] sizes) => string.Join('\n', SizedLines.Of([.. sizes.Select(s => s.Split('\n', StringSplitOptions.RemoveEmptyEntries).ToImmutableArray())], Names));

    [Theory]
    [InlineData("K5.", "K6.", "K7.", "K5 (6, 7).")]
    [InlineData("K5.", "K5.", "K5.", "K5.")]
    [InlineData("Rep Row 1 once.", "Rep Row 1 twice.", "Rep Row 1 4 times.", "Rep Row 1 1 (2, 4) times.")]
    [InlineData("Work 1 row even.", "Work 3 rows even.", "Work 5 rows even.", "Work 1 (3, 5) rows even.")]
    [InlineData("K1 st, k2tog. (1 st)", "K2 sts, k2tog. (1 st)", "K3 sts, k2tog. (1 st)", "K1 (2, 3) sts, k2tog. (1 st)")]
    [InlineData("Dec every other row twice.", "Dec every 4th row twice.", "Dec every 6th row twice.", "Dec every 2nd (4th, 6th) row twice.")]
    [InlineData("A 1.\nB 2.", "A 1.", "A 1.\nB 3.", "A 1.\nSizes S and L only: B 2 (3).")]
    [InlineData("A 1.\nB 2.\nC 3.", "", "A 1.\nB 2.\nC 3.", "Sizes S and L only: A 1.\nSizes S and L only: B 2.\nSizes S and L only: C 3.")]
    [InlineData("Rnd 1: K4.\nRnd 2: K5.", "Rnd 1: K5.", "Rnd 1: K4.\nRnd 2: K6.", "Sizes S and L only: Next rnd: K4.\nNext rnd: K5 (5, 6).")]
    public void What_differs_by_numbers_becomes_a_list(string s, string m, string l, string expected) => Assert.Equal(expected, Of(s, m, l));

    [Fact]
    public void Sizes_with_little_in_common_are_told_one_after_the_other() =>
        Assert.Equal("Size S only: A 1.\nSize S only: B 2.\nSize M only: B 1.\nSize M only: C 2.\nSize L only: C 9.\nSize L only: A 4.", Of("A 1.\nB 2.", "B 1.\nC 2.", "C 9.\nA 4."));

    [Theory]
    [InlineData("A 1.", "A 2.", "A 3.", "B 1.", "B 2.", "Sizes XS to M only: A 1 (2, 3).\nSizes L and XL only: B 1 (2).")]
    [InlineData("A 1.", "B 2.", "A 3.", "A 1.", "B 2.", "Sizes XS, M and L only: A 1 (3, 1).\nSizes S and XL only: B 2.")]
    public void Sizes_that_follow_each_other_are_told_from_the_first_to_the_last(string xs, string s, string m, string l, string xl, string expected) =>
        Assert.Equal(expected, string.Join('\n', SizedLines.Of([[xs], [s], [m], [l], [xl]], ["XS", "S", "M", "L", "XL"])));

    [Fact]
    public void Lines_of_one_stretch_stand_together_in_the_order_of_the_stretches() =>
        Assert.Equal(
            "Sizes S and M only: A 1 (2).\nSize L only: C 3.\nA 2 (3, 4).",
            string.Join('\n', SizedLines.Of([["A 1.", "A 2."], ["A 2.", "A 3."], ["C 3.", "A 4."]], Names, [[1, 3], [1, 3], [2, 3]])));
}
