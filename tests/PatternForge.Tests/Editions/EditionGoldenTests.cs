using System.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Editions;

/// <summary>What the page of an edition says otherwise than that of the pattern as it is written, line by line: to be read as a maker reads it.</summary>
public class EditionGoldenTests
{
    [Theory]
    [InlineData("fairwater-jumper", "uk", "md")]
    [InlineData("fairwater-jumper", "inches", "md")]
    [InlineData("fairwater-jumper", "size-m", "md")]
    [InlineData("fairwater-jumper", "left-handed", "md")]
    [InlineData("fairwater-jumper", "screen-reader", "md")]
    [InlineData("hawser-cowl", "words-only", "md")]
    [InlineData("hawser-cowl", "spelled-out", "txt")]
    [InlineData("mooring-square-mat", "uk", "md")]
    [InlineData("mooring-square-mat", "inches", "txt")]
    [InlineData("mooring-square-mat", "left-handed", "md")]
    [InlineData("mooring-square-mat", "words-only", "md")]
    [InlineData("net-loft-scarf", "size-wide", "md")]
    [InlineData("net-loft-scarf", "spelled-out", "md")]
    [InlineData("net-loft-scarf", "screen-reader", "txt")]
    public void An_edition_changes_what_was_approved_and_nothing_else(string name, string edition, string format)
    {
        var plain = EditionsOf.Compile(File.ReadAllText(RepositoryRoot.Path("examples", name + ".pattern.md")).ReplaceLineEndings("\n"));
        var made = EditionsOf.In(plain, edition);
        Assert.False(made.HasErrors);
        Golden.Match(Changes(Page(plain, format), Page(made.Compilation!, format)), $"editions/{name}.{edition}.changes.{format}");
    }

    private static string[] Page(Core.Compilation compilation, string format) =>
        Renderer.Render(compilation, OutputFormat.Find(format)!).Files.Single(f => f.Name.EndsWith("." + format, StringComparison.Ordinal)).Text.Split('\n');

    // The longest lines in common stay; of all others, what is gone stands before what has come.
    private static string Changes(string[] old, string[] now)
    {
        var common = new int[old.Length + 1, now.Length + 1];
        for (var i = old.Length - 1; i >= 0; i--)
        {
            for (var j = now.Length - 1; j >= 0; j--)
            {
                common[i, j] = old[i] == now[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var said = new StringBuilder();
        var (a, b, isApart) = (0, 0, false);
        while (a < old.Length || b < now.Length)
        {
            if (a < old.Length && b < now.Length && old[a] == now[b])
            {
                (a, b, isApart) = (a + 1, b + 1, true);
                continue;
            }

            said.Append(isApart && said.Length > 0 ? "\n" : "");
            isApart = false;
            said.Append(b >= now.Length || (a < old.Length && common[a + 1, b] >= common[a, b + 1]) ? $"- {old[a++]}".TrimEnd() : $"+ {now[b++]}".TrimEnd()).Append('\n');
        }

        return said.ToString();
    }
}
