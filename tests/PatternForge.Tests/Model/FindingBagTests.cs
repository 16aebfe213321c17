using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Model;

public class FindingBagTests
{
    [Fact]
    public void What_quotes_several_lines_is_said_in_one()
    {
        var bag = new FindingBag(new SourceText("hat.pattern.md", "si\n\n  430 g"));

        bag.Add(RuleCatalog.All[0], new TextSpan(0, 2), "`si\n\n  430 g` is no size", "write\r\nS");

        var finding = Assert.Single(bag.ToSorted());
        Assert.Equal("`si 430 g` is no size", finding.Message);
        Assert.Equal("write S", finding.Help);
    }
}
