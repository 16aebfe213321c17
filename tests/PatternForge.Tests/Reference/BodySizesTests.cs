using PatternForge.Core.Reference;

namespace PatternForge.Tests.Reference;

public class BodySizesTests
{
    // Facts set down apart from the table: Craft Yarn Council, body sizes, from memory; child and youth lengths as quoted in the trade.
    [Theory]
    [InlineData(BodyGroup.Woman, "bust", "M", 36, 38)]
    [InlineData(BodyGroup.Woman, "waist", "XS", 23, 24)]
    [InlineData(BodyGroup.Man, "chest", "L", 42, 44)]
    [InlineData(BodyGroup.Child, "chest", "8", 26.5, 26.5)]
    [InlineData(BodyGroup.Child, "back waist length", "12", 15, 15)]
    [InlineData(BodyGroup.Baby, "chest", "24", 20, 20)]
    public void A_size_has_its_published_inches(BodyGroup group, string measure, string size, double least, double most)
    {
        var table = BodySizes.All.Single(t => t.Group == group && t.Measure == measure);
        var range = table.Sizes[BodySizes.Names(group).IndexOf(size)];
        Assert.Equal(((decimal)least, (decimal)most), (range.LeastInches, range.MostInches));
    }

    public static TheoryData<BodyGroup, string> Tables
    {
        get
        {
            var data = new TheoryData<BodyGroup, string>();
            foreach (var table in BodySizes.All)
            {
                data.Add(table.Group, table.Measure);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void A_table_has_every_size_rises_and_agrees_in_inches_and_centimetres(BodyGroup group, string measure)
    {
        var table = BodySizes.All.Single(t => t.Group == group && t.Measure == measure);
        Assert.Equal(BodySizes.Names(group).Length, table.Sizes.Length);
        Assert.All(table.Sizes, s => Assert.True(s.LeastInches <= s.MostInches && s.LeastCm <= s.MostCm));

        // Each column is rounded by itself, to half a centimetre or more; a centimetre and a half apart is a slip.
        Assert.All(table.Sizes, s => Assert.InRange(Math.Abs((s.LeastInches * 2.54m) - s.LeastCm), 0, 1.5m));
        Assert.All(table.Sizes, s => Assert.InRange(Math.Abs((s.MostInches * 2.54m) - s.MostCm), 0, 1.5m));
        Assert.All(table.Sizes.Zip(table.Sizes.Skip(1)), pair => Assert.True(pair.First.LeastCm <= pair.Second.LeastCm && pair.First.MostCm <= pair.Second.MostCm));
    }

    [Fact]
    public void Figures_from_memory_say_so() =>
        Assert.All(BodySizes.All, t => Assert.Equal(t.Source == Sources.BodySizes, t.Source.ToString().EndsWith("(from memory)", StringComparison.Ordinal)));

    [Fact]
    public void Readings_are_spans() => Assert.All(BodyReadings.All, r => Assert.InRange(r.LeastInches, 1, r.MostInches));
}
