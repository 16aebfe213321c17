using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Syntax;

public class HeaderAcceptancesTests
{
    [Fact]
    public void A_remark_accepts_a_finding_of_its_line_or_of_the_line_below()
    {
        var source = new SourceText("x", """
            ---
            # accept PF604: the stitch does not matter here
            gauge: 20 sts = 10 cm # accept PF605: any tool
            title: "a # accept PF801: no remark"
            summary: |
              # accept PF802: no remark either
            # Accept gauge-without-tool
            # a remark: accept PF803
            ---
            """);
        var header = FileSplitter.Split(source, new FindingBag(source)).Header!.Value;

        Assert.Equal(
            [
                ("PF604", "the stitch does not matter here", 2, true, "# accept PF604: the stitch does not matter here"),
                ("PF605", "any tool", 3, false, "# accept PF605: any tool"),
                ("gauge-without-tool", "", 7, true, "# Accept gauge-without-tool"),
            ],
            HeaderAcceptances.Find(source, header).Select(a => (a.Code, a.Reason, a.Line, a.IsAlone, source.ToString(a.Span))));
    }
}
