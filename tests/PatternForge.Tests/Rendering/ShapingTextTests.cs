using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Rendering;

/// <summary>What a block `shaping` prints: the shaping of the line before it, laid out.</summary>
public class ShapingTextTests
{
    private const string Front =
        """
        ---
        title: Harbour vest
        sizes: S (M)
        ---

        ## Left front

        Cast on 30 (34) sts.

        Dec 1 st at armhole edge every RS row 2 (3) times and AT THE SAME TIME dec 1 st at neck edge every 4th row 2 times.

        ```shaping
        ```

        ## Right front

        Work as for Left front, reversing shaping.

        ```shaping
        ```
        """;

    [Fact]
    public void Shapings_at_the_same_time_are_a_table_for_each_size()
    {
        var page = PageTests.Page(Compiled(Front), "md").Text;

        Assert.Contains("**S**\n\n| row | (a) | (b) | stitches |\n| --: | --: | --: | -------: |\n|   2 |  −1 |     |       29 |\n|   4 |  −1 |  −1 |       27 |\n|   8 |     |  −1 |       26 |\n", page, StringComparison.Ordinal);
        Assert.Contains("**M**", page, StringComparison.Ordinal);
        Assert.DoesNotContain("```", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Reversed_shaping_is_written_out()
    {
        var page = PageTests.Page(Compiled(Front), "md").Text;

        Assert.Contains("- Dec 1 st at armhole edge every WS row 2 (3) times and AT THE SAME TIME dec 1 st at neck edge every 4th row 2 times.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void In_html_it_is_a_table_too() =>
        Assert.Contains("scope=\"col\">stitches</th>", PageTests.Page(Compiled(Front), "html").Text, StringComparison.Ordinal);

    private static Compilation Compiled(string text) => Compiler.Compile(new SourceText("vest.pattern.md", text));
}
