using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>Yokes and raglans: the stitches between markers are known after every row, by the markers' names.</summary>
public class SectionsTests
{
    [Fact]
    public void A_yoke_has_its_sections_after_every_round()
    {
        var compiled = Compile(
            "CO 64 (72) sts. Join to work in the round.",
            "Set-up rnd: K15 (17), place marker A, k1, pm, k32 (36), pm, k1, place marker B, k15 (17).",
            "Inc rnd: *K to m, M1R, sm, k1, sm, M1L; rep from * once more, k to end. 68 (76) sts.",
            "Rep Inc rnd every other rnd 3 times. 80 (88) sts.");

        Assert.Equal("15 a, 1 , 32 , 1 b, 15 -", Words(compiled, 1, 0));
        Assert.Equal("18 a, 1 , 38 , 1 b, 18 -", Words(compiled, 2, 1));
        Assert.Equal("19 a, 1 , 40 , 1 b, 19 -", Words(compiled, 3, 0));
    }

    [Fact]
    public void They_add_up_to_the_count()
    {
        var compiled = Compile("CO 60 (66) sts.", "Row 1: K20, pm, k20 (26), pm, k20.", "Row 2: P to m, sm, p2tog, p to 2 sts before m, p2tog, sm, p to end.", "Row 3: K to m, sm, ssk, k to end.");

        Assert.All(compiled.Lines.Skip(1), line => Assert.Equal<int?>(line.After, [.. line.Sections.Select(s => (int?)s.Sum(x => x.Stitches))]));
        Assert.Equal("20 , 17 , 20 -", Words(compiled, 3, 0));
    }

    [Fact]
    public void A_row_without_markers_has_none() => Assert.Empty(Compile("CO 60 (66) sts.", "Row 1: Knit.").Lines[^1].Sections);

    [Theory]
    [InlineData("Row 2: Purl. (20 sts each front, 20 [26] back)")]
    [InlineData("Row 2: Purl. 20 sts each front, 20 [26] back.")]
    [InlineData("Row 2: Purl. 60 (66) sts.")]
    public void A_count_told_by_sections_agrees_with_the_markers(string row) => Assert.Empty(Counts("Row 1: K20, pm, k20 (26), pm, k20.", row));

    [Fact]
    public void A_section_that_has_a_stitch_of_its_neighbour_is_told_in_its_size()
    {
        var finding = Assert.Single(Counts("Row 1: K20, pm, k20 (26), pm, k20.", "Row 2: Purl. (19 [20] sts each front, 22 [26] back)"));

        Assert.Equal("the sections are stated as 19, 19, 22 in size S, but between the markers there are 20, 20, 20", finding.Message);
        Assert.Equal<int>([0], finding.Sizes);
    }

    [Fact]
    public void In_rounds_the_section_that_the_round_begins_in_is_one() => Assert.Empty(
        Counts("Join to work in the round.", "Rnd 1: K10 (13), pm, k20, pm, k to end. (20 sts front, 40 [46] back)"));

    [Fact]
    public void Sections_that_do_not_add_up_to_the_whole_are_told() => Assert.Equal(
        "the sections add up to 61 in size S, but the whole is stated as 60", Assert.Single(Counts("Row 1: Knit. (60 [66] sts: 20, 20, 21 [26])")).Message);

    private static Finding[] Counts(params string[] rows) => [.. Compile(["CO 60 (66) sts.", .. rows]).Findings.Where(f => f.Rule.Area == Area.Counts)];

    private static string Words(Compilation compiled, int line, int size) =>
        string.Join(", ", compiled.Lines[line].Sections[size].Select(s => $"{s.Stitches} {s.Marker ?? "-"}"));

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour jumper\nsizes: S (M)\n---\n\n## Yoke\n\n{string.Join("\n\n", rows)}\n"));
}
