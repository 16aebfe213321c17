using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Drawings;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Charts;

/// <summary>Stripes and shares of yarn: read from the rows as they are worked, and silent where a yarn is in doubt.</summary>
public class StripeTests
{
    private const string Scarf = """
        ## Scarf

        With A, CO 40 (44) sts.

        Row 1 (RS): Knit.

        Row 2: Knit.

        Rows 3-6: With B, knit.

        Rows 7-8: With C, knit.

        Row 9: With A, knit.

        Row 10: Knit.

        Rows 11-58: Rep Rows 3-10.

        With B, knit 6 rows.

        With A, knit 20 rows. BO all sts.
        """;

    private const string Ball = """
        ## Ball

        With A, make a magic ring.

        Rnd 1: 6 sc in ring. (6)

        Rnd 2: 2 sc in each st around, changing to B in last st. (12)

        Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)

        Rnd 4: Sc in each st around. Change to A. (18)

        Rnds 5-7: Sc in each st around. (18)

        Rnd 8: With B, sc in each st around. (18)

        Rnds 9-10: Sc in each st around with A. (18)

        Rnd 11: *Sc in next st, sc2tog; rep from * around. (12)

        Rnd 12: Sc2tog around. (6)

        Fasten off A.
        """;

    [Fact]
    public void Stripes_are_followed_through_repeats_and_the_sequence_is_shown_once()
    {
        var sequence = Assert.Single(Compile(Scarf).Stripes);

        Assert.Equal("A2 B4 C2 A2 B6 A20", Said(sequence));
        Assert.Equal(new StripeRepeat(0, 3, 7, 8), sequence.Repeat);
        Assert.Equal((84, false), (sequence.Rows, sequence.IsRound));
        Assert.Empty(sequence.Sizes);
    }

    [Fact]
    public void A_yarn_that_is_changed_in_the_last_stitch_or_behind_the_row_holds_for_the_next_one()
    {
        var sequence = Assert.Single(Compile(Ball, "crochet").Stripes);

        Assert.Equal("A2 B2 A3 B1 A4", Said(sequence));
        Assert.True(sequence.IsRound);
    }

    [Fact]
    public void Shares_are_those_of_the_stitches()
    {
        // A: 6 + 12 + 3 x 18 + 2 x 18 + 12 + 6; B: 3 x 18 (by hand).
        Assert.Equal([126, 54], Assert.Single(Compile(Ball, "crochet").Shares).Stitches[0].ToArray());

        // Rows in A: 2 x 7 + 2 + 20; in B: 4 x 7 + 6; in C: 2 x 7 (by hand).
        var shares = Assert.Single(Compile(Scarf).Shares);
        Assert.Equal("A B C", string.Join(' ', shares.Yarns));
        Assert.Equal([(36 * 40), (34 * 40), (14 * 40)], shares.Stitches[0].ToArray());
        Assert.Equal([(36 * 44), (34 * 44), (14 * 44)], shares.Stitches[1].ToArray());
    }

    [Fact]
    public void Rows_in_several_yarns_are_counted_stitch_by_stitch_and_slipped_stitches_are_none()
    {
        var shares = Assert.Single(Compile("## Cuff\n\nWith A, CO 40 (44) sts. Join to work in the round.\n\nRnd 1: *K3 A, k1 B; rep from * around.\n\nRnd 2: With B, *k1, sl 1; rep from * around.\n").Shares);

        Assert.Equal([30, 10 + 20], shares.Stitches[0].ToArray());
        Assert.Equal([33, 11 + 22], shares.Stitches[1].ToArray());
    }

    [Theory]
    [InlineData("CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: With B, knit.\n\nRow 3: With A, knit.")] // which yarn it begins with
    [InlineData("With A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: With B, knit.\n\nRow 3: With A, knit.\n\nRep Rows 1-3 until piece measures 20 cm.")] // how many rows
    [InlineData("With A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: With B, frobnicate.\n\nRow 3: With A, knit.\n\nRow 4: With B, knit.")] // a row that is not read
    [InlineData("With A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: With B, knit.\n\nRow 3: With A, knit.\n\nRows 4-9: Rep Rows 1-3 with C in place of B.")] // which of the rows
    [InlineData("With A and B held together, CO 40 sts.\n\nRow 1: With A and B held together, knit.\n\nRow 2: With B, knit.\n\nRow 3: With A, knit.")] // two at a time
    public void In_doubt_nothing_is_said(string rows)
    {
        var compiled = Compile($"## Scarf\n\n{rows}\n");

        Assert.Empty(compiled.Stripes);
        Assert.Empty(compiled.Shares);
    }

    [Fact]
    public void Words_between_the_rows_change_the_yarn_too()
    {
        var compiled = Compile("## Scarf\n\nWith A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: Knit.\n\nLeave the yarn hanging at the edge and change to B, which is a little darker.\n\nRow 3: Knit.\n\nRow 4: Knit.\n\nRow 5: With A, knit.\n");

        Assert.Equal("A2 B2 A1", Said(Assert.Single(compiled.Stripes)));
    }

    [Fact]
    public void A_block_places_the_bar_and_one_that_cannot_be_drawn_says_why()
    {
        var compiled = Compile(Scarf + "\n\n## Notes\n\nA warm thing.\n\n```stripes\nof: Scarf\n```\n\n```stripes\nof: Scraf\n```\n\n```stripes\n```\n");

        Assert.Equal(2, Assert.Single(compiled.Stripes).Section);
        Assert.Equal(
            [("there is no section `Scraf` to draw", "did you mean `Scarf`?"), ("`Notes` has no rows to draw", "say whose rows are meant: `of: Body`")],
            compiled.Findings.Where(f => f.Rule.Code == "PF242").Select(f => (f.Message, f.Help!)));
    }

    [Theory]
    [InlineData("of: Scarf\nrows: 1-70", "there is no row 59 in `Scarf` to draw")]
    [InlineData("rows: 3-4", "there is no row 3 in `Cuff` to draw")]
    [InlineData("rows: 1-2", "`Cuff` cannot be drawn: row 2 is not a matter of stitches side by side")]
    public void A_chart_that_cannot_be_drawn_says_why(string request, string message)
    {
        var compiled = Compile($"{Scarf}\n\n## Cuff\n\nWith A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: K10, turn.\n\n```chart\n{request}\n```\n");

        Assert.Equal([message], compiled.Findings.Where(f => f.Rule.Code == "PF242").Select(f => f.Message));
    }

    [Fact]
    public void A_chart_of_rows_with_a_mistake_of_their_own_is_not_told_on_top()
    {
        var compiled = Compile("## Cuff\n\nCO 40 sts.\n\nRow 1: *K2, p1; rep from * to end.\n\n```chart\n```\n");

        Assert.Equal(["PF302"], compiled.Findings.Where(f => f.Severity >= Core.Findings.Severity.Warning && f.Rule.Code[2] is '2' or '3').Select(f => f.Rule.Code));
    }

    [Fact]
    public void The_drawing_is_the_one_that_was_looked_at_and_approved()
    {
        var compiled = Compile(Scarf);
        var drawing = StripeDrawing.Of(Assert.Single(compiled.Stripes), "stripes", compiled.Pattern.Facts.Sizes, compiled.Pattern.Facts.Yarns);

        Golden.Match(drawing.Alone.Replace("><", ">\n<", StringComparison.Ordinal), "charts/stripes.svg");
        Assert.StartsWith("7 times these 8 rows: rows 1 to 2 in A; rows 3 to 6 in B; rows 7 to 8 in C; then rows 57 to 58 in A;", drawing.Description, StringComparison.Ordinal);
        Assert.Equal(["A", "B", "C"], drawing.Key.Select(k => k.Name));
        Assert.Equal(drawing.Description, XElement.Parse(drawing.Alone).Elements().Single(e => e.Name.LocalName == "desc").Value);
    }

    [Theory]
    [InlineData("100 m", "1100 m", "A has 50 % of the stitches and 8 % of the yarn")]
    [InlineData("240 m", "1100 m", null)] // whole balls
    [InlineData("500 m", "1100 m", null)]
    public void Amounts_far_from_the_stitches_are_told(string a, string b, string? message)
    {
        var header = $"yarn:\n  - {{label: A, name: Wool, weight: DK, put-up: 50 g = 120 m, needs: {a}}}\n  - {{label: B, name: Wool, weight: DK, put-up: 50 g = 120 m, needs: {b}}}";
        var compiled = Compiler.Compile(new SourceText("a.pattern.md", $"---\ntitle: Scarf\ncraft: knitting\nsizes: one size\n{header}\n---\n\n## Scarf\n\nWith A, CO 40 sts.\n\nRow 1: Knit.\n\nRow 2: With B, knit.\n"));

        Assert.Equal(message is null ? [] : [message], compiled.Findings.Where(f => f.Rule.Code == "PF325").Select(f => f.Message));
    }

    [Theory]
    [InlineData("170 m", "190 m", "Quay Wool", "180 m 75 g, 180 m 75 g")] // each has half of the stitches: half of 360 m
    [InlineData("60 g", "80 g", "Quay Wool", "168 m 70 g, 168 m 70 g")]
    [InlineData("120 m", "190 m", "Quay Wool", "")] // a whole ball says nothing of what is left of it
    [InlineData("170 m", "190 m", "Bay Wool", "")] // two yarns
    [InlineData("170 m", "estimate", "Quay Wool", "")] // worked out by the stitches already
    public void The_amount_of_one_yarn_is_shared_out_by_the_stitches_of_its_colours(string a, string b, string name, string amounts)
    {
        var compiled = OneYarn(a, b, name, "");

        var share = Assert.Single(compiled.Shares);
        Assert.Equal(amounts, string.Join(", ", share.Amounts.SelectMany(s => s).Select(c => $"{c.Metres:0} m {c.Grams:0} g")));
    }

    [Fact]
    public void The_page_tells_what_each_share_comes_to()
    {
        var page = Renderer.Render(OneYarn("170 m", "190 m", "Quay Wool", ""), OutputFormat.Find("md")!).Files[0].Text;

        Assert.Contains("| 50 %, 180 m, 75 g | 50 %, 180 m, 75 g |", page, StringComparison.Ordinal);
        Assert.Contains("All colours are one yarn", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_one_part_among_several_no_amount_is_told()
    {
        var compiled = OneYarn("170 m", "190 m", "Quay Wool", "\n\n## Fringe\n\nWith B, CO 10 sts.\n\nRow 1: Knit.\n");

        Assert.All(compiled.Shares, s => Assert.Empty(s.Amounts));
    }

    private static Compilation OneYarn(string a, string b, string name, string rest) => Compiler.Compile(new SourceText("a.pattern.md",
        $"---\ntitle: Scarf\ncraft: knitting\nsizes: one size\nyarn:\n  - {{label: A, name: Quay Wool, weight: DK, put-up: 50 g = 120 m, needs: {a}}}\n  - {{label: B, name: {name}, weight: DK, put-up: 50 g = 120 m, needs: {b}}}\n---\n\n## Scarf\n\nWith A, CO 40 sts.\n\nRow 1: With A, knit.\n\nRow 2: With B, knit.\n{rest}"));

    [Theory]
    [InlineData("With B, knit.", "B Use")]
    [InlineData("Change to colour B, k3 A.", "B Change, A Beside")]
    [InlineData("A total of 12 sts. Fasten off A and B.", "A Off, B Off")]
    [InlineData("K1A, k4B", "A Beside, B Beside")]
    [InlineData("Join B with sl st", "B Use")]
    public void Mentions_of_a_yarn_are_told_apart(string text, string said) =>
        Assert.Equal(said, string.Join(", ", YarnMention.In(text, ["A", "B"]).Select(m => $"{m.Label} {m.Said}")));

    private static string Said(StripeSequence sequence) => string.Join(' ', sequence.Stripes.Select(s => string.Join('+', s.Yarns) + s.Rows));

    private static Compilation Compile(string body, string craft = "knitting")
    {
        const string Yarns = "yarn:\n  - {label: A, name: Quay Wool, colours: [Slate], shade: '#2d4059'}\n  - {label: B, name: Quay Wool, colours: [Chalk]}\n  - {label: C, name: Quay Wool, colours: [Buoy], shade: '#e07a5f'}";
        return Compiler.Compile(new SourceText("stripes.pattern.md", $"---\ntitle: Harbour stripes\ncraft: {craft}\nterms: us\nsizes: {(craft == "crochet" ? "one size" : "S (M)")}\n{Yarns}\n---\n\n{body}\n"));
    }
}
