using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

public class HeaderCheckTests
{
    private static string[] Codes(string header) =>
        [.. Compiler.Compile(new SourceText("x", $"---\n{header}\n---\n")).Findings.Where(f => f.Severity != Severity.Note).Select(f => f.Rule.Code).Order(StringComparer.Ordinal)];

    private const string Sound = "title: x\nsizes: one size\nyarn: Quayside Wool, 100 g = 200 m, 2 balls\ngauge: 20 sts = 10 cm in rib on 4 mm, blocked";

    [Fact]
    public void A_short_header_that_says_enough_has_no_findings() => Assert.Empty(Codes(Sound));

    [Fact]
    public void A_bare_title_is_told_what_a_maker_will_miss_but_no_error() =>
        Assert.Equal(["PF603", "PF608", "PF702", "PF803"], Codes("title: x"));

    [Theory]
    [InlineData("gauge: not important\ntools: 4 mm")]
    [InlineData("omit: [gauge]\ntools: 4 mm")]
    [InlineData("tension: 20 sts = 10 cm in rib on 4 mm, blocked")]
    [InlineData("gauge: 20 sts = 10 cm in rib, blocked\nneedles: 4 mm")]
    public void A_gauge_that_does_not_matter_or_stands_elsewhere_is_not_missed(string gauge) =>
        Assert.Empty(Codes("title: x\nsizes: one size\nomitted: 1\nyarn: Quayside Wool, 100 g = 200 m, 2 balls\n".Replace("omitted: 1\n", "", StringComparison.Ordinal) + gauge));

    [Theory]
    [InlineData("guage: 20 sts = 10 cm in rib on 4 mm, blocked", "PF120")]
    [InlineData("gauge: as you like it", "PF602")]
    [InlineData("gauge: {stich: rib, stitches: 20, over: 10 cm, tool: 4 mm, state: blocked}", "PF120")]
    [InlineData("gauge: {stitch: rib, stitches: 20, over: 10 parsecs, tool: 4 mm, state: blocked}", "PF125")]
    [InlineData("gauge: [20 sts\n  bad", "PF103")]
    public void What_could_not_be_read_is_not_missed_a_second_time(string gauge, string code) =>
        Assert.Equal([code], Codes("title: x\nsizes: one size\ntools: 4 mm\nyarn: Quayside Wool, 100 g = 200 m, 2 balls\n" + gauge));

    [Theory]
    [InlineData("sizes: S (M, L)", "PF609")]
    [InlineData("sizes:\n  names: S (M, L)\n  finished: {bust: 91 (102, –) cm}", "PF609")]
    [InlineData("sizes:\n  names: S (M, L)\n  finished: {bust: 91 (102) cm}", "PF601")]
    [InlineData("sizes:\n  names: S (M, L)\n  fits: {bust: 91 (102, 112) cm}", "")]
    [InlineData("sizes: [S, M\n  bad", "PF103")]
    public void Sizes_need_a_measurement(string sizes, string code) =>
        Assert.Equal(code, string.Join(' ', Codes(Sound.Replace("sizes: one size", sizes, StringComparison.Ordinal))));

    [Theory]
    [InlineData("yarn: DK", "PF704 PF705")]
    [InlineData("yarn: {weight: 4, needs: 200 m}", "PF703 PF704")]
    [InlineData("yarn: Quayside Wool", "PF705")]
    [InlineData("yarn:\n  - name: Quayside DK\n    needs: 200 m", "PF703")]
    [InlineData("yarn: Quayside Wool\nomit: [needs]", "")]
    [InlineData("yarn:\n  - {name: A, label: MC, put-up: 50 g = 100 m, needs: 1 ball}\n  - {name: B, label: mc, put-up: 50 g = 100 m, needs: 1 ball}", "PF706")]
    [InlineData("omit: yarn", "")]
    public void A_yarn_needs_a_name_an_amount_and_a_put_up(string yarn, string codes) =>
        Assert.Equal(codes, string.Join(' ', Codes(Sound.Replace("yarn: Quayside Wool, 100 g = 200 m, 2 balls", yarn, StringComparison.Ordinal))));
}
