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

    // The British names are those of the published table of American and British crochet terms.
    [Fact]
    public void A_stitch_is_explained_in_the_terms_of_the_pattern()
    {
        var compiled = Crochet("terms: uk", "Rnd 1: 12 tr in ring, ss in first tr.", "Rnd 2: 1dc in each tr, ss in first dc.", "Rnd 3: 1htr in each dc around, join A with ss in first htr.");

        Assert.Equal(["dc double crochet", "htr half treble", "rnd round", "ss slip stitch", "tr treble"], compiled.Abbreviations.Select(a => $"{a.Name} {a.Meaning}"));
    }

    [Fact]
    public void What_a_special_stitch_is_made_of_is_explained_too()
    {
        var compiled = Crochet("terms: us\nstitches: {shell: 5 dc in same st}", "Rnd 1: 6 sc in ring. (6 sc)", "Rnd 2: *Shell in next sc, sc in next sc; rep from * around.");

        Assert.Contains(compiled.Abbreviations, a => a.Name == "dc");
    }

    [Fact]
    public void Everything_in_the_patterns_own_list_is_in_the_table()
    {
        var compiled = Crochet("terms: us\nabbreviations: {sc: single crochet, \"ch-2 sp\": chain-2 space, tch: turning chain}", "Rnd 1: 6 sc in ring. (6 sc)");

        Assert.Equal(["ch-2 sp", "rnd", "sc", "tch"], compiled.Abbreviations.Select(a => a.Name));
    }

    private static Compilation Crochet(string keys, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour mat\ncraft: crochet\n{keys}\nyarn: [{{label: A, name: Invented Cotton, weight: light, put-up: 50 g = 100 m, needs: 40 m}}]\n---\n\n## Mat\n\n{string.Join("\n\n", rows)}\n"));

    private static Compilation Compile(string key, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour hat\n{key}\n---\n\n## Piece\n\nCO 24.\n\n{string.Join("\n\n", rows)}\n"));
}
