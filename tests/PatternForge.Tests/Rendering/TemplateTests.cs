using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

public class TemplateTests
{
    [Fact]
    public void One_file_of_ones_own_replaces_one_file_and_no_other()
    {
        var page = Render(("html/style.css", "p { color: red; }")).Files.Single().Text;
        Assert.Contains("<style>\np { color: red; }", page, StringComparison.Ordinal);
        Assert.Contains("<h1>Saltgrass Hat</h1>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_ones_own_can_be_included_from_another() =>
        Assert.Equal("[A close, deep hat", Render(("html/pattern.html", "{{ include 'mine.html' }}"), ("html/mine.html", "[{{ for fact in facts }}{{ end }}A close, deep hat")).Files.Single().Text.Trim());

    [Fact]
    public void What_is_printed_is_escaped_and_what_is_included_is_not_escaped_twice()
    {
        var made = new HandMade { Facts = new() { Title = new("<b>", default) } };
        Assert.Equal("&lt;b&gt; &lt;B&gt; &lt;b&gt;!", Text(made, ("html/pattern.html", "{{ title }} {{ title | string.upcase }} {{ include 'part.html' }}"), ("html/part.html", "{{ title }}!")));
    }

    [Fact]
    public void A_captured_text_is_escaped_unless_it_is_said_to_be_ready()
    {
        var made = new HandMade();
        Assert.Equal("&lt;i&gt; <i>", Text(made, ("html/pattern.html", "{{ capture x }}<i>{{ end }}{{ x }} {{ ready x }}")));
    }

    [Fact]
    public void A_template_sets_names_of_its_own_but_never_those_of_the_view_for_the_next_page()
    {
        var set = TemplateSet.With(new Dictionary<string, string> { ["html/pattern.html"] = "{{ title }}{{ title = 'x' }}{{ title }}{{ mine = 1 }}" });
        for (var i = 0; i < 2; i++)
        {
            var result = Renderer.Render(new HandMade { Facts = new() { Title = new("Hat", default) } }.Compile(), OutputFormat.Html, set);
            Assert.Equal("Hatx\n", result.Files.Single().Text);
        }

        Assert.Equal("PF911", Fault("{{ mine }}").Rule.Code);
    }

    [Theory]
    [InlineData("a\n<h1>{{ title ) }}</h1>", "PF910", 2)]
    [InlineData("{{ if title }}x", "PF910", 1)]
    [InlineData("{{ for }}", "PF910", 1)]
    [InlineData("x\n\n{{ titel }}", "PF911", 3)]
    [InlineData("{{ for yarn in yarns }}{{ yarn.nam }}{{ end }}", "PF911", 1)]
    [InlineData("{{ date.now }}", "PF914", 1)]
    [InlineData("{{ regex.match 'a' 'b' }}", "PF911", 1)]
    [InlineData("{{ object.eval 'x' }}", "PF911", 1)]
    [InlineData("{{ include 'sizs.html' }}", "PF912", 1)]
    [InlineData("{{ include '../markdown/pattern.md' }}", "PF912", 1)]
    [InlineData("{{ include '/etc/passwd' }}", "PF912", 1)]
    [InlineData("{{ include null }}", "PF912", 1)]
    [InlineData("\n{{ while true }}x{{ end }}", "PF913", 2)]
    [InlineData("{{ for i in 1..1000000000 }}{{ end }}", "PF913", 1)]
    [InlineData("{{ for i in 1..10000 }}{{ for j in 1..10000 }}{{ end }}{{ end }}", "PF913", 1)]
    [InlineData("{{ include 'pattern.html' }}", "PF913", 1)]
    [InlineData("{{ func f; f; end; f }}", "PF913", 1)]
    [InlineData("{{ title.length.words }}", "PF914", 1)]
    [InlineData("{{ title 1 2 }}", "PF914", 1)]
    [InlineData("{{ yarns[0].name[9].x }}", "PF914", 1)]
    [InlineData("{{ 'x' | string.slice 9 9 9 9 }}", "PF914", 1)]
    [InlineData("{{ include }}", "PF914", 1)]
    public void A_broken_template_is_told_at_its_place(string template, string code, int line)
    {
        var finding = Fault(template);
        Assert.Equal(code, finding.Rule.Code);
        Assert.Equal(line, finding.Source.Lines.PositionOf(finding.Span.Start).Line);
        Assert.Equal("html/pattern.html", finding.Source.Path);
        Assert.DoesNotContain("Scriban", finding.Message + finding.Help, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("xception", finding.Message + finding.Help, StringComparison.OrdinalIgnoreCase);
        Assert.False(finding.Message.EndsWith('.'));
    }

    [Fact]
    public void A_misspelt_name_gets_the_nearest_one() =>
        Assert.Equal("did you mean `title`?", Fault("{{ titel }}").Help);

    [Fact]
    public void A_broken_part_is_told_in_its_own_file()
    {
        var result = Render(("html/sizes.html", "x\n{{ if }}"));
        Assert.Empty(result.Files);
        var finding = Assert.Single(result.Findings);
        Assert.Equal(("PF910", "html/sizes.html"), (finding.Rule.Code, finding.Source.Path));
    }

    [Fact]
    public void A_fault_in_a_part_is_told_in_its_own_file()
    {
        var finding = Assert.Single(Render(("html/sizes.html", "x\n{{ siezs }}")).Findings);
        Assert.Equal(("PF911", "html/sizes.html", 2), (finding.Rule.Code, finding.Source.Path, finding.Source.Lines.PositionOf(finding.Span.Start).Line));
    }

    [Fact]
    public void After_a_fault_the_next_page_is_whole()
    {
        Fault("{{ for yarn in yarns }}{{ yarn.nam }}{{ end }}");
        Golden.Match(PageTests.Page(SampleHat.Compile(), "html").Text, "page/saltgrass-hat.html");
    }

    [Theory]
    [InlineData("{{ if title }}", "{{ end }}")]
    [InlineData("{{ for x in yarns }}", "{{ end }}")]
    [InlineData("{{ (", ") }}")]
    [InlineData("{{ [", "] }}")]
    [InlineData("{{ {a:", "} }}")]
    [InlineData("{{ title | ", "}}")]
    [InlineData("{{ -", "}}")]
    [InlineData("{{ !", "}}")]
    [InlineData("{{ 1 + ", "}}")]
    [InlineData("{{ a.b", "}}")]
    [InlineData("{{ capture x }}", "{{ end }}")]
    [InlineData("{{ if true }}{{ else if true }}", "{{ end }}")]
    public void Deep_nesting_is_a_finding_and_no_crash(string open, string close)
    {
        foreach (var depth in new[] { 100, 10_000 })
        {
            Renderer.Render(SampleHat.Compile(), OutputFormat.Html, With(string.Concat(Enumerable.Repeat(open.Replace("{{ ", open.Contains("}}", StringComparison.Ordinal) ? "{{ " : "", StringComparison.Ordinal), depth)).Insert(0, "{{ ") + "x" + string.Concat(Enumerable.Repeat(close, depth))));
            Renderer.Render(SampleHat.Compile(), OutputFormat.Html, With(string.Concat(Enumerable.Repeat(open, depth)) + string.Concat(Enumerable.Repeat(close, depth))));
        }
    }

    [Fact]
    public void Every_rule_of_templates_shows_a_template_that_breaks_it_and_one_that_keeps_it()
    {
        foreach (var rule in TemplateRules.All.Where(r => r != TemplateRules.NotUsed && r != TemplateRules.Unreadable))
        {
            Assert.Equal(rule, Fault(rule.Bad).Rule);
            Assert.Empty(Render(("html/pattern.html", rule.Good)).Findings);
        }

        Assert.Equal(TemplateRules.NotUsed, Assert.Single(TemplateSet.With(new Dictionary<string, string> { [TemplateRules.NotUsed.Bad] = "" }).Findings).Rule);
        Assert.Empty(TemplateSet.With(new Dictionary<string, string> { [TemplateRules.NotUsed.Good] = "" }).Findings);
    }

    [Fact]
    public void The_rules_keep_to_their_codes()
    {
        Assert.Equal(Enumerable.Range(910, TemplateRules.All.Length).Select(n => $"PF{n}"), TemplateRules.All.Select(r => r.Code));
        Assert.All(TemplateRules.All, r => Assert.Equal(Area.Assets, r.Area));
    }

    [Fact]
    public void A_folder_is_read_file_by_file_and_its_slips_are_told()
    {
        var folder = Directory.CreateTempSubdirectory("patternforge-templates-");
        try
        {
            Directory.CreateDirectory(Path.Combine(folder.FullName, "html"));
            File.WriteAllText(Path.Combine(folder.FullName, "README.md"), "not a template");
            File.WriteAllText(Path.Combine(folder.FullName, "html", "style.css"), "/* mine */\r\n");
            File.WriteAllText(Path.Combine(folder.FullName, "html", "sizs.html"), "");
            File.WriteAllBytes(Path.Combine(folder.FullName, "html", "gauge.html"), [0xff, 0xfe, 0x00]);
            File.WriteAllText(Path.Combine(folder.FullName, "html", "closing.html"), new string('x', 300 * 1024));
            var set = TemplateSet.FromFolder(folder.FullName);
            Assert.Equal(["PF916", "PF916", "PF915"], set.Findings.Select(f => f.Rule.Code));
            Assert.Equal("did you mean `html/sizes.html`?", set.Findings[2].Help);
            Assert.Contains("/* mine */\n", Renderer.Render(SampleHat.Compile(), OutputFormat.Html, set).Files.Single().Text, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told() =>
        Assert.Equal(TemplateRules.Unreadable, Assert.Single(TemplateSet.FromFolder(Path.Combine(Path.GetTempPath(), "patternforge-no-such-folder")).Findings).Rule);

    private static TemplateSet With(string page) => TemplateSet.With(new Dictionary<string, string> { ["html/pattern.html"] = page });

    private static Finding Fault(string page)
    {
        var result = Renderer.Render(SampleHat.Compile(), OutputFormat.Html, With(page));
        Assert.Empty(result.Files);
        return Assert.Single(result.Findings);
    }

    private static RenderResult Render(params (string Name, string Text)[] files) =>
        Renderer.Render(SampleHat.Compile(), OutputFormat.Html, TemplateSet.With(files.ToImmutableDictionary(f => f.Name, f => f.Text, StringComparer.Ordinal)));

    private static string Text(HandMade made, params (string Name, string Text)[] files)
    {
        var result = Renderer.Render(made.Compile(), OutputFormat.Html, TemplateSet.With(files.ToImmutableDictionary(f => f.Name, f => f.Text, StringComparer.Ordinal)));
        Assert.Empty(result.Findings);
        return result.Files.Single().Text.Trim();
    }
}
