using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>One mistake is told once.</summary>
public class EchoTests
{
    [Fact]
    public void A_put_up_that_is_a_slip_is_not_told_again_by_what_is_reckoned_from_it() => Assert.Equal(
        ["PF712"],
        Codes("---\ntitle: Hat\nyarn:\n  - name: Quayside Wool\n    fibre: 100% wool\n    weight: worsted\n    put-up: 100 g = 20 m\n    needs: 180 m\n    alternatives:\n      - {name: Brackwater Plain, put-up: 100 g = 210 m}\nsample: {used: 990 g}\n---\n", "PF712", "PF713", "PF714"));

    [Fact]
    public void A_needed_amount_in_the_samples_own_unit_is_held_against_it_all_the_same() => Assert.Equal(
        ["PF712", "PF714"],
        Codes("---\ntitle: Hat\nsizes: one size\nyarn: {name: Quayside Wool, fibre: 100% wool, weight: worsted, put-up: 100 g = 20 m, needs: 50 g}\nsample: {used: 80 g}\n---\n", "PF712", "PF714"));

    [Fact]
    public void A_stitch_in_the_other_sides_words_is_told_by_its_terms_alone() => Assert.Equal(
        ["PF402"],
        Codes("---\ntitle: Mat\ncraft: crochet\nterms: us\nabbreviations: [sc, hdc, ch, st]\n---\n\n## Mat\n\nCh 16.\n\nRow 1: Sc in 2nd ch from hook and in each ch across. (15 sc)\n\nRow 2: Ch 1, turn, sc in next 5 sts, htr in next 5 sts, sc in next 5 sts. (15 sts)\n", "PF402", "PF501", "PF502", "PF504", "PF505"));

    [Fact]
    public void A_stated_count_that_is_wrong_is_not_told_for_its_run_as_well() => Assert.Equal(
        ["PF301"],
        Codes("---\ntitle: Body\nsizes: S (M, L)\n---\n\n## Body\n\nCO 80 (88, 96) sts.\n\nRow 1: Knit. 80 (88, 69) sts.\n", "PF301", "PF621"));

    [Fact]
    public void A_cast_on_that_does_not_run_is_told() => Assert.Equal(["PF621"], Codes("---\ntitle: Body\nsizes: S (M, L)\n---\n\n## Body\n\nCO 80 (88, 69) sts.\n\nRow 1: Knit.\n", "PF301", "PF621"));

    [Fact]
    public void Every_finding_that_rests_on_a_published_table_names_one()
    {
        var silent = new List<string>();
        foreach (var rule in RuleCatalog.All.Where(r => r.Sources.Any(s => s.Name != "common practice")))
        {
            var (text, _) = RuleExample.Read(rule, rule.Bad);
            foreach (var finding in RuleExample.FindingsOf(rule, text).Where(f => f.Rule == rule))
            {
                if (!rule.Sources.Any(s => (finding.Message + finding.Help).Contains(s.Name.Split([',', '('])[0].Trim(), StringComparison.OrdinalIgnoreCase)))
                {
                    silent.Add($"{rule.Code} {finding.Message} | {finding.Help}");
                }
            }
        }

        Assert.Empty(silent);
    }

    private static string[] Codes(string text, params string[] among) =>
        [.. Compiler.Compile(new SourceText("made.pattern.md", text)).Findings.Select(f => f.Rule.Code).Where(among.Contains).Order(StringComparer.Ordinal)];
}
