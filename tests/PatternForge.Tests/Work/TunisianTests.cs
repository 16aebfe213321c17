using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>Tunisian crochet: the loop on the hook is the first stitch of every row (the count rule of the published Tunisian lists).</summary>
public class TunisianTests
{
    [Theory]
    [InlineData("Row 1: Pull up a loop in 2nd ch from hook and in each ch across (41 loops on hook); return.", 41)]
    [InlineData("Row 1: Pull up a loop in 2nd ch from hook and in each ch across. (41 sts)", 41)]
    public void A_foundation_of_n_chains_gives_n_loops(string row, int loops)
    {
        var compiled = Compile("Ch 41.", row);

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([loops], compiled.Lines[^1].After);
    }

    [Theory]
    [InlineData("Row 2: Skip first vertical bar, tss in each st across (41 sts); return.", 41)]
    [InlineData("Row 2: Sk first st, [tks, tps] across to last 2 sts, tks, end st. RetP.", 41)]
    [InlineData("Row 2: Tss in next st, M1, tss to last 2 sts, M1, tss in last 2 sts. 43 sts.", 43)]
    [InlineData("Row 2: Tss2tog, tss to last 3 sts, tss2tog, tss in last st.", 39)]
    [InlineData("Rows 2-4: Tks in each st across.", 41)]
    [InlineData("Bind off: Sl st in each st across as if to tss. Fasten off.", 0)]
    public void The_loop_on_the_hook_is_the_first_stitch(string row, int after)
    {
        var compiled = Compile("Begin with 41 sts.", row);

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([after], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_repeat_that_does_not_divide_is_found()
    {
        var compiled = Compile("Begin with 43 sts.", "Row 2: Sk first st, [tks, tps] across to last st, end st. RetP.");

        var misfit = Assert.Single(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF302", misfit.Rule.Code);
    }

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour cloth\ncraft: tunisian\nterms: us\n---\n\n## Cloth\n\n{string.Join("\n\n", rows)}\n"));
}
