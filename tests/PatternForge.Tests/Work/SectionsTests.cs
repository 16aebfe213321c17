using PatternForge.Core;
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

    private static string Words(Compilation compiled, int line, int size) =>
        string.Join(", ", compiled.Lines[line].Sections[size].Select(s => $"{s.Stitches} {s.Marker ?? "-"}"));

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour jumper\nsizes: S (M)\n---\n\n## Yoke\n\n{string.Join("\n\n", rows)}\n"));
}
