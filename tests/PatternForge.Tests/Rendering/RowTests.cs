using System.Collections.Immutable;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

public class RowTests
{
    [Theory]
    [InlineData("*K8, k2tog; rep from * to end. 72 (80, 88) sts.", "*K8, k2tog; rep from * to end.", "72 (80, 88) sts")]
    [InlineData("K2tog around — 72 (80, 88) sts.", "K2tog around.", "72 (80, 88) sts")]
    [InlineData("K2tog around – 72 (80, 88) sts rem", "K2tog around.", "72 (80, 88) sts rem")]
    [InlineData("K2tog around. (72 (80, 88) sts)", "K2tog around.", "72 (80, 88) sts")]
    [InlineData("K2tog around. [72 (80, 88) sts]", "K2tog around.", "72 (80, 88) sts")]
    [InlineData("K2tog around = 72 (80, 88) stitches.", "K2tog around.", "72 (80, 88) stitches")]
    [InlineData("Sc around (72 (80, 88) sc, 4 ch-2 sps).", "Sc around.", "72 (80, 88) sc, 4 ch-2 sps")]
    public void The_count_that_closes_a_row_can_stand_at_its_side(string text, string instruction, string count)
    {
        var split = ClosingCount.Split(text, [72, 80, 88]);
        Assert.Equal((instruction, count), (split!.Value.Instruction, split.Value.Count));
    }

    [Theory]
    [InlineData("CO 72 (80, 88) sts.")]
    [InlineData("*K8, k2tog; rep from * to end, 72 (80, 88) sts, turn.")]
    [InlineData("K to end. 72 (80, 88) sts remain after this row.")]
    [InlineData("(K2, p2) 72 times (see note)")]
    [InlineData("K 72 (80, 88).")]
    [InlineData("72 (80, 88) sts")]
    [InlineData("(72 sts)")]
    [InlineData("K to end. 720 sts.")]
    [InlineData("K3. Work 72 sts in pattern. 72 kisses.")]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("))))")]
    public void What_is_no_closing_count_stays_in_the_row(string text) => Assert.Null(ClosingCount.Split(text, [72, 80, 88]));

    [Fact]
    public void A_row_is_never_reworded()
    {
        const string Text = "*K8, k2tog; rep from * to end.   72 sts";
        var row = Row(new HandMade().Heading("Body").Row("Rnd 1", Text, [80], [72], [72]));
        Assert.Equal(Text, row.Text);
        Assert.Equal("72 sts", row.Count);
        Assert.True(row.CountIsSaid);
    }

    [Fact]
    public void A_count_that_was_filled_in_stands_at_the_side_like_one_that_was_typed()
    {
        var row = Row(new HandMade().Heading("Body").Row("Rnd 1", "*K2, p2; rep from * around. (88 (96) sts)", [88, 96], [88, 96]));
        Assert.Equal(("*K2, p2; rep from * around.", "88 (96) sts"), (row.Instruction, row.Count));
    }

    [Fact]
    public void A_change_that_the_row_does_not_state_is_told_at_its_side()
    {
        var row = Row(new HandMade().Heading("Body").Row("Rnd 1", "K2tog around.", [80, 90], [40, 45]));
        Assert.Equal("40 (45) sts", row.Count);
        Assert.Equal(["40", "45"], row.Counts.ToArray());
        Assert.False(row.CountIsSaid);
    }

    [Fact]
    public void A_plain_row_tells_no_count() =>
        Assert.Null(Row(new HandMade().Heading("Body").Row("Rnd 1", "Knit.", [80], [80])).Count);

    [Fact]
    public void A_row_that_says_its_count_elsewhere_does_not_get_it_twice()
    {
        var row = Row(new HandMade().Heading("Body").Row("", "CO 80 (88) sts with the smaller needle.", [null, null], [80, 88]));
        Assert.Null(row.Count);
        Assert.True(row.CountIsSaid);
    }

    [Fact]
    public void A_count_that_is_not_known_is_not_told() =>
        Assert.Null(Row(new HandMade().Heading("Body").Row("Rnd 1", "K2tog around.", [80], null)).Count);

    [Fact]
    public void An_empty_needle_is_no_count() =>
        Assert.Null(Row(new HandMade().Heading("Body").Row("", "BO all sts.", [80], [0])).Count);

    [Fact]
    public void A_claim_that_differs_stays_in_the_row_for_the_designer_to_see()
    {
        var row = Row(new HandMade().Heading("Body").Row("Rnd 1", "K2tog around. (41 sts)", [80], [40], [41]));
        Assert.Equal("K2tog around. (41 sts)", row.Instruction);
        Assert.Equal("40 sts", row.Count);
    }

    [Fact]
    public void A_size_that_skips_the_row_shows_a_dash() =>
        Assert.Equal("– (45) sts", Row(new HandMade().Heading("Body").Row("Rnd 1", "K2tog around.", [null, 90], [null, 45])).Count);

    [Fact]
    public void Kinds_are_told_with_the_stitches_first()
    {
        ImmutableSortedDictionary<string, int> Kinds(int tr, int spaces) =>
            new Dictionary<string, int>(StringComparer.Ordinal) { ["ch-2 sp"] = spaces, ["tr"] = tr }.ToImmutableSortedDictionary(StringComparer.Ordinal);
        var row = Row(new HandMade().Heading("Body").Row("Rnd 1", "Work.", [1, 1], [12, 16], null, null, [Kinds(12, 4), Kinds(16, 4)]));
        Assert.Equal("12 (16) tr, 4 ch-2 sps", row.Count);
        Assert.Equal(["12 tr, 4 ch-2 sps", "16 tr, 4 ch-2 sps"], row.Counts.ToArray());
    }

    [Fact]
    public void A_line_for_several_rows_has_a_box_for_each()
    {
        var row = Row(new HandMade().Heading("Body").Row("Rnds 5–8", "Knit.", [80], [80], null, [5, 6, 7, 8]));
        Assert.Equal(["5", "6", "7", "8"], row.Ticks.ToArray());
        Assert.Equal("Round", row.TickName);
        Assert.Empty(Row(new HandMade().Heading("Body").Row("Rows 1–200", "Knit.", [80], [80], null, [.. Enumerable.Range(1, 200)])).Ticks);
    }

    [Fact]
    public void A_row_without_a_label_has_a_name_of_its_own() =>
        Assert.Equal("Step 1", Row(new HandMade().Heading("Body").Row("", "Join.", [80], [80])).Name);

    private static RowView Row(HandMade made) => ViewBuilder.Build(made.Compile()).Instructions.Single().Parts.Single().Blocks.Single().Rows.Single();
}
