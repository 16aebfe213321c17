using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Stitches;

/// <summary>What the header says to the maker is searched for abbreviations as the body is.</summary>
public class HeaderAbbreviationTests
{
    [Theory]
    [InlineData("summary: A hat with a brim in St st and RS facing.", "St st,RS")]
    [InlineData("tools: a set of 4 mm dpns", "dpns")]
    [InlineData("notions: 1 stitch marker for the beginning of each rnd", "rnd")]
    [InlineData("photos:\n  - file: a.jpg\n    alt: The hat from its WS\n    caption: The ssk decreases", "WS,ssk")]
    [InlineData("level-reason: The crown is worked on dpns with k2tog.", "dpns,k2tog")]
    [InlineData("techniques: [decreasing with ssk]", "ssk")]
    public void An_abbreviation_of_the_header_stands_in_the_table(string header, string expected)
    {
        var names = Compile(header).Abbreviations.Select(a => a.Name).ToArray();
        Assert.All(expected.Split(','), name => Assert.Contains(name, names, StringComparer.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("summary: A hat from the hills near Boulder, CO, for days in and out of doors.")]
    [InlineData("summary: Made in DC by a fan of the sea, in order to rest; rep and alt are words.")]
    [InlineData("notions: 2 m of ribbon, 30 g of filling, a row counter")]
    [InlineData("photos:\n  - file: rs.jpg\n    alt: A hat on the shelf, patt. no. 3\n    caption: St Ives in the rain")]
    [InlineData("tools: a 4 mm circular needle, 40 cm long")]
    public void Ordinary_words_are_none(string header) => Assert.Equal(["CO", "k", "sts"], Compile(header).Abbreviations.Select(a => a.Name));

    private static Compilation Compile(string header) => Compiler.Compile(new SourceText("made.pattern.md", $"---\ntitle: Hat\n{header}\n---\n\n## Hat\n\nCO 24 sts.\n\nRow 1: K24.\n"));
}
