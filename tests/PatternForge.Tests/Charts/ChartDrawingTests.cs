using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.Charts;

/// <summary>What knitting charts look like: well-formed, harmless, the same every time, nothing over anything else.</summary>
public class ChartDrawingTests
{
    private const string Sampler = """
        ## Rope (panel of 14 sts)

        Row 1 (RS): P2, k4, p2, k2tog, yo, kfb, p2tog, m1l, p1.

        Row 2: K2, p4, k to end.

        Row 3: P2, C4F, p2, 2/2 LPC, ssk, k1 tbl.

        Row 4: Purl.

        Row 5: 3/3 RC, T3B, LT, RT, p1, M1L.
        """;

    private const string Stranded = """
        ## Peaks

        CO 40 (48) sts with MC. Join to work in the round.

        Rnd 1: *K3 MC, k1 CC; rep from * around.

        Rnd 2: *K1 MC, [k1 CC, k1 MC] once, k1 CC; rep from * around.

        Rnd 3: With CC, knit.

        ```chart
        ```
        """;

    private const string TwoYarns = "sizes: S (M)\nyarn:\n  - {label: MC, name: Quay Wool, colours: [Slate]}\n  - {label: CC, name: Quay Wool, colours: [Chalk], shade: '#d9b48f'}";

    [Theory]
    [InlineData(Sampler, "sizes: one size", "sampler")]
    [InlineData(Stranded, TwoYarns, "stranded")]
    public void A_drawing_is_the_one_that_was_looked_at_and_approved(string body, string header, string name)
    {
        var drawing = Draw(Assert.Single(Compile(body, header).Charts), header);

        Golden.Match(drawing.Alone.Replace("><", ">\n<", StringComparison.Ordinal), $"charts/{name}.svg");
        Assert.Equal(drawing.Alone, Draw(Assert.Single(Compile(body, header).Charts), header).Alone);
    }

    [Theory]
    [InlineData(Sampler, "sizes: one size")]
    [InlineData(Stranded, TwoYarns)]
    public void A_drawing_is_well_formed_and_fetches_and_runs_nothing(string body, string header)
    {
        var drawing = Draw(Assert.Single(Compile(body, header).Charts), header);
        foreach (var svg in drawing.Sheets.Append(drawing.Alone).Concat(drawing.Key.Select(k => k.Svg)))
        {
            var elements = XElement.Parse(svg).DescendantsAndSelf().ToArray();
            Assert.All(elements, e => Assert.Contains(e.Name.LocalName, new[] { "svg", "title", "desc", "g", "path", "rect", "text" }));
            Assert.DoesNotContain(elements.Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || a.Name.LocalName is "href" || a.Value.Contains("url(", StringComparison.Ordinal));
        }

        var alone = XElement.Parse(drawing.Alone);
        Assert.Equal(drawing.Description, alone.Elements().Single(e => e.Name.LocalName == "desc").Value);
    }

    [Fact]
    public void A_title_with_signs_of_markup_stays_words()
    {
        var drawing = Draw(Assert.Single(Compile("## A <script> & \"b\" (multiple of 2)\n\nRow 1: *K1, p1; rep from * to end.", "sizes: one size").Charts), "");

        Assert.DoesNotContain("<script", drawing.Alone, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("A <script> & \"b\"", XElement.Parse(drawing.Alone).Elements().Single(e => e.Name.LocalName == "title").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_repeat_of_rounds_is_told_for_each_size()
    {
        var drawing = Draw(Assert.Single(Compile(Stranded, TwoYarns).Charts), TwoYarns);

        Assert.Contains("Work the stitches in the heavy frame 10 (12) times.", drawing.Notes);
        Assert.Equal(["k", "MC", "CC"], drawing.Key.Select(k => k.Name));
    }

    [Fact]
    public void A_long_chart_comes_in_sheets_that_overlap_by_a_row()
    {
        var rows = string.Join("\n\n", Enumerable.Range(1, 80).Select(n => $"Row {n}: {(n % 4 == 1 ? "*K1, p1; rep from * to end" : n % 2 == 1 ? "Knit" : "Purl")}."));
        var drawing = Draw(Assert.Single(Compile($"## Long (multiple of 2)\n\n{rows}", "sizes: one size").Charts), "");

        Assert.Equal(3, drawing.Sheets.Length);
        string[][] numbers = [.. drawing.Sheets.Select(s => XElement.Parse(s).Descendants().Where(e => e.Name.LocalName == "text" && e.Attribute("font-size")!.Value == "12").Select(e => e.Value).ToArray())];
        Assert.Equal("80", numbers[0][^1]);
        Assert.Equal(numbers[1][^1], numbers[0][0]);
        Assert.Equal(numbers[2][^1], numbers[1][0]);
        Assert.Equal(["28", "56"], new[] { numbers[2][^1], numbers[1][^1] });
        Assert.Equal(80 + 2, numbers.Sum(n => n.Length));
    }

    [Fact]
    public void The_height_is_that_of_its_rows_and_every_square_has_the_same_size()
    {
        var chart = Assert.Single(Compile(Sampler, "sizes: one size").Charts);
        var svg = XElement.Parse(Draw(chart, "").Sheets[0]);
        var frame = svg.Descendants().First(e => e.Name.LocalName == "rect");

        Assert.Equal((chart.Columns * 24).ToString(System.Globalization.CultureInfo.InvariantCulture), frame.Attribute("width")!.Value);
        Assert.Equal((chart.Rows.Length * 24).ToString(System.Globalization.CultureInfo.InvariantCulture), frame.Attribute("height")!.Value);
    }

    [Theory]
    [InlineData("Rnd 1: *K5 MC, k1 CC; rep from * around.", null)]
    [InlineData("Rnd 1: *K6 MC, k2 CC; rep from * around.", "CC is carried over 6 stitches on the back; more than 5 make a long strand")]
    [InlineData("Rnd 1: K1 CC, k38 MC, k1 CC, k8 MC.", "CC is carried over 38 stitches on the back; more than 5 make a long strand")]
    [InlineData("Rnd 1: With CC, knit.", null)]
    public void Long_strands_on_the_back_are_told(string row, string? message)
    {
        var found = Compile($"## Peaks\n\nCO 48 sts with MC. Join to work in the round.\n\n{row}", TwoYarns.Replace("S (M)", "one size", StringComparison.Ordinal)).Findings.Where(f => f.Rule.Code == "PF324").Select(f => f.Message);

        Assert.Equal(message is null ? [] : [message], found);
    }

    private static Drawing Draw(Chart chart, string header) =>
        ChartDrawing.Of(chart, "chart", Dialect.Us, chart.Repeat?.Times is null ? SizeSet.One : Compile("", header).Pattern.Facts.Sizes, Compile("", header).Pattern.Facts.Yarns);

    private static Compilation Compile(string body, string header) =>
        Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\ncraft: knitting\n{header}\n---\n\n{body}\n"));
}
