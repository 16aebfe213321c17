using CsCheck;
using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Stitches;

public class CableNamesTests
{
    private static readonly string[] Endings = ["LC", "RC", "LPC", "RPC", "LT", "RT"];

    [Theory]
    [InlineData("C4F", "C4F", 4, 2, Lean.Left, CrossingKind.AllKnit)]
    [InlineData("C6B", "C6B", 6, 3, Lean.Right, CrossingKind.AllKnit)]
    [InlineData("C12B", "C12B", 12, 6, Lean.Right, CrossingKind.AllKnit)]
    [InlineData("C3L", "C3L", 3, null, Lean.Left, CrossingKind.AllKnit)]
    [InlineData("T4B", "T4B", 4, 2, Lean.Right, CrossingKind.OverPurl)]
    [InlineData("T3F", "T3F", 3, null, Lean.Left, CrossingKind.OverPurl)]
    [InlineData("CR4L", "Cr4L", 4, 2, Lean.Left, CrossingKind.AllKnit)]
    [InlineData("cr4r", "Cr4R", 4, 2, Lean.Right, CrossingKind.AllKnit)]
    [InlineData("2/2 LC", "2/2 LC", 4, 2, Lean.Left, CrossingKind.AllKnit)]
    [InlineData("3/3RC", "3/3 RC", 6, 3, Lean.Right, CrossingKind.AllKnit)]
    [InlineData("2/1 LPC", "2/1 LPC", 3, 2, Lean.Left, CrossingKind.OverPurl)]
    [InlineData("1/1 rc", "1/1 RC", 2, 1, Lean.Right, CrossingKind.AllKnit)]
    [InlineData("2/1/2 RPC", "2/1/2 RPC", 5, 2, Lean.Right, CrossingKind.OverPurl)]
    [InlineData("6-st LC", "6-st LC", 6, 3, Lean.Left, CrossingKind.AllKnit)]
    [InlineData("LT", "LT", 2, 1, Lean.Left, CrossingKind.Twist)]
    [InlineData("rt", "RT", 2, 1, Lean.Right, CrossingKind.Twist)]
    [InlineData("cable 4 back", "C4B", 4, 2, Lean.Right, CrossingKind.AllKnit)]
    public void A_crossing_tells_its_stitches_and_which_way_it_leans(string said, string name, int total, int? over, Lean lean, CrossingKind kind)
    {
        var read = CableNames.Read(said);
        Assert.NotNull(read);
        Assert.Equal((name, total, over, lean, kind), (read.Name, read.Total, read.Over, read.Lean, read.Kind));
    }

    [Theory]
    [InlineData("")]
    [InlineData("C")]
    [InlineData("C4")]
    [InlineData("C1F")]
    [InlineData("C41B")]
    [InlineData("C999999999999F")]
    [InlineData("4F")]
    [InlineData("0/2 LC")]
    [InlineData("2/2")]
    [InlineData("2/2/2/2 LC")]
    [InlineData("30/30 RC")]
    [InlineData("CC")]
    [InlineData("CO")]
    [InlineData("tog")]
    [InlineData("2sts")]
    public void Other_words_are_no_crossings(string said) => Assert.Null(CableNames.Read(said));

    [Fact]
    public void A_crossing_takes_and_makes_the_same() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[1, 20], Gen.Int[0, Endings.Length - 1]).Sample((over, under, ending) =>
        {
            var found = CableNames.Find($"{over}/{under} {Endings[ending]}");
            return found is not null && found.Takes == over + under && found.Makes == found.Takes
                && found.Definition.EndsWith('.') && found.Symbol is not null;
        });

    [Fact]
    public void Every_total_from_two_to_forty_can_be_said() =>
        Assert.All(Enumerable.Range(2, 39), n => Assert.Equal(n, CableNames.Find($"C{n}F")?.Takes));

    [Fact]
    public void The_trades_two_ways_to_say_a_cable_mean_the_same_stitches()
    {
        // C4B = 2/2 RC leans right, C4F = 2/2 LC leans left: common practice.
        Assert.Equal(CableNames.Read("C4B")! with { Name = "" }, CableNames.Read("2/2 RC")! with { Name = "" });
        Assert.Equal(CableNames.Read("C4F")! with { Name = "" }, CableNames.Read("2/2 LC")! with { Name = "" });
    }

    [Fact]
    public void The_same_crossing_is_the_same_record_each_time() =>
        Assert.Same(CableNames.Find("C4F"), CableNames.Find("c4f"));
}
