using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Planning;

public class RaglanPlanTests
{
    private static Compilation Compile(string sizes, string cast, string from, string plan) => Compiler.Compile(new SourceText("x.pattern.md", $"""
        ---
        title: Harbour jumper
        sizes: {sizes}
        gauge: 20 sts and 28 rounds = 10 cm in stockinette
        ---

        ## Yoke

        CO {cast} sts. Place marker and join in the round.

        Next rnd: {from}

        ```plan
        work: raglan
        {plan}
        ```
        """));

    private static string[] Rows(Compilation made) => [.. made.Lines.Skip(2).Select(l => l.Label.Length > 0 ? $"{l.Label}: {l.Text}" : l.Text)];

    [Fact]
    public void Fast_stretches_come_first_and_each_size_has_those_that_it_needs()
    {
        var made = Compile("S (M, L)", "88", "K34, pm, k10, pm, k34, pm, k10.", "body-from: 34\nbody-to: 50 (58, 82)\nsleeve-from: 10\nsleeve-to: 26 (30, 50)\nover: 20 (24, 40) rows");

        // S: 8 and 8 in 10 pairs of rounds; M: 12 and 10 in 12; L: 24 and 20 in 20.
        Assert.Equal(
            [
                "Size L only: Full Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm) 4 times. (8 sts inc'd)",
                "Size L only: Body Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm, k to m, sm) twice. (4 sts inc'd)",
                "Size L only: Rep last 2 rnds 3 times more. (136 sts)",
                "Full Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm) 4 times. (8 sts inc'd)",
                "Next rnd: Knit.",
                "Rep last 2 rnds 5 (7, 15) times more. (136 (152, 264) sts)",
                "Size M only: Full Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm) 4 times. (8 sts inc'd)",
                "Size M only: Next rnd: Knit.",
                "Size M only: Body Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm, k to m, sm) twice. (4 sts inc'd)",
                "Size M only: Next rnd: Knit.",
                "Size M only: Rep last 4 rnds once more. (176 sts)",
                "Size S only: Full Inc Rnd: (K1, M1L, k to 1 st before m, M1R, k1, sm) 4 times. (8 sts inc'd)",
                "Size S only: Next 3 rnds: Knit.",
                "Size S only: Rep last 4 rnds once more. (152 sts)",
            ],
            Rows(made));
        Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
    }

    [Theory]
    [InlineData("body-from: 34", "body-to: 70", "over: 10 rows", "PF229")]
    [InlineData("body-from: 34", "body-to: 30", "over: 40 rows", "PF229")]
    [InlineData("body-from: 34", "body-to: 71", "over: 40 rows", "PF229")]
    [InlineData("body-from: 34", "body-too: 70", "over: 40 rows", "PF228")]
    public void What_no_yoke_can_do_is_told(string from, string to, string over, string code)
    {
        var made = Compile("one size", "88", "K34, pm, k10, pm, k34, pm, k10.", $"{from}\n{to}\nsleeve-from: 10\nsleeve-to: 30\n{over}");

        Assert.Contains(made.Findings, f => f.Rule.Code == code);
    }

    [Fact]
    public void Plain_rounds_of_two_sizes_of_three_are_a_list_for_those_two()
    {
        var made = Compile("S (M, L)", "58 (80, 72)", "K19 (30, 26), pm, k10, pm, k19 (30, 26), pm, k10.", "body-from: 19 (30, 26)\nbody-to: 127 (30, 28)\nsleeve-from: 10\nsleeve-to: 80 (16, 10)\nover: 54 (20, 62)");

        Assert.Equal("Sizes M and L only: Next 8 (58) rnds: Knit.", Rows(made)[^1]);
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.Equal([414, 92, 76], Enumerable.Range(0, 3).Select(size => made.Lines.Last(l => l.After[size] is not null).After[size]!.Value));
    }

    [Fact]
    public void Any_yoke_comes_to_its_stitches_in_its_rounds() =>
        Gen.Select(Gen.Int[5, 40].Array[3], Gen.Int[0, 90].Array[3], Gen.Int[0, 90].Array[3], Gen.Int[2, 90].Array[3]).Sample((neck, body, sleeve, rounds) =>
        {
            string List(IEnumerable<int> values) => values.ToArray() is var v ? $"{v[0]} ({v[1]}, {v[2]})" : "";
            var b = Enumerable.Range(0, 3).Select(i => Math.Min(body[i], rounds[i] / 2 * 2)).ToArray();
            var s = Enumerable.Range(0, 3).Select(i => Math.Min(sleeve[i], rounds[i] / 2 * 2)).ToArray();
            var made = Compile(
                "S (M, L)", List(neck.Select(n => (2 * n) + 20)), $"K{List(neck)}, pm, k10, pm, k{List(neck)}, pm, k10.",
                $"body-from: {List(neck)}\nbody-to: {List(neck.Zip(b, (n, i) => n + (2 * i)))}\nsleeve-from: 10\nsleeve-to: {List(s.Select(i => 10 + (2 * i)))}\nover: {List(rounds)}");

            Assert.Equal("", string.Join('\n', made.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message)));
            for (var size = 0; size < 3; size++)
            {
                Assert.Equal((2 * neck[size]) + 20 + (4 * (b[size] + s[size])), made.Lines.Last(l => l.After[size] is not null).After[size]);
            }
        }, iter: 100);

    [Fact]
    public void A_round_heel_is_told_in_seven_rows_at_most()
    {
        var made = Compiler.Compile(new SourceText("x.pattern.md", "---\ntitle: Harbour sock\nsizes: S (M, L)\n---\n\n## Heel\n\nCO 28 (30, 36) sts.\n\n```plan\nwork: heel\nfrom: 28 (30, 36)\n```\n"));

        Assert.Equal(
            [
                "Row 1 (WS): P16 (17, 20), p2tog, p1, turn. (27 (29, 35) sts)",
                "Row 2 (RS): Sl 1, k5, ssk, k1, turn. (26 (28, 34) sts)",
                "Row 3 (WS): Sl 1, p to 1 st before gap, p2tog, p1, turn.",
                "Row 4 (RS): Sl 1, k to 1 st before gap, ssk, k1, turn.",
                "Rep Rows 3 and 4 3 (4, 5) times more. (18 (18, 22) sts)",
                "Sizes S and L only: Next row (WS): Sl 1, p to 1 st before gap, p2tog, turn.",
                "Sizes S and L only: Next row (RS): Sl 1, k to 1 st before gap, ssk, turn. (16 (20) sts)",
            ],
            made.Lines.Skip(1).Select(l => l.Label.Length > 0 ? $"{l.Label}: {l.Text}" : l.Text));
        Assert.Equal([16, 18, 20], Enumerable.Range(0, 3).Select(size => made.Lines.Last(l => l.After[size] is not null).After[size]!.Value));
        Assert.All(made.Lines, l => Assert.Equal(LineStatus.Checked, l.Status));
    }
}
