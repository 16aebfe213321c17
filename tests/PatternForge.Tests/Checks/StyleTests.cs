using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

public class StyleTests
{
    private static Compilation Compile(string body, StyleSheet? style = null) => Compiler.Compile(
        new SourceText("x.pattern.md", "---\ntitle: X\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\n" + body),
        CompileOptions.Default.Under(Core.Model.House.None with { Style = style ?? StyleSheet.Open }));

    private static string[] Told(string body, string code = "PF421") => [.. Compile(body).Findings.Where(f => f.Rule.Code == code).Select(f => f.Message)];

    [Theory]
    [InlineData("Row 1: K2, p2tog, k to end.\n\nRow 2: K3, K2tog, k to end.\n\nRow 3: P2, p2tog, p to end.", "the first letter of knit and purl stitches inside a row: `K2tog` once, `k2tog` 2 times")]
    [InlineData("Row 1: Knit.\n\nRep Row 1 until piece measures 5 cm.\n\nRep Row 1 until piece measures 10cm.\n\nRep Row 1 until piece measures 15 cm.", "the blank between a number and its unit: `10cm` once, `10 cm` 2 times")]
    [InlineData("Row 1: *K1, p1; rep from * to end.\n\nRow 2: *K1, p1; repeat from * to end.\n\nRow 3: *K1, p1; rep from * to end.", "the word that asks for a repeat: `repeat` once, `rep` 2 times")]
    public void The_rarer_form_is_told_beside_the_commoner(string body, string message) => Assert.Equal([message], Told(body));

    // Words that only look alike.
    [Theory]
    [InlineData("Join in the round.\n\nRnd 1: Knit.\n\nRnd 2: Purl.")]
    [InlineData("Row 1: K2, p2, k to last 2 sts, k2.\n\nRow 2: K1, *k2, p2; rep from * to last st, k1.\n\nThe 4-st repeat is worked beside the garter stitch border.")]
    [InlineData("Row 1: Knit.\n\nRow 2: Purl. K2, p2, k to end.")]
    [InlineData("Row 1: K2 in next st, k to end.\n\nWork until piece measures 4 in, then turn.")]
    public void What_means_something_else_is_left_alone(string body) => Assert.Empty(Told(body));

    [Fact]
    public void Of_equals_the_first_is_named_and_nothing_is_repaired()
    {
        var finding = Compile("Row 1: K2tog, k to end, rep from *.\n\nRows 2-3: Knit.\n\nRows 4–5: Knit.\n").Findings.Single(f => f.Message.StartsWith("the dash", StringComparison.Ordinal));
        Assert.Null(finding.Fix);
        Assert.Equal(Severity.Note, finding.Severity);
    }

    // Each form of a matter, brought into each of the others.
    [Theory]
    [InlineData("inches", 0, "Work until piece measures 4 in.", "Work until piece measures 1 in.")]
    [InlineData("inches", 1, "Work until piece measures 4 inches.", "Work until piece measures 1 inch.")]
    [InlineData("inches", 2, "Work until piece measures 4\".", "Work until piece measures 1\".")]
    public void Inches_come_into_the_form_of_the_house(string key, int form, string four, string one)
    {
        var matter = StyleMatter.All.Single(m => m.Key == key);
        foreach (var written in new[] { ("4 in", "1 in"), ("4 inches", "1 inch"), ("4\"", "1\"") })
        {
            var text = $"Work until piece measures {written.Item1}.\n\nWork until piece measures {written.Item2}.\n";
            var compilation = Compile(text, new StyleSheet(StyleSheet.Open.Choices.Add(matter, form)));
            var fixedText = Repairs.With(compilation.Source.Text, compilation.Findings.Where(f => f.Rule.Code == "PF420").SelectMany(f => f.Fix?.Edits ?? []));
            Assert.EndsWith($"{four}\n\n{one}\n", fixedText, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Code_remarks_and_addresses_are_no_words()
    {
        Assert.Empty(Told("Row 1: Knit. <!-- Repeat from here: 10cm -->\n\n## Notes\n\nIt is 10 cm wide; [a film](https://example.com/10cm) and `10cm`.\n"));
    }
}
