using System.Reflection;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.House;

public class RuleTests
{
    private static Rule[] Known => [.. RuleCatalog.All, .. TemplateRules.All];

    public static TheoryData<string> Codes => [.. Known.Select(r => r.Code)];

    [Fact]
    public void Every_rule_that_is_declared_anywhere_is_in_a_list()
    {
        var declared = new[] { typeof(Rule).Assembly, typeof(TemplateRules).Assembly }
            .SelectMany(a => a.GetTypes())
            .SelectMany(t => t.GetMembers(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Select(m => m switch
            {
                PropertyInfo p when p.PropertyType == typeof(Rule) => (Rule?)p.GetValue(null),
                FieldInfo f when f.FieldType == typeof(Rule) => (Rule?)f.GetValue(null),
                _ => null,
            })
            .OfType<Rule>()
            .Select(r => r.Code);
        Assert.Empty(declared.Except(Known.Select(r => r.Code), StringComparer.Ordinal));
    }

    [Fact]
    public void A_code_and_a_name_are_given_out_once()
    {
        Assert.Empty(Known.GroupBy(r => r.Code, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.Empty(Known.GroupBy(r => r.Name, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_rule_says_what_it_is_about_in_its_code_and_explains_itself_in_sentences(string code)
    {
        var rule = Known.Single(r => r.Code == code);
        Assert.Matches("^PF[1-9][0-9][0-9]$", rule.Code);
        Assert.Equal((int)rule.Area, rule.Code[2] - '0');
        Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)+$", rule.Name);
        Assert.EndsWith(".", rule.Summary, StringComparison.Ordinal);
        Assert.EndsWith(".", rule.Explanation.TrimEnd().TrimEnd(')', '`'), StringComparison.Ordinal);
        Assert.NotEqual(rule.Bad, rule.Good);
    }
}
