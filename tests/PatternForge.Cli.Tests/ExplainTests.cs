using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Tests;

public class ExplainTests
{
    private static IEnumerable<Rule> All => RuleCatalog.All.Concat(TemplateRules.All);

    public static TheoryData<string> Codes => [.. All.Select(r => r.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Every_finding_can_be_explained_by_its_code_and_by_its_name(string code)
    {
        using var folder = new TemporaryFolder();
        var rule = All.Single(r => r.Code == code);
        var outcome = Outcome.Of(folder, "explain", code);
        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        Assert.StartsWith($"{code} {rule.Name}\n", outcome.Out, StringComparison.Ordinal);
        Assert.Contains(rule.Summary, outcome.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(outcome.Out, c => c < ' ' && c != '\n');
        Assert.Equal(outcome.Out, Outcome.Of(folder, "explain", rule.Name.ToUpperInvariant()).Out);
        Assert.Equal(outcome.Out, Outcome.Of(folder, "explain", code.ToLowerInvariant()).Out);
    }

    [Fact]
    public void An_unknown_code_or_name_gets_the_nearest()
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, "explain", "missing-heder");
        Assert.Equal((2, ""), (outcome.Code, outcome.Out));
        Assert.StartsWith("there is no finding `missing-heder`; the nearest: PF101 missing-header\n", outcome.Error, StringComparison.Ordinal);
        Assert.StartsWith("there is no finding `PF100`; the nearest: PF101 missing-header, PF102 unclosed-header\n", Outcome.Of(folder, "explain", "PF100").Error, StringComparison.Ordinal);
        Assert.Equal(2, Outcome.Of(folder, "explain", "PF99999999999999999999").Code);
    }
}
