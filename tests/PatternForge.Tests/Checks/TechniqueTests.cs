using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>What the rows show beside the declared level (Craft Yarn Council, project levels) and the list of techniques.</summary>
public class TechniqueTests
{
    private const string Cable = "Row 1: *C6B, k6; rep from * to end.\n\nRow 2: Purl.\n\n";
    private const string ShortRow = "Row 3: K12, w&t.\n\nRow 4: P12.\n\n";
    private const string Lace = "Row 5: *Yo, k2tog; rep from * to end.\n\nRow 6: Purl.\n\nRow 7: *Ssk, yo; rep from * to end.\n\nRow 8: Purl.\n\nRow 9: *Yo, k2tog; rep from * to end.\n\n";
    private const string Hole = "Row 5: *Yo, k2tog; rep from * to end.\n\n";
    private const string Stranded = "Row 1: *K2 A, k2 B; rep from * to end.\n\nRow 2: *P1 A, p1 B, p1 A, p1 B; rep from * to end.\n\nRow 3: K1 A, k1 B, k1 A, k to end in B.\n\n";

    private static string Found(string header, string rows, params string[] of)
    {
        var text = $"---\ntitle: x\ncraft: knitting\n{header}\n---\n## Piece\n\nCO 24 sts.\n\n{rows}";
        return string.Join(' ', Compiler.Compile(new SourceText("x", text)).Findings.Where(f => of.Contains(f.Rule.Code, StringComparer.Ordinal)).Select(f => $"{f.Rule.Code} {f.Message}"));
    }

    private static string Level(string level, string rows) => Found($"level: {level}\nlevel-reason: y", rows, "PF806", "PF807");

    [Fact]
    public void A_level_two_steps_below_the_rows_is_told_with_the_rows_that_show_it() =>
        Assert.Equal("PF806 the level is basic, but the rows use cables (Row 1), short rows (Row 3) and lace (Row 5)", Level("basic", Cable + ShortRow + Lace));

    [Theory]
    [InlineData("basic", Hole, "")]
    [InlineData("basic", "Row 1: K2tog, k to end.\n\nRow 2: Kfb, k to end.\n\n", "")]
    [InlineData("easy", Cable, "")]
    [InlineData("easy", Cable + ShortRow, "PF807")]
    [InlineData("easy", Cable + ShortRow + Lace, "PF806")]
    [InlineData("intermediate", Cable + ShortRow + Lace, "PF807")]
    [InlineData("intermediate", Cable + Lace, "")]
    [InlineData("complex", Cable, "")]
    [InlineData("basic", Lace, "PF806")]
    public void The_wide_words_of_the_scale_leave_one_step_open(string level, string rows, string code) =>
        Assert.StartsWith(code, Level(level, rows) is { Length: > 0 } found ? found : code.Length == 0 ? "" : "nothing", StringComparison.Ordinal);

    [Theory]
    [InlineData("easy", Cable)]
    [InlineData("basic", Hole)]
    public void Nothing_is_said_of_a_level_that_may_be_right(string level, string rows) => Assert.Equal("", Level(level, rows));

    [Theory]
    [InlineData("techniques: [ribbing]", Cable, "PF808 the rows use cables (Row 1), which the techniques do not name")]
    [InlineData("techniques: [cabling]", Cable + ShortRow, "PF808 the rows use short rows (Row 3), which the techniques do not name")]
    [InlineData("techniques: [ribbing]\nlevel: easy\nlevel-reason: one simple cable", Cable, "")]
    [InlineData("summary: x", Cable, "")]
    [InlineData("techniques: [yarn overs]", Lace, "")]
    [InlineData("techniques: [ribbing]\nomit: [techniques]", Cable, "")]
    [InlineData("techniques: [ribbing]", Hole, "")]
    public void A_list_of_techniques_names_those_of_the_rows(string header, string rows, string found) => Assert.Equal(found, Found(header, rows, "PF808"));

    [Fact]
    public void Several_colours_in_a_row_are_colour_work_and_stripes_are_not()
    {
        const string Yarns = "techniques: [ribbing]\nyarn:\n  - {label: A, name: Quayside Wool}\n  - {label: B, name: Quayside Wool}";
        Assert.Equal("PF808 the rows use colour work within a row (Row 2), which the techniques do not name", Found(Yarns, Stranded, "PF808"));
        Assert.Equal("", Found(Yarns, "Row 1: With A, knit.\n\nRow 2: With B, knit.\n\nRow 3: With A, knit.\n\n", "PF808"));
    }
}
