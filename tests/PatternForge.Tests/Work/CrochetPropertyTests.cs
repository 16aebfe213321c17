using System.Globalization;
using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Work;

/// <summary>Rows made at random with counts that are known by arithmetic: a right one is never called wrong, a wrong one always is.</summary>
public class CrochetPropertyTests
{
    // Part of a round and what it takes and makes; the words of one unit.
    private static readonly (string Words, int Takes, int Makes)[] Units =
    [
        ("sc in next st", 1, 1), ("sc in next 3 sts", 3, 3), ("4 sc", 4, 4), ("inc", 1, 2), ("2 sc in next st", 1, 2), ("3 sc in next st", 1, 3),
        ("sc2tog", 2, 1), ("dec", 2, 1), ("sk next st", 1, 0), ("hdc in each of next 2 sts", 2, 2), ("sc2tog over next 2 sts", 2, 1), ("dc in next st", 1, 1),
    ];

    // A stitch pattern in a flat row: its repeat, what it takes, and how many stitches and spaces a repeat makes.
    private static readonly (string Repeat, int Takes, int Stitches, string Space, int Spaces)[] Laces =
    [
        ("ch 1, sk next st, sc in next st", 2, 1, "ch-1 sp", 1), ("ch 3, sk next 2 sts, sc in next st", 3, 1, "ch-3 sp", 1), ("sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st", 6, 6, "", 0),
        ("sk next st, (dc, ch 2, dc) in next st, sk next st, sc in next st", 4, 3, "ch-2 sp", 1), ("ch 2, sk 1 st, dc in next st, ch 2, sk 1 st, sc in next st", 4, 2, "ch-2 sp", 2),
    ];

    private static readonly Gen<int[]> Parts = Gen.Int[0, Units.Length - 1].Array[1, 8];

    [Fact]
    public void A_round_comes_to_what_its_parts_make()
    {
        Gen.Select(Parts, Gen.Int[1, 9], Gen.Bool).Sample((parts, times, byStar) =>
        {
            var (takes, makes) = (parts.Sum(p => Units[p].Takes) * times, parts.Sum(p => Units[p].Makes) * times);
            if (makes == 0)
            {
                return;
            }

            AssertFindings(takes, $"Rnd 2: {Round(parts, times, byStar)}. ({makes})", inTheRound: true);
        });
    }

    [Fact]
    public void A_wrong_count_of_a_round_is_told_with_the_right_one()
    {
        Gen.Select(Parts, Gen.Int[1, 9], Gen.Int[1, 5]).Sample((parts, times, off) =>
        {
            var (takes, makes) = (parts.Sum(p => Units[p].Takes) * times, parts.Sum(p => Units[p].Makes) * times);
            if (makes == 0)
            {
                return;
            }

            AssertFindings(takes, $"Rnd 2: {Round(parts, times, byStar: false)}. ({makes + off})", inTheRound: true, "PF301", makes);
        });
    }

    [Fact]
    public void A_round_that_needs_more_stitches_than_there_are_is_wrong()
    {
        Gen.Select(Parts, Gen.Int[2, 9]).Sample((parts, times) =>
        {
            var takes = parts.Sum(p => Units[p].Takes);
            AssertFindings(takes * (times - 1), $"Rnd 2: {Round(parts, times, byStar: false)}.", inTheRound: true, "PF303");
        });
    }

    [Fact]
    public void Shells_and_meshes_come_to_their_kinds()
    {
        Gen.Select(Gen.Int[0, Laces.Length - 1], Gen.Int[1, 20]).Sample((at, times) =>
        {
            var lace = Laces[at];
            var spaces = lace.Spaces > 0 ? $", {lace.Spaces * times} {lace.Space}s" : "";
            AssertFindings(1 + (lace.Takes * times), $"Row 2: Ch 1, turn, sc in first st, *{lace.Repeat}; rep from * across. ({1 + (lace.Stitches * times)} sts{spaces})", inTheRound: false);
        });
    }

    [Fact]
    public void A_repeat_that_does_not_come_out_is_wrong()
    {
        Gen.Select(Gen.Int[0, Laces.Length - 1], Gen.Int[1, 20], Gen.Int[1, 5]).Sample((at, times, more) =>
        {
            var lace = Laces[at];
            if (more % lace.Takes != 0)
            {
                AssertFindings(1 + (lace.Takes * times) + more, $"Row 2: Ch 1, turn, sc in first st, *{lace.Repeat}; rep from * across.", inTheRound: false, "PF302");
            }
        });
    }

    [Fact]
    public void Any_words_of_crochet_end_in_findings_and_never_in_a_fault()
    {
        string[] scraps =
        [
            "sc", "2 dc", "ch 3", "in next st", "in each ch-2 sp", "*", "rep from *", "to end", "(", ")", "[", "6 times", "around", ",", ";", ".", "turn", "join", "skip 2 sts", "in same st", "sc2tog", "999999999", "x 99999", "in ring", "ch 99999",
            "sl st", "in 2nd ch from hook", "(counts as dc)", "= 24 sc", "to last 2 sts", "FPdc", "around post", "in center of next shell", "working", "inc", "dec evenly", "picot", "leave rem sts unworked", "in top of tch", "both sides of chain", "0", "-", "**",
        ];
        Gen.Int[0, scraps.Length - 1].Array[0, 30].Sample(
            words => _ = Compile(24, $"Row 2: {string.Join(' ', words.Select(w => scraps[w]))}", inTheRound: words.Length % 2 == 0),
            iter: 2_000);
    }

    [Theory]
    [InlineData("Row 2: ((((((((((((((((((((((((((((((((sc, inc) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times) 9 times).")]
    [InlineData("Row 2: (2000000000 dc in next ch-2 sp) 2000000000 times.")]
    [InlineData("Row 2: Ch 2000000000, turn, 2000000000 sc in each st across.")]
    [InlineData("Row 2: *Ch 1; rep from * around.")]
    [InlineData("Row 2: *Sl st in same st; rep from * to last st.")]
    [InlineData("Row 2: *(sc) in same st, *ch 1, *sk 0 sts; rep from * to end; rep from * to end; rep from * to end.")]
    [InlineData("Row 2: Sc in , dc in each of next  sts, in.")]
    [InlineData("Row 2: (, ) in next st, [] 3 times, sk.")]
    [InlineData("Row 2: Dec 2000000000 sts evenly, inc 2000000000 sts evenly.")]
    public void What_cannot_be_worked_is_told_in_bounded_time(string row) => Assert.NotEmpty(Compile(24, row, inTheRound: false).Lines);

    private static string Round(int[] parts, int times, bool byStar)
    {
        var words = string.Join(", ", parts.Select(p => Units[p].Words));
        return byStar ? $"*{words}; rep from * around" : times == 1 ? words : $"({words}) {times} times";
    }

    private static Compilation Compile(int stitches, string row, bool inTheRound) =>
        Compiler.Compile(new SourceText("rows.pattern.md", $"---\ntitle: Sill mat\ncraft: crochet\nterms: us\n---\n\n## Mat\n\nBegin with {stitches.ToString(CultureInfo.InvariantCulture)} sts{(inTheRound ? ", in the round" : "")}.\n\n{row}\n"));

    private static void AssertFindings(int stitches, string row, bool inTheRound, string? code = null, int? names = null)
    {
        var errors = Compile(stitches, row, inTheRound).Findings.Where(f => f.Severity == Severity.Error && f.Rule.Code.StartsWith("PF3", StringComparison.Ordinal)).ToArray();
        if (code is null)
        {
            Assert.True(errors.Length == 0, $"{stitches} sts | {row} | {string.Join("; ", errors.Select(e => e.Message))}");
            return;
        }

        Assert.True(errors.Any(e => e.Rule.Code == code && (names is null || e.Message.Contains($"makes {names}", StringComparison.Ordinal))), $"{stitches} sts | {row} | {string.Join("; ", errors.Select(e => e.Message))}");
    }
}
