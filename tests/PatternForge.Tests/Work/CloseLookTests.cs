using System.Text.RegularExpressions;
using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>What a finding about counts says of how the count comes about, and of the change that would mend the row.</summary>
public class CloseLookTests
{
    [Theory]
    // An edge stitch, a repeat's own number, a tail, a bracket's times; one size and several.
    [InlineData("S (M)", "82 (90)", "Row 1: K2, *k2, p2; rep from * to last 2 sts, k2.", "`K4` instead of `K2` would make it fit in every size")]
    [InlineData("S (M)", "82 (90)", "Row 1: K2, *p2, k2; rep from * to last 4 sts, k2.", "`k4` instead of `k2` would make it fit in every size")]
    [InlineData("S (M)", "80 (88)", "Row 1: *K4, k2tog; rep from * to end. 70 (77) sts.", "`K6` instead of `K4` would make it fit in every size")]
    [InlineData("S (M)", "80 (96)", "Row 1: [K6, k2tog] 9 (11) times. 70 (84) sts.", "`10 (12) times` instead of `9 (11) times`")]
    [InlineData("one size", "80", "Row 1: K39, ssk, k40.", "`K38` instead of `K39` or `k39` instead of `k40` would make it fit")]
    [InlineData("one size", "80", "Row 1: K2, ssk, k to last 5 sts, k2tog, k2. 78 sts.", "`last 4 sts` instead of `last 5 sts`")]
    public void The_change_of_one_number_that_mends_a_row_is_told(string sizes, string castOn, string row, string help)
    {
        var finding = Assert.Single(Compile(sizes, $"CO {castOn} sts.", row).Findings, f => f.Severity == Severity.Error);

        Assert.Contains(help, finding.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Row 1: K2, ssk, k to last 4 sts, k2tog, k2. 79 sts.", "K2 (2), ssk (2 to 1), k to last 4 sts (74), k2tog (2 to 1), k2 (2)")]
    [InlineData("Row 1: [K2tog, k6] 10 times, k2. 73 sts.", "[K2tog, k6] 10 times (10 times: 80 to 70), k2 (2)")]
    [InlineData("Row 1: K2, *yo, k2tog; rep from * to last 3 sts, k3.", "K2 (2), *yo, k2tog; rep from * to last 3 sts (38 times: 76), k3 (3)")]
    public void A_finding_says_how_the_count_comes_about(string row, string reckoning)
    {
        var finding = Assert.Single(Compile("one size", "CO 82 sts.", row).Findings, f => f.Severity == Severity.Error);

        Assert.Equal(reckoning, finding.Reckoning);
    }

    [Fact]
    public void The_reckoning_is_of_the_size_that_is_wrong_and_names_it()
    {
        var finding = Assert.Single(Compile("S (M)", "CO 82 (90) sts.", "Row 1: K2, ssk, k to last 4 sts, k2tog, k2. 80 (87) sts.").Findings, f => f.Severity == Severity.Error);

        Assert.StartsWith("in M: K2 (2), ssk (2 to 1), k to last 4 sts (82)", finding.Reckoning, StringComparison.Ordinal);
        Assert.Contains("size M", finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_figures_that_changed_places_are_told()
    {
        var finding = Assert.Single(Compile("one size", "CO 70 sts.", "Row 1: K2tog, k to last 2 sts, ssk. 86 sts.").Findings, f => f.Severity == Severity.Error);

        Assert.Contains("changed places: 68", finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decrease_that_is_missing_in_every_size_is_told()
    {
        var finding = Assert.Single(Compile("S (M)", "CO 70 (80) sts.", "Row 1: K2tog, k to end. 68 (78) sts.").Findings, f => f.Severity == Severity.Error);

        Assert.Contains("1 fewer in every size: one decrease may be missing", finding.Help, StringComparison.Ordinal);
    }

    /// <summary>
    /// A row that comes out is made, one of its numbers is changed, and the repair that the finding offers, if any, is carried out: the row comes out again.
    /// </summary>
    [Fact]
    public void A_row_mended_as_the_help_line_says_comes_out()
    {
        var cases = Gen.Select(Gen.Int[1, 6], Gen.Int[2, 8], Gen.Int[2, 30], Gen.Int[1, 6], Gen.Int[-3, 3].Where(n => n != 0), Gen.Int[0, 2]);
        var told = 0;
        cases.Sample(
            c =>
            {
                var (edge, plain, times, tail, change, which) = c;
                var count = edge + (times * (plain + 2)) + tail;
                int[] numbers = [edge, plain, tail];
                numbers[which] += change;
                if (numbers[which] <= 0)
                {
                    return;
                }

                var row = $"Row 1: K{numbers[0]}, *p{numbers[1]}, k2tog; rep from * to last {tail} sts, k{numbers[2]}. {count - times} sts.";
                var findings = Compile("one size", $"CO {count} sts.", row).Findings;
                if (findings.FirstOrDefault(f => f is { Severity: Severity.Error, Help: not null } && f.Help.Contains("` instead of `", StringComparison.Ordinal)) is not { } finding)
                {
                    return;
                }

                Interlocked.Increment(ref told);
                var parts = finding.Help!.Split('`');
                Assert.DoesNotContain(Compile("one size", $"CO {count} sts.", Regex.Replace(row, $"\\b{Regex.Escape(parts[3])}\\b", parts[1])).Findings, f => f.Severity == Severity.Error);
            },
            iter: 300);
        Assert.True(told > 20, $"only {told} repairs were offered");
    }

    [Fact]
    public void A_pattern_without_mistakes_is_not_looked_at_twice()
    {
        var compiled = Compile("one size", "CO 82 sts.", "Row 1: K2, ssk, k to last 4 sts, k2tog, k2. 80 sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Reckoning is not null);
        Assert.All(compiled.Lines, line => Assert.Empty(line.Trace));
    }

    private static Compilation Compile(string sizes, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\nsizes: {sizes}\n---\n\n## Piece\n\n{string.Join("\n\n", rows)}\n"));
}
