using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Stitches;

public class TradeWordsTests
{
    [Theory]
    [InlineData("RS")]
    [InlineData("WS")]
    [InlineData("st")]
    [InlineData("sts")]
    [InlineData("rep")]
    [InlineData("rnd")]
    [InlineData("beg")]
    [InlineData("cont")]
    [InlineData("foll")]
    [InlineData("alt")]
    [InlineData("rem")]
    [InlineData("tog")]
    [InlineData("tbl")]
    [InlineData("pm")]
    [InlineData("sm")]
    [InlineData("rm")]
    [InlineData("MC")]
    [InlineData("CC")]
    [InlineData("dpn")]
    [InlineData("cn")]
    [InlineData("patt")]
    [InlineData("St st")]
    [InlineData("g st")]
    [InlineData("wyif")]
    [InlineData("wyib")]
    [InlineData("kwise")]
    [InlineData("pwise")]
    [InlineData("lp")]
    [InlineData("yd")]
    [InlineData("approx")]
    [InlineData("EOR")]
    [InlineData("BOR")]
    public void The_usual_words_of_rows_are_known_in_both_dialects(string name)
    {
        Assert.NotNull(TradeWords.Find(Dialect.Us, name));
        Assert.NotNull(TradeWords.Find(Dialect.Uk, name));
    }

    [Fact]
    public void Colour_is_spelled_as_the_reader_spells_it()
    {
        Assert.Equal("main color", TradeWords.Find(Dialect.Us, "MC")?.MeaningIn(Dialect.Us));
        Assert.Equal("main colour", TradeWords.Find(Dialect.Uk, "MC")?.MeaningIn(Dialect.Uk));
    }

    [Fact]
    public void Case_tells_a_marker_from_the_main_colour_in_Britain()
    {
        Assert.Equal("marker", TradeWords.Find(Dialect.Uk, "m")?.Uk);
        Assert.Equal("main colour", TradeWords.Find(Dialect.Uk, "M")?.Uk);
        Assert.Equal("marker", TradeWords.Find(Dialect.Us, "M")?.Us);
    }

    [Fact]
    public void A_bobble_must_be_defined_by_the_pattern() =>
        Assert.True(TradeWords.Find(Dialect.Us, "MB")?.MustBeDefined);

    [Fact]
    public void No_word_of_the_trade_is_also_a_stitch()
    {
        var both = TradeWords.All.SelectMany(w => w.Names).Where(n => OperationTable.Find(Craft.Knitting, n.Dialect, n.Text) is not null).Select(n => n.Text);
        Assert.Empty(both);
    }

    [Fact]
    public void No_two_words_clash_within_a_dialect()
    {
        var clashes =
            from dialect in new[] { Dialect.Us, Dialect.Uk }
            from name in TradeWords.All.SelectMany(w => w.Names).Where(n => n.Dialect == Dialect.Any || n.Dialect == dialect).GroupBy(n => SpokenForms.Squeeze(n.Text), StringComparer.Ordinal)
            where name.Count() > 1
            select $"{dialect}: {name.Key}";
        Assert.Empty(clashes);
    }

    [Fact]
    public void Meanings_are_phrases_without_a_full_stop() =>
        Assert.All(TradeWords.All, w =>
        {
            Assert.False(w.Us.EndsWith('.') || w.Uk.EndsWith('.'));
            Assert.NotEmpty(w.Us);
        });
}
