using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

/// <summary>Which patterns carry the usual cautions (common practice).</summary>
public class CautionTests
{
    [Theory]
    [InlineData("A blanket for a baby", "Sleep")]
    [InlineData("Newborn bonnet", "Sleep")]
    [InlineData("Baby's first hat", "Sleep")]
    [InlineData("A jumper for children", "Cords and loops")]
    [InlineData("Bear, a toy", "Small parts")]
    [InlineData("Two-layer potholder", "Heat and flames")]
    public void What_the_title_speaks_of_brings_its_caution(string title, string caution) =>
        Assert.Contains(Of(title), c => c.Name == caution);

    [Theory]
    [InlineData("A hat in baby alpaca")]
    [InlineData("Baby cable socks")]
    [InlineData("Kid mohair shawl")]
    [InlineData("Childe Roland mitts")]
    [InlineData("A plain hat")]
    public void Nothing_else_does(string title) => Assert.Empty(Of(title));

    [Theory]
    [InlineData("3–6 months", true, true)]
    [InlineData("newborn", true, true)]
    [InlineData("2T", false, true)]
    [InlineData("4 yrs", false, true)]
    [InlineData("Child M", false, true)]
    [InlineData("M", false, false)]
    [InlineData("12", false, false)]
    public void The_sizes_say_whom_it_is_for(string size, bool baby, bool child)
    {
        var cautions = Cautions.Build(new PatternFacts { Sizes = new SizeSet([size, "other"]) }, []);
        Assert.Equal(baby, cautions.Any(c => c.Name == "Sleep"));
        Assert.Equal(child, cautions.Any(c => c.Name == "Cords and loops"));
    }

    [Fact]
    public void The_word_after_the_sizes_counts_too() =>
        Assert.NotEmpty(Cautions.Build(new PatternFacts { Sizes = new SizeSet(["2", "4"]) { Word = "years" } }, []));

    [Fact]
    public void Cautions_defer_to_local_rules_and_to_the_label()
    {
        var last = Of("A toy")[^1].Text;
        Assert.Contains("rules", last, StringComparison.Ordinal);
        Assert.Contains("label", last, StringComparison.Ordinal);
    }

    [Fact]
    public void They_can_be_left_out_on_purpose() =>
        Assert.Empty(Cautions.Build(new PatternFacts { Title = new Located<string>("A toy", default), Omit = ["cautions"] }, []));

    [Fact]
    public void They_name_what_the_pattern_itself_has()
    {
        var facts = new PatternFacts { Audience = new Located<Audience>(Audience.Babies, default), Notions = [new Item("3 Buttons, 12 mm", null, default), new Item("50 cm of ribbon", null, default)] };
        var cautions = Cautions.Build(facts, []);
        Assert.StartsWith("In this pattern: buttons. ", cautions.Single(c => c.Name == "Small parts").Text, StringComparison.Ordinal);
        Assert.StartsWith("In this pattern: ribbon. ", cautions.Single(c => c.Name == "Cords and loops").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Audience.Women, "A baby doll top", false)]
    [InlineData(Audience.Babies, "Harbour hat", true)]
    [InlineData(Audience.Anyone, "Harbour hat", false)]
    public void Whom_it_is_for_is_known_where_the_header_says_so(Audience audience, string title, bool forBabies) =>
        Assert.Equal(forBabies, Cautions.Build(new PatternFacts { Title = new Located<string>(title, default), Audience = new Located<Audience>(audience, default) }, []).Any(c => c.Name == "Sleep"));

    [Fact]
    public void A_yarn_whose_hairs_stand_off_is_kept_from_flames() =>
        Assert.Contains(Cautions.Build(new PatternFacts { Yarns = [new Yarn(default) { Fibre = "70% mohair, 30% silk" }] }, []), c => c.Name == "Heat and flames");

    private static System.Collections.Immutable.ImmutableArray<CautionView> Of(string title) => Cautions.Build(new PatternFacts { Title = new Located<string>(title, default) }, []);
}
