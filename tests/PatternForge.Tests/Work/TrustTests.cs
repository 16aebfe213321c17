using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

public class TrustTests
{
    [Fact]
    public void Markers_of_a_line_that_was_not_understood_make_no_later_error()
    {
        var compiled = Compile(
            "S (M, L)",
            "CO 88 (96, 104) sts. Join in the round.",
            "Set-up rnd: *K11 (12, 13), pm; rep from * around. 88 (96, 104) sts. Twiddle these as you like, wobble 3 sts.",
            "Dec rnd: *K to 2 sts before m, k2tog, sm; rep from * around. 8 sts dec'd. 80 (88, 96) sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity != Severity.Note && f.Rule.Code[2] is '2' or '3');
        Assert.Equal(LineStatus.Trusted, compiled.Lines[^1].Status);
        Assert.Equal<int?>([80, 88, 96], compiled.Lines[^1].After);
    }

    [Fact]
    public void A_row_that_was_not_understood_is_not_understood_when_it_is_repeated()
    {
        var compiled = Compile("one size", "CO 24 sts.", "Row 1: Knit.", "Row 2: K3, wibble over the next few sts, k3. (24 sts)", "Rep Rows 1 and 2 twice more.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(LineStatus.Trusted, compiled.Lines[^1].Status);
    }

    [Fact]
    public void A_size_named_on_a_line_of_its_own_holds_until_the_next()
    {
        var compiled = Compile("S (M, XL)", "CO 24 (26, 28) sts.", "Size XL only:", "Row 1: K1, k2tog, k to end. 27 sts.", "All sizes:", "Row 2: Purl. 24 (26, 27) sts.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([24, 26, 27], compiled.Lines[^1].After);
    }

    private static Compilation Compile(string sizes, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\nsizes: {sizes}\n---\n\n## Piece\n\n{string.Join("\n\n", rows)}\n"));
}
