using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Binding;

/// <summary>Stitches that a row counts by the letters of the header's yarns, and numbers of the header that prose names.</summary>
public class YarnLettersTests
{
    [Theory]
    [InlineData("*MC: k2, CC: k3; rep from * around.")]
    [InlineData("*2 MC, 3 CC; rep from * around.")]
    [InlineData("*K2MC, k3CC; rep from * around.")]
    [InlineData("*2A, 3B; rep from * around.")]
    [InlineData("K1MC, *k2CC, k2MC; rep from * to last 3 sts, k3CC.")]
    public void A_round_told_by_the_letters_of_the_headers_yarns_is_worked(string round)
    {
        var compiled = Compile("yarn:\n  - label: MC\n    name: One\n  - label: CC\n    name: Two\n  - label: A\n    name: Three\n  - label: B\n    name: Four\n", $"Rnd 1: {round} (20 sts)");

        Assert.Empty(Told(compiled));
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
    }

    [Theory]
    [InlineData("*K1 A, k1 B; rep from * around.")]
    [InlineData("*P1 B, p1 A; rep from * around.")]
    public void A_stitch_in_a_yarn_called_B_is_none_into_the_back(string round)
    {
        var compiled = Compile("yarn:\n  - label: A\n    name: Three\n  - label: B\n    name: Four\n", $"Rnd 1: {round} (20 sts)");

        Assert.Empty(Told(compiled));
        Assert.Equal(LineStatus.Checked, compiled.Lines[^1].Status);
        Assert.DoesNotContain(compiled.Abbreviations, a => a.Name.Contains("1b", StringComparison.OrdinalIgnoreCase) || a.Name.Contains("1 B", StringComparison.Ordinal));
    }

    [Fact]
    public void A_repeat_told_by_those_letters_that_does_not_fit_is_told()
    {
        var compiled = Compile("yarn:\n  - label: MC\n    name: One\n  - label: CC\n    name: Two\n", "Rnd 1: *2 MC, 4 CC; rep from * around.");

        Assert.Equal("PF302", Assert.Single(Told(compiled)).Rule.Code);
    }

    [Fact]
    public void Letters_that_no_yarn_of_the_header_goes_by_are_no_stitches()
    {
        var compiled = Compile("", "Rnd 1: *2 MC, 3 CC; rep from * around.");

        Assert.NotEqual(LineStatus.Checked, compiled.Lines[^1].Status);
        Assert.Empty(Told(compiled));
    }

    [Theory]
    [InlineData("Leave a tail of {tail} cm.", 1)]
    [InlineData("Leave a tail of {length} cm.", 0)]
    [InlineData("Work the part in braces {k2tog} as before.", 0)]
    [InlineData("The field `{tail}` is not printed.", 0)]
    [InlineData("A tail <!-- of {tail} --> is left.", 0)]
    public void A_name_in_braces_in_prose_is_one_of_the_headers_numbers(string prose, int found)
    {
        var compiled = Compile("numbers:\n  length: 20\n", $"## Finishing\n\n{prose}");

        Assert.Equal(found, compiled.Findings.Count(f => f.Rule.Code == "PF216"));
    }

    private static IEnumerable<Finding> Told(Compilation compilation) => compilation.Findings.Where(f => f.Rule.Area is Area.Notation or Area.Counts && f.Severity != Severity.Note);

    private static Compilation Compile(string header, string body) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\nsizes: one size\nconstruction: in the round\n{header}---\n\n## Piece\n\nBegin with 20 sts.\n\n{body}\n"));
}
