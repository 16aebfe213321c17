using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

public class ProseReferenceTests
{
    private static string[] Told(string words, string header = "") =>
    [
        .. Compiler.Compile(new SourceText("x.pattern.md", $"---\ntitle: X\nsizes: S (M, L)\n{header}---\n\n## Body\n\nCO 12 sts.\n\nRows 1-4: Knit.\n\nRep Rows 1-4 until piece measures 20 cm.\n\n## Finishing touches\n\n## Notes\n\n{words}\n")).Findings
            .Where(f => f.Rule.Code is "PF221" or "PF222" or "PF223" or "PF224" or "PF225").Select(f => $"{f.Rule.Code} {f.Source.ToString(f.Span)}"),
    ];

    [Theory]
    [InlineData("See Row 4 and Rows 1–4; the 20th row is a guess, and Row 60 comes late.")]
    [InlineData("For the ends see Finishing. See also Gauge and see Abbreviations.")]
    [InlineData("See the sea.")]
    [InlineData("Worked in size M; use a size XL hook, hook size XL, or XL buttons of size XL.")]
    [InlineData("She wears size M (chest 91 cm) and sizes S and L exist.")]
    [InlineData("In Figure 4 of another book the brim is folded.")]
    [InlineData("The Chart Committee met in Chart House; see charts.")]
    public void What_is_there_or_is_no_reference_is_left_alone(string words) => Assert.Empty(Told(words));

    [Theory]
    [InlineData("It curls: see Row 99.", "PF221 Row 99")]
    [InlineData("Work as in Rnd 12.", "PF221 Rnd 12")]
    [InlineData("For the ends see Blocking.", "PF223 Blocking")]
    [InlineData("Refer to the Left Sleeve section.", "PF223 Left Sleeve")]
    [InlineData("For size XXL buy one more.", "PF224 XXL")]
    [InlineData("Fold it (see Fig. 3).", "PF225 Fig. 3")]
    public void What_is_not_there_is_told(string words, string told) => Assert.Equal([told], Told(words));

    [Fact]
    public void Charts_are_looked_for_only_where_the_header_has_some()
    {
        Assert.Empty(Told("Work Chart C."));
        Assert.Equal(["PF222 Chart C"], Told("Work Chart C, then Chart A.", "charts: {A: 12}\n"));
    }

    [Theory]
    [InlineData("Child (S, M, L, XL)", "size XXL", 1)]
    [InlineData("Child (S, M, L, XL)", "size XL", 0)]
    [InlineData("adult S (adult M, adult L)", "size XS", 1)]
    [InlineData("adult S (adult M, adult L)", "size M", 0)]
    [InlineData("3-6 months (S, M)", "size XL", 0)]
    [InlineData("one size", "size XL", 0)]
    public void Sizes_that_go_by_letters_beside_words_are_known_by_them(string sizes, string said, int found)
    {
        var text = $"---\ntitle: X\nsizes: {sizes}\n---\n\n## Notes\n\nFor {said} buy one more.\n";
        Assert.Equal(found, Compiler.Compile(new SourceText("x.pattern.md", text)).Findings.Count(f => f.Rule.Code == "PF224"));
    }

    [Fact]
    public void Sizes_that_are_no_letters_make_no_letter_a_size()
    {
        var text = "---\ntitle: X\nsizes: 32 (34, 36)\n---\n\n## Notes\n\nThat is size XXL in the shops.\n";
        Assert.DoesNotContain(Compiler.Compile(new SourceText("x.pattern.md", text)).Findings, f => f.Rule.Code == "PF224");
    }
}
