using System.Collections.Immutable;
using CsCheck;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Work;

/// <summary>What must hold for any row, whatever it says: rows are made at random with counts that are known by plain addition, and changed in ways whose effect is known.</summary>
public class MetamorphicTests
{
    private const int Many = 1_500;

    [Fact]
    public void A_knitted_row_with_known_counts_is_accepted() => MetamorphicRows.Knitted.Sample(row => MetamorphicPiece.Work(row, Us).IsSound(row), iter: Many);

    [Fact]
    public void A_crocheted_row_with_known_counts_is_accepted() => MetamorphicRows.Crocheted.Sample(row => MetamorphicPiece.Work(row, Us).IsSound(row), iter: Many);

    [Fact]
    public void One_stitch_put_into_a_knitted_row_makes_that_row_fail_and_no_other() => OneStitchMore(MetamorphicRows.Knitted);

    [Fact]
    public void One_stitch_put_into_a_crocheted_row_makes_that_row_fail_and_no_other() => OneStitchMore(MetamorphicRows.Crocheted);

    [Fact]
    public void One_stitch_put_into_a_repeat_of_knitting_makes_that_row_fail_and_no_other() => OneStitchMoreInTheRepeat(MetamorphicRows.Knitted);

    [Fact]
    public void One_stitch_put_into_a_repeat_of_crochet_makes_that_row_fail_and_no_other() => OneStitchMoreInTheRepeat(MetamorphicRows.Crocheted);

    [Fact]
    public void One_stitch_put_in_for_some_sizes_makes_the_row_fail_in_those_alone() =>
        Gen.Select(MetamorphicRows.Knitted, Gen.Int[0, 9], Gen.Int[1, 510]).Sample(
            (row, place, which) =>
            {
                var ones = Enumerable.Range(0, row.Sizes).Select(s => (which >> s) & 1).ToImmutableArray();
                if (row.TakesUpAnything || ones.All(n => n == 0))
                {
                    return;
                }

                MetamorphicPiece.Work(row, Us, row.WriteWith(new MadeRun("k#", ones), place % row.Parts.Length, Us))
                    .FailsThereAlone([.. Enumerable.Range(0, row.Sizes).Where(s => ones[s] > 0)]);
            },
            iter: Many);

    [Fact]
    public void Repeats_of_knitting_written_out_by_hand_come_to_the_same() => Unrolled(MetamorphicRows.Knitted);

    [Fact]
    public void Repeats_of_crochet_written_out_by_hand_come_to_the_same() => Unrolled(MetamorphicRows.Crocheted);

    [Fact]
    public void A_knitted_row_in_British_terms_comes_to_the_same() => Translated(MetamorphicRows.Knitted);

    [Fact]
    public void A_crocheted_row_in_British_terms_comes_to_the_same() => Translated(MetamorphicRows.Crocheted);

    [Fact]
    public void The_order_of_the_sizes_does_not_matter() =>
        Gen.Select(MetamorphicRows.Knitted, Gen.Int[0, 9], Gen.Int[1, 510], Gen.Shuffle(Enumerable.Range(0, 9).ToArray())).Sample(
            (row, place, which, shuffled) =>
            {
                var order = shuffled.Where(i => i < row.Sizes).ToImmutableArray();
                var ones = new MadeRun("k#", [.. Enumerable.Range(0, row.Sizes).Select(s => (which >> s) & 1)]);
                var turned = row.Permuted(order);
                var at = place % row.Parts.Length;
                var first = MetamorphicPiece.Work(row, Us, row.WriteWith(ones, at, Us));
                var second = MetamorphicPiece.Work(turned, Us, turned.WriteWith(new MadeRun("k#", [.. order.Select(i => ones.Stitches[i])]), at, Us), order: order);

                Assert.True(first.Counts.Select(c => Together(order.Select(i => c[i]))).SequenceEqual(second.Counts.Select(c => Together(c))), first.Tell() + " || " + second.Tell());
                Assert.True(first.Errors.Select(f => Said(f, i => i)).Order(StringComparer.Ordinal).SequenceEqual(second.Errors.Select(f => Said(f, i => order[i])).Order(StringComparer.Ordinal)), first.Tell() + " || " + second.Tell());

                string Said(Finding f, Func<int, int> of) => $"{f.Rule.Code} {Together((f.Sizes.IsEmpty ? Enumerable.Range(0, row.Sizes) : f.Sizes).Select(of).Order())}";
                static string Together<T>(IEnumerable<T> values) => string.Join(' ', values);
            },
            iter: Many);

    [Fact]
    public void How_a_knitted_row_is_put_on_paper_does_not_matter() => OnPaper(MetamorphicRows.Knitted);

    [Fact]
    public void How_a_crocheted_row_is_put_on_paper_does_not_matter() => OnPaper(MetamorphicRows.Crocheted);

    [Fact]
    public void A_size_that_skips_a_step_may_be_told_with_a_nought_or_a_dash() =>
        Gen.Select(MetamorphicRows.Knitted, Gen.Int[0, 9], Gen.Int[0, 511], MetamorphicRows.OneOf("0", "–", "-", "—"), MetamorphicRows.OneOf("k#", "k #", "p#")).Sample(
            (row, place, which, nothing, words) =>
            {
                var some = new MadeRun(words, [.. Enumerable.Range(0, row.Sizes).Select(s => 2 * ((which >> s) & 1))]);
                if (!some.Stitches.All(n => n == 0) && !(row.Sizes == 2 && some.Stitches[0] == 0)) // "k - (2)" may as well be a count behind a dash
                {
                    var more = row with { Parts = row.Parts.Insert(place % row.Parts.Length, some) };
                    MetamorphicPiece.Work(more, Us with { Nothing = nothing }).IsSound(more);
                }
            },
            iter: Many);

    // Common practice: the two countries name the same actions differently.
    [Theory]
    [InlineData("Row 2: {bo} # sts, k to end.", 1)]
    [InlineData("Row 2: K to last # sts, {bo} # sts.", 1)]
    [InlineData("Row 2: {bo} # sts at the beg of this row, k to end.", 1)]
    [InlineData("{bo} # sts at beg of next 2 rows.", 2)]
    [InlineData("Work in {stst} for 6 rows.", 0)]
    [InlineData("Cont in {stst} without shaping for 8 rows.", 0)]
    public void Binding_off_and_casting_off_come_to_the_same(string row, int times) =>
        Gen.Select(Gen.Int[3, 9], Gen.Int[0, 4], Gen.Int[30, 90]).Sample((n, step, start) =>
        {
            int[] offs = [n, n + step, n + (2 * step)];
            int[] before = [start, start + 8, start + 16];
            foreach (var terms in (Dialect[])[Dialect.Us, Dialect.Uk])
            {
                var style = new MetamorphicStyle { Names = MetamorphicRows.NamesIn(terms), Letters = 3 };
                var text = $"---\ntitle: Harbour piece\ncraft: knitting\nterms: {terms.ToString().ToLowerInvariant()}\nsizes: S (M, L)\n---\n\n## Piece\n\nCast on {style.List([.. before])} sts.\n\nRow 1: Knit.\n\n{style.Words(row, [.. offs])}\n";
                var compiled = Core.Compiler.Compile(new Core.Text.SourceText("rows.pattern.md", text));
                Assert.True(compiled.Findings.All(f => f.Severity != Severity.Error), text);
                Assert.Equal(before.Select((b, i) => (int?)(b - (times * offs[i]))), compiled.Lines[^1].After);
            }
        }, iter: 50);

    private static MetamorphicStyle Us { get; } = new() { Names = MetamorphicRows.NamesIn(Dialect.Us) };

    private static MetamorphicStyle Uk { get; } = new() { Names = MetamorphicRows.NamesIn(Dialect.Uk) };

    // A plain stitch where the row has room for none; where plain working or a repeat over one stitch would take it up, what changes the stated count.
    private static void OneStitchMore(Gen<MadeRow> rows) =>
        Gen.Select(rows, Gen.Int[0, 9], Gen.Bool).Sample(
            (row, place, increase) =>
            {
                MadeStitch[] some = increase ? [row.Craft.More, row.Craft.One] : [row.Craft.One, row.Craft.More];
                if (Array.Find(some, row.FailsWith) is { } more)
                {
                    MetamorphicPiece.Work(row, Us, row.WriteWith(more, place % row.Parts.Length, Us)).FailsThereAlone([.. Enumerable.Range(0, row.Sizes)]);
                }
            },
            iter: Many);

    private static void OneStitchMoreInTheRepeat(Gen<MadeRow> rows) =>
        rows.Sample(
            row =>
            {
                if (row.WriteWithInRepeat(row.Craft.One, Us) is { } wrong)
                {
                    MetamorphicPiece.Work(row, Us, wrong).FailsThereAlone([.. Enumerable.Range(0, row.Sizes)]);
                }
            },
            iter: Many);

    private static void Unrolled(Gen<MadeRow> rows) =>
        Gen.Select(rows, Gen.Int[0, 8]).Sample(
            (row, at) =>
            {
                var one = row.In(at % row.Sizes);
                var unrolled = row.Unrolled(at % row.Sizes);
                Assert.Equal(one.After.AsEnumerable(), unrolled.After);
                var (repeated, written) = (MetamorphicPiece.Work(one, Us), MetamorphicPiece.Work(unrolled, Us));
                written.IsSound(unrolled);
                repeated.IsSound(one);
                Assert.True(repeated.Row.After.SequenceEqual(written.Row.After), repeated.Tell() + " || " + written.Tell());
            },
            iter: Many);

    private static void Translated(Gen<MadeRow> rows) =>
        rows.Sample(
            row =>
            {
                var (american, british) = (MetamorphicPiece.Work(row, Us), MetamorphicPiece.Work(row, Uk, terms: "uk"));
                british.IsSound(row);
                Assert.True(american.Counts.Zip(british.Counts, (a, b) => a.SequenceEqual(b)).All(same => same), american.Tell() + " || " + british.Tell());
                Assert.True(american.Compiled.Lines.Zip(british.Compiled.Lines, (a, b) => a.Kinds.Length == b.Kinds.Length && a.Kinds.Zip(b.Kinds, (x, y) => x.Values.Order().SequenceEqual(y.Values.Order())).All(same => same)).All(same => same), american.Tell() + " || " + british.Tell());
            },
            iter: Many);

    private static void OnPaper(Gen<MadeRow> rows) =>
        Gen.Select(rows, MetamorphicStyle.Any).Sample((row, style) => MetamorphicPiece.Work(row, style with { Names = Us.Names }).IsSound(row), iter: Many);
}
