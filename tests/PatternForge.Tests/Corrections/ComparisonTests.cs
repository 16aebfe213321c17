using System.Collections.Immutable;
using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Corrections;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Tests.Work;

namespace PatternForge.Tests.Corrections;

public class ComparisonTests
{
    private const int Many = 400;

    private const string Vest = """
        ---
        title: Harbour vest
        version: 1.0
        craft: knitting
        sizes:
          names: S (M, L)
          finished: {bust: 90 (100, 110) cm, length: 50 cm}
        gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
        yarn: {name: Quayside Wool, fibre: 100% wool, weight: light, put-up: 50 g = 110 m, needs: 500 (550, 600) m}
        tools: [4 mm needles]
        stitches:
          mb: (k1, yo, k1) in next st, turn, p3, turn, sl 1, k2tog, psso
        care: [hand wash]
        ---

        ## Back

        Cast on 90 (100, 110) sts.

        Row 1 (RS): *K1, p1; rep from * to end.

        Row 2: Purl.

        Row 3: K1, ssk, k to last 3 sts, k2tog, k1. 88 (98, 108) sts.

        Row 4: Purl.

        Work even until piece measures 30 (31, 32) cm.

        Bind off all sts.

        ## Finishing

        Weave in the ends. Block to 45 cm across.
        """;

    private static MetamorphicStyle Us { get; } = new() { Names = MetamorphicRows.NamesIn(Dialect.Us) };

    [Fact]
    public void How_a_knitted_row_is_put_on_paper_is_no_difference() => OnPaper(MetamorphicRows.Knitted);

    [Fact]
    public void How_a_crocheted_row_is_put_on_paper_is_no_difference() => OnPaper(MetamorphicRows.Crocheted);

    [Fact]
    public void Repeats_of_knitting_written_out_by_hand_are_no_difference() => Unrolled(MetamorphicRows.Knitted);

    [Fact]
    public void One_stitch_put_in_for_some_sizes_is_told_of_that_row_and_those_sizes_alone() =>
        Gen.Select(MetamorphicRows.Knitted, Gen.Int[0, 9], Gen.Int[1, 510]).Sample(
            (row, place, which) =>
            {
                var ones = Enumerable.Range(0, row.Sizes).Select(s => (which >> s) & 1).ToImmutableArray();
                if (row.TakesUpAnything || ones.All(n => n == 0))
                {
                    return;
                }

                var (old, now) = (MetamorphicPiece.Work(row, Us), MetamorphicPiece.Work(row, Us, row.WriteWith(new MadeRun("k#", ones), place % row.Parts.Length, Us)));
                var told = PatternComparison.Compare(old.Compiled, now.Compiled).Corrections;
                var tell = $"{old.Tell()} || {now.Tell()} || {string.Join("; ", told.Select(c => c.Sentence))}";
                Assert.True(told.Length > 0, tell);
                Assert.True(told.All(c => c.Label.EndsWith(" 2", StringComparison.Ordinal) && c.Weight == CorrectionWeight.AtWork), tell);
                string[] sizes = [.. Enumerable.Range(0, row.Sizes).Where(s => ones[s] > 0).Select(s => $"Z{s + 1}")];
                Assert.True(ones.All(n => n > 0) || told.SelectMany(c => c.Sizes).Order(StringComparer.Ordinal).SequenceEqual(sizes.Order(StringComparer.Ordinal)), tell);
            },
            iter: Many);

    [Fact]
    public void The_order_of_the_header_is_no_difference()
    {
        foreach (var file in Examples())
        {
            var text = File.ReadAllText(file).ReplaceLineEndings("\n");
            var end = text.IndexOf("\n---\n", StringComparison.Ordinal);
            var keys = new List<string>();
            foreach (var line in text[4..(end + 1)].TrimEnd('\n').Split('\n'))
            {
                if (line.Length > 0 && char.IsLetter(line[0]))
                {
                    keys.Add(line);
                }
                else
                {
                    keys[^1] += "\n" + line;
                }
            }

            keys.Reverse();
            Assert.Equal("", Told(text, $"---\n{string.Join('\n', keys)}{text[end..]}"));
        }
    }

    [Fact]
    public void A_pattern_is_no_different_from_itself_with_other_line_ends_and_blank_lines()
    {
        foreach (var file in Examples())
        {
            var text = File.ReadAllText(file).ReplaceLineEndings("\n");
            var end = text.IndexOf("\n---\n", StringComparison.Ordinal) + 5;
            Assert.Equal("", Told(text, text[..end] + text[end..].Replace("\n\n", "\n\n\n", StringComparison.Ordinal).ReplaceLineEndings("\r\n")));
        }
    }

    [Theory]
    [InlineData("*K1, p1; rep from * to end", "(K1, p1) to end")]
    [InlineData("*K1, p1; rep from * to end", "[k1, p1] 45 (50, 55) times")]
    [InlineData("*K1, p1; rep from * to end", "*k 1, p 1, repeat from * across")]
    [InlineData("K1, ssk, k to last 3 sts, k2tog, k1. 88 (98, 108) sts.", "Knit 1, ssk, knit to last 3 stitches, k2 tog, k1 — 88[98, 108] sts")]
    [InlineData("Row 2: Purl.", "2nd row: P to end.")]
    [InlineData("Cast on 90 (100, 110) sts.", "CO 90 (100, 110) stitches.")]
    [InlineData("Weave in the ends. Block to 45 cm across.", "Weave in the ends.\nBlock to   45 cm across.")]
    [InlineData("needs: 500 (550, 600) m", "needs: 500 m (550 m, 600 m)")]
    [InlineData("gauge: 20 sts and 28 rows = 10 cm", "gauge: 10 sts and 14 rows = 5 cm")]
    [InlineData("length: 50 cm", "length: 500 mm")]
    [InlineData("version: 1.0", "version: 1.1\ndate: 2025-03-01")]
    public void Other_words_for_the_same_are_no_difference(string old, string now) => Assert.Equal("", Told(Vest, Replaced(old, now)));

    [Theory]
    [InlineData("k to last 3 sts, k2tog, k1. 88 (98, 108)", "ssk, k to last 3 sts, k2tog, k1. 87 (97, 107)", "Back, Row 3: decrease 3 stitches, not 2; ssk twice, not ssk; 87 (97, 107) stitches (was 88 (98, 108))")]
    [InlineData("88 (98, 108) sts.", "88 (98, 106) sts.", "Back, Row 3, size L: 106 stitches, not 108")]
    [InlineData("Cast on 90 (100, 110) sts.", "Cast on 90 (102, 110) sts.", "Back, size M: CO 102, not CO 100")]
    [InlineData("30 (31, 32) cm", "30 (31, 33) cm", "Back, size L: 33 cm, not 32")]
    [InlineData("*K1, p1; rep", "*K2, p2; rep", "Back, Row 1 (RS): worked otherwise")]
    [InlineData("Row 4: Purl.", "Row 4: Knit.", "Back, Row 4: k to end, not p to end")]
    [InlineData("Row 4: Purl.\n\n", "", "Back, Row 4: this row is gone")]
    [InlineData("Row 1 (RS):", "Row 1 (WS):", "Back, Row 1 (WS): worked on the wrong side, not on the right side")]
    [InlineData("bust: 90 (100, 110) cm", "bust: 90 (102, 110) cm", "Finished measurements, bust, size M: 102 cm, not 100 cm")]
    [InlineData("gauge: 20 sts", "gauge: 21 sts", "Gauge: 21 stitches and 28 rows = 10 cm, not 20 stitches and 28 rows = 10 cm")]
    [InlineData("needs: 500 (550, 600) m", "needs: 500 (550, 650) m", "Yarn, amount, size L: 650 m, not 600 m")]
    [InlineData("[4 mm needles]", "[4.5 mm needles]", "Tools: 4.5 mm, not 4")]
    [InlineData("hand wash", "machine wash", "Care: the words have changed")]
    [InlineData("turn, p3, turn", "turn, p2, turn", "Special stitches, mb: the words have changed")]
    [InlineData("Block to 45 cm", "Block to 46 cm", "Finishing: 46 cm, not 45")]
    [InlineData("names: S (M, L)", "names: S (M, XL)", "Sizes: size L is called XL now")]
    [InlineData("title: Harbour vest", "title: Harbour waistcoat", "Title: the words have changed")]
    public void A_change_is_told_in_the_words_of_the_trade(string old, string now, string told) => Assert.Equal(told, Told(Vest, Replaced(old, now)));

    [Theory]
    [InlineData("Row 4: Purl.", "Row 4: Knit.", CorrectionWeight.AtWork)]
    [InlineData("gauge: 20 sts", "gauge: 21 sts", CorrectionWeight.NotBegun)]
    [InlineData("needs: 500 (550, 600) m", "needs: 450 (550, 600) m", CorrectionWeight.NotBegun)]
    [InlineData("needs: 500 (550, 600) m", "needs: 500 (550, 650) m", CorrectionWeight.AtWork)]
    [InlineData("Weave in the ends.", "Darn in the ends.", CorrectionWeight.Wording)]
    [InlineData("Block to 45 cm", "Block to 46 cm", CorrectionWeight.AtWork)]
    public void Each_difference_says_whom_it_concerns(string old, string now, CorrectionWeight weight) =>
        Assert.Equal(weight, Assert.Single(Compare(Vest, Replaced(old, now)).Corrections).Weight);

    [Fact]
    public void A_row_put_in_is_told_once_and_those_behind_it_only_have_other_numbers()
    {
        var now = Replaced("Row 3: K1", "Row 3: Knit.\n\nRow 4: Purl.\n\nRow 5: K1").Replace("108) sts.\n\nRow 4: Purl.", "108) sts.\n\nRow 6: Purl.", StringComparison.Ordinal);
        var told = Compare(Vest, now).Corrections;
        Assert.Equal(["Back, Row 3: this row is new", "Back, Row 4: this row is new"], told.Where(c => c.Weight == CorrectionWeight.AtWork).Select(c => c.Sentence).Order(StringComparer.Ordinal));
        Assert.Equal("Back, Row 5: this was Row 3, and 1 more row has another number", Assert.Single(told, c => c.Weight == CorrectionWeight.Wording).Sentence);
    }

    [Fact]
    public void A_size_that_is_new_or_gone_is_told_once_and_changes_no_row_of_the_others()
    {
        var now = Vest.Replace("S (M, L)", "S (M, L, XL)", StringComparison.Ordinal).Replace("90 (100, 110)", "90 (100, 110, 120)", StringComparison.Ordinal)
            .Replace("88 (98, 108)", "88 (98, 108, 118)", StringComparison.Ordinal).Replace("30 (31, 32)", "30 (31, 32, 33)", StringComparison.Ordinal).Replace("500 (550, 600)", "500 (550, 600, 650)", StringComparison.Ordinal);
        Assert.Equal("Sizes: size XL is new", Told(Vest, now));
        Assert.Equal("Sizes: size XL is gone", Told(now, Vest));
    }

    [Fact]
    public void What_was_wrong_before_is_the_reason_of_a_correction()
    {
        var wrong = Replaced("88 (98, 108) sts.", "88 (98, 106) sts.");
        Assert.Equal("as it was, row 3 states 106 stitches in size L, but makes 108", Assert.Single(Compare(wrong, Vest).Corrections).Why);
    }

    [Fact]
    public void A_line_that_is_not_understood_is_named_and_compared_by_its_words()
    {
        var (old, now) = (Replaced("Row 4: Purl.", "Row 4: K3, frobnicate twice, k to end."), Replaced("Row 4: Purl.", "Row 4: K3, frobnicate three times, k to end."));
        var told = Compare(old, now);
        Assert.Equal("Row 4", Assert.Single(told.Corrections).Label);
        Assert.Equal([false, true], told.Unread.Select(u => u.IsNew));
        Assert.Empty(Compare(old, old).Corrections);
    }

    [Fact]
    public void A_square_of_a_chart_is_told_by_its_row_and_stitch()
    {
        const string chart = "---\ntitle: Harbour cowl\ncraft: knitting\n---\n\n## Lace (multiple of 6)\n\n```chart\nkey: . = k, o = yo, / = k2tog\n4 [ . . . . . . ]\n[ . . . / o . ] 3\n2 [ . . . . . . ]\n[ . / o . . . ] 1\n```\n";
        var told = Compare(chart, chart.Replace("[ . . . / o . ] 3", "[ . . / . o . ] 3", StringComparison.Ordinal)).Corrections;
        Assert.StartsWith("Lace (multiple of 6), Chart Lace", Assert.Single(told).Sentence, StringComparison.Ordinal);
        Assert.Contains("row 3: ", told[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("k2tog", told[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Patterns_that_have_nothing_to_do_with_each_other_differ_and_one_does_not_differ_from_itself()
    {
        Compilation[] made = [.. Examples().Select(f => Made(File.ReadAllText(f)))];
        Assert.All(made, one => Assert.All(made, other => Assert.Equal(one == other, PatternComparison.Compare(one, other).Corrections.IsEmpty)));
    }

    [Fact]
    public void Any_two_texts_are_compared_without_a_fault() =>
        Gen.Select(Gen.String, Gen.Int[0, 2000], Gen.Int[0, 60]).Sample(
            (junk, at, length) =>
            {
                var (start, end) = (Math.Min(at, Vest.Length), Math.Min(at + length, Vest.Length));
                var torn = Vest[..start] + junk + Vest[end..];
                Assert.NotNull(PatternComparison.Compare(Made(Vest), Made(torn)));
                Assert.Empty(PatternComparison.Compare(Made(torn), Made(torn)).Corrections);
            },
            iter: 100);

    [Fact]
    public void Long_sections_are_compared_in_bounded_time()
    {
        var rows = Enumerable.Range(1, 3000).Select(i => $"Row {i}: K{2 + (i % 7)}, p to end.\n\n").ToArray();
        var head = "---\ntitle: Long strip\ncraft: knitting\n---\n\n## Strip\n\nCast on 40 sts.\n\n";
        var turned = rows.Select((r, i) => i % 2 == 0 ? r.Replace("p to end", "k to end", StringComparison.Ordinal) : r);
        Assert.Equal(1500, Compare(head + string.Concat(rows), head + string.Concat(turned)).Corrections.Length);
    }

    private static IEnumerable<string> Examples() => Directory.EnumerateFiles(RepositoryRoot.Path("examples"), "*.pattern.md").Order(StringComparer.Ordinal);

    private static void OnPaper(Gen<MadeRow> rows) =>
        Gen.Select(rows, MetamorphicStyle.Any).Sample(
            (row, style) =>
            {
                var (old, now) = (MetamorphicPiece.Work(row, Us), MetamorphicPiece.Work(row, style with { Names = Us.Names }));
                var told = PatternComparison.Compare(old.Compiled, now.Compiled).Corrections;
                Assert.True(told.IsEmpty, $"{old.Tell()} || {now.Tell()} || {string.Join("; ", told.Select(c => c.Sentence))}");
            },
            iter: Many);

    private static void Unrolled(Gen<MadeRow> rows) =>
        Gen.Select(rows, Gen.Int[0, 8]).Sample(
            (row, at) =>
            {
                var (old, now) = (MetamorphicPiece.Work(row.In(at % row.Sizes), Us), MetamorphicPiece.Work(row.Unrolled(at % row.Sizes), Us));
                var told = PatternComparison.Compare(old.Compiled, now.Compiled).Corrections;
                Assert.True(told.IsEmpty, $"{old.Tell()} || {now.Tell()} || {string.Join("; ", told.Select(c => c.Sentence))}");
            },
            iter: Many);

    private static string Replaced(string old, string now)
    {
        Assert.Contains(old, Vest, StringComparison.Ordinal);
        return Vest.Replace(old, now, StringComparison.Ordinal);
    }

    private static string Told(string old, string now) => string.Join('\n', Compare(old, now).Corrections.Select(c => c.Sentence));

    private static Comparison Compare(string old, string now) => PatternComparison.Compare(Made(old), Made(now));

    private static Compilation Made(string text) => Compiler.Compile(new SourceText("vest.pattern.md", text));
}
