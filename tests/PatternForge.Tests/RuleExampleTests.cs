using System.Reflection;
using PatternForge.Core;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;

namespace PatternForge.Tests;

public class RuleExampleTests
{
    public static TheoryData<string> Codes => [.. RuleCatalog.All.Select(r => r.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_bad_example_gets_the_finding_just_at_its_carets_and_no_other_error(string code)
    {
        var rule = RuleCatalog.Find(code)!;
        if (rule.Bad.Length == 0)
        {
            Assert.Equal("file-too-large", rule.Name); // too large to be shown
            return;
        }

        var (text, marks) = RuleExample.Read(rule, rule.Bad);
        var findings = RuleExample.FindingsOf(rule, text);
        var lines = new Core.Text.LineMap(text);

        var places = findings.Where(f => f.Rule == rule).Select(f => $"«{f.Source.ToString(f.Span)}» at {f.Source.Lines.PositionOf(f.Span.Start)}");
        Assert.NotEmpty(marks);
        Assert.Equal(marks.Select(m => $"«{text.Substring(m.Start, m.Length)}» at {lines.PositionOf(m.Start)}"), places);
        Assert.Empty(findings.Where(f => f.Severity == Severity.Error && f.Accepted is null && f.Rule != rule).Select(f => $"{f.Rule.Code} {f.Message}"));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_good_example_gets_neither_the_finding_nor_an_error(string code)
    {
        var rule = RuleCatalog.Find(code)!;
        var (text, _) = RuleExample.Read(rule, rule.Good);

        Assert.Empty(RuleExample.FindingsOf(rule, text).Where(f => f.Accepted is null && (f.Rule == rule || f.Severity == Severity.Error)).Select(f => $"{f.Rule.Code} {f.Message}"));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void An_exact_repair_mends_the_bad_example(string code)
    {
        var rule = RuleCatalog.Find(code)!;
        var text = RuleExample.Read(rule, rule.Bad).Text;
        foreach (var fix in RuleExample.FindingsOf(rule, text).Where(f => f.Rule == rule).Select(f => f.Fix).OfType<Fix>())
        {
            var mended = fix.Edits.OrderByDescending(e => e.Span.Start).Aggregate(text, (now, e) => now[..e.Span.Start] + e.NewText + now[e.Span.End..]);
            Assert.DoesNotContain(RuleExample.FindingsOf(rule, mended), f => f.Rule == rule);
        }
    }

    [Fact]
    public void Codes_and_names_are_unique_and_well_formed()
    {
        Assert.Equal(RuleCatalog.All.Length, RuleCatalog.All.Select(r => r.Code).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(RuleCatalog.All.Length, RuleCatalog.All.Select(r => r.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.All(RuleCatalog.All, r => Assert.Equal(($"PF{(int)r.Area}", 5, true), (r.Code[..3], r.Code.Length, r.Name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'))));
    }

    [Fact]
    public void A_rule_is_found_by_code_and_by_name()
    {
        Assert.Equal("PF604", RuleCatalog.Find("gauge-without-stitch")?.Code);
        Assert.Equal("gauge-without-stitch", RuleCatalog.Find("pf604")?.Name);
        Assert.Null(RuleCatalog.Find("PF000"));
    }

    [Fact]
    public void Every_check_stands_in_the_list()
    {
        var written = typeof(PatternCheck).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(PatternCheck)) && !t.IsAbstract).Select(t => t.Name).Order(StringComparer.Ordinal);
        Assert.Equal(written, CheckList.All.Select(c => c.GetType().Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Rules_that_are_declared_stand_in_the_catalogue()
    {
        var declared = typeof(Rule).Assembly.GetTypes()
            .SelectMany(t => t.GetProperties(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(p => p.PropertyType == typeof(Rule))
            .Select(p => ((Rule)p.GetValue(null)!).Code);
        Assert.Empty(declared.Except(RuleCatalog.All.Select(r => r.Code), StringComparer.Ordinal));
    }
}
