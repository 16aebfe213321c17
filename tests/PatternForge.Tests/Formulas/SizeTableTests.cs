using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Formulas;

public class SizeTableTests
{
    private const string Own = """
        # our own sizes
        sizes: 1 (2, 3)
        bust: 80 (90, 100) cm
        upper-arm: 28 (30, 32) cm
        """;

    private static Compilation Compile(string sizes, string numbers = "", string? own = null) => Compiler.Compile(
        new SourceText("x.pattern.md", $"---\ntitle: Harbour pullover\nsizes:\n{string.Join('\n', sizes.Split('\n').Select(l => "  " + l.Trim()))}\nnumbers:\n{string.Join('\n', numbers.Split('\n').Select(l => "  " + l.Trim()))}\n---\n"),
        CompileOptions.Default with { ReadFile = name => name == "our-sizes.yaml" ? own ?? Own : null });

    private static string Number(Compilation made) => string.Join(" | ", made.Pattern.Facts.Numbers.Single().Values.Values.Select(v => v?.ToString() ?? "–"));

    private static string Said(Compilation made) => string.Join('\n', made.Findings.Where(f => f.Rule.Code is "PF181" or "PF187" or "PF188").Select(f => $"{f.Rule.Code} {f.Message}"));

    // Heads: a baby 14, a child 18, a woman 20 in (Craft Yarn Council as quoted and from memory), a child 20.5 and a woman 21 (common practice). Hands of women 6 to 7.5, men 7.5 to 9 in (common practice).
    // Craft Yarn Council, size tables: women's upper arm 11 in (28 cm) in M, 19.5 in (49.5 cm) in 5X; chest of a man's L 42 to 44 in (106.5 to 111.5 cm); child 8 upper arm 8.5 in (21.5 cm); baby 12 months chest 18 in (45.5 cm).
    [Theory]
    [InlineData("names: M (5X)\nfrom: women", "= body.upper-arm", "28 cm | 49.5 cm")]
    [InlineData("names: L\nfrom: men", "= body.chest", "109 cm")]
    [InlineData("names: 8\nfrom: children", "= body.upper-arm", "21.5 cm")]
    [InlineData("names: 12 (24) months\nfrom: babies", "= body.chest", "45.5 cm | 50.5 cm")]
    [InlineData("names: XL (XXL)\nfrom: women", "= body.upper-arm", "34.5 cm | 39.5 cm")]
    [InlineData("names: 1 (2, 3)\nfrom: women S (M, L)", "= body.upper-arm", "26 cm | 28 cm | 30.5 cm")]
    [InlineData("names: baby (child, woman)\nfrom: heads", "= body.head", "14 in | 18 in | 20 in")]
    [InlineData("names: S (M)\nfrom: heads-by-age child (woman)", "= body.head", "20.5 in | 21 in")]
    [InlineData("names: woman (man)\nfrom: hands", "= body.hand", "6.75 in | 8.25 in")]
    [InlineData("names: 35-38 (39-42, 43-46)\nfrom: feet-by-shoe", "= body.foot-length", "23 cm | 25.5 cm | 28 cm")]
    [InlineData("names: child (woman)\nfrom: feet-by-shoe 27-30 (35-38)", "= body.foot", "16.5 cm | 21.5 cm")]
    [InlineData("names: 1 (3)\nfrom: our-sizes.yaml", "= body.bust", "80 cm | 100 cm")]
    [InlineData("names: 1 (2)\nfrom: [our-sizes.yaml, women S (M)]", "= body.upper-arm + body.back-waist-length", "71 cm | 73.5 cm")]
    public void A_body_is_taken_from_the_table(string sizes, string formula, string expected)
    {
        var made = Compile(sizes, $"x: {formula}");

        Assert.Equal("", Said(made));
        Assert.Equal(expected, Number(made));
    }

    [Fact]
    public void Without_body_measurements_of_its_own_the_pattern_has_those_round_the_chest()
    {
        var fits = Compile("names: S (M)\nfrom: women").Pattern.Facts.Fits.Single();

        Assert.Equal("bust 81–86 cm 91.5–96.5 cm", $"{fits.Name} {string.Join(' ', fits.Values.Values)}");
    }

    [Fact]
    public void Ease_may_differ_by_area()
    {
        var made = Compile("names: S (M)\nfrom: women\nease: {bust: 8 cm, upper-arm: 5 (6) cm}\nfinished: {upper-arm: = body.upper-arm + ease.upper-arm}");

        Assert.Equal("", Said(made));
        Assert.Equal("8 cm at the bust, 5 (6) cm at the upper arm", made.Pattern.Facts.Ease);
        Assert.Equal("31 cm | 34 cm", string.Join(" | ", made.Pattern.Facts.Finished.Single().Values.Values));
    }

    [Theory]
    [InlineData("names: S\nfrom: womens", "PF187 there is no size table `womens`")]
    [InlineData("names: S\nfrom: theirs.yaml", "PF187 the size table `theirs.yaml` cannot be read")]
    [InlineData("names: 7\nfrom: our-sizes.yaml", "PF188 the size table `our-sizes.yaml` has no size `7`")]
    [InlineData("names: 1 (2)\nfrom: women S", "PF188 `from` names 1 sizes, but the pattern has 2")]
    public void What_the_table_does_not_have_is_told_once(string sizes, string expected) => Assert.Equal(expected, Said(Compile(sizes, "x: = body.bust")));

    [Fact]
    public void A_measurement_that_no_table_has_is_named_with_those_it_has() =>
        Assert.Contains("the size table has no measurement `bst`", Said(Compile("names: S\nfrom: women", "x: = body.bst")), StringComparison.Ordinal);

    [Theory]
    [InlineData("bust: 80 cm")]
    [InlineData("sizes: 1 (2, 3)\nbust: 80 (90) cm")]
    [InlineData("sizes: 1\nbust: tall")]
    [InlineData("[")]
    [InlineData("")]
    public void A_broken_table_of_ones_own_is_told_where_it_is_named(string own) => Assert.StartsWith("PF187", Said(Compile("names: 1\nfrom: our-sizes.yaml", "x: = body.bust", own)), StringComparison.Ordinal);
}
