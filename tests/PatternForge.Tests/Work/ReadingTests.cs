using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

public class ReadingTests
{
    // K2tog, k2 over 20 stitches fits five times in all; yo over 15 has no stitches to tell by.
    [Fact]
    public void What_times_means_in_one_row_it_means_in_the_next_that_cannot_tell()
    {
        var compiled = Compile("Row 1: *K2tog, k2; rep from * 5 times.", "Row 2: K15, *yo; rep from * 3 times.");

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal<int?>([18], compiled.Lines[^1].After);
        Assert.Equal("the number of times is taken as times in all", compiled.Lines[^1].Reading);
    }

    [Fact]
    public void Times_means_more_times_where_nothing_tells()
    {
        var compiled = Compile("Row 1: K20, *yo; rep from * 3 times.");

        Assert.Equal<int?>([24], compiled.Lines[^1].After);
    }

    private static Compilation Compile(params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\n---\n\n## Piece\n\nCO 20 sts.\n\n{string.Join("\n\n", rows)}\n"));
}
