using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;
using PatternForge.Tests.Corpus;

namespace PatternForge.Tests.Editions;

/// <summary>The edition of one size: the counts of that size, and nothing found that the whole pattern has not.</summary>
public class SizeEditionTests
{
    public static TheoryData<string> Files
    {
        get
        {
            var data = new TheoryData<string>();
            foreach (var folder in (string[])["examples", "tests/corpus/clean", "tests/PatternForge.Tests/Rendering/Sources"])
            {
                foreach (var name in PatternFiles.In(folder.Split('/')))
                {
                    data.Add(folder + "/" + name);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Each_size_of_a_source_comes_to_the_same_by_itself(string file)
    {
        var plain = PatternFiles.Compile(file.Split('/'));
        foreach (var edition in Edition.Find("sizes")!.For(plain))
        {
            var made = EditionCompiler.Compile(plain, edition);
            Assert.Equal("", string.Join("\n", made.Findings.Where(f => f.Severity != Severity.Note).Select(f => $"{edition.Name} {f.Rule.Code} {f.Message}")));
            Assert.Equal(1, made.Compilation!.Pattern.Facts.Sizes.Count);
            Assert.Equal("", Differences(plain, edition.OnlySize(plain)!.Value, made.Compilation));
        }
    }

    [Theory]
    [InlineData("CO 20 (24, 28) sts.", "CO 24 sts.")]
    [InlineData("Row 1: K2 (3, 4), p to end.", "Row 1: K3, p to end.")]
    [InlineData("Row 1: K2, p- (–, 4), p to end.", "Row 1: K2, p to end.")]
    [InlineData("Row 1: K2, k- (–, 4).", "Row 1: K2.")]
    [InlineData("Rep last 2 rows 2 (1, 3) more times.", "Rep last 2 rows 1 more time.")]
    [InlineData("Sizes S and L only: Next row: Knit.", "")]
    [InlineData("Sizes S and M only: Next row: K2tog 2 (3) times, k to end.", "Next row: K2tog 3 times, k to end.")]
    [InlineData("For size M: k2tog, k to end.", "K2tog, k to end.")]
    [InlineData("Work even for 10/11/12 cm.", "Work even for 11 cm.")]
    [InlineData("Dec every 4th (6th, 8th) row 3 (4, 5) times.", "Dec every 6th row 4 times.")]
    [InlineData("It is 8 cm longer in size L.", "It is 8 cm longer in size L.")]
    public void A_line_is_told_for_one_size(string line, string expected)
    {
        Assert.Equal(expected, Text($"---\ntitle: Vest\nsizes: S (M, L)\n---\n\n## Back\n\n{line}\n").Split("## Back\n\n")[1].Trim());
    }

    [Fact]
    public void The_header_has_the_values_of_one_size()
    {
        var text = Text("---\ntitle: Vest\nsizes:\n  names: S (M, L)\n  finished: {bust: 80 (90, 100) cm, length: 50 cm}\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm\nnumbers:\n  front: = round(sts(bust / 2), even)\n  hem: [6, 8, 10]\n  tie:\n    - 1\n    - –\n    - 3\n  pocket:\n    S: 20\n    M: 22\n    L: 24\nsample: {size: L, used: 50 g}\n---\n\n## Back\n\nCO {front} sts.\n");
        Assert.Contains("  names: M\n  finished: {bust: 90 cm, length: 50 cm}\n", text, StringComparison.Ordinal);
        Assert.Contains("  front: 90\n  hem: 8\n", text, StringComparison.Ordinal);
        Assert.Contains("22\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("24", text, StringComparison.Ordinal);
        Assert.DoesNotContain("sample", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_size_that_the_pattern_does_not_have_is_refused()
    {
        var plain = EditionsOf.Compile("---\ntitle: Vest\nsizes: S (M, L)\nrelease: [size-xl]\n---\n\n## Back\n\nCO 20 (24, 28) sts.\n");
        Assert.Contains(plain.Findings, f => f.Rule == EditionRules.Unknown);
        Assert.Contains(EditionsOf.In(plain, "size-xl").Findings, f => f.Rule == EditionRules.NotPossible);
    }

    [Fact]
    public void All_sizes_are_released_by_one_word() =>
        Assert.Equal(["size-2-years", "size-4-years"], EditionCompiler.Released(EditionsOf.Compile("---\ntitle: Vest\nsizes: 2 years, 4 years\nrelease: [sizes]\n---\n\n## Back\n\nCO 20 (24) sts.\n")).Select(e => e.Name));

    [Fact]
    public void A_pattern_made_at_random_comes_to_the_same_in_each_size() =>
        Gen.Select(Gen.Int[2, 5], Gen.Int[1, 4], Gen.Int[0, 3], Gen.Int[1, 5]).Sample(
            (sizes, step, rows, first) =>
            {
                var names = string.Join(", ", Enumerable.Range(1, sizes).Select(i => $"G{i}"));
                string Each(Func<int, int> of) => $"{of(0)} ({string.Join(", ", Enumerable.Range(1, sizes - 1).Select(of))})";
                int Count(int size) => 20 + (4 * step * size);
                var lines = new List<string> { $"CO {Each(Count)} sts.", $"Row 1: K{Each(i => first + i)}, p to end. {Each(Count)} sts." };
                for (var row = 0; row < rows; row++)
                {
                    lines.Add($"Row {row + 2}: K2tog {Each(i => 1 + (i * row))} times, k to end.");
                }

                lines.Add("Sizes G1 and G2 only: Next row: K2tog, k to end.");
                var plain = EditionsOf.Compile($"---\ntitle: Made\nsizes: {names}\n---\n\n## Piece\n\n{string.Join("\n\n", lines)}\n");
                foreach (var edition in Edition.Find("sizes")!.For(plain))
                {
                    var made = EditionCompiler.Compile(plain, edition);
                    Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
                    Assert.Equal("", Differences(plain, edition.OnlySize(plain)!.Value, made.Compilation!));
                    Assert.Empty(FreshIn(plain, made));
                }

                foreach (var name in (string[])["us", "uk"])
                {
                    var made = EditionsOf.In(plain, name);
                    Assert.Equal("", EditionsOf.Differences(plain, made));
                    Assert.Empty(FreshIn(plain, made));
                }

                var both = EditionsOf.In(plain, "uk+size-g2");
                Assert.Equal("", Differences(plain, 1, both.Compilation!));
                Assert.Empty(FreshIn(plain, both));
            },
            iter: 200);

    // The rewritten source, read by itself, has no error and no warning that the pattern as it is written has not.
    private static IEnumerable<string> FreshIn(Core.Compilation plain, EditionCompilation made) => EditionsOf.Compile(made.Source.Text.Text).Findings
        .Where(f => f.Severity != Severity.Note).Select(f => f.Rule.Code).Except(plain.Findings.Select(f => f.Rule.Code));

    [Fact]
    public void An_amount_that_is_worked_out_from_the_sample_of_another_size_stays_with_the_size()
    {
        var text = File.ReadAllText(RepositoryRoot.Path("examples", "bilge-keel-socks.pattern.md"));
        var at = text.IndexOf("  needs:", StringComparison.Ordinal);
        var plain = EditionsOf.Compile(text[..at] + "  needs: estimated" + text[text.IndexOf('\n', at)..]);
        var needs = plain.Pattern.Facts.Yarns[0].Needs!;
        foreach (var edition in Edition.Find("sizes")!.For(plain))
        {
            var size = edition.OnlySize(plain)!.Value;
            var made = EditionCompiler.Compile(plain, edition);
            Assert.Empty(made.Findings.Select(f => f.Rule.Code));
            Assert.Equal(needs[size], made.Compilation!.Pattern.Facts.Yarns[0].Needs![0]);
            Assert.Equal(size == 2, made.Compilation.Pattern.Facts.Yarns[0].NeedsAreEstimated); // the sample is of size M
        }
    }

    private static string Differences(Compilation plain, int size, Compilation made)
    {
        var before = plain.Lines.Where(l => l.Status == LineStatus.Checked && l.After[size] is not null && l.After[size] != l.Before[size]).Select(l => (l.Before[size], l.After[size]));
        var after = made.Lines.Where(l => l.Status == LineStatus.Checked && l.After[0] is not null && l.After[0] != l.Before[0]).Select(l => (l.Before[0], l.After[0]));
        return before.SequenceEqual(after) ? "" : $"{string.Join(" ", before)}\n{string.Join(" ", after)}";
    }

    private static string Text(string text) => EditionsOf.Text(text, "size-m");
}
