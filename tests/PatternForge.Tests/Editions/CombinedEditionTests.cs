using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Tests.Corpus;
using PatternForge.Tests.Work;

namespace PatternForge.Tests.Editions;

/// <summary>Several editions in one: a chain of rewritings, each compiled and checked.</summary>
public class CombinedEditionTests
{
    private const string Vest = "---\ntitle: Vest\nterms: us\nsizes: S (M, L)\n---\n\n## Left front\n\nCO 20 (24, 28) sts.\n\nRow 1: K2tog, k to end. 19 (23, 27) sts.\n\nWork even until piece measures 15 (16, 17) cm. Bind off.\n";

    public static TheoryData<string> Files
    {
        get
        {
            var data = new TheoryData<string>();
            foreach (var name in PatternFiles.In("examples"))
            {
                data.Add(name);
            }

            return data;
        }
    }

    [Theory]
    [InlineData("uk+size-m+inches", "CO 24 sts.\n\nRow 1: K2tog, k to end. 23 sts.\n\nWork straight until piece measures 6¼ in. Cast off.\n")]
    [InlineData("spelled-out+uk+size-l+both-units", "Cast on 28 stitches.\n\nRow 1: Knit 2 together, knit to end. 27 stitches.\n\nWork straight until piece measures 17 cm (6¾ in). Cast off.\n")]
    [InlineData("size-s+large-print", "CO 20 sts.\n\nRow 1: K2tog, k to end. 19 sts.\n\nWork even until piece measures 15 cm. Bind off.\n")]
    public void The_parts_are_made_one_after_the_other(string name, string expected) =>
        Assert.Equal(expected, EditionsOf.In(EditionsOf.Compile(Vest), name).Compilation!.Source.Text.Split("front\n\n")[1]);

    [Fact]
    public void The_page_has_the_form_of_all_parts()
    {
        var form = EditionsOf.In(EditionsOf.Compile(Vest), "uk+size-m+large-print+inches+low-ink").Compilation!.Edition!;
        Assert.Equal("uk+size-m+large-print+inches+low-ink", form.Name);
        Assert.True(form is { IsLargePrint: true, IsLowInk: true, Readers: Dialect.Uk, Units: Core.Model.UnitSystem.Imperial });
    }

    [Theory]
    [InlineData("us+uk")]
    [InlineData("metric+uk+inches")]
    [InlineData("size-s+size-m")]
    [InlineData("size-s+marked-m")]
    [InlineData("words-only+charts-only")]
    public void Two_that_settle_the_same_are_told(string name)
    {
        Assert.Null(Edition.Find(name));
        var found = EditionsOf.Compile(Vest.Replace("terms: us", $"terms: us\nrelease: [{name}]", StringComparison.Ordinal)).Findings;
        Assert.Single(found, f => f.Rule == EditionRules.NotTogether);
        Assert.DoesNotContain(found, f => f.Rule == EditionRules.Unknown);
    }

    [Fact]
    public void A_part_that_does_not_exist_is_named()
    {
        var found = EditionsOf.Compile(Vest.Replace("terms: us", "terms: us\nrelease: [uk+large-prnt]", StringComparison.Ordinal)).Findings;
        Assert.Contains(found, f => f.Rule == EditionRules.Unknown && f.Message.Contains("`large-prnt`", StringComparison.Ordinal) && f.Help!.Contains("large-print", StringComparison.Ordinal));
    }

    [Fact]
    public void One_of_each_size_is_made_in_a_combination_too() =>
        Assert.Equal(["uk+size-s", "uk+size-m", "uk+size-l"], Edition.Find("uk+sizes")!.For(EditionsOf.Compile(Vest)).Select(e => e.Name));

    [Fact]
    public void What_a_later_part_finds_is_told_at_its_place_in_the_file()
    {
        var text = Vest.Replace("Bind off.", "Leave half a centimetre.", StringComparison.Ordinal).Replace("## Left", "## Notes\n\nLeave half a centimeter.\n\n## Left", StringComparison.Ordinal);
        var plain = EditionsOf.Compile(text);
        var found = Assert.Single(EditionsOf.In(plain, "uk+size-m+inches").Findings, f => f.Rule == EditionRules.UnitLeft && f.Span.Start < text.IndexOf("## Left", StringComparison.Ordinal));
        Assert.Equal("centimeter", text.Substring(found.Span.Start, found.Span.Length));
        Assert.StartsWith("in the edition `uk+size-m+inches`, ", found.Message, StringComparison.Ordinal);
        Assert.Equal("uk+size-m+inches", found.Edition);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Each_example_is_clean_in_combinations(string file)
    {
        var plain = PatternFiles.Compile("examples", file);
        var size = plain.Pattern.Facts.Sizes.Count > 1 ? Edition.Find("sizes")!.For(plain).ElementAt(1).Name + "+" : "";
        foreach (var name in (string[])[$"{size}uk+inches", $"{size}us+metric+spelled-out", $"{size}left-handed+both-units+screen-reader", "uk+inches+left-handed+large-print+both-terms"])
        {
            var made = EditionsOf.In(plain, name);
            Assert.Equal("", string.Join("\n", made.Findings.Where(f => f.Severity != Severity.Note).Select(f => $"{name} {f.Rule.Code} {f.Message}")));
            var (counts, index) = (made.Compilation!.Lines.Where(l => l.After[0] is not null).Select(l => l.After[0]), size.Length > 0 && name.StartsWith(size, StringComparison.Ordinal) ? 1 : 0);
            Assert.Equal(plain.Lines.Last(l => l.After[index] is not null).After[index], counts.Last());
            Assert.All(made.Compilation.Lines, l => Assert.Equal(Core.Work.LineStatus.Checked, l.Status));
        }
    }

    [Fact]
    public void A_crocheted_row_made_at_random_comes_to_the_same_in_a_combination() =>
        MetamorphicRows.Crocheted.Sample(
            row =>
            {
                var plain = MetamorphicPiece.Work(row, new MetamorphicStyle { Names = MetamorphicRows.NamesIn(Dialect.Us) }).Compiled;
                Assert.Equal("", EditionsOf.Differences(plain, EditionsOf.In(plain, "uk+inches+left-handed+spelled-out")));
            },
            iter: 150);

    [Fact]
    public void A_knitted_row_made_at_random_comes_to_the_same_in_a_combination() =>
        MetamorphicRows.Knitted.Sample(
            row =>
            {
                var plain = MetamorphicPiece.Work(row, new MetamorphicStyle { Names = MetamorphicRows.NamesIn(Dialect.Us) }).Compiled;
                Assert.Equal("", EditionsOf.Differences(plain, EditionsOf.In(plain, "left-handed+both-units+uk+screen-reader")));
            },
            iter: 150);
}
