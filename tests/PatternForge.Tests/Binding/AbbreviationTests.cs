using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Binding;

public class AbbreviationTests
{
    [Fact]
    public void The_ends_of_ordinals_are_no_abbreviations()
    {
        var compiled = Compile("abbreviations: [CO, k, p, rep, st(s)]", "1st row: K2, *p2, k2; rep from * to last 2 sts, p2.", "2nd row: Knit.", "3rd row: Purl. Rep 2nd and 3rd rows once more.");

        Assert.DoesNotContain(compiled.Findings, f => f.Rule.Code[2] == '5');
        Assert.DoesNotContain(compiled.Abbreviations, a => a.Name is "rd" or "nd" or "th");
    }

    [Fact]
    public void A_word_behind_a_number_is_still_one()
    {
        var compiled = Compile("abbreviations: [CO, k]", "Row 1: Knit. (24sts)");

        Assert.Contains(compiled.Findings, f => f.Rule.Code == "PF501" && f.Message.Contains("`sts`", StringComparison.Ordinal));
    }

    [Fact]
    public void The_table_says_what_the_patterns_own_list_says()
    {
        var compiled = Compile("abbreviations: {CO: cast on, k: knit, st: stitch}", "Row 1: Knit. (24 sts)");

        var stitch = Assert.Single(compiled.Abbreviations, a => a.Key == "st");
        Assert.Equal(("st", "stitch"), (stitch.Name, stitch.Meaning));
    }

    private static Compilation Compile(string key, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\n{key}\n---\n\n## Piece\n\nCO 24.\n\n{string.Join("\n\n", rows)}\n"));
}
