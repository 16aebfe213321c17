using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Trials;

namespace PatternForge.Tests.Trials;

public class TestResultsTests
{
    /// <summary>The pattern that the answers of the rules' examples are about.</summary>
    internal const string Hat = """
        ---
        title: Harbour hat
        version: 1.1
        sizes:
          names: S (M, L)
          finished: {circumference: 45 (50, 55) cm}
        gauge: 22 sts and 30 rounds = 10 cm in stockinette on 4 mm, blocked
        yarn: {label: MC, name: Quayside Wool, put-up: 100 g = 200 m, needs: 120 (140, 160) m}
        ---

        ## Brim

        Cast on 90 (100, 110) sts. Join in the round.

        ## Crown

        Rnd 1: Knit.
        """;

    [Fact]
    public void Yarn_is_held_against_the_amount_told_in_grams_by_the_put_up()
    {
        var results = Results("pattern: Harbour hat\nsize: M\nyarn: {MC: 80}\n");
        var yarn = Assert.Single(results.Numbers);
        Assert.Equal((70m, 80m, "takes more than is told"), (yarn.Told, yarn.Got, yarn.Flag));
        Assert.Equal(0.143m, decimal.Round(yarn.Off!.Value, 3));
    }

    // The usual tolerances: a tenth for yarn that falls short, five in a hundred for measurements, three fifths for yarn that is left over.
    [Theory]
    [InlineData("yarn: {MC: 77}", null)]
    [InlineData("yarn: {MC: 78}", "takes more than is told")]
    [InlineData("yarn: {MC: 44}", null)]
    [InlineData("yarn: {MC: 43}", "takes far less than is told")]
    [InlineData("yarn: 80", "takes more than is told")]
    [InlineData("yarn: {MC: 3 oz}", "takes more than is told")]
    [InlineData("measurements: {circumference: 52.5}", null)]
    [InlineData("measurements: {circumference: 53 cm}", "larger")]
    [InlineData("measurements: {circumference: 18.5 in}", "smaller")]
    [InlineData("gauge: {stitches: 24}", "tighter")]
    [InlineData("gauge: {gauge: {rounds: 28}}", "looser")]
    [InlineData("gauge: {stitches: 22,5}", null)]
    public void What_is_outside_the_tolerances_is_flagged(string answer, string? flag)
    {
        var results = Results($"pattern: Harbour hat\nversion: 1.1\nsize: M\n{answer.Replace("22,5", "\"22,5\"", StringComparison.Ordinal)}\n");
        Assert.Equal(flag, Assert.Single(results.Numbers).Flag);
    }

    [Fact]
    public void Mistakes_stand_in_the_order_of_the_pattern_and_hours_from_the_fewest_to_the_most()
    {
        var results = Results(
            "pattern: Harbour hat\nsize: S\nname: Otter\ntime: 9 h\nerrors:\n  - \"Crown, Rnd 1: purl?\"\n",
            "{\"pattern\": \"Harbour hat\", \"size\": \"S\", \"time\": \"12.5\", \"errors\": \"Brim: how many?\\nsomething else\"}");
        Assert.Equal(["Brim", "Crown, Rnd 1", ""], results.Errors.Select(e => e.About));
        Assert.Equal(("S", 9m, 12.5m), Assert.Single(results.Hours));
        Assert.Equal(["maker 2", "Otter", "maker 2"], results.Errors.Select(e => e.Maker));
        Assert.Equal(["S 2", "M 0", "L 0"], results.Sizes.Select(s => $"{s.Size} {s.Answers}"));
    }

    [Fact]
    public void Answers_of_another_pattern_or_size_are_left_out_and_those_of_another_version_are_told()
    {
        Assert.Equal(0, Results("pattern: Harbour cowl\nsize: S\nyarn: {MC: 1}\n").Sizes.Sum(s => s.Answers));
        Assert.Equal(0, Results("pattern: Harbour hat\nsize: XL\nyarn: {MC: 1}\n").Sizes.Sum(s => s.Answers));
        Assert.Equal(1, Results("pattern: harbour  hat\nversion: 1.0\nsize: l\nyarn: {MC: 1}\n").Sizes.Sum(s => s.Answers));
        Assert.Equal("PF923", Assert.Single(Read("pattern: Harbour hat\nversion: 1.0\nsize: L\n").Findings).Rule.Code);
    }

    [Fact]
    public void Any_text_is_read_without_a_fault() =>
        Gen.Select(Gen.String, Gen.Int[0, 200], Gen.Int[0, 200]).Sample(
            (junk, from, length) =>
            {
                const string whole = "{\"pattern\": \"Harbour hat\", \"size\": \"M\", \"gauge\": {\"gauge\": {\"stitches\": \"22\"}}, \"yarn\": {\"MC\": \"80\"}, \"errors\": \"Crown: x\", \"comments\": {\"Brim\": \"ok\"}}";
                var (a, b) = (Math.Min(from, whole.Length), Math.Min(from + length, whole.Length));
                Assert.NotNull(TestResults.Of(Pattern, [Read(whole[..a] + junk + whole[b..]), Read(junk)]));
            },
            iter: 1_000);

    [Theory]
    [InlineData("[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[")]
    [InlineData("a: &a [*a, *a]\npattern: *a\n")]
    [InlineData("size: {M: 1}\npattern: [x]\nyarn: [1]\ngauge: 3\nmeasurements: x\ncomments: [a]\ntime: {a: b}\n")]
    [InlineData("size: M\nyarn: {MC: 99999999999999999999999999999999}\ntime: 1e999\n")]
    [InlineData("")]
    public void Hostile_answers_are_findings_and_no_fault(string text) => Assert.NotNull(TestResults.Of(Pattern, [Read(text)]));

    [Fact]
    public void Answers_that_are_too_long_are_refused() => Assert.True(Read(new string('x', AnswersReader.MaxLength + 1)).HasErrors);

    private static Compilation Pattern { get; } = Compiler.Compile(new SourceText("hat.pattern.md", Hat));

    private static TestAnswers Read(string text) => AnswersReader.Read(new SourceText("answers.yaml", text), Pattern);

    private static TestResults Results(params string[] answers) => TestResults.Of(Pattern, [.. answers.Select(Read)], Tolerances.Default);
}
