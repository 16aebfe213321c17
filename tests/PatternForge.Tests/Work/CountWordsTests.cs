using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

public class CountWordsTests
{
    private static readonly ImmutableSortedDictionary<string, int> Round = new Dictionary<string, int> { ["ch-2 sp"] = 4, ["dc"] = 12, ["ch-1 sp"] = 1, ["picots"] = 3 }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    [Fact]
    public void Stitches_are_told_before_spaces_and_spaces_from_the_shortest() =>
        Assert.Equal("12 dc, 1 ch-1 sp, 4 ch-2 sps, 3 picots", CountWords.Of(Round));

    [Fact]
    public void Each_kind_has_its_numbers_of_all_sizes()
    {
        var larger = Round.SetItem("dc", 16);

        Assert.Equal("12 (16) dc, 1 ch-1 sp, 4 ch-2 sps, 3 picots", CountWords.InTradeForm([12, 16], [Round, larger]));
        Assert.Equal("80 (–, 96) sts", CountWords.InTradeForm([80, null, 96], []));
    }

    [Theory]
    [InlineData("Rnd 1: 6 sc in magic ring. {count}", "6 sc in magic ring. (6 sc)")]
    [InlineData("Rnd 1: [Sc in ring, ch 1] 6 times, join with sl st in first sc. {count}", "[Sc in ring, ch 1] 6 times, join with sl st in first sc. (6 sc, 6 ch-1 sps)")]
    public void A_count_that_is_filled_in_names_the_kinds(string row, string text) =>
        Assert.Equal(text, Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour ball\ncraft: crochet\nterms: us\n---\n\n## Ball\n\n{row}\n")).Lines[0].Text);
}
