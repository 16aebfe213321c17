using System.Globalization;
using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.Rendering;

/// <summary>Crochet diagrams: which are drawn, what goes where, and that nothing stands on anything else.</summary>
public sealed class DiagramTests
{
    private const double Apart = 8;

    private const string FlatCircle = """
        ## Circle

        Make a magic ring.

        Rnd 1: 6 sc in ring. (6 sc)

        Rnd 2: 2 sc in each st around. (12 sc)

        Rnd 3: *Sc in next st, inc; rep from * around. (18 sc)

        Rnd 4: *Sc in next 2 sts, inc; rep from * around. (24 sc)

        Rnd 5: *Sc in next 3 sts, inc; rep from * around. (30 sc)

        Rnd 6: *Sc in next 4 sts, inc; rep from * around. (36 sc)

        Rnd 7: *Sc in next 5 sts, inc; rep from * around. (42 sc)

        Rnd 8: *Sc in next 6 sts, inc; rep from * around. (48 sc)

        Rnd 9: *Sc in next 7 sts, inc; rep from * around. (54 sc)

        Rnd 10: *Sc in next 8 sts, inc; rep from * around. (60 sc)

        Rnd 11: *Sc in next 9 sts, inc; rep from * around. (66 sc)

        Rnd 12: *Sc in next 10 sts, inc; rep from * around. (72 sc)
        """;

    public static TheoryData<string> Motifs => [.. DiagramSources.Motifs.Keys];

    public static TheoryData<string> Patterns => [.. DiagramSources.Patterns.Keys];

    [Fact]
    public void A_plain_round_has_its_stitches_evenly_spaced()
    {
        var layout = DiagramLayout.Of(Only(FlatCircle));
        for (var round = 0; round < 12; round++)
        {
            var angles = Heads(layout, round).Select(m => m.Head.Angle).Order().ToArray();
            var steps = angles.Select((a, i) => i == 0 ? a + (2 * Math.PI) - angles[^1] : a - angles[i - 1]).ToArray();
            Assert.Equal(6 * (round + 1), angles.Length);
            Assert.All(steps, s => Assert.Equal(2 * Math.PI / angles.Length, s, 2.0e-2 / angles.Length));
        }
    }

    [Fact]
    public void Twelve_rounds_of_a_flat_circle_keep_apart()
    {
        var layout = DiagramLayout.Of(Only(FlatCircle));
        for (var round = 1; round < 12; round++)
        {
            Assert.True(Heads(layout, round).Min(m => m.Head.Length) - Heads(layout, round - 1).Max(m => m.Head.Length) > 10, $"round {round + 1} stands too near to the one before it");
        }

        AssertApart(layout);
    }

    [Theory]
    [MemberData(nameof(Motifs))]
    public void No_two_heads_of_a_motif_are_too_near(string name)
    {
        AssertApart(DiagramLayout.Of(Only(DiagramSources.Motifs[name])));
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public void Rows_stand_on_each_other_and_not_in_each_other(string name)
    {
        var layout = DiagramLayout.Of(Only(DiagramSources.Patterns[name]));
        AssertApart(layout);
        foreach (var mark in layout.Marks.Where(m => m.Stitch.Mark == DiagramMark.Stitch))
        {
            Assert.All(mark.Feet, f => Assert.True(f.Y < mark.Head.Y, "a stitch stands over its foot"));
        }
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public void Rows_alternate_from_right_to_left_and_back(string name)
    {
        var layout = DiagramLayout.Of(Only(DiagramSources.Patterns[name]));
        foreach (var row in layout.Marks.Where(m => m.Stitch is { Mark: DiagramMark.Stitch, Top: >= 0 }).GroupBy(m => m.Row))
        {
            var xs = row.Select(m => m.Head.X * (row.Key % 2 == 0 ? -1 : 1)).ToArray();
            Assert.Equal(xs.Order(), xs);
        }
    }

    [Fact]
    public void A_granny_square_has_real_corners()
    {
        var layout = DiagramLayout.Of(Only(DiagramSources.Motifs["granny"]));
        var corners = layout.Marks.Where(m => m is { Row: 3, Stitch: { Mark: DiagramMark.Chains, Chains: 2 } }).Select(m => m.Head).ToArray();
        Assert.Equal(4, corners.Length);
        var side = Heads(layout, 3).Max(m => m.Head.Y);
        Assert.All(corners, c => Assert.InRange(Math.Abs(c.X) / Math.Abs(c.Y), 0.98, 1.02));
        Assert.All(corners, c => Assert.InRange(Math.Abs(c.X), side * 0.93, side * 1.07));
    }

    [Fact]
    public void Every_stitch_stands_on_what_it_is_worked_into()
    {
        var layout = DiagramLayout.Of(Only(DiagramSources.Motifs["granny"]));
        var corner = layout.Marks.Where(m => m is { Row: 0, Stitch.Mark: DiagramMark.Chains }).Select(m => m.Head).ToArray();
        var groups = layout.Marks.Where(m => m is { Row: 1, Stitch.Top: >= 0 } && m.Stitch.Mark != DiagramMark.Chains).GroupBy(m => Array.FindIndex(corner, c => c.DistanceTo(m.Feet[0]) < 6)).ToArray();
        Assert.Equal([0, 1, 2, 3], groups.Select(g => g.Key).Order());
        Assert.All(groups, g => Assert.Equal(6, g.Count()));
    }

    [Fact]
    public void Stitches_worked_together_have_several_feet_and_one_head()
    {
        var diagram = Only(DiagramSources.Patterns["waves"]);
        var together = diagram.Rows.SelectMany(r => r.Stitches).Where(s => s.Stitch?.Id == "dc2tog").ToArray();
        Assert.NotEmpty(together);
        Assert.All(together, s => Assert.Equal(2, s.Bases.Distinct().Count()));
    }

    [Theory]
    [InlineData("Row 2: Ch 1, sc in blo of each sc to end, turn.", StitchLoop.Back)]
    [InlineData("Row 2: Ch 1, working in back loops only, sc in each sc to end, turn.", StitchLoop.Back)]
    [InlineData("Row 2: Ch 1, sc in the front loop only of each sc to end, turn.", StitchLoop.Front)]
    [InlineData("Row 2: Ch 1, sc in each sc to end, turn.", StitchLoop.Both)]
    public void A_stitch_in_one_loop_alone_is_marked_so(string row, StitchLoop loop)
    {
        var diagram = Only($"## Ribs\n\nCh 6.\n\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn.\n\n{row}\n\n```chart\n```\n");
        Assert.All(diagram.Rows[0].Stitches, s => Assert.Equal(StitchLoop.Both, s.Loop));
        Assert.All(diagram.Rows[1].Stitches.Where(s => s.Mark == DiagramMark.Stitch), s => Assert.Equal(loop, s.Loop));
        Assert.Equal(loop != StitchLoop.Both, Drawing(diagram, SizeSet.One).Key.Any(k => k.Meaning.Contains("loop only", StringComparison.Ordinal)));
    }

    [Fact]
    public void Loops_alternate_within_a_repeat_as_the_row_says()
    {
        var diagram = Only("## Ribs\n\nCh 7.\n\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn.\n\nRow 2: Ch 1, *sc in blo of next sc, sc in flo of next sc; rep from * to end, turn.\n\n```chart\n```\n");
        Assert.Equal([StitchLoop.Back, StitchLoop.Front, StitchLoop.Back, StitchLoop.Front, StitchLoop.Back, StitchLoop.Front], diagram.Rows[1].Stitches.Where(s => s.Mark == DiagramMark.Stitch).Select(s => s.Loop));
    }

    [Fact]
    public void Rounds_of_several_yarns_carry_the_letter_of_theirs_and_a_key_tells_it()
    {
        var compilation = Compiler.Compile(new SourceText("mat.pattern.md", File.ReadAllText(RepositoryRoot.Path("examples", "mooring-square-mat.pattern.md"))));
        var diagram = Assert.Single(compilation.Diagrams);
        Assert.Equal(["A", "B", "C", "A", "B", "C", "A", "B", "B"], diagram.Rows.Select(r => r.Yarn));
        var drawing = DiagramDrawing.Of(diagram, "chart", Dialect.Us, SizeSet.One, "The rounds.", compilation.Pattern.Facts.Yarns)!;
        Assert.Equal(["A", "B", "C"], drawing.Key.TakeLast(3).Select(k => k.Name));
        Assert.Contains("Sailcloth", drawing.Key[^2].Meaning, StringComparison.Ordinal);
        Assert.Contains(">2 B</text>", drawing.Sheets[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_round_changes_its_yarn_on_the_way_no_letters_are_shown()
    {
        var source = File.ReadAllText(RepositoryRoot.Path("examples", "mooring-square-mat.pattern.md")).Replace("Rnd 3: Join C with a sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1,", "Rnd 3: Join C with a sl st in any ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, with A, 3 dc in next ch-1 sp, ch 1,", StringComparison.Ordinal);
        Assert.All(Compiler.Compile(new SourceText("mat.pattern.md", source)).Diagrams.SelectMany(d => d.Rows), r => Assert.Null(r.Yarn));
    }

    [Fact]
    public void A_ball_is_no_motif_and_gets_no_chart_by_itself()
    {
        var ball = FlatCircle[..FlatCircle.IndexOf("Rnd 4", StringComparison.Ordinal)].Replace("Circle", "Ball", StringComparison.Ordinal)
            + string.Concat(Enumerable.Range(4, 8).Select(n => $"Rnd {n.ToString(CultureInfo.InvariantCulture)}: Sc in each st around. (18 sc)\n\n"));
        Assert.Empty(Compile(ball).Diagrams);
        var asked = Assert.Single(Compile(ball + "\n```chart\nrounds: 1-3\n```\n").Diagrams);
        Assert.Equal(3, asked.Rows.Length);
    }

    [Fact]
    public void Rows_that_were_not_understood_or_go_where_no_drawing_shows_give_none()
    {
        Assert.Empty(Compile("## Panel (multiple of 4 + 1)\n\nRow 1: Sc in first st, frobnicate the next 3 sts; rep to end, turn.\n\n```chart\n```\n").Diagrams);
    }

    [Fact]
    public void An_oval_goes_along_both_sides_of_its_chain_and_round_its_ends()
    {
        var diagram = Only("## Oval\n\nCh 10.\n\nRnd 1: Sc in 2nd ch from hook and in next 7 chs, 3 sc in last ch; working along the other side of the chain, sc in next 7 chs, 2 sc in last ch. (20 sc)\n\nRnd 2: 2 sc in first st, sc in next 7 sts, 2 sc in each of next 3 sts, sc in next 7 sts, 2 sc in each of next 2 sts. (26 sc)\n\nRnd 3: Sc in next st, 2 sc in next st, sc in next 7 sts, [sc in next st, 2 sc in next st] 3 times, sc in next 7 sts, [sc in next st, 2 sc in next st] twice. (32 sc)\n\n```chart\n```\n");
        Assert.Equal(DiagramStart.BothSides, diagram.Start);
        var layout = DiagramLayout.Of(diagram);
        Assert.True(layout.IsClear);
        AssertApart(layout);
        Assert.Equal(9, layout.Start.Count); // ten chains, one of them skipped at the hook
        var first = Heads(layout, 0).ToArray();
        Assert.Equal(20, first.Length);
        Assert.All(first[..8], m => Assert.True(m.Head.Y > 5 && Math.Abs(m.Head.X - m.Feet[0].X) < 8, "the first side stands above the chain, each stitch over its place"));
        Assert.All(first[11..18], m => Assert.True(m.Head.Y < -5 && Math.Abs(m.Head.X - m.Feet[0].X) < 8, "the other side hangs below it"));
        Assert.True(first[9].Head.X < layout.Start.Min(o => o.Centre.X) - 8); // the middle one of three in the last chain points along it
        for (var round = 1; round < 3; round++)
        {
            Assert.True(Heads(layout, round).Min(m => Math.Abs(m.Head.Y)) >= 0 && Heads(layout, round).Max(m => m.Head.Y) > Heads(layout, round - 1).Max(m => m.Head.Y) + 10);
            Assert.True(Heads(layout, round).Max(m => m.Head.X) > Heads(layout, round - 1).Max(m => m.Head.X) + 8);
        }
    }

    [Fact]
    public void A_named_stitch_without_a_definition_has_the_mark_of_its_kind()
    {
        var diagram = Only("## Bumps\n\nCh 6.\n\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn.\n\nRow 2: Ch 1, sc in first st, popcorn in next st, sc in next 3 sts, turn.\n\n```chart\n```\n");
        var popcorn = diagram.Rows[1].Stitches.Single(s => s.Stitch?.Id == "popcorn").Stitch!;
        Assert.StartsWith("popcorn", CrochetMarks.LookOf(popcorn), StringComparison.Ordinal);
        Assert.True(DiagramMeasures.HeightOf(popcorn) > DiagramMeasures.HeightOf(OperationTable.Find(Craft.Crochet, Dialect.Us, "sc")));
    }

    [Fact]
    public void Omitting_charts_leaves_them_out_and_asking_brings_them_back()
    {
        Assert.Empty(Compile(DiagramSources.Motifs["granny"], "omit: [charts]").Diagrams);
        Assert.Single(Compile(DiagramSources.Motifs["granny"] + "\n```chart\n```\n", "omit: [charts]").Diagrams);
    }

    [Fact]
    public void Sizes_that_differ_get_the_chart_of_the_first_one_and_it_says_so()
    {
        var diagram = Assert.Single(Compile("## Strip\n\nCh 6 (8).\n\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn. (5 (7) sc)\n\nRow 2: Ch 1, sc in each sc to end, turn. (5 (7) sc)\n\n```chart\n```\n", "sizes:\n  names: S (M)").Diagrams);
        Assert.Equal(0, diagram.Size);
        Assert.Contains("size S", Drawing(diagram, new SizeSet(["S", "M"])).Title, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Motifs))]
    public void The_picture_is_sound_xml_without_script_or_anything_fetched(string name)
    {
        var diagram = Only(DiagramSources.Motifs[name]);
        var first = Drawing(diagram, SizeSet.One);
        Assert.Equal(first.Alone, Drawing(Only(DiagramSources.Motifs[name]), SizeSet.One).Alone);
        foreach (var text in new[] { first.Sheets[0], first.Alone })
        {
            var root = XDocument.Parse(text).Root!;
            Assert.DoesNotContain(root.DescendantsAndSelf(), e => e.Name.LocalName is "script" or "style" or "image" or "foreignObject" or "a" or "use");
            Assert.DoesNotContain(root.DescendantsAndSelf().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || a.Name.LocalName == "href" || (a.Value.Contains("url(", StringComparison.Ordinal)));
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Rows_without_their_foundation_stand_on_a_line_and_on_the_right_places()
    {
        var layout = DiagramLayout.Of(Only("## Texture (multiple of 4 + 1)\n\nRow 1: Ch 1, sc in each st to end, turn.\n\nRow 2: Ch 1, sc in each st to end, turn.\n\nRow 3: Ch 1, sc in first st, *2 dc in next st, sk 1 st, sc in next 2 sts; rep from * to end, turn.\n"));
        Assert.True(layout.IsClear);
        Assert.All(Heads(layout, 0).Concat(Heads(layout, 1)), m => Assert.Equal(m.Feet[0].X, m.Head.X, 0.01));
        var part = DiagramLayout.Of(Only("## Texture (multiple of 4 + 1)\n\nRow 1: Ch 1, sc in each st to end, turn.\n\nRow 2: Ch 1, sc in first st, dc in each st to end, turn.\n\n```chart\nrows: 2-2\n```\n"));
        var short_ = Assert.Single(Heads(part, 0), m => m.Stitch.Stitch!.Id == "sc");
        Assert.Equal(Heads(part, 0).Min(m => m.Head.X), short_.Head.X); // a row of the wrong side begins at the left
        Assert.All(Heads(part, 0), m => Assert.Equal(m.Feet[0].X, m.Head.X, 0.01));
    }

    [Fact]
    public void The_key_has_what_is_used_and_nothing_else_in_the_patterns_own_terms()
    {
        var us = Drawing(Only(DiagramSources.Motifs["granny"]), SizeSet.One).Key.Select(k => k.Name);
        Assert.Equal(["ring of 4 ch", "ch", "sl st", "dc"], us);
        var british = Compile(DiagramSources.Motifs["granny"].Replace("dc", "tr", StringComparison.Ordinal), "", "uk").Diagrams;
        var key = DiagramDrawing.Of(Assert.Single(british), "id", Dialect.Uk, SizeSet.One, "words")!.Key;
        Assert.Contains(key, k => k is { Name: "tr", Meaning: "treble" });
    }

    [Theory]
    [InlineData("granny")]
    [InlineData("shells")]
    public void The_pictures_are_as_they_were_looked_at(string name)
    {
        var source = DiagramSources.Motifs.TryGetValue(name, out var motif) ? motif : DiagramSources.Patterns[name];
        Golden.Match(Drawing(Only(source), SizeSet.One).Alone, $"charts/crochet-{name}.svg");
    }

    private static IEnumerable<PlacedMark> Heads(DiagramLayout layout, int row) =>
        layout.Marks.Where(m => m.Row == row && m.Stitch is { Mark: DiagramMark.Stitch } or { Mark: DiagramMark.TurningChain, Counts: true });

    /// <summary>No two heads are nearer than a set distance, and no head stands on a chain.</summary>
    private static void AssertApart(DiagramLayout layout)
    {
        var heads = layout.Marks.Where(m => m.Stitch is { Mark: DiagramMark.Stitch, Bases: not [{ Kind: DiagramPlace.OwnFirst }] } or { Mark: DiagramMark.TurningChain, Counts: true }).ToArray();
        for (var i = 0; i < heads.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Assert.True(heads[i].Head.DistanceTo(heads[j].Head) >= Apart, $"{heads[i].Stitch.Stitch!.Id} in row {heads[i].Row} and {heads[j].Stitch.Stitch!.Id} in row {heads[j].Row} are {heads[i].Head.DistanceTo(heads[j].Head):0.0} apart");
            }
        }

        foreach (var (chains, oval) in layout.Marks.Where(m => m.Stitch.Mark == DiagramMark.Chains).SelectMany(m => m.Ovals.Select(o => (m, o))))
        {
            Assert.DoesNotContain(heads, h => h.Row == chains.Row && h.Head.DistanceTo(oval.Centre) < 5);
        }

        foreach (var number in layout.Numbers)
        {
            Assert.DoesNotContain(heads, h => h.Head.DistanceTo(number.At) < 5);
        }
    }

    private static Drawing Drawing(CrochetDiagram diagram, SizeSet sizes) => DiagramDrawing.Of(diagram, "chart-1", Dialect.Us, sizes, "The rows.")!;

    private static CrochetDiagram Only(string body) => Assert.Single(Compile(body).Diagrams);

    private static Compilation Compile(string body, string more = "", string terms = "us") =>
        Compiler.Compile(new SourceText("test.pattern.md", $"---\ntitle: Test\ncraft: crochet\nterms: {terms}\n{more}\n---\n\n{body}\n"));
}
