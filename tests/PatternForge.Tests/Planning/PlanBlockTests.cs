using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Planning;

public class PlanBlockTests
{
    private static Compilation Compile(string body, string sizes = "S (M, L)", string numbers = "") => Compiler.Compile(new SourceText("x.pattern.md", $"""
        ---
        title: Harbour pullover
        sizes: {sizes}
        gauge: 20 sts and 28 rows = 10 cm in stockinette
        {(numbers.Length > 0 ? "numbers:\n" + string.Join('\n', numbers.Split('\n').Select(l => "  " + l.Trim())) : "")}
        ---

        ## Piece

        {body}
        """));

    private static string Block(params string[] lines) => $"```plan\n{string.Join('\n', lines)}\n```";

    private static string[] Rows(Compilation made) => [.. made.Lines.Select(l => l.Label.Length > 0 ? $"{l.Label}: {l.Text}" : l.Text)];

    private static string Said(Compilation made) => string.Join('\n', made.Findings.Where(f => f.Severity != Severity.Note && (string.CompareOrdinal(f.Rule.Code, "PF400") < 0 || f.Rule.Code == "PF601")).Select(f => $"{f.Rule.Code} {f.Message}"));

    /// <summary>The stitches of each size when all is worked.</summary>
    private static int[] Last(Compilation made) => [.. Enumerable.Range(0, made.Pattern.Facts.Sizes.Count).Select(i => made.Lines.Select(l => l.After[i]).Last(c => c is not null)!.Value)];

    [Fact]
    public void Shaping_is_written_out_in_the_words_of_the_trade_and_worked()
    {
        var made = Compile("CO 80 (90, 100) sts.\n\n" + Block("work: shaping", "from: 80 (90, 100)", "to: 60 (66, 80)", "over: 60 (48, 60) rows"));

        Assert.Equal("", Said(made));
        Assert.Equal(
            [
                "CO 80 (90, 100) sts.", "Work 5 (3, 5) rows even.", "Dec Row (RS): K1, ssk, k to last 3 sts, k2tog, k1. (2 sts dec'd)",
                "Rep Dec Row every 6th (4th, 6th) row 9 (11, 9) times. (60 (66, 80) sts)",
            ],
            Rows(made));
        Assert.Equal([60, 66, 80], Last(made));
        Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
    }

    [Fact]
    public void Formulas_names_and_lengths_stand_for_numbers()
    {
        var made = Compile("CO {cuff} sts.\n\n" + Block("work: shaping", "from: cuff", "to: = top - 2", "over: 20 cm"), numbers: "cuff: 40 (44, 48)\ntop: = cuff + 22");

        Assert.Equal("", Said(made));
        Assert.Equal([60, 64, 68], Last(made));
    }

    [Fact]
    public void A_line_that_a_size_does_not_have_is_told_for_the_others()
    {
        var made = Compile("CO 88 (96, 104) sts. Join in the round.\n\n" + Block("work: crown", "from: 88 (96, 104)", "wedges: 8"));

        Assert.Equal("", Said(made));
        Assert.Equal([8, 8, 8], Last(made));
        Assert.Contains(Rows(made), r => r.StartsWith("Size L only: ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_size_without_a_number_is_not_planned_for()
    {
        var made = Compile("CO 80 (90, 100) sts.\n\n" + Block("work: spread", "from: 80 (–, 100)", "to: 90 (–, 110)"));

        Assert.Equal("", Said(made));
        Assert.Equal([90, 90, 110], Last(made));
    }

    [Theory]
    [InlineData("work: shapping", "PF228")]
    [InlineData("from: 80", "PF228")]
    [InlineData("work: shaping\nfrom: 80\nto: 60", "PF228")]
    [InlineData("work: shaping\nfrom: 80\nto: 60\nover: 60 rows\neach: pair", "PF181")]
    [InlineData("work: shaping\nfrom: 80\nto: 60\nover: 60 rows\non: RS row", "PF228")]
    [InlineData("work: shaping\nfrom: 80\nto: 60\noven: 60 rows", "PF228")]
    [InlineData("work: shaping\nfrom: 80.5\nto: 60\nover: 60 rows", "PF228")]
    [InlineData("work: shaping\nfrom: 80 (90)\nto: 60\nover: 60 rows", "PF601")]
    [InlineData("work: shaping\nfrom: 80\nto: 61\nover: 60 rows", "PF229")]
    [InlineData("work: shaping\nfrom: 80\nto: 20\nover: 10 rows", "PF229")]
    [InlineData("", "PF228")]
    public void What_cannot_be_planned_is_told_once_at_the_block(string block, string code)
    {
        var made = Compile("CO 80 sts.\n\n" + Block(block.Split('\n')) + "\n\nNext row: Knit. (60 sts)", "S (M, L)");

        var said = Said(made);
        Assert.StartsWith(code, said, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', said);
    }

    [Fact]
    public void A_wrong_count_before_a_plan_is_found_at_the_plan()
    {
        var made = Compile("CO 84 sts.\n\n" + Block("work: shaping", "from: 80", "to: 60", "over: 60 rows"), "S");

        Assert.Contains(made.Findings, f => f.Severity == Severity.Error && made.Source.ToString(f.Span).StartsWith("```plan", StringComparison.Ordinal));
    }

    [Fact]
    public void A_block_that_is_not_closed_or_lies_in_another_is_left_alone()
    {
        Assert.NotNull(Compile("CO 80 sts.\n\n```plan\nwork: shaping"));
        Assert.NotNull(Compile("CO 80 sts.\n\n````text\n```plan\nwork: nothing\n```\n````"));
        Assert.DoesNotContain("PF228", Said(Compile("CO 80 sts.\n\n````text\n```plan\nwork: nothing\n```\n````")), StringComparison.Ordinal);
    }

    [Fact]
    public void Any_plan_comes_out_as_rows_that_are_checked_in_every_size() =>
        Gen.Select(Gen.Int[20, 120].Array[4], Gen.Int[1, 20].Array[4], Gen.Int[1, 6].Array[4], Gen.Bool).Sample((from, times, extra, now) =>
        {
            var starts = from.Select(f => 2 * f).Order().ToArray();
            var ends = starts.Select((s, i) => Math.Max(4, s - (2 * times[i]))).ToArray();
            var rows = starts.Select((s, i) => (s - ends[i]) * (extra[i] + 1)).ToArray();
            string List(int[] values) => $"{values[0]} ({string.Join(", ", values[1..])})";
            var made = Compile($"CO {List(starts)} sts.\n\n{(now ? "" : "Row 1 (RS): Knit.\n\n")}" + Block("work: shaping", $"from: {List(starts)}", $"to: {List(ends)}", $"over: {List(rows)}", now ? "begin: now" : "begin: later"), "S (M, L, XL)");

            Assert.Equal("", string.Join('\n', made.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message)));
            Assert.Equal(ends, Last(made));
            Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
        }, iter: 150);
}
