using System.Text;
using PatternForge.Core;

namespace PatternForge.Tests.Syntax;

public class HeaderLimitTests
{
    [Fact]
    public void Nesting_beyond_the_limit_is_found_once_and_the_other_keys_are_read()
    {
        var (source, map, bag) = HeaderText.Read(HeaderText.Fenced($"title: x\nnotes: {new string('[', 5000)}\ncraft: knitting"));
        Assert.Equal(["PF107"], HeaderText.Codes(bag));
        Assert.Contains("craft=knitting", HeaderText.Dump(source, map), StringComparison.Ordinal);
        Assert.Equal("notes", Assert.Single(map!.Damaged));
    }

    [Fact]
    public void A_header_beyond_the_limit_is_read_up_to_it()
    {
        var (source, map, bag) = HeaderText.Read(HeaderText.Fenced("title: x\n" + string.Concat(Enumerable.Repeat("# filler\n", 100)) + "craft: knitting"), new CompileOptions { MaxHeaderLength = 200 });
        Assert.Equal(["PF108"], HeaderText.Codes(bag));
        Assert.Equal("{title=x}", HeaderText.Dump(source, map));
    }

    [Fact]
    public void Very_many_broken_lines_end_in_one_finding_more()
    {
        var header = new StringBuilder();
        for (var i = 0; i < 2000; i++)
        {
            header.Append("key").Append(i).Append(": ]x [ }\n bad\n");
        }

        var (_, _, bag) = HeaderText.Read(HeaderText.Fenced(header.ToString()));
        Assert.InRange(HeaderText.Codes(bag).Count(c => c == "PF103"), 0, 51);
    }

    // Shapes that make a careless reader slow. Each must come back; the run's own time limit is the guard.
    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    [InlineData("\"")]
    [InlineData("a: \n")]
    [InlineData("- a\n")]
    [InlineData("(")]
    [InlineData("[(")]
    [InlineData("\"x\" ")]
    [InlineData("* ")]
    [InlineData("[*")]
    [InlineData("a: 'x\n")]
    [InlineData("a: \"x\n")]
    [InlineData("x")]
    [InlineData(" ")]
    [InlineData("a: |\n")]
    [InlineData(", ")]
    [InlineData("[\"a]")]
    [InlineData("a: b: ")]
    public void A_long_run_of_one_shape_is_read_in_bounded_time(string shape)
    {
        var (_, map, _) = HeaderText.Read("---\nnotes: " + string.Concat(Enumerable.Repeat(shape, 200_000 / shape.Length)) + "\n---\n");
        Assert.NotNull(map);
    }
}
