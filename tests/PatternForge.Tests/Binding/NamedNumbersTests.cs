using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Binding;

/// <summary>Numbers of the header in labels and prose, and lengths below zero.</summary>
public class NamedNumbersTests
{
    private static Compilation Compile(string body, string head = "") => Compiler.Compile(new SourceText("x.pattern.md", $"""
        ---
        title: Harbour socks
        sizes: S (M, L)
        {head}
        numbers:
          rounds: 4 (5, 6)
        ---

        ## Leg

        {body}
        """));

    private static string[] Problems(Compilation made) => [.. made.Findings.Where(f => f.Severity != Severity.Note && string.CompareOrdinal(f.Rule.Code, "PF300") < 0).Select(f => $"{f.Rule.Code} {f.Message}")];

    [Fact]
    public void A_label_may_call_the_number_of_its_rounds_by_name()
    {
        var made = Compile("CO 40 (44, 48) sts. Join in the round.\n\nNext {rounds} rnds: Knit.\n\nInc Rnd: (K10 (11, 12), M1L) 4 times. (44 (48, 52) sts)");

        Assert.Empty(Problems(made));
        Assert.Equal("Next 4 (5, 6) rnds", made.Lines[1].Label);
        Assert.Equal(LineStatus.Checked, made.Lines[1].Status);
        Assert.Equal([44, 48, 52], made.Lines[2].After.Select(c => c!.Value));
    }

    [Theory]
    [InlineData("Rnds 1-{rounds}: Knit.", "Rnds 1-4 (5, 6)")]
    [InlineData("Rnds 1 to {rounds}: Knit.", "Rnds 1 to 4 (5, 6)")]
    [InlineData("Rounds 1–{ROUNDS}: Knit.", "Rounds 1–4 (5, 6)")]
    public void A_label_may_call_the_number_of_its_last_round_by_name(string row, string label)
    {
        var made = Compile("CO 40 (44, 48) sts. Join to work in the round.\n\n" + row);

        Assert.Empty(Problems(made));
        Assert.Equal((label, LineStatus.Checked), (made.Lines[^1].Label, made.Lines[^1].Status));
        Assert.Equal([1, 2, 3, 4], made.Lines[^1].Numbers.ToArray());
    }

    [Fact]
    public void The_number_of_the_last_round_must_be_in_the_header() =>
        Assert.Equal(["PF216 there is no number called `turns` in the header"], Problems(Compile("CO 40 sts. Join in the round.\n\nRnds 1-{turns}: Knit.")));

    [Fact]
    public void A_label_with_an_unknown_name_says_so() =>
        Assert.Equal(["PF216 there is no number called `turns` in the header"], Problems(Compile("CO 40 sts. Join in the round.\n\nNext {turns} rnds: Knit.")));

    [Theory]
    [InlineData("The leg has {count} all around.", "The leg has 40 (44, 48) sts all around.")]
    [InlineData("The leg has {count} sts all around, as has its cuff.", "The leg has 40 (44, 48) sts all around, as has its cuff.")]
    public void A_count_in_prose_is_that_of_the_row_before_it(string prose, string printed)
    {
        var made = Compile($"CO 40 (44, 48) sts.\n\n{prose}");

        Assert.Empty(Problems(made));
        Assert.Contains(made.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>(), p => p.Markdown == printed);
    }

    [Fact]
    public void A_count_in_prose_with_no_row_before_it_is_found()
    {
        var made = Compile("The leg has {count} all around.\n\nCO 40 (44, 48) sts.");

        var finding = Assert.Single(made.Findings, f => f.Rule.Code == "PF230");
        Assert.Equal("{count}", made.Source.ToString(finding.Span));
    }

    [Theory]
    [InlineData("-2 cm", new[] { -2.0, -2.0, -2.0 })]
    [InlineData("−2 cm", new[] { -2.0, -2.0, -2.0 })]
    [InlineData("-2 (-2.5, -3) cm", new[] { -2.0, -2.5, -3.0 })]
    [InlineData("-1 (0, 2) cm", new[] { -1.0, 0.0, 2.0 })]
    [InlineData("+2 cm", new[] { 2.0, 2.0, 2.0 })]
    [InlineData("2 (3, 4) cm", new[] { 2.0, 3.0, 4.0 })]
    public void Ease_below_zero_is_one_length_and_not_two(string said, double[] lengths)
    {
        var made = Compile("CO 40 sts.", $"ease: {{foot: {said}}}");

        Assert.Empty(Problems(made));
        Assert.DoesNotContain(made.Findings, f => f.Rule.Code == "PF601");
        Assert.Equal(lengths, Enumerable.Range(0, 3).Select(s => (double)made.Pattern.Facts.EaseBy![s]!.Value));
    }
}
