using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Editions;

/// <summary>Editions of patterns whose terms are settled by the studio's project file.</summary>
public class HouseTermsTests
{
    private const string Square = "---\ntitle: Square\ncraft: crochet\n---\n\n## Square\n\nRnd 1: 12 tr in ring. (12 tr)\n";

    [Fact]
    public void Terms_of_the_project_file_are_those_that_an_edition_comes_from()
    {
        var (plain, made) = Make(Square, "defaults:\n  terms: uk\n", "us");
        Assert.DoesNotContain(plain.Findings, f => f.Rule.Code is "PF403" or "PF404");
        Assert.Equal("---\nterms: us\ntitle: Square\ncraft: crochet\n---\n\n## Square\n\nRnd 1: 12 dc in ring. (12 dc)\n", made.Source.Text.Text);
        Assert.Equal(Core.Stitches.Dialect.Us, made.Compilation!.Pattern.Facts.TermsInForce);
        Assert.Equal(plain.Lines.SelectMany(l => l.After), made.Compilation.Lines.SelectMany(l => l.After));
        Assert.Empty(made.Findings);
    }

    [Fact]
    public void An_edition_in_the_studios_own_terms_changes_no_row()
    {
        var (_, made) = Make(Square, "defaults:\n  terms: uk\n", "uk");
        Assert.Contains("12 tr in ring. (12 tr)", made.Source.Text.Text, StringComparison.Ordinal);
        Assert.Empty(made.Findings);
    }

    [Fact]
    public void The_patterns_own_terms_win()
    {
        var (_, made) = Make(Square.Replace("craft:", "terms: us\ncraft:", StringComparison.Ordinal), "defaults:\n  terms: uk\n", "uk");
        Assert.Contains("terms: uk\ncraft: crochet", made.Source.Text.Text, StringComparison.Ordinal);
        Assert.Contains("12 dtr in ring. (12 dtr)", made.Source.Text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Knitting_takes_them_as_well()
    {
        var (_, made) = Make("---\ntitle: Band\n---\n\n## Band\n\nCast on 12 sts.\n\nWork in moss st for 6 rows.\n\nCast off all sts.\n", "defaults:\n  terms: uk\n", "us");
        Assert.Contains("Work in seed st for 6 rows.\n\nBind off all sts.", made.Source.Text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_a_header_is_given_its_terms()
    {
        var made = EditionsOf.In(EditionsOf.Compile("## Ring\n\nRnd 1: 6 sc in magic ring. (6 sc)\n"), "uk");
        Assert.NotEqual("", made.Source.Text.Text);
        Assert.DoesNotContain(made.Findings, f => f.Rule.Code is "PF403" or "PF408");
    }

    private static (Compilation Plain, EditionCompilation Made) Make(string text, string house, string edition)
    {
        var options = CompileOptions.Default.Under(HouseFile.Read(new SourceText("patternforge.yaml", house)).House);
        var plain = Compiler.Compile(new SourceText("made.pattern.md", text), options);
        return (plain, EditionCompiler.Compile(plain, Edition.Find(edition)!, options));
    }
}
