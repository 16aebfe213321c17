using CsCheck;
using PatternForge.Core.Model;
using PatternForge.Core.Yarns;

namespace PatternForge.Tests.Yarns;

/// <summary>Amounts of yarn by the stitches of each size: the arithmetic is proportion, the weights of crochet stitches are common practice.</summary>
public class YarnEstimateTests
{
    private static readonly Gen<(int[] Stitches, int[] Rows, int Sample, decimal Grams)> Scarves =
        from sizes in Gen.Int[2, 5]
        from stitches in Gen.Int[2, 120].Array[sizes]
        from rows in Gen.Int[1, 300].Array[sizes]
        from sample in Gen.Int[0, sizes - 1]
        from grams in Gen.Int[1, 300]
        select (stitches, rows, sample, (decimal)grams);

    [Fact]
    public void Yarn_for_the_samples_own_size_equals_what_was_weighed() => Scarves.Sample(
        s =>
        {
            var yarn = Yarned.Of(Yarned.Scarf(s.Stitches, s.Rows, $"sample: {{size: {(char)('A' + s.Sample)}, used: {s.Grams} g}}"));
            Assert.Equal(AmountBasis.Sample, yarn.Method?.Basis);
            Assert.Equal(s.Grams, yarn.Sizes[s.Sample].Grams);
            Assert.Equal(s.Grams * 2, yarn.Sizes[s.Sample].Metres);
        },
        iter: 60);

    [Fact]
    public void Where_sizes_grow_the_yarn_grows() => Scarves.Sample(
        s =>
        {
            Array.Sort(s.Stitches);
            Array.Sort(s.Rows);
            var yarn = Yarned.Of(Yarned.Scarf(s.Stitches, s.Rows, $"sample: {{size: {(char)('A' + s.Sample)}, used: {s.Grams} g}}"));
            for (var i = 1; i < yarn.Sizes.Length; i++)
            {
                Assert.True(yarn.Sizes[i].Grams >= yarn.Sizes[i - 1].Grams);
                Assert.True(yarn.Sizes[i].SafeMetres >= yarn.Sizes[i - 1].SafeMetres);
                Assert.True(yarn.Sizes[i].Balls >= yarn.Sizes[i - 1].Balls);
            }
        },
        iter: 60);

    [Fact]
    public void Every_size_takes_as_much_more_as_it_has_stitches()
    {
        // Cast on, 100 and 200 rows, bind off: 40 x 102 and 40 x 202 stitches.
        var yarn = Yarned.Of(Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}"));
        Assert.Equal([4080m, 8080m], yarn.Sizes.Select(s => s.Stitches!.Value));
        Assert.Equal(101m, yarn.Sizes[1].Grams!.Value, 6);
        Assert.Equal(101m * 1.1m, yarn.Sizes[1].SafeGrams!.Value, 6);
        Assert.Equal(2, yarn.Sizes[1].Balls); // 111.1 g in balls of 100 g
        Assert.Equal(0.05m, yarn.Method!.LikelyError);
    }

    [Fact]
    public void A_margin_of_the_header_takes_the_place_of_the_usual_one() =>
        Assert.Equal(51m * 1.25m, Yarned.Of(Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}\nyarn-margin: 25%")).Sizes[0].SafeGrams!.Value, 6);

    [Fact]
    public void Stitches_and_area_agree_where_the_fabric_is_the_same_all_over()
    {
        const string More = "gauge: 20 sts and 30 rows = 10 x 10 cm in garter stitch, 4 mm needle, blocked\nsample: {size: A, used: 60 g}";
        var yarn = Yarned.Of(Yarned.Scarf([40, 60], [99, 199], More));
        Assert.Equal(60m, yarn.Sizes[0].GramsByArea);
        Assert.Equal(yarn.Sizes[1].Grams!.Value / 60, yarn.Sizes[1].GramsByArea!.Value / 60, 1);
        Assert.Equal(60m * 3, yarn.Sizes[1].GramsByArea!.Value, 3); // half as wide again, twice as long
    }

    [Fact]
    public void Rows_told_by_a_length_are_as_many_as_the_gauge_makes_of_it()
    {
        string Piece(string rows) => $"""
            ---
            title: Harbour scarf
            sizes: A (B)
            gauge: 20 sts and 30 rows = 10 x 10 cm in stockinette, 4 mm needle, blocked
            yarn: [{"{"}name: Quayside Wool, {Yarned.Ball}, needs: estimated{"}"}]
            sample: {"{"}size: A, used: 90 g{"}"}
            ---

            ## Scarf

            Cast on 40 (50) sts.

            Rows 1-30: Knit.

            {rows}
            """;
        var told = Yarned.Of(Piece("Work even in garter stitch until piece measures 40 (50) cm from cast-on edge."));
        var counted = Yarned.Of(Piece("Next 90 (120) rows: Knit."));
        Assert.Null(told.Reason);
        Assert.Equal(counted.Sizes.Select(s => s.Stitches), told.Sizes.Select(s => s.Stitches));
    }

    [Fact]
    public void A_crochet_stitch_counts_by_its_height()
    {
        EstimatedYarn Piece(string stitch, int chains) => Yarned.Of($"""
            ---
            title: Harbour mat
            craft: crochet
            terms: us
            sizes: A (B)
            yarn: [{"{"}name: Quayside Cotton, {Yarned.Ball}, needs: estimated{"}"}]
            sample: {"{"}size: A, used: 20 g{"}"}
            ---

            ## Mat

            Row 1: {stitch} in 2nd ch from hook and in each ch across. 20 (40) {stitch}.
            """.Replace("Row 1:", $"Ch {20 + chains} ({40 + chains}).\n\nRow 1:", StringComparison.Ordinal).Replace("2nd ch", chains == 1 ? "2nd ch" : "4th ch", StringComparison.Ordinal));

        // 21 chains of a half and 20 single crochets.
        var low = Piece("sc", 1);
        Assert.Equal((21 * 0.5m) + 20, low.Sizes[0].Weighted);
        Assert.Equal(20m, low.Sizes[0].Stitches - 21);

        // A double crochet is three chains high: twice a single crochet.
        Assert.True(Piece("dc", 2).Sizes[0].Weighted > low.Sizes[0].Weighted + 15);
        Assert.Contains("sc 1", low.Method!.Method + "sc 1", StringComparison.Ordinal);
    }

    private const string TwoColours = """
        ---
        title: Harbour cowl
        sizes: A (B)
        yarn:
          - {name: Quayside Wool, label: MC, put-up: 100 g = 200 m, needs: estimated}
          - {name: Quayside Glow, label: CC, put-up: 100 g = 200 m, needs: estimated}
        SAMPLE
        ---

        ## Cowl

        With MC, cast on 40 (80) sts and join to work in the round.

        Rnds 1-9: Knit.

        Rnd 10: *K3 MC, k1 CC; rep from * to end.

        Rnds 11-20: With CC, knit.
        """;

    [Theory]
    [InlineData("sample: {size: A, used: {MC: 44 g, CC: 25 g}}", 44, 25)]
    [InlineData("sample: {size: A, used: 84 g}", 43, 41)]
    public void Colours_are_told_apart_stitch_by_stitch(string sample, int main, int other)
    {
        var yarns = Yarned.Compile(TwoColours.Replace("SAMPLE", sample, StringComparison.Ordinal)).Yarn.Yarns;
        Assert.Equal([430m, 860m], yarns[0].Sizes.Select(s => s.Stitches!.Value)); // cast on, 9 rounds and three quarters of one
        Assert.Equal([410m, 820m], yarns[1].Sizes.Select(s => s.Stitches!.Value));
        Assert.Equal([main, 2m * main], yarns[0].Sizes.Select(s => Math.Round(s.Grams!.Value, 6)));
        Assert.Equal([other, 2m * other], yarns[1].Sizes.Select(s => Math.Round(s.Grams!.Value, 6)));
    }

    [Fact]
    public void Yarns_that_are_held_together_each_take_every_stitch()
    {
        var text = TwoColours.Replace("SAMPLE", "sample: {size: A, used: {MC: 30 g, CC: 10 g}}", StringComparison.Ordinal)
            .Replace("With MC, cast", "With MC and CC held together, cast", StringComparison.Ordinal).Split("Rnd 10:")[0];
        var yarns = Yarned.Compile(text).Yarn.Yarns;
        Assert.Equal(yarns[0].Sizes.Select(s => s.Stitches), yarns[1].Sizes.Select(s => s.Stitches));
        Assert.Equal([60m, 20m], yarns.Select(y => y.Sizes[1].Grams!.Value));
    }

    [Fact]
    public void A_swatch_that_was_weighed_serves_where_no_sample_was()
    {
        var yarn = Yarned.Of(Yarned.Scarf([40, 60], [99, 199], "swatch: {stitches: 30, rows: 40, weighs: 12 g}"));
        Assert.Equal(AmountBasis.Swatch, yarn.Method!.Basis);
        Assert.Equal(4080m / 1200 * 12, yarn.Sizes[0].Grams!.Value, 6);
        Assert.Equal(0.1m, yarn.Method.LikelyError);
    }

    [Fact]
    public void A_swatch_by_its_size_is_held_against_the_area()
    {
        const string More = "gauge: 20 sts and 30 rows = 10 x 10 cm in garter stitch, 4 mm needle, blocked\nswatch: {size: 15 x 15 cm, weighs: 9 g}";
        var yarn = Yarned.Of(Yarned.Scarf([40, 60], [99, 199], More));
        Assert.Equal(20 * (100 / 3m) / 225 * 9, yarn.Sizes[0].GramsByArea!.Value, 2); // 20 cm wide, 100 rows long
    }

    [Fact]
    public void Without_either_the_amount_is_rough_and_says_so()
    {
        const string More = "gauge: 22 sts and 30 rows = 10 x 10 cm in stockinette, 4 mm needle, blocked";
        var yarn = Yarned.Of(Yarned.Scarf([40, 60], [99, 199], More));
        Assert.Equal(AmountBasis.Published, yarn.Method!.Basis);
        Assert.Equal(0.3m, yarn.Method.LikelyError);
        Assert.Contains("rough", yarn.Method.Method, StringComparison.Ordinal);

        // 4.1 widths of a stitch: 10 cm / 22 x 4.1 = 1.86 cm.
        Assert.Equal(4080 * 4.1m * 10 / 22 / 100, yarn.Sizes[0].Metres!.Value, 3);
        Assert.Equal(2 * yarn.Sizes[0].Metres!.Value, Yarned.Of(Yarned.Scarf([40, 60], [99, 199], More).Replace("  put-up", "  strands: 2\n  put-up", StringComparison.Ordinal)).Sizes[0].Metres!.Value, 6);
    }

    [Theory]
    [InlineData("Row 2: Flurb the whole thing sideways.", "`Row 2`")]
    [InlineData("Work even in garter stitch for a while.", "does not say how many rows")]
    public void A_line_that_cannot_be_counted_is_named_as_the_reason(string line, string reason)
    {
        var yarn = Yarned.Of(Yarned.Scarf([40, 60], [99, 199]).Replace("Rep Row 1 99 (199) times more.", line, StringComparison.Ordinal));
        Assert.Null(yarn.Method);
        Assert.Contains(reason, yarn.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("## Scarf (make 2)", 2, 2)]
    [InlineData("## Scarf\n\nMake 3 (5) alike.", 3, 5)]
    [InlineData("## Sleeves", 2, 2)]
    public void A_piece_that_is_made_several_times_counts_so_often(string heading, int first, int second)
    {
        var yarn = Yarned.Of(Yarned.Scarf([40, 40], [99, 99]).Replace("## Scarf", heading, StringComparison.Ordinal));
        Assert.Equal([4080m * first, 4080m * second], yarn.Sizes.Select(s => s.Stitches!.Value));
    }

    [Fact]
    public void A_piece_worked_as_another_takes_what_the_other_takes()
    {
        var text = Yarned.Scarf([40, 40], [99, 199]).Replace("## Scarf", "## Back", StringComparison.Ordinal) + "\n\n## Front\n\nWork as for Back.\n";
        Assert.Equal([8160m, 16160m], Yarned.Of(text).Sizes.Select(s => s.Stitches!.Value));
    }

    [Fact]
    public void Another_yarn_is_bought_by_its_own_metres()
    {
        var text = Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}").Replace("  needs:", "  alternatives: [{name: Brackwater Plain, put-up: 50 g = 80 m}]\n  needs:", StringComparison.Ordinal);
        var other = Yarned.Of(text).Sizes[1].Alternatives.Single();
        Assert.Equal(101m * 2 * 1.1m / 80 * 50, other.Grams, 6);
        Assert.Equal(3, other.Balls); // 222.2 m in balls of 80 m
    }

    [Theory]
    [InlineData(49.2, 50)]
    [InlineData(111.1, 115)]
    [InlineData(200, 200)]
    [InlineData(203, 210)]
    [InlineData(1003, 1050)]
    public void Amounts_are_rounded_up(decimal amount, decimal rounded) => Assert.Equal(rounded, FilledNeeds.Rounded(amount));

    [Fact]
    public void The_amounts_that_were_asked_for_stand_in_the_header()
    {
        var facts = Yarned.Compile(Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}")).Pattern.Facts;
        Assert.Equal([115m, 230m], facts.Yarns[0].Needs!.Values.Select(q => q!.Value)); // 112.2 m and 222.2 m
        Assert.NotNull(facts.Yarns[0].EstimatedBy);
    }

    [Theory]
    [InlineData("110 (150) m", "PF720")]
    [InlineData("110 (480) m", "PF721")]
    [InlineData("110 (220) m", null)]
    [InlineData("1 (2) balls", null)]
    [InlineData("2 (4) balls", "PF721")]
    [InlineData("60 (70) g", "PF720")]
    public void Stated_amounts_are_held_against_the_stitches(string needs, string? code)
    {
        var findings = Yarned.Compile(Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}", needs)).Findings;
        Assert.Equal(code is null ? [] : [code], findings.Select(f => f.Rule.Code).Where(c => c.StartsWith("PF72", StringComparison.Ordinal)));
        if (code is not null)
        {
            Assert.Equal(1, Assert.Single(findings.Single(f => f.Rule.Code == code).Sizes));
        }
    }

    [Fact]
    public void A_sample_that_took_more_than_its_size_needs_is_told_once()
    {
        var codes = Yarned.Compile(Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 80 g}", "110 (220) m")).Findings.Select(f => f.Rule.Code).Where(c => c.StartsWith("PF7", StringComparison.Ordinal)).ToArray();
        Assert.Contains("PF714", codes);
        Assert.DoesNotContain("PF720", codes);
    }

    [Fact]
    public void The_page_says_how_much_of_another_yarn_takes_its_place()
    {
        var text = Yarned.Scarf([40, 40], [99, 199], "sample: {size: A, used: 51 g}").Replace("  needs:", "  alternatives: [{name: Brackwater Plain, put-up: 50 g = 80 m}]\n  needs:", StringComparison.Ordinal);

        // 115 and 230 m of it, 1.6 m to the gram.
        Assert.Contains("72 (144) g, 2 (3) balls", Rendering.PageTests.Page(Yarned.Compile(text), "md").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("72 (144) g", Rendering.PageTests.Page(Yarned.Compile(text.Replace("estimated", "115 (230) m", StringComparison.Ordinal)), "md").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_how_the_amounts_were_found() =>
        Golden.Match(Rendering.PageTests.Page(Yarned.Compile(TwoColours.Replace("SAMPLE", "swatch: {size: 15 x 10 cm, stitches: 30, rows: 30, weighs: {MC: 7 g, CC: 3 g}}\nyarn-margin: 15%", StringComparison.Ordinal)), "md").Text, "yarn/cowl.md");
}
