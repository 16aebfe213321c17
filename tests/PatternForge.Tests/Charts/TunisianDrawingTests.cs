using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.Charts;

/// <summary>Rows of Tunisian crochet, open and filled meshes and edgings as diagrams: each stitch over its place, nothing guessed.</summary>
public class TunisianDrawingTests
{
    internal const string Cloth = """
        ## Cloth

        Ch 13.

        Row 1: Pull up a loop in 2nd ch from hook and in each ch across (13 loops on hook); return.

        Row 2: Sk first st, [tks, tps] across to last 2 sts, tks, end st. RetP.

        Row 3: Tss2tog, tss to last 3 sts, tss2tog, tss in last st. 11 sts.

        Row 4: Tss in next st, M1, tss to last 2 sts, M1, tss in last 2 sts. 13 sts.

        Row 5: Tfs in next 2 sts, ttw in next 2 sts, tdc in next 3 sts, trs in next 2 sts, etss in next 3 sts.

        ```chart
        ```

        Bind off: Sl st in each st across as if to tss. Fasten off.
        """;

    internal const string Filet = """
        ## Net

        Ch 24.

        Row 1 (RS): Dc in 4th ch from hook and in each ch across. (22 sts)

        Row 2: Ch 3, turn, skip first st, dc in next 3 sts, (ch 2, skip next 2 sts, dc in next st) 5 times, dc in next 3 sts.

        Row 3: Ch 3, turn, skip first st, dc in next 3 sts, ch 2, dc in next dc, (2 dc in next ch-2 sp, dc in next dc) 3 times, ch 2, dc in next dc, dc in next 3 sts.

        Row 4: Ch 3, turn, skip first st, dc in next 3 sts, ch 2, dc in next dc, (ch 2, skip next 2 sts, dc in next st) 3 times, ch 2, dc in next dc, dc in next 3 sts.

        ```chart
        ```
        """;

    private const string Edging = """
        ## Edging

        Row 1 (RS): Work 21 sc evenly along the edge. (21 sts)

        Row 2: Ch 1, turn, sc in first st, *skip next st, 5 dc in next st, skip next st, sc in next st; rep from * across.

        ```chart
        ```
        """;

    [Fact]
    public void Each_row_of_tunisian_crochet_stands_over_the_one_below_with_its_loop_on_the_hook()
    {
        var diagram = Assert.Single(Compile(Cloth, "tunisian").Diagrams);

        Assert.True(diagram.IsTunisian);
        Assert.Equal((DiagramStart.Chain, 13), (diagram.Start, diagram.StartCount));
        Assert.Equal([13, 13, 11, 13, 13], diagram.Rows.Select(r => r.Tops));
        Assert.All(diagram.Rows, r => Assert.True(r.IsFront)); // none is turned
        Assert.Equal([0, 0], diagram.Rows.Take(2).Select(r => r.Stitches[0].Bases[0].Top));
        Assert.Equal(2, diagram.Rows[2].Stitches.Count(s => s.Bases.Length == 2));
    }

    [Theory]
    [InlineData(Cloth, "tunisian", "tunisian")]
    [InlineData(Filet, "crochet", "filet")]
    [InlineData(Edging, "crochet", "edging")]
    public void The_drawing_is_the_one_that_was_looked_at_and_approved(string body, string craft, string name)
    {
        var drawing = Draw(body, craft);

        Assert.NotNull(drawing);
        Golden.Match(drawing.Alone.Replace("><", ">\n<", StringComparison.Ordinal), $"charts/{name}.svg");
    }

    [Fact]
    public void Every_stitch_of_a_row_has_a_wave_of_its_return_pass_and_none_of_them_overlap()
    {
        var drawing = Draw(Cloth, "tunisian")!;
        var waves = XElement.Parse(drawing.Sheets[0]).Descendants().Where(e => e.Name.LocalName == "path" && e.Attribute("d")!.Value.Contains("-7 8 0t8", StringComparison.Ordinal))
            .Select(e => e.Attribute("d")!.Value[1..e.Attribute("d")!.Value.IndexOf('q', StringComparison.Ordinal)].Split(' ')).Select(p => (X: double.Parse(p[0], System.Globalization.CultureInfo.InvariantCulture), Y: p[1])).ToArray();

        Assert.Equal([13, 13, 11, 13, 13], waves.GroupBy(w => w.Y).Select(g => g.Count()));
        foreach (var row in waves.GroupBy(w => w.Y))
        {
            var places = row.Select(w => w.X).Order().ToArray();
            Assert.All(places.Zip(places.Skip(1)), p => Assert.True(p.Second - p.First > 16, $"waves at {p.First} and {p.Second}"));
        }
    }

    [Fact]
    public void A_stitch_without_a_mark_is_not_guessed()
    {
        const string Body = "## Cloth\n\nBegin with 9 sts.\n\nRow 1: Sk first st, ripple in next st, tss in each st across; return.\n\n```chart\n```\n";
        const string Own = "stitches: {ripple: {how: Draw up a tall loop, takes: 1, makes: 1}}";

        Assert.Contains(Assert.Single(Compile(Body, "tunisian", Own).Diagrams).Rows[0].Stitches, s => s.Stitch?.IsSpecial == true);
        Assert.Null(Draw(Body, "tunisian", Own));
        Assert.NotNull(Draw(Body.Replace("ripple", "tks", StringComparison.Ordinal), "tunisian"));
    }

    [Fact]
    public void An_edging_stands_side_by_side_on_the_edge_that_it_is_worked_along()
    {
        var diagram = Assert.Single(Compile(Edging, "crochet").Diagrams);

        Assert.Equal((DiagramStart.Edge, 21), (diagram.Start, diagram.StartCount));
        Assert.Equal(Enumerable.Range(0, 21), diagram.Rows[0].Stitches.Select(s => s.Bases[0].Top));
    }

    private static Drawing? Draw(string body, string craft, string header = "sizes: one size") =>
        Compile(body, craft, header).Diagrams is [var diagram] ? DiagramDrawing.Of(diagram, "chart", Dialect.Us, SizeSet.One, "The rows.") : null;

    internal static Compilation Compile(string body, string craft, string header = "sizes: one size")
    {
        var compiled = Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour cloth\ncraft: {craft}\nterms: us\n{header}\n---\n\n{body}\n"));
        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        return compiled;
    }
}
