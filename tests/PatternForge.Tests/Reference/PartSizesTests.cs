using PatternForge.Core.Reference;

namespace PatternForge.Tests.Reference;

public class PartSizesTests
{
    [Fact]
    public void Every_measurement_has_a_span_for_each_size_and_rises() =>
        Assert.All(PartSizes.All.SelectMany(t => t.Measures.Select(m => (Table: t, m.Spans))), m =>
        {
            Assert.Equal(m.Table.Sizes.Length, m.Spans.Length);
            var spans = m.Spans.Where(s => s is not null).Select(s => s!.Value).ToArray();
            Assert.All(spans, s => Assert.InRange(s.Least, 0.5m, s.Most));
            Assert.All(spans.Zip(spans.Skip(1)), pair => Assert.True(pair.First.Least <= pair.Second.Least && pair.First.Most <= pair.Second.Most));
        });

    // Craft Yarn Council, foot sizes as quoted in the trade: a child's foot of 7.5 in (19 cm) wears a child's 12 of American shoes, a European 30 to 31 (from memory). How to Knit Socks, chapter 3: a woman's sock is 8 in around and a
    // man's 10, and a sock is to be some tenth smaller than the foot (common practice).
    [Theory]
    [InlineData("27-30", "foot-length", 19, 1)]
    [InlineData("31-34", "foot-length", 19, 0.5)]
    [InlineData("35-38", "foot", 8 * 2.54 * 1.1, 0.5)]
    [InlineData("43-46", "foot", 10 * 2.54 * 1.1, 0.5)]
    public void Feet_by_their_shoes_agree_with_what_is_told_of_feet(string shoes, string measure, double cm, double apart)
    {
        var table = PartSizes.Find("feet-by-shoe")!;
        var (least, most) = table.Measures.Single(m => m.Measure == measure).Spans[table.Sizes.IndexOf(shoes)]!.Value;
        Assert.InRange((decimal)cm, least - (decimal)apart, most + (decimal)apart);
    }
}
