using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Stitches;

public class OperationTableTests
{
    // American patterns write "yo" for all four of these.
    private static readonly string[] BritishOvers = ["yfwd", "yrn", "yon", "yfrn"];

    public static TheoryData<Craft, string> Entries()
    {
        var data = new TheoryData<Craft, string>();
        foreach (var craft in Enum.GetValues<Craft>())
        {
            foreach (var operation in OperationTable.All(craft))
            {
                data.Add(craft, operation.Id);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_entry_has_a_name_in_each_dialect(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        Assert.NotNull(OperationTable.NameIn(entry, Dialect.Uk));
        if (!BritishOvers.Contains(id))
        {
            Assert.NotNull(OperationTable.NameIn(entry, Dialect.Us));
        }
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_entry_is_defined_in_sentences_of_its_own(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        Assert.EndsWith(".", entry.Definition, StringComparison.Ordinal);
        Assert.True(char.IsUpper(entry.Definition[0]));
        Assert.DoesNotContain("  ", entry.Definition, StringComparison.Ordinal);
        Assert.False(string.IsNullOrWhiteSpace(entry.Spoken));
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_entry_never_takes_or_makes_less_than_nothing(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        Assert.True(entry.Takes >= 0 && entry.Makes >= 0 && entry.PassesOver >= 0);
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_increase_makes_more_and_a_decrease_fewer(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        switch (entry.Family)
        {
            case Family.Increase or Family.YarnOver:
                Assert.True(entry.Change > 0);
                break;
            case Family.Decrease:
                Assert.True(entry.Change < 0);
                break;
            case Family.Basic or Family.Slip or Family.Cable or Family.ShortRow when entry.Gives != StitchKind.Chain:
                Assert.Equal(0, entry.Change);
                break;
            default:
                break;
        }
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void Each_name_of_an_entry_finds_it_in_its_dialects_whatever_its_case(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        foreach (var name in entry.Names)
        {
            var inBoth = OperationTable.Find(craft, name.Text) is { IsTreacherous: false };
            foreach (var dialect in Enum.GetValues<Dialect>().Where(d => d == name.Dialect || (inBoth && d == Dialect.Any) || (name.Dialect == Dialect.Any && d != Dialect.Any)))
            {
                Assert.Equal(id, OperationTable.Find(craft, dialect, name.Text)?.Id);
                Assert.Equal(id, OperationTable.Find(craft, dialect, name.Text.ToUpperInvariant())?.Id);
            }
        }

        Assert.Equal(id, OperationTable.Find(craft, Dialect.Us, entry.Spoken)?.Id ?? OperationTable.Find(craft, Dialect.Uk, entry.Spoken)?.Id);
    }

    [Theory]
    [MemberData(nameof(Entries))]
    public void A_chart_symbol_stands_where_a_chart_shows_the_stitch(Craft craft, string id)
    {
        var entry = Entry(craft, id);
        if (entry is { Makes: > 0, Family: not Family.Edge })
        {
            Assert.NotNull(entry.Symbol);
            Assert.Matches("^[a-z]+(-[a-z0-9]+)*$", entry.Symbol);
        }
        else
        {
            Assert.Null(entry.Symbol);
        }
    }

    [Fact]
    public void No_two_entries_of_a_craft_share_an_id() =>
        Assert.All(Enum.GetValues<Craft>(), craft => Assert.Empty(
            OperationTable.All(craft).GroupBy(o => o.Id, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key)));

    [Fact]
    public void No_two_names_clash_within_craft_and_dialect()
    {
        var clashes =
            from craft in Enum.GetValues<Craft>()
            from dialect in new[] { Dialect.Us, Dialect.Uk }
            from name in OperationTable.All(craft)
                .SelectMany(o => o.Names.Where(n => n.Dialect == Dialect.Any || n.Dialect == dialect).Select(n => (n.Text, o.Id)))
                .GroupBy(n => SpokenForms.Squeeze(n.Text), StringComparer.Ordinal)
            where name.Select(n => n.Id).Distinct(StringComparer.Ordinal).Count() > 1
            select $"{craft} {dialect}: {name.Key}";
        Assert.Empty(clashes);
    }

    [Fact]
    public void No_name_of_a_stitch_is_also_read_as_a_crossing() =>
        Assert.All(OperationTable.All(Craft.Knitting).SelectMany(o => o.Names), n => Assert.Null(CableNames.Read(n.Text)));

    [Theory]
    [InlineData("K 2 TOG.", "k2tog")]
    [InlineData("knit two together", "k2tog")]
    [InlineData("knit 2 sts tog", "k2tog")]
    [InlineData("k 2 together", "k2tog")]
    [InlineData("k2tog-tbl", "k2tog-tbl")]
    [InlineData("purl 3 stitches together", "p3tog")]
    [InlineData("slip, slip, knit", "ssk")]
    [InlineData("KF/B", "kfb")]
    [InlineData("sl1-k1-psso", "skp")]
    [InlineData("make one", "m1")]
    [InlineData("c4f", "C4F")]
    public void Loose_spellings_find_the_stitch(string said, string id) =>
        Assert.Equal(id, OperationTable.Find(Craft.Knitting, Dialect.Us, said)?.Id);

    [Theory]
    [InlineData("")]
    [InlineData(" - ")]
    [InlineData("mkb")]
    [InlineData("hdc")]
    [InlineData("k2")]
    [InlineData("MB")]
    [InlineData("pa")]
    public void A_word_that_is_no_stitch_of_knitting_finds_nothing(string said) =>
        Assert.Null(OperationTable.Find(Craft.Knitting, said));

    [Fact]
    public void A_name_as_long_as_a_page_finds_nothing() =>
        Assert.Null(OperationTable.Find(Craft.Knitting, new string('k', 100_000)));

    [Fact]
    public void Binding_off_is_the_American_and_casting_off_the_British_word()
    {
        Assert.Equal(Dialect.Us, OperationTable.Find(Craft.Knitting, "bind off")?.Dialect);
        Assert.Equal(Dialect.Us, OperationTable.Find(Craft.Knitting, "BO")?.Dialect);
        Assert.Equal(Dialect.Uk, OperationTable.Find(Craft.Knitting, "cast off")?.Dialect);
        Assert.Equal(Dialect.Any, OperationTable.Find(Craft.Knitting, "cast on")?.Dialect);
        Assert.Equal("bo", OperationTable.Find(Craft.Knitting, "cast off")?.In(Dialect.Any)?.Id);
    }

    [Fact]
    public void British_overs_are_British()
    {
        Assert.All(BritishOvers, name => Assert.Equal(Dialect.Uk, OperationTable.Find(Craft.Knitting, name)?.Dialect));
        Assert.DoesNotContain("yfrn", OperationTable.NamesOf(Craft.Knitting, Dialect.Us));
        Assert.Contains("yfrn", OperationTable.NamesOf(Craft.Knitting, Dialect.Uk));
    }

    // US sc = UK dc and so on, one step apart all the way up: common practice.
    [Theory]
    [InlineData("sc", "dc")]
    [InlineData("hdc", "htr")]
    [InlineData("dc", "tr")]
    [InlineData("tr", "dtr")]
    [InlineData("dtr", "trtr")]
    [InlineData("dtr", "ttr")]
    [InlineData("trtr", "qtr")]
    [InlineData("sc2tog", "dc2tog")]
    [InlineData("dc3tog", "tr3tog")]
    [InlineData("FPdc", "FPtr")]
    [InlineData("BPdc", "RtrB")]
    [InlineData("sl st", "ss")]
    [InlineData("fhdc", "fhtr")]
    [InlineData("esc", "edc")]
    [InlineData("single crochet", "double crochet")]
    public void The_same_crochet_stitch_goes_by_two_names(string us, string uk) =>
        Assert.Same(OperationTable.Find(Craft.Crochet, Dialect.Us, us), OperationTable.Find(Craft.Crochet, Dialect.Uk, uk));

    [Fact]
    public void Some_crochet_names_mean_another_stitch_across_the_sea()
    {
        Assert.All(new[] { "dc", "tr", "dtr", "trtr", "dc2tog", "FPtr", "edc" }, n => Assert.True(OperationTable.Find(Craft.Crochet, n)?.IsTreacherous));
        Assert.All(new[] { "sc", "hdc", "sc2tog", "esc" }, n => Assert.Equal(Dialect.Us, OperationTable.Find(Craft.Crochet, n)?.Dialect));
        Assert.All(new[] { "htr", "htr2tog", "ttr" }, n => Assert.Equal(Dialect.Uk, OperationTable.Find(Craft.Crochet, n)?.Dialect));
        Assert.All(new[] { "ch", "inc", "invdec" }, n => Assert.Equal(Dialect.Any, OperationTable.Find(Craft.Crochet, n)?.Dialect));
    }

    [Theory]
    [InlineData("C4F")]
    [InlineData("ssk")]
    [InlineData("knit")]
    public void A_knitting_stitch_is_none_of_crochet(string name) => Assert.Null(OperationTable.Find(Craft.Crochet, name));

    [Fact]
    public void Suggestions_can_name_the_written_out_forms_too()
    {
        Assert.Contains("knit 2 together", OperationTable.NamesOf(Craft.Knitting, Dialect.Us));
        Assert.DoesNotContain("knit 2 together", OperationTable.NamesOf(Craft.Knitting, Dialect.Us, spoken: false));
        Assert.DoesNotContain("bind off", OperationTable.NamesOf(Craft.Knitting, Dialect.Uk));
    }

    // Figures of the usual abbreviation lists: common practice.
    [Theory]
    [InlineData("k2tog", 2, 1)]
    [InlineData("sssk", 3, 1)]
    [InlineData("sk2p", 3, 1)]
    [InlineData("cdd", 3, 1)]
    [InlineData("kfb", 1, 2)]
    [InlineData("kpk", 1, 3)]
    [InlineData("m1l", 0, 1)]
    [InlineData("m2", 0, 2)]
    [InlineData("yo2", 0, 2)]
    [InlineData("w&t", 0, 0)]
    [InlineData("sl1yo", 1, 1)]
    [InlineData("co", 0, 1)]
    [InlineData("bo", 1, 0)]
    public void The_common_ones_take_and_make_what_the_trade_says(string name, int takes, int makes)
    {
        var found = OperationTable.Find(Craft.Knitting, Dialect.Us, name);
        Assert.Equal((takes, makes), (found!.Takes, found.Makes));
    }

    [Fact]
    public void Passing_over_takes_from_the_right_needle()
    {
        Assert.Equal(-1, OperationTable.Find(Craft.Knitting, Dialect.Us, "psso")?.Change);
        Assert.Equal(-2, OperationTable.Find(Craft.Knitting, Dialect.Us, "p2sso")?.Change);
    }

    private static Operation Entry(Craft craft, string id) => OperationTable.All(craft).Single(o => string.Equals(o.Id, id, StringComparison.Ordinal));
}
