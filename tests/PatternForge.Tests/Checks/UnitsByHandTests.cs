using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

public class UnitsByHandTests
{
    private static string[] Told(string words, string sizes = "one size") =>
    [
        .. Compiler.Compile(new SourceText("x.pattern.md", $"---\ntitle: X\nsizes: {sizes}\n---\n\n## Notes\n\n{words}\n")).Findings
            .Where(f => f.Rule.Code is "PF440" or "PF441").Select(f => $"{f.Rule.Code} {f.Source.ToString(f.Span)}: {f.Message}"),
    ];

    // Rounding as the trade does it (common practice): whole centimetres beside whole, half and quarter inches, grams beside quarter ounces.
    [Theory]
    [InlineData("It is 10 cm (4 in) wide.")]
    [InlineData("It is 4\" / 10 cm wide.")]
    [InlineData("It is 5 cm [2 in] wide.")]
    [InlineData("It is 2.5 cm (1 in) wide, or 1 cm (½ in).")]
    [InlineData("It is 38 cm (15 in) or 1.5 cm (5/8 in).")]
    [InlineData("It is 20½ in (52 cm) wide.")]
    [InlineData("It takes 50 g (1¾ oz) and 100 g (3.5 oz).")]
    [InlineData("It is 150 cm (60 in) long, and 4 1/2 in (11.5 cm) wide.")]
    [InlineData("It is 20 (22, 24) cm (8 (8¾, 9½) in) long.")]
    [InlineData("Work 20 cm (see Figure 2) and 6 in all.")]
    [InlineData("Ch 3, 2 in next st; 10 cm (12 rows).")]
    [InlineData("It is 10-12 cm (4-5 in) wide.")]
    [InlineData("A 4 mm (US 6) needle and 200 m (219 yd) of yarn.")]
    public void What_agrees_within_rounding_or_is_no_pair_is_left_alone(string words) => Assert.DoesNotContain(Told(words), t => t.StartsWith("PF440", StringComparison.Ordinal));

    [Theory]
    [InlineData("It is 20 cm (6 in) wide.", "20 cm (6 in: 20 cm is 7.9 in, but 6 in stands beside it")]
    [InlineData("It is 10 inches (20 cm) wide.", "10 inches (20 cm: 10 in is 25.4 cm, but 20 cm stands beside it")]
    [InlineData("It is 3\" or 10 cm wide.", "3\" or 10 cm: 3 in is 7.6 cm, but 10 cm stands beside it")]
    [InlineData("It takes 100 g (5 oz).", "100 g (5 oz: 100 g is 3.5 oz, but 5 oz stands beside it")]
    [InlineData("It is 10–12 cm (4–7 in) wide.", "10–12 cm (4–7 in: 12 cm is 4.7 in, but 7 in stands beside it")]
    [InlineData("It takes 1000 yd = 2000 yards, or 180 yd (100 g).", "")]
    public void What_disagrees_is_told_with_the_numbers(string words, string told) =>
        Assert.Equal(told.Length == 0 ? [] : [$"PF440 {told}"], Told(words));

    [Fact]
    public void A_list_names_the_size_that_disagrees()
    {
        var finding = Assert.Single(
            Compiler.Compile(new SourceText("x.pattern.md", "---\ntitle: X\nsizes: S (M, L)\n---\n\n## Notes\n\nIt is 20 (30, 40) cm (8 (16, 16) in) long.\n")).Findings,
            f => f.Rule.Code == "PF440");
        Assert.Equal(1, Assert.Single(finding.Sizes));
    }

    [Fact]
    public void One_unit_throughout_is_nobodys_business()
    {
        Assert.Empty(Told("It is 10 cm wide and 20 cm long."));
        Assert.Equal(["PF441 20 cm: 1 length is given in both units, this one in cm alone"], Told("It is 10 cm (4 in) wide and 20 cm long."));
    }
}
