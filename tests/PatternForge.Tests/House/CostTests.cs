using PatternForge.Benchmarks;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;
using Xunit.Abstractions;

namespace PatternForge.Tests.House;

/// <summary>What work costs in bytes allocated: steady on every machine, as times are not.</summary>
public class CostTests(ITestOutputHelper output)
{
    [Fact]
    public void An_ordinary_pattern_costs_little_to_check_and_to_render()
    {
        var source = MadePattern.Source(1);
        var compilation = Compiler.Compile(source);

        Assert.InRange(Cost("check", () => Compiler.Compile(new SourceText(source.Path, source.Text))), 0, 1_000_000);
        Assert.InRange(Cost("page for paper", () => Renderer.Render(compilation, OutputFormat.Html, options: new RenderOptions { Paper = "A4" })), 0, 2_000_000);

        // A page on the screen holds each size's own words, worked by themselves, in the pattern's terms and units and in the others.
        Assert.InRange(Cost("page for the screen", () => Renderer.Render(compilation, OutputFormat.Html)), 0, 20_000_000);
    }

    [Fact]
    public void A_pattern_twice_as_long_costs_twice_as_much()
    {
        var (half, whole) = (MadePattern.Source(1, 4_000), MadePattern.Source(1, 8_000));
        var (some, more) = (Compiler.Compile(half), Compiler.Compile(whole));

        Assert.InRange(Cost("check, 8,000 lines", () => Compiler.Compile(whole)) / (double)Cost("check, 4,000 lines", () => Compiler.Compile(half)), 1.8, 2.2);
        Assert.InRange(Cost("page, 8,000 lines", () => Renderer.Render(more, OutputFormat.Html)) / (double)Cost("page, 4,000 lines", () => Renderer.Render(some, OutputFormat.Html)), 1.8, 2.2);
    }

    /// <summary>Files that no maker writes: one endless line, or more of something than any pattern has.</summary>
    public static TheoryData<string, string, string> Extremes => new()
    {
        { "stitches in one row", "Row 1: ", "k1, " },
        { "sentences in one row", "Row 1: ", "k1. " },
        { "words in one phrase", "Row 1: k1 ", "and then " },
        { "counts in one row", "Row 1: ", "k10. (10 sts) " },
        { "labels in one line", "", "Row 1: k10. " },
        { "repeats in one row", "Row 1: ", "*k1, p1; rep from * to end. " },
        { "open brackets", "Row 1: ", "(k1, " },
        { "open lists of numbers", "Row 1: ", "1 (1, " },
        { "dots", "Row 1: ", "." },
        { "tiny rows", "", "Row 1: K.\n\n" },
        { "rows of several readings", "", "*K1, p1; rep from * 3 times more, k1. (9 sts)\n\n" },
    };

    [Theory]
    [MemberData(nameof(Extremes))]
    public void Twice_as_much_of_anything_costs_no_more_than_twice_as_much(string what, string begins, string again)
    {
        SourceText Source(int times) => new("extreme.pattern.md", $"---\ntitle: Extreme\ncraft: knitting\nsizes:\n  names: S\n---\n\n## Piece\n\nCO 10 sts.\n\n{begins}{string.Concat(Enumerable.Repeat(again, times))}\n");

        Assert.InRange(Cost($"{what}, 4,000", () => Compiler.Compile(Source(4_000))) / (double)Cost($"{what}, 2,000", () => Compiler.Compile(Source(2_000))), 0, 2.4);
    }

    [Fact]
    public void A_thousand_rows_in_sixty_four_sizes_cost_no_more_than_twice_as_much_as_half_of_them()
    {
        var names = string.Join(", ", Enumerable.Range(1, 64).Select(i => $"s{i}"));
        var counts = $"20 ({string.Join(", ", Enumerable.Range(1, 63).Select(i => 20 + (2 * i)))})";
        SourceText Source(int rows) => new("sizes.pattern.md", $"---\ntitle: Sizes\ncraft: knitting\nsizes:\n  names: [{names}]\n---\n\n## Piece\n\nCO {counts} sts.\n\n{string.Concat(Enumerable.Range(1, rows).Select(i => $"Row {i}: *K1, p1; rep from * to end. {counts} sts.\n\n"))}");

        Assert.InRange(Cost("64 sizes, 1,000 rows", () => Compiler.Compile(Source(1_000))) / (double)Cost("64 sizes, 500 rows", () => Compiler.Compile(Source(500))), 1.8, 2.2);
    }

    [Fact]
    public void A_row_in_nine_sizes_costs_the_same_however_long_the_file()
    {
        var (few, many) = (MadeGarment.Source(250), MadeGarment.Source(MadeGarment.ManyRows));

        var (each, eachOfMany) = (Cost("check, 250 rows", () => Compiler.Compile(few)) / 250, Cost("check, 2,000 rows", () => Compiler.Compile(many)) / MadeGarment.ManyRows);

        Assert.InRange(eachOfMany, 0, 22_000);
        Assert.InRange(eachOfMany / (double)each, 0.8, 1.1);
    }

    private long Cost(string what, Action work)
    {
        work();
        var before = GC.GetAllocatedBytesForCurrentThread();
        work();
        var cost = GC.GetAllocatedBytesForCurrentThread() - before;
        output.WriteLine($"{what}: {cost:N0} bytes");
        return cost;
    }
}
