using System.Reflection;
using PatternForge.Core;
using PatternForge.Core.Model;

namespace PatternForge.Tests.Rendering;

public class CompletenessTests
{
    /// <summary>Headings of parts that the page makes itself: the words under them are taken there.</summary>
    private static readonly string[] OwnParts = ["sizes", "yarn", "tools", "gauge", "abbreviations", "photos", "videos", "care", "contact"];

    /// <summary>What the header says to the program and not to a maker, and numbers, which stand where they are called by name.</summary>
    private static readonly string[] NotPrinted =
        [nameof(PatternFacts.HeaderOrigin), nameof(PatternFacts.Unread), nameof(PatternFacts.SizesOrigin), nameof(PatternFacts.Omit), nameof(PatternFacts.Release), nameof(PatternFacts.Paper), nameof(PatternFacts.Numbers)];

    /// <summary>The craft is in every sample; the list of abbreviations reaches the page by way of those in use; proved terms stand where none are declared, and turning chains in the notes, the ease as a length in the ease.</summary>
    private static readonly string[] TestedElsewhere = [nameof(PatternFacts.Craft), nameof(PatternFacts.Abbreviations), nameof(PatternFacts.ProvedTerms), nameof(PatternFacts.EaseBy), nameof(PatternFacts.TurningChains)];

    [Theory]
    [InlineData("html")]
    [InlineData("md")]
    public void Nothing_that_a_pattern_says_is_missing_from_its_page(string format)
    {
        var said = new List<string>();
        var made = Fill(said);
        var page = PageTests.Page(made, format).Text;
        var apart = made.Pattern.Sections.Select(s => s.Role)
            .Concat(made.Pattern.Sections.Where(s => OwnParts.Contains(s.Role)).Select(s => s.Heading))
            .Concat(made.Pattern.Sections.SelectMany(s => s.Blocks).OfType<FencedBlock>().Select(b => b.Info))
            .Concat(made.Abbreviations.Where(a => a.IsSpecial).SelectMany(a => new[] { a.Name, a.Meaning }))
            .Append(made.Source.Path);
        Assert.Empty(said.Where(w => !page.Contains(w, StringComparison.OrdinalIgnoreCase)).Except(apart));
    }

    [Fact]
    public void Every_field_of_the_header_is_among_those_that_are_looked_for()
    {
        var facts = Fill([]).Pattern.Facts;
        var plain = new PatternFacts();
        var missing = typeof(PatternFacts).GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(p => Equals(p.GetValue(facts), p.GetValue(plain))).Select(p => p.Name);
        Assert.Equal(NotPrinted.Concat(TestedElsewhere).Order(StringComparer.Ordinal), missing.Order(StringComparer.Ordinal));
    }

    private static Compilation Fill(List<string> said) => Hostile.Fill(() =>
    {
        said.Add($"word{said.Count}x");
        return said[^1];
    });
}
