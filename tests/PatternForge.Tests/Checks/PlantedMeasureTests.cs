using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>A clean pattern with one mistake planted around the rows: just that finding, at its place and for its sizes.</summary>
public class PlantedMeasureTests
{
    private const string Hat = """
        ---
        title: Harbour hat
        craft: knitting
        terms: us
        audience: adults
        sizes:
          names: S (M, L)
          fits: {head: 52 (56, 60) cm}
          finished: {circumference: 48 (52, 56) cm}
          ease: 4 cm of negative ease
        gauge: 20 sts and 28 rounds = 10 cm in stockinette on 4.5 mm, blocked
        yarn:
          - name: Quayside Wool
            fibre: 75% wool, 25% nylon
            weight: worsted
            put-up: 100 g = 200 m
            needs: 120 (135, 150) m
            alternatives:
              - {name: Brackwater Plain, put-up: 50 g = 98 m}
        tools: [US 7 (4.5 mm) circular needle]
        sample: {size: M, used: 60 g}
        links: [How to block: https://example.com/blocking]
        ---

        ## Hat

        CO 96 (104, 112) sts. Join in the round.

        Rnds 1-10: *K2, p2; rep from * around.

        Rnds 11-40: Knit.

        Rnd 41: *K6, k2tog; rep from * around. 84 (91, 98) sts.

        BO all sts.

        """;

    private const string Pullover = """
        ---
        title: Harbour pullover
        craft: knitting
        terms: us
        audience: women
        sizes:
          names: S (M)
          fits: {bust: 84 (94) cm}
          finished: {bust: 90 (100) cm, length: 40 cm}
          ease: 6 cm
        measured: {length: rows of Back}
        seam: 1 st each edge
        gauge:
          - {name: plain, stitch: stockinette, over: 10 x 10 cm, stitches: 20, rows: 30, tool: 4.5 mm, state: blocked}
          - {name: cables, stitch: the cable panel, over: 10 x 10 cm, stitches: 26, rows: 30, tool: 4.5 mm, state: blocked}
        yarn:
          - {name: Quayside Wool, fibre: 100% wool, weight: worsted, put-up: 100 g = 200 m, needs: 900 (1000) m}
        tools: [4.5 mm needles]
        ---

        ## Back

        Worked in stockinette.

        CO 92 (102) sts.

        Row 1: Knit.

        Row 2: Purl.

        Rep Rows 1 and 2 59 more times.

        BO all sts.

        ## Front

        Worked in stockinette.

        CO 92 (102) sts.

        Row 1: Knit.

        Row 2: Purl.

        Rep Rows 1 and 2 59 more times.

        BO all sts.

        """;

    private static string[] Found(string text) =>
        [.. Compiler.Compile(new SourceText("x.pattern.md", text)).Findings.Where(f => f.Rule.Code is not ("PF805" or "PF808") && f.Rule.Code[2] is '6' or '7' or '9' or '1').Select(f => $"{f.Rule.Code} {string.Join(',', f.Sizes)} «{f.Source.ToString(f.Span)}»")];

    [Fact]
    public void The_patterns_are_clean()
    {
        Assert.Empty(Found(Hat));
        Assert.Empty(Found(Pullover));
        Assert.Empty(Compiler.Compile(new SourceText("x.pattern.md", Hat)).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Message));
        Assert.Empty(Compiler.Compile(new SourceText("x.pattern.md", Pullover)).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Message));
    }

    [Theory]
    [InlineData("circumference: 48 (52, 56) cm", "circumference: 48 (58, 66) cm", "PF618 1,2 «48 (58, 66) cm»")]
    [InlineData("circumference: 48 (52, 56) cm", "circumference: 19 (20½, 22) in", "")]
    [InlineData("circumference: 48 (52, 56) cm", "circumference: 24 (26, 28) cm", "PF618  «24 (26, 28) cm»")]
    [InlineData("head: 52 (56, 60) cm", "head: 52 (50, 60) cm", "PF622 1 «48 (52, 56) cm»")]
    [InlineData("4 cm of negative ease", "4 cm of positive ease", "PF622  «48 (52, 56) cm»")]
    [InlineData("head: 52 (56, 60) cm", "head: 20 (22, 24) cm", "PF623  «20 (22, 24) cm»")]
    [InlineData("weight: worsted", "weight: super bulky", "PF712  «name: Quayside Wool»|PF625  «20 sts and 28 rounds = 10 cm in stockinette on 4.5 mm, blocked»")]
    [InlineData("20 sts and 28 rounds = 10 cm", "20 sts and 28 rounds = 4 in", "")]
    [InlineData("put-up: 100 g = 200 m", "put-up: 10 g = 200 m", "PF712  «name: Quayside Wool»")]
    [InlineData("put-up: 50 g = 98 m", "put-up: 50 g = 150 m", "PF713  «{name: Brackwater Plain, put-up: 50 g = 150 m}»")]
    [InlineData("75% wool, 25% nylon", "75% wool, 20% nylon", "PF715  «name: Quayside Wool»")]
    [InlineData("    fibre: 75% wool, 25% nylon\n", "", "PF716  «name: Quayside Wool»")]
    [InlineData("used: 60 g", "used: 90 g", "PF714 1 «{size: M, used: 90 g}»")]
    [InlineData("US 7 (4.5 mm)", "US 8 (4.5 mm)", "PF708  «US 8 (4.5 mm) circular needle»")]
    [InlineData("US 7 (4.5 mm)", "4.45 mm", "PF709  «4.45 mm circular needle»")]
    [InlineData("US 7 (4.5 mm)", "size 7", "")]
    [InlineData("US 7 (4.5 mm)", "size 8", "PF710  «size 8 circular needle»")]
    [InlineData("https://example.com/blocking", "https:/example.com/blocking", "PF901  «How to block: https:/example.com/blocking»")]
    [InlineData("https://example.com/blocking", "javascript:alert(1)", "PF901  «How to block: javascript:alert(1)»")]
    [InlineData("https://example.com/blocking", "https://nowhere/blocking", "PF901  «How to block: https://nowhere/blocking»")]
    [InlineData("https://example.com/blocking", "mailto:help@example.com", "")]
    [InlineData("CO 96 (104, 112) sts", "CO 96 (104, 112) sts <!-- as written -->", "")]
    public void A_mistake_in_the_hat_is_found(string from, string to, string expected)
    {
        Assert.Contains(from, Hat, StringComparison.Ordinal);
        var found = Found(Hat.Replace(from, to, StringComparison.Ordinal));
        Assert.Equal(expected.Split('|', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("bust: 90 (100) cm", "bust: 90 (112) cm", "PF618 1 «90 (112) cm»")]
    [InlineData("length: 40 cm}", "length: 60 cm}", "PF619  «60 cm»")]
    [InlineData("rows of Back", "rows of Bakc", "PF617  «rows of Bakc»")]
    [InlineData("measured: {length", "measured: {depth", "PF617  «rows of Back»")]
    [InlineData("rows of Back", "Back after Row 9", "PF617  «Back after Row 9»")]
    [InlineData("measured: {length: rows of Back}", "measured: {length: rows of Back, bust: {over: Back + Front, gauge: lace}}", "PF617  «{over: Back + Front, gauge: lace}»")]
    [InlineData("measured: {length: rows of Back}", "measured: {length: rows of Back, bust: {over: Back + Front, gauge: cables}}", "PF618  «90 (100) cm»")]
    [InlineData("measured: {length: rows of Back}", "measured: {length: rows of Back, bust: 2 x Back}", "")]
    [InlineData("seam: 1 st each edge", "seam: 9 sts each edge", "PF618  «90 (100) cm»")]
    [InlineData("seam: 1 st each edge", "seam: many", "PF124  «many»")]
    [InlineData("seam: 1 st each edge", "seam: none\nband-overlap: 30 cm", "PF618  «90 (100) cm»")]
    [InlineData("bust: 84 (94) cm}\n", "bust: 124 (134) cm}\n", "PF622  «90 (100) cm»|PF624  «124 (134) cm»")]
    public void A_mistake_in_the_pullover_is_found(string from, string to, string expected)
    {
        Assert.Contains(from, Pullover, StringComparison.Ordinal);
        Assert.Equal(expected.Split('|', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal), Found(Pullover.Replace(from, to, StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    // Where another piece, another stitch or ribbing could be meant, nothing is said.
    [Theory]
    [InlineData("Rnds 11-40: Knit.", "Rnds 11-40: *K2, p2; rep from * around.")]
    [InlineData("Rnds 11-40: Knit.", "Rnds 11-40: *C4F, k4; rep from * around.")]
    [InlineData("in stockinette on", "in ribbing on")]
    [InlineData("BO all sts.", "BO all sts.\n\n## Band\n\nCO 20 sts.\n\nRow 1: Knit.\n\nRow 2: Purl.\n\nBO all sts.")]
    [InlineData("Rnds 1-10: *K2, p2; rep from * around.", "Rnds 1-10: *K2, p2; rep from * whenever it pleases.")]
    public void Where_it_is_not_sure_what_is_measured_nothing_is_said(string from, string to)
    {
        Assert.Contains(from, Hat, StringComparison.Ordinal);
        var text = Hat.Replace("circumference: 48 (52, 56) cm", "circumference: 68 (72, 76) cm", StringComparison.Ordinal).Replace("  ease: 4 cm of negative ease\n", "", StringComparison.Ordinal);
        Assert.Contains(Found(text), f => f.StartsWith("PF618", StringComparison.Ordinal));
        Assert.DoesNotContain(Found(text.Replace(from, to, StringComparison.Ordinal)), f => f.StartsWith("PF618", StringComparison.Ordinal));
    }

    [Fact]
    public void The_tolerance_can_be_set()
    {
        var text = Hat.Replace("circumference: 48 (52, 56) cm", "circumference: 50 (54, 58) cm", StringComparison.Ordinal).Replace("  ease: 4 cm of negative ease\n", "", StringComparison.Ordinal);
        Assert.Empty(Found(text));
        var strict = CompileOptions.Default with { Tolerances = new() { Measurement = 0.01m } };
        var finding = Assert.Single(Compiler.Compile(new SourceText("x.pattern.md", text), strict).Findings, f => f.Rule.Code == "PF618");
        Assert.Contains("where 1 % are allowed", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("terms: us\n", "a little heavier, 100% cotton", "")]
    [InlineData("terms: us\n", "100% cotton", "PF713")]
    public void An_alternative_that_says_what_to_expect_is_left_alone(string anchor, string note, string expected)
    {
        Assert.Contains(anchor, Hat, StringComparison.Ordinal);
        var text = Hat.Replace("put-up: 50 g = 98 m", $"put-up: 50 g = 70 m, note: \"{note}\"", StringComparison.Ordinal);
        Assert.Equal(expected, string.Join(' ', Found(text).Select(f => f[..5])));
    }

    // Mohair runs far, cotton runs short: both are left alone at what would be strange in wool.
    [Theory]
    [InlineData("100% mohair", "50 g = 200 m", "")]
    [InlineData("100% wool", "50 g = 200 m", "PF712")]
    [InlineData("100% cotton", "50 g = 55 m", "")]
    [InlineData("100% wool", "50 g = 55 m", "PF711")]
    public void Fibres_are_allowed_for(string fibre, string putUp, string expected)
    {
        var text = Hat.Replace("75% wool, 25% nylon", fibre, StringComparison.Ordinal).Replace("put-up: 100 g = 200 m", $"put-up: {putUp}", StringComparison.Ordinal)
            .Replace("    alternatives:\n      - {name: Brackwater Plain, put-up: 50 g = 98 m}\n", "", StringComparison.Ordinal).Replace("sample: {size: M, used: 60 g}\n", "", StringComparison.Ordinal);
        Assert.Equal(expected, string.Join(' ', Found(text).Select(f => f[..5])));
    }

    [Fact]
    public void A_finding_that_rests_on_a_table_names_it()
    {
        foreach (var (from, to, words) in new[]
        {
            ("head: 52 (56, 60) cm", "head: 20 (22, 24) cm", "Craft Yarn Council"),
            ("weight: worsted", "weight: super bulky", "Craft Yarn Council, Standard Yarn Weight System"),
            ("put-up: 100 g = 200 m", "put-up: 10 g = 200 m", "common practice"),
        })
        {
            Assert.Contains(Compiler.Compile(new SourceText("x", Hat.Replace(from, to, StringComparison.Ordinal))).Findings, f => f.Message.Contains(words, StringComparison.Ordinal) && !f.Rule.Sources.IsEmpty);
        }
    }
}
