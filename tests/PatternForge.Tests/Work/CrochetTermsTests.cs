using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>Whose names a crochet pattern uses; the pairs of names are those of the published table of American and British crochet terms.</summary>
public class CrochetTermsTests
{
    [Theory]
    [InlineData("terms: us", "Rnd 1: 6 htr in magic ring.", "PF402")]
    [InlineData("terms: uk", "Rnd 1: 6 sc in magic ring.", "PF402")]
    [InlineData("terms: uk", "Rnd 1: 6 hdc in magic ring.", "PF402")]
    [InlineData("omit: []", "Rnd 1: 12 dc in ring, join.", "PF403")]
    [InlineData("omit: []", "Rnd 1: 6 sc in magic ring.", "PF404")]
    [InlineData("omit: []", "Rnd 1: 6 htr in magic ring.", "PF404")]
    public void A_name_that_the_terms_do_not_have_is_found(string header, string row, string code) =>
        Assert.Single(Compile(header, row).Findings, f => f.Rule.Code == code);

    [Theory]
    [InlineData("terms: us", "Rnd 1: Ch 3, 11 dc in ring, sl st in top of ch-3.")]
    [InlineData("terms: uk", "Rnd 1: 3ch, 11tr in ring, ss in top of 3ch.")]
    [InlineData("terms: us", "Rnd 1: 6 sc in magic ring.")]
    [InlineData("terms: uk", "Rnd 1: 6 dc in magic ring.")]
    [InlineData("terms: uk\nstitches: {sc: 5 tr in same st}", "Rnd 1: 6 dc in magic ring.")]
    public void Names_that_the_terms_have_are_not(string header, string row) =>
        Assert.DoesNotContain(Compile(header, row).Findings, f => f.Rule.Code is "PF402" or "PF403" or "PF404" or "PF405");

    [Fact]
    public void Where_none_are_declared_a_proof_settles_what_the_other_names_mean()
    {
        var compiled = Compile("omit: []", "Rnd 1: 6 dc in magic ring.", "Rnd 2: [2 dc in next st, htr in next st] 3 times.");

        Assert.Equal(["dc", "htr"], compiled.Lines[^1].Kinds[0].Keys);
    }

    private static Compilation Compile(string header, params string[] rows) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Harbour mat\ncraft: crochet\n{header}\n---\n\n## Mat\n\n{string.Join("\n\n", rows)}\n"));
}
