using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

public class FreeSideTests
{
    [Fact]
    public void Yarn_joined_to_the_foundation_chain_goes_along_its_free_side()
    {
        var compiled = Compile("Ch 50.", "Row 1: Sc in 2nd ch from hook and in each ch across. (49 sc)", "Row 2: Ch 1, turn, 2 sc in first st, sc in each st across. (50 sc)", "Fasten off.",
            "With RS facing, join yarn with a sl st in first ch of the foundation chain.", "Row 1: Ch 1, sc in same ch, *sc in next 2 chs; rep from * across. 49 sc.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([49], compiled.Lines[^1].After);
    }

    [Fact]
    public void Where_the_foundation_is_not_known_its_free_side_is_not_either()
    {
        var compiled = Compile("Begin with 30 sc.", "Join yarn in first ch of the foundation chain.", "Row 1: Ch 1, sc in same ch, sc in next 40 chs.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([null], compiled.Lines[^1].After);
    }

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour band\ncraft: crochet\nterms: us\n---\n\n## Band\n\n{string.Join("\n\n", rows)}\n"));
}
