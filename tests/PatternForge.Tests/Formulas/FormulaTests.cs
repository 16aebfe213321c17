using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Formulas;

public class FormulaTests
{
    private static Compilation Compile(string numbers, string sizes = "S (M, L)", string finished = "bust: 91 (101, 111) cm", string gauge = "20 sts and 28 rows = 10 cm in stockinette") => Compiler.Compile(new SourceText("x.pattern.md", $$"""
        ---
        title: Harbour pullover
        sizes:
          names: {{sizes}}
          finished: { {{finished}} }
        gauge: {{gauge}}
        numbers:
        {{string.Join('\n', numbers.Split('\n').Select(l => "  " + l.Trim()))}}
        ---
        """));

    private static string Of(string formula) => Values(Compile($"x: = {formula}"), "x");

    private static string Values(Compilation made, string name) =>
        made.Pattern.Facts.Numbers.FirstOrDefault(n => n.Name == name) is { } number ? string.Join(" | ", number.Values.Values.Select(v => v?.ToString() ?? "–")) : "none";

    private static string Said(Compilation made) => string.Join('\n', made.Findings.Where(f => string.CompareOrdinal(f.Rule.Code, "PF180") >= 0 && string.CompareOrdinal(f.Rule.Code, "PF188") <= 0).Select(f => $"{f.Rule.Code} «{f.Source.ToString(f.Span)}» {f.Message}"));

    [Theory]
    [InlineData("2 + 3 * 4", "14")]
    [InlineData("(2 + 3) * 4", "20")]
    [InlineData("-3 + 5", "2")]
    [InlineData("7 - 2 - 1", "4")]
    [InlineData("90%", "0.9")]
    [InlineData("10 cm + 1 in", "12.54 cm")]
    [InlineData("1 in + 10 cm", "4.937 in")]
    [InlineData("50 mm * 2", "100 mm")]
    [InlineData("bust / 2", "45.5 cm | 50.5 cm | 55.5 cm")]
    [InlineData("finished.bust - 1 cm", "90 cm | 100 cm | 110 cm")]
    [InlineData("sts(bust)", "182 | 202 | 222")]
    [InlineData("bust * gauge.stitches", "182 | 202 | 222")]
    [InlineData("rows(10 cm)", "28")]
    [InlineData("width(44 sts)", "22 cm")]
    [InlineData("length(56 rows)", "20 cm")]
    [InlineData("width(44)", "22 cm")]
    [InlineData("sts(bust) + 2", "184 | 204 | 224")]
    [InlineData("min(3, 8, 2)", "2")]
    [InlineData("max(sts(bust), 200)", "200 | 202 | 222")]
    [InlineData("if(bust > 100 cm, 1, 0)", "0 | 1 | 1")]
    [InlineData("if(size >= 'L', 8, 6)", "6 | 6 | 8")]
    [InlineData("if(size = 2 or not (bust < 105 cm), 1, 0)", "0 | 1 | 1")]
    [InlineData("table(bust, 4, from 100 cm use 5, from 110 cm use 6)", "4 | 5 | 6")]
    [InlineData("root(9 cm * 16 cm)", "12 cm")]
    [InlineData("round(2 * pi * 10 cm, 0.5 cm)", "63 cm")]
    [InlineData("size", "1 | 2 | 3")]
    public void Formulas_are_worked_in_every_size(string formula, string expected) => Assert.Equal(expected, Of(formula));

    // Worked examples of handbooks: a count rounded down to a multiple plus an edge (120 sts to 4n+2), the multiple nearest to a count (6n+1 near 45),
    // the stitches of a width (50 in at 5 to the inch; 40 cm at 26 to 10 cm), shaping rows of a sleeve (17.5 in less 2 in at 7 rows to the inch), one fifth of a key number.
    [Theory]
    [InlineData("round-down(120, multiple 4 plus 2)", "118")]
    [InlineData("round(45, multiple 6 plus 1)", "43")]
    [InlineData("round-up(45, multiple 6 plus 1)", "49")]
    [InlineData("50 in * 5 sts / 1 in", "250")]
    [InlineData("40 cm * 26 sts / 10 cm", "104")]
    [InlineData("(17.5 in - 2 in) * 7 rows / 1 in", "108.5")]
    [InlineData("round(210 * 20%)", "42")]
    [InlineData("round-down(189, multiple 4)", "188")]
    [InlineData("round-up(1150 m / 200 m)", "6")]
    public void Handbook_figures_come_out(string formula, string expected) => Assert.Equal(expected, Of(formula));

    [Theory]
    [InlineData("round(97.5)", "98")]
    [InlineData("round(97.4, even)", "98")]
    [InlineData("round(97.4, odd)", "97")]
    [InlineData("round-up(98, odd)", "99")]
    [InlineData("round-down(98, odd)", "97")]
    [InlineData("round(53.3 cm, 0.5 cm)", "53.5 cm")]
    [InlineData("round-up(3 * (40 / 3))", "40")]
    [InlineData("round(100, multiple of 8 plus 1)", "97")]
    public void Rounding_goes_where_it_is_told(string formula, string expected) => Assert.Equal(expected, Of(formula));

    [Theory]
    [InlineData("2 +", "PF180")]
    [InlineData("", "PF180")]
    [InlineData("(2 + 3", "PF180")]
    [InlineData("2 & 3", "PF180")]
    [InlineData("rnd-up(3)", "PF180")]
    [InlineData("round()", "PF180")]
    [InlineData("if(1 < 2, 3)", "PF180")]
    [InlineData("upper arm + 2", "PF180")]
    [InlineData("'L", "PF180")]
    [InlineData("bst + 2 cm", "PF181")]
    [InlineData("if(size = 'XXS', 1, 2)", "PF181")]
    [InlineData("sts(bust, rib)", "PF181")]
    [InlineData("body.bust", "PF181")]
    [InlineData("x + 1", "PF182")]
    [InlineData("bust + 2", "PF183")]
    [InlineData("bust + sts(bust)", "PF183")]
    [InlineData("bust + 2 m", "PF183")]
    [InlineData("round(bust)", "PF183")]
    [InlineData("if(bust, 1, 2)", "PF183")]
    [InlineData("1 + (2 < 3)", "PF183")]
    [InlineData("2 / 0", "PF184")]
    [InlineData("root(-1)", "PF184")]
    [InlineData("1000000 * 1000000", "PF184")]
    [InlineData("99999999999999999999999 * 99999999999999999999999", "PF184")]
    [InlineData("round(5, multiple 0)", "PF184")]
    [InlineData("sts(51.3 cm)", "PF185")]
    [InlineData("gauge.stitches", "PF186")]
    [InlineData("2 < 3", "PF186")]
    public void Each_mistake_has_one_finding(string formula, string code)
    {
        var said = Said(Compile($"x: = {formula}"));

        Assert.StartsWith(code, said, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', said);
    }

    [Fact]
    public void A_circle_is_told_once_and_what_follows_from_a_mistake_not_at_all()
    {
        var made = Compile("a: = b + 1\nb: = c * 2\nc: = a / 2\nd: = a + 3\ne: = d * 2\nf: = pools + 1\ng: = f + 1");

        Assert.Equal(["PF182", "PF181"], Said(made).Split('\n').Select(l => l[..5]));
    }

    [Fact]
    public void A_number_that_could_not_be_worked_out_is_not_missed_in_the_rows()
    {
        var made = Compiler.Compile(new SourceText("x.pattern.md", "---\ntitle: Harbour hat\nnumbers: {brim: = brims * 2}\n---\n\n## Hat\n\nCO {brim} sts.\n\nRow 1: Knit.\n"));

        Assert.Equal(["PF181"], made.Findings.Where(f => string.CompareOrdinal(f.Rule.Code, "PF400") < 0 && f.Rule.Code != "PF208").Select(f => f.Rule.Code));
    }

    [Fact]
    public void A_hyphen_that_should_be_a_minus_is_recognised()
    {
        var made = Compile("hem: 20\nbody: = hem-bust");

        Assert.Contains("is the hyphen a minus", made.Findings.First(f => f.Rule.Code == "PF181").Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Deep_and_long_formulas_are_refused_calmly()
    {
        Assert.StartsWith("PF180", Said(Compile($"x: = {new string('(', 4000)}1{new string(')', 4000)}")), StringComparison.Ordinal);
        Assert.StartsWith("PF180", Said(Compile($"x: = {string.Join(" + ", Enumerable.Repeat("1", 4000))}")), StringComparison.Ordinal);
        Assert.StartsWith("PF180", Said(Compile($"x: = {string.Concat(Enumerable.Repeat("-", 4000))}1")), StringComparison.Ordinal);
    }

    [Fact]
    public void Many_numbers_that_lean_on_each_other_are_worked_once_each()
    {
        var numbers = string.Join('\n', Enumerable.Range(1, 200).Select(i => $"n{i}: = n{i + 1} + n{i + 1}").Append("n201: 0"));

        // Deeper than anybody writes: told or worked, never a fault, never for ever.
        Assert.NotNull(Compile(numbers));
    }

    [Fact]
    public void Rows_and_prose_take_the_values_of_formulas()
    {
        var made = Compiler.Compile(new SourceText("x.pattern.md", """
            ---
            title: Harbour pullover
            sizes: {names: "S (M, L)", finished: {bust: 91 (101, 111) cm}}
            gauge: 20 sts and 28 rows = 10 cm in stockinette
            numbers:
              front: = round(sts(bust / 2), even)
            ---

            ## Front

            CO {front} sts.

            Row 1: Knit. {count}
            """));

        Assert.Equal([92, 102, 112], made.Lines[^1].After.Select(c => c!.Value));
    }

    [Fact]
    public void Measurements_told_in_one_text_have_their_names_and_sizes()
    {
        var facts = Compiler.Compile(new SourceText("x.pattern.md", "---\ntitle: Harbour scarf\nsizes: S (M, L)\nfinished: 20 (22, 24) cm wide, 160 cm long\nnumbers: {half: = wide / 2}\n---\n")).Pattern.Facts;

        Assert.Equal("10 cm | 11 cm | 12 cm", string.Join(" | ", facts.Numbers.Single().Values.Values));
    }

    [Fact]
    public void What_rounding_moved_is_told_in_centimetres()
    {
        var number = Compile("front: = round(sts(bust / 2), multiple 4 plus 2)").Pattern.Facts.Numbers.Single();

        Assert.Equal([90m, 102m, 110m], number.Values.Values.Select(v => v!.Value));
        Assert.Equal([91m, 101m, 111m], number.WorkedFrom!.Exact.Select(v => v!.Value));
        Assert.Equal([-0.5m, 0.5m, -0.5m], number.WorkedFrom.MovedCm.Select(v => v!.Value));
    }

    [Fact]
    public void A_measurement_can_be_a_formula_and_a_size_without_a_value_has_none()
    {
        var facts = Compile("hem: 4 (–, 6)\nband: = hem + 2", finished: "bust: 91 (101, 111) cm, hip: = bust + 4 cm").Pattern.Facts;

        Assert.Equal("95 cm | 105 cm | 115 cm", string.Join(" | ", facts.Finished[1].Values.Values));
        Assert.Equal("6 | – | 8", string.Join(" | ", facts.Numbers[1].Values.Values.Select(v => v?.ToString() ?? "–")));
    }

    [Fact]
    public void Rounding_to_a_multiple_is_the_nearest_there_is() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, 12], Gen.Decimal[1m, 900m]).Sample((multiple, plus, raw) =>
        {
            var value = decimal.Round(raw, 3);
            var number = Compile(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"x: = round({value}, multiple {multiple} plus {plus})")).Pattern.Facts.Numbers.Single();
            var got = number.Values.Values[0]!.Value;

            Assert.Equal(0, (got - plus) % multiple);
            Assert.True(Math.Abs(got - value) * 2 <= multiple, $"{value} to {multiple}n+{plus} gave {got}");
        }, iter: 300);

    [Fact]
    public void Counts_by_formula_grow_with_the_measurement() =>
        Gen.Select(Gen.Int[600, 1500], Gen.Int[0, 300], Gen.Int[2, 12], Gen.Int[0, 4]).Sample((from, more, multiple, plus) =>
        {
            var facts = Compile($"x: = round(sts(bust), multiple {multiple} plus {plus})", "S (M)", $"bust: {from / 10.0m:0.0} ({(from + more) / 10.0m:0.0}) cm".Replace(',', '.')).Pattern.Facts;

            Assert.True(facts.Numbers.Single().Values[0]!.Value <= facts.Numbers.Single().Values[1]!.Value);
        }, iter: 200);
}
