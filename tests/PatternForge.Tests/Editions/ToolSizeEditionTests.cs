using PatternForge.Core.Editions;

namespace PatternForge.Tests.Editions;

/// <summary>Needles and hooks in the words of the edition's readers. Sizes: common practice, charts of makers and shops.</summary>
public class ToolSizeEditionTests
{
    [Theory]
    [InlineData("US 7 needles", "4.5 mm (UK 7) needles")]
    [InlineData("US 7 (4.5 mm) circular needle, 80 cm long", "4.5 mm (UK 7) circular needle, 80 cm long")]
    [InlineData("4 mm (US 6) needles", "4 mm (UK 8) needles")]
    [InlineData("4 mm needles (US 6)", "4 mm needles (UK 8)")]
    [InlineData("US 6 needles (4 mm)", "4 mm needles (UK 8)")]
    [InlineData("US 4 (3.5 mm) needles", "3.5 mm needles")]
    [InlineData("US 4 needles (3.5 mm)", "3.5 mm needles")]
    [InlineData("4.5 mm (US 7, UK 7) needles", "4.5 mm (UK 7) needles")]
    [InlineData("US size 8 needles and US 6 needles", "5 mm (UK 6) needles and 4 mm (UK 8) needles")]
    [InlineData("a US H-8 hook", "a 5 mm (UK 6) hook")]
    [InlineData("a US 11 hook", "an 8 mm (UK 0) hook")]
    [InlineData("4 mm needles", "4 mm needles")]
    [InlineData("US 6 (7, 8) needles", "US 6 (7, 8) needles")]
    [InlineData("US P hook", "US P hook")]
    [InlineData("steel 7 hook", "steel 7 hook")]
    [InlineData("US 7 (5 mm) needles", "US 7 (5 mm) needles")]
    public void A_British_reader_gets_millimetres_and_the_British_number(string typed, string printed) => Assert.Contains($"tools: {printed}\n", EditionsOf.Text(Hat("us", $"tools: {typed}"), "uk"), StringComparison.Ordinal);

    [Theory]
    [InlineData("UK 7 needles", "4.5 mm (US 7) needles")]
    [InlineData("4 mm (UK 8) needles", "4 mm (US 6) needles")]
    [InlineData("7 mm (UK 2) needles", "7 mm needles")]
    [InlineData("UK 6 (5 mm) hook", "5 mm (US H-8) hook")]
    public void An_American_reader_gets_millimetres_and_the_American_number(string typed, string printed) => Assert.Contains($"tools: {printed}\n", EditionsOf.Text(Hat("uk", $"tools: {typed}"), "us"), StringComparison.Ordinal);

    [Theory]
    [InlineData("Change to US 7 needles and knit on.", "Change to 4.5 mm (UK 7) needles and knit on.")]
    [InlineData("With the smaller needle, size US 6 (4 mm), knit on.", "With the smaller needle, 4 mm (UK 8), knit on.")]
    [InlineData("Her shoe is a US 7, and the room is 12 m long.", "Her shoe is a US 7, and the room is 12 m long.")]
    [InlineData("Road US 7 leads there.", "Road US 7 leads there.")]
    public void In_prose_a_size_is_that_of_a_tool_where_one_is_named(string typed, string printed)
    {
        var text = EditionsOf.Text(Hat("us", "tools: 4 mm needles").Replace("## Hat", $"## About\n\n{typed}\n\n## Hat", StringComparison.Ordinal), "uk");
        Assert.Contains(printed.Replace("size ", "", StringComparison.Ordinal), text.Replace("size ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_and_the_gauge_have_the_readers_size_too()
    {
        var text = EditionsOf.Text(Hat("us", "gauge:\n  - stitch: stockinette\n    stitches: 20\n    over: 10 cm\n    tool: US 7").Replace("Rnd 1: Knit.", "With US 6 needles, knit 1 rnd.", StringComparison.Ordinal), "uk");
        Assert.Contains("tool: 4.5 mm (UK 7)\n", text, StringComparison.Ordinal);
        Assert.Contains("With 4 mm (UK 8) needles, knit 1 rnd.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_charts_cannot_decide_is_told_once()
    {
        var listed = EditionsOf.In(EditionsOf.Compile(Hat("us", "tools: US 6 (7, 8) needles")), "uk");
        Assert.Equal(["PF413"], listed.Findings.Select(f => f.Rule.Code));
        Assert.Equal("uk", Assert.Single(listed.Findings).Edition);
        var plain = EditionsOf.Compile(Hat("us", "tools: US P hook"));
        Assert.Contains(plain.Findings, f => f.Rule.Code == "PF710");
        Assert.Empty(EditionsOf.In(plain, "uk").Findings);
    }

    [Theory]
    [InlineData("worsted", "aran")]
    [InlineData("fingering", "4 ply")]
    [InlineData("bulky", "chunky")]
    [InlineData("sport", "sport")]
    [InlineData("DK", "DK")]
    public void A_weight_has_the_name_that_published_charts_give_it_and_a_yarn_keeps_its_own(string us, string uk)
    {
        var american = Hat("us", $"yarn:\n  - name: Harbour {us} weight\n    weight: {us}");
        var british = EditionsOf.Text(american, "uk");
        Assert.Contains($"name: Harbour {us} weight\n    weight: {uk}\n", british, StringComparison.Ordinal);
        Assert.Equal(american, EditionsOf.Text(british, "us"));
        Assert.Equal(EditionsOf.Compile(american).Pattern.Facts.Yarns[0].WeightClass, EditionsOf.Compile(british).Pattern.Facts.Yarns[0].WeightClass);
    }

    [Fact]
    public void An_edition_knows_what_it_is()
    {
        var plain = EditionsOf.Compile(Hat("us", "tools: 4 mm needles"));
        Assert.Null(plain.Edition);
        Assert.Equal("uk", EditionsOf.In(plain, "uk").Compilation!.Edition!.Name);
        Assert.True(EditionsOf.In(plain, "spelled-out").Compilation!.Edition!.IsInFull);
        Assert.Equal(Edition.All.Select(e => e.Name), Edition.All.Select(e => e.Form.Name));
    }

    private static string Hat(string terms, string header) => $"---\ntitle: Harbour hat\nterms: {terms}\n{header}\n---\n\n## Hat\n\nCast on 24 sts. Join to work in the round.\n\nRnd 1: Knit.\n";
}
